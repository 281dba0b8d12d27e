#include "print/say_label.h"

#include <algorithm>

#include <fmt/format.h>

#include "base/text.h"
#include "nutrition/five_a_day.h"
#include "nutrition/free_sugars.h"
#include "nutrition/front_of_pack.h"
#include "nutrition/label.h"
#include "nutrition/profile.h"
#include "print/label_details.h"
#include "print/paper.h"
#include "print/words.h"

namespace print {
namespace {

using namespace nutrition;

std::string with_unit(const Figure& figure, Rounding rounding, const std::string& unit) {
  const std::string number = label_number(figure, rounding);
  return number == "not known" ? number : number + " " + unit;
}

std::string percent(const Figure& portion, std::optional<double> day) {
  if (!day) return {};
  const std::string share = fmt::format("{:.0f} %", 100 * portion.amount / *day);
  return portion.whole() ? share : "at least " + share;
}

void say_table(std::string& out, const DishNutrients& dish, const Label& label) {
  out += fmt::format("  {:<24}{:<22}{:<22}{}\n", "", "a portion",
                     label.drink ? "100 g (ml)" : "100 g", "of an adult's day");
  const auto row = [&](const LabelLine& line, bool named) {
    const std::string name = line.name.starts_with("of which") ? "  " + line.name : line.name;
    out += fmt::format("  {:<24}{:<22}{:<22}{}\n", named ? name : "",
                       with_unit(line.portion, line.rounding, line.unit),
                       with_unit(line.per_100_g, line.rounding, line.unit),
                       percent(line.portion, line.reference));
    out.erase(out.find_last_not_of(" \n") + 1);
    out += "\n";
  };
  for (std::size_t i = 0; i < label.lines.size(); ++i)
    row(label.lines[i], i == 0 || label.lines[i].name != label.lines[i - 1].name);
  const Figure least = dish.portion(Held::kFreeSugars), most = dish.portion(Held::kFreeSugarsMost);
  Figure free = least;
  free.most = most.most;
  out += fmt::format("  {:<24}{}\n", "free sugars (estimate)",
                     with_unit(free, Rounding::kGrams, "g"));
  if (!label.vitamins.empty())
    out += "\n  Vitamins and minerals in significant amounts (15 % of an adult's day in 100 g)\n";
  for (const LabelLine& line : label.vitamins) row(line, true);
}

std::string_view pattern(std::optional<Colour> colour) {
  if (!colour) return "[ ? ]";
  return *colour == Colour::kGreen ? "[   ]" : *colour == Colour::kAmber ? "[//.]" : "[###]";
}

void say_colours(std::string& out, const DishNutrients& dish, bool drink) {
  out += "\nColours of the front of a pack\n";
  for (const ColourLine& line : colours(dish, drink)) {
    std::string words;
    if (line.colour)
      words = fmt::format("{} ({})", level_of(*line.colour), word_for(*line.colour));
    else if (line.at_least)
      words = fmt::format("at least {}: what is missing could change it", level_of(*line.at_least));
    else
      words = "not known: the dish could not be weighed";
    if (line.by_portion) words += ", because a portion is large";
    out += fmt::format("  {} {:<11}{}\n", pattern(line.colour), name_of(line.what), words);
  }
}

void say_five_a_day(std::string& out, const DishNutrients& dish, const CookingTables& tables) {
  const FiveADayCount count = five_a_day(dish, tables);
  // Rounded down: half a portion is not one.
  const double shown = std::floor(count.portions() * 10 + 1e-9) / 10;
  out += fmt::format("\nFive a day: {}{} in a portion", count.unknown.empty() ? "" : "at least ",
                     base::number_text(shown));
  std::vector<std::string> parts;
  for (const FiveADayShare& share : count.shares) {
    parts.push_back(fmt::format("{} {:.0f} {}", dish.lines[share.line].name, share.amount,
                                share.kind == kitchen::FiveADay::kJuice ? "ml" : "g"));
  }
  out += parts.empty() ? ".\n" : " (" + listed(parts) + ").\n";
}

void say_profile(std::string& out, const DishNutrients& dish, bool drink) {
  const DishProfile scored = profile_of(dish, drink);
  if (!scored.profile) return;
  const Profile& p = *scored.profile;
  out += fmt::format(
      "Nutrient profile of 2004/5: {}{} (energy {}, saturates {}, sugars {}, sodium {}; "
      "less fruit, vegetables "
      "and nuts {}, fibre {}, protein {}{}). The model calls {} points or more \"less healthy\".\n",
      base::counted(p.score(), "point", "points"),
      scored.sure ? "" : ", not sure: figures are missing", p.energy, p.saturates, p.sugars,
      p.sodium, p.fruit_veg_nuts, p.fibre, p.protein,
      p.protein_counts ? "" : ", which does not count here", drink ? 1 : 4);
}

void say_day(std::string& out, const DishNutrients& dish, std::optional<Band> band) {
  const std::vector<Band> bands = band ? std::vector{*band}
                                       : std::vector{Band::kGirls11, Band::kBoys11};
  out += "\nShare of a day in a portion (advice for the age, from memory)\n";
  out += fmt::format("  {:<16}", "");
  for (const Band each : bands) out += fmt::format("{:<28}", name_of(each));
  out += "\n";
  std::vector<std::vector<NeedShare>> shares;
  for (const Band each : bands) shares.push_back(shares_of_day(dish, each));
  for (std::size_t i = 0; i < shares[0].size(); ++i) {
    const NeedShare& first = shares[0][i];
    if (first.need->unit == "kJ") continue;
    out += fmt::format("  {:<16}", first.need->name);
    for (const auto& of_band : shares) {
      const char* least = of_band[i].portion.whole() ? "" : "at least ";
      out += fmt::format("{:<28}",
                         fmt::format("{}{:.0f} %{}", least, 100 * of_band[i].share,
                                     first.need->aim == Aim::kAtMost ? " of the most" : ""));
    }
    out.erase(out.find_last_not_of(' ') + 1);
    out += "\n";
  }
}

}  // namespace

std::string nutrition_cautions() {
  return "Figures are estimates from tables of foods, not an analysis. The labels of your own "
         "packets win, for allergens\n"
         "always. Not medical advice; a pupil's own needs are not read off a table.\n";
}

std::string say_label(const DishNutrients& dish, const CookingTables& tables,
                      const LabelPage& page) {
  std::string out = fmt::format(
      "{}: {} of {} g as served{}\n\n", tame(dish.dish),
      counted(dish.portions, "portion", "portions"),
      label_number(dish.portion_grams(), Rounding::kEnergy),
      dish.weighed_by_hand ? " (weighed)" : " (estimate; weigh the finished dish to be sure)");
  say_table(out, dish, label_of(dish, page.drink));
  say_colours(out, dish, page.drink);
  say_five_a_day(out, dish, tables);
  say_profile(out, dish, page.drink);
  say_day(out, dish, page.band);
  out += fmt::format("\nKnown: {:.0f} % of the weight that goes in has figures of its own.\n",
                     100 * dish.coverage);
  for (const std::string& sentence : missing_words(dish)) out += "  - " + sentence + "\n";
  if (page.details)
    out += details_words(dish);
  else
    out += "Open every figure: --details\n";
  return out + "\n" + nutrition_cautions();
}

}  // namespace print
