// What other cooks bring: to the place, the kit, the oil, the bay and the air. Kit is treated as by
// rule K2: a use by a dish that brings it matters to a later use by a cook who must not have it.
#include <algorithm>
#include <map>

#include "base/folding.h"
#include "base/text.h"
#include "safety/conflict_parts.h"

namespace safety {
namespace {

using base::say;
using Kind = Remedy::Kind;

/// What several dishes of several cooks bring together.
struct Brought {
  Stated stated = Stated::kNotListed;
  std::vector<int> dishes, cooks;
  std::vector<Stated> of_dishes;  ///< as dishes

  void add(Stated more, int dish, int cook) {
    stated = stronger(stated, more);
    const auto known = std::find(dishes.begin(), dishes.end(), dish);
    if (known == dishes.end()) {
      dishes.push_back(dish);
      of_dishes.push_back(more);
    } else {
      Stated& of = of_dishes[static_cast<std::size_t>(known - dishes.begin())];
      of = stronger(of, more);
    }
    if (std::find(cooks.begin(), cooks.end(), cook) == cooks.end()) cooks.push_back(cook);
  }
  bool any() const { return !dishes.empty(); }
};

class Around {
 public:
  Around(const ConflictsAsked& asked, const CookNeeds& cook, const Need& need,
         std::vector<Conflict>& out)
      : asked_(asked), lesson_(asked.lesson), cook_(cook.cook), need_(need), out_(out) {}

  void find() {
    if (need_.reach == Reach::kRoom) find_in_room();
    if (of_health(need_) || need_.reach != Reach::kEat) find_at_place();
    find_on_kit();
    find_in_oil();
    if (!of_health(need_)) return;
    find_in_air();
    find_in_bay();
  }

 private:
  Stated brings(int dish) {
    const auto known = brings_.find(dish);
    if (known != brings_.end()) return known->second;
    const Stated stated = strongest(findings(dish_at(lesson_, dish), need_, asked_.evidence));
    brings_.emplace(dish, stated);
    return stated;
  }

  Stated brings(int dish, int step) {
    return strongest(findings_of_step(dish_at(lesson_, dish), step, need_, asked_.evidence));
  }

  /// Calls `see(cook, dish)` for each dish of another cook that brings it.
  template <class See>
  void each_other(const See& see) {
    for (std::size_t c = 0; c < lesson_.cooks.size(); ++c) {
      if (static_cast<int>(c) == cook_) continue;
      for (const int d : lesson_.cooks[c].dishes) {
        if (may_be_there(brings(d))) see(static_cast<int>(c), d);
      }
    }
  }

  void report(Why why, const Brought& what, std::string thing, std::vector<Remedy> remedies,
              Seriousness seriousness = Seriousness::kKeepApart) {
    if (!what.any()) return;
    Conflict c;
    c.cook = cook_;
    c.need = need_;
    c.why = why;
    c.seriousness = seriousness;
    c.stated = what.stated;
    c.dishes = what.dishes;
    c.of_dishes = what.of_dishes;
    c.others = what.cooks;
    c.thing = std::move(thing);
    c.settled_by = std::move(remedies);
    if (why == Why::kNeighbour || why == Why::kSamePlace || why == Why::kAirborne) {
      for (Remedy& each : remedies_by_moving(asked_, c)) c.settled_by.push_back(std::move(each));
    }
    out_.push_back(std::move(c));
  }

  void find_in_room() {
    Brought what;
    each_other([&](int c, int d) { what.add(brings(d), d, c); });
    report(Why::kInTheRoom, what, "",
           {{Kind::kKeepOut, say("Keep ", word(need_),
                                 " out of the whole lesson: other dishes or "
                                 "variants for all, and see what the lesson before left")}},
           what.stated == Stated::kContains ? Seriousness::kStop : Seriousness::kSettle);
  }

  void find_at_place() {
    Brought what;
    each_other([&](int c, int d) {
      if (cook_at(lesson_, c).place == cook_at(lesson_, cook_).place) what.add(brings(d), d, c);
    });
    report(Why::kSamePlace, what, "",
           {{Kind::kFirstInLine,
             "Work there first, on an own board, and keep cloth and tools apart"}});
  }

  // A cook's own use of an item, or nothing.
  bool uses(int cook, const std::string& item) {
    for (const int d : cook_at(lesson_, cook).dishes) {
      for (const kitchen::Step& step : dish_at(lesson_, d).method) {
        if (std::any_of(step.kit.begin(), step.kit.end(),
                        [&](const kitchen::KitNeed& need) { return need.item == item; }))
          return true;
      }
    }
    return false;
  }

  void find_on_kit() {
    for (const kitchen::Kit& kit : lesson_.room.kit) {
      // A rule about eating is about what food lies on, not about what weighs it.
      if (!of_health(need_) && (kit.item == "scales" || kit.item == "kettle")) continue;
      if (!uses(cook_, kit.item)) continue;
      Brought what;
      each_other([&](int c, int d) {
        const auto& method = dish_at(lesson_, d).method;
        for (std::size_t s = 0; s < method.size(); ++s) {
          for (const kitchen::KitNeed& need : method[s].kit) {
            if (need.item != kit.item) continue;
            const Stated stated = brings(d, static_cast<int>(s));
            if (may_be_there(stated)) what.add(stated, d, c);
          }
        }
      });
      report(Why::kSharedKit, what, kit.item, kit_remedies(kit));
    }
  }

  std::vector<Remedy> kit_remedies(const kitchen::Kit& kit) {
    std::vector<Remedy> out;
    if (kit.count > 1)
      out.push_back({Kind::kOwnKit, say("Set one ", kit.item, " aside for ",
                                        cook_at(lesson_, cook_).name, ", clean and marked")});
    out.push_back(
        {Kind::kFirstInLine, say("First to use the ", kit.item, ", or after a full clean of ",
                                 base::minutes_text(kit.full_clean), " (washing up is not one)")});
    return out;
  }

  bool fries(int dish) {
    const auto& method = dish_at(lesson_, dish).method;
    return std::any_of(method.begin(), method.end(), [](const kitchen::Step& step) {
      return step.hazard == kitchen::Hazard::kHotOil;
    });
  }

  void find_in_oil() {
    const auto& own = cook_at(lesson_, cook_).dishes;
    if (std::none_of(own.begin(), own.end(), [&](int d) { return fries(d); })) return;
    Brought what;
    each_other([&](int c, int d) {
      if (kitchen::bay_of(lesson_, c) == kitchen::bay_of(lesson_, cook_) && fries(d))
        what.add(brings(d), d, c);
    });
    report(Why::kSharedOil, what, "frying oil",
           {{Kind::kOwnKit, "Own pan and fresh oil; never pass oil, spoon or tongs on"}});
  }

  void find_in_air() {
    std::map<std::string, Brought> by_thing;
    each_other([&](int c, int d) {
      const bool near = kitchen::bay_of(lesson_, c) == kitchen::bay_of(lesson_, cook_);
      if (!near && need_.reach != Reach::kRoom) return;
      const kitchen::Dish& dish = dish_at(lesson_, d);
      for (std::size_t s = 0; s < dish.method.size(); ++s) {
        const std::string how = flies(dish, static_cast<int>(s), need_, asked_.evidence);
        if (!how.empty()) by_thing[how].add(brings(d, static_cast<int>(s)), d, c);
      }
    });
    for (const auto& [thing, what] : by_thing) {
      report(
          Why::kAirborne, what, thing,
          {{Kind::kKeepOut, "Extraction on, food of the cook covered, no sifting or steam nearby"}},
          need_.reach == Reach::kRoom ? Seriousness::kStop : Seriousness::kKeepApart);
    }
  }

  void find_in_bay() {
    Brought what;
    each_other([&](int c, int d) {
      if (cook_at(lesson_, c).place != cook_at(lesson_, cook_).place &&
          kitchen::bay_of(lesson_, c) == kitchen::bay_of(lesson_, cook_))
        what.add(brings(d), d, c);
    });
    report(Why::kNeighbour, what, "",
           {{Kind::kOwnKit, "Own cloths and bowl, first at the sink, hands washed with soap"}});
  }

  const ConflictsAsked& asked_;
  const kitchen::Lesson& lesson_;
  int cook_;
  const Need& need_;
  std::vector<Conflict>& out_;
  std::map<int, Stated> brings_;
};

}  // namespace

void find_around(const ConflictsAsked& asked, const CookNeeds& cook, std::vector<Conflict>& out) {
  for (const Need& need : cook.needs) Around(asked, cook, need, out).find();
}

}  // namespace safety
