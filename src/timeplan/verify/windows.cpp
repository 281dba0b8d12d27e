// Windows: when they may stand, and what may run beside them for their audience.
#include <fmt/format.h>

#include "timeplan/verify/attention.h"
#include "timeplan/verify/checks.h"
#include "timeplan/verify/vessels.h"

namespace timeplan::judge {

namespace {

const kitchen::Window& window_of(const Case& c, int w) {
  return c.lesson.windows[static_cast<std::size_t>(w)];
}

int task_of(const Case& c, int w) { return *c.find({TaskKind::kWindow, -1, -1, -1, 0, w}); }

void check_range(Case& c, int w, Span span) {
  const auto& window = window_of(c, w);
  const auto earliest = base::grid_up(window.earliest);
  const auto latest = base::grid_down(window.latest);
  if (span.from >= earliest && span.from <= latest) return;
  c.report("W1",
           fmt::format("{} starts at {}; it may start from {} to {}.", window.name, c.at(span.from),
                       c.at(earliest), c.at(latest)),
           {task_of(c, w)}, span);
}

void check_tied_steps(Case& c, int w, Span span) {
  const auto& window = window_of(c, w);
  const char* rule = window.kind == kitchen::WindowKind::kStop ? "Y4" : "W6";
  for (int k = 0; k < c.cooks(); ++k) {
    if (!c.in_audience(w, k)) continue;
    for (const auto& ref : window.after) {
      const auto done = c.span(k, ref.dish, ref.step);
      if (!done || done->to <= span.from) continue;
      c.report(rule,
               fmt::format("{} at {} comes before {} have ended \"{}\" at {}.", window.name,
                           c.at(span.from), c.cook(k).name, c.step(ref.dish, ref.step).brief,
                           c.at(done->to)),
               c.parts(k, ref.dish, ref.step), {span.from, done->to});
    }
    for (const auto& ref : window.before) {
      const auto begun = c.span(k, ref.dish, ref.step);
      if (!begun || begun->from >= span.to) continue;
      c.report(rule,
               fmt::format("{} start \"{}\" at {}, before {} has ended at {}.", c.cook(k).name,
                           c.step(ref.dish, ref.step).brief, c.at(begun->from), window.name,
                           c.at(span.to)),
               c.parts(k, ref.dish, ref.step), {begun->from, span.to});
    }
  }
}

void check_hands(Case& c, int w, int cook, Span span) {
  const auto& window = window_of(c, w);
  const bool pause = window.kind == kitchen::WindowKind::kBreak;
  for (const int t : c.of_cook(cook)) {
    if (!overlap(span, when(c.task(t))) || demand(c, t).tenths == 0) continue;
    c.report(
        pause ? "W3" : "W2",
        fmt::format("{}, needs attention during {} ({}).", c.label(t), window.name, c.at(span)),
        {t, task_of(c, w)}, span);
  }
}

// Nothing heated beside a break; under Y10 an oven may stay on.
void check_heat(Case& c, int w, Span span, const std::vector<Vessel>& vessels) {
  const auto& window = window_of(c, w);
  for (const auto& vessel : vessels) {
    if (!c.in_audience(w, vessel.cook) || !overlap(span, vessel.span)) continue;
    if (window.ovens_stay_on && vessel.kind == kitchen::HeatKind::kOven) continue;
    c.report("W3",
             fmt::format("The {} of {} stands on heat during {} ({}).", vessel.name,
                         c.cook(vessel.cook).name, window.name, c.at(span)),
             vessel.tasks, span);
  }
}

void check_pairs(Case& c, int w, Span span) {
  for (int v = 0; v < w; ++v) {
    const auto other = c.window(v);
    if (!other || !overlap(span, *other)) continue;
    for (int k = 0; k < c.cooks(); ++k) {
      if (!c.in_audience(w, k) || !c.in_audience(v, k)) continue;
      c.report("W2",
               fmt::format("{} and {} want {} at the same time ({}).", window_of(c, v).name,
                           window_of(c, w).name, c.cook(k).name, c.at(span)),
               {task_of(c, v), task_of(c, w)}, span);
      break;
    }
  }
}

}  // namespace

void check_windows(Case& c) {
  const auto vessels = all_vessels(c);
  for (int w = 0; w < static_cast<int>(c.lesson.windows.size()); ++w) {
    const auto span = c.window(w);
    if (!span) continue;
    check_range(c, w, *span);
    check_tied_steps(c, w, *span);
    check_pairs(c, w, *span);
    for (int k = 0; k < c.cooks(); ++k) {
      if (c.in_audience(w, k)) check_hands(c, w, k, *span);
    }
    if (window_of(c, w).kind == kitchen::WindowKind::kBreak) check_heat(c, w, *span, vessels);
  }
}

}  // namespace timeplan::judge
