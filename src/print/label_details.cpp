#include "print/label_details.h"

#include <algorithm>

#include <fmt/format.h>

#include "base/text.h"
#include "nutrition/free_sugars.h"
#include "nutrition/per_food.h"
#include "print/paper.h"
#include "print/words.h"

namespace print {
namespace {

using namespace nutrition;

const std::vector<What>& of_label() {
  static const std::vector<What> kOfLabel = {
      Nutrient::kFat,    Nutrient::kSaturates, Held::kCarbohydrate,
      Nutrient::kSugars, Nutrient::kFibre,     Held::kLabelProtein,
      Nutrient::kSodium, Held::kFreeSugars,    Held::kAlcohol};
  return kOfLabel;
}

std::string grams_words(const Line& line) {
  if (line.to_taste) return "to taste";
  return line.grams ? fmt::format("{:.0f} g", *line.grams) : std::string("no weight");
}

void say_ingredient(std::string& out, const Line& line) {
  out += fmt::format("  {}: {}", tame(line.name), grams_words(line));
  if (!line.how.empty() && !line.to_taste) out += ", " + line.how;
  if (!line.sure) out += " (common practice or a range, not measured)";
  out += "\n";
  if (line.food != nullptr)
    out += fmt::format("      figures: {} ({})\n", line.food->name, line.food->source);
  if (!line.problem.empty()) out += "      " + line.problem + "\n";
  out += "      cooking: " + line.cooked.why + "\n";
  if (line.food != nullptr)
    out += fmt::format("      free sugars: {}\n", free_sugars(*line.food).why);
}

void say_total(std::string& out, const DishNutrients& dish, What what) {
  const Total& total = dish.total(what);
  out += fmt::format("  {}, whole dish: {}{:.4g} {}, {:.0f} % of the weight known\n", name_of(what),
                     total.whole.whole() ? "" : "at least ", total.whole.amount, unit_of(what),
                     100 * total.coverage);
  for (const Contribution& part : total.parts) {
    const Line& line = dish.lines[part.line];
    if (part.amount && *part.amount == 0) continue;
    if (!part.amount) {
      out += fmt::format("      {}: missing\n", tame(line.name));
      continue;
    }
    out += fmt::format("      {}: {:.4g} {} = {:.4g} g at {:.4g} in 100 g", tame(line.name),
                       *part.amount, unit_of(what), line.grams.value_or(0),
                       part.per_100_g.value_or(0));
    if (part.kept != 1)
      out += fmt::format(", of which {:.0f} % are left after cooking", 100 * part.kept);
    out += "\n";
  }
}

}  // namespace

std::vector<std::string> missing_words(const DishNutrients& dish) {
  std::vector<std::string> out;
  for (std::size_t i = 0; i < dish.lines.size(); ++i) {
    const Line& line = dish.lines[i];
    std::vector<std::string> names;
    for (const What what : of_label()) {
      const auto& missing = dish.total(what).missing;
      if (std::find(missing.begin(), missing.end(), i) == missing.end()) continue;
      names.emplace_back(what == Nutrient::kSodium ? "salt" : name_of(what));
    }
    if (names.empty()) continue;
    const std::string name = tame(line.name);
    if (line.to_taste)
      out.push_back(
          fmt::format("{}: how much goes in is not said, so {} can be more.", name, listed(names)));
    else if (!line.problem.empty())
      out.push_back(fmt::format("{}: {}", name, line.problem));
    else if (!has_figures(*line.food))
      out.push_back(fmt::format(
          "{} ({}): the table has no figures of this very food; enter your packet's label.", name,
          grams_words(line)));
    else
      out.push_back(fmt::format("{} ({}): the table does not say {}.", name, grams_words(line),
                                listed(names)));
  }
  return out;
}

std::string details_words(const DishNutrients& dish) {
  std::string out = "\nHow each ingredient was weighed and cooked\n";
  for (const Line& line : dish.lines) say_ingredient(out, line);
  out += "\nWhat each ingredient brings\n";
  for (const What what : of_label()) say_total(out, dish, what);
  for (std::size_t w = 0; w < kWhats; ++w) {
    const What what = What::at(w);
    if (std::find(of_label().begin(), of_label().end(), what) == of_label().end() &&
        what != Held::kFreeSugarsMost)
      say_total(out, dish, what);
  }
  if (!dish.retention_source.empty())
    out += "\nShares of vitamins left after cooking: " + dish.retention_source + ".\n";
  return out +
         "Protein is nitrogen x 6.25, carbohydrate is total less fibre, salt is sodium x 2.5 "
         "(Regulation (EU) No "
         "1169/2011).\n";
}

}  // namespace print
