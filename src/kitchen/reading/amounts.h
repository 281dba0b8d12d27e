// Amounts in a line, wherever they stand: "1 1/2 tbsp", "2-3", "1 lb 4 oz", "2 x 400g tins",
// "225g/8oz", "half a", "a good pinch of".
//
// What is read is exact: two thirds stay two thirds. What the amount is of is nobody's business
// here.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "kitchen/quantity.h"
#include "kitchen/reading/line_tokens.h"

namespace kitchen {

/// What a line is read by: whose measures a cup and a pint are.
struct Measures {
  /// A text with sticks of butter, degrees Fahrenheit or all-purpose flour means American cups and
  /// pints; else a cup is 250 ml and a pint imperial.
  bool american = false;
};

struct Amount {
  Quantity quantity;
  std::string also;          ///< a second amount for the same thing, as written: "8oz", "(400 g)"
  std::string qualities;     ///< "heaped", "thumb-sized", "5 cm": what was said of the measure
  bool about = false;        ///< "about", "roughly", "a few"
  bool contradicts = false;  ///< the two amounts are more than a quarter apart
  bool container = false;    ///< a tin, jar, packet ...: what is in it may be another food
  bool each = false;         ///< "1 tsp each cumin and coriander"
  std::size_t next = 0;      ///< the first token after it
};

/// A plain number in figures or words at token `i`: "3", "1 1/2", "one and a half", "half a",
/// "a dozen"; `next` is set to the token after it. Nothing when there is none.
std::optional<Ratio> number_at(const std::vector<LineToken>&, std::size_t i, std::size_t& next);

/// The amount that begins at token `i`, with its unit or the word it counts, if any. A number alone
/// counts pieces. Nothing when no amount begins there.
std::optional<Amount> amount_at(const std::vector<LineToken>&, std::size_t i, const Measures&);

/// The unit that is named at token `i` ("fl. oz.", "table spoons"), and the token after it.
std::optional<Unit> unit_at(const std::vector<LineToken>&, std::size_t i, const Measures&,
                            std::size_t& next);

/// Whether a word (folded, one or many) counts pieces of food: "cloves", "tin", "pinch"; its
/// singular. Nothing if it does not.
std::optional<std::string> piece_word(const std::string& word);
/// Of those, what things are bought in: tin, jar, packet.
bool container_word(const std::string& singular_piece);

}  // namespace kitchen
