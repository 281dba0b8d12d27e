// An order read back as it was sent, and a delivery as it was ticked off.
#include "larder/sent_order.h"

#include <gmock/gmock.h>

#include "made.h"
#include "print/say_order.h"

namespace {

using namespace larder;
using kitchen::Allergen;
using tests::line;
using tests::Made;

Made ordered() {
  Made made;
  made.week.suppliers = {
      {"North", 0, 0, false, {{tests::day("2026-11-13"), tests::day("2026-11-16")}}}};
  made.week.lessons = {tests::lesson("9K", "2026-11-17", 10, {line("red lentils", 120, "g")}),
                       tests::lesson("8B", "2026-11-19", 10, {line("plain flour", 100, "g")})};
  made.prices = tests::prices(
      "red lentils,North,bag,500 g,0.95,,,300,100\nplain flour,North,bag,1 kg,0.80,,,300,100\n");
  made.plan();
  return made;
}

std::string written(const Made& made) {
  const OrderInput in = made.in();
  const Costs costs = costs_of(in, made.order);
  const CountDown days = count_down(made.week, {}, tests::day("2026-11-12"));
  return print::order_json({in, made.order, costs, days});
}

TEST(SentOrder, IsReadBackAsItWasWritten) {
  const Made made = ordered();
  const auto sent = read_sent_order(written(made), "sent.json", made.in());
  ASSERT_TRUE(sent) << sent.problems().front().message;
  ASSERT_EQ(sent.value().lines.size(), made.order.lines.size());
  for (std::size_t i = 0; i < made.order.lines.size(); ++i) {
    EXPECT_EQ(sent.value().lines[i].pack, made.order.lines[i].pack);
    EXPECT_EQ(sent.value().lines[i].count, made.order.lines[i].count);
    EXPECT_EQ(sent.value().lines[i].uses, made.order.lines[i].uses);
    EXPECT_EQ(sent.value().lines[i].good_until, made.order.lines[i].good_until);
  }
}

TEST(SentOrder, WhatNoLessonNeedsAnyMoreCanStillBeTickedOff) {
  Made made = ordered();
  const std::string text = written(made);
  made.week.lessons.pop_back();  // 8B is called off
  made.needs = needs_of(made.week, tests::shipped_foods());
  const auto sent = read_sent_order(text, "sent.json", made.in());
  ASSERT_TRUE(sent);
  EXPECT_EQ(sent.value().lines.size(), 2U);
  std::vector<Ticked> ticks(1);
  for (std::size_t i = 0; i < sent.value().lines.size(); ++i) {
    if (sent.value().lines[i].food < 0) ticks[0].line = static_cast<int>(i);
  }
  ticks[0].came = 1;
  ticks[0].swapped = true;
  const auto out = take_in(made.in(), sent.value(), ticks, {}, tests::day("2026-11-16"));
  EXPECT_EQ(out.lots.size(), 1U);
  EXPECT_TRUE(out.rechecks.empty());
}

TEST(SentOrder, AnotherFileAndAnotherPriceListAreTold) {
  Made made = ordered();
  const auto other = read_sent_order(R"({"kind": "week"})", "week.json", made.in());
  ASSERT_FALSE(other);
  EXPECT_EQ(other.problems().front().code, "order.kind");
  const std::string text = written(made);
  made.prices = tests::prices("red lentils,North,sack,5 kg,7.95,,,300,100\n");
  const auto sent = read_sent_order(text, "sent.json", made.in());
  ASSERT_FALSE(sent);
  EXPECT_EQ(sent.problems().front().code, "order.pack");
}

TEST(Ticks, AreReadWithWhatCameInstead) {
  const Made made = ordered();
  const auto ticks = read_ticks(
      "line,food,came,use_by,instead,contains\n1,x,4,2027-02-01,,\n2,y,,,,\n", "ticks.csv",
      made.order);
  ASSERT_TRUE(ticks);
  ASSERT_EQ(ticks.value().size(), 1U);
  EXPECT_EQ(ticks.value()[0].came, 4);
  EXPECT_FALSE(ticks.value()[0].swapped);
  const auto swaps = read_ticks(
      "line;came;instead;contains\n1;4;split lentils;\"gluten; soya\"\n2;9;shallots;none\n",
      "ticks.csv", made.order);
  ASSERT_TRUE(swaps);
  EXPECT_EQ(swaps.value()[0].contains, (kitchen::Allergens{Allergen::kGluten, Allergen::kSoya}));
  EXPECT_TRUE(swaps.value()[1].label_read);
  EXPECT_TRUE(swaps.value()[1].contains.empty());
}

TEST(Ticks, EveryFaultIsToldAtOnce) {
  const Made made = ordered();
  const auto ticks = read_ticks(
      "line,came,use_by,contains\n9,1,,\n1,half,,\n1,1,Tuesday,\n1,1,,sugar\n", "ticks.csv",
      made.order);
  ASSERT_FALSE(ticks);
  std::vector<std::string> codes;
  for (const auto& p : ticks.problems()) codes.push_back(p.code);
  EXPECT_THAT(codes, testing::ElementsAre("delivery.line", "delivery.came", "delivery.use_by",
                                          "delivery.contains"));
}

TEST(Ticks, WhatIsNotTickedIsStillComing) {
  const Made made = ordered();
  Ticked first;
  first.came = 1;
  const Order rest = still_coming(made.order, {first});
  ASSERT_EQ(rest.lines.size(), 1U);
  EXPECT_EQ(rest.lines[0], made.order.lines[1]);
}

}  // namespace
