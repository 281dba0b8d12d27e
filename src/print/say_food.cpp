#include "print/say_food.h"

#include <map>

#include <fmt/format.h>

#include "base/text.h"
#include "kitchen/words.h"
#include "print/words.h"

namespace print {
namespace {

using kitchen::Food;
using kitchen::Known;

std::string_view unit_of(kitchen::NutrientUnit unit) {
  switch (unit) {
    case kitchen::NutrientUnit::kKcal:
      return "kcal";
    case kitchen::NutrientUnit::kGrams:
      return "g";
    case kitchen::NutrientUnit::kMilligrams:
      return "mg";
    case kitchen::NutrientUnit::kMicrograms:
      return "µg";
  }
  return "";
}

std::string_view match_words(kitchen::Match match) {
  switch (match) {
    case kitchen::Match::kExact:
      return "the same food";
    case kitchen::Match::kNear:
      return "the same kind of food, with a small difference";
    case kitchen::Match::kPoor:
      return "a pointer only: use the packet's label";
    case kitchen::Match::kNone:
      return "no figures: enter them from the packet's label";
    case kitchen::Match::kLabel:
      return "from a packet's label";
  }
  return "";
}

std::string_view storage_words(kitchen::Storage storage) {
  switch (storage) {
    case kitchen::Storage::kAmbient:
      return "in the dry store";
    case kitchen::Storage::kAmbientThenChilled:
      return "in the dry store, once opened in the fridge";
    case kitchen::Storage::kChilled:
      return "in the fridge";
    case kitchen::Storage::kFrozen:
      return "in the freezer";
  }
  return "";
}

std::string_view five_a_day_words(kitchen::FiveADay kind) {
  switch (kind) {
    case kitchen::FiveADay::kNo:
      return "does not count";
    case kitchen::FiveADay::kFresh:
      return "80 g are a portion";
    case kitchen::FiveADay::kDried:
      return "30 g are a portion";
    case kitchen::FiveADay::kJuice:
      return "150 ml are a portion, once a day";
    case kitchen::FiveADay::kPulses:
      return "80 g cooked are a portion, once a day";
  }
  return "";
}

std::string_view known_words(Known known) {
  return known == Known::kYes ? "yes" : known == Known::kNo ? "no" : "check the label";
}

std::string allergen_words(const kitchen::Allergens& allergens) {
  std::vector<std::string> names;
  for (const kitchen::Allergen a : allergens) names.emplace_back(kitchen::word(a));
  return listed(names);
}

void line(std::string& out, std::string_view what, std::string_view value) {
  if (!value.empty()) out += fmt::format("  {:<18}{}\n", what, value);
}

void say_figures(std::string& out, const Food& food) {
  out += "\n  In 100 g of what is eaten\n";
  std::vector<std::string> unknown;
  for (const kitchen::NutrientName& n : kitchen::kNutrientNames) {
    if (const auto value = food.nutrients[n.nutrient]) {
      out += fmt::format("    {:<20}{:>9} {}\n", n.name, base::number_text(*value),
                         unit_of(n.unit));
    } else {
      unknown.emplace_back(n.name);
    }
  }
  if (!unknown.empty()) out += "    not known: " + listed(unknown) + "\n";
}

}  // namespace

std::string say_food(const Food& food) {
  std::string out = food.name + (food.schools_own ? " (the school's own)" : "") + "\n";
  line(out, "key", food.key);
  line(out, "also called", base::joined(food.other_names, "or"));
  line(out, "figures from", food.source);
  line(out, "which is", match_words(food.match));
  line(out, "kept", storage_words(food.storage));
  line(out, "contains",
       food.contains.empty() ? "none of the fourteen as an ingredient"
                             : allergen_words(food.contains));
  if (!food.check_for.empty()) line(out, "check label for", allergen_words(food.check_for));
  line(out, "vegetarian", known_words(food.vegetarian));
  line(out, "vegan", known_words(food.vegan));
  for (const auto& [what, known] :
       {std::pair{"pork", food.pork}, std::pair{"beef", food.beef},
        std::pair{"alcohol", food.alcohol}, std::pair{"gelatine", food.gelatine}}) {
    if (known != Known::kNo) line(out, what, known_words(known));
  }
  line(out, "five a day", five_a_day_words(food.five_a_day));
  if (food.edible)
    line(out, "edible share", fmt::format("{:.0f} % ({})", 100 * *food.edible, food.edible_source));
  line(out, "density",
       food.density
           ? fmt::format("{} g a ml ({})", base::number_text(*food.density), food.density_source)
           : "not known: volumes are not turned into weights");
  for (const kitchen::PieceWeight& piece : food.pieces)
    line(out, "one " + (piece.piece == "each" ? std::string("piece") : piece.piece),
         fmt::format("{} g ({})", base::number_text(piece.grams), piece.source));
  line(out, "note", food.note);
  say_figures(out, food);
  return out + "\nA table is not your packet: its label decides, above all on allergens.\n";
}

std::string say_found(const std::vector<kitchen::FoundFood>& found) {
  std::string out = "No food has exactly this name. Nearest:\n";
  for (const kitchen::FoundFood& each : found) {
    out += fmt::format("  {:<32} {}{}\n", each.food->key, each.food->name,
                       each.by == each.food->name ? "" : " (" + each.by + ")");
  }
  return out + "Say one of the keys to see all that is known of it.\n";
}

std::string say_foods(const kitchen::Foods& foods) {
  std::map<std::string, int> kinds;
  for (const Food& food : foods.all()) ++kinds[food.category];
  std::string out = fmt::format("{} foods.\n", foods.all().size());
  for (const auto& [kind, count] : kinds)
    out += fmt::format("  {:>4}  {}\n", count, kind.empty() ? "without a kind" : kind);
  return out + "Look one up by any of its names: benchbell foods scallion\n";
}

}  // namespace print
