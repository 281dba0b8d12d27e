// Rule D11, no deadlock. Whoever takes a ring or a unit before an earlier-planned user could be
// left holding it while both wait for the other's. So what spans hold is taken out of planned order
// or elsewhere than planned, or while something is held so, only if the rest of the plan can still
// be played to its end from here: again and again the earliest-planned step of any cook whose own
// earlier ones have gone, and which finds its things free, goes and lets go. As long as that play
// exists its next step is always allowed, so the room never stalls. As long as everything is held
// in planned order the planned order itself is that play, and nothing needs checking. (The safe
// states of the banker's algorithm, Dijkstra 1965, from memory, with each cook's planned order in
// place of claims.)
#include <algorithm>

#include "timeplan/chance/room_machine.h"

namespace timeplan {

bool RoomMachine::somebody_before(std::span<const int> users, int a) const {
  for (const int u : users) {
    if (activity(u).planned_start >= activity(a).planned_start) return false;
    if (u != a && !begun(u)) return true;
  }
  return false;
}

std::span<const int> RoomMachine::waiting_users(int resource) const {
  return tables_.users[resource].subspan(first_user_[idx(resource)]);
}

bool RoomMachine::out_of_order(int a) const {
  for (const int s : tables_.opens[a]) {
    const int way = span_way_[idx(s)];
    if (way >= 0)
      for (const PlayUse& use : tables_.way_uses[way])
        if (tables_.held_resource[idx(use.resource)] &&
            somebody_before(waiting_users(use.resource), a))
          return true;
    if (model_.spans[idx(s)].oven == -1) continue;
    for (const int other : tables_.trays[model_.spans[idx(s)].oven]) {
      const int opener = model_.spans[idx(other)].opens;
      if (activity(opener).planned_start >= activity(a).planned_start) break;
      if (!begun(opener)) return true;
    }
  }
  return false;
}

/// Does it hold something else than the plan meant it to?
bool RoomMachine::out_of_place(int a) const {
  const auto spans = tables_.opens[a];
  return std::any_of(spans.begin(), spans.end(), [&](int s) {
    return span_way_[idx(s)] >= 0 && span_way_[idx(s)] != tables_.first_span_way[idx(s)];
  });
}

int RoomMachine::island(int a) const {
  return tables_.island[activity(a).cook == -1 ? model_.cooks.size() : idx(activity(a).cook)];
}

bool RoomMachine::safe(int a) {
  const bool odd = out_of_order(a) || out_of_place(a);
  if (!odd && held_out_of_order_[idx(island(a))] == 0) return true;
  if (!tables_.touches_held[idx(a)] || tables_.opens[a].empty()) return true;
  if (odd)
    for (const int s : tables_.opens[a]) mark_out_of_order(s);
  return plays_to_the_end(a);
}

bool RoomMachine::plays_to_the_end(int asker) {
  const auto order = tables_.planned_order[island(asker)];
  replay_held_ = held_;
  replay_way_ = span_way_;
  replay_odd_ = span_odd_;
  replay_odd_count_ = held_out_of_order_[idx(island(asker))];
  replay_ovens_.resize(ovens_.size());
  for (std::size_t o = 0; o < ovens_.size(); ++o)
    replay_ovens_[o] = {ovens_[o].trays, ovens_[o].used, ovens_[o].knob};
  replay_gone_ = stage_;
  const auto together = activity(asker).together;
  replay_gone_[idx(asker)] = Stage::kRunning;
  if (together != -1)  // they have all claimed and begin at once
    for (const int m : tables_.group[together])
      if (!over(m)) replay_gone_[idx(m)] = Stage::kRunning;
  std::size_t& over_to = order_over_[idx(island(asker))];
  while (over_to < order.size() && over(order[over_to].activity)) ++over_to;
  std::size_t first = over_to;
  while (true) {
    replay_blocked_.assign(model_.cooks.size() + 1, 0);
    bool progress = false, blocked = false;
    for (std::size_t i = first; i < order.size(); ++i) {
      // Everybody is back in planned order: from here the plan itself is the way to the end.
      if (!blocked && replay_odd_count_ == 0) return true;
      const OrderStep& step = order[i];
      const Stage gone = replay_gone_[idx(step.activity)];
      if (gone >= Stage::kDone || (!step.end && gone >= Stage::kRunning)) {
        if (!blocked && i == first) ++first;
        continue;
      }
      if (step.end ? replay_end(step.activity) : replay_start(step.activity, blocked)) {
        progress = true;
        if (blocked && step.end)
          break;  // something is free again: the earliest-planned have the first word
        if (!blocked && i == first) ++first;
      } else {
        blocked = true;
      }
    }
    if (!blocked) return true;
    if (!progress) return false;
  }
}

bool RoomMachine::replay_end(int a) {
  if (replay_gone_[idx(a)] < Stage::kRunning) return false;
  replay_gone_[idx(a)] = Stage::kDone;
  for (const int s : tables_.closes_at_end[a]) replay_release(s);
  return true;
}

bool RoomMachine::replay_order_allows(int a) const {
  for (const int o : tables_.orders_of[a]) {
    const PlayOrder& order = model_.orders[idx(o)];
    std::size_t own = order_first_[idx(o)];
    while (order.activities[own] != a) ++own;
    for (std::size_t i = order_first_[idx(o)]; i < own; ++i) {
      const bool apart = order.classes[i] == -1 || order.classes[i] != order.classes[own];
      if (replay_gone_[idx(order.activities[i])] < (apart ? Stage::kDone : Stage::kRunning))
        return false;
    }
  }
  return true;
}

bool RoomMachine::replay_fits(int a) {
  int chosen = -1;
  const int first = tables_.first_way[idx(a)], end = tables_.first_way[idx(a) + 1];
  if (first != end && !replay_finds(first, end, chosen)) return false;
  for (const int s : tables_.opens[a]) {
    const PlaySpan& span = model_.spans[idx(s)];
    if (span.oven != -1) {
      const ReplayOven& oven = replay_ovens_[idx(span.oven)];
      if (oven.trays > 0 && oven.setting != span.setting) return false;
      if (oven.used + span.twelfths > model_.ovens[idx(span.oven)].twelfths) return false;
    }
    const int from = tables_.first_span_way[idx(s)], to = tables_.first_span_way[idx(s) + 1];
    if (from != to && !replay_finds(from, to, chosen)) return false;
  }
  return true;
}

bool RoomMachine::replay_start(int a, bool before_others) {
  char& blocked = replay_blocked_[idx(activity(a).cook + 1)];
  if (blocked || !replay_order_allows(a) || !replay_fits(a)) {
    blocked = 1;
    return false;
  }
  replay_gone_[idx(a)] = Stage::kRunning;
  for (const int s : tables_.opens[a]) {
    const PlaySpan& span = model_.spans[idx(s)];
    if (span.closes != -1 && replay_gone_[idx(span.closes)] >= Stage::kDone) continue;
    if (span.oven != -1) {
      ReplayOven& oven = replay_ovens_[idx(span.oven)];
      oven = {oven.trays + 1, oven.used + span.twelfths, span.setting};
    }
    replay_way_[idx(s)] = kHoldsNothing;
    int chosen = -1;
    const int from = tables_.first_span_way[idx(s)], to = tables_.first_span_way[idx(s) + 1];
    const bool takes = from != to && replay_finds(from, to, chosen);
    if (before_others || (takes && chosen != from)) {
      replay_odd_[idx(s)] = 1;
      ++replay_odd_count_;
    }
    if (!takes) continue;
    replay_way_[idx(s)] = chosen;
    for (const PlayUse& use : tables_.way_uses[chosen])
      replay_held_[idx(use.resource)] += use.amount;
  }
  for (const int s : tables_.closes_at_start[a]) replay_release(s);
  return true;
}

/// Some way that spans leave room for.
bool RoomMachine::replay_finds(int first, int end, int& chosen) const {
  for (chosen = first; chosen < end; ++chosen) {
    const auto uses = tables_.way_uses[chosen];
    const bool fits = std::all_of(uses.begin(), uses.end(), [&](const PlayUse& use) {
      const std::size_t r = idx(use.resource);
      return !tables_.held_resource[r] || capacity_now_[r] - replay_held_[r] >= use.amount;
    });
    if (fits) return true;
  }
  return false;
}

void RoomMachine::replay_release(int s) {
  const int way = replay_way_[idx(s)];
  if (way == -1) return;
  replay_way_[idx(s)] = -1;
  if (replay_odd_[idx(s)]) {
    replay_odd_[idx(s)] = 0;
    --replay_odd_count_;
  }
  if (way != kHoldsNothing)
    for (const PlayUse& use : tables_.way_uses[way]) replay_held_[idx(use.resource)] -= use.amount;
  const PlaySpan& span = model_.spans[idx(s)];
  if (span.oven == -1) return;
  ReplayOven& oven = replay_ovens_[idx(span.oven)];
  --oven.trays;
  oven.used -= span.twelfths;
}

}  // namespace timeplan
