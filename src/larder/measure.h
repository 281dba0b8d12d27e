// In what a food is summed up: grams of what is eaten, millilitres, or pieces of one kind.
//
// Three dishes ask for "1 onion", "80 g onion" and "1/2 onion"; the sum is in grams, because what
// an onion weighs is known. Lasagne sheets of which nobody wrote down a weight stay sheets.
#pragma once

#include <string>
#include <vector>

#include "base/problem.h"
#include "kitchen/food.h"
#include "kitchen/quantity.h"

namespace larder {

using kitchen::Ratio;

enum class MeasureKind : std::int8_t { kGrams, kMillilitres, kPieces };

struct Measure {
  MeasureKind kind = MeasureKind::kGrams;
  std::string piece;  ///< for pieces: "sheet"; empty = the food itself
  friend bool operator==(const Measure&, const Measure&) = default;
};

/// How much a quantity is in that measure: grams are of the edible part, as kitchen::weigh() gives
/// them. Errors: weigh.*, larder.other_pieces (cloves where heads are counted).
base::Result<Ratio> in_measure(const kitchen::Quantity&, const kitchen::Food&, const Measure&);

/// The same for what is bought: a mass as bought loses what is peeled or thrown away
/// (Food::edible; when that is not known nothing is taken off).
base::Result<Ratio> bought_in_measure(const kitchen::Quantity&, const kitchen::Food&,
                                      const Measure&);

/// Millilitres if all the quantities are volumes, grams if all can be weighed, else millilitres,
/// else pieces of one kind; the measure that fits most of them if none fits all.
Measure measure_for(const std::vector<kitchen::Quantity>&, const kitchen::Food&);

/// "1.2 kg", "350 g", "2.5 l", "30 ml", "6 sheets", "12" for a person who weighs: grams and
/// millilitres rounded up to whole ones, pieces up to halves, because rounding down would leave
/// the last place short.
std::string amount_text(const Ratio&, const Measure&);

}  // namespace larder
