#include "kitchen/quantity.h"

#include <gtest/gtest.h>

namespace {

using namespace kitchen;

TEST(Quantity, UnitsAreExactByDefinition) {
  // Units of Measurement Regulations 1995 (pound, ounce, pint); US gallon of 231 cubic inches.
  EXPECT_EQ(in_base_units(Unit::kOunce) * Ratio(16), in_base_units(Unit::kPound));
  EXPECT_EQ(in_base_units(Unit::kPound), Ratio(45359237, 100000));
  EXPECT_EQ(in_base_units(Unit::kFluidOunce) * Ratio(20), in_base_units(Unit::kPint));
  EXPECT_EQ(in_base_units(Unit::kPint) * Ratio(8), Ratio(454609, 100));
  EXPECT_EQ(in_base_units(Unit::kAmericanCup) * Ratio(16), Ratio(231) * Ratio(16387064, 1000000));
  EXPECT_EQ(in_base_units(Unit::kAmericanPint), in_base_units(Unit::kAmericanCup) * Ratio(2));
  EXPECT_EQ(in_base_units(Unit::kAmericanFluidOunce) * Ratio(8), in_base_units(Unit::kAmericanCup));
  EXPECT_EQ(in_base_units(Unit::kTablespoon), Ratio(3) * in_base_units(Unit::kTeaspoon));
}

TEST(Quantity, UsualSpellingsNameTheUnit) {
  EXPECT_EQ(unit_named("Tbsp."), Unit::kTablespoon);
  EXPECT_EQ(unit_named("T"), Unit::kTablespoon);
  EXPECT_EQ(unit_named("t"), Unit::kTeaspoon);
  EXPECT_EQ(unit_named("fl. oz"), Unit::kFluidOunce);
  EXPECT_EQ(unit_named("Litres"), Unit::kLitre);
  EXPECT_EQ(unit_named("lbs"), Unit::kPound);
  EXPECT_EQ(unit_named("clove"), std::nullopt);
  EXPECT_EQ(unit_named(""), std::nullopt);
}

TEST(Quantity, IsWrittenAsAPersonWrites) {
  EXPECT_EQ(quantity_text(Quantity::of(Ratio(3, 2), Unit::kTablespoon)), "1 1/2 tbsp");
  EXPECT_EQ(quantity_text(Quantity::pieces(Ratio(3), "clove")), "3 cloves");
  EXPECT_EQ(quantity_text(Quantity::pieces(Ratio(2), "leaf")), "2 leaves");
  EXPECT_EQ(quantity_text(Quantity::pieces(Ratio(2), "")), "2");
  EXPECT_EQ(quantity_text({Ratio(2), Ratio(3), Unit::kPiece, "clove"}), "2 to 3 cloves");
  EXPECT_EQ(quantity_text({}), "to taste");
  EXPECT_EQ(quantity_text(Quantity::of(Ratio(5, 2), Unit::kGram)), "2.5 g");
}

TEST(Quantity, ConvertsWithinADimensionOnly) {
  EXPECT_EQ(converted(Quantity::of(Ratio(1, 2), Unit::kPint), Unit::kMillilitre)->least,
            Ratio(56826125, 200000));
  EXPECT_EQ(converted(Quantity::of(Ratio(1), Unit::kCup), Unit::kGram), std::nullopt);
  EXPECT_EQ(converted(Quantity{}, Unit::kGram), std::nullopt);
}

}  // namespace
