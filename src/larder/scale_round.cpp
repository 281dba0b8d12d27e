#include "larder/scale_round.h"

#include <optional>
#include <vector>

#include "base/text.h"

namespace larder {
namespace {

using base::say;
using kitchen::Dimension;
using kitchen::Unit;

const Ratio kFineBelow = 20;  // grams and millilitres
const Ratio kFineGrams = 1, kGrams = 5, kJug = 5;
const Ratio kQuarterTeaspoon{5, 4};  // ml
const Ratio kSpoonsBelow = 60;       // ml: four tablespoons, then the jug is quicker
const Ratio kPieces{1, 2}, kFinePieces{1, 4};

bool in_spoons(Unit unit) {
  return unit == Unit::kTeaspoon || unit == Unit::kDessertspoon || unit == Unit::kTablespoon;
}

// 18.75 ml: "1 tbsp + 3/4 tsp".
std::string spoons_text(const Ratio& ml) {
  const std::int64_t tablespoons = (ml / Ratio(15)).floor();
  const Ratio teaspoons = (ml - Ratio(15) * Ratio(tablespoons)) / Ratio(5);
  std::vector<std::string> parts;
  if (tablespoons > 0) parts.push_back(say(tablespoons, " tbsp"));
  if (teaspoons > Ratio(0)) parts.push_back(say(base::fraction_text(teaspoons), " tsp"));
  return parts.size() == 2 ? say(parts[0], " + ", parts[1]) : parts.empty() ? "0" : parts[0];
}

std::string text_of(const Quantity& q, bool spoons) {
  const Ratio amount = q.middle();
  if (q.unit == Unit::kMillilitre && spoons) return spoons_text(amount);
  if (q.unit == Unit::kMillilitre && amount < kFineBelow && amount > Ratio(0))
    return say(base::decimal_text(amount), " ml (", spoons_text(amount), ")");
  if (q.unit == Unit::kGram && amount >= Ratio(1000))
    return say(base::decimal_text(amount / Ratio(1000), 3), " kg");
  if (q.unit == Unit::kMillilitre && amount >= Ratio(1000))
    return say(base::decimal_text(amount / Ratio(1000), 3), " litres");
  return quantity_text(q);
}

Quantity in_measured_unit(const Quantity& q) {
  switch (dimension(q.unit)) {
    case Dimension::kMass:
      return Quantity::of(converted(q, Unit::kGram)->middle(), Unit::kGram);
    case Dimension::kVolume:
      return Quantity::of(converted(q, Unit::kMillilitre)->middle(), Unit::kMillilitre);
    default:
      return Quantity::pieces(q.middle(), q.piece);
  }
}

Ratio step_for(const Quantity& exact, bool spoons, bool whole_pieces) {
  const Ratio amount = exact.middle();
  if (exact.unit == Unit::kGram) return amount < kFineBelow ? kFineGrams : kGrams;
  if (exact.unit == Unit::kMillilitre)
    return spoons || amount < kFineBelow ? kQuarterTeaspoon : kJug;
  if (whole_pieces) return 1;
  return amount < Ratio(1) ? kFinePieces : kPieces;
}

}  // namespace

Shown shown(const Quantity& quantity, bool whole_pieces) {
  Shown out;
  if (!quantity.stated()) {
    out.exact = out.shown = quantity;
    out.text = "to taste";
    return out;
  }
  out.exact = out.shown = in_measured_unit(quantity);
  const Ratio amount = out.exact.middle();
  const bool spoons = in_spoons(quantity.unit) && amount < kSpoonsBelow;
  out.step = step_for(out.exact, spoons, whole_pieces);
  const Ratio rounded = base::rounded_to(amount, out.step);
  if (rounded == Ratio(0) && amount > Ratio(0)) {
    // Nothing would be left of it: said as it is.
    out.step = 0;
    out.too_small = true;
    out.text = say(base::decimal_text(amount, 3), " ", unit_word(out.exact.unit),
                   out.exact.piece.empty() ? "" : out.exact.piece);
    return out;
  }
  out.shown.least = out.shown.most = rounded;
  out.error = rounded - amount;
  out.text = text_of(out.shown, spoons);
  return out;
}

}  // namespace larder
