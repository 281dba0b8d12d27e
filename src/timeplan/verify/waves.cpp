#include "timeplan/verify/waves.h"

#include <algorithm>

#include <fmt/format.h>

#include "timeplan/verify/checks.h"
#include "timeplan/verify/lengths.h"
#include "timeplan/verify/vessels.h"

namespace timeplan::judge {

namespace {

constexpr int kMuchOfAnAdult = 20;                 // hundredths
constexpr auto kCloselyJoined = base::minutes(5);  // a longest wait that carries the queue along
constexpr std::int64_t kClockGrid = 300;           // seconds (rule Y3)

int most_in_one_step(const Case& c, int cook, const std::string& item) {
  int most = 0;
  for (const int d : c.cook(cook).dishes) {
    for (const int s : c.half(d).reading) {
      int here = 0;
      for (const auto& need : c.step(d, s).kit) here += need.item == item ? need.count : 0;
      most = std::max(most, here);
    }
  }
  return most;
}

// Would the cooks of the lesson, all at once, need more of the item than there is?
bool scarce(const Case& c, const std::string& item) {
  const auto* kit = kitchen::find_kit(c.lesson.room, item);
  int wanted = 0;
  for (int k = 0; k < c.cooks(); ++k) wanted += most_in_one_step(c, k, item);
  return kit == nullptr || kit->count < wanted;
}

// Cookers of the cook that could take the whole vessel of that step.
int choices(const Case& c, int cook, int dish, const kitchen::Heat& vessel) {
  const auto& reach = c.place_of(cook).cookers;
  return static_cast<int>(std::count_if(reach.begin(), reach.end(), [&](int k) {
    const auto& cooker = c.lesson.room.cookers[static_cast<std::size_t>(k)];
    const auto& steps = c.half(dish).reading;
    return std::all_of(steps.begin(), steps.end(), [&](int s) {
      const auto& heat = c.step(dish, s).heat;
      const bool same = heat && heat->vessel == vessel.vessel && heat->with == vessel.with;
      return !same || able(cooker, *heat);
    });
  }));
}

bool shared_vessel(const Case& c, int dish, const kitchen::Heat& vessel) {
  const auto& steps = c.half(dish).reading;
  return std::any_of(steps.begin(), steps.end(), [&](int s) {
    const auto& heat = c.step(dish, s).heat;
    return heat && heat->vessel == vessel.vessel && heat->with == vessel.with && heat->shared_tray;
  });
}

bool queued_vessel(const Case& c, int dish, const kitchen::Heat& vessel) {
  if (shared_vessel(c, dish, vessel)) return true;
  for (int k = 0; k < c.cooks(); ++k) {
    const auto& dishes = c.cook(k).dishes;
    if (std::find(dishes.begin(), dishes.end(), dish) == dishes.end()) continue;
    if (choices(c, k, dish, vessel) > 1) return true;
  }
  return false;
}

bool queued_by_itself(const Case& c, int dish, int s) {
  const auto& step = c.step(dish, s);
  if (step.sink > 0 || step.at_table) return true;
  if (step.hazard) {
    const auto it = c.lesson.rules.watch.find(*step.hazard);
    if (it != c.lesson.rules.watch.end() && it->second.hundredths >= kMuchOfAnAdult) return true;
  }
  if (std::any_of(step.kit.begin(), step.kit.end(),
                  [&](const auto& need) { return scarce(c, need.item); })) {
    return true;
  }
  if (step.heat && queued_vessel(c, dish, *step.heat)) return true;
  if (!step.closes) return false;
  const auto& closed = c.step(dish, *step.closes).heat;
  return closed && queued_vessel(c, dish, *closed);
}

// One round of "joined to a queued step by a longest wait of 5 min or less"; true when something
// was added.
bool spread(const Case& c, int dish, std::vector<bool>& queued) {
  bool added = false;
  for (const int s : c.half(dish).reading) {
    for (const auto& wait : c.step(dish, s).follows) {
      const auto a = static_cast<std::size_t>(s);
      const auto b = static_cast<std::size_t>(wait.step);
      if (!c.half(dish).here[b] || !wait.most) continue;
      if (base::grid_down(*wait.most) > kCloselyJoined || queued[a] == queued[b]) continue;
      queued[a] = queued[b] = true;
      added = true;
    }
  }
  return added;
}

bool in_step(const Task& t, const std::map<int, std::vector<bool>>& queued) {
  using enum TaskKind;
  switch (t.kind) {
    case kStore:
    case kTakeOutOfStore:
      return true;
    case kStep:
      return !queued.at(t.dish)[static_cast<std::size_t>(t.step)];
    default:
      return false;
  }
}

void check_lines(Case& c) {
  std::map<int, std::vector<bool>> queued;
  for (int d = 0; d < static_cast<int>(c.lesson.dishes.size()); ++d) queued[d] = queued_steps(c, d);
  for (int k = 0; k < c.cooks(); ++k) {
    const int head = c.line[static_cast<std::size_t>(k)];
    if (head == k) continue;
    for (const int t : c.of_cook(k)) {
      const Task& own = c.task(t);
      if (!in_step(own, queued)) continue;
      auto key = key_of(own);
      key.cook = head;
      const auto other = c.find(key);
      if (!other || when(c.task(*other)) == when(own)) continue;
      c.report("Y1",
               fmt::format("{}, but {}: cooks of one wave do this together.", c.label(t),
                           c.label(*other)),
               {t, *other}, when(own));
    }
  }
}

void check_wave_numbers(Case& c) {
  const bool own = c.lesson.timelines == kitchen::Timelines::kOwn;
  const auto& waves = c.plan.wave_of_cook;
  if (std::ssize(waves) != c.cooks()) {
    c.report("Y1", "The plan does not say for every cook which wave they are in.", {}, {});
    return;
  }
  for (int k = 0; k < c.cooks(); ++k) {
    const int w = waves[static_cast<std::size_t>(k)];
    if (w >= 0 && w < c.plan.waves) continue;
    c.report("Y1", fmt::format("{} are in wave {} of {}.", c.cook(k).name, w + 1, c.plan.waves), {},
             {});
  }
  for (int w = 0; w < c.plan.waves; ++w) {
    if (std::find(waves.begin(), waves.end(), w) != waves.end()) continue;
    c.report("Y1", fmt::format("Wave {} has no cooks.", w + 1), {}, {});
  }
  const int most = own ? c.cooks() : c.lesson.most_waves;
  if (c.plan.waves > most || (own && c.plan.waves != most)) {
    c.report("Y1",
             own ? std::string("With timelines of their own every cook is a wave.")
                 : fmt::format("The plan has {} waves; the lesson allows {}.", c.plan.waves, most),
             {}, {});
  }
}

std::optional<int> checked_task(const Case& c, int cook, const Checkpoint& p) {
  if (p.dish == -1 && p.step == -1) {
    return c.find({TaskKind::kWashUp, cook, -1, -1, wash_up_parts(c, cook) - 1});
  }
  return c.find({TaskKind::kStep, cook, p.dish, p.step, 0});
}

void check_checkpoint(Case& c, const Checkpoint& p) {
  const Span now{p.at, p.at};
  if ((c.lesson.opens_minute * 60 + p.at.count()) % kClockGrid != 0) {
    c.report(
        "Y3",
        fmt::format("\"{}\" at {} is not on the five minutes of the clock.", p.says, c.at(p.at)),
        {}, now);
  }
  bool anybody = false;
  for (int k = 0; k < c.cooks(); ++k) {
    if (c.wave[static_cast<std::size_t>(k)] != p.wave) continue;
    const auto t = checked_task(c, k, p);
    if (!t) continue;
    anybody = true;
    if (c.task(*t).start >= p.at) continue;
    c.report("Y3", fmt::format("{}, starts before \"{}\" at {}.", c.label(*t), p.says, c.at(p.at)),
             {*t}, {c.task(*t).start, p.at});
  }
  if (anybody) return;
  c.report("Y3",
           fmt::format("\"{}\" at {} is for nobody in wave {}.", p.says, c.at(p.at), p.wave + 1),
           {}, now);
}

}  // namespace

std::vector<bool> queued_steps(const Case& c, int dish) {
  std::vector<bool> queued(c.dish(dish).method.size(), false);
  for (const int s : c.half(dish).reading) {
    queued[static_cast<std::size_t>(s)] = queued_by_itself(c, dish, s);
  }
  while (spread(c, dish, queued)) {
  }
  return queued;
}

void check_waves(Case& c) {
  check_wave_numbers(c);
  check_lines(c);
  for (const auto& p : c.plan.checkpoints) check_checkpoint(c, p);
}

}  // namespace timeplan::judge
