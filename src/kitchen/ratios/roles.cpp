#include "kitchen/ratios/roles.h"

#include <algorithm>
#include <array>
#include <map>

#include "base/folding.h"
#include "kitchen/foods.h"
#include "kitchen/ratios/role_table.h"
#include "kitchen/weigh.h"

namespace kitchen {

using namespace role_table;

namespace {

struct WordsRow {
  std::string padded;
  Role role;
};

const std::vector<WordsRow>& words_table() {
  static const std::vector<WordsRow> kTable = [] {
    std::vector<WordsRow> rows;
    for (const Named& each : kByWords) rows.push_back({singular_words(each.word), each.role});
    return rows;
  }();
  return kTable;
}

}  // namespace

std::string_view role_word(Role role) { return kRoleWords[static_cast<std::size_t>(role)]; }

Role role_of(const Food& food) {
  static const std::map<std::string_view, Role> kKeys = [] {
    std::map<std::string_view, Role> keys;
    for (const Named& each : kByKey) keys.emplace(each.word, each.role);
    return keys;
  }();
  if (const auto found = kKeys.find(food.key); found != kKeys.end()) return found->second;
  if (food.category == "dairy") return dairy(food.key);
  for (const Named& each : kByCategory) {
    if (each.word == food.category) return each.role;
  }
  return role_by_words(food.name).value_or(Role::kOther);
}

std::optional<Role> role_by_words(std::string_view name) {
  // "Sugar for syrup" is sugar; only "for dusting" and the like say what it is there for.
  const std::string whole = singular_words(name);
  const std::string text = whole.substr(0, whole.find(" for ")) + " ";
  for (const std::string_view word : kOnTop) {
    if (whole.find(singular_words(word)) != std::string::npos) return Role::kGarnish;
  }
  for (const WordsRow& row : words_table()) {
    if (text.find(row.padded) != std::string::npos) return row.role;
  }
  return std::nullopt;
}

Role role_of(const Ingredient& ingredient, const Food* food) {
  // "Sugar for rolling" is on the table of foods as sugar; its own words say what it is there for.
  const auto said = role_by_words(ingredient.name);
  if (said == Role::kGarnish) return Role::kGarnish;
  // Made-up stock stands in the table as its cube; by the millilitre it is a liquid.
  if (said == Role::kStock) return Role::kStock;
  if (food != nullptr) return role_of(*food);
  return said.value_or(Role::kOther);
}

const Food* food_for_ratios(const Ingredient& ingredient, const Foods& foods) {
  if (const Food* food = food_of(ingredient, foods)) return food;
  if (!ingredient.food.empty()) return nullptr;
  const auto said = role_by_words(ingredient.name);
  if (!said) return nullptr;
  const std::string name = ingredient.name.substr(0, ingredient.name.find(" for "));
  if (const Food* food = foods.named(name)) return food;
  for (const FoundFood& found : foods.search(name, 4)) {
    if (found.likeness > 0.5 && role_of(*found.food) == *said) return found.food;
  }
  return nullptr;
}

std::optional<std::vector<Share>> shares_of(std::string_view word) {
  // What self-raising flour counts as: row DR042 of data/ratios.csv, 4.5 % of the plain flour in
  // it, that is 4.5 of 104.5 parts; the difference to 4.5 of 100 is far below a teaspoon.
  const Ratio in_self_raising(45, 1000);
  using enum Role;
  static const std::map<std::string_view, std::vector<Share>> kWords = {
      {"flour", {{kFlour}, {kSelfRaisingFlour}}},
      {"cornflour", {{kCornflour}}},
      {"oats", {{kOats}}},
      {"polenta", {{kPolenta}}},
      {"fat", {{kFat}, {kOil}}},
      {"oil", {{kOil}}},
      {"sugar", {{kSugar}}},
      {"syrup", {{kSyrup}}},
      {"egg", {{kEgg}, {kEggWhite}, {kEggYolk}}},
      {"white", {{kEggWhite}}},
      {"yolk", {{kEggYolk}, {kEgg}}},
      {"milk", {{kMilk}}},
      {"cream", {{kCream}}},
      {"yogurt", {{kYogurt}}},
      {"water", {{kWater}}},
      {"stock", {{kStock}}},
      {"juice", {{kJuice}}},
      {"baking_powder", {{kBakingPowder}, {kSelfRaisingFlour, in_self_raising}}},
      {"bicarbonate", {{kBicarbonate}}},
      {"yeast", {{kYeast}}},
      {"fresh_yeast", {{kFreshYeast}}},
      {"salt", {{kSalt}}},
      {"acid", {{kAcid}}},
      {"gelatine", {{kGelatine}}},
      {"rice", {{kRice}}},
      {"couscous", {{kCouscous}}},
      {"pulses", {{kPulses}}},
      {"pasta", {{kPasta}}},
      {"meat", {{kMeat}, {kMeatFree}}},
      {"vegetable", {{kVegetable}}},
      {"fruit", {{kFruit}}},
      {"nuts", {{kNuts}}},
      {"soft_cheese", {{kSoftCheese}}},
      {"crumbs", {{kCrumbs}}},
  };
  if (word == "everything") {
    std::vector<Share> all;
    for (std::size_t i = 0; i < kRoles; ++i) all.push_back({static_cast<Role>(i)});
    return all;
  }
  const auto found = kWords.find(word);
  if (found == kWords.end()) return std::nullopt;
  return found->second;
}

bool is_free(Role role) {
  return role == Role::kFlavour || role == Role::kGarnish || role == Role::kOther;
}

}  // namespace kitchen
