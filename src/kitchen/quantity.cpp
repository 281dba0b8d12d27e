#include "kitchen/quantity.h"

#include <algorithm>
#include <array>

#include "base/folding.h"
#include "base/text.h"

namespace kitchen {
namespace {

struct UnitRow {
  Unit unit;
  Dimension dimension;
  std::int64_t numerator, denominator;  // of grams, millilitres or one
  std::string_view word;
  std::string_view spellings;  // folded, without points, between spaces
};

// Definitions: 1 lb = 453.59237 g; 1 imperial gallon = 4.54609 l, so a fluid ounce is 1/160 of it;
// 1 US gallon = 231 cubic inches of 16.387064 ml.
constexpr std::array<UnitRow, 20> kRows = {{
    {Unit::kMilligram, Dimension::kMass, 1, 1000, "mg", " mg milligram milligrams "},
    {Unit::kGram, Dimension::kMass, 1, 1, "g", " g gm gms gr grm grms gram grams gramme grammes "},
    {Unit::kKilogram, Dimension::kMass, 1000, 1, "kg",
     " kg kgs kilo kilos kilogram kilograms kilogramme kilogrammes "},
    {Unit::kOunce, Dimension::kMass, 45359237, 1600000, "oz", " oz ozs ounce ounces "},
    {Unit::kPound, Dimension::kMass, 45359237, 100000, "lb", " lb lbs pound pounds "},
    {Unit::kMillilitre, Dimension::kVolume, 1, 1, "ml",
     " ml mls mil mils millilitre millilitres milliliter milliliters cc "},
    {Unit::kCentilitre, Dimension::kVolume, 10, 1, "cl",
     " cl centilitre centilitres centiliter centiliters "},
    {Unit::kDecilitre, Dimension::kVolume, 100, 1, "dl",
     " dl decilitre decilitres deciliter deciliters "},
    {Unit::kLitre, Dimension::kVolume, 1000, 1, "l", " l ltr ltrs litre litres liter liters "},
    {Unit::kTeaspoon, Dimension::kVolume, 5, 1, "tsp",
     " tsp tsps ts tspn tspns tspoon tspoons teasp teaspoon teaspoons teaspoonful teaspoonfuls "
     "teaspoonsful "},
    {Unit::kDessertspoon, Dimension::kVolume, 10, 1, "dsp",
     " dsp dsps dstspn dessertspoon dessertspoons dessertspoonful dessertspoonfuls "},
    {Unit::kTablespoon, Dimension::kVolume, 15, 1, "tbsp",
     " tbsp tbsps tbs tbspn tbspns tblsp tblsps tblspn tblspns tbl tbls tablesp tablespoon "
     "tablespoons "
     "tablespoonful tablespoonfuls tablespoonsful "},
    {Unit::kCup, Dimension::kVolume, 250, 1, "cup", " cup cups cupful cupfuls "},
    {Unit::kFluidOunce, Dimension::kVolume, 284130625, 10000000, "fl oz",
     " floz fluidounce fluidounces flozs flounce flounces "},
    {Unit::kPint, Dimension::kVolume, 56826125, 100000, "pint", " pint pints pt pts "},
    {Unit::kAmericanCup, Dimension::kVolume, 2365882365, 10000000, "US cup", " uscup uscups "},
    {Unit::kAmericanFluidOunce, Dimension::kVolume, 295735295625, 10000000000, "US fl oz",
     " usfloz "},
    {Unit::kAmericanPint, Dimension::kVolume, 473176473, 1000000, "US pint", " uspint uspints "},
    {Unit::kPiece, Dimension::kCount, 1, 1, "", ""},
    {Unit::kToTaste, Dimension::kNone, 0, 1, "", ""},
}};

const UnitRow& row(Unit unit) { return kRows[static_cast<std::size_t>(unit)]; }

std::string plural(std::string_view word) {
  const auto ends = [&](std::string_view tail) { return word.ends_with(tail); };
  if (word == "each") return "each";
  if (word == "leaf") return "leaves";
  if (word == "loaf") return "loaves";
  if (word == "half") return "halves";
  if (ends("ch") || ends("sh") || ends("x") || ends("ss") || word == "tomato" || word == "potato")
    return std::string(word) + "es";
  if (ends("y") && word.size() > 2 &&
      std::string_view("aeiou").find(word[word.size() - 2]) == std::string_view::npos)
    return std::string(word.substr(0, word.size() - 1)) + "ies";
  return std::string(word) + "s";
}

bool many(const Quantity& q) { return q.most > Ratio(1); }

}  // namespace

Dimension dimension(Unit unit) { return row(unit).dimension; }

Ratio in_base_units(Unit unit) { return {row(unit).numerator, row(unit).denominator}; }

std::string_view unit_word(Unit unit) { return row(unit).word; }

std::optional<Unit> unit_named(std::string_view word) {
  // A capital T is a tablespoon where a small t is a teaspoon.
  if (word == "T" || word == "T.") return Unit::kTablespoon;
  if (word == "t" || word == "t.") return Unit::kTeaspoon;
  std::string bare = " ";
  for (const char c : base::folded(word)) {
    if (c != '.' && c != ' ') bare += c;
  }
  if (bare == " ") return std::nullopt;
  bare += ' ';
  for (const UnitRow& each : kRows) {
    if (each.spellings.find(bare) != std::string_view::npos) return each.unit;
  }
  // "teasoon", "tablespon": a letter wrong in a long word.
  constexpr std::size_t kLong = 7;
  const std::string word_alone = bare.substr(1, bare.size() - 2);
  if (word_alone.size() < kLong) return std::nullopt;
  for (const UnitRow& each : kRows) {
    for (const std::string& spelling : base::parts(each.spellings, ' ')) {
      if (spelling.size() >= kLong && base::edit_distance(spelling, word_alone) <= 1)
        return each.unit;
    }
  }
  return std::nullopt;
}

Quantity times(const Quantity& q, const Ratio& factor) {
  return {q.least * factor, q.most * factor, q.unit, q.piece};
}

std::optional<Quantity> converted(const Quantity& q, Unit unit) {
  if (q.unit == unit) return q;
  const Dimension of = dimension(unit);
  if (dimension(q.unit) != of || of == Dimension::kCount || of == Dimension::kNone)
    return std::nullopt;
  Quantity out = times(q, in_base_units(q.unit) / in_base_units(unit));
  out.unit = unit;
  return out;
}

std::string quantity_text(const Quantity& q) {
  if (!q.stated()) return "to taste";
  const bool metric = q.unit <= Unit::kLitre && q.unit != Unit::kOunce && q.unit != Unit::kPound;
  const auto amount = [&](const Ratio& r) {
    return metric ? base::decimal_text(r) : base::fraction_text(r);
  };
  std::string text = amount(q.least);
  if (q.most != q.least) text += " to " + amount(q.most);
  if (q.unit == Unit::kPiece) {
    if (!q.piece.empty() && q.piece != "each") text += " " + (many(q) ? plural(q.piece) : q.piece);
    return text;
  }
  std::string word(unit_word(q.unit));
  const bool spelt_out = word == "cup" || word == "pint" || word == "US cup" || word == "US pint";
  if (spelt_out && many(q)) word += "s";
  return text + " " + word;
}

}  // namespace kitchen
