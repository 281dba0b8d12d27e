#include "small_lesson.h"

#include <algorithm>

namespace small_lesson {
namespace {

using namespace kitchen;
using base::minutes;

Step step(const std::string& id, int length, Attention attention, std::vector<int> after) {
  Step s;
  s.id = s.says = s.brief = id;
  s.least = s.most = minutes(length);
  s.attention = attention;
  for (const int from : after) {
    Follows f;
    f.step = from;
    s.follows.push_back(f);
  }
  return s;
}

Dish soup_dish() {
  Dish d;
  d.name = "Soup";
  d.tag = "SO";
  d.method = {step("chop", 9, Attention::kHands, {}), step("simmer", 15, Attention::kGlance, {0}),
              step("lift", 1, Attention::kHands, {1}), step("plate", 4, Attention::kHands, {2})};
  d.method[1].heat = Heat{};
  d.method[1].heat->vessel = "pan";
  d.method[1].spread = 0.1;
  d.method[2].closes = 1;
  d.method[2].follows[0].most = minutes(1);
  return d;
}

/// Nodes of one cook in an order that keeps every wait between them.
std::vector<int> in_order(const timeplan::Network& net, int cook) {
  std::vector<int> left, done;
  for (std::size_t n = 0; n < net.nodes.size(); ++n)
    if (net.nodes[n].task.cook == cook && !net.nodes[n].optional)
      left.push_back(static_cast<int>(n));
  while (!left.empty()) {
    const auto next = std::find_if(left.begin(), left.end(), [&](int n) {
      return std::none_of(net.waits.begin(), net.waits.end(), [&](const timeplan::Wait& w) {
        return w.to == n && w.from != n &&
               std::find(left.begin(), left.end(), w.from) != left.end();
      });
    });
    done.push_back(*next);
    left.erase(next);
  }
  return done;
}

}  // namespace

Lesson soup() {
  Lesson lesson;
  lesson.title = "Soup for two";
  lesson.bell = minutes(120);
  lesson.room.name = "Small room";
  lesson.room.bays = {{"A", 2}};
  lesson.room.hand_basins = 2;
  Cooker a, b;
  a.name = "A1";
  b.name = "A2";
  lesson.room.cookers = {a, b};
  lesson.room.places = {{"A1", 0, {0}}, {"A2", 0, {1}}};
  lesson.rules.count_knives = lesson.rules.look_at_bays = lesson.rules.wash_in_parts = false;
  for (const Hazard h : {Hazard::kHotOil, Hazard::kFirstKnife, Hazard::kLargePan, Hazard::kBlender,
                         Hazard::kProbing, Hazard::kAdultOnly})
    lesson.rules.watch[h] = {};
  lesson.dishes = {soup_dish()};
  for (const char* name : {"Aisha", "Ben"}) {
    Cook cook;
    cook.name = name;
    cook.place = static_cast<int>(lesson.cooks.size());
    cook.dishes = {0};
    cook.leaves = lesson.bell;
    lesson.cooks.push_back(cook);
  }
  Adult adult;
  adult.name = "Ms Reed";
  adult.leads = true;
  adult.to = lesson.bell;
  lesson.adults = {adult};
  Sitting sitting;
  sitting.latest = lesson.bell;
  lesson.sittings = {sitting};
  lesson.trays_at_places = true;
  return lesson;
}

timeplan::Network network_of(const Lesson& lesson) {
  return timeplan::network(lesson, std::vector<int>(lesson.cooks.size(), 0));
}

timeplan::Plan one_after_another(const Lesson& lesson, const timeplan::Network& net) {
  timeplan::Plan plan;
  plan.wave_of_cook.assign(lesson.cooks.size(), 0);
  for (std::size_t c = 0; c < lesson.cooks.size(); ++c) {
    const int cook = static_cast<int>(c);
    base::Seconds at{0};
    for (const int n : in_order(net, cook)) {
      const auto serve = std::find_if(net.serves.begin(), net.serves.end(),
                                      [&](const timeplan::ServeMoment& s) { return s.node == n; });
      if (serve != net.serves.end()) {
        plan.served.push_back({cook, serve->sitting, at});
        continue;
      }
      timeplan::Task task = net.nodes[static_cast<std::size_t>(n)].task;
      task.start = at;
      task.end = at = at + net.nodes[static_cast<std::size_t>(n)].least;
      task.sink_bay = 0;
      if (!net.nodes[static_cast<std::size_t>(n)].heldby.empty())
        task.cooker = lesson.room.places[c].cookers.front();
      plan.tasks.push_back(task);
    }
  }
  std::stable_sort(
      plan.tasks.begin(), plan.tasks.end(),
      [](const timeplan::Task& x, const timeplan::Task& y) { return x.start < y.start; });
  return plan;
}

}  // namespace small_lesson
