// What an ingredient does in a dish's structure: flour, fat, sugar, egg, liquid, raising agent ...
//
// "Butter" is fat, "oat drink" stands where milk stands, "smoked paprika" is flavour and free. The
// food's key decides, else its category, else the words of its name. A role is not yet a function:
// what an egg does (binds, foams, sets) depends on the preparation (kitchen/ratios/functions.h).
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "kitchen/dish.h"
#include "kitchen/food.h"
#include "kitchen/quantity.h"

namespace kitchen {

class Foods;

enum class Role : std::int8_t {
  kFlour,             ///< of wheat or instead of it, without raising agent
  kSelfRaisingFlour,  ///< holds its own raising agent (row DR042 of data/ratios.csv)
  kCornflour,         ///< cornflour, arrowroot, custard powder: thickens, has no gluten
  kOats,
  kPolenta,  ///< polenta, semolina, ground rice: coarse meals
  kFat,      ///< plastic at room temperature: butter, block, lard, suet, spread
  kOil,
  kSugar,
  kSyrup,  ///< syrup, treacle, honey: sugar with water
  kEgg,
  kEggWhite,
  kEggYolk,
  kMilk,  ///< and the drinks that stand for it
  kCream,
  kYogurt,  ///< yoghurt, buttermilk, crème fraîche: sour milk
  kWater,
  kStock,
  kJuice,  ///< any other thin liquid: juice, beer, wine
  kBakingPowder,
  kBicarbonate,
  kYeast,  ///< dried
  kFreshYeast,
  kSalt,
  kAcid,  ///< lemon juice, vinegar, cream of tartar
  kGelatine,
  kOtherSetting,  ///< agar, pectin, vegetarian setting powder
  kRice,
  kCouscous,  ///< and bulgur
  kPulses,
  kPasta,
  kMeat,
  kFish,
  kMeatFree,  ///< tofu, soya mince
  kVegetable,
  kFruit,
  kDriedFruit,
  kNuts,
  kCheese,
  kSoftCheese,
  kChocolate,
  kCocoa,
  kCrumbs,   ///< breadcrumbs, stuffing mix
  kBakery,   ///< bread, wraps, bought pastry, biscuits
  kFlavour,  ///< herbs, spices, sauces by the spoon: free
  kGarnish,  ///< on top, for the eye: free
  kOther,
  kCount
};
inline constexpr std::size_t kRoles = static_cast<std::size_t>(Role::kCount);

/// As data/ratios.csv and sentences write it: "flour", "baking powder".
std::string_view role_word(Role);

/// Every food has one; those of no known kind are kOther.
Role role_of(const Food&);
/// From the words of a name alone ("mild cheddar" is cheese); nothing when no word is known.
std::optional<Role> role_by_words(std::string_view name);
/// The food's role, else by the words of the ingredient's name, else kOther.
Role role_of(const Ingredient&, const Food*);

/// The food an ingredient is, for counting ratios: by key or name (food_of), else the nearest name
/// in the table if it has the same role as the ingredient's own words. Nothing if unsure.
const Food* food_for_ratios(const Ingredient&, const Foods&);

/// A role with how many times its weight counts: self-raising flour is flour once, and baking
/// powder 0.045 times.
struct Share {
  Role role = Role::kOther;
  Ratio times = 1;
  friend bool operator==(const Share&, const Share&) = default;
};
/// The roles that a word of the columns `numerator` and `denominator` means ("flour" = both
/// flours, "fat" = fat and oil, "everything" = all); nothing for an unknown word.
std::optional<std::vector<Share>> shares_of(std::string_view word);

/// Flavour, garnish and the like: changing them moves no ratio.
bool is_free(Role);

}  // namespace kitchen
