// Tin factors against an outside table: rows DC078 to DC083 (area or volume ratios, recomputed with
// R 4.2).
#include <gtest/gtest.h>

#include <cmath>
#include <fstream>
#include <map>
#include <sstream>

#include "base/csv.h"
#include "larder/scale_tin.h"

namespace {

using namespace larder;

TEST(Tins, ScaleByTheRatiosOfTheOutsideTable) {
  std::ifstream file(BENCHBELL_SOURCE_DIR "/tests/data/ratios/conversions.csv", std::ios::binary);
  std::stringstream text;
  text << file.rdbuf();
  const auto table = base::read_csv(text.str(), "conversions.csv");
  ASSERT_TRUE(table);
  std::map<std::string, double> values;
  const auto id = *table.value().column("id"), value = *table.value().column("value");
  for (const auto& row : table.value().rows) {
    if (const auto number = Ratio::in(row.cells[value])) values[row.cells[id]] = number->value();
  }
  const struct {
    const char *id, *from, *to;
  } cases[] = {
      {"DC078", "round 20", "round 23"},         {"DC079", "round 20", "square 20"},
      {"DC080", "round 18", "square 16"},        {"DC081", "square 20", "rectangle 30 x 20"},
      {"DC082", "two round 18", "two round 20"}, {"DC083", "loaf 16 x 11 x 7", "loaf 23 x 13 x 7"}};
  for (const auto& each : cases) {
    ASSERT_TRUE(values.contains(each.id));
    const Ratio factor = tin_factor(read_tin(each.from).value(), read_tin(each.to).value());
    EXPECT_NEAR(factor.value(), values[each.id], 1e-5) << each.id;
  }
  EXPECT_EQ(tin_factor(read_tin("round 20").value(), read_tin("round 23").value()),
            Ratio(13225, 10000));
}

}  // namespace
