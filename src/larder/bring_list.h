// The bring list of one pupil: what a family is asked for, in packs as a shop sells them.
//
// "1 tin of chopped tomatoes (400 g). We use 400 g." The list is the same for every pupil who
// cooks the dish: it says nothing of who brings and who does not.
#pragma once

#include "larder/prices.h"
#include "larder/week.h"

namespace larder {

struct BringLine {
  std::string food;            ///< as the dish says it
  std::string text;            ///< "1 tin of chopped tomatoes (400 g)"
  std::string used;            ///< "We use 400 g."
  std::optional<Pence> pence;  ///< about what it costs, if the list has a price
  friend bool operator==(const BringLine&, const BringLine&) = default;
};

struct BringList {
  std::string dish;
  std::vector<BringLine> lines;
  friend bool operator==(const BringList&, const BringList&) = default;
};

/// The lines families bring of one set of a dish. The pack is the cheapest that holds enough, the
/// one with the least left over among equals; without one the plain amount is asked for.
BringList bring_list(const DishUse&, const PriceList&, const kitchen::Foods&);

/// As a letter says it: a line an ingredient, then what to keep cold and that labels are needed.
std::string bring_text(const BringList&, Date);

}  // namespace larder
