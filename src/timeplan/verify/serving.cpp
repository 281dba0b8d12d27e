// The end of a cook's lesson: serve, wash up, pack, and be out by the bell.
#include <algorithm>

#include <fmt/format.h>

#include "timeplan/verify/attention.h"
#include "timeplan/verify/checks.h"
#include "timeplan/verify/holds.h"
#include "timeplan/verify/lengths.h"

namespace timeplan::judge {

namespace {

const kitchen::Sitting& sitting_of(const Case& c, int s) {
  return c.lesson.sittings[static_cast<std::size_t>(s)];
}

// Exactly one serve moment for each cook and sitting that asks for one.
void check_moments(Case& c) {
  std::map<std::pair<int, int>, int> given;
  const bool home = c.lesson.purpose == kitchen::Purpose::kTakeHome;
  for (const auto& s : c.plan.served) {
    const Span now{s.at, s.at};
    const bool known = s.cook >= 0 && s.cook < c.cooks() && s.sitting >= 0 &&
                       s.sitting < std::ssize(c.lesson.sittings);
    if (!known || home || !served_in(c, s.cook, s.sitting)) {
      c.report("S2",
               fmt::format("Something is served at {} that nobody is due to serve.", c.at(s.at)),
               {}, now);
    } else if (++given[{s.cook, s.sitting}] == 2) {
      c.report(
          "S2",
          fmt::format("{} serve {} twice.", c.cook(s.cook).name, sitting_of(c, s.sitting).name), {},
          now);
    }
    if (s.at % base::kGrid != Seconds{0}) {
      c.report("T3", fmt::format("The serve moment {} is not a whole minute.", c.at(s.at)), {},
               now);
    }
  }
  for (int k = 0; !home && k < c.cooks(); ++k) {
    for (int s = 0; s < static_cast<int>(c.lesson.sittings.size()); ++s) {
      if (!served_in(c, k, s) || serve_moment(c, k, s)) continue;
      c.report("S2",
               fmt::format("{}: no serve moment for {}.", c.cook(k).name, sitting_of(c, s).name),
               {}, {});
    }
  }
}

// The start of the first tasting window the cook is in.
std::optional<Seconds> tasting(const Case& c, int cook) {
  for (int w = 0; w < static_cast<int>(c.lesson.windows.size()); ++w) {
    if (!c.lesson.windows[static_cast<std::size_t>(w)].tasting || !c.in_audience(w, cook)) continue;
    const auto span = c.window(w);
    return span ? std::optional(span->from) : std::nullopt;
  }
  return std::nullopt;
}

void check_tasting(Case& c, int cook, Seconds served) {
  for (int w = 0; w < static_cast<int>(c.lesson.windows.size()); ++w) {
    const auto& window = c.lesson.windows[static_cast<std::size_t>(w)];
    const auto span = c.window(w);
    if (!window.tasting || !span || !c.in_audience(w, cook) || span->from >= served) continue;
    c.report("S2",
             fmt::format("{} starts at {}, before {} serve at {}.", window.name, c.at(span->from),
                         c.cook(cook).name, c.at(served)),
             {}, {span->from, served});
  }
  const auto talk = tasting(c, cook);
  if (c.lesson.purpose == kitchen::Purpose::kTaste && talk && *talk != served) {
    c.report("S2",
             fmt::format("{} serve at {}; in a tasting lesson that is when the tasting "
                         "starts, {}.",
                         c.cook(cook).name, c.at(served), c.at(*talk)),
             {}, {std::min(*talk, served), std::max(*talk, served)});
  }
}

void check_sitting_window(Case& c, int cook, int sitting, Seconds served) {
  const auto earliest = base::grid_up(sitting_of(c, sitting).earliest);
  const auto latest = base::grid_down(sitting_of(c, sitting).latest);
  if (served >= earliest && served <= latest) return;
  c.report("S2",
           fmt::format("{} serve {} at {}; it is served from {} to {}.", c.cook(cook).name,
                       sitting_of(c, sitting).name, c.at(served), c.at(earliest), c.at(latest)),
           {}, {served, served});
}

void check_waiting(Case& c, const Waiting& w) {
  const auto& dish = c.dish(w.dish);
  const auto& who = c.cook(w.cook).name;
  const Span stretch{std::min(w.span.from, w.span.to), std::max(w.span.from, w.span.to)};
  const auto last = c.parts(w.cook, w.dish, kitchen::last_step(dish));
  if (w.span.to < w.span.from) {
    c.report("S2",
             fmt::format("{} serve at {}, before {} is ready at {}.", who, c.at(w.span.to),
                         dish.name, c.at(w.span.from)),
             last, stretch);
  }
  const auto most = base::grid_down(dish.hold.most);
  if (w.span.to - w.span.from > most) {
    c.report("S4",
             fmt::format("{}: {} waits {} until it is served, and may wait {}.", who, dish.name,
                         minutes_text(w.span.to - w.span.from), minutes_text(most)),
             last, stretch);
  }
}

// A part before the last comes after the step that first leaves something to wash (rule Y6).
void check_part(Case& c, int cook, int part) {
  const auto task = c.find({TaskKind::kWashUp, cook, -1, -1, part});
  const auto& dishes = c.cook(cook).dishes;
  if (!task || dishes.empty()) return;
  const int d = dishes[std::min(static_cast<std::size_t>(part), dishes.size() - 1)];
  const auto first = c.span(cook, d, c.dish(d).wash_after);
  if (!first || c.task(*task).start >= first->to) return;
  c.report("Y6",
           fmt::format("{}, starts before \"{}\" of the {} has ended at {}.", c.label(*task),
                       c.step(d, c.dish(d).wash_after).brief, c.dish(d).name, c.at(first->to)),
           {*task}, {c.task(*task).start, first->to});
}

void check_parts(Case& c, int cook) {
  for (int part = 0; part + 1 < wash_up_parts(c, cook); ++part) check_part(c, cook, part);
  const auto parts = c.wash_up(cook);
  for (std::size_t i = 1; i < parts.size(); ++i) {
    const Task& before = c.task(parts[i - 1]);
    const Task& after = c.task(parts[i]);
    if (after.start >= before.end) continue;
    c.report("Y6",
             fmt::format("{}, starts before the part before it has ended at {}.", c.label(parts[i]),
                         c.at(before.end)),
             {parts[i - 1], parts[i]}, {after.start, before.end});
  }
}

void check_last_part(Case& c, int cook) {
  const int number = wash_up_parts(c, cook) - 1;
  const auto last = c.find({TaskKind::kWashUp, cook, -1, -1, number});
  if (!last) return;
  const Task& wash = c.task(*last);
  for (const int t : c.of_cook(cook)) {
    const Task& other = c.task(t);
    if (t == *last || other.kind == TaskKind::kPack || !keeps_hands(c, t)) continue;
    if (other.end <= wash.start) continue;
    c.report("K5",
             fmt::format("{}, starts before {} has ended at {}.", c.label(*last), c.what(t),
                         c.at(other.end)),
             {t, *last}, {wash.start, other.end});
  }
  for (const auto& s : c.plan.served) {
    if (s.cook != cook || c.lesson.taste_after_washing_up || s.at <= wash.start) continue;
    c.report("S6", fmt::format("{}, starts before they serve at {}.", c.label(*last), c.at(s.at)),
             {*last}, {wash.start, s.at});
  }
  if (wash.end > c.due(cook)) {
    c.report("K5", fmt::format("{}: it must end by {}.", c.label(*last), c.at(c.due(cook))),
             {*last}, {c.due(cook), wash.end});
  }
  for (int part = 0; part < number; ++part) {  // an early part can only be late when the last is
                                               // not
    const auto early = c.find({TaskKind::kWashUp, cook, -1, -1, part});
    if (!early || wash.end > c.due(cook) || c.task(*early).end <= c.cook(cook).leaves) continue;
    c.report("K5", fmt::format("{}: it ends after the bell.", c.label(*early)), {*early},
             when(c.task(*early)));
  }
}

void check_packing(Case& c, int cook, int dish) {
  const auto pack = c.find({TaskKind::kPack, cook, dish});
  const auto ready = c.ready(cook, dish);
  if (!pack) return;
  const Task& t = c.task(*pack);
  const auto cooling = base::grid_up(c.dish(dish).cooling);
  if (ready && t.start < *ready + cooling) {
    c.report("Y12",
             fmt::format("{}: it must cool for {} from {}.", c.label(*pack), minutes_text(cooling),
                         c.at(*ready)),
             {*pack}, {*ready, t.start});
  }
  constexpr auto kIntoTheFridge = base::minutes(90);  // A040
  const auto& steps = c.half(dish).reading;
  const bool hot = std::any_of(steps.begin(), steps.end(),
                               [&](int s) { return c.step(dish, s).heat.has_value(); });
  if (ready && hot && chilled(c, dish) && t.end > *ready + kIntoTheFridge) {
    c.report("Y12",
             fmt::format("{}: it must be in the fridge within 90 min of {}.", c.label(*pack),
                         c.at(*ready)),
             {*pack}, {*ready, t.end});
  }
  if (t.end > c.cook(cook).leaves) {
    c.report("K5",
             fmt::format("{}: it must end by the bell at {}.", c.label(*pack),
                         c.at(c.cook(cook).leaves)),
             {*pack}, when(t));
  }
}

}  // namespace

void check_serving(Case& c) {
  check_moments(c);
  for (const auto& w : all_waiting(c)) check_waiting(c, w);
  for (int k = 0; k < c.cooks(); ++k) {
    for (int s = 0; s < static_cast<int>(c.lesson.sittings.size()); ++s) {
      const auto served = serve_moment(c, k, s);
      if (!served || c.lesson.purpose == kitchen::Purpose::kTakeHome || !served_in(c, k, s))
        continue;
      check_sitting_window(c, k, s, *served);
      check_tasting(c, k, *served);
    }
    check_parts(c, k);
    check_last_part(c, k);
    for (const int d : c.cook(k).dishes) check_packing(c, k, d);
  }
}

}  // namespace timeplan::judge
