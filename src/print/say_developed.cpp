#include "print/say_developed.h"

#include <cmath>

#include <fmt/format.h>

#include "nutrition/label.h"
#include "print/paper.h"
#include "print/say_label.h"

namespace print {
namespace {

using namespace nutrition;

std::string grams(double value) {
  return fmt::format("{:.{}f} g", value, value < 10 && value != std::round(value) ? 1 : 0);
}

std::string goal_words(const Goal& goal, double amount) {
  return fmt::format("{} {} {:.4g} {} {}", name_of(goal.of), goal.at_most ? "at most" : "at least",
                     amount, unit_of(goal.of),
                     goal.per == GoalPer::kPortion ? "a portion" : "in 100 g");
}

void say_changes(std::string& out, const DevelopAsked& asked, const Developed& developed) {
  if (developed.changes.empty()) {
    out += "Nothing needs to change: the dish reaches it as it is.\n";
    return;
  }
  out += developed.proved
             ? "The smallest change that does it:\n"
             : "A change that does it (a smaller one may exist; the search was stopped):\n";
  for (const Change& change : developed.changes) {
    const std::string name = tame(asked.dish.ingredients[change.ingredient].name);
    if (!change.instead.empty())
      out += fmt::format("  {} of {} instead of {} of {}\n", grams(change.to), change.instead,
                         grams(change.from), name);
    else if (change.to == 0)
      out += fmt::format("  leave out the {} ({})\n", name, grams(change.from));
    else
      out += fmt::format("  {}: {} instead of {}\n", name, grams(change.to), grams(change.from));
  }
  out += "\n";
  for (const Goal& goal : asked.goals) {
    const Figure before = reached(goal, developed.before), after = reached(goal, developed.after);
    out += fmt::format("  {}: {:.4g} before, {:.4g} after\n", goal_words(goal, goal.amount),
                       before.most.value_or(before.amount),
                       goal.at_most ? after.most.value_or(after.amount) : after.amount);
  }
}

void say_stops(std::string& out, const DevelopAsked& asked, const Developed& developed) {
  if (!developed.proved) {
    out +=
        "No change was found; one may exist, the search was stopped. Give it more time, or allow "
        "more.\n";
    return;
  }
  out += "No change within these bounds does it.\n";
  if (developed.stops.empty()) out += "Not even giving up any one of them would be enough.\n";
  for (const Stop& stop : developed.stops) {
    switch (stop.kind) {
      case Stop::Kind::kLeast:
        out += fmt::format("  It would do with {} of {} (the least allowed is {}).\n",
                           grams(stop.needed), tame(asked.dish.ingredients[stop.index].name),
                           grams(stop.bound));
        break;
      case Stop::Kind::kMost:
        out += fmt::format("  It would do with {} of {} (the most allowed is {}).\n",
                           grams(stop.needed), tame(asked.dish.ingredients[stop.index].name),
                           grams(stop.bound));
        break;
      case Stop::Kind::kRatio: {
        const RatioBound& ratio = asked.ratios[stop.index];
        out += fmt::format("  It would do with {} at {:.3g} (allowed is {:.3g} to {:.3g}).\n",
                           tame(ratio.name), stop.needed, ratio.least, ratio.most);
        break;
      }
      case Stop::Kind::kGoal:
        out += fmt::format("  The nearest that can be reached is {}.\n",
                           goal_words(asked.goals[stop.index], stop.needed));
        break;
    }
  }
}

}  // namespace

std::string say_developed(const DevelopAsked& asked, const Developed& developed) {
  std::string out = tame(developed.before.dish) + "\n\n";
  if (developed.possible)
    say_changes(out, asked, developed);
  else
    say_stops(out, asked, developed);
  for (const Line& line : developed.before.lines) {
    if (line.to_taste) out += fmt::format("Not counted: {}, to taste.\n", tame(line.name));
  }
  if (asked.ratios.empty())
    out +=
        "No ratio was asked to hold, so whether it still sets, rises or rolls is yours to judge.\n";
  return out + "Cook it and taste it before a class does.\n\n" + nutrition_cautions();
}

}  // namespace print
