#include "print/read_plan.h"

#include <algorithm>
#include <string>

#include "base/clock.h"
#include "base/index.h"
#include "print/task_kinds.h"

namespace print {
namespace {

using base::at;
using kitchen::Node;
using timeplan::Plan;
using timeplan::Task;

std::string text(const Node& node, std::string_view key) {
  const Node* found = node.find(key);
  return found != nullptr && found->kind == Node::Kind::kText ? found->text : std::string();
}

int number(const Node& node, std::string_view key) {
  const Node* found = node.find(key);
  return found != nullptr && found->kind == Node::Kind::kNumber ? static_cast<int>(found->number)
                                                                : 0;
}

class PlanReader {
 public:
  explicit PlanReader(const kitchen::Lesson& lesson) : lesson_(lesson) {}

  std::optional<Plan> read(const Node& node) {
    Plan plan;
    plan.waves = number(node, "waves");
    for (const Node& cook : items(node, "cooks"))
      plan.wave_of_cook.push_back(number(cook, "wave") - 1);
    for (const Node& task : items(node, "tasks")) plan.tasks.push_back(task_in(task));
    for (const Node& check : items(node, "checkpoints"))
      plan.checkpoints.push_back(check_in(check));
    for (const Node& goal : items(node, "goals"))
      plan.levels.push_back({text(goal, "name"), number(goal, "value"), 0, false, {}});
    const bool whole = plan.wave_of_cook.size() == lesson_.cooks.size() && !plan.tasks.empty();
    return fits_ && whole ? std::optional(std::move(plan)) : std::nullopt;
  }

 private:
  const kitchen::Lesson& lesson_;
  bool fits_ = true;

  static const std::vector<Node>& items(const Node& node, std::string_view key) {
    static const std::vector<Node> kNone;
    const Node* found = node.find(key);
    return found == nullptr ? kNone : found->items;
  }

  /// Index of what has this name, -1 for no name at all; a name nothing has spoils the plan.
  template <class Things, class NameOf>
  int index(const Things& things, const std::string& name, const NameOf& name_of) {
    if (name.empty()) return -1;
    for (int i = 0; at(i) < things.size(); ++i) {
      if (name_of(things[at(i)]) == name) return i;
    }
    fits_ = false;
    return -1;
  }
  template <class Things>
  int index(const Things& things, const std::string& name) {
    return index(things, name, [](const auto& thing) { return thing.name; });
  }

  base::Seconds moment(const std::string& words) {
    const auto read = base::local_time_in(words);
    const auto day = base::date_in(lesson_.date);
    if (!read) {
      fits_ = false;
      return base::Seconds{0};
    }
    const int days = read->date && day ? read->date->days - day->days : 0;
    return read->after_midnight - base::minutes(lesson_.opens_minute) +
           base::minutes(24 * 60) * days;
  }

  /// Variants of a dish share its name: a cook's own dish is the one that is meant.
  int dish_of(int cook, const std::string& name, const std::string& step) {
    if (name.empty()) return -1;
    const auto meant = [&](int d) {
      const kitchen::Dish& dish = lesson_.dishes[at(d)];
      return dish.name == name && (step.empty() || step_of(d, step) >= 0);
    };
    if (cook >= 0) {
      for (const int d : lesson_.cooks[at(cook)].dishes) {
        if (meant(d)) return d;
      }
    }
    for (int d = 0; at(d) < lesson_.dishes.size(); ++d) {
      if (meant(d)) return d;
    }
    fits_ = false;
    return -1;
  }
  int step_of(int dish, const std::string& id) const {
    const auto& method = lesson_.dishes[at(dish)].method;
    for (int s = 0; at(s) < method.size(); ++s) {
      if (method[at(s)].id == id) return s;
    }
    return -1;
  }

  Task task_in(const Node& node) {
    Task task;
    const std::string kind = text(node, "kind"), step = text(node, "step");
    const auto found = std::find(kTaskKinds.begin(), kTaskKinds.end(), kind);
    if (found == kTaskKinds.end()) fits_ = false;
    task.kind = static_cast<timeplan::TaskKind>(found - kTaskKinds.begin());
    task.cook = index(lesson_.cooks, text(node, "cook"));
    task.dish = dish_of(task.cook, text(node, "dish"), step);
    if (task.dish >= 0 && !step.empty()) task.step = step_of(task.dish, step);
    task.part = number(node, "part");
    task.window = index(lesson_.windows, text(node, "window"));
    task.bay = index(lesson_.room.bays, text(node, "bay"));
    task.kit = index(lesson_.room.kit, text(node, "kit"),
                     [](const kitchen::Kit& kit) { return kit.item; });
    task.start = moment(text(node, "start"));
    task.end = moment(text(node, "end"));
    return task;
  }

  timeplan::Checkpoint check_in(const Node& node) {
    timeplan::Checkpoint check;
    check.wave = number(node, "wave") - 1;
    check.at = moment(text(node, "at"));
    check.says = text(node, "says");
    check.dish = dish_of(-1, text(node, "dish"), text(node, "step"));
    if (check.dish >= 0) check.step = step_of(check.dish, text(node, "step"));
    return check;
  }
};

}  // namespace

std::optional<Plan> plan_in(const kitchen::Lesson& lesson, const Node& answer) {
  const Node* plan = answer.find("plan");
  if (plan == nullptr || plan->kind != Node::Kind::kObject) return std::nullopt;
  return PlanReader(lesson).read(*plan);
}

bool own_timelines_in(const Node& answer) {
  const Node* lesson = answer.find("lesson");
  return lesson != nullptr && text(*lesson, "timelines") == "own";
}

}  // namespace print
