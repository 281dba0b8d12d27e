// What the tests of nutrition share: the tables of cooking, a dish from its ingredients, one ready
// calculated.
#pragma once

#include <fstream>
#include <sstream>
#include <stdexcept>
#include <string>

#include "kitchen/read.h"
#include "nutrition/dish_nutrients.h"
#include "shipped_foods.h"

namespace tests {

inline std::string text_of(const std::string& path) {
  std::ifstream file(BENCHBELL_SOURCE_DIR "/" + path, std::ios::binary);
  std::stringstream text;
  text << file.rdbuf();
  return text.str();
}

inline const nutrition::CookingTables& cooking_tables() {
  static const nutrition::CookingTables kTables = [] {
    auto read = nutrition::read_cooking(text_of("data/yields.csv"), text_of("data/retention.csv"));
    if (!read) throw std::runtime_error(read.problems().front().message);
    return std::move(read).value();
  }();
  return kTables;
}

inline kitchen::Ingredient ingredient(const std::string& food, double amount,
                                      const std::string& unit = "g") {
  kitchen::Ingredient out;
  out.name = food;
  out.food = food;
  out.amount = amount;
  out.unit = unit;
  return out;
}

/// A dish that is only stirred together: no heat, one step.
inline kitchen::Dish stirred(std::vector<kitchen::Ingredient> ingredients, int portions = 1) {
  kitchen::Dish dish;
  dish.name = "Test dish";
  dish.portions = portions;
  dish.ingredients = std::move(ingredients);
  kitchen::Step step;
  step.id = "stir";
  step.says = "Stir everything together.";
  dish.method.push_back(step);
  return dish;
}

inline nutrition::DishNutrients calculated(const kitchen::Dish& dish,
                                           const nutrition::Options& options = {}) {
  return nutrition::dish_nutrients(dish, nutrition::foods_of(dish, shipped_foods()),
                                   cooking_tables(), options);
}

/// Macaroni with onions and cheese: the dish that docs/methods/nutrition.md works out by hand.
inline kitchen::Dish macaroni() {
  const auto read = kitchen::read_dish(R"({
    "kind": "dish", "version": 1, "name": "Macaroni with onions and cheese", "portions": 2,
    "ingredients": [
      { "name": "macaroni", "amount": 150, "unit": "g", "food": "macaroni_dry" },
      { "name": "onion", "amount": 100, "unit": "g", "food": "onion" },
      { "name": "butter", "amount": 20, "unit": "g", "food": "butter_salted" },
      { "name": "cheddar", "amount": 60, "unit": "g", "food": "cheddar" }
    ],
    "method": [
      { "id": "boil", "do": "Boil the macaroni in plenty of water.", "minutes": 10, "attention": "glance",
        "follows": [], "heat": { "ring": "large pan" }, "uses": ["macaroni"] },
      { "id": "soften", "do": "Soften the onion in the butter.", "minutes": 8, "attention": "stand by",
        "follows": [], "heat": { "ring": "small pan" }, "uses": ["onion", "butter"] },
      { "id": "drain", "do": "Drain the macaroni at the sink.", "minutes": 1, "follows": ["boil"],
        "closes": "boil" },
      { "id": "combine", "do": "Off the heat, stir macaroni, onion and cheddar together.", "minutes": 2,
        "follows": ["drain", "soften"], "closes": "soften" }
    ]
  })",
                                       "macaroni.json");
  if (!read) throw std::runtime_error(read.problems().front().message);
  return read.value();
}

}  // namespace tests
