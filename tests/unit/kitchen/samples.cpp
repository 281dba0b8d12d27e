#include "samples.h"

#include <fstream>
#include <sstream>
#include <stdexcept>

#include <nlohmann/json.hpp>

namespace samples {

using nlohmann::json;

std::string file(const std::string& path) {
  std::ifstream in(std::string(BENCHBELL_SOURCE_DIR) + "/" + path);
  if (!in) throw std::runtime_error("no file " + path);
  std::stringstream text;
  text << in.rdbuf();
  return text.str();
}

namespace {

json sample(const std::string& name) {
  return json::parse(file("tests/unit/kitchen/samples/" + name));
}

template <class T>
base::Problems problems(const base::Result<T>& result) {
  return result ? base::Problems{} : result.problems();
}

template <class T>
T value(const base::Result<T>& result) {
  if (!result) throw std::runtime_error(told(result.problems()));
  return result.value();
}

}  // namespace

json dish() { return sample("dish.json"); }
json room() { return sample("room.json"); }
json house_rules() { return sample("house-rules.json"); }

json lesson() {
  json out = sample("lesson.json");
  out["room"] = room();
  out["house_rules"] = house_rules();
  out["dishes"]["scones"] = dish();
  return out;
}

base::Result<std::string> no_files(const std::string& path) {
  return base::Problem{"test.no_file", path, "", "there is no such file.", "Check the path."};
}

base::Result<std::string> sample_files(const std::string& path) {
  return file("tests/unit/kitchen/samples/" + path);
}

kitchen::Dish read_dish(const json& text) {
  return value(kitchen::read_dish(text.dump(), "dish.json"));
}

kitchen::Lesson read_lesson(const json& text) {
  return value(kitchen::read_lesson(text.dump(), "lesson.json", no_files));
}

base::Problems problems_of(const std::string& kind, const std::string& text) {
  if (kind == "dish") return problems(kitchen::read_dish(text, "dish.json"));
  if (kind == "room") return problems(kitchen::read_room(text, "room.json"));
  if (kind == "house_rules") return problems(kitchen::read_house_rules(text, "house-rules.json"));
  return problems(kitchen::read_lesson(text, "lesson.json", no_files));
}

std::string told(const base::Problems& problems) {
  std::string out;
  for (const base::Problem& p : problems)
    out += "[" + p.code + "] " + p.where + " " + p.message + "\n";
  return out;
}

}  // namespace samples
