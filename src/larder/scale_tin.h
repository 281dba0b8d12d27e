// From one tin to another: the mixture goes with the area, and with the depth when both are known.
//
// A 20 cm round tin holds two thirds of a 25 cm one; a 20 cm square tin holds a quarter more than a
// 20 cm round one. Corners and sloping sides are not counted.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "base/problem.h"
#include "base/ratio.h"

namespace larder {

using base::Ratio;

enum class TinShape : std::int8_t { kRound, kSquare, kRectangle };

struct Tin {
  TinShape shape = TinShape::kRound;
  Ratio length = 20;           ///< cm; of a round one the width across, 1 to 100
  Ratio width = 20;            ///< cm; the same as the length unless it is a rectangle
  std::optional<Ratio> depth;  ///< cm
  int count = 1;               ///< 1 to 50
  friend bool operator==(const Tin&, const Tin&) = default;
};

/// "round 20", "two round 18", "square 20 x 5" (the last number is the depth), "rectangle 30 x 20",
/// "loaf 23 x 13 x 7", "round 8 in". Errors: scale.tin.
base::Result<Tin> read_tin(std::string_view words);

/// "two round tins of 18 cm".
std::string tin_text(const Tin&);

/// Area of all of them in cm²; pi as 355/113, which is right to a ten-millionth.
Ratio area(const Tin&);

/// How many times as much mixture: by volume when both say their depth, else by area at the same
/// depth.
Ratio tin_factor(const Tin& from, const Tin& to);

}  // namespace larder
