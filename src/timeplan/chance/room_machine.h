// Internal to room_play: the state of one run and the moves of the dispatch rule. room_machine.cpp
// keeps the clock and what ends; room_mishaps.cpp what upsets a run; room_starts.cpp decides what
// may start; room_things.cpp holds and lets go; room_safety.cpp keeps rule D11.
#pragma once

#include <cstdint>
#include <vector>

#include "timeplan/chance/play_tables.h"
#include "timeplan/chance/room_play.h"

namespace timeplan {

enum class Stage : std::uint8_t {
  kWaiting,
  kReady,
  kRunning,
  kMayEnd,  ///< elastic, long enough, waits for its closing step (rule D9)
  kDone,
  kSkipped
};

/// Why a ready activity did not start: what has to change before it is worth another try.
enum class Block : std::uint8_t { kNone, kCook, kThing, kOven, kOrder, kSafety, kGroup };

class RoomMachine {
 public:
  explicit RoomMachine(const PlayModel& model);
  const Run& play(const Luck& luck);

 private:
  struct OvenState {
    int knob = 0, ready = 0, trays = 0, used = 0;
    int door_from = -1, door_until = -1, door_span = -1;
    int last_left = -1;  ///< activity, for the cause
    bool look = false;   ///< something changed: look at the knob after the starts of this instant
  };

  /// A span that is open but takes nothing of any pool: raw hands, a tray.
  static constexpr int kHoldsNothing = -2;

  // room_machine.cpp
  void reset(const Luck& luck);
  bool next_instant();
  void happen(PlayEvent what, int id, int by);
  void lose_patience(int window);
  void settle();
  void consider_ready(int a);
  void become_ready(int a);
  void remind_of_deadline(int a);
  void tell(std::span<const PlayWait> waits, bool is_void);
  void meet(const PlayWait& wait, bool is_void);
  void meet_end(const PlayWait& wait, bool is_void);
  void begin(int a);
  void come_to_end(int a);
  void finish(int a, bool still_holds);
  void count_faults(int a);
  void count_end_faults(int a);
  void quality_fault(int a, int seconds);
  void safety_fault(int a);
  void sum_up();

  // room_mishaps.cpp
  void give_up(int a);
  void skip(int b);
  void start_break(const PlayBreak& pause);
  void end_break(const PlayBreak& pause);
  void lengthen(int a, int by);
  bool break_stall();
  void schedule_call(int a);
  void raise_hand(int a);
  int free_helper() const;
  void answer_calls();

  // room_starts.cpp
  bool is_urgent(int a) const;
  std::uint64_t key_of(int a) const;
  void push_agenda(int a);
  void push_event(int at, PlayEvent what, int id);
  void try_start(int a);
  void try_alone(int a);
  void lend(int elastic, int sign);
  void try_group(int a);
  void try_window(int w);
  void begin_window(int w);
  bool claim(int a);
  void unclaim(int a);
  bool claim_spans(int a, bool urgent);
  bool claim_way(int a, int first, int end, bool urgent, int& chosen);
  void release_way(int way, int cause, bool still_holds);
  bool hands_fit(int a) const;
  void take_hands(int a, int sign);
  bool raw_hands_allow(int a) const;
  bool held_back(int a);
  bool order_allows(int a) const;
  bool break_allows(int a, bool urgent) const;
  bool window_allows(int a, bool urgent) const;
  bool fail(int a, Block why) {
    block_[idx(a)] = why;
    return false;
  }

  // room_things.cpp
  void mark_out_of_order(int span);
  void take_up(int span, int way);
  void put_down(int span);
  void close_span(int span, int cause);
  void shut_door(int a);
  bool door_allows(int span) const;
  bool may_leave(int a) const;
  bool tray_may_enter(int span) const;
  bool overtakes(int span) const;
  void look_at(int oven, int cause);
  void turn_knobs();
  void turn_knob(int oven);
  void wake(int a, int cause);
  void wake_cook(int cook, int cause);
  void wake_users(int resource, int cause);
  void wake_orders(int a, int cause);
  void wake_unsafe(int cause);

  // room_safety.cpp
  bool somebody_before(std::span<const int> users, int a) const;
  std::span<const int> waiting_users(int resource) const;
  bool out_of_order(int a) const;
  bool out_of_place(int a) const;
  int island(int a) const;
  bool safe(int a);
  bool plays_to_the_end(int asker);
  bool replay_start(int a, bool before_others);
  bool replay_end(int a);
  bool replay_order_allows(int a) const;
  bool replay_fits(int a);
  bool replay_finds(int first, int end, int& chosen) const;
  void replay_release(int span);

  static std::size_t idx(int i) { return static_cast<std::size_t>(i); }
  const PlayActivity& activity(int a) const { return model_.activities[idx(a)]; }
  bool begun(int a) const { return stage_[idx(a)] >= Stage::kRunning; }
  bool over(int a) const { return stage_[idx(a)] >= Stage::kDone; }

  const PlayModel& model_;
  const PlayTables tables_;
  const int count_;
  Luck luck_;
  int now_ = 0;
  int unfinished_ = 0;
  std::size_t clock_next_ = 0;
  std::vector<std::uint64_t> events_, agenda_;
  std::vector<std::uint64_t> queued_;

  std::vector<Stage> stage_;
  std::vector<Block> block_;
  std::vector<int> missing_, end_missing_, ready_at_, end_floor_, way_, over_by_;
  std::vector<int> quality_by_, safety_by_, end_quality_by_, end_safety_by_;  ///< longest waits, as
                                                                              ///< clock times
  std::vector<int> call_next_, call_left_;  ///< call_left_: seconds of work left while the hand is
                                            ///< up
  std::vector<char> timed_out_;
  std::vector<int> free_, held_;  ///< [resource] free now; taken by spans
  std::vector<int> reserved_;     ///< [resource] windows called and not begun that want it
  std::vector<int> free_hands_, free_busy_;  ///< [cook]
  std::vector<int> called_, in_window_, hands_running_;
  std::vector<std::size_t> first_hand_, first_of_cook_, first_user_, order_first_;
  std::vector<int> span_way_;            ///< [span] way it holds; -1 closed, kHoldsNothing open
  std::vector<char> span_odd_;           ///< [span] held out of planned order
  std::vector<int> held_out_of_order_;   ///< [island] spans
  std::vector<std::size_t> order_over_;  ///< [island] so much of its planned order is over
  std::vector<OvenState> ovens_;
  std::vector<int> waiting_windows_, call_queue_, unsafe_;
  std::vector<char> given_up_;     ///< [cook]
  std::vector<char> unsafe_cook_;  ///< [cook] a safety fault
  // the safety replay's own state
  std::vector<int> replay_held_, replay_way_;
  std::vector<Stage> replay_gone_;
  std::vector<char> replay_blocked_;  ///< [cook + 1]
  std::vector<char> replay_odd_;      ///< [span]
  int replay_odd_count_ = 0;
  struct ReplayOven {
    int trays = 0, used = 0, setting = 0;
  };
  std::vector<ReplayOven> replay_ovens_;
  std::vector<int> capacity_now_;
  Run run_;
};

}  // namespace timeplan
