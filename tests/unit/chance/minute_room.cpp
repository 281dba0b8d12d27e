#include "minute_room.h"

#include <algorithm>
#include <optional>
#include <tuple>

#include "timeplan/chance/play_tables.h"

namespace minute_room {
namespace {

using timeplan::kNever;
using timeplan::PlayActivity;
using timeplan::PlaySpan;

struct Knob {
  int setting = 0;
  int ready = 0;
};

class Room {
 public:
  Room(const timeplan::PlayModel& model, const std::vector<int>& length)
      : m_(model), length_(length) {
    const std::size_t n = m_.activities.size();
    result_.start.assign(n, -1);
    result_.end.assign(n, -1);
    for (std::size_t i = 0; i < n; ++i) {
      clock_bound_.push_back(!window(i) && timeplan::could_start_earlier(m_, static_cast<int>(i)));
      tray_.push_back(std::find_if(m_.spans.begin(), m_.spans.end(), [&](const PlaySpan& s) {
        return s.opens == static_cast<int>(i);
      }));
    }
    for (const auto& oven : m_.ovens) knobs_.push_back({oven.opening, 0});
  }

  Result play(int longest) {
    for (t_ = 0; t_ < longest; ++t_) {
      while (start_one()) {
      }
      for (std::size_t o = 0; o < knobs_.size(); ++o) turn(o);
      bool done = true;
      for (std::size_t i = 0; i < m_.activities.size(); ++i)
        done = done && started(i) && result_.end[i] <= t_;
      if (done) return result_;
    }
    result_.stalled = true;
    return result_;
  }

 private:
  const PlayActivity& act(std::size_t i) const { return m_.activities[i]; }
  bool window(std::size_t i) const { return act(i).window != timeplan::PlayWindow::kNone; }
  bool started(std::size_t i) const { return result_.start[i] >= 0; }
  bool running(std::size_t i) const { return started(i) && result_.end[i] > t_; }
  bool has_tray(std::size_t i) const { return tray_[i] != m_.spans.end(); }

  std::optional<int> happened(const timeplan::PlayWait& w) const {
    const auto from = static_cast<std::size_t>(w.from);
    if (!started(from) || (w.from_end && result_.end[from] > t_)) return std::nullopt;
    return w.from_end ? result_.end[from] : result_.start[from];
  }
  bool ready(std::size_t i) const {
    if (t_ < act(i).earliest || (clock_bound_[i] && t_ < act(i).planned_start)) return false;
    return std::all_of(m_.waits.begin(), m_.waits.end(), [&](const timeplan::PlayWait& w) {
      if (w.to != static_cast<int>(i)) return true;
      const auto h = happened(w);
      return h && t_ >= *h + w.least;
    });
  }
  int deadline(std::size_t i) const {
    int by = kNever;
    for (const auto& w : m_.waits)
      if (w.to == static_cast<int>(i) && w.most != kNever && happened(w))
        by = std::min(by, *happened(w) + w.most);
    return by;
  }
  bool urgent(std::size_t i) const {
    return ready(i) &&
           (act(i).closing || (deadline(i) != kNever && deadline(i) <= t_ + m_.urgent_within));
  }
  auto key(std::size_t i) const {
    if (window(i)) return std::tuple(1, act(i).planned_start, -1, i);
    if (urgent(i)) return std::tuple(0, deadline(i) == kNever ? t_ : deadline(i), act(i).cook, i);
    return std::tuple(2, act(i).planned_start, act(i).cook, i);
  }

  bool start_one() {
    std::vector<std::size_t> left;
    for (std::size_t i = 0; i < m_.activities.size(); ++i)
      if (!started(i)) left.push_back(i);
    std::sort(left.begin(), left.end(),
              [&](std::size_t x, std::size_t y) { return key(x) < key(y); });
    for (const std::size_t i : left) {
      if (window(i) ? !window_may_start(i) : !may_start(i)) continue;
      result_.start[i] = t_;
      result_.end[i] = t_ + length_[i];
      if (deadline(i) != kNever && t_ > deadline(i)) result_.fault_minutes += t_ - deadline(i);
      if (window(i))
        for (std::size_t b = 0; b < m_.activities.size(); ++b)
          if (running(b) && act(b).attention > 0 && !act(b).hands_on) result_.end[b] += length_[i];
      return true;
    }
    return false;
  }

  bool window_may_start(std::size_t w) const {
    if (t_ < act(w).planned_start) return false;
    for (std::size_t b = 0; b < m_.activities.size(); ++b)
      if (running(b) && act(b).hands_on) return false;
    return true;
  }

  bool may_start(std::size_t i) const {
    if (!ready(i)) return false;
    for (std::size_t w = 0; w < m_.activities.size(); ++w) {
      if (!window(w) || act(i).attention == 0) continue;
      if (running(w) || (!started(w) && t_ >= act(w).planned_start && !urgent(i))) return false;
    }
    return !(act(i).hands_on && !urgent(i) && held_back(i)) && hands_and_things(i) &&
           (!has_tray(i) || tray_may_enter(i));
  }

  bool held_back(std::size_t i) const {
    for (std::size_t b = 0; b < m_.activities.size(); ++b) {
      if (!act(b).hands_on || act(b).cook != act(i).cook || started(b) ||
          act(b).planned_start >= act(i).planned_start)
        continue;
      if (!(act(b).closing && !ready(b) && t_ > act(b).planned_start + m_.patience_own))
        return true;
    }
    return false;
  }

  bool hands_and_things(std::size_t i) const {
    int attention = act(i).attention;
    for (std::size_t b = 0; b < m_.activities.size(); ++b)
      if (running(b) && act(b).cook == act(i).cook) attention += act(b).attention;
    if (attention > 10) return false;
    if (act(i).ways.empty()) return true;
    for (const auto& use : act(i).ways.front().uses) {
      int used = use.amount;
      for (std::size_t b = 0; b < m_.activities.size(); ++b)
        if (running(b) && !act(b).ways.empty())
          for (const auto& other : act(b).ways.front().uses)
            used += other.resource == use.resource ? other.amount : 0;
      if (used > m_.resources[static_cast<std::size_t>(use.resource)].capacity) return false;
    }
    return true;
  }

  bool tray_may_enter(std::size_t i) const {
    const PlaySpan& tray = *tray_[i];
    const Knob& knob = knobs_[static_cast<std::size_t>(tray.oven)];
    if (knob.setting != tray.setting || t_ < knob.ready) return false;
    int used = tray.twelfths;
    bool empty = true, overtakes = false;
    for (std::size_t b = 0; b < m_.activities.size(); ++b) {
      if (!has_tray(b) || tray_[b]->oven != tray.oven || b == i) continue;
      if (running(b)) used += tray_[b]->twelfths;
      empty = empty && !running(b);
      const bool earlier = !started(b) && tray_[b]->setting != tray.setting &&
                           act(b).planned_start < act(i).planned_start;
      overtakes = overtakes || (earlier && !late(b));
    }
    return used <= m_.ovens[static_cast<std::size_t>(tray.oven)].twelfths && (empty || !overtakes);
  }
  bool late(std::size_t i) const {
    return t_ >= act(i).planned_start + m_.patience_oven && !ready(i);
  }

  void turn(std::size_t o) {
    Knob& knob = knobs_[o];
    if (t_ < knob.ready) return;
    std::vector<std::size_t> left;
    bool any_ready = false;
    for (std::size_t b = 0; b < m_.activities.size(); ++b) {
      if (!has_tray(b) || tray_[b]->oven != static_cast<int>(o)) continue;
      if (running(b)) return;
      if (started(b)) continue;
      left.push_back(b);
      any_ready = any_ready || ready(b);
    }
    std::sort(left.begin(), left.end(), [&](std::size_t x, std::size_t y) {
      return std::tuple(act(x).planned_start, x) < std::tuple(act(y).planned_start, y);
    });
    const auto pick = std::find_if(left.begin(), left.end(),
                                   [&](std::size_t b) { return !any_ready || !late(b); });
    if (pick == left.end() || tray_[*pick]->setting == knob.setting) return;
    const auto& oven = m_.ovens[o];
    knob.ready = t_ + oven.change[static_cast<std::size_t>(knob.setting * oven.settings +
                                                           tray_[*pick]->setting)];
    knob.setting = tray_[*pick]->setting;
  }

  const timeplan::PlayModel& m_;
  const std::vector<int>& length_;
  std::vector<char> clock_bound_;
  std::vector<std::vector<PlaySpan>::const_iterator> tray_;
  std::vector<Knob> knobs_;
  Result result_;
  int t_ = 0;
};

}  // namespace

Result play(const timeplan::PlayModel& model, const std::vector<int>& length, int longest) {
  return Room(model, length).play(longest);
}

}  // namespace minute_room
