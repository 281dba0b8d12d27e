// What a young person of 11 to 18 needs in a day, and what share of it a portion gives.
//
// Fibre 8 g is 32 % of the 25 g advised for 11 to 14. Source: Public Health England, Government
// Dietary Recommendations, August 2016, Tables 1 to 3: FROM MEMORY, some rows seen in secondary
// pages (confidence column of tests/data/nutrition/check_values.csv, group G). For teaching; a
// pupil's own needs are not read off a table.
#pragma once

#include <array>
#include <optional>
#include <string_view>
#include <vector>

#include "nutrition/dish_nutrients.h"

namespace nutrition {

/// The recommendations know two sexes and two ages here.
enum class Band : std::int8_t { kGirls11, kBoys11, kGirls15, kBoys15 };
inline constexpr std::array<Band, 4> kBands = {Band::kGirls11, Band::kBoys11, Band::kGirls15,
                                               Band::kBoys15};
/// "girls 11 to 14".
std::string_view name_of(Band);

enum class Aim : std::int8_t {
  kAbout,    ///< energy
  kAtLeast,  ///< protein, fibre, vitamins, minerals
  kAtMost,   ///< fat, saturates, free sugars, salt
};

/// How the figure of a dish is had.
enum class NeedOf : std::int8_t { kKilocalories, kKilojoules, kSalt, kTotal, kNotHeld };

struct Need {
  std::string_view name;
  std::string_view unit;
  Aim aim;
  NeedOf of;
  What what;                    ///< for kTotal
  std::array<double, 4> a_day;  ///< in the order of kBands
};

/// In the order of the recommendations. Iodine is not held by the table of foods (kNotHeld); niacin
/// here is preformed niacin, which understates the equivalents asked for.
const std::vector<Need>& needs();

struct NeedShare {
  const Need* need = nullptr;
  Figure portion;    ///< in the need's unit
  double share = 0;  ///< of the day's figure; of what is known at least
};

/// A portion's share of a day, for the needs the table of foods can answer.
std::vector<NeedShare> shares_of_day(const DishNutrients&, Band);

}  // namespace nutrition
