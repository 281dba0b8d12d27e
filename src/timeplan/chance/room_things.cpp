// What is held and let go: spans, ovens and their knobs (rule D6), and who is woken when something
// is free again.
#include <algorithm>

#include "timeplan/chance/room_machine.h"

namespace timeplan {

void RoomMachine::take_up(int s, int way) {
  span_way_[idx(s)] = way == -1 ? kHoldsNothing : way;
  if (way != -1)
    for (const PlayUse& use : tables_.way_uses[way]) held_[idx(use.resource)] += use.amount;
  const PlaySpan& span = model_.spans[idx(s)];
  if (span.oven == -1) return;
  ++ovens_[idx(span.oven)].trays;
  ovens_[idx(span.oven)].used += span.twelfths;
}

void RoomMachine::mark_out_of_order(int s) {
  if (span_way_[idx(s)] == -1 || span_odd_[idx(s)]) return;
  span_odd_[idx(s)] = 1;
  ++held_out_of_order_[idx(island(model_.spans[idx(s)].opens))];
}

/// Undoes take_up and its claim, waking nobody.
void RoomMachine::put_down(int s) {
  const int way = span_way_[idx(s)];
  if (way == -1) return;
  span_way_[idx(s)] = -1;
  if (span_odd_[idx(s)]) {
    span_odd_[idx(s)] = 0;
    --held_out_of_order_[idx(island(model_.spans[idx(s)].opens))];
  }
  if (way != kHoldsNothing) {
    for (const PlayUse& use : tables_.way_uses[way]) {
      held_[idx(use.resource)] -= use.amount;
      free_[idx(use.resource)] += use.amount;
    }
  }
  const PlaySpan& span = model_.spans[idx(s)];
  if (span.oven == -1) return;
  --ovens_[idx(span.oven)].trays;
  ovens_[idx(span.oven)].used -= span.twelfths;
}

void RoomMachine::close_span(int s, int cause) {
  const int way = span_way_[idx(s)];
  if (way == -1) return;
  put_down(s);
  const PlaySpan& span = model_.spans[idx(s)];
  if (way != kHoldsNothing)
    for (const PlayUse& use : tables_.way_uses[way]) wake_users(use.resource, cause);
  if (span.oven != -1) {
    ovens_[idx(span.oven)].last_left = cause;
    look_at(span.oven, cause);
  }
  if (!span.shuts_out.empty()) wake_cook(activity(span.opens).cook, cause);
  wake_unsafe(cause);
}

void RoomMachine::shut_door(int a) {
  const PlayActivity& it = activity(a);
  const int oven = model_.spans[idx(it.door_span)].oven;
  if (oven == -1) return;
  OvenState& state = ovens_[idx(oven)];
  state.door_from = now_;
  state.door_until = std::max(state.door_until, now_ + it.door_shut);
  state.door_span = it.door_span;
  push_event(state.door_until, PlayEvent::kOven, oven);
}

/// Rule O7: strictly inside the shut time no other tray goes in or out; the same moment is one
/// opening.
bool RoomMachine::door_allows(int span) const {
  const OvenState& oven = ovens_[idx(model_.spans[idx(span)].oven)];
  return oven.door_span == span || now_ <= oven.door_from || now_ >= oven.door_until;
}

bool RoomMachine::may_leave(int a) const {
  const auto shut = [&](int s) {
    return model_.spans[idx(s)].oven != -1 && span_way_[idx(s)] != -1 &&
           model_.spans[idx(s)].opens != a && !door_allows(s);
  };
  const auto at_end = tables_.closes_at_end[a], at_start = tables_.closes_at_start[a];
  return std::none_of(at_end.begin(), at_end.end(), shut) &&
         std::none_of(at_start.begin(), at_start.end(), shut);
}

/// Rule D6: a tray joins a batch of its own setting if there is room and no door is shut; the first
/// of a batch goes in once the knob stands at its setting and the oven is there.
bool RoomMachine::tray_may_enter(int s) const {
  const PlaySpan& span = model_.spans[idx(s)];
  const OvenState& oven = ovens_[idx(span.oven)];
  return oven.knob == span.setting && now_ >= oven.ready &&
         oven.used + span.twelfths <= model_.ovens[idx(span.oven)].twelfths && door_allows(s) &&
         (oven.trays == 0 || !overtakes(s));
}

/// Would it go before an earlier-planned tray of another setting that has not yet used up the
/// patience?
bool RoomMachine::overtakes(int s) const {
  const PlaySpan& span = model_.spans[idx(s)];
  const int own = activity(span.opens).planned_start;
  for (const int other : tables_.trays[span.oven]) {
    const int a = model_.spans[idx(other)].opens;
    const int planned = activity(a).planned_start;
    if (planned >= own) return false;
    if (begun(a) || model_.spans[idx(other)].setting == span.setting) continue;
    const bool late = now_ >= planned + model_.patience_oven && stage_[idx(a)] != Stage::kReady;
    if (!late) return true;
  }
  return false;
}

void RoomMachine::look_at(int oven, int cause) {
  ovens_[idx(oven)].look = true;
  for (const int s : tables_.trays[oven]) {
    for (const int a : {model_.spans[idx(s)].opens, model_.spans[idx(s)].closes})
      if (a != -1 && stage_[idx(a)] == Stage::kReady && block_[idx(a)] == Block::kOven)
        wake(a, cause);
  }
}

void RoomMachine::turn_knobs() {
  for (std::size_t o = 0; o < ovens_.size(); ++o) {
    if (!ovens_[o].look) continue;
    ovens_[o].look = false;
    turn_knob(static_cast<int>(o));
  }
}

/// An empty oven goes to the setting of the earliest planned tray not yet in; one that is late and
/// not ready is passed over as soon as another is ready (rule D6).
void RoomMachine::turn_knob(int o) {
  OvenState& oven = ovens_[idx(o)];
  if (now_ < oven.ready || oven.trays > 0) return;
  int first = -1, first_in_time = -1;
  bool any_ready = false;
  for (const int s : tables_.trays[o]) {
    const int a = model_.spans[idx(s)].opens;
    if (begun(a)) continue;
    const bool is_ready = stage_[idx(a)] == Stage::kReady;
    any_ready = any_ready || is_ready;
    if (first == -1) first = s;
    const bool late = now_ >= activity(a).planned_start + model_.patience_oven && !is_ready;
    if (first_in_time == -1 && !late) first_in_time = s;
  }
  const int pick = any_ready ? first_in_time : first;
  if (pick == -1 || model_.spans[idx(pick)].setting == oven.knob) return;
  const int setting = model_.spans[idx(pick)].setting;
  oven.ready = now_ + model_.ovens[idx(o)]
                          .change[idx(oven.knob * model_.ovens[idx(o)].settings + setting)];
  oven.knob = setting;
  if (oven.ready > now_) {
    push_event(oven.ready, PlayEvent::kOven, o);
  } else {
    look_at(o, oven.last_left);
  }
}

void RoomMachine::wake(int a, int cause) {
  if (stage_[idx(a)] != Stage::kReady) return;
  run_.cause[idx(a)] = cause;
  push_agenda(a);
}

void RoomMachine::wake_cook(int cook, int cause) {
  const auto list = tables_.of_cook[cook];
  std::size_t& first = first_of_cook_[idx(cook)];
  while (first < list.size() && begun(list[first])) ++first;
  for (std::size_t i = first; i < list.size(); ++i)
    if (stage_[idx(list[i])] == Stage::kReady && block_[idx(list[i])] == Block::kCook)
      wake(list[i], cause);
}

void RoomMachine::wake_users(int resource, int cause) {
  const auto list = tables_.users[resource];
  std::size_t& first = first_user_[idx(resource)];
  while (first < list.size() && begun(list[first])) ++first;
  for (std::size_t i = first; i < list.size(); ++i)
    if (stage_[idx(list[i])] == Stage::kReady && block_[idx(list[i])] == Block::kThing)
      wake(list[i], cause);
}

void RoomMachine::wake_orders(int a, int cause) {
  for (const int o : tables_.orders_of[a]) {
    const auto& list = model_.orders[idx(o)].activities;
    std::size_t& first = order_first_[idx(o)];
    while (first < list.size() && over(list[first])) ++first;
    for (std::size_t i = first; i < list.size(); ++i)
      if (stage_[idx(list[i])] == Stage::kReady && block_[idx(list[i])] == Block::kOrder)
        wake(list[i], cause);
  }
}

void RoomMachine::wake_unsafe(int cause) {
  while (!unsafe_.empty()) {
    const int a = unsafe_.back();
    unsafe_.pop_back();
    wake(a, cause);
  }
}

}  // namespace timeplan
