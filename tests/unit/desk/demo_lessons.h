// The lessons of the invented school as documents, with everything they refer to.
#pragma once

#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "../../support/lesson_file.h"
#include "kitchen/json_tree.h"
#include "kitchen/read.h"

namespace desk_test {

inline const std::vector<std::string>& demo_lessons() {
  static const std::vector<std::string> kNames{"a-first-hob",
                                               "b-two-dishes",
                                               "c-frying-in-turns",
                                               "d-half-groups",
                                               "e-does-not-fit",
                                               "f-three-dish-practical",
                                               "g1-overnight-rolls-shape",
                                               "g2-overnight-rolls-bake",
                                               "h-stop-gate-demonstration",
                                               "i-freeze-ahead"};
  return kNames;
}

inline std::string demo_file(const std::string& path) {
  const auto text = support::text_of(std::string(BENCHBELL_SOURCE_DIR) + "/demo/" + path);
  if (!text) throw std::runtime_error("no demo file " + path);
  return text.value();
}

inline kitchen::Loader demo_loader() {
  return [](const std::string& path) {
    return support::text_of(std::string(BENCHBELL_SOURCE_DIR) + "/demo/" + path);
  };
}

inline std::string path_of(const std::string& name) { return "lessons/" + name + ".json"; }

inline kitchen::Node tree_of(const std::string& text) {
  base::Problems problems;
  auto node = kitchen::parse_json(text, "", problems);
  if (!node) throw std::runtime_error("not JSON: " + problems.front().message);
  return std::move(*node);
}

/// The lesson's document in the one layout of json_text(), so that texts can be compared.
inline std::string document_of(const std::string& name) {
  return kitchen::json_text(tree_of(demo_file(path_of(name))));
}

inline kitchen::Lesson lesson_of(const std::string& text) {
  auto lesson = kitchen::read_lesson(text, "lessons/x.json", demo_loader());
  if (lesson) return std::move(lesson).value();
  std::string all;
  for (const base::Problem& p : lesson.problems()) all += p.where + ": " + p.message + "\n";
  throw std::runtime_error(all);
}

}  // namespace desk_test
