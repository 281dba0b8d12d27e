// Part of brief(): the order in which cooks are called to what is done in turn (Y2).
//
// The rule has one call order, by bay, and leaves it to the plan. Cooks of one bay are called in
// the order of the lesson, and so are bays that may change places without a difference
// (scheduler::can_swap): of all orders that come to the same thing one is looked at.
#include <algorithm>
#include <map>
#include <string>
#include <tuple>

#include "scheduler/symmetry.h"
#include "timeplan/brief_maker.h"

namespace timeplan {
namespace {

using kitchen::Moment;

bool called(TaskKind kind) {
  return kind == TaskKind::kApronAndHands || kind == TaskKind::kCollectIngredients ||
         kind == TaskKind::kWashUp;
}

}  // namespace

bool BriefMaker::same_people(int a, int b) const {
  const kitchen::Cook& x = cook_of(a);
  const kitchen::Cook& y = cook_of(b);
  return line_of(a) == line_of(b) && bay_of(lesson_, a) == bay_of(lesson_, b) &&
         x.people == y.people && x.arrives == y.arrives && x.leaves == y.leaves &&
         x.away == y.away && same_pins(a, b);
}

bool BriefMaker::same_pins(int a, int b) const {
  return std::all_of(lesson_.pins.begin(), lesson_.pins.end(), [&](const kitchen::Pin& pin) {
    return kitchen::pin_of(lesson_, a, pin.step) == kitchen::pin_of(lesson_, b, pin.step);
  });
}

// What the cooks of a bay do and hold, by the rank of the cook in the bay (-1: done for the bay).
BriefMaker::Doings BriefMaker::doings(const std::vector<int>& bay) const {
  const auto rank = [&bay](int cook) -> std::optional<int> {
    const auto found = std::find(bay.begin(), bay.end(), cook);
    if (found == bay.end()) return std::nullopt;
    return static_cast<int>(found - bay.begin());
  };
  const int number = bay_of(lesson_, bay.front());
  Doings result;
  for (int i = 0; i < static_cast<int>(net_.nodes.size()); ++i) {
    const Task& t = node(i).task;
    const std::optional<int> who = t.cook >= 0       ? rank(t.cook)
                                   : t.bay == number ? std::optional<int>(-1)
                                                     : std::nullopt;
    if (!who || activity_of(i) < 0) continue;
    result[{*who, static_cast<int>(t.kind), t.dish, t.step, t.part, t.kit, ""}].push_back(
        activity_of(i));
  }
  for (std::size_t h = 0; h < net_.held.size(); ++h) {
    const Held& held = net_.held[h];
    const std::optional<int> who = rank(held.cook);
    if (!who || brief_.activity_of_held[h] < 0) continue;
    result[{*who, -1, held.dish, 0, 0, 0, held.what}].push_back(brief_.activity_of_held[h]);
  }
  return result;
}

// Each thing one bay does with what the other does in its place; nothing when they do not do the
// same things.
std::optional<BriefMaker::Pairs> BriefMaker::matched(const Doings& mine, const Doings& theirs) {
  if (mine.size() != theirs.size()) return std::nullopt;
  std::map<int, int> partner;
  for (const auto& [what, list] : mine) {
    const auto found = theirs.find(what);
    if (found == theirs.end() || found->second.size() != list.size()) return std::nullopt;
    for (std::size_t k = 0; k < list.size(); ++k) {
      const int other = found->second[k];
      if (partner.try_emplace(list[k], other).first->second != other) return std::nullopt;
      if (partner.try_emplace(other, list[k]).first->second != list[k]) return std::nullopt;
    }
  }
  Pairs pairs;
  for (const auto& [a, b] : partner) {
    if (a < b) pairs.emplace_back(a, b);
  }
  return pairs;
}

// Bays that may change places with one another, as lists in the order of the lesson.
std::vector<BriefMaker::Bays> BriefMaker::alike_bays() const {
  std::vector<Bays> result;
  std::vector<Doings> last;  // of the last bay of each list
  for (const std::vector<int>& bay : bays()) {
    Doings mine = doings(bay);
    const auto same = std::find_if(last.begin(), last.end(), [&](const Doings& known) {
      const std::optional<Pairs> pairs = matched(known, mine);
      return pairs && scheduler::can_swap(brief_.problem, *pairs);
    });
    if (same == last.end()) {
      result.push_back({bay});
      last.push_back(std::move(mine));
    } else {
      result[static_cast<std::size_t>(same - last.begin())].push_back(bay);
      *same = std::move(mine);
    }
  }
  return result;
}

// The cooks of each bay, in the order of the lesson.
BriefMaker::Bays BriefMaker::bays() const {
  std::map<int, std::size_t> index;
  Bays groups;
  for (int c = 0; c < static_cast<int>(lesson_.cooks.size()); ++c) {
    const auto [at, fresh] = index.try_emplace(bay_of(lesson_, c), groups.size());
    if (fresh) groups.emplace_back();
    groups[at->second].push_back(c);
  }
  return groups;
}

void BriefMaker::add_call_order() {
  if (lesson_.timelines == kitchen::Timelines::kOwn) return;      // nobody is called
  std::map<std::pair<TaskKind, int>, std::map<int, int>> queues;  // by cook: the node
  for (int i = 0; i < static_cast<int>(net_.nodes.size()); ++i) {
    const Task& t = node(i).task;
    if (called(t.kind)) queues[{t.kind, t.part}][t.cook] = i;
  }
  const std::vector<Bays> swaps = alike_bays();
  const auto call = [&](int first, int then) {
    for (const auto& [what, of_cook] : queues) {
      const auto a = of_cook.find(first), b = of_cook.find(then);
      if (a == of_cook.end() || b == of_cook.end()) continue;
      brief_.problem.lags.push_back({event(a->second, Moment::kStart),
                                     event(b->second, Moment::kStart), 0, scheduler::kNoLimit, -1});
    }
  };
  for (int a = 0; a < static_cast<int>(lesson_.cooks.size()); ++a) {
    for (int b = a + 1; b < static_cast<int>(lesson_.cooks.size()); ++b) {
      if (!same_people(a, b)) continue;
      call(a, b);
      break;
    }
  }
  for (const Bays& same : swaps) {
    for (std::size_t i = 1; i < same.size(); ++i) {
      for (std::size_t k = 0; k < same[i].size(); ++k) call(same[i - 1][k], same[i][k]);
    }
  }
}

}  // namespace timeplan
