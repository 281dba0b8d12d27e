// The sentences of the dispatch rule, one small room each. Times in minutes unless the sum says
// otherwise.
#include <gtest/gtest.h>

#include "timeplan/chance/play_tables.h"
#include "timeplan/chance/room_play.h"

namespace {

using namespace timeplan;

/// A room built sentence by sentence.
class Room {
 public:
  explicit Room(int cooks = 1) { model.cooks.resize(static_cast<std::size_t>(cooks)); }

  int step(int cook, int attention, int start, int planned) {
    PlayActivity a;
    a.cook = cook;
    a.attention = attention;
    a.busy = attention >= 8 ? 2 : attention == 5 ? 1 : 0;
    a.hands_on = attention >= 5;
    a.planned_start = 60 * start;
    a.planned = 60 * planned;
    a.finish = true;
    model.activities.push_back(a);
    return static_cast<int>(model.activities.size()) - 1;
  }
  int window(PlayWindow kind, int start, int planned) {
    PlayActivity a;
    a.window = kind;
    for (std::size_t c = 0; c < model.cooks.size(); ++c) a.audience.push_back(static_cast<int>(c));
    a.planned_start = 60 * start;
    a.planned = 60 * planned;
    model.activities.push_back(a);
    return static_cast<int>(model.activities.size()) - 1;
  }
  int pool(int capacity) {
    model.resources.push_back({capacity, {}});
    return static_cast<int>(model.resources.size()) - 1;
  }
  void uses(int a, int resource, int amount = 1) {
    at(a).ways.push_back({{{resource, amount}}, kNever});
  }
  void after(int from, int to, int most = -1, bool safety = false) {
    model.waits.push_back({from, true, to, false, 0, most < 0 ? kNever : 60 * most, safety});
  }
  void holds(int from, int to, int resource) {
    PlaySpan s;
    s.opens = from;
    s.closes = to;
    s.ways = {PlayWay{{{resource, 1}}, kNever}};
    model.spans.push_back(s);
  }
  int tray(int from, int to, int oven, int setting) {
    PlaySpan s;
    s.opens = from;
    s.closes = to;
    s.oven = oven;
    s.setting = setting;
    s.twelfths = 12;
    model.spans.push_back(s);
    return static_cast<int>(model.spans.size()) - 1;
  }
  PlayActivity& at(int a) { return model.activities[static_cast<std::size_t>(a)]; }
  Run play(const std::vector<int>& minutes, const std::vector<HandsUp>& calls = {},
           int opens_late = 0) {
    std::vector<int> length;
    for (const int m : minutes) length.push_back(60 * m);
    return timeplan::play(model, {length, calls, 60 * opens_late});
  }

  PlayModel model;
};

int start(const Run& run, int a) { return run.start[static_cast<std::size_t>(a)] / 60; }
int end(const Run& run, int a) { return run.end[static_cast<std::size_t>(a)] / 60; }

TEST(Dispatch, a_pause_the_plan_left_on_purpose_is_read_off_the_clock) {
  Room room;
  const int a = room.step(0, 8, 0, 5), b = room.step(0, 8, 8, 5);
  room.after(a, b);
  EXPECT_FALSE(play_tables(room.model).clock_bound[0]);
  EXPECT_TRUE(play_tables(room.model).clock_bound[1]);
  EXPECT_EQ(start(room.play({3, 5}), b), 8);
  EXPECT_EQ(start(room.play({9, 5}), b), 9);
}

TEST(Dispatch, a_pause_that_only_a_full_sink_explains_goes_when_the_sink_is_free) {
  Room room(2);
  const int sink = room.pool(1);
  const int a = room.step(0, 8, 0, 10), b = room.step(1, 8, 10, 5);
  room.uses(a, sink);
  room.uses(b, sink);
  EXPECT_EQ(start(room.play({6, 5}), b), 6);
}

TEST(Dispatch, nothing_of_the_class_starts_before_it_opens) {
  Room room;
  room.step(0, 8, 0, 5);
  const auto run = room.play({5}, {}, 7);
  EXPECT_EQ(start(run, 0), 7);
}

TEST(Dispatch, the_cook_waits_three_minutes_for_the_oven_and_then_goes_on) {
  Room room;
  const int bake = room.step(0, 0, 0, 10), out = room.step(0, 8, 10, 1),
            next = room.step(0, 8, 11, 4);
  room.at(out).closing = true;
  room.after(bake, out, 1);
  // Ready at 12: taken out first. Ready at 20: from 13 on the cook goes on, and takes out at once
  // at 20.
  EXPECT_EQ(start(room.play({12, 1, 4}), next), 13);
  const auto late = room.play({20, 1, 4});
  EXPECT_EQ(late.start[static_cast<std::size_t>(next)], 13 * 60 + 1);
  EXPECT_EQ(start(late, out), 20);
}

TEST(Dispatch, a_step_whose_longest_wait_is_nearly_over_goes_before_the_planned_order) {
  Room room;
  const int knead = room.step(0, 8, 0, 5), long_job = room.step(0, 8, 5, 8),
            glaze = room.step(0, 8, 13, 2);
  const int rest = room.step(0, 0, 0, 8);
  room.after(rest, glaze, 5);
  // Resting takes 1 instead of 8 min: glazing is due by 6, so at 5, within 2 min of it, it goes
  // before the long job.
  const auto run = room.play({5, 8, 2, 1});
  EXPECT_EQ(start(run, glaze), 5);
  EXPECT_EQ(start(run, long_job), 7);
  EXPECT_EQ(start(run, knead), 0);
}

TEST(Dispatch, a_free_ring_beside_is_taken_when_the_planned_one_is_not_free) {
  Room room(2);
  const int own = room.pool(1), beside = room.pool(1);
  const int a = room.step(0, 2, 0, 10), b = room.step(1, 2, 10, 5);
  room.uses(a, own);
  room.uses(b, own);
  room.uses(b, beside);
  EXPECT_EQ(start(room.play({10, 5}), b), 0);
}

TEST(Dispatch, the_adult_who_will_lead_the_demonstration_takes_on_nothing_new) {
  Room room(2);
  const int adult = room.pool(100);
  const int w = room.window(PlayWindow::kHandsOff, 10, 5);
  room.at(w).audience = {0};
  room.uses(w, adult, 100);
  const int fry = room.step(1, 10, 5, 4), fry_more = room.step(1, 10, 20, 4);
  room.uses(fry, adult, 50);
  room.uses(fry_more, adult, 50);
  room.after(fry, fry_more);
  const auto run = room.play({5, 8, 4});  // called at 10, the fryer of another group is done at 13
  EXPECT_EQ(start(run, w), 13);
  EXPECT_EQ(start(run, fry_more), 20);
}

TEST(Dispatch, with_the_window_in_mind_nothing_is_begun_that_would_hold_it_up) {
  Room room;
  const int a = room.step(0, 8, 0, 8), b = room.step(0, 8, 15, 5),
            w = room.window(PlayWindow::kHandsOff, 10, 5);
  room.after(a, b);
  // By section 5 alone the second step starts at 8 and the demonstration waits for it.
  EXPECT_EQ(start(room.play({8, 5, 5}), w), 13);
  room.model.mind_windows = true;
  EXPECT_EQ(start(room.play({8, 5, 5}), w), 10);
  EXPECT_EQ(start(room.play({8, 5, 5}), b), 15);
  EXPECT_EQ(start(room.play({4, 5, 5}), b), 4);  // time enough
}

TEST(Dispatch, pans_are_turned_down_for_the_demonstration_and_go_on_afterwards) {
  Room room;
  const int pan = room.step(0, 1, 0, 12), bake = room.step(0, 0, 0, 12);
  const int w = room.window(PlayWindow::kHandsOff, 4, 5);
  const auto run = room.play({12, 12, 5});
  EXPECT_EQ(start(run, w), 4);
  EXPECT_EQ(end(run, pan), 17);
  EXPECT_EQ(end(run, bake), 12);
}

TEST(Dispatch, a_stop_waits_for_all_five_minutes_and_who_is_not_done_ends_it_afterwards) {
  Room room(2);
  const int x0 = room.step(0, 8, 0, 8), x1 = room.step(1, 8, 0, 8), y0 = room.step(0, 8, 11, 5),
            y1 = room.step(1, 8, 11, 5);
  const int stop = room.window(PlayWindow::kStop, 8, 3);
  for (const int x : {x0, x1}) room.after(x, stop);
  for (const int y : {y0, y1}) room.after(stop, y);
  const auto early = room.play({6, 7, 5, 5, 3});
  EXPECT_EQ(start(early, stop), 7);
  const auto late = room.play({8, 20, 5, 5, 3});
  EXPECT_EQ(start(late, stop), 13);
  EXPECT_EQ(end(late, x1), 23);  // 20 min of work and 3 of looking
  EXPECT_EQ(start(late, y0), 16);
  EXPECT_EQ(start(late, y1), 23);
}

TEST(Dispatch, what_may_not_run_in_a_break_waits_until_after_it_and_pans_are_off_meanwhile) {
  Room room;
  const int pan = room.step(0, 1, 0, 9), chop = room.step(0, 8, 0, 8),
            next = room.step(0, 8, 20, 6);
  room.at(pan).heated = true;
  room.after(chop, next);
  room.model.breaks.push_back({600, 1200, {0}, false});
  const auto run = room.play({12, 8, 6});
  EXPECT_EQ(end(run, pan), 22);
  EXPECT_EQ(start(run, next), 20);
}

TEST(Dispatch, after_a_break_the_oven_is_cold) {
  Room room;
  room.model.ovens.push_back({12, 2, 1, {0, 600, 0, 0}});  // opening at the setting, ten minutes
                                                           // from cold
  const int chop = room.step(0, 8, 0, 8), bake = room.step(0, 0, 30, 10);
  room.after(chop, bake);
  room.tray(bake, bake, 0, 1);
  room.model.breaks.push_back({600, 1200, {0}, false});
  EXPECT_EQ(start(room.play({8, 10}), bake), 30);
}

TEST(Dispatch, what_can_no_longer_end_before_its_ban_is_given_up_with_the_rest_of_its_dish) {
  Room room;
  const int prep = room.step(0, 8, 0, 10), fry = room.step(0, 10, 10, 5),
            garnish = room.step(0, 8, 15, 2), wash = room.step(0, 8, 17, 5);
  room.after(prep, fry);
  room.after(fry, garnish);
  room.after(garnish, wash);
  for (const int a : {prep, fry, garnish}) room.at(a).dish = 0;
  room.at(fry).end_by = 1020;  // no hot oil after 17
  const auto in_time = room.play({12, 5, 2, 5});
  EXPECT_EQ(in_time.given_up, 0);
  EXPECT_TRUE(in_time.in_time[0]);
  const auto late = room.play({13, 5, 2, 5});
  EXPECT_EQ(late.given_up, 1);
  EXPECT_EQ(late.start[static_cast<std::size_t>(fry)], -1);
  EXPECT_EQ(late.start[static_cast<std::size_t>(garnish)], -1);
  EXPECT_EQ(start(late, wash), 13);
  EXPECT_FALSE(late.in_time[0]);
  const auto drags = room.play({12, 6, 2, 5});  // begun in time, but the oil is hot at 18
  EXPECT_EQ(drags.safety_faults, 1);
  EXPECT_FALSE(drags.in_time[0]);
}

TEST(Dispatch, a_simmer_goes_on_until_somebody_takes_it_off_and_beyond_its_longest_is_a_fault) {
  Room room;
  const int simmer = room.step(0, 1, 0, 10);
  room.step(0, 8, 0, 10);
  const int off = room.step(0, 8, 10, 1);
  room.at(simmer).longest = 900;
  room.at(off).closing = true;
  room.after(simmer, off, 0);
  const auto quick = room.play({10, 12, 1});
  EXPECT_EQ(end(quick, simmer), 12);
  EXPECT_EQ(quick.quality_faults, 0);
  const auto slow = room.play({10, 18, 1});
  EXPECT_EQ(end(slow, simmer), 18);
  EXPECT_EQ(slow.quality_seconds, 180);
}

TEST(Dispatch, a_place_keeps_its_planned_order_even_when_the_second_is_ready_first) {
  Room room(2);
  const int salad = room.step(0, 8, 5, 5), meat = room.step(1, 8, 10, 5),
            late = room.step(0, 8, 0, 5);
  room.after(late, salad);
  room.model.orders.push_back({{salad, meat}, {0, 2}});
  const auto run = room.play({5, 5, 9});
  EXPECT_EQ(start(run, salad), 9);
  EXPECT_EQ(start(run, meat), 14);
}

TEST(Dispatch, between_raw_food_and_the_hand_wash_nothing_else_is_touched) {
  Room room;
  room.model.cooks[0].people = 2;
  const int raw = room.step(0, 8, 0, 5), wash = room.step(0, 8, 5, 1),
            other = room.step(0, 8, 6, 5);
  room.after(raw, wash, 1);
  room.at(wash).closing = true;
  PlaySpan hands;
  hands.opens = raw;
  hands.closes = wash;
  hands.shuts_out = {other};
  room.model.spans.push_back(hands);
  EXPECT_EQ(start(room.play({9, 1, 5}), other), 10);
}

TEST(Dispatch, no_tray_goes_in_or_out_while_the_door_must_stay_shut) {
  Room room(2);
  room.model.ovens.push_back({24, 2, 1, {0, 600, 0, 0}});
  const int puff = room.step(0, 0, 0, 10), prep = room.step(1, 8, 0, 8),
            roll = room.step(1, 0, 8, 10);
  room.after(prep, roll);
  room.at(puff).door_shut = 300;
  room.at(puff).door_span = room.tray(puff, puff, 0, 1);
  room.tray(roll, roll, 0, 1);
  EXPECT_EQ(start(room.play({10, 2, 10}), roll), 5);
}

TEST(Dispatch, those_who_share_a_tray_put_it_in_together) {
  Room room(2);
  const int a = room.step(0, 8, 0, 5), b = room.step(1, 8, 0, 5), bake_a = room.step(0, 0, 5, 10),
            bake_b = room.step(1, 0, 5, 10);
  room.after(a, bake_a);
  room.after(b, bake_b);
  room.at(bake_a).together = room.at(bake_b).together = 0;
  const auto run = room.play({4, 9, 10, 10});
  EXPECT_EQ(start(run, bake_a), 9);
  EXPECT_EQ(start(run, bake_b), 9);
}

TEST(Dispatch, a_raised_hand_lengthens_the_step_by_the_wait_only) {
  Room room(2);
  const int adult = room.pool(100);
  room.model.helpers = {adult};
  const int fry = room.step(0, 10, 0, 6), chop = room.step(1, 8, 0, 10);
  room.uses(fry, adult, 60);
  room.at(chop).calls = true;
  std::vector<HandsUp> calls(4);
  calls[2] = {240, 180};  // after four minutes; the adult is half free from 6 on
  EXPECT_EQ(end(room.play({6, 10}, calls), chop), 12);
  EXPECT_EQ(end(room.play({3, 10}, calls), chop), 10);  // answered at once: being helped is in the
                                                        // minutes
}

TEST(Dispatch, two_cooks_cannot_each_hold_the_ring_the_other_needs) {
  // Two rings. Each cook opens a first pan, needs a second ring before either is let go. Planned
  // one after the other; cook 0 is late with the first pan, and cook 1 would be ready to take a
  // ring in between.
  Room room(2);
  const int rings = room.pool(2);
  const int late = room.step(0, 8, 0, 3);
  std::vector<int> pans;
  for (const int cook : {0, 1}) {
    const int t = 20 * cook;
    const int first = room.step(cook, 2, t, 3), second = room.step(cook, 2, t + 3, 3),
              off = room.step(cook, 8, t + 6, 1);
    room.after(first, second);
    room.after(second, off);
    room.holds(first, off, rings);
    room.holds(second, off, rings);
    room.at(off).closing = true;
    pans.insert(pans.end(), {first, second, off});
    if (cook == 0) room.after(late, second);
  }
  room.at(pans[0]).planned_start = 0;
  for (std::size_t i = 3; i < 6; ++i)
    room.at(pans[i]).planned_start = 60 * (7 + 3 * static_cast<int>(i - 3));
  const auto run = room.play({15, 3, 3, 1, 3, 3, 1});
  EXPECT_EQ(end(run, pans[2]), 19);
  EXPECT_EQ(start(run, pans[3]), 19);  // waits although a ring is free: cook 0's plan needs it to
                                       // get out
}

TEST(Dispatch, a_pupil_who_is_away_leaves_one_pair_of_hands) {
  Room room;
  room.model.cooks[0].people = 2;
  room.model.cooks[0].people_changes = {{300, -1}, {900, 1}};
  const int a = room.step(0, 8, 0, 8), b = room.step(0, 8, 15, 5);
  EXPECT_EQ(start(room.play({20, 5}), b), 15);
  room.model.cooks[0].people_changes = {{300, -1}, {1800, 1}};
  EXPECT_EQ(start(room.play({20, 5}), b), 20);
  EXPECT_EQ(a, 0);
}

TEST(Dispatch, the_start_remembers_what_it_waited_for) {
  Room room(2);
  const int sink = room.pool(1);
  const int prep = room.step(0, 8, 0, 10), wash0 = room.step(0, 8, 10, 5),
            wash1 = room.step(1, 8, 0, 12);
  room.after(prep, wash0);
  room.uses(wash0, sink);
  room.uses(wash1, sink);
  EXPECT_EQ(room.play({10, 5, 12}).cause[static_cast<std::size_t>(wash0)], wash1);
  EXPECT_EQ(room.play({14, 5, 12}).cause[static_cast<std::size_t>(wash0)], prep);
}

TEST(Dispatch, luck_of_the_wrong_shape_is_refused) {
  Room room;
  room.step(0, 8, 0, 5);
  EXPECT_THROW(room.play({}), std::invalid_argument);
  EXPECT_THROW(room.play({5}, std::vector<HandsUp>(1)), std::invalid_argument);
}

}  // namespace
