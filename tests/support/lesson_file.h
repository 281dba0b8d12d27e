// Reading the project's own lesson files in tests: demo/ and tests/stories/.
#pragma once

#include <fstream>
#include <sstream>
#include <stdexcept>
#include <string>

#include "kitchen/read.h"

namespace support {

inline base::Result<std::string> text_of(const std::string& path) {
  std::ifstream in(path, std::ios::binary);
  if (!in)
    return base::Problem{"test.file", path, "", "There is no such file.",
                         "Check the name in the test."};
  std::ostringstream text;
  text << in.rdbuf();
  return text.str();
}

/// The lesson, or an exception that says everything that is wrong with it.
inline kitchen::Lesson lesson_file(const std::string& path_in_project) {
  const std::string path = std::string(BENCHBELL_SOURCE_DIR) + "/" + path_in_project;
  const auto text = text_of(path);
  if (!text) throw std::runtime_error(path + ": " + text.problems().front().message);
  auto lesson = kitchen::read_lesson(text.value(), path,
                                     [](const std::string& p) { return text_of(p); });
  if (lesson) return std::move(lesson).value();
  std::string all;
  for (const base::Problem& p : lesson.problems())
    all += p.file + " " + p.where + ": " + p.message + " " + p.remedy + "\n";
  throw std::runtime_error(all);
}

inline kitchen::Dish dish_file(const std::string& path_in_project) {
  const std::string path = std::string(BENCHBELL_SOURCE_DIR) + "/" + path_in_project;
  const auto text = text_of(path);
  if (!text) throw std::runtime_error(path + ": " + text.problems().front().message);
  auto dish = kitchen::read_dish(text.value(), path);
  if (!dish) throw std::runtime_error(path + ": " + dish.problems().front().message);
  return std::move(dish).value();
}

}  // namespace support
