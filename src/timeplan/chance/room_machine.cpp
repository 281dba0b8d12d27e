// The clock of a run: what ends, what becomes ready, what is skipped. Everything that ends at an
// instant does so before anything starts (section 5).
#include "timeplan/chance/room_machine.h"

#include <algorithm>
#include <functional>
#include <stdexcept>
#include <string>

namespace timeplan {

RoomMachine::RoomMachine(const PlayModel& model)
    : model_(model),
      tables_(play_tables(model)),
      count_(static_cast<int>(model.activities.size())) {
  const std::size_t n = model.activities.size();
  for (auto* list :
       {&ready_at_, &end_floor_, &quality_by_, &safety_by_, &end_quality_by_, &end_safety_by_,
        &way_, &over_by_, &call_next_, &call_left_, &run_.start, &run_.end, &run_.cause})
    list->resize(n);
  events_.reserve(8 * n + 64);
  agenda_.reserve(8 * n + 64);
  for (auto* list : {&waiting_windows_, &call_queue_, &unsafe_}) list->reserve(2 * n + 1);
}

void RoomMachine::reset(const Luck& luck) {
  luck_ = luck;
  now_ = 0;
  unfinished_ = count_;
  clock_next_ = 0;
  for (auto* list : {&events_, &agenda_}) list->clear();
  for (auto* list : {&waiting_windows_, &call_queue_, &unsafe_}) list->clear();
  const std::size_t n = model_.activities.size(), cooks = model_.cooks.size();
  queued_.assign(n, 0);
  stage_.assign(n, Stage::kWaiting);
  block_.assign(n, Block::kNone);
  missing_ = tables_.missing;
  end_missing_ = tables_.end_missing;
  for (std::size_t i = 0; i < n; ++i) ready_at_[i] = std::max(tables_.floor[i], luck.opens_late);
  for (auto* list : {&end_floor_, &call_next_, &call_left_})
    std::fill(list->begin(), list->end(), 0);
  for (auto* list : {&quality_by_, &safety_by_, &end_quality_by_, &end_safety_by_, &over_by_})
    std::fill(list->begin(), list->end(), kNever);
  for (auto* list : {&way_, &run_.start, &run_.end, &run_.cause})
    std::fill(list->begin(), list->end(), -1);
  timed_out_.assign(n, 0);
  free_ = capacity_now_ = tables_.base_capacity;
  held_.assign(free_.size(), 0);
  reserved_.assign(free_.size(), 0);
  for (auto* list : {&called_, &in_window_, &hands_running_, &free_hands_, &free_busy_})
    list->assign(cooks, 0);
  for (std::size_t c = 0; c < cooks; ++c) {
    free_hands_[c] = 10 * model_.cooks[c].people;
    free_busy_[c] = 2 * model_.cooks[c].people;
  }
  for (auto* list : {&first_hand_, &first_of_cook_}) list->assign(cooks, 0);
  first_user_.assign(free_.size(), 0);
  order_first_.assign(model_.orders.size(), 0);
  span_way_.assign(model_.spans.size(), -1);
  span_odd_.assign(model_.spans.size(), 0);
  held_out_of_order_.assign(cooks + 1, 0);
  order_over_.assign(cooks + 1, 0);
  ovens_.assign(model_.ovens.size(), OvenState{});
  for (std::size_t o = 0; o < ovens_.size(); ++o) ovens_[o].knob = model_.ovens[o].opening;
  given_up_.assign(cooks, 0);
  unsafe_cook_.assign(cooks, 0);
  run_.finish.assign(cooks, 0);
  run_.in_time.assign(cooks, 1);
  run_.quality_faults = run_.quality_seconds = run_.safety_faults = run_.given_up = 0;
  run_.too_late.assign(model_.activities.size(), 0);
  run_.unsafe.assign(model_.activities.size(), 0);
}

const Run& RoomMachine::play(const Luck& luck) {
  const std::size_t n = model_.activities.size();
  if (luck.length.size() != n) throw std::invalid_argument("play: one length an activity, please");
  if (!luck.calls.empty() && luck.calls.size() != n * kCallsEach)
    throw std::invalid_argument("play: calls of the wrong shape");
  reset(luck);
  for (int a = 0; a < count_; ++a) consider_ready(a);
  while (true) {
    settle();
    if (unfinished_ == 0) break;
    if (!next_instant() && !break_stall())
      throw std::logic_error("the room stalls at " + std::to_string(now_) + " s with " +
                             std::to_string(unfinished_) + " activities to do");
  }
  sum_up();
  return run_;
}

/// Moves to the next time anything happens and lets it happen. False when nothing will.
bool RoomMachine::next_instant() {
  const auto clock_at = [&] {
    return clock_next_ < tables_.clock.size() ? tables_.clock[clock_next_].at : kNever;
  };
  const auto event_at = [&] {
    return events_.empty() ? kNever : static_cast<int>(events_.front() >> 32);
  };
  const int next = std::min(clock_at(), event_at());
  if (next == kNever) return false;
  now_ = std::max(now_, next);
  while (event_at() <= now_) {
    std::pop_heap(events_.begin(), events_.end(), std::greater<>());
    const std::uint64_t event = events_.back();
    events_.pop_back();
    happen(static_cast<PlayEvent>((event >> 26) & 63U), static_cast<int>(event & ((1U << 26) - 1)),
           0);
  }
  for (; clock_at() <= now_; ++clock_next_) {
    const ClockEvent& event = tables_.clock[clock_next_];
    happen(event.what, event.id, event.by);
  }
  return true;
}

void RoomMachine::happen(PlayEvent what, int id, int by) {
  switch (what) {
    case PlayEvent::kEnd:
      // Times moved since (a pan turned down, a hand up) leave old events behind.
      if (stage_[idx(id)] == Stage::kRunning && run_.end[idx(id)] == now_) come_to_end(id);
      break;
    case PlayEvent::kReady:
      consider_ready(id);
      break;
    case PlayEvent::kUrgent:
      if (stage_[idx(id)] == Stage::kReady) push_agenda(id);
      break;
    case PlayEvent::kCook:
      wake_cook(id, -1);
      break;
    case PlayEvent::kOven:
      look_at(id, ovens_[idx(id)].last_left);
      break;
    case PlayEvent::kCall:
      if (stage_[idx(id)] == Stage::kRunning) raise_hand(id);
      break;
    case PlayEvent::kHelpEnd:
      free_[idx(id)] += model_.help_amount;
      wake_users(id, -1);
      break;
    case PlayEvent::kOverdone:
      if (stage_[idx(id)] == Stage::kMayEnd &&
          stage_[idx(tables_.closer[idx(id)])] != Stage::kReady)
        finish(id, true);
      break;
    case PlayEvent::kGiveUp:
      if (!begun(id)) give_up(id);
      break;
    case PlayEvent::kBreakStart:
      start_break(model_.breaks[idx(id)]);
      break;
    case PlayEvent::kBreakEnd:
      end_break(model_.breaks[idx(id)]);
      break;
    case PlayEvent::kResource:
      free_[idx(id)] += by;
      capacity_now_[idx(id)] += by;
      wake_users(id, -1);
      break;
    case PlayEvent::kPeople:
      free_hands_[idx(id)] += 10 * by;
      free_busy_[idx(id)] += 2 * by;
      wake_cook(id, -1);
      break;
    case PlayEvent::kPatience:
      lose_patience(id);
      break;
  }
}

/// A window is called though not everybody is through what should come before it (rule D8).
void RoomMachine::lose_patience(int window) {
  const int since = std::max(activity(window).planned_start, luck_.opens_late);
  if (now_ < since + model_.patience_window) {
    push_event(since + model_.patience_window, PlayEvent::kPatience, window);
    return;
  }
  if (stage_[idx(window)] != Stage::kWaiting || missing_[idx(window)] == 0) return;
  missing_[idx(window)] = 0;
  timed_out_[idx(window)] = 1;
  consider_ready(window);
}

void RoomMachine::settle() {
  do {
    answer_calls();
    for (const int w : waiting_windows_) push_agenda(w);
    while (!agenda_.empty()) {
      std::pop_heap(agenda_.begin(), agenda_.end(), std::greater<>());
      const std::uint64_t key = agenda_.back();
      agenda_.pop_back();
      const int a = static_cast<int>(key & ((1U << 20) - 1));
      if (queued_[idx(a)] != key) continue;  // asked for again since, with another urgency
      queued_[idx(a)] = 0;
      if (stage_[idx(a)] == Stage::kReady) try_start(a);
    }
    turn_knobs();
  } while (!agenda_.empty());
}

void RoomMachine::consider_ready(int a) {
  if (stage_[idx(a)] != Stage::kWaiting) return;
  const int elastic = tables_.elastic[idx(a)];
  const bool may_end = elastic != -1 && stage_[idx(elastic)] == Stage::kMayEnd;
  if (missing_[idx(a)] > (may_end ? tables_.elastic_waits[idx(a)] : 0)) return;
  if (ready_at_[idx(a)] > now_) {
    push_event(ready_at_[idx(a)], PlayEvent::kReady, a);
  } else {
    become_ready(a);
  }
}

void RoomMachine::become_ready(int a) {
  stage_[idx(a)] = Stage::kReady;
  if (activity(a).window != PlayWindow::kNone) {  // the window is called
    for (const int cook : activity(a).audience) ++called_[idx(cook)];
    if (!activity(a).ways.empty())
      for (const PlayUse& use : activity(a).ways.front().uses) ++reserved_[idx(use.resource)];
    waiting_windows_.push_back(a);
  }
  for (const int s : tables_.opens[a])
    if (model_.spans[idx(s)].oven != -1) ovens_[idx(model_.spans[idx(s)].oven)].look = true;
  remind_of_deadline(a);
  push_agenda(a);
}

void RoomMachine::remind_of_deadline(int a) {
  const int deadline = std::min(quality_by_[idx(a)], safety_by_[idx(a)]);
  if (deadline != kNever && deadline - model_.urgent_within > now_)
    push_event(deadline - model_.urgent_within, PlayEvent::kUrgent, a);
}

void RoomMachine::tell(std::span<const PlayWait> waits, bool is_void) {
  for (const PlayWait& wait : waits) {
    if (over(wait.to)) continue;
    if (wait.to_end) {
      meet_end(wait, is_void);
    } else if (!begun(wait.to)) {
      meet(wait, is_void);
    }
  }
}

void RoomMachine::meet(const PlayWait& wait, bool is_void) {
  const std::size_t to = idx(wait.to);
  if (!is_void) {
    const int since = now_ + wait.least;
    const bool later = since > ready_at_[to];
    const bool as_late = since == ready_at_[to] &&
                         (run_.cause[to] == -1 || wait.from < run_.cause[to]);
    if (wait.least >= 0 && (later || as_late)) {
      ready_at_[to] = since;
      run_.cause[to] = wait.from;
    }
    if (wait.most != kNever) {
      int& by = (wait.safety ? safety_by_ : quality_by_)[to];
      by = std::min(by, now_ + wait.most);
      if (stage_[to] == Stage::kReady) {
        remind_of_deadline(wait.to);
        push_agenda(wait.to);
      }
    }
  }
  if (wait.least >= 0 && !timed_out_[to]) --missing_[to];
  consider_ready(wait.to);
}

void RoomMachine::meet_end(const PlayWait& wait, bool is_void) {
  const std::size_t to = idx(wait.to);
  if (!is_void) {
    if (wait.least >= 0) end_floor_[to] = std::max(end_floor_[to], now_ + wait.least);
    if (wait.most != kNever) {
      int& by = (wait.safety ? end_safety_by_ : end_quality_by_)[to];
      by = std::min(by, now_ + wait.most);
    }
  }
  if (wait.least < 0) return;
  --end_missing_[to];
  const bool stands_waiting = stage_[to] == Stage::kRunning && run_.end[to] == kNever &&
                              call_left_[to] == 0;
  if (end_missing_[to] == 0 && stands_waiting) {
    run_.end[to] = std::max(now_, end_floor_[to]);
    push_event(run_.end[to], PlayEvent::kEnd, wait.to);
  }
}

void RoomMachine::begin(int a) {
  const PlayActivity& it = activity(a);
  stage_[idx(a)] = Stage::kRunning;
  run_.start[idx(a)] = now_;
  run_.end[idx(a)] = now_ + luck_.length[idx(a)];
  if (it.hands_on) ++hands_running_[idx(it.cook)];
  count_faults(a);
  for (const int v : tables_.voids[a])
    if (!begun(v)) skip(v);
  if (it.door_shut > 0 && it.door_span != -1) shut_door(a);
  for (const int s : tables_.opens[a])
    if (model_.spans[idx(s)].oven != -1) look_at(model_.spans[idx(s)].oven, a);
  for (const int s : tables_.closes_at_start[a]) close_span(s, a);
  tell(tables_.after_start[a], false);
  wake_orders(a, run_.cause[idx(a)]);
  if (it.cook != -1) wake_cook(it.cook, run_.cause[idx(a)]);
  if (!unsafe_.empty()) wake_unsafe(a);
  if (run_.end[idx(a)] == now_) {
    come_to_end(a);
  } else {
    push_event(run_.end[idx(a)], PlayEvent::kEnd, a);
    schedule_call(a);
  }
}

/// Its work is done: it ends, unless an end it has to wait for is still to come or it may simmer on
/// (rule D9).
void RoomMachine::come_to_end(int a) {
  if (end_missing_[idx(a)] > 0) {
    run_.end[idx(a)] = kNever;
    return;
  }
  if (end_floor_[idx(a)] > now_) {
    run_.end[idx(a)] = end_floor_[idx(a)];
    push_event(end_floor_[idx(a)], PlayEvent::kEnd, a);
    return;
  }
  const int closer = tables_.closer[idx(a)];
  if (closer == -1 || begun(closer)) {
    finish(a, true);
    return;
  }
  stage_[idx(a)] = Stage::kMayEnd;
  over_by_[idx(a)] = std::max(run_.start[idx(a)] + activity(a).longest, now_);
  push_event(over_by_[idx(a)], PlayEvent::kOverdone, a);
  consider_ready(closer);
}

/// `still_holds`: false when the closing step has taken over its hands and things already.
void RoomMachine::finish(int a, bool still_holds) {
  const PlayActivity& it = activity(a);
  stage_[idx(a)] = Stage::kDone;
  run_.end[idx(a)] = now_;
  --unfinished_;
  if (still_holds) take_hands(a, -1);
  if (it.hands_on) --hands_running_[idx(it.cook)];
  if (way_[idx(a)] != -1) release_way(way_[idx(a)], a, still_holds);
  for (const int s : tables_.closes_at_end[a]) close_span(s, a);
  if (it.window != PlayWindow::kNone) {
    for (const int cook : it.audience) {
      --in_window_[idx(cook)];
      wake_cook(cook, a);
    }
  }
  count_end_faults(a);
  tell(tables_.after_end[a], false);
  wake_orders(a, a);
  if (it.cook != -1) wake_cook(it.cook, a);
}

void RoomMachine::count_faults(int a) {
  const int by = std::min(quality_by_[idx(a)], activity(a).latest_start);
  if (now_ > by) {
    quality_fault(a, now_ - by);
  }
  if (now_ > safety_by_[idx(a)]) safety_fault(a);
}

void RoomMachine::count_end_faults(int a) {
  const int by = std::min(end_quality_by_[idx(a)], over_by_[idx(a)]);
  if (now_ > by) {
    quality_fault(a, now_ - by);
  }
  // A ban bounds the end (rule W5): what was begun in good time and drags on past it is not safe.
  if (now_ > end_safety_by_[idx(a)] || now_ > activity(a).end_by) safety_fault(a);
}

void RoomMachine::quality_fault(int a, int seconds) {
  ++run_.quality_faults;
  run_.quality_seconds += seconds;
  run_.too_late[idx(a)] = 1;
}

void RoomMachine::safety_fault(int a) {
  ++run_.safety_faults;
  run_.unsafe[idx(a)] = 1;
  if (activity(a).cook != -1) unsafe_cook_[idx(activity(a).cook)] = 1;
}

void RoomMachine::sum_up() {
  for (int a = 0; a < count_; ++a) {
    const PlayActivity& it = activity(a);
    if (it.cook == -1 || stage_[idx(a)] == Stage::kSkipped) continue;
    const int end = run_.end[idx(a)];
    if (it.finish) run_.finish[idx(it.cook)] = std::max(run_.finish[idx(it.cook)], end);
    if (end > it.due) run_.in_time[idx(it.cook)] = 0;
  }
  for (std::size_t c = 0; c < model_.cooks.size(); ++c)
    if (given_up_[c] || unsafe_cook_[c]) run_.in_time[c] = 0;
}

RoomPlayer::RoomPlayer(const PlayModel& model) : machine_(std::make_unique<RoomMachine>(model)) {}
RoomPlayer::~RoomPlayer() = default;
const Run& RoomPlayer::play(const Luck& luck) { return machine_->play(luck); }

Run play(const PlayModel& model, const Luck& luck) { return RoomPlayer(model).play(luck); }

}  // namespace timeplan
