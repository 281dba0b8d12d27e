#include "timeplan/verify/holds.h"

#include <algorithm>
#include <functional>
#include <numeric>

#include <fmt/format.h>

#include "timeplan/verify/checks.h"
#include "timeplan/verify/ovens.h"
#include "timeplan/verify/vessels.h"

namespace timeplan::judge {

namespace {

constexpr kitchen::OvenSetting kKeepHot{80, kitchen::OvenKind::kConventional};

kitchen::HoldIn held_in(const Case& c, const Waiting& w) { return c.dish(w.dish).hold.in; }

// Chooses a cooker within reach for every dish that is kept hot on a ring or in an oven. The plan
// does not name them, so the question is whether some choice works. Holds meet only on cookers, so
// they are settled group by group of cookers that share a hold.
class Keeping {
 public:
  Keeping(Case& c, std::vector<Waiting> holds) : c_(c), holds_(std::move(holds)) {
    const auto vessels = all_vessels(c_);
    for (int k = 0; k < static_cast<int>(c_.lesson.room.cookers.size()); ++k) {
      rings_.push_back(ring_uses(vessels, k));
      trays_.push_back(trays_in(c_, vessels, k));
      faults_.push_back(judge_oven(c_, k, trays_.back()).size());
      ring_faults_.push_back(over(rings_.back(), cooker(k).rings).size());
    }
  }

  void settle() {
    for (const auto& group : groups()) {
      if (place(group, 0)) continue;
      std::string names;
      Span all = holds_[group.front()].span;
      for (const auto h : group) {
        const auto& w = holds_[h];
        all = {std::min(all.from, w.span.from), std::max(all.to, w.span.to)};
        names += fmt::format("{}{} of {}", names.empty() ? "" : ", ", c_.dish(w.dish).name,
                             c_.cook(w.cook).name);
      }
      c_.report("S3",
                fmt::format("No cooker within reach can keep these hot until served: {}.", names),
                {}, all);
    }
  }

 private:
  using Group = std::vector<std::size_t>;

  const kitchen::Cooker& cooker(int k) const {
    return c_.lesson.room.cookers[static_cast<std::size_t>(k)];
  }
  const std::vector<int>& reach(std::size_t hold) const {
    return c_.place_of(holds_[hold].cook).cookers;
  }

  // Holds that could meet on some cooker, directly or by way of others.
  std::vector<Group> groups() const {
    std::vector<std::size_t> head(holds_.size());
    std::iota(head.begin(), head.end(), std::size_t{0});
    for (std::size_t a = 0; a < holds_.size(); ++a) {
      for (std::size_t b = 0; b < a; ++b) {
        const bool meet = std::any_of(reach(a).begin(), reach(a).end(), [&](int k) {
          return std::find(reach(b).begin(), reach(b).end(), k) != reach(b).end();
        });
        if (meet) std::replace(head.begin(), head.end(), head[a], head[b]);
      }
    }
    std::map<std::size_t, Group> by_head;
    for (std::size_t h = 0; h < holds_.size(); ++h) by_head[head[h]].push_back(h);
    std::vector<Group> result;
    for (auto& [first, group] : by_head) result.push_back(std::move(group));
    return result;
  }

  bool place(const Group& group, std::size_t next) {
    if (next == group.size()) return true;
    const auto& w = holds_[group[next]];
    for (const int k : reach(group[next])) {
      const bool placed = held_in(c_, w) == kitchen::HoldIn::kRing ? on_ring(group, next, k)
                                                                   : in_oven_of(group, next, k);
      if (placed) return true;
    }
    return false;
  }

  bool on_ring(const Group& group, std::size_t next, int k) {
    if (cooker(k).rings == 0 || too_young_for(c_, k, kitchen::HeatKind::kRing)) return false;
    auto& uses = rings_[static_cast<std::size_t>(k)];
    uses.push_back({holds_[group[next]].span, 1, {}});
    const bool fits = over(uses, cooker(k).rings).size() <=
                      ring_faults_[static_cast<std::size_t>(k)];
    if (fits && place(group, next + 1)) return true;
    uses.pop_back();
    return false;
  }

  bool in_oven_of(const Group& group, std::size_t next, int k) {
    if (cooker(k).shelves == 0 || too_young_for(c_, k, kitchen::HeatKind::kOven)) return false;
    auto& trays = trays_[static_cast<std::size_t>(k)];
    const auto& w = holds_[group[next]];
    trays.push_back({c_.dish(w.dish).name + " kept hot", w.span, kKeepHot, 12, {}, {}});
    const bool fits = judge_oven(c_, k, trays).size() <= faults_[static_cast<std::size_t>(k)];
    if (fits && place(group, next + 1)) return true;
    trays.pop_back();
    return false;
  }

  Case& c_;
  std::vector<Waiting> holds_;
  std::vector<std::vector<Use>> rings_;   // one a cooker
  std::vector<std::vector<Tray>> trays_;  // one a cooker
  std::vector<std::size_t> faults_;       // what was wrong with the oven without any hold
  std::vector<std::size_t> ring_faults_;
};

// Nothing is kept on heat in a break; under Y10 an oven may.
void check_break(Case& c, const Waiting& w) {
  for (int k = 0; k < static_cast<int>(c.lesson.windows.size()); ++k) {
    const auto& window = c.lesson.windows[static_cast<std::size_t>(k)];
    const auto span = c.window(k);
    if (window.kind != kitchen::WindowKind::kBreak || !span || !c.in_audience(k, w.cook)) continue;
    if (window.ovens_stay_on && held_in(c, w) == kitchen::HoldIn::kOven80) continue;
    if (!overlap(*span, w.span)) continue;
    c.report("W3",
             fmt::format("{} of {} is kept on heat during {} ({}).", c.dish(w.dish).name,
                         c.cook(w.cook).name, window.name, c.at(*span)),
             {}, *span);
  }
}

}  // namespace

bool in_sitting(const kitchen::Sitting& sitting, int dish) {
  const auto& list = sitting.dishes;
  return list.empty() || std::find(list.begin(), list.end(), dish) != list.end();
}

bool served_in(const Case& c, int cook, int sitting) {
  const auto& dishes = c.cook(cook).dishes;
  return std::any_of(dishes.begin(), dishes.end(), [&](int d) {
    return in_sitting(c.lesson.sittings[static_cast<std::size_t>(sitting)], d) &&
           !c.half(d).first();
  });
}

std::optional<Seconds> serve_moment(const Case& c, int cook, int sitting) {
  for (const auto& served : c.plan.served) {
    if (served.cook == cook && served.sitting == sitting) return served.at;
  }
  return std::nullopt;
}

bool chilled(const Case& c, int dish) {
  return c.lesson.rules.food_home_chilled && kitchen::needs_chilling(c.dish(dish));
}

std::vector<Waiting> all_waiting(const Case& c) {
  std::vector<Waiting> list;
  if (c.lesson.purpose == kitchen::Purpose::kTakeHome) return list;
  for (int k = 0; k < c.cooks(); ++k) {
    for (const int d : c.cook(k).dishes) {
      if (c.half(d).first()) continue;
      for (int s = 0; s < static_cast<int>(c.lesson.sittings.size()); ++s) {
        const auto at = serve_moment(c, k, s);
        const auto ready = c.ready(k, d);
        if (!at || !ready || !in_sitting(c.lesson.sittings[static_cast<std::size_t>(s)], d))
          continue;
        list.push_back({k, d, s, {*ready, *at}});
      }
    }
  }
  return list;
}

void check_holds(Case& c) {
  std::vector<Waiting> hot;
  for (const auto& w : all_waiting(c)) {
    const auto in = held_in(c, w);
    const bool heated = in == kitchen::HoldIn::kRing || in == kitchen::HoldIn::kOven80;
    if (!heated || w.span.from >= w.span.to) continue;
    check_break(c, w);
    hot.push_back(w);
  }
  if (!hot.empty()) Keeping(c, std::move(hot)).settle();
}

}  // namespace timeplan::judge
