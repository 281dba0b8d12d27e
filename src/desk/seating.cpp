#include "desk/seating.h"

#include <algorithm>
#include <map>
#include <optional>
#include <set>

#include "base/text.h"

namespace desk {
namespace {

class Seater {
 public:
  Seater(const Class& group, const kitchen::Room& room, const SeatingWish& wish)
      : group_(group), room_(room), wish_(wish) {
    for (std::size_t i = 0; i < group.pupils.size(); ++i) {
      const std::string& name = group.pupils[i].name;
      if (std::find(wish.away.begin(), wish.away.end(), name) == wish.away.end())
        open_.push_back(i);
    }
    taken_.assign(room.places.size(), 0);
  }

  Seating seat() {
    keep_seats();
    always_together();
    fill_seats();
    form_seats();
    place_seats();
    std::stable_sort(out_.seats.begin(), out_.seats.end(),
                     [](const Seat& a, const Seat& b) { return a.place < b.place; });
    return std::move(out_);
  }

 private:
  const Class& group_;
  const kitchen::Room& room_;
  const SeatingWish& wish_;
  std::vector<std::size_t> open_;  // pupils without a cook, in the order of the class
  std::vector<int> taken_;         // cooks at each place
  std::vector<Seat> loose_;        // cooks without a place
  Seating out_;

  const Pupil* find(const std::string& name) const {
    for (const Pupil& pupil : group_.pupils) {
      if (pupil.name == name) return &pupil;
    }
    return nullptr;
  }
  bool take(const std::string& name) {
    const auto at = std::find_if(open_.begin(), open_.end(),
                                 [&](std::size_t i) { return group_.pupils[i].name == name; });
    if (at == open_.end()) return false;
    open_.erase(at);
    return true;
  }
  static bool names(const std::pair<std::string, std::string>& pair, const std::string& a,
                    const std::string& b) {
    return (pair.first == a && pair.second == b) || (pair.first == b && pair.second == a);
  }
  bool apart(const std::string& a, const std::string& b) const {
    return std::any_of(group_.never_together.begin(), group_.never_together.end(),
                       [&](const auto& pair) { return names(pair, a, b); });
  }
  bool may_join(const Seat& seat, const std::string& name) const {
    return static_cast<int>(seat.pupils.size()) < wish_.together &&
           std::none_of(seat.pupils.begin(), seat.pupils.end(),
                        [&](const std::string& other) { return apart(other, name); });
  }
  bool has(const std::string& name, Limit limit) const {
    const Pupil* pupil = find(name);
    return pupil != nullptr &&
           std::find(pupil->limits.begin(), pupil->limits.end(), limit) != pupil->limits.end();
  }
  bool has(const Seat& seat, Limit limit) const {
    return std::any_of(seat.pupils.begin(), seat.pupils.end(),
                       [&](const std::string& name) { return has(name, limit); });
  }

  void keep_seats() {
    for (const Seat& old : wish_.keep) {
      Seat seat{{}, old.place};
      for (const std::string& name : old.pupils) {
        if (may_join(seat, name) && take(name)) seat.pupils.push_back(name);
      }
      const bool place_there = old.place >= 0 && old.place < static_cast<int>(taken_.size());
      if (seat.pupils.empty()) continue;
      if (!place_there) {
        loose_.push_back(std::move(seat));
        continue;
      }
      ++taken_[static_cast<std::size_t>(old.place)];
      out_.seats.push_back(std::move(seat));
    }
  }

  // A rule wins over an old seat only where the two are not seated yet.
  void always_together() {
    if (wish_.together < 2) return;
    for (const auto& [a, b] : group_.always_together) {
      if (apart(a, b)) continue;
      if (Seat* with = seat_of(a); with != nullptr) {
        if (may_join(*with, b) && take(b)) with->pupils.push_back(b);
      } else if (Seat* other = seat_of(b); other != nullptr) {
        if (may_join(*other, a) && take(a)) other->pupils.push_back(a);
      } else if (is_open(a) && is_open(b)) {
        take(a);
        take(b);
        loose_.push_back({{a, b}, -1});
      }
    }
  }
  bool is_open(const std::string& name) const {
    return std::any_of(open_.begin(), open_.end(),
                       [&](std::size_t i) { return group_.pupils[i].name == name; });
  }
  Seat* seat_of(const std::string& name) {
    for (std::vector<Seat>* seats : {&out_.seats, &loose_}) {
      for (Seat& seat : *seats) {
        if (std::find(seat.pupils.begin(), seat.pupils.end(), name) != seat.pupils.end())
          return &seat;
      }
    }
    return nullptr;
  }

  // New and left-over pupils join cooks that have become too small.
  void fill_seats() {
    for (std::vector<Seat>* seats : {&out_.seats, &loose_}) {
      for (Seat& seat : *seats) {
        for (std::size_t i = 0; i < open_.size();) {
          const std::string& name = group_.pupils[open_[i]].name;
          if (!may_join(seat, name)) {
            ++i;
            continue;
          }
          seat.pupils.push_back(name);
          open_.erase(open_.begin() + static_cast<std::ptrdiff_t>(i));
        }
      }
    }
  }

  void form_seats() {
    while (!open_.empty()) {
      Seat seat{{group_.pupils[open_.front()].name}, -1};
      open_.erase(open_.begin());
      for (std::size_t i = 0; i < open_.size();) {
        const std::string& name = group_.pupils[open_[i]].name;
        if (static_cast<int>(seat.pupils.size()) >= wish_.together) break;
        if (!may_join(seat, name)) {
          ++i;
          continue;
        }
        seat.pupils.push_back(name);
        open_.erase(open_.begin() + static_cast<std::ptrdiff_t>(i));
      }
      loose_.push_back(std::move(seat));
    }
    join_the_single();
  }

  // One left over makes a pair a three, as a teacher would; so does one who may not be alone.
  void join_the_single() {
    if (wish_.together < 2) {
      for (const Seat& seat : loose_) note_alone(seat);
      return;
    }
    for (std::size_t i = 0; i < loose_.size();) {
      if (loose_[i].pupils.size() != 1) {
        ++i;
        continue;
      }
      const std::string name = loose_[i].pupils.front();
      Seat* best = nullptr;
      for (std::vector<Seat>* seats : {&loose_, &out_.seats}) {
        for (Seat& seat : *seats) {
          if (&seat == &loose_[i] || seat.pupils.size() >= 3) continue;
          if (std::any_of(seat.pupils.begin(), seat.pupils.end(),
                          [&](const std::string& other) { return apart(other, name); }))
            continue;
          if (best == nullptr || seat.pupils.size() < best->pupils.size()) best = &seat;
        }
      }
      if (best == nullptr) {
        out_.notes.push_back(
            base::say(name, " cooks alone: the seating rules leave nobody to join."));
        ++i;
        continue;
      }
      best->pupils.push_back(name);
      loose_.erase(loose_.begin() + static_cast<std::ptrdiff_t>(i));
    }
  }
  void note_alone(const Seat& seat) {
    if (has(seat, Limit::kNotAtHobAlone))
      out_.notes.push_back(base::say(
          seat.pupils.front(), " may not be at the hob alone, and everybody works alone here."));
  }

  void place_seats() {
    std::stable_sort(loose_.begin(), loose_.end(),
                     [&](const Seat& a, const Seat& b) { return rank(a) < rank(b); });
    for (Seat& seat : loose_) {
      seat.place = best_place(seat);
      if (taken_[static_cast<std::size_t>(seat.place)]++ > 0) out_.shares_places = true;
      out_.seats.push_back(std::move(seat));
    }
    for (const int cooks : taken_) out_.shares_places = out_.shares_places || cooks > 1;
    if (out_.shares_places)
      out_.notes.push_back(base::say("There are ", out_.seats.size(), " cooks and ",
                                     room_.places.size(), " places: some share a place."));
  }
  // Those who need a certain place choose first.
  int rank(const Seat& seat) const {
    return has(seat, Limit::kLowBench) ? 0 : has(seat, Limit::kNearTeacher) ? 1 : 2;
  }
  static bool low(const kitchen::Place& place) {
    return base::lower(place.name).find("low") != std::string::npos;
  }
  int best_place(const Seat& seat) {
    const bool needs_low = has(seat, Limit::kLowBench);
    std::optional<std::size_t> best;
    long best_cost = 0;
    for (std::size_t p = 0; p < room_.places.size(); ++p) {
      long cost = taken_[p] * 1000L + static_cast<long>(p);
      if (low(room_.places[p]) != needs_low) cost += 300;
      // Beside somebody of the same bay they must be kept from is worse than the far end.
      for (const Seat& other : out_.seats) {
        if (room_.places[static_cast<std::size_t>(other.place)].bay != room_.places[p].bay)
          continue;
        for (const std::string& a : seat.pupils) {
          for (const std::string& b : other.pupils) {
            if (apart(a, b)) cost += 500;
          }
        }
      }
      if (!best || cost < best_cost) {
        best = p;
        best_cost = cost;
      }
    }
    if (needs_low && best && !low(room_.places[*best]))
      out_.notes.push_back(base::say(cook_name(seat), ": no free place is named a low bench."));
    return static_cast<int>(best.value_or(0));
  }
};

}  // namespace

Seating seat(const Class& group, const kitchen::Room& room, const SeatingWish& wish) {
  return Seater(group, room, wish).seat();
}

std::string cook_name(const Seat& seat) { return base::joined(seat.pupils); }

}  // namespace desk
