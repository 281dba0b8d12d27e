// Rule D2, the left-shift test. It looks at the plan alone: only the grid step before the planned
// start is new to the activity, so only that minute is looked at.
#include <algorithm>

#include "base/index.h"

#include "timeplan/chance/play_tables.h"

namespace timeplan {
namespace {

using base::at;

int planned_end(const PlayActivity& a) { return a.planned_start + a.planned; }

/// What the plan looks like to one activity that wants to start at `minute`.
class Shift {
 public:
  Shift(const PlayModel& model, int id)
      : model_(model),
        id_(id),
        a_(model.activities[at(id)]),
        minute_(a_.planned_start - model.grid) {}

  bool possible() const {
    return minute_ >= a_.earliest && waits_hold() && nobody_calls() && hands_suffice() &&
           orders_hold() && things_suffice() && ovens_allow() && hands_are_clean();
  }

 private:
  bool running(const PlayActivity& b) const {
    return b.planned_start <= minute_ && minute_ < planned_end(b);
  }
  bool held(const PlaySpan& s) const {
    return model_.activities[at(s.opens)].planned_start <= minute_ && minute_ < planned_out(s);
  }
  int planned_out(const PlaySpan& s) const {
    if (s.closes == -1) return kNever;
    const PlayActivity& closes = model_.activities[at(s.closes)];
    return s.closes_at_end ? planned_end(closes) : closes.planned_start;
  }

  bool waits_hold() const {
    return std::all_of(model_.waits.begin(), model_.waits.end(), [&](const PlayWait& w) {
      if (w.to != id_ || w.least < 0) return true;
      const PlayActivity& from = model_.activities[at(w.from)];
      if (a_.together != -1 && from.together == a_.together) return true;
      const int moment = w.from_end ? planned_end(from) : from.planned_start;
      return minute_ + (w.to_end ? a_.planned : 0) >= moment + w.least;
    });
  }

  bool nobody_calls() const {
    const auto hears = [&](const std::vector<int>& cooks) {
      return std::count(cooks.begin(), cooks.end(), a_.cook) > 0;
    };
    for (const PlayActivity& w : model_.activities)
      if (w.window != PlayWindow::kNone && running(w) && a_.attention > 0 && hears(w.audience))
        return false;
    for (const PlayBreak& b : model_.breaks)
      if (!a_.in_break && b.from <= minute_ && minute_ < b.to && hears(b.cooks)) return false;
    return true;
  }

  bool hands_suffice() const {
    if (a_.cook == -1 || a_.attention == 0) return true;
    const PlayCook& cook = model_.cooks[at(a_.cook)];
    int people = cook.people, attention = a_.attention, busy = a_.busy;
    for (const PlayChange& c : cook.people_changes) people += c.at <= minute_ ? c.by : 0;
    for (std::size_t i = 0; i < model_.activities.size(); ++i) {
      const PlayActivity& b = model_.activities[i];
      if (static_cast<int>(i) == id_ || b.cook != a_.cook || !running(b)) continue;
      attention += b.attention;
      busy += b.busy;
    }
    return attention <= 10 * people && busy <= 2 * people;
  }

  bool orders_hold() const {
    return std::all_of(model_.orders.begin(), model_.orders.end(), [&](const PlayOrder& order) {
      const auto found = std::find(order.activities.begin(), order.activities.end(), id_);
      if (found == order.activities.end()) return true;
      const int own = order.classes[at(static_cast<int>(found - order.activities.begin()))];
      for (std::size_t i = 0; i < order.activities.size(); ++i) {
        const bool meets = order.activities[i] != id_ && (own == -1 || order.classes[i] != own);
        if (meets && running(model_.activities[at(order.activities[i])])) return false;
      }
      return true;
    });
  }

  /// Planned use of a resource in the minute, by all but this activity and the spans it opens.
  int used_by_others(int resource) const {
    const auto sum = [&](const std::vector<PlayWay>& ways) {
      int total = 0;
      if (!ways.empty())
        for (const PlayUse& use : ways.front().uses)
          total += use.resource == resource ? use.amount : 0;
      return total;
    };
    int used = 0;
    for (std::size_t i = 0; i < model_.activities.size(); ++i)
      if (static_cast<int>(i) != id_ && running(model_.activities[i]))
        used += sum(model_.activities[i].ways);
    for (const PlaySpan& s : model_.spans)
      if (s.opens != id_ && held(s)) used += sum(s.ways);
    return used;
  }

  bool things_suffice() const {
    std::vector<PlayUse> wants;
    const auto add = [&](const std::vector<PlayWay>& ways) {
      if (!ways.empty())
        wants.insert(wants.end(), ways.front().uses.begin(), ways.front().uses.end());
    };
    add(a_.ways);
    for (const PlaySpan& s : model_.spans)
      if (s.opens == id_) add(s.ways);
    for (const PlayUse& want : wants) {
      int capacity = model_.resources[at(want.resource)].capacity, own = 0;
      for (const PlayChange& c : model_.resources[at(want.resource)].changes)
        capacity += c.at <= minute_ ? c.by : 0;
      for (const PlayUse& other : wants) own += other.resource == want.resource ? other.amount : 0;
      if (own + used_by_others(want.resource) > capacity) return false;
    }
    return true;
  }

  bool ovens_allow() const {
    return std::all_of(model_.spans.begin(), model_.spans.end(), [&](const PlaySpan& s) {
      return s.opens != id_ || s.oven == -1 || oven_allows(s);
    });
  }

  bool oven_allows(const PlaySpan& tray) const {
    const PlayOven& oven = model_.ovens[at(tray.oven)];
    const auto change = [&](int from, int to) {
      return oven.change[at(from * oven.settings + to)];
    };
    int share = tray.twelfths;
    int since = change(oven.opening, tray.setting);
    for (const PlayBreak& b : model_.breaks)
      if (!b.ovens_stay_on && b.to <= a_.planned_start)
        since = std::max(since, b.to + change(0, tray.setting));
    bool first = true;
    for (const PlaySpan& s : model_.spans) {
      if (&s == &tray || s.oven != tray.oven) continue;
      const int out = planned_out(s);
      if (held(s)) share += s.twelfths;
      if (model_.activities[at(s.opens)].planned_start < a_.planned_start) first = false;
      if (s.setting != tray.setting && out <= a_.planned_start &&
          minute_ < out + change(s.setting, tray.setting))
        return false;
      if (door_shut_by(s)) return false;
    }
    return share <= oven.twelfths && (!first || minute_ >= since);
  }

  bool door_shut_by(const PlaySpan& other) const {
    return std::any_of(
        model_.activities.begin(), model_.activities.end(), [&](const PlayActivity& b) {
          return b.door_shut > 0 && b.door_span != -1 && &model_.spans[at(b.door_span)] == &other &&
                 b.planned_start < minute_ && minute_ < b.planned_start + b.door_shut;
        });
  }

  bool hands_are_clean() const {
    for (const PlaySpan& s : model_.spans) {
      const bool shut_out = std::count(s.shuts_out.begin(), s.shuts_out.end(), id_) > 0;
      if (shut_out && held(s)) return false;
      if (s.opens != id_) continue;
      for (const int other : s.shuts_out)
        if (running(model_.activities[at(other)])) return false;
    }
    return true;
  }

  const PlayModel& model_;
  int id_;
  const PlayActivity& a_;
  int minute_;
};

}  // namespace

bool could_start_earlier(const PlayModel& model, int activity) {
  return Shift(model, activity).possible();
}

}  // namespace timeplan
