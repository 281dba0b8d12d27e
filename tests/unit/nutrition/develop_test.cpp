#include "nutrition/develop.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <random>

#include "../../support/nutrition_tables.h"

namespace {

using namespace nutrition;
using tests::cooking_tables;
using tests::ingredient;
using tests::shipped_foods;
using tests::stirred;

DevelopAsked asked(const kitchen::Dish& dish, const std::vector<std::string>& goals,
                   double share = 0.5) {
  DevelopAsked out;
  out.seconds = 60;  // proofs are what is tested; how soon they come is measured in bench/
  out.dish = dish;
  out.foods = foods_of(dish, shipped_foods());
  const DishNutrients held = tests::calculated(dish);
  out.allowed = usual_changes(dish, held, share);
  for (const std::string& words : goals) {
    const auto read = read_goal(words, held.portion_grams());
    for (const Goal& goal : read.value()) out.goals.push_back(goal);
  }
  return out;
}

Developed developed(const DevelopAsked& what) {
  const auto result = develop(what, cooking_tables());
  if (!result) throw std::runtime_error(result.problems().front().message);
  return result.value();
}

TEST(Develop, ADishThatReachesItsGoalStaysAsItIs) {
  const Developed out = developed(asked(tests::macaroni(), {"salt not high"}));
  EXPECT_TRUE(out.possible);
  EXPECT_TRUE(out.changes.empty());
}

TEST(Develop, ChangesTheFewestIngredientsAndReachesTheGoal) {
  // 1.5 g salt in 100 g is the limit of medium; 100 g butter with 5 g salt hold 6.4 g in 205 g with
  // potato.
  const Developed out = developed(asked(
      stirred({ingredient("potato", 100), ingredient("butter_salted", 100), ingredient("salt", 5)},
              3),
      {"salt not high"}));
  ASSERT_TRUE(out.possible);
  EXPECT_TRUE(out.proved);
  ASSERT_EQ(out.changes.size(), 1U);
  EXPECT_EQ(out.changes[0].ingredient, 2U);
  // By hand: salt s in 200 + s grams, sodium of butter 643 mg, of potato 6 mg: 1.6225 + 0.96895 s
  // <= 1.5 % of (200 + s) gives s <= 1.45, so 1 g on the scales.
  EXPECT_DOUBLE_EQ(out.changes[0].to, 1);
  EXPECT_TRUE(kept(read_goal("salt not high", 80).value()[0], out.after));
}

TEST(Develop, KeepsEveryRatioInItsBand) {
  auto what = asked(stirred({ingredient("plain_flour", 200), ingredient("butter_unsalted", 100),
                             ingredient("water", 50)},
                            4),
                    {"fat at most 17 g"});
  what.ratios.push_back({{0, 1, 0}, {1, 0, 0}, 0.4, 0.6, "fat to flour"});
  const Developed out = developed(what);
  ASSERT_TRUE(out.possible);
  const double flour = *out.after.lines[0].grams, butter = *out.after.lines[1].grams;
  EXPECT_GE(butter / flour, 0.4 - 1e-9);
  EXPECT_LE(butter / flour, 0.6 + 1e-9);
  EXPECT_LE(out.after.portion(Nutrient::kFat).amount, 17 + 1e-6);
}

TEST(Develop, NamesTheBoundThatStopsIt) {
  auto what = asked(stirred({ingredient("plain_flour", 200), ingredient("butter_unsalted", 100),
                             ingredient("water", 50)},
                            4),
                    {"fat at most 10 g"});
  what.allowed[0] = {200, 200, 0, {}};
  what.allowed[1] = {20, 150, 0, {}};
  what.ratios.push_back({{0, 1, 0}, {1, 0, 0}, 0.4, 0.6, "fat to flour"});
  const Developed out = developed(what);
  EXPECT_FALSE(out.possible);
  EXPECT_TRUE(out.proved);
  ASSERT_FALSE(out.stops.empty());
  const auto stop = [&](Stop::Kind kind) -> const Stop* {
    for (const Stop& each : out.stops) {
      if (each.kind == kind) return &each;
    }
    return nullptr;
  };
  // Fat 40 g in all: 1.96 g of the flour leave 46.9 g butter, so 45 on the scales: 0.225 to the
  // flour.
  ASSERT_NE(stop(Stop::Kind::kRatio), nullptr);
  EXPECT_NEAR(stop(Stop::Kind::kRatio)->needed, 0.225, 1e-6);
  // With the ratio kept the least is 80 g of butter: (1.96 + 64.888) / 4 = 16.7 g a portion.
  ASSERT_NE(stop(Stop::Kind::kGoal), nullptr);
  EXPECT_NEAR(stop(Stop::Kind::kGoal)->needed, 16.712, 1e-3);
}

TEST(Develop, ASearchThatWasStoppedClaimsNothing) {
  DevelopAsked what = asked(tests::macaroni(), {"saturates at most 4 g in 100 g"});
  what.seconds = 1e-9;
  const Developed out = developed(what);
  EXPECT_FALSE(out.proved);
  EXPECT_TRUE(out.stops.empty());
}

TEST(Develop, TakesAnotherFoodWhenNoAmountWillDo) {
  auto what = asked(tests::macaroni(), {"saturates at most 5 g in 100 g"});
  for (Allowed& allowed : what.allowed) allowed.least = allowed.most = 0;
  for (std::size_t i = 0; i < what.allowed.size(); ++i)
    what.allowed[i].least = what.allowed[i].most = what.dish.ingredients[i].amount;
  EXPECT_FALSE(developed(what).possible);  // 5.03 g in 100 g
  what.allowed[2].swaps.push_back({"rapeseed oil", shipped_foods().find("rapeseed_oil"), 10, 20});
  const Developed out = developed(what);
  ASSERT_TRUE(out.possible);
  ASSERT_EQ(out.changes.size(), 1U);
  EXPECT_EQ(out.changes[0].instead, "rapeseed oil");
  EXPECT_DOUBLE_EQ(out.changes[0].to, 20);
  EXPECT_EQ(out.dish.ingredients[2].food, "rapeseed_oil");
}

TEST(Develop, RefusesWhatCannotBeWeighedAndAGoalThatIsNotGiven) {
  auto what = asked(stirred({ingredient("onion", 1, "bucket"), ingredient("salt", 5)}), {});
  const auto result = develop(what, cooking_tables());
  ASSERT_FALSE(result);
  ASSERT_EQ(result.problems().size(), 2U);
  EXPECT_EQ(result.problems()[0].code, "develop.no_goal");
  EXPECT_EQ(result.problems()[1].code, "develop.not_weighed");
}

TEST(Develop, EggsAreCountedWhole) {
  auto what = asked(stirred({ingredient("egg_whole", 4, ""), ingredient("spinach_fresh", 100)}),
                    {"fat at most 11 g"});
  what.allowed[1].most = what.allowed[1].least;
  const Developed out = developed(what);
  ASSERT_TRUE(out.possible);
  EXPECT_DOUBLE_EQ(out.dish.ingredients[0].amount, 2);  // 9.51 g fat in 100 g of egg: two eggs of
                                                        // 50 g
}

// Every amount on the scales, tried one by one, for two ingredients: fewest changed, then least in
// proportion.
TEST(Develop, NothingSmallerWouldDoInFortyRandomDishes) {
  std::mt19937 random(3);
  const std::vector<std::string> keys = {"plain_flour", "butter_salted", "cheddar",
                                         "onion",       "caster_sugar",  "porridge_oats"};
  int possible = 0;
  for (int round = 0; round < 40; ++round) {
    const auto pick = [&](int n) { return static_cast<int>(random() % static_cast<unsigned>(n)); };
    const double a = 20 + 5 * pick(40), b = 20 + 5 * pick(40);
    const auto dish = stirred({ingredient(keys[static_cast<std::size_t>(pick(6))], a),
                               ingredient(keys[static_cast<std::size_t>(pick(6))], b)},
                              2);
    const auto what = asked(
        dish, {"saturates at most " + std::to_string(1 + pick(12)) + " g", "fibre at least 1 g"});
    double best = std::numeric_limits<double>::infinity();
    const auto amounts = [](double grams) {
      std::vector<double> out = {grams};
      for (double g = std::ceil(grams / 2); g <= grams * 1.5; ++g) {
        if (g <= 20 || std::fmod(g, 5) == 0) out.push_back(g);
      }
      return out;
    };
    for (const double x : amounts(a)) {
      for (const double y : amounts(b)) {
        kitchen::Dish changed = dish;
        changed.ingredients[0].amount = x, changed.ingredients[1].amount = y;
        const auto held = tests::calculated(changed);
        if (!kept(what.goals[0], held) || !kept(what.goals[1], held)) continue;
        best = std::min(best,
                        100.0 * ((x != a) + (y != b)) + std::abs(x - a) / a + std::abs(y - b) / b);
      }
    }
    const Developed out = developed(what);
    ASSERT_EQ(out.possible, std::isfinite(best)) << "round " << round;
    if (!out.possible) continue;
    ++possible;
    double cost = 0;
    for (const Change& change : out.changes)
      cost += 100 + std::abs(change.to - change.from) / change.from;
    EXPECT_NEAR(cost, best, 1e-6) << "round " << round;
  }
  EXPECT_GT(possible, 5);
}

}  // namespace
