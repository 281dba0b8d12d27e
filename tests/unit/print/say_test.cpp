#include "print/say.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <regex>
#include <sstream>

#include "print/equipment.h"
#include "print/facts.h"
#include "print/words.h"
#include "sample.h"

namespace {

bool has(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

/// The text without line ends and repeated spaces, so that wrapping does not hide words.
std::string flat(const std::string& text) {
  std::istringstream in(text);
  std::string out;
  for (std::string word; in >> word;) out += (out.empty() ? "" : " ") + word;
  return out;
}

std::string said(const sample::Told& told, bool details = false, int width = 80) {
  return print::say(told.lesson, told.answer, {details, width, false});
}

TEST(Say, the_first_line_answers_the_question) {
  EXPECT_EQ(said(sample::two_waves()).substr(0, 32), "It fits: 6 min spare. Two waves.");
  EXPECT_TRUE(said(sample::over_the_bell()).starts_with("It does not fit: 9 min over the bell."));
}

TEST(Say, a_lesson_that_does_not_fit_shows_causes_and_remedies_before_anything_else) {
  const std::string text = said(sample::over_the_bell());
  const std::size_t cause = text.find("12 sets of washing up");
  const std::size_t remedy = text.find(
      "Work in threes instead of pairs. Fits in two waves, 6 min spare.");
  const std::size_t plan = text.find("Wave 1:");
  ASSERT_NE(plan, std::string::npos);
  EXPECT_LT(cause, remedy);
  EXPECT_LT(remedy, text.find("Quillbridge"));
  EXPECT_LT(remedy, plan);
  EXPECT_TRUE(has(text, "The least late plan"));
}

TEST(Say, every_start_of_every_cook_is_in_the_text) {
  for (const sample::Told& told : {sample::two_waves(), sample::assessed(18)}) {
    const std::string text = said(told);
    for (const print::Task& task : told.answer.plan->tasks) {
      if (task.kind == print::TaskKind::kBayLook || task.cook < 0) continue;
      EXPECT_TRUE(has(text, kitchen::clock(told.lesson, task.start)))
          << print::task_words(told.lesson, task);
    }
  }
}

TEST(Say, a_cook_finds_their_own_queue_turns_by_place) {
  const sample::Told told = sample::two_waves();
  const std::string text = flat(said(told));
  // B2 is third in the queue of wave 1: it opens at 10:54 with two places every 2 min, so 10:58.
  EXPECT_TRUE(has(text, "B2 Kira and Leo: 10:58 apron on; 11:01 collect food"));
}

TEST(Say, a_queue_is_one_line_with_its_call_order) {
  EXPECT_TRUE(has(said(sample::two_waves()),
                  "10:54 to 11:00      Apron on, wash hands: A1 A2, then A3 A4, then B1 B2"));
}

TEST(Say, checkpoints_windows_gates_and_last_safe_starts_are_said_with_their_clock_times) {
  const std::string text = flat(said(sample::two_waves()));
  EXPECT_TRUE(has(text, "11:20 leeks in the pan (LS)"));
  EXPECT_TRUE(has(text, "11:35 to 11:38 STOP, everybody looks: How to cut scones. Ms Hart leads."));
  EXPECT_TRUE(has(text, "Stop for the look: even dice, no grit in the leek (look: Ms Hart)"));
  EXPECT_TRUE(has(text,
                  "11:48 scones in the oven, wave 1. Later than that: finish cold: the technician "
                  "bakes them after the bell."));
}

TEST(Say, the_teacher_is_told_when_to_switch_ovens_on) {
  // Scones of wave 1 go in at 11:53; cold to 200 degrees takes 10 min and 1 for each 10 degrees
  // above 180: 12 min.
  EXPECT_TRUE(has(flat(said(sample::two_waves())),
                  "11:41 Switch ovens A1 A2 A3 A4 B1 B2 on, 200 °C fan; hot by 11:53."));
}

TEST(Say, hot_oil_names_the_place_and_the_adult) {
  const std::string text = flat(said(sample::assessed(18)));
  EXPECT_TRUE(
      std::regex_search(text, std::regex("Where Mr Reed stands .*Hot oil \\(Fry rolls\\): A2 ")));
}

TEST(Say, how_likely_is_a_word_and_a_figure_with_what_decides_and_what_a_late_start_costs) {
  const std::string text = flat(said(sample::two_waves()));
  EXPECT_TRUE(has(
      text, "How likely Tight: in about 8 in 10 lessons all are washed up and packed in time."));
  EXPECT_TRUE(
      has(text, "If the class starts 5 min late, about 6 in 10; 10 min late, about 2 in 10."));
  EXPECT_TRUE(has(text, "What most often holds the last ones up: Bake scones CS (12 in 100)."));
  EXPECT_FALSE(has(text, "2000"));
  EXPECT_TRUE(has(flat(said(sample::two_waves(), true)),
                  "Chance 82.0 in 100, interval 80 to 84 in 100 (95 %). Runs 2000, seed 1."));
}

TEST(Say, no_engine_word_stands_in_the_text_without_details) {
  static const std::regex engine(
      "\\b(makespan|lags?|resources?|gaps?|bounds?|seed|solver|optim\\w*|lower|objective|"
      "constraints?|feasib\\w*|infeasib\\w*|"
      "heuristic\\w*|nodes?|search\\w*|activit\\w*|precedence|capacity|interval|level|G[1-6w] "
      "(?=overrun|buffer|waves|last))\\b",
      std::regex::icase);
  for (const sample::Told& told :
       {sample::two_waves(), sample::over_the_bell(), sample::assessed(30), sample::nothing()}) {
    std::smatch found;
    const std::string text = said(told);
    EXPECT_FALSE(std::regex_search(text, found, engine)) << found.str();
  }
}

TEST(Say, details_give_the_distance_from_the_best_in_minutes_a_cook_and_per_cent_of_the_lesson) {
  // G6: 1032 - 960 = 72 cook-minutes over 12 cooks is 6 min a cook; of 115 minutes that is 5.2 per
  // cent.
  const std::string text = flat(said(sample::two_waves(), true));
  EXPECT_TRUE(
      has(text, "value 1032, bound 960, gap 6.0 min a cook, 5.2 % of the lesson, not proved best"));
  // What the five-minute grid costs is told apart from what was not found.
  EXPECT_TRUE(has(text,
                  "value 12, bound 0 (6 with these checkpoints; value 10 before they were "
                  "set), gap 0.5 min a cook"));
  EXPECT_TRUE(has(text, "Gw waves value 2, bound 2, proved best."));
}

TEST(Say, no_line_is_longer_than_the_width) {
  for (const int width : {60, 80, 120}) {
    std::istringstream in(said(sample::assessed(30), true, width));
    for (std::string line; std::getline(in, line);)
      EXPECT_LE(print::letters(line), static_cast<std::size_t>(width)) << line;
  }
}

TEST(Say, seconds_are_never_said_and_the_caution_ends_the_text) {
  const std::string text = said(sample::two_waves());
  EXPECT_FALSE(has(text, "second"));
  EXPECT_TRUE(text.ends_with("employer's and local rules.\n"));
  EXPECT_TRUE(has(text, "never replaces a probe or your own risk assessment"));
}

TEST(Say, empty_lists_and_a_missing_plan_are_said_without_fuss) {
  sample::Told told = sample::nothing();
  EXPECT_TRUE(said(told, true).starts_with("A risk: no plan that fits was found"));
  told.answer.plan.reset();
  EXPECT_FALSE(has(said(told), "Wave"));
}

TEST(Say, thirty_candidates_with_three_dishes_each_have_a_compact_list) {
  const std::string text = said(sample::assessed(30));
  for (const kitchen::Cook& cook : sample::assessed(30).lesson.cooks)
    EXPECT_TRUE(has(text, " " + cook.name + ": LS, CS, SR"));
  // 30 cooks, about 24 things each, three on a line and two lines between: some 300 lines and the
  // adults' lists
  EXPECT_LT(std::count(text.begin(), text.end(), '\n'), 420);
}

TEST(Facts, two_cooks_at_one_place_are_called_by_place_and_name) {
  sample::Told told = sample::two_waves();
  told.lesson.cooks[1].place = 0;
  EXPECT_EQ(print::call(told.lesson, 0), "A1 Aisha and Ben");
  EXPECT_EQ(print::call(told.lesson, 2), "A3");
}

TEST(Equipment, cooks_who_share_a_tray_are_one_tray) {
  sample::Told told = sample::two_waves();
  for (print::Task& task : told.answer.plan->tasks) {  // A2's scones go into A1's oven at the same
                                                       // time
    if (task.cook == 1 && task.setting) task.cooker = 0;
  }
  const auto ovens = print::oven_use(told.lesson, *told.answer.plan);
  ASSERT_FALSE(ovens.empty());
  ASSERT_EQ(ovens[0].batches[0].trays.size(), 1U);
  EXPECT_EQ(ovens[0].batches[0].trays[0].cooks, (std::vector<int>{0, 1}));
  EXPECT_EQ(ovens[0].batches[0].trays[0].twelfths, 12);
}

TEST(Equipment, an_oven_changed_between_batches_is_turned_when_it_is_empty) {
  sample::Told told = sample::two_waves();
  for (print::Task& task : told.answer.plan->tasks) {
    if (task.cook == 0 && task.setting) task.setting->celsius = 180;
    if (task.cook == 6 && task.setting) {  // B3 bakes in A1's oven, after A1
      task.cooker = 0;
      task.start += base::minutes(25);
      task.end += base::minutes(25);
    }
  }
  const auto ovens = print::oven_use(told.lesson, *told.answer.plan);
  ASSERT_EQ(ovens[0].batches.size(), 2U);
  EXPECT_EQ(ovens[0].knobs[1].at, ovens[0].batches[0].to);
  EXPECT_FALSE(ovens[0].knobs[1].from_cold);
}

}  // namespace
