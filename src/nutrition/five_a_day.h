// Portions of fruit and vegetables in a portion of a dish.
//
// 160 g of tomatoes are two; a tin of beans is one, however many there are. Source: NHS, 5 A Day:
// what counts; portion sizes (rows N406 to N410 of the check values). Potatoes, yams, cassava and
// plantain never count.
#pragma once

#include <string>
#include <vector>

#include "nutrition/dish_nutrients.h"

namespace nutrition {

inline constexpr double kFreshPortion = 80;   ///< grams, fresh, frozen, cooked or tinned
inline constexpr double kDriedPortion = 30;   ///< grams; counts once a day
inline constexpr double kJuicePortion = 150;  ///< millilitres; counts once a day
inline constexpr double kPulsesPortion = 80;  ///< grams, cooked; counts once a day

struct FiveADayShare {
  std::size_t line = 0;
  double amount = 0;  ///< in a portion: grams, of juice millilitres, of pulses grams cooked
  kitchen::FiveADay kind = kitchen::FiveADay::kNo;
};

struct FiveADayCount {
  double fresh = 0, dried = 0, juice = 0, pulses = 0;  ///< portions in a portion of the dish, the
                                                       ///< last three at most 1
  std::vector<FiveADayShare> shares;
  std::vector<std::size_t> unknown;  ///< lines that count or may count but have no weight or no
                                     ///< food
  double portions() const { return fresh + dried + juice + pulses; }
};

/// Weights before cooking, but dry pulses as cooked: by their uptake, or 2.4 times when it is not
/// in the yields (the figure of dried beans, DY022). Juice without a density is taken as 1 g a ml.
FiveADayCount five_a_day(const DishNutrients&, const CookingTables&);

}  // namespace nutrition
