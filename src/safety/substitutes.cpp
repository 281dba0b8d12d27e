#include "safety/substitutes.h"

#include <algorithm>
#include <cmath>

#include "base/folding.h"
#include "safety/rows.h"

namespace safety {
namespace {

using kitchen::Foods;
using kitchen::Ingredient;

constexpr double kEggGrams = 50;  // USDA SR26 01123: 1 large = 50 g; a British medium egg, shelled

std::optional<Measure> measure_in(const std::string& text) {
  const auto space = text.find(' ');
  if (space == std::string::npos) return std::nullopt;
  const auto amount = base::number_in(text.substr(0, space));
  const std::string unit = text.substr(space + 1);
  const bool known = unit == "g" || unit == "ml" || unit == "egg" || unit == "piece";
  if (!amount || !(*amount > 0) || *amount > 10000 || !known) return std::nullopt;
  return Measure{*amount, unit};
}

Measure measure(Rows& rows, std::string_view column, const std::string& text) {
  if (const auto read = measure_in(text)) return *read;
  rows.wrong("value", column, base::say(base::in_quotes(text), " is no amount."),
             "Write a number, a space and g, ml, egg or piece: 45 ml.");
  return {1, "piece"};
}

std::vector<Part> parts(Rows& rows, const Foods& foods) {
  std::vector<Part> out;
  for (const std::string& text : rows.list("use", ';')) {
    const auto equals = text.find('=');
    if (equals == std::string::npos) {
      rows.wrong("value", "use", base::say(base::in_quotes(text), " has no equals sign."),
                 "Write key=amount unit, with semicolons between: linseed=7 g;water=45 ml.");
      continue;
    }
    const std::string key = text.substr(0, equals);
    rows.check_food("use", key, foods);
    out.push_back({key, measure(rows, "use", text.substr(equals + 1))});
  }
  if (out.empty()) rows.needed("use");
  return out;
}

// How many times the row's amount an ingredient is, or nothing when the units do not meet.
std::optional<double> times(const Substitute& row, const Ingredient& ingredient) {
  if (!(ingredient.amount > 0)) return std::nullopt;
  const std::string unit = kitchen::singular(base::folded(ingredient.unit));
  if (unit == row.per.unit) return ingredient.amount / row.per.amount;
  const bool counted = unit != "g" && unit != "ml" && unit != "kg" && unit != "l";
  if (row.per.unit == "egg" && unit == "g") return ingredient.amount / kEggGrams;
  if (row.per.unit == "egg" && (unit.empty() || unit.find("egg") != std::string::npos))
    return ingredient.amount;
  // Sheets, wrappers, cubes: pieces by another word.
  if (row.per.unit == "piece" && counted) return ingredient.amount / row.per.amount;
  return std::nullopt;
}

// To the spoon: whole grams and millilitres above 10, halves below, tenths below 1.
std::string rounded(double amount) {
  const double step = amount >= 10 ? 1 : amount >= 1 ? 0.5 : 0.1;
  return base::number_text(std::max(step, std::round(amount / step) * step));
}

std::string measured(double amount, const std::string& unit, const std::string& name) {
  const std::string number = rounded(amount);
  if (unit == "piece" || unit == "egg") return number + " " + name;
  return number + " " + unit + " " + name;
}

std::string name_of(const std::string& key, const Foods& foods) {
  const kitchen::Food* food = foods.find(key);
  return food == nullptr ? key : food->name;
}

}  // namespace

base::Result<Substitutes> read_substitutes(std::string_view csv, const std::string& file_name,
                                           const Foods& foods) {
  Rows rows(base::read_csv(csv, file_name), file_name, "substitutes");
  if (!rows.has_columns({"foods", "function", "per", "use", "method_change", "does_not", "source"}))
    return rows.problems();
  Substitutes out;
  while (rows.next()) {
    Substitute row;
    row.foods = rows.foods("foods", foods);
    if (row.foods.empty()) rows.needed("foods");
    row.function = rows.word("function", kFunctionWords);
    row.per = measure(rows, "per", rows.cell("per"));
    row.parts = parts(rows, foods);
    row.method_change = rows.needed("method_change");
    row.does_not = rows.cell("does_not");
    row.source = rows.needed("source");
    for (const Part& part : row.parts) {
      if (std::find(row.foods.begin(), row.foods.end(), part.food) == row.foods.end()) continue;
      rows.wrong("self", "use", base::say(base::in_quotes(part.food), " stands for itself."),
                 "Name another food.");
    }
    out.push_back(std::move(row));
  }
  if (!rows.problems().empty()) return rows.problems();
  return out;
}

std::vector<const Substitute*> substitutes_for(const Substitutes& all, std::string_view food,
                                               Function function) {
  std::vector<const Substitute*> out;
  for (const Substitute& row : all) {
    const bool stands = std::find(row.foods.begin(), row.foods.end(), food) != row.foods.end();
    if (stands && row.function == function) out.push_back(&row);
  }
  return out;
}

Summary brought_by(const Substitute& row, const Evidence& evidence) {
  Summary out{};
  for (const Part& part : row.parts) {
    Ingredient ingredient;
    ingredient.food = part.food;
    const Statements said = statements(ingredient, evidence.foods, evidence.labels);
    for (std::size_t i = 0; i < kAllergenCount; ++i) out[i] = stronger(out[i], said[i].stated);
  }
  return out;
}

Stated brought_by(const Substitute& row, const Need& need, const Evidence& evidence) {
  Stated out = Stated::kNotListed;
  for (const Part& part : row.parts) {
    Ingredient ingredient;
    ingredient.food = part.food;
    out = stronger(out, statement(ingredient, need, evidence).stated);
  }
  return out;
}

std::string amount_words(const Substitute& row, const Ingredient& ingredient, const Foods& foods) {
  const auto factor = times(row, ingredient);
  std::vector<std::string> parts;
  for (const Part& part : row.parts)
    parts.push_back(measured(part.measure.amount * factor.value_or(1), part.measure.unit,
                             name_of(part.food, foods)));
  std::string words = base::joined(parts);
  if (!factor) {
    words += base::say(" for each ", row.per.amount == 1
                                         ? row.per.unit
                                         : base::number_text(row.per.amount) + " " + row.per.unit);
  }
  return words;
}

}  // namespace safety
