// What may be said of the fourteen allergens in an ingredient, a dish, a step, a place or a lesson,
// and who says it.
//
// "Curry paste: mustard: check the label (table of foods)." A statement is what somebody wrote
// down, never a promise: the weakest one, "not listed", still does not say "free from". Only a
// recorded reading of the label in use (labels.h) takes "check the label" away.
#pragma once

#include <array>
#include <cstdint>
#include <string>
#include <vector>

#include "kitchen/foods.h"
#include "kitchen/lesson.h"
#include "safety/labels.h"

namespace safety {

using kitchen::Allergen;
using kitchen::Allergens;

inline constexpr std::size_t kAllergenCount = 14;
/// All fourteen, in the order of the file words.
inline constexpr std::array<Allergen, kAllergenCount> kFourteen = [] {
  std::array<Allergen, kAllergenCount> all{};
  for (std::size_t i = 0; i < kAllergenCount; ++i) all[i] = static_cast<Allergen>(i);
  return all;
}();

/// From nothing said to said to be in it. Where two sources speak of one thing the stronger wins.
enum class Stated : std::int8_t {
  kNotListed,   ///< every source looked at leaves it out; not the same as "free from"
  kUnknown,     ///< the food is in no table, or its label is unread
  kCheckLabel,  ///< differs from brand to brand
  kMayContain,  ///< the label warns of traces
  kContains,
};
/// True for everything but "not listed": it must be kept from whoever must not have it.
constexpr bool may_be_there(Stated s) { return s != Stated::kNotListed; }
/// "contains", "may contain", "check the label", "not known", "not listed".
std::string_view word(Stated);
constexpr Stated stronger(Stated a, Stated b) { return a < b ? b : a; }

/// Something said of one allergen or rule, and by whom: "the dish", "the table of foods", "the
/// label of the 1 kg bag, read 2026-11-02".
struct Statement {
  Stated stated = Stated::kUnknown;
  std::string from;
  friend bool operator==(const Statement&, const Statement&) = default;
};
using Statements = std::array<Statement, kAllergenCount>;  ///< by Allergen
using Summary = std::array<Stated, kAllergenCount>;        ///< by Allergen

/// An ingredient that is the reason for a statement about a dish.
struct Finding {
  int ingredient = 0;  ///< index into Dish::ingredients; -1 = the dish lists none
  Statement statement;
  friend bool operator==(const Finding&, const Finding&) = default;
};
using Findings = std::vector<Finding>;

/// The food an ingredient names: by its key, else by exactly its name or another name; nothing
/// rather than something near (a likeness is no reason to trust a list of allergens).
const kitchen::Food* food_of(const kitchen::Ingredient&, const kitchen::Foods&);

/// What is said of an ingredient, allergen by allergen.
Statements statements(const kitchen::Ingredient&, const kitchen::Foods&, const Labels&);

/// The strongest of some findings; "not listed" when there are none.
Stated strongest(const Findings&);
/// Strongest first, as written among equals.
void sort_by_strength(Findings&);

/// The whole dish. A dish that lists no ingredient is not known.
Summary summary(const kitchen::Dish&, const kitchen::Foods&, const Labels&);
/// What a step brings to its kit: of the ingredients it names, or of all of them (as rule K2).
Summary summary_of_step(const kitchen::Dish&, int step, const kitchen::Foods&, const Labels&);
/// All dishes of a cook, of the cooks of a place, of the lesson. A cook without dishes brings
/// nothing.
Summary summary_of_cook(const kitchen::Lesson&, int cook, const kitchen::Foods&, const Labels&);
Summary summary_of_place(const kitchen::Lesson&, int place, const kitchen::Foods&, const Labels&);
Summary summary_of_lesson(const kitchen::Lesson&, const kitchen::Foods&, const Labels&);

/// The stronger statement of each allergen.
Summary stronger(const Summary&, const Summary&);
constexpr std::size_t at(Allergen a) { return static_cast<std::size_t>(a); }

}  // namespace safety
