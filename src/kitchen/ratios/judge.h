// The working ratios of a preparation against their bands: "fat 22.2 % of the flour: within 16 to
// 30 %", with every gram that was counted.
//
// The bands are soft: common practice, not law. A figure near an edge says so; one that cannot be
// counted says why and is never taken as 0.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "kitchen/ratios/recognise.h"

namespace kitchen {

enum class Standing : std::int8_t { kWithin, kNearEdge, kBelow, kAbove, kUnknown };

/// One ingredient as it was counted on one side of a ratio.
struct CountedPart {
  int ingredient = 0;
  Ratio amount;     ///< in the side's measure, its share applied
  std::string how;  ///< "self-raising flour: 225 g, counted 0.045 times"
  bool sure = true;
  friend bool operator==(const CountedPart&, const CountedPart&) = default;
};

struct JudgedRatio {
  RatioRow row;
  Standing standing = Standing::kUnknown;
  std::optional<Ratio> value;  ///< in the row's unit
  std::vector<CountedPart> numerator, denominator;
  std::string why_unknown;
  /// What goes wrong at this standing; empty within the band.
  std::string goes_wrong;
};

struct JudgedPreparation {
  FoundPreparation found;
  std::vector<JudgedRatio> ratios;
  std::vector<PreparationNote> notes;
};

/// The share of a band's width from its edge that counts as near.
inline const Ratio kNearTheEdge{1, 10};

JudgedPreparation judge(const Dish&, const std::vector<CountedIngredient>&, const FoundPreparation&,
                        const Preparations&);
/// Everything recognised in the dish, judged.
std::vector<JudgedPreparation> judge(const Dish&, const Foods&, const Preparations&);

/// A ratio as plain data for whoever changes amounts: with x the grams of the ingredients,
/// least * sum(denominator) <= sum(numerator) <= most * sum(denominator). `per` is in the factors.
struct RatioBound {
  struct Term {
    int ingredient = 0;
    Ratio factor;  ///< a gram of the ingredient counts so much
    friend bool operator==(const Term&, const Term&) = default;
  };
  std::string preparation, row;  ///< "scones", "DR037"
  std::vector<Term> numerator, denominator;
  Ratio least, most;
  friend bool operator==(const RatioBound&, const RatioBound&) = default;
};

/// One for each ratio of the dish's preparations that can be counted.
std::vector<RatioBound> ratio_bounds(const Dish&, const Foods&, const Preparations&);

}  // namespace kitchen
