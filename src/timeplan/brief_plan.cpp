// A schedule of the brief's problem, said as a plan: every cook's every task with its place, oven,
// sink, kit, adult.
#include <algorithm>
#include <tuple>

#include "timeplan/brief.h"
#include "timeplan/network_methods.h"

namespace timeplan {
namespace {

Seconds from_units(int t) { return base::minutes(t); }

// What a task holds of one kit item, and for how long.
struct KitUse {
  Seconds from, to;
  int count = 1;
  bool kept = false;
  std::vector<std::pair<std::size_t, std::size_t>> where;  // (task, position in kit_units)
  std::vector<int> units;
};

class PlanMaker {
 public:
  PlanMaker(const kitchen::Lesson& lesson, const Network& net, const Brief& brief,
            const scheduler::Schedule& schedule)
      : lesson_(lesson), net_(net), brief_(brief), schedule_(schedule) {}

  Plan make(const std::vector<int>& wave_of_cook) {
    plan_.wave_of_cook = wave_of_cook;
    if (lesson_.timelines == kitchen::Timelines::kOwn) {
      plan_.wave_of_cook.resize(lesson_.cooks.size());
      for (std::size_t c = 0; c < lesson_.cooks.size(); ++c)
        plan_.wave_of_cook[c] = static_cast<int>(c);
      plan_.waves = static_cast<int>(lesson_.cooks.size());
    } else {
      plan_.waves = *std::max_element(wave_of_cook.begin(), wave_of_cook.end()) + 1;
    }
    plan_.buffer = net_.buffer;
    for (std::size_t i = 0; i < net_.nodes.size(); ++i) add_node(i);
    give_kit_units();
    drop_idle_cleaning();
    std::sort(plan_.tasks.begin(), plan_.tasks.end(), [](const Task& a, const Task& b) {
      return std::tie(a.start, a.cook, a.kind, a.dish, a.step, a.part, a.kit, a.window, a.bay) <
             std::tie(b.start, b.cook, b.kind, b.dish, b.step, b.part, b.kit, b.window, b.bay);
    });
    std::sort(plan_.served.begin(), plan_.served.end(), [](const Served& a, const Served& b) {
      return std::tie(a.cook, a.sitting) < std::tie(b.cook, b.sitting);
    });
    return std::move(plan_);
  }

 private:
  const scheduler::Placement* placement(std::size_t node) const {
    const int activity = brief_.activity_of_node[node];
    if (activity < 0) return nullptr;
    const scheduler::Placement& p = schedule_[static_cast<std::size_t>(activity)];
    return p.present ? &p : nullptr;
  }

  void add_node(std::size_t i) {
    const Node& node = net_.nodes[i];
    const scheduler::Placement* p = placement(i);
    if (p == nullptr) return;
    const Seconds start = from_units(p->start), end = from_units(p->start + p->duration);
    if (node.task.kind == TaskKind::kStep && node.task.step < 0) {
      plan_.served.push_back({node.task.cook, node.task.part, start});
      return;
    }
    Task task = node.task;
    task.start = start;
    task.end = end;
    const auto activity = static_cast<std::size_t>(brief_.activity_of_node[i]);
    if (!node.ways.empty()) {
      const int way = brief_.way_of_mode[activity][static_cast<std::size_t>(p->mode)];
      for (const Need& need : node.ways[static_cast<std::size_t>(way)]) {
        if (need.pool.kind == PoolKind::kSink) task.sink_bay = need.pool.index;
        if (need.pool.kind == PoolKind::kBasin) task.basin = true;
        if (need.pool.kind == PoolKind::kAdult) task.adult = need.pool.index;
      }
    }
    for (const int held : node.heldby) set_heat(task, held);
    if (task.kind == TaskKind::kWindow) {
      task.adult = lesson_.windows[static_cast<std::size_t>(task.window)].led_by.value_or(-1);
    }
    task_of_node_.emplace_back(i, plan_.tasks.size());
    plan_.tasks.push_back(std::move(task));
  }

  // Cooker and knob of a vessel's steps.
  void set_heat(Task& task, int held_index) const {
    const Held& held = net_.held[static_cast<std::size_t>(held_index)];
    const int activity = brief_.activity_of_held[static_cast<std::size_t>(held_index)];
    std::size_t way = 0;
    if (activity >= 0) {
      const scheduler::Placement& p = schedule_[static_cast<std::size_t>(activity)];
      way = held.ways.size() == 1
                ? 0
                : static_cast<std::size_t>(brief_.way_of_mode[static_cast<std::size_t>(activity)]
                                                             [static_cast<std::size_t>(p.mode)]);
      const auto& uses = brief_.problem.activities[static_cast<std::size_t>(activity)]
                             .modes[static_cast<std::size_t>(p.mode)]
                             .uses;
      const Need& need = held.ways[way].front();
      task.cooker = need.pool.index;
      if (need.settings.empty()) return;
      task.setting = need.settings.front();
      for (std::size_t u = 0; u < uses.size(); ++u) {
        if (uses[u].settings.empty() || p.settings[u] < 0) continue;
        if (brief_.problem.resources[static_cast<std::size_t>(uses[u].resource)].name !=
            oven_name(need.pool.index))
          continue;
        task.setting = brief_.setting_of.at({uses[u].resource, p.settings[u]});
      }
      return;
    }
    const Need& need = held.ways[way].front();
    task.cooker = need.pool.index;
    if (!need.settings.empty()) task.setting = need.settings.front();
  }

  static std::string oven_name(int cooker) { return "oven " + std::to_string(cooker); }

  void give_kit_units() {
    for (std::size_t k = 0; k < lesson_.room.kit.size(); ++k) give_units(static_cast<int>(k));
  }

  std::vector<KitUse> uses_of(int kit) {
    const kitchen::Kit& item = lesson_.room.kit[static_cast<std::size_t>(kit)];
    std::vector<KitUse> uses;
    std::map<std::pair<int, int>, std::size_t> until_washed;  // (cook, dish) -> use
    for (const auto& [n, t] : task_of_node_) {
      Task& task = plan_.tasks[t];
      const Node& node = net_.nodes[n];
      const bool kept = node.allergen_kit == kit;
      if (task.kind == TaskKind::kFullClean && task.kit == kit) {
        task.kit_units = {0};
        continue;
      }
      if (task.kind == TaskKind::kKitWash && task.kit == kit) {
        task.kit_units.assign(1, -1);
        const auto [at, fresh] = until_washed.emplace(std::make_pair(task.cook, task.dish),
                                                      uses.size());
        if (fresh) uses.push_back({task.start, task.end, 1, kept, {}, {}});
        KitUse& use = uses[at->second];
        use.from = std::min(use.from, task.start);
        use.to = std::max(use.to, task.end);
        use.where.emplace_back(t, 0);
        continue;
      }
      if (task.kind != TaskKind::kStep) continue;
      const kitchen::Step& step = lesson_.dishes[static_cast<std::size_t>(task.dish)]
                                      .method[static_cast<std::size_t>(task.step)];
      std::size_t next = 0;
      for (const kitchen::KitNeed& need : step.kit) {
        const std::size_t position = next;
        next += static_cast<std::size_t>(need.count);
        if (task.kit_units.size() < next) task.kit_units.resize(next, -1);
        if (need.item != item.item) continue;
        std::size_t index = uses.size();
        if (item.washed_between) {
          const auto [at, fresh] = until_washed.emplace(std::make_pair(task.cook, task.dish),
                                                        uses.size());
          if (fresh) uses.push_back({task.start, task.end, need.count, kept, {}, {}});
          index = at->second;
        } else {
          uses.push_back({task.start, task.end, need.count, kept, {}, {}});
        }
        KitUse& use = uses[index];
        use.from = std::min(use.from, task.start);
        use.to = std::max(use.to, task.end);
        use.count = std::max(use.count, need.count);
        use.kept = use.kept || kept;
        for (int i = 0; i < need.count; ++i)
          use.where.emplace_back(t, position + static_cast<std::size_t>(i));
      }
    }
    return uses;
  }

  // Lowest free units first, in order of time; enough are always free because the count was kept.
  void give_units(int kit) {
    std::vector<KitUse> uses = uses_of(kit);
    const bool contested = capacity(lesson_, {PoolKind::kKit, kit, -1}) <
                           lesson_.room.kit[static_cast<std::size_t>(kit)].count;
    std::stable_sort(uses.begin(), uses.end(),
                     [](const KitUse& a, const KitUse& b) { return a.from < b.from; });
    for (std::size_t i = 0; i < uses.size(); ++i) {
      KitUse& use = uses[i];
      std::vector<int> taken;
      for (std::size_t j = 0; j < i; ++j) {
        if (uses[j].to > use.from)
          taken.insert(taken.end(), uses[j].units.begin(), uses[j].units.end());
      }
      for (int unit = contested && !use.kept ? 1 : 0;
           static_cast<int>(use.units.size()) < use.count; ++unit) {
        if (std::find(taken.begin(), taken.end(), unit) == taken.end()) use.units.push_back(unit);
      }
      std::size_t next = 0;
      for (const auto& [task, position] : use.where) {
        plan_.tasks[task].kit_units[position] = use.units[next % use.units.size()];
        ++next;
      }
    }
  }

  // Does a use at `soil` have to be cleaned away before `minds`?
  bool must_be_cleaned(std::size_t soil_node, const Task& soil, std::size_t minds_node,
                       const Task& minds, const Task& clean) const {
    const Node& a = net_.nodes[soil_node];
    const Node& b = net_.nodes[minds_node];
    if (soil.kind != TaskKind::kStep || minds.kind != TaskKind::kStep || soil.cook != clean.cook)
      return false;
    if (clean.kind == TaskKind::kCleanDown) {
      const auto place = [&](const Task& t) {
        return lesson_.cooks[static_cast<std::size_t>(t.cook)].place;
      };
      return a.hygiene && b.hygiene && *a.hygiene > *b.hygiene && place(soil) == place(minds);
    }
    const bool meets = std::any_of(a.contains.begin(), a.contains.end(),
                                   [&](kitchen::Allergen x) { return b.avoids.contains(x); });
    return a.allergen_kit == clean.kit && b.allergen_kit == clean.kit && meets;
  }

  // Whether a clean of this node is enough for what that node leaves behind.
  bool enough(std::size_t clean_node, std::size_t soil_node) const {
    const Node& clean = net_.nodes[clean_node];
    if (clean.task.kind == TaskKind::kFullClean) return true;
    return clean.cleans >= net_.nodes[soil_node].hygiene.value_or(kitchen::Hygiene::kReadyToEat);
  }

  // A clean-down that stands after a raw step, but after one that was cleaned away already, is as
  // long as what it does clean away asks for (H3).
  void shorten_cleaning(std::size_t clean_node, std::size_t clean_task,
                        const std::vector<bool>& dropped) {
    Task& clean = plan_.tasks[clean_task];
    const auto cleaned_before = [&](const Task& soil) {
      for (std::size_t t = 0; t < plan_.tasks.size(); ++t) {
        const Task& other = plan_.tasks[t];
        if (!dropped[t] && other.kind == TaskKind::kCleanDown && other.cook == clean.cook &&
            other.start >= soil.end && other.start < clean.start)
          return true;
      }
      return false;
    };
    for (const auto& [i, s] : task_of_node_) {
      const Task& soil = plan_.tasks[s];
      if (soil.end > clean.start || net_.nodes[i].hygiene != net_.nodes[clean_node].cleans)
        continue;
      for (const auto& [j, m] : task_of_node_) {
        const Task& minds = plan_.tasks[m];
        if (minds.start >= clean.end && must_be_cleaned(i, soil, j, minds, clean) &&
            !cleaned_before(soil))
          return;  // as long as it was meant to be
      }
    }
    clean.end = clean.start + std::min(clean.end - clean.start,
                                       base::grid_up(lesson_.rules.clean_after_unwashed));
  }

  // The engine may keep a clean-down that nothing needs: those are not asked of anybody (H3, K2).
  // The lighter ones go first, so that what is left is what must be done.
  void drop_idle_cleaning() {
    std::vector<std::pair<std::size_t, std::size_t>> cleans;  // (node, task)
    for (const auto& [n, t] : task_of_node_) {
      const TaskKind kind = plan_.tasks[t].kind;
      if (kind == TaskKind::kCleanDown || kind == TaskKind::kFullClean) cleans.emplace_back(n, t);
    }
    std::stable_sort(cleans.begin(), cleans.end(), [&](const auto& x, const auto& y) {
      return net_.nodes[x.first].cleans < net_.nodes[y.first].cleans;
    });
    std::vector<bool> dropped(plan_.tasks.size(), false);
    for (const auto& candidate : cleans) {
      const std::size_t clean_node = candidate.first, clean_task = candidate.second;
      const Task& clean = plan_.tasks[clean_task];
      const auto covered = [&](std::size_t soil_node, Seconds from, Seconds to) {
        return std::any_of(cleans.begin(), cleans.end(), [&](const auto& other) {
          const Task& o = plan_.tasks[other.second];
          const bool alike = other.second != clean_task && !dropped[other.second] &&
                             o.kind == clean.kind && o.cook == clean.cook && o.kit == clean.kit;
          return alike && enough(other.first, soil_node) && o.start >= from && o.end <= to;
        });
      };
      bool needed = false;
      for (const auto& [i, s] : task_of_node_) {
        const Task& soil = plan_.tasks[s];
        if (needed || soil.end > clean.start || !enough(clean_node, i)) continue;
        for (const auto& [j, m] : task_of_node_) {
          const Task& minds = plan_.tasks[m];
          if (minds.start < clean.end || !must_be_cleaned(i, soil, j, minds, clean)) continue;
          needed = needed || !covered(i, soil.end, minds.start);
        }
      }
      dropped[clean_task] = !needed;
    }
    for (const auto& [node, task] : cleans) {
      if (!dropped[task] && plan_.tasks[task].kind == TaskKind::kCleanDown)
        shorten_cleaning(node, task, dropped);
    }
    std::vector<Task> kept;
    for (std::size_t t = 0; t < plan_.tasks.size(); ++t) {
      if (!dropped[t]) kept.push_back(plan_.tasks[t]);
    }
    plan_.tasks = std::move(kept);
  }

  const kitchen::Lesson& lesson_;
  const Network& net_;
  const Brief& brief_;
  const scheduler::Schedule& schedule_;
  Plan plan_;
  std::vector<std::pair<std::size_t, std::size_t>> task_of_node_;
};

}  // namespace

Plan plan_from(const kitchen::Lesson& lesson, const Network& net, const Brief& brief,
               const scheduler::Schedule& schedule, const std::vector<int>& wave_of_cook) {
  return PlanMaker(lesson, net, brief, schedule).make(wave_of_cook);
}

}  // namespace timeplan
