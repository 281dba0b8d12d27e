#include "larder/order.h"

#include <gmock/gmock.h>
#include <rapidcheck/gtest.h>

#include "larder/order_day.h"
#include "made.h"
#include "print/say_order.h"

namespace {

using namespace larder;
using kitchen::Ratio;
using tests::line;
using tests::Made;

Supplier north() {
  return {"North",
          0,
          0,
          false,
          {{tests::day("2026-11-13"), tests::day("2026-11-16")},
           {tests::day("2026-11-17"), tests::day("2026-11-18")}}};
}

Made two_lessons(const std::string& rows) {
  Made made;
  made.week.suppliers = {north()};
  made.week.lessons = {tests::lesson("9K", "2026-11-17", 10, {line("red lentils", 120, "g")}),
                       tests::lesson("8B", "2026-11-19", 10, {line("red lentils", 90, "g")})};
  made.prices = tests::prices(rows);
  return made;
}

TEST(Order, SumsClassesBeforeItChoosesPacks) {
  // 1.2 kg and 0.9 kg: lesson by lesson five 500 g bags (3 and 2) at 95p or two of 1 kg each; in
  // one five 500 g bags are 4.75, two of 1 kg and none else are short, 2 x 1 kg + 1 x 500 g
  // are 4.55.
  Made made = two_lessons(
      "red lentils,North,bag,500 g,0.95,,,300,100\nred lentils,North,bag,1 kg,1.80,,,300,100\n");
  made.plan();
  EXPECT_EQ(made.order.total(), 455);
  EXPECT_GE(made.order.naive.total(), made.order.total());
  EXPECT_DOUBLE_EQ(made.order.gap(), 0);
}

TEST(Order, BuysFreshFoodFromTheVanThatIsInDate) {
  Made made;
  made.week.suppliers = {north()};
  made.week.lessons = {tests::lesson("9K", "2026-11-17", 10, {line("milk", 100, "ml")}),
                       tests::lesson("8B", "2026-11-19", 10, {line("milk", 100, "ml")})};
  made.prices = tests::prices("milk,North,bottle,2 l,1.35,,,2,1\n");
  made.plan();
  // One bottle would hold enough for both, but not for so long.
  ASSERT_EQ(made.order.lines.size(), 2U);
  EXPECT_EQ(made.order.lines[0].arrives, tests::day("2026-11-16"));
  EXPECT_EQ(made.order.lines[1].arrives, tests::day("2026-11-18"));
}

TEST(Order, UsesTheStoresFirstAndNothingPastItsDate) {
  Made made = two_lessons("red lentils,North,bag,500 g,0.95,,,300,100\n");
  made.stock = tests::stores("red lentils,1200 g,2026-11-17,,\nred lentils,900 g,2026-11-16,,\n")
                   .lots;
  made.plan();
  // The second lot is past its date on both days; 900 g for Thursday are two bags.
  EXPECT_EQ(made.order.total(), 190);
  ASSERT_EQ(made.order.from_stock.size(), 1U);
  EXPECT_EQ(made.order.from_stock[0].lot, 0);
}

TEST(Order, TakesASupplierWithAChargeOnlyWhenItPays) {
  Made made = two_lessons(
      "red lentils,North,bag,500 g,0.90,,,300,100\nred lentils,South,bag,500 g,0.95,,,300,100\n");
  made.week.suppliers.push_back({"South", 0, 0, false, north().vans});
  made.week.suppliers[0].delivery = 500;
  made.plan();
  // Five bags: 4.50 and a van for 5.00, or 4.75 without one.
  EXPECT_EQ(made.order.total(), 475);
  made.week.suppliers[0].delivery = 20;
  made.plan();
  EXPECT_EQ(made.order.total(), 470);
}

TEST(Order, WarnsOfWhatNothingCoversAndOrdersTheRest) {
  Made made = two_lessons("red lentils,North,bag,500 g,0.95,,,300,100\n");
  made.week.lessons[0].dishes[0].dish.ingredients.push_back(line("plain flour", 50, "g"));
  made.week.lessons[0].dishes[0].dish.ingredients.push_back(line("butter", 20, "g"));
  made.prices.packs.push_back(tests::prices("butter,North,block,250 g,,,,,\n").packs.at(0));
  made.plan();
  EXPECT_EQ(made.order.total(), 475);
  EXPECT_EQ(made.order.shortfalls.size(), 2U);
  std::vector<std::string> codes;
  for (const auto& p : made.order.unsettled) codes.push_back(p.code);
  EXPECT_THAT(codes, testing::IsSupersetOf({"order.no_pack", "order.no_price"}));
}

TEST(Order, ATopUpCountsWhatIsOnItsWay) {
  Made made = two_lessons("red lentils,North,bag,500 g,0.95,,,300,100\n");
  made.plan();
  const Order sent = made.order;
  made.week.lessons[1].dishes[0].sets = Ratio(14);  // four sets more, 360 g
  made.needs = needs_of(made.week, tests::shipped_foods());
  OrderWish wish;
  wish.today = tests::day("2026-11-16");
  const Order more = top_up(made.in(), sent, wish);
  // Five bags hold 2.5 kg; now 2.46 kg are needed: nothing. With two sets more one bag.
  EXPECT_EQ(more.total(), 0);
  made.week.lessons[1].dishes[0].sets = Ratio(16);
  made.needs = needs_of(made.week, tests::shipped_foods());
  EXPECT_EQ(top_up(made.in(), sent, wish).total(), 95);
}

TEST(Order, DaysAreCountedDownAndWhatIsGoneIsSaid) {
  Week week;
  week.suppliers = {north()};
  const CountDown days = count_down(week, {}, tests::day("2026-11-16"));
  ASSERT_EQ(days.ahead.size(), 1U);
  EXPECT_EQ(days.ahead[0].days_left, 1);
  EXPECT_THAT(order_day_text(days.ahead[0], week), testing::HasSubstr("tomorrow"));
  EXPECT_EQ(days.gone.size(), 1U);
}

TEST(Order, OfTheDemoIsProvedAndEveryLineCanBeOpened) {
  auto week = read_week(tests::text_of("demo/weeks/week-47.json"), "demo/weeks/week-47.json",
                        tests::load);
  ASSERT_TRUE(week);
  Made made;
  made.week = std::move(week).value();
  made.prices = tests::prices("");
  made.prices = read_prices(tests::text_of("demo/stores/prices.csv"), "p", tests::shipped_foods())
                    .value();
  made.stock = read_stock(tests::text_of("demo/stores/stock.csv"), "s", tests::shipped_foods())
                   .value()
                   .lots;
  made.plan();
  EXPECT_LE(made.order.gap(), 0.005);
  EXPECT_GT(made.order.lines.size(), 15U);
  const Costs costs = costs_of(made.in(), made.order);
  const CountDown days = count_down(made.week, made.order.unsettled, tests::day("2026-11-12"));
  const print::OrderView view{made.in(), made.order, costs, days};
  const std::string text = print::say_order(view, {true, false});
  EXPECT_THAT(text, testing::HasSubstr("10F, practice"));  // no dish yet
  EXPECT_THAT(text, testing::Not(testing::HasSubstr("Private")));
  EXPECT_THAT(print::order_json(view), testing::HasSubstr("\"kind\": \"order\""));
}

RC_GTEST_PROP(Order, LinesAndStoresTogetherGiveEachLessonWhatItNeeds, ()) {
  Made made;
  made.week.suppliers = {north()};
  constexpr const char* kClasses[] = {"7A", "7B", "8P", "8Q", "9K"};
  const auto count = *rc::gen::inRange(1, 6);
  for (int i = 0; i < count; ++i) {
    const int grams = *rc::gen::inRange(1, 300);
    const int sets = *rc::gen::inRange(1, 26);
    const char* dates[] = {"2026-11-16", "2026-11-17", "2026-11-18", "2026-11-20"};
    made.week.lessons.push_back(tests::lesson(kClasses[i], dates[*rc::gen::inRange(0, 4)], sets,
                                              {line("butter", grams, "g")}));
  }
  made.prices = tests::prices(
      "butter,North,block,250 g,1.79,,,40,3\nbutter,North,case,2 kg,13.50,,,40,2\n");
  made.stock = tests::stores("butter,400 g,2026-11-17,yes,\n").lots;
  made.plan();
  std::vector<double> got(made.week.lessons.size(), 0.0);
  Pence sum = 0;
  const auto add = [&](const std::vector<LessonUse>& uses) {
    for (const LessonUse& use : uses)
      got[static_cast<std::size_t>(use.lesson)] += use.amount.value();
  };
  for (const OrderLine& l : made.order.lines) {
    add(l.uses);
    sum += l.pence;
    double used = l.left.value();
    for (const LessonUse& use : l.uses) used += use.amount.value();
    RC_ASSERT(std::abs(used - l.holds.value()) < 1e-3);
  }
  for (const StockUse& use : made.order.from_stock) add(use.uses);
  for (const Need& need : made.needs.foods.at(0).parts)
    RC_ASSERT(std::abs(got[static_cast<std::size_t>(need.lesson)] - need.amount.value()) < 1e-3);
  RC_ASSERT(sum == made.order.goods);
  RC_ASSERT(made.order.bound <= made.order.cost);
  RC_ASSERT(made.order.cost <= static_cast<double>(made.order.naive.total()) + 1e-6);
}

}  // namespace
