#include "timeplan/verify/attention.h"

#include <algorithm>

#include <fmt/format.h>

#include "timeplan/verify/checks.h"
#include "timeplan/verify/lengths.h"
#include "timeplan/verify/sweep.h"

namespace timeplan::judge {

namespace {

constexpr int kPerson = 10;  // tenths of one person
constexpr int kShares = 2;   // β of one person

int share_of(int tenths) { return tenths >= 8 ? 2 : tenths >= 5 ? 1 : 0; }

Demand for_people(int tenths, int people) { return {tenths * people, share_of(tenths) * people}; }

// Uses of the cook by tasks, in tenths or in shares.
std::vector<Use> uses_of(const Case& c, int cook, int Demand::*figure) {
  std::vector<Use> uses;
  for (const int t : c.of_cook(cook)) {
    const int amount = demand(c, t).*figure;
    if (amount > 0) uses.push_back({when(c.task(t)), amount, {t}});
  }
  return uses;
}

std::string busy_message(const Case& c, int cook, const Excess& e, int capacity) {
  std::string list;
  for (const int t : e.tasks) list += (list.empty() ? "" : "; ") + c.what(t);
  return fmt::format("{} would need {} tenths of attention at {} and have {}: {}.",
                     c.cook(cook).name, e.amount, c.at(e.span), capacity, list);
}

void check_sum(Case& c, int cook, int Demand::*figure, int per_person, const char* rule) {
  const auto& who = c.cook(cook);
  const int capacity = per_person * who.people;
  const auto uses = uses_of(c, cook, figure);
  const auto too_much = over(uses, capacity);
  for (const auto& e : too_much) {
    const auto text = std::string_view(rule) == "A2"
                          ? busy_message(c, cook, e, capacity)
                          : fmt::format(
                                "{}: too many tasks at {} that each keep a person; {} "
                                "people cannot share them out.",
                                who.name, c.at(e.span), who.people);
    c.report(rule, text, e.tasks, e.span);
  }
  // With somebody away the same sums must fit into one person less.
  auto with_holes = uses;
  for (const auto& hole : who.away) with_holes.push_back({{hole.from, hole.to}, per_person, {}});
  for (const auto& e : over(with_holes, capacity)) {
    const bool explained = std::any_of(too_much.begin(), too_much.end(), [&](const Excess& other) {
      return other.span.from <= e.span.from && e.span.to <= other.span.to;
    });
    if (explained) continue;
    c.report("Y9",
             fmt::format("{}: one of them is away and the tasks at {} need everybody.", who.name,
                         c.at(e.span)),
             e.tasks, e.span);
  }
}

void check_scale(Case& c) {
  constexpr int kAllowed[] = {0, 1, 2, 5, 8, 10};
  for (const auto& dish : c.lesson.dishes) {
    for (const auto& step : dish.method) {
      const int a = kitchen::tenths(step.attention);
      if (std::find(std::begin(kAllowed), std::end(kAllowed), a) != std::end(kAllowed)) continue;
      c.report("A1",
               fmt::format("\"{}\" of the {} asks for {} tenths of attention; only 0, 1, 2, "
                           "5, 8 and 10 mean something.",
                           step.brief, dish.name, a),
               {}, {});
    }
  }
}

}  // namespace

Demand demand(const Case& c, int index) {
  using enum TaskKind;
  const Task& t = c.task(index);
  const int people = t.cook >= 0 ? c.cook(t.cook).people : 0;
  switch (t.kind) {
    case kStep: {
      const auto& step = c.step(t.dish, t.step);
      return for_people(kitchen::tenths(step.attention), step.people);
    }
    case kApronAndHands:
    case kHandWash:
      return for_people(10, people);
    case kWashUp:
      return for_people(t.part + 1 == wash_up_parts(c, t.cook) ? 10 : 8, people);
    case kCollectIngredients:
    case kCollectEquipment:
    case kCleanDown:
    case kKitWash:
    case kFullClean:
    case kStore:
    case kTakeOutOfStore:
    case kPack:
      return for_people(8, 1);
    case kLook:
    case kWindow:
    case kBayLook:
    case kKnivesOut:
    case kKnivesIn:
      break;
  }
  return {};
}

bool keeps_hands(const Case& c, int index) { return demand(c, index).share > 0; }

void check_attention(Case& c) {
  check_scale(c);
  for (int k = 0; k < c.cooks(); ++k) {
    check_sum(c, k, &Demand::tenths, kPerson, "A2");
    check_sum(c, k, &Demand::share, kShares, "A3");
  }
}

}  // namespace timeplan::judge
