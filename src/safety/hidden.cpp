#include "safety/hidden.h"

#include <algorithm>
#include <array>
#include <initializer_list>

#include "safety/rows.h"

namespace safety {
namespace {

using kitchen::Allergen;
using kitchen::Food;
using kitchen::Known;

constexpr kitchen::Word<Known> kHowWords[] = {{"contains", Known::kYes},
                                              {"check label", Known::kCheckLabel}};

// "No" is the weakest: what anybody says to be there, or doubts, counts.
Known stronger(Known a, Known b) {
  if (a == Known::kYes || b == Known::kYes) return Known::kYes;
  return a == Known::kCheckLabel ? a : b;
}

// A column that asks "is it fit for ...": no means that the matter is there.
Known opposite(Known fit) {
  if (fit == Known::kCheckLabel) return fit;
  return fit == Known::kYes ? Known::kNo : Known::kYes;
}

Known by_allergens(const Food& food, std::initializer_list<Allergen> allergens) {
  Known out = Known::kNo;
  for (const Allergen a : allergens) {
    if (food.contains.contains(a)) out = stronger(out, Known::kYes);
    if (food.check_for.contains(a)) out = stronger(out, Known::kCheckLabel);
  }
  return out;
}

Known meat(const Food& food) {
  // The categories of the shipped table.
  static constexpr std::array<std::string_view, 4> kMeats = {"beef", "lamb", "pork",
                                                             "poultry game"};
  const bool is_meat = std::find(kMeats.begin(), kMeats.end(), food.category) != kMeats.end();
  return is_meat ? Known::kYes : stronger(food.pork, food.beef);
}

Known by_columns(const Food& food, Matter matter) {
  switch (matter) {
    case Matter::kMeat:
      return meat(food);
    case Matter::kPork:
      return food.pork;
    case Matter::kBeef:
      return food.beef;
    case Matter::kFish:
      return by_allergens(food, {Allergen::kFish});
    case Matter::kShellfish:
      return by_allergens(food, {Allergen::kCrustaceans, Allergen::kMolluscs});
    case Matter::kGelatine:
      return food.gelatine;
    case Matter::kRennet:
      // No column of its own: food with milk that is not said to be vegetarian may be set with it.
      return food.contains.contains(Allergen::kMilk) && food.vegetarian != Known::kYes
                 ? Known::kCheckLabel
                 : Known::kNo;
    case Matter::kAlcohol:
      return food.alcohol;
    case Matter::kMilk:
      return by_allergens(food, {Allergen::kMilk});
    case Matter::kAnimal:
      return stronger(opposite(food.vegan), by_columns(food, Matter::kSlaughter));
    case Matter::kSlaughter:
      return opposite(food.vegetarian);
  }
  return Known::kCheckLabel;
}

// What else is of an animal that died.
constexpr std::array<Matter, 7> kOfSlaughter = {
    Matter::kMeat,      Matter::kPork,     Matter::kBeef,  Matter::kFish,
    Matter::kShellfish, Matter::kGelatine, Matter::kRennet};

}  // namespace

base::Result<Hidden> read_hidden(std::string_view csv, const std::string& file_name,
                                 const kitchen::Foods& foods) {
  Rows rows(base::read_csv(csv, file_name), file_name, "hidden");
  if (!rows.has_columns({"food", "brings", "how", "why", "source"})) return rows.problems();
  Hidden out;
  while (rows.next()) {
    HiddenIn row;
    row.food = rows.needed("food");
    if (!row.food.empty()) rows.check_food("food", row.food, foods);
    row.matter = rows.word("brings", kMatterWords);
    row.how = rows.word("how", kHowWords);
    row.why = rows.needed("why");
    row.source = rows.needed("source");
    out.push_back(std::move(row));
  }
  if (!rows.problems().empty()) return rows.problems();
  return out;
}

Known brings(const Food& food, Matter matter, const Hidden& hidden) {
  Known out = by_columns(food, matter);
  // A food the school entered from its label is what the label says, not what the usual brand
  // hides.
  const bool from_label = food.schools_own && food.match == kitchen::Match::kLabel;
  for (const HiddenIn& row : hidden) {
    if (!from_label && row.food == food.key && row.matter == matter) out = stronger(out, row.how);
  }
  if (matter == Matter::kSlaughter || matter == Matter::kAnimal) {
    for (const Matter each : kOfSlaughter) out = stronger(out, brings(food, each, hidden));
  }
  return out;
}

std::string why_hidden(const Food& food, Matter matter, const Hidden& hidden) {
  for (const HiddenIn& row : hidden) {
    if (row.food == food.key && row.matter == matter) return row.why;
  }
  return {};
}

}  // namespace safety
