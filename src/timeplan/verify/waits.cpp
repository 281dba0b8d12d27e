// Waits between the tasks of one cook, and the cook's own opening and bell.
#include <algorithm>

#include <fmt/format.h>

#include "timeplan/verify/attention.h"
#include "timeplan/verify/checks.h"
#include "timeplan/verify/expected.h"
#include "timeplan/verify/lengths.h"

namespace timeplan::judge {

namespace {

Seconds moment(const Span& s, kitchen::Moment m) {
  return m == kitchen::Moment::kStart ? s.from : s.to;
}

const char* word(kitchen::Moment m) { return m == kitchen::Moment::kStart ? "starts" : "ends"; }

// "later" must start no earlier than "earlier" has ended.
void must_follow(Case& c, const char* rule, int earlier, int later) {
  const Task& a = c.task(earlier);
  const Task& b = c.task(later);
  if (b.start >= a.end) return;
  c.report(rule,
           fmt::format("{}, starts before {} has ended at {}.", c.label(later), c.what(earlier),
                       c.at(a.end)),
           {earlier, later}, {b.start, a.end});
}

void check_wait(Case& c, int cook, int dish, int step, const kitchen::Follows& wait) {
  const auto here = c.span(cook, dish, step);
  const auto there = c.span(cook, dish, wait.step);
  if (!here || !there) return;
  const auto from = moment(*there, wait.of);
  const auto to = moment(*here, wait.moment);
  const auto gap = to - from;
  const bool early = gap < base::grid_up(wait.least);
  const bool late = wait.most && gap > base::grid_down(*wait.most);
  if (!early && !late) return;
  const auto limit = early ? wait.least : *wait.most;
  auto which = c.parts(cook, dish, step);
  for (const int t : c.parts(cook, dish, wait.step)) which.push_back(t);
  c.report(
      "L1",
      fmt::format("{}, {}: \"{}\" {} at {}, {} after \"{}\" {}; it must be at {} {}.",
                  c.cook(cook).name, c.dish(dish).name, c.step(dish, step).brief, word(wait.moment),
                  c.at(to), minutes_text(gap), c.step(dish, wait.step).brief, word(wait.of),
                  early ? "least" : "most", minutes_text(limit)),
      which, {std::min(from, to), std::max(from, to)});
}

void check_method(Case& c, int cook, int dish) {
  for (const int s : c.half(dish).reading) {
    for (const auto& wait : c.step(dish, s).follows) {
      if (c.half(dish).here[static_cast<std::size_t>(wait.step)])
        check_wait(c, cook, dish, s, wait);
    }
    const auto parts = c.parts(cook, dish, s);
    for (std::size_t i = 1; i < parts.size(); ++i) must_follow(c, "P1", parts[i - 1], parts[i]);
  }
}

bool waits_for_end_of(const kitchen::Step& step, int other) {
  return std::any_of(step.follows.begin(), step.follows.end(), [&](const auto& wait) {
    return wait.step == other && wait.of == kitchen::Moment::kEnd && wait.least.count() >= 0;
  });
}

void check_gate(Case& c, int cook, int dish, int gated) {
  const auto look = c.find({TaskKind::kLook, cook, dish, gated});
  const auto done = c.span(cook, dish, gated);
  if (!look || !done) return;
  const Task& t = c.task(*look);
  const auto within = base::grid_down(c.step(dish, gated).gate->within);
  if (t.start < done->to || t.start > done->to + within) {
    c.report("Y5",
             fmt::format("{}: it must start within {} of {}, when the step ends.", c.label(*look),
                         minutes_text(within), c.at(done->to)),
             {*look}, {std::min(t.start, done->to), std::max(t.start, done->to)});
  }
  for (const int s : c.half(dish).reading) {
    if (!waits_for_end_of(c.step(dish, s), gated)) continue;
    const auto parts = c.parts(cook, dish, s);
    if (!parts.empty()) must_follow(c, "Y5", *look, parts.front());
  }
}

// Washing hands at once after raw work, and nothing in other hands until then (rule H5).
void check_raw_group(Case& c, int cook, int dish, const std::vector<int>& group) {
  const auto wash = c.find({TaskKind::kHandWash, cook, dish, group.back()});
  std::optional<Span> raw;
  for (const int s : group) {
    const auto one = c.span(cook, dish, s);
    if (!one) return;
    raw = raw ? Span{std::min(raw->from, one->from), std::max(raw->to, one->to)} : *one;
  }
  if (!wash) return;
  const Task& w = c.task(*wash);
  if (w.start < raw->to || w.start > raw->to + base::minutes(1)) {
    c.report("H5",
             fmt::format("{}: hands are washed within a minute of {}, when the raw work ends.",
                         c.label(*wash), c.at(raw->to)),
             {*wash}, {std::min(w.start, raw->to), std::max(w.start, raw->to)});
  }
  const Span unwashed{raw->from, w.end};
  for (const int t : c.of_cook(cook)) {
    const Task& other = c.task(t);
    const bool in_group = other.kind == TaskKind::kStep && other.dish == dish &&
                          std::find(group.begin(), group.end(), other.step) != group.end();
    if (in_group || t == *wash || !keeps_hands(c, t) || !overlap(unwashed, when(other))) continue;
    c.report("H5",
             fmt::format("{}, while hands are unwashed after raw work ({}).", c.label(t),
                         c.at(unwashed)),
             {t, *wash}, unwashed);
  }
  for (int k = 0; k < static_cast<int>(c.lesson.windows.size()); ++k) {
    const auto window = c.window(k);
    if (!window || !c.in_audience(k, cook) || !overlap(unwashed, *window)) continue;
    c.report("H5",
             fmt::format("{} at {} falls between raw work and washing hands of {}.",
                         c.lesson.windows[static_cast<std::size_t>(k)].name, c.at(*window),
                         c.cook(cook).name),
             {*wash}, unwashed);
  }
}

void check_beginning(Case& c, int cook) {
  const auto apron = c.find({TaskKind::kApronAndHands, cook});
  for (const int t : c.of_cook(cook)) {
    if (apron && t != *apron) must_follow(c, "H7", *apron, t);
    if (c.task(t).kind != TaskKind::kStep) continue;
    for (const auto kind : {TaskKind::kCollectIngredients, TaskKind::kCollectEquipment}) {
      if (const auto collect = c.find({kind, cook})) must_follow(c, "K7", *collect, t);
    }
  }
}

void check_take_out(Case& c, int cook, int dish) {
  const auto out = c.find({TaskKind::kTakeOutOfStore, cook, dish});
  if (!out) return;
  for (const int s : c.half(dish).reading) {
    for (const int t : c.parts(cook, dish, s)) must_follow(c, "C3", *out, t);
  }
}

void check_store(Case& c, int cook, int dish) {
  constexpr auto kIntoTheFridge = base::minutes(90);  // A040
  const auto store = c.find({TaskKind::kStore, cook, dish});
  if (!store) return;
  for (const int s : c.half(dish).reading) {
    const auto parts = c.parts(cook, dish, s);
    if (!parts.empty()) must_follow(c, "C2", parts.back(), *store);
  }
  const auto& split = *c.half(dish).split;
  const auto cooked = c.span(cook, dish, split.after_step);
  if (!cooked || split.cooling.count() == 0) return;
  const Task& t = c.task(*store);
  const auto cooling = base::grid_up(split.cooling);
  if (t.start < cooked->to + cooling) {
    c.report("C2",
             fmt::format("{}: it must cool for {} from {}.", c.label(*store), minutes_text(cooling),
                         c.at(cooked->to)),
             {*store}, {cooked->to, t.start});
  }
  if (t.end > cooked->to + kIntoTheFridge) {
    c.report("C2",
             fmt::format("{}: it must be in the fridge within 90 min of {}.", c.label(*store),
                         c.at(cooked->to)),
             {*store}, {cooked->to, t.end});
  }
}

// What somebody has pinned starts then (rule W8).
void check_pins(Case& c) {
  for (const auto& pin : c.lesson.pins) {
    for (int k = 0; k < c.cooks(); ++k) {
      const bool theirs = pin.cooks.empty() ||
                          std::find(pin.cooks.begin(), pin.cooks.end(), k) != pin.cooks.end();
      const auto parts = c.parts(k, pin.step.dish, pin.step.step);
      if (!theirs || parts.empty()) continue;
      const Task& t = c.task(parts.front());
      if (t.start == base::grid_up(pin.at)) continue;
      c.report(
          "W8",
          fmt::format("{}: it is pinned to start at {}.", c.label(parts.front()), c.at(pin.at)),
          {parts.front()}, {std::min(t.start, pin.at), std::max(t.start, pin.at)});
    }
  }
}

// Rule W7. Being late at the bell is K5's, and for a cook whose wash-up is late K5 has said it all
// (serving.cpp).
void check_presence(Case& c, int cook) {
  const auto& who = c.cook(cook);
  const auto last = c.find({TaskKind::kWashUp, cook, -1, -1, wash_up_parts(c, cook) - 1});
  const bool late = last && c.task(*last).end > c.due(cook);
  for (const int t : c.of_cook(cook)) {
    const Task& task = c.task(t);
    if (task.start < who.arrives || task.start < Seconds{0}) {
      c.report("W7",
               fmt::format("{}, starts before {} is there at {}.", c.label(t), who.name,
                           c.at(std::max(who.arrives, Seconds{0}))),
               {t}, when(task));
    }
    const bool bell_rule = task.kind == TaskKind::kWashUp || task.kind == TaskKind::kPack;
    if (task.end > who.leaves && !late && !bell_rule) {
      c.report(
          "W7",
          fmt::format("{}, ends after {} leaves at {}.", c.label(t), who.name, c.at(who.leaves)),
          {t}, when(task));
    }
  }
}

}  // namespace

void check_waits(Case& c) {
  for (int k = 0; k < c.cooks(); ++k) {
    check_presence(c, k);
    check_beginning(c, k);
    for (const int d : c.cook(k).dishes) {
      check_method(c, k, d);
      check_take_out(c, k, d);
      check_store(c, k, d);
      for (const auto& group : raw_groups(c, d)) check_raw_group(c, k, d, group);
      for (const int s : c.half(d).reading) {
        if (c.step(d, s).gate) check_gate(c, k, d, s);
      }
    }
  }
  check_pins(c);
  for (const int t : c.all()) {
    if (key_of(c.task(t)).cook >= 0 || c.task(t).start >= Seconds{0}) continue;
    c.report("W7", fmt::format("{}, starts before the lesson opens.", c.label(t)), {t},
             when(c.task(t)));
  }
}

}  // namespace timeplan::judge
