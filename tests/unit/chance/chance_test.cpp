// From lesson and plan to a figure: the same luck for the same ids, and shares that add up.
#include "timeplan/chance/chance.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <numeric>

#include "small_lesson.h"
#include "timeplan/chance/chance_model.h"
#include "timeplan/chance/draw.h"

namespace {

using namespace timeplan;
using base::minutes;

Chance chance_of(const kitchen::Lesson& lesson, ChanceOptions options = {}) {
  const Network net = small_lesson::network_of(lesson);
  return chance(lesson, net, small_lesson::one_after_another(lesson, net), options);
}

kitchen::Lesson soup_with_bell(int bell) {
  kitchen::Lesson lesson = small_lesson::soup();
  lesson.bell = minutes(bell);
  for (auto& cook : lesson.cooks) cook.leaves = lesson.bell;
  lesson.adults[0].to = lesson.sittings[0].latest = lesson.bell;
  return lesson;
}

TEST(Chance, a_bell_far_off_is_certain_and_one_too_near_is_hopeless) {
  const Chance sure = chance_of(soup_with_bell(120));
  EXPECT_EQ(sure.room, 1.0);
  EXPECT_EQ(sure.word, ChanceWord::kComfortable);
  EXPECT_EQ(sure.expected_not_out, 0.0);
  const Chance hopeless = chance_of(soup_with_bell(30));
  EXPECT_EQ(hopeless.room, 0.0);
  EXPECT_EQ(hopeless.word, ChanceWord::kUnlikely);
  EXPECT_EQ(hopeless.expected_not_out, 2.0);
}

TEST(Chance, the_same_seed_gives_the_same_result_and_another_seed_another) {
  const kitchen::Lesson lesson = soup_with_bell(50);
  EXPECT_EQ(chance_of(lesson), chance_of(lesson));
  ChanceOptions other;
  other.seed = 2;
  EXPECT_NE(chance_of(lesson).marks, chance_of(lesson, other).marks);
}

TEST(Chance, shares_add_up) {
  const Chance c = chance_of(soup_with_bell(50));
  ASSERT_EQ(c.cooks.size(), 2U);
  EXPECT_GT(c.room, 0.0);
  EXPECT_LT(c.room, 1.0);
  for (const CookChance& cook : c.cooks) EXPECT_GE(cook.share, c.room);
  EXPECT_NEAR(c.expected_not_out, 2 - c.cooks[0].share - c.cooks[1].share, 1e-12);
  EXPECT_LE(c.interval.low, c.room);
  EXPECT_GE(c.interval.high, c.room);
  EXPECT_TRUE(std::is_sorted(c.marks.begin(), c.marks.end()));
  // The median lies between the tenth and the eleventh of twenty marks.
  EXPECT_LE(c.marks[9], c.p50);
  EXPECT_GE(c.marks[10], c.p50);
  EXPECT_LE(c.p50, c.p90);
}

TEST(Chance, starting_late_meets_the_same_luck_and_never_helps) {
  const Chance c = chance_of(soup_with_bell(50));
  ASSERT_EQ(c.late_starts.size(), 2U);
  EXPECT_LE(c.late_starts[0].room, c.room);
  EXPECT_LE(c.late_starts[1].room, c.late_starts[0].room);
  ChanceOptions late;
  late.opens_late = minutes(5);
  EXPECT_EQ(chance_of(soup_with_bell(50), late).room, c.late_starts[0].room);
}

TEST(Chance, a_later_bell_never_lowers_it) {
  double before = 0;
  for (const int bell : {45, 48, 51, 54, 57}) {
    const double room = chance_of(soup_with_bell(bell)).room;
    EXPECT_GE(room, before) << "bell at " << bell;
    before = room;
  }
}

TEST(Chance, the_step_that_drags_is_the_one_that_decides) {
  kitchen::Lesson lesson = soup_with_bell(50);
  lesson.dishes[0].method[0].spread = 0.9;
  lesson.dishes[0].method[1].spread = lesson.dishes[0].method[3].spread = 0;
  const Network net = small_lesson::network_of(lesson);
  const Plan plan = small_lesson::one_after_another(lesson, net);
  const Chance c = chance(lesson, net, plan);
  ASSERT_FALSE(c.deciding.empty());
  const Task& first = plan.tasks[static_cast<std::size_t>(c.deciding[0].task)];
  EXPECT_EQ(first.kind, TaskKind::kStep);
  EXPECT_EQ(first.step, 0);
  EXPECT_NEAR(c.deciding[0].share, static_cast<double>(c.deciding[0].runs) / c.runs, 1e-12);
}

TEST(Chance, a_step_more_for_one_shifts_nobody_elses_luck) {
  kitchen::Lesson lesson = soup_with_bell(60);
  const Chance before = chance_of(lesson);
  kitchen::Dish more = lesson.dishes[0];
  more.variant = "with croutons";
  more.method.insert(more.method.begin(), kitchen::Step{});
  more.method[0].id = "croutons";
  for (std::size_t s = 1; s < more.method.size(); ++s) {
    for (kitchen::Follows& f : more.method[s].follows) ++f.step;
    if (more.method[s].closes) ++*more.method[s].closes;
  }
  lesson.dishes.push_back(more);
  lesson.cooks[1].dishes = {1};
  const Chance after = chance_of(lesson);
  EXPECT_EQ(before.cooks[0], after.cooks[0]);
  EXPECT_NE(before.cooks[1], after.cooks[1]);
}

TEST(Chance, lengths_belong_to_names_not_to_places_in_a_list) {
  const kitchen::Lesson lesson = small_lesson::soup();
  kitchen::Lesson turned = lesson;
  std::swap(turned.cooks[0], turned.cooks[1]);
  const auto lengths_of = [](const kitchen::Lesson& l, const std::string& cook) {
    const Network net = small_lesson::network_of(l);
    const LessonModel model = play_model_of(l, net, small_lesson::one_after_another(l, net));
    Draw draw(model, 7);
    const Luck luck = draw.of_run(3, 0);
    std::vector<int> found;
    for (std::size_t a = 0; a < luck.length.size(); ++a) {
      const int c = model.play.activities[a].cook;
      if (l.cooks[static_cast<std::size_t>(c)].name == cook) found.push_back(luck.length[a]);
    }
    return found;
  };
  EXPECT_EQ(lengths_of(lesson, "Aisha"), lengths_of(turned, "Aisha"));
  EXPECT_EQ(lengths_of(lesson, "Ben"), lengths_of(turned, "Ben"));
  EXPECT_NE(lengths_of(lesson, "Aisha"), lengths_of(lesson, "Ben"));
}

TEST(Chance, a_stop_gives_what_has_been_played_and_says_so) {
  ChanceOptions options;
  int asked = 0;
  options.stop = [&] { return ++asked > 3; };
  const Chance c = chance_of(soup_with_bell(50), options);
  EXPECT_FALSE(c.complete);
  EXPECT_EQ(c.runs, 80);
  EXPECT_TRUE(c.late_starts.empty());
}

TEST(Chance, a_plan_that_lacks_a_task_is_refused) {
  const kitchen::Lesson lesson = small_lesson::soup();
  const Network net = small_lesson::network_of(lesson);
  Plan plan = small_lesson::one_after_another(lesson, net);
  plan.tasks.pop_back();
  EXPECT_THROW(chance(lesson, net, plan), std::invalid_argument);
  ChanceOptions none;
  none.runs = 0;
  EXPECT_THROW(chance_of(lesson, none), std::invalid_argument);
}

TEST(Words, speak_of_ten_lessons) {
  EXPECT_EQ(about_in_ten(0.82), "about 8 in 10");
  EXPECT_EQ(about_in_ten(0.06), "about 1 in 10");
  EXPECT_EQ(about_in_ten(0.94), "about 9 in 10");
  EXPECT_EQ(about_in_ten(0.99), "more than 19 in 20");
  EXPECT_EQ(about_in_ten(0.0), "fewer than 1 in 20");
  EXPECT_EQ(word(chance_word(0.85)), "comfortable");
  EXPECT_EQ(word(chance_word(0.849)), "tight");
  EXPECT_EQ(word(chance_word(0.5)), "tight");
  EXPECT_EQ(word(chance_word(0.499)), "unlikely");
}

TEST(Quantile, is_the_smallest_value_with_that_share_at_or_below_it) {
  const std::vector<int> ten{1, 2, 3, 4, 5, 6, 7, 8, 9, 10};
  EXPECT_EQ(quantile(ten, 0.5), 5);
  EXPECT_EQ(quantile(ten, 0.9), 9);
  EXPECT_EQ(quantile(ten, 0.91), 10);
  EXPECT_EQ(quantile(ten, 0.01), 1);
}

}  // namespace
