// The play model laid flat for two thousand runs: rows of indices instead of vectors of vectors,
// planned orders sorted once, and the left-shift test of rule D2 done once for the plan. Internal
// to the room's play.
#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "timeplan/chance/play_model.h"

namespace timeplan {

/// Lists of different lengths in one array.
template <class T>
class Rows {
 public:
  Rows() = default;
  explicit Rows(const std::vector<std::vector<T>>& lists) {
    for (const auto& list : lists) {
      items_.insert(items_.end(), list.begin(), list.end());
      first_.push_back(static_cast<int>(items_.size()));
    }
  }
  std::span<const T> operator[](int row) const {
    const auto begin = static_cast<std::size_t>(first_[static_cast<std::size_t>(row)]);
    const auto end = static_cast<std::size_t>(first_[static_cast<std::size_t>(row) + 1]);
    return std::span<const T>(items_.data() + begin, end - begin);
  }
  int rows() const { return static_cast<int>(first_.size()) - 1; }

 private:
  std::vector<int> first_{0};
  std::vector<T> items_;
};

enum class PlayEvent : std::uint8_t {
  kEnd,
  kReady,
  kUrgent,
  kCook,
  kOven,
  kCall,
  kHelpEnd,
  kOverdone,
  kGiveUp,
  kBreakStart,
  kBreakEnd,
  kResource,
  kPeople,
  kPatience
};

/// Something the clock does in every run alike.
struct ClockEvent {
  int at = 0;
  PlayEvent what = PlayEvent::kOven;
  int id = 0;
  int by = 0;
};

/// A span's opening or closing in planned order, for the check that nobody ends up waiting in a
/// ring (rule D11).
struct OrderStep {
  int activity = 0;
  bool end = false;
};

struct PlayTables {
  Rows<PlayWait> after_start, after_end;            ///< [activity] waits from it
  Rows<int> waits_into;                             ///< [activity] activities it waits for
  std::vector<int> missing, end_missing;            ///< waits to its start and end that count
  std::vector<int> floor;                           ///< earliest start by the clock
  std::vector<char> clock_bound;                    ///< rule D2
  Rows<int> opens, closes_at_start, closes_at_end;  ///< [activity] spans
  Rows<int> shut_out_by;                            ///< [activity] spans
  Rows<PlayUse> way_uses;                           ///< [way]
  std::vector<int> way_end_by;
  std::vector<int> first_way, first_span_way;  ///< ways of activity a: first_way[a] to first_way[a
                                               ///< + 1]
  Rows<int> of_cook, hands_of_cook;            ///< [cook] activities by planned start
  Rows<int> users;                 ///< [resource] activities that may take it, by planned start
  Rows<int> trays;                 ///< [oven] spans by planned start
  Rows<int> orders_of;             ///< [activity] orders it is in
  Rows<int> breaks_of;             ///< [cook]
  Rows<int> windows_of;            ///< [cook] hands-off windows to mind; empty if nobody minds
  Rows<int> group;                 ///< [together] members
  Rows<int> voids;                 ///< [activity] activities not needed once it has started
  std::vector<int> elastic_waits;  ///< [activity] how many of its waits are for that elastic step's
                                   ///< end
  std::vector<char> held_resource;  ///< [resource] spans hold it, and there may not be enough for
                                    ///< all at once
  std::vector<char> touches_held;   ///< [activity] it uses such a resource or an oven
  std::vector<int> closer;          ///< [activity] elastic: the step that ends it, or -1
  std::vector<int> elastic;         ///< [activity] the elastic step it ends, or -1
  std::vector<int> base_capacity;   ///< [resource]
  std::vector<ClockEvent> clock;    ///< sorted
  std::vector<int> island;  ///< [cook] cooks of different islands share nothing that is held or
                            ///< ordered
  Rows<OrderStep> planned_order;  ///< [island] of activities that touch something spans hold
};

/// Lays a model flat. Throws std::invalid_argument for an index outside the model. O(n^2) for the
/// left-shift test.
PlayTables play_tables(const PlayModel&);

/// Rule D2: would the plan still hold if only `activity` started one grid step earlier?
bool could_start_earlier(const PlayModel&, int activity);

}  // namespace timeplan
