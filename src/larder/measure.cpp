#include "larder/measure.h"

#include <utility>

#include "base/text.h"
#include "kitchen/weigh.h"

namespace larder {

using base::in_quotes;
using base::say;
using kitchen::Dimension;
using kitchen::Food;
using kitchen::Quantity;

namespace {

std::string pieces_word(const std::string& piece, bool many) {
  if (piece.empty()) return "";
  if (!many) return piece;
  if (piece.ends_with("s") || piece.ends_with("h")) return piece + "es";
  if (piece == "leaf") return "leaves";
  if (piece.ends_with("o")) return piece + "es";
  if (piece.ends_with("y") && !piece.ends_with("ay"))
    return piece.substr(0, piece.size() - 1) + "ies";
  return piece + "s";
}

base::Result<Ratio> pieces(const Quantity& q, const Food& food, const Measure& measure) {
  const bool same = q.piece == measure.piece || (q.piece == "each" && measure.piece.empty());
  if (kitchen::dimension(q.unit) == Dimension::kCount && same) return q.middle();
  return base::Problem{
      "larder.other_pieces", "", "",
      say(in_quotes(food.name), " is counted in ",
          measure.piece.empty() ? "whole ones" : in_quotes(pieces_word(measure.piece, true)),
          ", and ", kitchen::quantity_text(q),
          " cannot be turned into them: what one weighs is not known."),
      "Write the weight of one into the school's own foods, or count both the same way."};
}

}  // namespace

base::Result<Ratio> in_measure(const Quantity& q, const Food& food, const Measure& measure) {
  switch (measure.kind) {
    case MeasureKind::kMillilitres:
      return kitchen::millilitres(q, food);
    case MeasureKind::kPieces:
      return pieces(q, food, measure);
    case MeasureKind::kGrams:
      break;
  }
  const auto weighed = kitchen::weigh(q, food);
  if (!weighed) return weighed.problems();
  return weighed.value().grams;
}

base::Result<Ratio> bought_in_measure(const Quantity& q, const Food& food, const Measure& measure) {
  auto amount = in_measure(q, food, measure);
  // Piece weights and densities are of the edible part already; a mass on a price list is not.
  if (amount && kitchen::dimension(q.unit) == Dimension::kMass && food.edible)
    return amount.value() * Ratio::near(*food.edible);
  return amount;
}

Measure measure_for(const std::vector<Quantity>& all, const Food& food) {
  std::vector<Measure> ways = {{MeasureKind::kGrams, {}}, {MeasureKind::kMillilitres, {}}};
  bool poured = !all.empty();
  for (const Quantity& q : all) poured = poured && kitchen::dimension(q.unit) == Dimension::kVolume;
  // What every dish measures in a jug is not turned into grams.
  if (poured) std::swap(ways[0], ways[1]);
  for (const Quantity& q : all) {
    if (kitchen::dimension(q.unit) == Dimension::kCount)
      ways.push_back({MeasureKind::kPieces, q.piece == "each" ? "" : q.piece});
  }
  Measure best = ways.front();
  std::size_t most = 0;
  for (const Measure& way : ways) {
    std::size_t fits = 0;
    for (const Quantity& q : all) fits += in_measure(q, food, way) ? 1U : 0U;
    if (fits > most) {
      most = fits;
      best = way;
    }
  }
  return best;
}

std::string amount_text(const Ratio& amount, const Measure& measure) {
  if (measure.kind == MeasureKind::kPieces) {
    const Ratio halves = Ratio((amount * Ratio(2)).ceil(), 2);
    const std::string word = pieces_word(measure.piece, halves > Ratio(1));
    return base::fraction_text(halves) + (word.empty() ? "" : " " + word);
  }
  const bool grams = measure.kind == MeasureKind::kGrams;
  if (amount < Ratio(10) && !amount.whole()) {  // spices: a tenth matters
    return base::decimal_text(Ratio((amount * Ratio(10)).ceil(), 10), 1) + (grams ? " g" : " ml");
  }
  const Ratio whole(amount.ceil());
  if (whole < Ratio(1000)) return say(whole.round(), grams ? " g" : " ml");
  return base::decimal_text(whole / Ratio(1000), 3) + (grams ? " kg" : " l");
}

}  // namespace larder
