// Small dishes and lessons for the tests of this folder, made in code; and the shipped tables.
#pragma once

#include <fstream>
#include <initializer_list>
#include <sstream>
#include <stdexcept>
#include <string>
#include <vector>

#include "../../support/shipped_foods.h"
#include "safety/substitutes.h"

namespace samples {

using kitchen::Allergen;
using kitchen::Allergens;

inline std::string shipped_text(const std::string& name) {
  std::ifstream file(std::string(BENCHBELL_SOURCE_DIR) + "/data/" + name, std::ios::binary);
  std::stringstream text;
  text << file.rdbuf();
  return text.str();
}

inline const safety::Hidden& shipped_hidden() {
  static const safety::Hidden kHidden = [] {
    auto read = safety::read_hidden(shipped_text("hidden.csv"), "hidden.csv",
                                    tests::shipped_foods());
    if (!read) throw std::runtime_error(read.problems().front().message);
    return std::move(read).value();
  }();
  return kHidden;
}

inline const safety::Substitutes& shipped_substitutes() {
  static const safety::Substitutes kSubstitutes = [] {
    auto read = safety::read_substitutes(shipped_text("substitutes.csv"), "substitutes.csv",
                                         tests::shipped_foods());
    if (!read) throw std::runtime_error(read.problems().front().message);
    return std::move(read).value();
  }();
  return kSubstitutes;
}

inline safety::Evidence evidence() {
  static const safety::Labels kNoLabels;
  return {tests::shipped_foods(), kNoLabels, shipped_hidden()};
}

/// An ingredient that names a food of the table.
inline kitchen::Ingredient of_food(const std::string& key) {
  kitchen::Ingredient out;
  const kitchen::Food* food = tests::shipped_foods().find(key);
  if (food == nullptr) throw std::runtime_error("no food " + key);
  out.name = food->name;
  out.food = key;
  return out;
}

inline kitchen::Dish dish(const std::string& name, std::initializer_list<std::string> foods) {
  kitchen::Dish out;
  out.name = name;
  for (const std::string& key : foods) out.ingredients.push_back(of_food(key));
  return out;
}

/// Adds a step that uses those ingredients (by index) and kit.
inline kitchen::Step& add_step(kitchen::Dish& dish, const std::string& says,
                               std::vector<int> uses = {}, std::vector<std::string> kit = {}) {
  kitchen::Step step;
  step.id = "step-" + std::to_string(dish.method.size() + 1);
  step.says = says;
  step.uses = std::move(uses);
  for (std::string& item : kit) step.kit.push_back({std::move(item), 1});
  dish.method.push_back(std::move(step));
  return dish.method.back();
}

/// A room of two bays with two places each; a cook at each of the first places.
inline kitchen::Lesson lesson(std::vector<kitchen::Dish> dishes,
                              std::initializer_list<std::vector<int>> dishes_of_cooks) {
  kitchen::Lesson out;
  out.title = "9K";
  out.date = "2026-11-17";
  out.opens_minute = 600;
  out.bell = base::minutes(60);
  out.room.name = "Food Room 1";
  out.room.bays = {{"A", 1}, {"B", 1}};
  out.room.places = {{"A1", 0, {0}}, {"A2", 0, {0}}, {"B1", 1, {1}}, {"B2", 1, {1}}};
  out.room.kit = {{"food processor", 1, true, base::minutes(8)}, {"scales", 4}};
  out.dishes = std::move(dishes);
  int place = 0;
  for (const std::vector<int>& made : dishes_of_cooks) {
    kitchen::Cook cook;
    cook.name = std::string("Cook ") + static_cast<char>('A' + place);
    cook.place = place++;
    cook.dishes = made;
    out.cooks.push_back(std::move(cook));
  }
  return out;
}

}  // namespace samples
