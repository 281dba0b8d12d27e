// Religious and dietary rules, about foods and about things.
//
// "Halal: no pork, no alcohol even if it boils off, and whether meat, gelatine and rennet are halal
// only the label says; own board, knife and pan." The rules here are the usual ones, common
// practice without a source; families differ, and what the family says goes before this page.
#pragma once

#include <string>
#include <vector>

#include "safety/hidden.h"
#include "safety/needs.h"
#include "safety/statements.h"

namespace safety {

/// What a rule may ask to be a cook's own.
enum class Thing : std::int8_t {
  kBoard,
  kKnife,
  kPan,
  kOil,
  kUtensils,
  kSieve,
  kToaster,
  kCloth,
  kShelf
};
inline constexpr kitchen::Word<Thing> kThingWords[] = {
    {"board", Thing::kBoard},     {"knife", Thing::kKnife},
    {"pan", Thing::kPan},         {"frying oil", Thing::kOil},
    {"spoons", Thing::kUtensils}, {"sieve and colander", Thing::kSieve},
    {"toaster", Thing::kToaster}, {"cloth", Thing::kCloth},
    {"shelf", Thing::kShelf}};

struct ThingRule {
  Thing thing = Thing::kBoard;
  std::string says;  ///< "own frying oil, never the oil that meat or fish was fried in"
  friend bool operator==(const ThingRule&, const ThingRule&) = default;
};

struct DietRule {
  Diet diet = Diet::kVegetarian;
  std::vector<Matter> never;    ///< not allowed
  std::vector<Matter> asks;     ///< allowed from the right source, which only the label tells
  std::string asks_for;         ///< "is it halal": what to ask of those
  bool meat_with_milk = false;  ///< not allowed together in a dish
  std::vector<ThingRule> things;
};

/// The usual rule of a diet. Source: common practice, no source.
const DietRule& rule_of(Diet);

/// What is to be a cook's own for a need: the diet's things, or for an allergen the purple things
/// of a free-from dish (board colours: UK catering convention, from memory).
std::vector<ThingRule> own_things(const Need&);

/// All that is known of foods, borrowed for a question: must outlive it.
struct Evidence {
  const kitchen::Foods& foods;
  const Labels& labels;
  const Hidden& hidden;
};

/// What an ingredient brings of what a need forbids, and who says so.
Statement statement(const kitchen::Ingredient&, const Need&, const Evidence&);

/// The ingredients of a dish, or of one of its steps, that bring what a need forbids, may or are
/// not known; strongest first. Meat and milk in one dish are found where the rule says so (the
/// milk). A dish without ingredients gives one finding without an ingredient (-1): not known.
Findings findings(const kitchen::Dish&, const Need&, const Evidence&);
Findings findings_of_step(const kitchen::Dish&, int step, const Need&, const Evidence&);

}  // namespace safety
