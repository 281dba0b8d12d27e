// The figures a plan claims: the buffer of every cook and the value of every level, worked out
// again from its times.
#include <algorithm>
#include <cmath>
#include <limits>

#include <fmt/format.h>

#include "timeplan/verify/checks.h"
#include "timeplan/verify/holds.h"
#include "timeplan/verify/lengths.h"

namespace timeplan::judge {

namespace {

constexpr double kEightyPercent = 0.84;  // of the normal distribution (rule 8.1)
constexpr double kHiddenReserve = 0.5;   // minutes a hands-on step gains by rounding up (rule T4)
constexpr double kForm = 0.15 * 0.15 + 0.08 * 0.08;
constexpr auto kGrace = base::minutes(3);

std::int64_t in_minutes(Seconds t) { return t.count() / 60; }

double minutes_of(const Case& c, int cook, int dish, int step) {
  return static_cast<double>(usual_length(c, cook, dish, step).count()) / 60.0;
}

double variance(double minutes, double spread) {
  return minutes * minutes * (std::exp(spread * spread) - 1);
}

// The longest chain through the half of a dish that is cooked.
struct Chain {
  Seconds length{0};
  std::vector<int> steps;
};

Chain longest_chain(const Case& c, int cook, int dish) {
  std::map<int, Seconds> ends;  // step -> longest way to its end
  std::map<int, int> before;
  Chain best;
  int last = -1;
  for (const int s : c.half(dish).reading) {
    Seconds start{0};
    before[s] = -1;
    for (const auto& wait : c.step(dish, s).follows) {
      const bool chains = wait.of == kitchen::Moment::kEnd &&
                          wait.moment == kitchen::Moment::kStart && ends.contains(wait.step);
      if (!chains) continue;
      const auto reached = ends[wait.step] + base::grid_up(wait.least);
      if (before[s] >= 0 ? reached <= start : reached < start) continue;
      start = reached;
      before[s] = wait.step;
    }
    ends[s] = start + usual_length(c, cook, dish, s);
    if (last >= 0 && ends[s] <= best.length) continue;
    best.length = ends[s];
    last = s;
  }
  for (int s = last; s >= 0; s = before[s]) best.steps.push_back(s);
  return best;
}

double passive_variance(const Case& c, int cook) {
  Chain longest;
  int of_dish = -1;
  for (const int d : c.cook(cook).dishes) {
    auto chain = longest_chain(c, cook, d);
    if (of_dish >= 0 && chain.length <= longest.length) continue;
    longest = std::move(chain);
    of_dish = d;
  }
  double sum = 0;
  for (const int s : longest.steps) {
    const auto& step = c.step(of_dish, s);
    if (kitchen::hands_on(step.attention)) continue;
    sum += variance(minutes_of(c, cook, of_dish, s), step.spread);
  }
  return sum;
}

std::int64_t own_buffer(const Case& c, int cook) {
  double squares = passive_variance(c, cook);
  double total = 0;
  double reserve = 0;
  for (const int d : c.cook(cook).dishes) {
    for (const int s : c.half(d).reading) {
      const auto& step = c.step(d, s);
      if (!kitchen::hands_on(step.attention)) continue;
      const double m = minutes_of(c, cook, d, s);
      squares += variance(m, step.spread);
      total += m;
      reserve += kHiddenReserve;
    }
  }
  squares += kForm * total * total;
  const auto buffer = minutes_up(kEightyPercent * std::sqrt(squares) - reserve);
  return std::clamp<std::int64_t>(buffer, 3, 15);
}

std::vector<Seconds> buffers(const Case& c) {
  std::vector<std::int64_t> own;
  for (int k = 0; k < c.cooks(); ++k) own.push_back(own_buffer(c, k));
  std::vector<Seconds> result;
  for (std::size_t k = 0; k < own.size(); ++k) {
    auto b = own[k];
    for (std::size_t j = 0; j < own.size(); ++j) {
      if (c.wave[j] == c.wave[k]) b = std::max(b, own[j]);
    }
    result.push_back(base::minutes(b));
  }
  return result;
}

std::optional<Seconds> washed_up(const Case& c, int cook) {
  const auto last = c.find({TaskKind::kWashUp, cook, -1, -1, wash_up_parts(c, cook) - 1});
  if (!last) return std::nullopt;
  return c.task(*last).end;
}

std::int64_t overrun(const Case& c) {
  std::int64_t sum = 0;
  for (int k = 0; k < c.cooks(); ++k) {
    if (const auto end = washed_up(c, k)) {
      sum += in_minutes(std::max(Seconds{0}, *end - c.due(k)));
    }
  }
  return sum;
}

std::int64_t buffer_shortfall(const Case& c, const std::vector<Seconds>& b) {
  std::int64_t sum = 0;
  for (int k = 0; k < c.cooks(); ++k) {
    const auto end = washed_up(c, k);
    if (!end) continue;
    const auto left = c.due(k) - *end;
    sum += in_minutes(std::max(Seconds{0}, b[static_cast<std::size_t>(k)] - left));
  }
  return sum;
}

std::int64_t early(const Case& c) {
  std::int64_t sum = 0;
  for (int k = 0; k < c.cooks(); ++k) {
    if (const auto end = washed_up(c, k)) sum += in_minutes(*end);
  }
  return sum;
}

std::int64_t spread(const Case& c) {
  struct Range {
    Seconds first = Seconds::max();
    Seconds last = Seconds::min();
  };
  if (c.lesson.purpose == kitchen::Purpose::kTakeHome) return 0;
  std::int64_t sum = 0;
  for (int k = 0; k < c.cooks(); ++k) {
    for (const auto& sitting : c.lesson.sittings) {
      Range range;
      for (const int d : c.cook(k).dishes) {
        const bool counts = in_sitting(sitting, d) && !c.half(d).first() &&
                            c.dish(d).hold.kind != kitchen::HoldKind::kKeeps;
        const auto ready = counts ? c.ready(k, d) : std::nullopt;
        if (!ready) continue;
        range = {std::min(range.first, *ready), std::max(range.last, *ready)};
      }
      if (range.first < range.last) {
        sum += in_minutes(std::max(Seconds{0}, range.last - range.first - kGrace));
      }
    }
  }
  return sum;
}

std::int64_t rate(kitchen::HoldKind kind) {
  switch (kind) {
    case kitchen::HoldKind::kCrisp:
      return 3;
    case kitchen::HoldKind::kHot:
      return 1;
    case kitchen::HoldKind::kKeeps:
      return 0;
  }
  return 0;
}

std::int64_t quality_loss(const Case& c) {
  std::int64_t sum = 0;
  for (const auto& w : all_waiting(c)) {
    sum += rate(c.dish(w.dish).hold.kind) * in_minutes(w.span.to - w.span.from);
  }
  for (const int index : c.all()) {
    const Task& t = c.task(index);
    if (t.kind != TaskKind::kStep) continue;
    const auto& step = c.step(t.dish, t.step);
    if (kitchen::hands_on(step.attention)) continue;
    sum += step.elastic_loss * in_minutes(t.end - t.start - base::grid_up(step.least));
  }
  return sum;
}

struct Figure {
  std::string mark;
  std::int64_t value = 0;
};

std::vector<Figure> figures(const Case& c, const std::vector<Seconds>& b) {
  const bool own = c.lesson.timelines == kitchen::Timelines::kOwn;
  const Figure g2{"G2", buffer_shortfall(c, b)};
  const Figure g3{"G3", spread(c)};
  const Figure gw{"Gw", own ? 0 : c.plan.waves};
  const bool swap = c.lesson.spread_before_buffer;
  return {{"G1", overrun(c)}, swap ? g3 : g2,          gw,
          swap ? g2 : g3,     {"G4", quality_loss(c)}, {"G6", early(c)}};
}

std::string mark_of(const Level& level) { return level.name.substr(0, level.name.find(' ')); }

void check_buffers(Case& c, const std::vector<Seconds>& b) {
  if (c.plan.buffer.size() != b.size()) {
    c.report("8.1", "The plan does not give a buffer for every cook.", {}, {});
    return;
  }
  for (std::size_t k = 0; k < b.size(); ++k) {
    if (c.plan.buffer[k] == b[k]) continue;
    c.report("8.1",
             fmt::format("{}: the plan says a buffer of {}; it is {}.", c.lesson.cooks[k].name,
                         minutes_text(c.plan.buffer[k]), minutes_text(b[k])),
             {}, {});
  }
}

void check_level(Case& c, const Level& level, const Figure& figure) {
  if (level.value != figure.value) {
    c.report(figure.mark,
             fmt::format("The plan says {} for \"{}\"; it is {}.", level.value, level.name,
                         figure.value),
             {}, {});
  }
  if (level.bound > level.value) {
    c.report(figure.mark,
             fmt::format("\"{}\" is {}, and the plan claims that less than {} cannot "
                         "be.",
                         level.name, level.value, level.bound),
             {}, {});
  }
}

}  // namespace

void check_goals(Case& c) {
  const auto b = buffers(c);
  check_buffers(c, b);
  const auto wanted = figures(c, b);
  const auto& levels = c.plan.levels;
  for (const auto& figure : wanted) {
    const auto it = std::find_if(levels.begin(), levels.end(),
                                 [&](const Level& l) { return mark_of(l) == figure.mark; });
    if (it == levels.end()) {
      c.report(figure.mark, fmt::format("The plan gives no figure for {}.", figure.mark), {}, {});
    } else {
      check_level(c, *it, figure);
    }
  }
  const bool in_order = std::equal(
      levels.begin(), levels.end(), wanted.begin(), wanted.end(),
      [](const Level& l, const Figure& f) { return mark_of(l) == f.mark; });
  if (!in_order)
    c.report("Z5", "The levels are not the lesson's six in the lesson's order.", {}, {});
}

}  // namespace timeplan::judge
