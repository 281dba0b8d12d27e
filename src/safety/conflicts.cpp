#include "safety/conflicts.h"

#include <algorithm>

#include "base/text.h"
#include "safety/conflict_parts.h"

namespace safety {
namespace {

using base::say;

Seriousness of_own_dish(const Need& need, Stated stated) {
  if (stated != Stated::kContains) return Seriousness::kSettle;
  // Whoever may touch but not eat can make it for others, when that is what the family wants.
  if (!of_health(need) && need.reach == Reach::kEat) return Seriousness::kSettle;
  return Seriousness::kStop;
}

std::vector<std::string> dish_names(const kitchen::Lesson& lesson, const std::vector<int>& dishes) {
  std::vector<std::string> out;
  for (const int d : dishes) out.push_back(full_name(dish_at(lesson, d)));
  return out;
}

// "Fruit scones and Tomato soup (not known)": what is in doubt says so.
std::string dishes_words(const kitchen::Lesson& lesson, const Conflict& c) {
  std::vector<std::string> out = dish_names(lesson, c.dishes);
  for (std::size_t i = 0; i < out.size(); ++i) {
    if (c.of_dishes[i] != Stated::kContains) out[i] += say(" (", word(c.of_dishes[i]), ")");
  }
  return base::joined(out);
}

std::string others_words(const kitchen::Lesson& lesson, const std::vector<int>& others) {
  std::vector<std::string> names;
  for (std::size_t i = 0; i < others.size() && i < 3; ++i)
    names.push_back(cook_at(lesson, others[i]).name);
  if (others.size() > 3)
    names.push_back(base::counted(static_cast<long long>(others.size()) - 3, "other", "others"));
  return base::joined(names);
}

// "contain milk", "have milk in doubt: the label says"; of a rule "do not fit no pork".
std::string brings_words(const Conflict& c) {
  const std::string what(word(c.need));
  const bool diet = std::holds_alternative<Diet>(c.need.what);
  std::string of = diet ? "for " + what : what;
  switch (c.stated) {
    case Stated::kContains:
      return diet ? "not " + of : "contains " + of;
    case Stated::kMayContain:
      return "may contain " + of + ", says the label";
    case Stated::kCheckLabel:
      return "check the label " + (diet ? of : "for " + of);
    case Stated::kUnknown:
    case Stated::kNotListed:
      return "not known " + (diet ? of : "for " + of);
  }
  return of;
}

std::string own_dish_words(const kitchen::Lesson& lesson, const Conflict& c) {
  const kitchen::Dish& dish = dish_at(lesson, c.dishes.front());
  std::string out = say(full_name(dish), ": ", brings_words(c));
  if (c.ingredient >= 0)
    out += say(": ", dish.ingredients[static_cast<std::size_t>(c.ingredient)].name);
  if (!c.from.empty()) out += say(" (", c.from, ")");
  if (c.step >= 0)
    out += say(", from ", base::in_quotes(dish.method[static_cast<std::size_t>(c.step)].id), " on");
  return out + ".";
}

}  // namespace

void find_in_own_dishes(const ConflictsAsked& asked, const CookNeeds& cook,
                        std::vector<Conflict>& out) {
  const auto& dishes = cook_at(asked.lesson, cook.cook).dishes;
  for (const Need& need : cook.needs) {
    std::vector<int> with, without;
    for (const int d : dishes) {
      const kitchen::Dish& dish = dish_at(asked.lesson, d);
      const Findings all = findings(dish, need, asked.evidence);
      (all.empty() ? without : with).push_back(d);
      for (const Finding& finding : all) {
        Conflict c;
        c.cook = cook.cook;
        c.need = need;
        c.stated = finding.statement.stated;
        c.seriousness = of_own_dish(need, c.stated);
        c.dishes = {d};
        c.of_dishes = {c.stated};
        c.ingredient = finding.ingredient;
        for (const int s : kitchen::reading_order(dish)) {
          const auto& uses = dish.method[static_cast<std::size_t>(s)].uses;
          if (c.step == -1 && std::find(uses.begin(), uses.end(), c.ingredient) != uses.end())
            c.step = s;
        }
        c.from = finding.statement.from;
        c.settled_by = remedies_in_dish(asked, cook, c);
        out.push_back(std::move(c));
      }
    }
    if (with.empty() || without.empty()) continue;
    Conflict c;
    c.cook = cook.cook;
    c.need = need;
    c.why = Why::kDishBefore;
    c.seriousness = Seriousness::kKeepApart;
    c.dishes = with;
    c.stated = Stated::kNotListed;
    for (const int d : with) {
      c.of_dishes.push_back(strongest(findings(dish_at(asked.lesson, d), need, asked.evidence)));
      c.stated = stronger(c.stated, c.of_dishes.back());
    }
    c.settled_by = {{Remedy::Kind::kFirstInLine,
                     say("Make ", base::joined(dish_names(asked.lesson, without)),
                         " first, or clean down and change board, knife and cloth between")}};
    out.push_back(std::move(c));
  }
}

std::vector<Conflict> conflicts(const ConflictsAsked& asked) {
  std::vector<Conflict> out;
  for (const CookNeeds& cook : asked.needs) {
    find_in_own_dishes(asked, cook, out);
    find_around(asked, cook, out);
  }
  std::stable_sort(out.begin(), out.end(), [](const Conflict& a, const Conflict& b) {
    if (a.seriousness != b.seriousness) return a.seriousness < b.seriousness;
    return a.cook < b.cook;
  });
  return out;
}

std::string full_name(const kitchen::Dish& dish) {
  return dish.variant.empty() ? dish.name : say(dish.name, " (", dish.variant, ")");
}

std::string sentence(const kitchen::Lesson& lesson, const Conflict& c) {
  const std::string dishes = dishes_words(lesson, c);
  const std::string who = others_words(lesson, c.others);
  switch (c.why) {
    case Why::kOwnDish:
      return own_dish_words(lesson, c);
    case Why::kDishBefore:
      return say("The other dish, ", base::joined(dish_names(lesson, c.dishes)), ": ",
                 brings_words(c), ".");
    case Why::kSamePlace:
      return say("The same place is used by ", who, " for ", dishes, ".");
    case Why::kSharedKit:
      return say("Shared kit: ", c.thing, ", used by ", who, " for ", dishes, ".");
    case Why::kSharedOil:
      return say("Frying oil in the same bay: ", who, ", ", dishes, ".");
    case Why::kAirborne:
      return say("In the air: ", c.thing, " from ", dishes, ", made by ", who, ".");
    case Why::kNeighbour:
      return say("The same bay, its sink and cloths: ", who, " with ", dishes, ".");
    case Why::kInTheRoom:
      return say("Not in the room: ", word(c.need), ". Brought by ", dishes, ", made by ", who,
                 ".");
  }
  return {};
}

std::string_view word(Seriousness seriousness) {
  switch (seriousness) {
    case Seriousness::kStop:
      return "change it";
    case Seriousness::kSettle:
      return "settle before the lesson";
    case Seriousness::kKeepApart:
      return "keep apart";
  }
  return {};
}

}  // namespace safety
