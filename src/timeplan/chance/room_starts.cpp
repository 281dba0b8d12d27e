// What may start (rules D3 to D5, D7, D8). A try either takes everything at once or nothing (rule
// D4) and remembers why it failed, so that only a change of that is a reason to try again.
#include <algorithm>
#include <functional>

#include "timeplan/chance/room_machine.h"

namespace timeplan {

bool RoomMachine::is_urgent(int a) const {
  const int deadline = std::min(quality_by_[idx(a)], safety_by_[idx(a)]);
  return activity(a).closing || (deadline != kNever && deadline <= now_ + model_.urgent_within);
}

/// Order of tries at one instant: urgent by deadline; windows; the rest by planned start, cook,
/// number.
std::uint64_t RoomMachine::key_of(int a) const {
  const PlayActivity& it = activity(a);
  std::uint64_t rank = 2, time = static_cast<std::uint64_t>(it.planned_start),
                cook = static_cast<std::uint64_t>(it.cook + 1);
  if (it.window != PlayWindow::kNone) {
    rank = 1;
    cook = 0;
  } else if (is_urgent(a)) {
    const int deadline = std::min(quality_by_[idx(a)], safety_by_[idx(a)]);
    rank = 0;
    time = static_cast<std::uint64_t>(deadline == kNever ? now_ : deadline);
  }
  return (rank << 62) | (time << 32) | (cook << 20) | static_cast<std::uint64_t>(a);
}

void RoomMachine::push_agenda(int a) {
  const std::uint64_t key = key_of(a);
  if (queued_[idx(a)] == key) return;
  queued_[idx(a)] = key;
  agenda_.push_back(key);
  std::push_heap(agenda_.begin(), agenda_.end(), std::greater<>());
}

void RoomMachine::push_event(int at, PlayEvent what, int id) {
  events_.push_back((static_cast<std::uint64_t>(at) << 32) |
                    (static_cast<std::uint64_t>(what) << 26) | static_cast<std::uint64_t>(id));
  std::push_heap(events_.begin(), events_.end(), std::greater<>());
}

void RoomMachine::try_start(int a) {
  if (activity(a).window != PlayWindow::kNone) {
    try_window(a);
  } else if (activity(a).together != -1) {
    try_group(a);
  } else {
    try_alone(a);
  }
}

void RoomMachine::try_alone(int a) {
  const int elastic = tables_.elastic[idx(a)];
  const bool takes_over = elastic != -1 && stage_[idx(elastic)] == Stage::kMayEnd;
  if (takes_over) lend(elastic, 1);
  const bool claimed = claim(a);
  if (claimed && !safe(a)) {
    unclaim(a);
    block_[idx(a)] = Block::kSafety;
    unsafe_.push_back(a);
  } else if (claimed) {
    if (takes_over) finish(elastic, false);
    begin(a);
    return;
  }
  if (takes_over) lend(elastic, -1);
}

/// What an elastic step holds, free for its closing step to try (1) or back (-1).
void RoomMachine::lend(int elastic, int sign) {
  take_hands(elastic, -sign);
  if (way_[idx(elastic)] == -1) return;
  for (const PlayUse& use : tables_.way_uses[way_[idx(elastic)]])
    free_[idx(use.resource)] += sign * use.amount;
}

/// Trays that share a shelf go in, and come out, together (rule Y7).
void RoomMachine::try_group(int a) {
  const auto members = tables_.group[activity(a).together];
  for (const int m : members) {
    if (!over(m) && stage_[idx(m)] != Stage::kReady) {
      block_[idx(a)] = Block::kGroup;
      return;
    }
  }
  std::size_t claimed = 0;
  bool all = true;
  for (; claimed < members.size() && all; ++claimed)
    all = over(members[claimed]) || claim(members[claimed]);
  const bool is_safe = all && std::all_of(members.begin(), members.end(),
                                          [&](int m) { return over(m) || safe(m); });
  if (is_safe) {
    for (const int m : members)
      if (stage_[idx(m)] == Stage::kReady) begin(m);
    return;
  }
  if (!all) --claimed;  // the last one took nothing
  for (std::size_t i = 0; i < claimed; ++i)
    if (!over(members[i])) unclaim(members[i]);
  if (all) {
    block_[idx(a)] = Block::kSafety;
    unsafe_.push_back(a);
  } else if (members[claimed] != a) {
    block_[idx(a)] = Block::kGroup;
  }
}

void RoomMachine::try_window(int w) {
  const PlayActivity& it = activity(w);
  for (const int cook : it.audience) {
    int busy = hands_running_[idx(cook)];
    if (timed_out_[idx(w)])  // who has not ended what comes before looks first and ends it
                             // afterwards
      for (const int x : tables_.waits_into[w])
        busy -= stage_[idx(x)] == Stage::kRunning && activity(x).hands_on &&
                activity(x).cook == cook;
    if (busy > 0 || in_window_[idx(cook)] > 0) return;
    for (const int b : tables_.breaks_of[cook]) {
      const PlayBreak& pause = model_.breaks[idx(b)];
      if (now_ < pause.to && now_ + it.planned > pause.from) return;
    }
  }
  if (!claim_way(w, tables_.first_way[idx(w)], tables_.first_way[idx(w) + 1], true, way_[idx(w)]))
    return;
  begin_window(w);
}

void RoomMachine::begin_window(int w) {
  const PlayActivity& it = activity(w);
  waiting_windows_.erase(std::find(waiting_windows_.begin(), waiting_windows_.end(), w));
  if (!it.ways.empty())
    for (const PlayUse& use : it.ways.front().uses) --reserved_[idx(use.resource)];
  const int length = luck_.length[idx(w)];
  for (const int cook : it.audience) {
    --called_[idx(cook)];
    ++in_window_[idx(cook)];
    for (const int a : tables_.of_cook[cook])  // pans are turned down and go on afterwards
      if (stage_[idx(a)] == Stage::kRunning && activity(a).attention > 0 && !activity(a).hands_on)
        lengthen(a, length);
  }
  if (timed_out_[idx(w)])
    for (const int x : tables_.waits_into[w])
      if (stage_[idx(x)] == Stage::kRunning && activity(x).hands_on) lengthen(x, length);
  begin(w);
}

bool RoomMachine::claim(int a) {
  const PlayActivity& it = activity(a);
  const bool urgent = is_urgent(a);
  if (it.cook != -1) {
    const std::size_t c = idx(it.cook);
    if (it.attention > 0 && (in_window_[c] > 0 || (called_[c] > 0 && !urgent)))
      return fail(a, Block::kCook);
    if (!break_allows(a, urgent) || !window_allows(a, urgent)) return fail(a, Block::kCook);
    if (it.hands_on && !urgent && held_back(a)) return fail(a, Block::kCook);
    if (!raw_hands_allow(a) || !hands_fit(a)) return fail(a, Block::kCook);
  }
  if (!order_allows(a)) return fail(a, Block::kOrder);
  if (!may_leave(a)) return fail(a, Block::kOven);
  if (!claim_way(a, tables_.first_way[idx(a)], tables_.first_way[idx(a) + 1], urgent, way_[idx(a)]))
    return fail(a, Block::kThing);
  if (!claim_spans(a, urgent)) {
    if (way_[idx(a)] != -1)
      for (const PlayUse& use : tables_.way_uses[way_[idx(a)]])
        free_[idx(use.resource)] += use.amount;
    return false;
  }
  take_hands(a, 1);
  return true;
}

void RoomMachine::unclaim(int a) {
  take_hands(a, -1);
  if (way_[idx(a)] != -1)
    for (const PlayUse& use : tables_.way_uses[way_[idx(a)]])
      free_[idx(use.resource)] += use.amount;
  for (const int s : tables_.opens[a]) put_down(s);
}

bool RoomMachine::claim_spans(int a, bool urgent) {
  const auto spans = tables_.opens[a];
  for (std::size_t i = 0; i < spans.size(); ++i) {
    const int s = spans[i];
    const PlaySpan& span = model_.spans[idx(s)];
    const bool useless = span.closes != -1 &&
                         (over(span.closes) || (!span.closes_at_end && begun(span.closes)));
    if (useless) continue;
    const bool enters = span.oven == -1 || tray_may_enter(s);
    int way = -1;
    if (enters && claim_way(a, tables_.first_span_way[idx(s)], tables_.first_span_way[idx(s) + 1],
                            urgent, way)) {
      take_up(s, way);
      continue;
    }
    for (std::size_t k = 0; k < i; ++k) put_down(spans[k]);
    return fail(a, enters ? Block::kThing : Block::kOven);
  }
  return true;
}

/// The planned way if it is free, else the first that is (rule D5).
bool RoomMachine::claim_way(int a, int first, int end, bool urgent, int& chosen) {
  chosen = -1;
  if (first == end) return true;
  for (int w = first; w < end; ++w) {
    const int end_by = tables_.way_end_by[idx(w)];
    if (end_by != kNever && now_ + activity(a).planned > end_by) continue;
    const auto uses = tables_.way_uses[w];
    const bool is_free = std::all_of(uses.begin(), uses.end(), [&](const PlayUse& use) {
      return free_[idx(use.resource)] >= use.amount &&
             (urgent || reserved_[idx(use.resource)] == 0);
    });
    if (!is_free) continue;
    for (const PlayUse& use : uses) free_[idx(use.resource)] -= use.amount;
    chosen = w;
    return true;
  }
  return false;
}

void RoomMachine::release_way(int way, int cause, bool still_holds) {
  for (const PlayUse& use : tables_.way_uses[way]) {
    if (still_holds) free_[idx(use.resource)] += use.amount;
    wake_users(use.resource, cause);
  }
}

bool RoomMachine::hands_fit(int a) const {
  const PlayActivity& it = activity(a);
  return it.attention == 0 ||
         (free_hands_[idx(it.cook)] >= it.attention && free_busy_[idx(it.cook)] >= it.busy);
}

void RoomMachine::take_hands(int a, int sign) {
  const PlayActivity& it = activity(a);
  if (it.cook == -1) return;
  free_hands_[idx(it.cook)] -= sign * it.attention;
  free_busy_[idx(it.cook)] -= sign * it.busy;
}

/// Rule H5: nothing else between raw food and the hand-wash. So raw work is not begun, urgent or
/// not, while a step planned before it is still to do: the raw work itself might come to need it,
/// and it could not be done (rule D11).
bool RoomMachine::raw_hands_allow(int a) const {
  for (const int s : tables_.shut_out_by[a])
    if (span_way_[idx(s)] != -1) return false;
  for (const int s : tables_.opens[a])
    for (const int b : model_.spans[idx(s)].shuts_out) {
      const bool running = begun(b) && !over(b),
                 still_to_do = !begun(b) && activity(b).planned_start < activity(a).planned_start;
      if (running || still_to_do) return false;
    }
  return true;
}

/// Rule D3: own hands-on steps in planned order. A closing step that is not ready is waited for
/// only so long.
bool RoomMachine::held_back(int a) {
  const int cook = activity(a).cook, own = activity(a).planned_start;
  const auto hands = tables_.hands_of_cook[cook];
  std::size_t& first = first_hand_[idx(cook)];
  while (first < hands.size() && begun(hands[first])) ++first;
  for (std::size_t i = first; i < hands.size(); ++i) {
    const int b = hands[i];
    if (activity(b).planned_start >= own) return false;
    if (begun(b)) continue;
    const bool not_ready = activity(b).closing && stage_[idx(b)] != Stage::kReady;
    const int until = activity(b).planned_start + model_.patience_own;
    if (not_ready && now_ > until) continue;
    if (not_ready) push_event(until + 1, PlayEvent::kCook, cook);
    return true;
  }
  return false;
}

/// Rule D7: at a place, or on kit that allergens concern, the planned order is kept.
bool RoomMachine::order_allows(int a) const {
  for (const int o : tables_.orders_of[a]) {
    const PlayOrder& order = model_.orders[idx(o)];
    std::size_t own = order_first_[idx(o)];
    while (order.activities[own] != a) ++own;
    for (std::size_t i = order_first_[idx(o)]; i < own; ++i) {
      const int b = order.activities[i];
      if (over(b)) continue;
      const bool apart = order.classes[i] == -1 || order.classes[i] != order.classes[own];
      if (!begun(b) || apart) return false;
    }
  }
  return true;
}

/// Rule D8: breaks start by the clock. What may not run in one is not begun when it would by the
/// plan's minutes; taking out is, as long as the room is open.
bool RoomMachine::break_allows(int a, bool urgent) const {
  if (activity(a).in_break) return true;
  for (const int b : tables_.breaks_of[activity(a).cook]) {
    const PlayBreak& pause = model_.breaks[idx(b)];
    if (now_ >= pause.to) continue;
    if (now_ >= pause.from || (!urgent && now_ + activity(a).planned > pause.from)) return false;
  }
  return true;
}

/// With mind_windows: nothing hands-on is begun that by the plan's minutes would hold up a window
/// still to come.
bool RoomMachine::window_allows(int a, bool urgent) const {
  if (urgent || !activity(a).hands_on) return true;
  for (const int w : tables_.windows_of[activity(a).cook]) {
    const PlayActivity& window = activity(w);
    if (begun(w) || activity(a).planned_start < window.planned_start) continue;
    if (now_ < window.planned_start && now_ + activity(a).planned > window.planned_start)
      return false;
  }
  return true;
}

}  // namespace timeplan
