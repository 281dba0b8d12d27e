// One card a bay, to laminate and use again: what this bay does in order, in minutes from the start
// of the lesson instead of clock times, with pattern and word. It says the same for every cook: no
// names, no variants, no allergy.
#pragma once

#include "print/sheets/signs.h"

namespace print::sheets {

/// A line of a card.
struct BayLine {
  Seconds from{0}, to{0};
  Look look = Look::kHands;
  Seconds each{0};         ///< for one cook; the whole span is longer when they go in turn
  bool hands_off = false;  ///< register, demonstration, stop
  bool waits = false;      ///< nobody of the bay has anything in hand
  std::string dish;        ///< two letters, only where the bay makes several dishes
  std::string says;        ///< "Peel and dice the onion"
  std::string in_turn;     ///< "A1 8 min, A2 14 min"; empty when the whole bay is together
  friend bool operator==(const BayLine&, const BayLine&) = default;
};
/// By start. Variants of one dish are one line.
std::vector<BayLine> bay_lines(const kitchen::Lesson&, const Plan&, int bay);

/// A part for each bay with cooks.
void draw_bay_cards(Document&, const Planned&);
std::string pdf_of_bay_cards(const Planned&);

}  // namespace print::sheets
