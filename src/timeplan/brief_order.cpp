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
  return line_of(a) == line_of(b) && bay_of(a) == bay_of(b) && x.people == y.people &&
         x.arrives == y.arrives && x.leaves == y.leaves && x.away == y.away;
}

int BriefMaker::bay_of(int cook) const {
  return lesson_.room.places[static_cast<std::size_t>(cook_of(cook).place)].bay;
}

// Everything these cooks alone do, and what the others do in its place. Nothing when they do not do
// the same things.
std::optional<BriefMaker::Pairs> BriefMaker::in_place_of(const std::vector<int>& cooks,
                                                         const std::vector<int>& others) const {
  // What it is, by the rank of its cook in the bay; each may be there several times.
  using Key = std::tuple<int, int, int, int, int, int, std::string>;
  const auto activities = [&](const std::vector<int>& bay) {
    const auto rank = [&bay](int cook) {
      return static_cast<int>(std::find(bay.begin(), bay.end(), cook) - bay.begin());
    };
    const int size = static_cast<int>(bay.size());
    const int number = bay_of(bay.front());
    std::map<Key, std::vector<int>> found;
    for (int i = 0; i < static_cast<int>(net_.nodes.size()); ++i) {
      const Task& t = node(i).task;
      const bool own = t.cook >= 0 ? rank(t.cook) < size : t.bay == number && t.bay >= 0;
      if (!own || activity_of(i) < 0) continue;
      found[{t.cook < 0 ? -1 : rank(t.cook), static_cast<int>(t.kind), t.dish, t.step, t.part,
             t.kit, ""}]
          .push_back(activity_of(i));
    }
    for (std::size_t h = 0; h < net_.held.size(); ++h) {
      const Held& held = net_.held[h];
      if (rank(held.cook) == size || brief_.activity_of_held[h] < 0) continue;
      found[{rank(held.cook), -1, held.dish, 0, 0, 0, held.what}].push_back(
          brief_.activity_of_held[h]);
    }
    return found;
  };
  const std::map<Key, std::vector<int>> mine = activities(cooks);
  const std::map<Key, std::vector<int>> theirs = activities(others);
  if (mine.size() != theirs.size()) return std::nullopt;
  std::map<int, int> partner;
  for (const auto& [key, list] : mine) {
    const auto found = theirs.find(key);
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

// Of these groups of cooks, those that may change places with one another, as lists.
std::vector<BriefMaker::Groups> BriefMaker::alike(const Groups& groups) const {
  std::vector<Groups> result;
  for (const std::vector<int>& cooks : groups) {
    const auto same = std::find_if(result.begin(), result.end(), [&](const Groups& known) {
      if (known.back().size() != cooks.size()) return false;
      const std::optional<Pairs> pairs = in_place_of(known.back(), cooks);
      return pairs && scheduler::can_swap(brief_.problem, *pairs);
    });
    if (same == result.end())
      result.push_back({cooks});
    else
      same->push_back(cooks);
  }
  return result;
}

// The cooks of each bay, in the order of the lesson.
BriefMaker::Groups BriefMaker::bays() const {
  std::map<int, std::size_t> index;
  Groups groups;
  for (int c = 0; c < static_cast<int>(lesson_.cooks.size()); ++c) {
    const auto [at, fresh] = index.try_emplace(bay_of(c), groups.size());
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
  const std::vector<Groups> swaps = alike(bays());
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
  for (const Groups& same : swaps) {
    for (std::size_t i = 1; i < same.size(); ++i) {
      for (std::size_t k = 0; k < same[i].size(); ++k) call(same[i - 1][k], same[i][k]);
    }
  }
}

}  // namespace timeplan
