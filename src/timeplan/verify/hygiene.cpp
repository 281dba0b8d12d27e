// Places: clean and raw work never together, and a clean-down from dirtier to cleaner (rules H2,
// H3).
#include <algorithm>

#include <fmt/format.h>

#include "timeplan/verify/checks.h"

namespace timeplan::judge {

namespace {

int class_of(const Case& c, int index) {
  const Task& t = c.task(index);
  return static_cast<int>(*c.step(t.dish, t.step).hygiene);
}

int place_of(const Case& c, int index) { return c.cook(c.task(index).cook).place; }

// Tasks with a hygiene class at a place, in the order of the plan.
std::vector<int> work_at(const Case& c, int place) {
  std::vector<int> list;
  for (const int index : c.all()) {
    const Task& t = c.task(index);
    if (t.kind != TaskKind::kStep || !c.step(t.dish, t.step).hygiene) continue;
    if (place_of(c, index) == place) list.push_back(index);
  }
  return list;
}

std::vector<int> clean_downs_at(const Case& c, int place) {
  std::vector<int> list;
  for (const int index : c.clean_downs) {
    if (place_of(c, index) == place) list.push_back(index);
  }
  std::sort(list.begin(), list.end(),
            [&](int a, int b) { return c.task(a).start < c.task(b).start; });
  return list;
}

// The first clean-down of the cook who did `dirty`, after it.
std::optional<int> cleaned_by(const Case& c, int dirty, const std::vector<int>& clean_downs) {
  for (const int t : clean_downs) {
    if (c.task(t).cook == c.task(dirty).cook && c.task(t).start >= c.task(dirty).end) return t;
  }
  return std::nullopt;
}

void check_together(Case& c, const std::vector<int>& work) {
  for (std::size_t i = 0; i < work.size(); ++i) {
    for (std::size_t j = 0; j < i; ++j) {
      const Task& a = c.task(work[i]);
      const Task& b = c.task(work[j]);
      if (class_of(c, work[i]) == class_of(c, work[j]) || !overlap(when(a), when(b))) continue;
      c.report("H2", fmt::format("{}, beside {} at one place.", c.label(work[i]), c.label(work[j])),
               {work[i], work[j]}, {std::max(a.start, b.start), std::min(a.end, b.end)});
    }
  }
}

// For each clean-down the dirtiest class it was needed for; those not in it were not needed.
std::map<int, int> check_order(Case& c, const std::vector<int>& work,
                               const std::vector<int>& clean_downs) {
  std::map<int, int> needed;
  for (const int dirty : work) {
    const auto clean = cleaned_by(c, dirty, clean_downs);
    for (const int next : work) {
      const bool goes_down = class_of(c, dirty) > class_of(c, next) &&
                             c.task(dirty).end <= c.task(next).start;
      if (!goes_down) continue;
      if (clean && c.task(*clean).end <= c.task(next).start) {
        needed[*clean] = std::max(needed[*clean], class_of(c, dirty));
        continue;
      }
      c.report("H3",
               fmt::format("{}: the place was not cleaned down after {}.", c.label(next),
                           c.label(dirty)),
               {dirty, next}, {c.task(dirty).end, c.task(next).start});
    }
  }
  return needed;
}

void check_clean_down(Case& c, int index, std::optional<int> dirtiest) {
  const Task& t = c.task(index);
  if (!dirtiest) {
    c.report("H3", fmt::format("{}, is not needed.", c.label(index)), {index}, when(t));
    return;
  }
  const bool raw = *dirtiest == static_cast<int>(kitchen::Hygiene::kRaw);
  const auto& rules = c.lesson.rules;
  const auto length = base::grid_up(raw ? rules.clean_after_raw : rules.clean_after_unwashed);
  if (t.end - t.start == length) return;
  c.report("H3",
           fmt::format("{}, lasts {}; it should last {}.", c.label(index),
                       minutes_text(t.end - t.start), minutes_text(length)),
           {index}, when(t));
}

// A clean-down has the place to itself.
void check_alone(Case& c, int index, const std::vector<int>& others) {
  for (const int other : others) {
    if (other == index || !overlap(when(c.task(index)), when(c.task(other)))) continue;
    c.report("H3",
             fmt::format("{}, while the place is being cleaned down ({}).", c.label(other),
                         c.at(when(c.task(index)))),
             {index, other}, when(c.task(index)));
  }
}

}  // namespace

void check_hygiene(Case& c) {
  for (int place = 0; place < static_cast<int>(c.lesson.room.places.size()); ++place) {
    const auto work = work_at(c, place);
    const auto clean_downs = clean_downs_at(c, place);
    check_together(c, work);
    const auto needed = check_order(c, work, clean_downs);
    for (std::size_t i = 0; i < clean_downs.size(); ++i) {
      const auto it = needed.find(clean_downs[i]);
      check_clean_down(c, clean_downs[i],
                       it == needed.end() ? std::nullopt : std::optional(it->second));
      check_alone(c, clean_downs[i], work);
      const auto after = static_cast<std::ptrdiff_t>(i) + 1;
      check_alone(c, clean_downs[i], {clean_downs.begin() + after, clean_downs.end()});
    }
  }
}

}  // namespace timeplan::judge
