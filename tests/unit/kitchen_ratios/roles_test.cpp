#include "kitchen/ratios/roles.h"

#include <gmock/gmock.h>

#include "../../support/shipped_foods.h"

namespace {

using namespace kitchen;
using tests::shipped_foods;

Role role(const char* key) { return role_of(*shipped_foods().find(key)); }

TEST(Roles, EveryFoodOfTheShippedTableHasOne) {
  // Those that are kOther on purpose stand for nothing in a structure, or for egg only by its job.
  const std::set<std::string> on_purpose = {"popcorn_kernels", "egg_replacer", "aquafaba",
                                            "white_sauce_home"};
  for (const Food& food : shipped_foods().all()) {
    if (!on_purpose.contains(food.key)) {
      EXPECT_NE(role_of(food), Role::kOther) << food.key;
    }
  }
  EXPECT_GE(shipped_foods().all().size(), 706U);
}

TEST(Roles, TheKindOfFoodDecidesNotItsShelf) {
  EXPECT_EQ(role("self_raising_flour"), Role::kSelfRaisingFlour);
  EXPECT_EQ(role("rapeseed_oil"), Role::kOil);
  EXPECT_EQ(role("butter_salted"), Role::kFat);
  EXPECT_EQ(role("oat_drink"), Role::kMilk);
  EXPECT_EQ(role("greek_style_yogurt"), Role::kYogurt);
  EXPECT_EQ(role("soft_cheese_light"), Role::kSoftCheese);
  EXPECT_EQ(role("cheddar"), Role::kCheese);
  EXPECT_EQ(role("egg_yolk"), Role::kEggYolk);
  EXPECT_EQ(role("lemon_juice"), Role::kAcid);
  EXPECT_EQ(role("vegetable_stock_cube"), Role::kFlavour);
}

TEST(Roles, AnUnknownFoodHasTheRoleOfItsWords) {
  EXPECT_EQ(role_by_words("extra mature village cheese"), Role::kCheese);
  EXPECT_EQ(role_by_words("butter beans"), Role::kPulses);
  EXPECT_EQ(role_by_words("coconut milk"), Role::kMilk);
  EXPECT_EQ(role_by_words("cream cheese"), Role::kSoftCheese);
  EXPECT_EQ(role_by_words("peanut butter"), Role::kNuts);
  EXPECT_EQ(role_by_words("sugar for syrup"), Role::kSugar);
  EXPECT_EQ(role_by_words("sugar for rolling"), Role::kGarnish);
  EXPECT_EQ(role_by_words("something else"), std::nullopt);
}

TEST(Roles, SelfRaisingFlourCountsAsFlourAndAsRaisingAgent) {
  const auto powder = shares_of("baking_powder");
  ASSERT_TRUE(powder);
  EXPECT_THAT(*powder, testing::Contains(Share{Role::kSelfRaisingFlour, Ratio(9, 200)}));
  EXPECT_THAT(*shares_of("flour"), testing::Contains(Share{Role::kSelfRaisingFlour, Ratio(1)}));
  EXPECT_FALSE(shares_of("sawdust"));
}

TEST(Roles, EveryRoleHasAWord) {
  for (std::size_t i = 0; i < kRoles; ++i) EXPECT_FALSE(role_word(static_cast<Role>(i)).empty());
}

}  // namespace
