// What upsets a run: dishes given up, breaks, raised hands, and the way out when a pan waits for
// nobody.
#include <algorithm>

#include "timeplan/chance/room_machine.h"

namespace timeplan {

/// Rule D8: the dish is given up and what remains of it skipped, except cleaning and taking out
/// what is hot.
void RoomMachine::give_up(int a) {
  const int cook = activity(a).cook, dish = activity(a).dish;
  if (cook == -1 || dish == -1) {
    skip(a);
    return;
  }
  ++run_.given_up;
  given_up_[idx(cook)] = 1;
  for (const int b : tables_.of_cook[cook]) {
    const PlayActivity& it = activity(b);
    if (it.dish != dish || begun(b) || it.cleaning) continue;
    const auto before = tables_.waits_into[b];
    const bool hot = it.closing && std::any_of(before.begin(), before.end(), [&](int x) {
                       return begun(x) && stage_[idx(x)] != Stage::kSkipped;
                     });
    if (!hot) skip(b);
  }
  for (const int b : tables_.of_cook[cook]) {
    if (activity(b).dish != dish || begun(b) || !activity(b).cleaning) continue;
    const auto before = tables_.waits_into[b];
    const bool nothing_to_clean = std::all_of(
        before.begin(), before.end(), [&](int x) { return stage_[idx(x)] == Stage::kSkipped; });
    if (nothing_to_clean && !before.empty()) skip(b);
  }
}

void RoomMachine::skip(int b) {
  stage_[idx(b)] = Stage::kSkipped;
  run_.start[idx(b)] = run_.end[idx(b)] = -1;
  --unfinished_;
  for (const int s : tables_.opens[b])
    if (model_.spans[idx(s)].oven != -1) look_at(model_.spans[idx(s)].oven, -1);
  for (const int s : tables_.closes_at_start[b]) close_span(s, -1);
  for (const int s : tables_.closes_at_end[b]) close_span(s, -1);
  tell(tables_.after_start[b], true);
  tell(tables_.after_end[b], true);
  wake_orders(b, -1);
  if (activity(b).cook != -1) wake_cook(activity(b).cook, -1);
  if (activity(b).together != -1)
    for (const int other : tables_.group[activity(b).together]) wake(other, -1);
  const int elastic = tables_.elastic[idx(b)];
  if (elastic != -1 && stage_[idx(elastic)] == Stage::kMayEnd) finish(elastic, true);
}

void RoomMachine::start_break(const PlayBreak& pause) {
  for (const int cook : pause.cooks) {
    for (const int a : tables_.of_cook[cook]) {
      const PlayActivity& it = activity(a);
      if (stage_[idx(a)] == Stage::kRunning && it.heated && !it.hands_on && !it.in_break)
        lengthen(a, pause.to - pause.from);
    }
  }
  if (pause.ovens_stay_on) return;
  for (OvenState& oven : ovens_) {  // rule O6: cold afterwards
    oven.knob = 0;
    oven.ready = std::max(oven.ready, pause.to);
  }
}

void RoomMachine::end_break(const PlayBreak& pause) {
  for (const int cook : pause.cooks) wake_cook(cook, -1);
  for (const int w : waiting_windows_) push_agenda(w);
  for (std::size_t o = 0; o < ovens_.size(); ++o) look_at(static_cast<int>(o), -1);
}

void RoomMachine::lengthen(int a, int by) {
  if (call_left_[idx(a)] > 0) {
    call_left_[idx(a)] += by;
  } else if (run_.end[idx(a)] != kNever) {
    run_.end[idx(a)] += by;
    push_event(run_.end[idx(a)], PlayEvent::kEnd, a);
  }
}

/// Nothing will happen by itself. A pan that simmers on for a step that never comes is taken off; a
/// step that stands waiting for another's end is let go. False: a true stall (rule D11).
bool RoomMachine::break_stall() {
  for (int a = 0; a < count_; ++a) {
    if (stage_[idx(a)] == Stage::kMayEnd) {
      finish(a, true);
      return true;
    }
    if (stage_[idx(a)] == Stage::kRunning && run_.end[idx(a)] == kNever &&
        call_left_[idx(a)] == 0) {
      end_missing_[idx(a)] = 0;
      quality_fault(a, 0);
      come_to_end(a);
      return true;
    }
  }
  return false;
}

void RoomMachine::schedule_call(int a) {
  if (luck_.calls.empty() || !activity(a).calls) return;
  const std::size_t row = idx(a) * kCallsEach;
  const int next = call_next_[idx(a)];
  if (next >= kCallsEach || luck_.calls[row + idx(next)].after < 0) return;
  const int before = next == 0 ? 0 : luck_.calls[row + idx(next - 1)].after;
  const int at = now_ + std::max(0, luck_.calls[row + idx(next)].after - before);
  if (run_.end[idx(a)] != kNever && at < run_.end[idx(a)]) push_event(at, PlayEvent::kCall, a);
}

/// A hand goes up. Without a free adult the cook stands and waits: the step is longer by that wait
/// only (7.7).
void RoomMachine::raise_hand(int a) {
  if (run_.end[idx(a)] == kNever || run_.end[idx(a)] <= now_) return;
  call_left_[idx(a)] = run_.end[idx(a)] - now_;
  run_.end[idx(a)] = kNever;
  call_queue_.push_back(a);
}

int RoomMachine::free_helper() const {
  for (const int helper : model_.helpers)
    if (free_[idx(helper)] >= model_.help_amount) return helper;
  return -1;
}

/// First come, first served.
void RoomMachine::answer_calls() {
  std::size_t answered = 0;
  for (; answered < call_queue_.size(); ++answered) {
    const int helper = free_helper();
    if (helper == -1) break;
    const int a = call_queue_[answered];
    const HandsUp& call = luck_.calls[idx(a) * kCallsEach + idx(call_next_[idx(a)])];
    free_[idx(helper)] -= model_.help_amount;
    push_event(now_ + std::max(1, call.help), PlayEvent::kHelpEnd, helper);
    run_.end[idx(a)] = now_ + call_left_[idx(a)];
    call_left_[idx(a)] = 0;
    ++call_next_[idx(a)];
    push_event(run_.end[idx(a)], PlayEvent::kEnd, a);
    schedule_call(a);
  }
  call_queue_.erase(call_queue_.begin(),
                    call_queue_.begin() + static_cast<std::ptrdiff_t>(answered));
}

}  // namespace timeplan
