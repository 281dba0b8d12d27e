// Outside source: Public Health England, Government Dietary Recommendations, August 2016 (group G,
// from memory as the confidence column says); SACN 2015 and the NHS on portions (group H).
#include "nutrition/needs.h"

#include <gtest/gtest.h>

#include <map>

#include "check_values.h"
#include "nutrition/five_a_day.h"

namespace {

using namespace nutrition;
using namespace tests;

Band band_of(const std::string& words) {
  const bool girl = words.starts_with("female"), young = words.find("11-14") != std::string::npos;
  return girl ? (young ? Band::kGirls11 : Band::kGirls15) : (young ? Band::kBoys11 : Band::kBoys15);
}

TEST(Needs, EveryRowOfTheRecommendationsIsTheTables) {
  const std::map<std::string, std::string> kOurNames = {{"protein (RNI)", "protein"},
                                                        {"total fat, less than", "fat"},
                                                        {"saturated fat, less than", "saturates"},
                                                        {"carbohydrate, at least", "carbohydrate"},
                                                        {"free sugars, less than", "free sugars"},
                                                        {"salt, less than", "salt"},
                                                        {"dietary fibre (AOAC)", "fibre"},
                                                        {"niacin equivalent", "niacin"}};
  int compared = 0;
  for (const CheckValue& row : check_values("G ")) {
    const std::string words = row.quantity.substr(row.quantity.find(": ") + 2);
    const std::string name = kOurNames.contains(words) ? kOurNames.at(words) : words;
    const bool megajoules = row.unit.starts_with("MJ");
    for (const Need& need : needs()) {
      if (need.name != name || (name == "energy" && (need.unit == "kJ") != megajoules)) continue;
      const double expected = megajoules ? row.number() * 1000 : row.number();
      EXPECT_NEAR(need.a_day[static_cast<std::size_t>(band_of(row.quantity))], expected, 1e-9)
          << row.id << ' ' << row.quantity;
      if (row.quantity.find("less than") != std::string::npos) {
        EXPECT_EQ(need.aim, Aim::kAtMost) << row.id;
      }
      ++compared;
    }
  }
  EXPECT_EQ(compared, 108);
}

TEST(Needs, PortionsOfFruitAndVegetablesAreTheNhss) {
  std::map<std::string, double> rows;
  for (const CheckValue& row : check_values("H ")) rows[row.id] = row.number();
  ASSERT_EQ(rows.size(), 10U);
  EXPECT_DOUBLE_EQ(rows.at("N406"), kFreshPortion);
  EXPECT_DOUBLE_EQ(rows.at("N407"), kDriedPortion);
  EXPECT_DOUBLE_EQ(rows.at("N408"), kJuicePortion);
  EXPECT_DOUBLE_EQ(rows.at("N409"), kPulsesPortion);
  // SACN 2015: fibre 25 g from 11 to 16, 30 g from 16.
  for (const Need& need : needs()) {
    if (need.name != "fibre") continue;
    EXPECT_DOUBLE_EQ(need.a_day[0], rows.at("N404"));
    EXPECT_DOUBLE_EQ(need.a_day[3], rows.at("N405"));
  }
  // Free sugars at most 5 % of energy (N401): 2000 kcal x 5 % / 3.75 kcal a gram = 26.7 g.
  for (const Need& need : needs()) {
    if (need.name == "free sugars") {
      EXPECT_NEAR(need.a_day[0], 2000 * rows.at("N401") / 100 / 3.75, 0.5);
    }
  }
}

}  // namespace
