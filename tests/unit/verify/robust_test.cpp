// Sums against a count minute by minute, and plans full of nonsense.
#include <algorithm>

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include "sample.h"
#include "timeplan/verify/sweep.h"

namespace timeplan {
namespace {

using base::Seconds;
using sample::Sample;

std::vector<judge::Use> some_uses() {
  std::vector<judge::Use> uses;
  const int n = *rc::gen::inRange(0, 12);
  for (int i = 0; i < n; ++i) {
    const int from = *rc::gen::inRange(0, 20);
    const int to = *rc::gen::inRange(0, 24);
    uses.push_back({{Seconds{from}, Seconds{to}}, *rc::gen::inRange(1, 4), {i}});
  }
  return uses;
}

// Every second lies in a reported stretch exactly when the uses of that second are too many.
RC_GTEST_PROP(Sweep, AgreesWithACountSecondBySecond, ()) {
  const auto uses = some_uses();
  const int capacity = *rc::gen::inRange(0, 8);
  const auto found = judge::over(uses, capacity);
  for (int t = 0; t < 25; ++t) {
    int sum = 0;
    for (const auto& u : uses) {
      if (u.span.from.count() <= t && t < u.span.to.count()) sum += u.amount;
    }
    const bool reported = std::any_of(found.begin(), found.end(), [&](const auto& e) {
      return e.span.from.count() <= t && t < e.span.to.count();
    });
    RC_ASSERT(reported == (sum > capacity));
  }
}

Sample any_sample() {
  Sample (*const lessons[])() = {sample::supper, sample::bakery, sample::two_pans,
                                 sample::take_home};
  return lessons[*rc::gen::inRange(0, 4)]();
}

int odd() { return *rc::gen::inRange(-3, 9); }

void spoil(Task& t) {
  const int what = *rc::gen::inRange(0, 14);
  int* const fields[] = {&t.cook, &t.dish,   &t.step, &t.part,     &t.window,
                         &t.bay,  &t.cooker, &t.kit,  &t.sink_bay, &t.adult};
  if (what < 10) *fields[what] = odd();
  if (what == 10) t.kind = static_cast<TaskKind>(*rc::gen::inRange(0, 20));
  if (what == 11) t.start = Seconds{*rc::gen::inRange(-9999, 9999)};
  if (what == 12) t.end = Seconds{*rc::gen::inRange(-9999, 9999)};
  if (what == 13) t.kit_units.assign(static_cast<std::size_t>(*rc::gen::inRange(0, 4)), odd());
}

// A plan is untrusted: whatever stands in it, the judge answers, and names only tasks that are
// there.
RC_GTEST_PROP(Verify, AnswersWhateverStandsInThePlan, ()) {
  auto s = any_sample();
  const int times = *rc::gen::inRange(1, 20);
  for (int i = 0; i < times; ++i) {
    spoil(s.plan.tasks[*rc::gen::inRange<std::size_t>(0, s.plan.tasks.size())]);
  }
  for (auto& served : s.plan.served) served = {odd(), odd(), served.at};
  s.plan.checkpoints.push_back({odd(), Seconds{300}, odd(), odd(), "anything"});
  const auto found = verify(s.lesson, s.plan);
  RC_ASSERT(!found.empty());
  for (const auto& v : found) {
    for (const int t : v.tasks) RC_ASSERT(t >= 0 && t < static_cast<int>(s.plan.tasks.size()));
  }
}

TEST(Verify, NamesAWindowThatCarriesTheNumberOfNoCook) {
  auto s = sample::supper();
  const auto window = std::find_if(s.plan.tasks.begin(), s.plan.tasks.end(),
                                   [](const Task& t) { return t.kind == TaskKind::kWindow; });
  ASSERT_NE(window, s.plan.tasks.end());
  window->cook = 1000;
  window->end += Seconds{60};
  EXPECT_FALSE(verify(s.lesson, s.plan).empty());
}

// The order of the lines of a plan means nothing.
RC_GTEST_PROP(Verify, DoesNotMindTheOrderOfTheLines, ()) {
  auto s = any_sample();
  for (std::size_t i = s.plan.tasks.size(); i > 1; --i) {
    std::swap(s.plan.tasks[i - 1], s.plan.tasks[*rc::gen::inRange<std::size_t>(0, i)]);
  }
  RC_ASSERT(verify(s.lesson, s.plan).empty());
}

// No task of a cook can be left out, and none can be there twice, without the judge noticing.
RC_GTEST_PROP(Verify, MissesEveryTaskThatIsLeftOut, ()) {
  auto s = any_sample();
  const auto i = *rc::gen::inRange<std::size_t>(0, s.plan.tasks.size());
  auto more = s.plan;
  more.tasks.push_back(more.tasks[i]);
  RC_ASSERT(!verify(s.lesson, more).empty());
  s.plan.tasks.erase(s.plan.tasks.begin() + static_cast<std::ptrdiff_t>(i));
  RC_ASSERT(!verify(s.lesson, s.plan).empty());
}

}  // namespace
}  // namespace timeplan
