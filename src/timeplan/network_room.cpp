// What belongs to the room and its adults: windows, knives, looks at the bays; and which tasks
// queue (Y2).
#include <algorithm>

#include "timeplan/network_builder.h"
#include "timeplan/network_methods.h"

namespace timeplan {

void NetworkBuilder::add_windows() {
  for (std::size_t w = 0; w < lesson_.windows.size(); ++w) {
    const kitchen::Window& window = lesson_.windows[w];
    const int index = task_node(TaskKind::kWindow, -1, -1, -1, window.length, 0, 1);
    Node& n = node(index);
    n.task.window = static_cast<int>(w);
    n.earliest = base::grid_up(window.earliest);
    n.latest_end = base::grid_down(window.latest) + n.least;
    if (window.led_by) {
      Need adult;
      adult.pool = {PoolKind::kAdult, *window.led_by};
      adult.amount = 100;
      n.ways = {{adult}};
    }
    windows_.push_back(index);
  }
}

void NetworkBuilder::add_window_waits() {
  for (std::size_t w = 0; w < lesson_.windows.size(); ++w) {
    const kitchen::Window& window = lesson_.windows[w];
    for (int c = 0; c < static_cast<int>(lesson_.cooks.size()); ++c) {
      const bool covered = covers(window, c);
      if (!covered) continue;
      const auto& parts = own(c).parts;
      for (const kitchen::StepRef& ref : window.after) {
        const auto found = parts.find({ref.dish, ref.step});
        if (found != parts.end()) after(found->second.back(), windows_[w], WaitWhy::kWindow);
      }
      for (const kitchen::StepRef& ref : window.before) {
        const auto found = parts.find({ref.dish, ref.step});
        if (found != parts.end()) after(windows_[w], found->second.front(), WaitWhy::kWindow);
      }
    }
  }
}

void NetworkBuilder::add_knives() {
  if (!lesson_.rules.count_knives) return;
  std::vector<int> users;
  for (std::size_t i = 0; i < net_.nodes.size(); ++i) {
    const Task& task = net_.nodes[i].task;
    if (task.kind != TaskKind::kStep || task.step < 0) continue;
    const auto& kit = dish_of(task.dish).method[static_cast<std::size_t>(task.step)].kit;
    if (std::any_of(kit.begin(), kit.end(),
                    [](const kitchen::KitNeed& k) { return k.item == "knife"; })) {
      users.push_back(static_cast<int>(i));
    }
  }
  if (users.empty()) return;
  const int out = task_node(TaskKind::kKnivesOut, -1, -1, -1, base::minutes(2), 0, 1);
  const int in = task_node(TaskKind::kKnivesIn, -1, -1, -1, base::minutes(2), 0, 1);
  node(out).ways = leader_ways(100);
  node(in).ways = leader_ways(100);
  node(in).latest_end = base::grid_down(lesson_.bell);
  for (const int user : users) {
    after(out, user, WaitWhy::kKnives);
    after(user, in, WaitWhy::kKnives);
  }
}

void NetworkBuilder::add_bay_looks() {
  if (!lesson_.rules.look_at_bays) return;
  for (int bay = 0; bay < static_cast<int>(lesson_.room.bays.size()); ++bay) {
    std::vector<int> last_parts;
    for (int c = 0; c < static_cast<int>(lesson_.cooks.size()); ++c) {
      if (bay_of(lesson_, c) == bay) last_parts.push_back(own(c).wash.back());
    }
    if (last_parts.empty()) continue;
    const int look = task_node(TaskKind::kBayLook, -1, -1, -1, base::minutes(1), 0, 1);
    node(look).task.bay = bay;
    node(look).ways = leader_ways(50);
    node(look).latest_end = base::grid_down(lesson_.bell);
    for (const int wash : last_parts) after(wash, look, WaitWhy::kBayLook);
  }
}

void NetworkBuilder::mark_queued() {
  // Kit of which the room has fewer than all the cooks want at once.
  std::vector<int> wanted(lesson_.room.kit.size(), 0);
  for (int c = 0; c < static_cast<int>(lesson_.cooks.size()); ++c) {
    for (std::size_t k = 0; k < wanted.size(); ++k) {
      int most = 0;
      for (const int n : own(c).steps) {
        const Task& task = node(n).task;
        for (const kitchen::KitNeed& need :
             dish_of(task.dish).method[static_cast<std::size_t>(task.step)].kit) {
          if (need.item == lesson_.room.kit[k].item) most = std::max(most, need.count);
        }
      }
      wanted[k] += most;
    }
  }
  const auto scarce = [&](const kitchen::KitNeed& need) {
    for (std::size_t k = 0; k < wanted.size(); ++k) {
      if (need.item == lesson_.room.kit[k].item) return wanted[k] > lesson_.room.kit[k].count;
    }
    return false;
  };
  for (Node& n : net_.nodes) {
    switch (n.task.kind) {
      case TaskKind::kApronAndHands:
      case TaskKind::kCollectIngredients:
      case TaskKind::kCollectEquipment:
      case TaskKind::kHandWash:
      case TaskKind::kKitWash:
      case TaskKind::kCleanDown:
      case TaskKind::kFullClean:
      case TaskKind::kLook:
      case TaskKind::kWashUp:
      case TaskKind::kPack:
        n.queued = true;
        break;
      case TaskKind::kStep: {
        if (n.task.step < 0) break;
        const kitchen::Step& step = dish_of(n.task.dish)
                                        .method[static_cast<std::size_t>(n.task.step)];
        n.queued = step.sink > 0 || step.at_table ||
                   std::any_of(step.kit.begin(), step.kit.end(), scarce) ||
                   (step.hazard && lesson_.rules.watch.at(*step.hazard).hundredths >= 20);
        break;
      }
      default:
        break;
    }
  }
  // A step joined to a queued one by a short longest wait goes with it, as often as needed.
  for (bool again = true; again;) {
    again = false;
    for (const Wait& w : net_.waits) {
      if (!w.most || *w.most > base::minutes(5)) continue;
      Node& a = node(w.from);
      Node& b = node(w.to);
      if (a.task.kind != TaskKind::kStep || b.task.kind != TaskKind::kStep || a.task.step < 0 ||
          b.task.step < 0)
        continue;
      if (a.queued == b.queued) continue;
      a.queued = b.queued = again = true;
    }
  }
  // Serving follows the dishes: each cook's own moment where the last step is their own.
  for (const ServeMoment& serve : net_.serves) {
    for (const Wait& w : net_.waits) {
      if (w.to == serve.node && w.why == WaitWhy::kHold && node(w.from).queued)
        node(serve.node).queued = true;
    }
  }
}

}  // namespace timeplan
