// Outside source: UK guidance on front-of-pack labelling (rows of group E, each with its
// confidence).
#include "nutrition/front_of_pack.h"

#include <gtest/gtest.h>

#include "base/text.h"
#include "check_values.h"

namespace {

using namespace nutrition;
using namespace tests;

Coloured coloured(const std::string& name) {
  for (const Coloured what : kColoured) {
    if (name == name_of(what) || name == "total " + std::string(name_of(what))) return what;
  }
  throw std::runtime_error("no colour for " + name);
}

TEST(FrontOfPack, EveryThresholdIsTheGuidances) {
  int compared = 0;
  for (const char* group : {"E traffic light food", "E traffic light drink"}) {
    const bool drink = std::string(group).ends_with("drink");
    for (const CheckValue& row : check_values(group)) {
      const Thresholds limits = thresholds(coloured(row.quantity.substr(0, row.quantity.find(':'))),
                                           drink);
      const bool portion = row.quantity.find("portions over") != std::string::npos;
      const double limit = portion                                           ? limits.portion
                           : row.quantity.find("green") != std::string::npos ? limits.green
                                                                             : limits.red;
      EXPECT_DOUBLE_EQ(limit, row.number()) << row.id << ' ' << row.quantity;
      if (portion) {
        EXPECT_NE(row.quantity.find(drink ? "over 150 ml" : "over 100 g"), std::string::npos);
        EXPECT_DOUBLE_EQ(large_portion(drink), drink ? 150 : 100);
      }
      ++compared;
    }
  }
  EXPECT_EQ(compared, 24);
}

TEST(FrontOfPack, EveryWorkedCaseGetsItsColour) {
  const auto rows = check_values("E traffic light cases");
  EXPECT_EQ(rows.size(), 10U);
  for (const CheckValue& row : rows) {
    const auto words = [&](const std::string& text) {
      return row.quantity.find(text) != std::string::npos;
    };
    const auto name = row.quantity.substr(0, row.quantity.find(' '));
    const double amount = *base::number_in(between(row.quantity, name + " ", " g"));
    const double portion = words("300 g portion") ? 300 : 100;
    EXPECT_EQ(word_for(colour(coloured(name), amount, portion, words("drink"))), row.value)
        << row.id << row.quantity;
  }
}

}  // namespace
