#include "classroom.h"

#include <array>
#include <string>

namespace scheduler::bench {
namespace {

constexpr int kSteps = 9;
constexpr int kPerCooker = 3;
constexpr Time kDemonstration = 7, kWash = 8, kReheat = 8, kCold = 10;

struct Step {
  Time least, most;
  bool hands, ring;
  int oven;  // degrees, 0 = not in the oven
  bool oil;
};

struct Arc {
  int from, to;
  Time least, most;  // end to start
};

struct Dish {
  const char* name;
  std::array<Step, kSteps> steps;
  std::array<Arc, 8> arcs;
};

constexpr std::array<Dish, 8> kDishes{{
    {"pasta bake",
     {{{6, 6, true, false, 0, false},
       {10, 11, false, true, 0, false},
       {5, 5, true, true, 0, false},
       {3, 3, true, false, 0, false},
       {10, 20, false, true, 0, false},
       {4, 4, true, false, 0, false},
       {20, 25, false, false, 180, false},
       {3, 10, false, false, 0, false},
       {2, 2, true, false, 0, false}}},
     {{{0, 2, 0, 60},
       {2, 4, 0, 0},
       {4, 5, 0, 1},
       {1, 3, 0, 0},
       {3, 5, 0, 10},
       {5, 6, 0, 5},
       {6, 7, 0, 0},
       {7, 8, 0, 0}}}},
    {"stir-fry and rice",
     {{{2, 2, true, false, 0, false},
       {12, 13, false, true, 0, false},
       {5, 12, false, false, 0, false},
       {8, 8, true, false, 0, false},
       {5, 5, true, false, 0, false},
       {10, 30, false, false, 0, false},
       {6, 6, true, true, 0, true},
       {2, 2, true, true, 0, false},
       {2, 2, true, false, 0, false}}},
     {{{0, 1, 0, 3},
       {1, 2, 0, 0},
       {2, 8, 0, 0},
       {3, 6, 0, 40},
       {4, 5, 0, 0},
       {5, 6, 0, 0},
       {6, 7, 0, 0},
       {7, 8, 0, 1}}}},
    {"bread rolls",
     {{{3, 3, true, false, 0, false},
       {4, 4, true, false, 0, false},
       {8, 8, true, false, 0, false},
       {20, 35, false, false, 0, false},
       {5, 5, true, false, 0, false},
       {8, 15, false, false, 0, false},
       {12, 14, false, false, 220, false},
       {5, 15, false, false, 0, false},
       {2, 2, true, false, 0, false}}},
     {{{0, 1, 0, 5},
       {1, 2, 0, 2},
       {2, 3, 0, 0},
       {3, 4, 0, 0},
       {4, 5, 0, 0},
       {5, 6, 0, 0},
       {6, 7, 0, 0},
       {7, 8, 0, 0}}}},
    {"fruit crumble",
     {{{7, 7, true, false, 0, false},
       {5, 8, false, true, 0, false},
       {3, 20, false, false, 0, false},
       {6, 6, true, false, 0, false},
       {2, 2, true, false, 0, false},
       {2, 2, true, false, 0, false},
       {22, 27, false, false, 180, false},
       {5, 15, false, false, 0, false},
       {2, 2, true, false, 0, false}}},
     {{{0, 1, 0, 5},
       {1, 2, 0, 0},
       {2, 5, 0, 0},
       {3, 4, 0, 10},
       {4, 5, 0, 20},
       {5, 6, 0, 5},
       {6, 7, 0, 0},
       {7, 8, 0, 0}}}},
    {"scones",
     {{{3, 3, true, false, 0, false},
       {5, 5, true, false, 0, false},
       {3, 3, true, false, 0, false},
       {5, 5, true, false, 0, false},
       {1, 1, true, false, 0, false},
       {11, 13, false, false, 220, false},
       {4, 20, false, false, 0, false},
       {3, 3, true, false, 0, false},
       {2, 2, true, false, 0, false}}},
     {{{0, 1, 0, 5},
       {1, 2, 0, 10},
       {2, 3, 0, 1},
       {3, 4, 0, 3},
       {4, 5, 0, 3},
       {5, 6, 0, 0},
       {6, 7, 0, 0},
       {7, 8, 0, 5}}}},
    {"fish cakes",
     {{{6, 6, true, false, 0, false},
       {14, 17, false, true, 0, false},
       {4, 4, true, false, 0, false},
       {4, 4, true, false, 0, false},
       {5, 5, true, false, 0, false},
       {10, 30, false, false, 0, false},
       {5, 5, true, false, 0, false},
       {8, 8, true, true, 0, true},
       {2, 2, true, false, 0, false}}},
     {{{0, 1, 0, 5},
       {1, 2, 0, 0},
       {2, 3, 0, 10},
       {3, 4, 0, 5},
       {4, 5, 0, 2},
       {5, 6, 0, 0},
       {6, 7, 0, 5},
       {7, 8, 0, 1}}}},
    {"curry and flatbread",
     {{{7, 7, true, false, 0, false},
       {2, 2, true, false, 0, false},
       {6, 6, true, true, 0, true},
       {5, 5, true, true, 0, false},
       {20, 30, false, true, 0, false},
       {5, 5, true, false, 0, false},
       {8, 25, false, false, 0, false},
       {5, 5, true, true, 0, false},
       {2, 2, true, false, 0, false}}},
     {{{0, 2, 0, 20},
       {1, 2, 0, 30},
       {2, 3, 0, 0},
       {3, 4, 0, 0},
       {4, 8, 0, 0},
       {5, 6, 0, 0},
       {6, 7, 0, 0},
       {7, 8, 0, 3}}}},
    {"roast vegetables",
     {{{8, 8, true, false, 0, false},
       {2, 2, true, false, 0, false},
       {12, 14, false, false, 220, false},
       {1, 1, true, false, 0, false},
       {12, 15, false, false, 220, false},
       {4, 4, true, false, 0, false},
       {2, 8, false, false, 0, false},
       {2, 2, true, false, 0, false},
       {2, 2, true, false, 0, false}}},
     {{{0, 1, 0, 5},
       {1, 2, 0, 5},
       {2, 3, 0, 0},
       {3, 4, 0, 1},
       {4, 6, 0, 0},
       {5, 7, 0, 40},
       {6, 7, 0, 0},
       {7, 8, 0, 2}}}},
}};

// Two dishes a cook, three cooks a cooker.
constexpr std::array<std::array<int, 2>, 24> kMenu{
    {{0, 4}, {6, 3}, {1, 2}, {5, 3}, {7, 4}, {6, 2}, {1, 3}, {0, 2},
     {5, 4}, {6, 4}, {1, 3}, {7, 2}, {5, 3}, {6, 4}, {0, 4}, {1, 2},
     {7, 3}, {5, 4}, {0, 3}, {6, 2}, {1, 4}, {7, 4}, {5, 3}, {1, 2}}};

class Builder {
 public:
  explicit Builder(const ClassroomOptions& options) : options_(options) {}

  Problem run() {
    problem_.horizon = options_.day;
    adult_ = add_resource("adult", options_.adult_watches);
    add_demonstration();
    for (int cook = 0; cook < options_.cooks; ++cook) {
      if (cook % kPerCooker == 0) add_cooker(cook / kPerCooker);
      add_cook(cook);
    }
    problem_.goals.push_back({"spread", spreads_, 0});
    if (options_.finish_level) problem_.goals.push_back({"finish", {finish_}, 0});
    return problem_;
  }

 private:
  int add_resource(const std::string& name, int capacity) {
    Resource resource;
    resource.name = name;
    resource.capacity = capacity;
    problem_.resources.push_back(resource);
    return static_cast<int>(problem_.resources.size()) - 1;
  }

  static Use use_of(int resource) {
    Use use;
    use.resource = resource;
    return use;
  }

  int add_activity(const std::string& name, Time least, Time most, int team) {
    Activity activity;
    activity.name = name;
    activity.duration_min = least;
    activity.duration_max = most;
    activity.team = team;
    problem_.activities.push_back(activity);
    return static_cast<int>(problem_.activities.size()) - 1;
  }

  std::vector<Use>& uses(int activity) {
    return problem_.activities[static_cast<std::size_t>(activity)].modes[0].uses;
  }

  void add_demonstration() {
    demonstration_ = add_activity("demonstration", kDemonstration, kDemonstration, -1);
    Activity& activity = problem_.activities.back();
    activity.earliest = options_.demo_from;
    activity.latest_end = options_.demo_to + kDemonstration;
  }

  void add_cooker(int cooker) {
    const std::string name = std::to_string(cooker + 1);
    rings_ = add_resource("rings " + name, 4);
    sink_ = add_resource("sink " + name, 2);
    oven_ = add_resource("oven " + name, 2);
    Resource& oven = problem_.resources.back();
    oven.kind = ResourceKind::kSettings;
    oven.change = {{0, kReheat}, {kReheat, 0}};
  }

  void add_cook(int cook) {
    const std::string name = std::to_string(cook + 1);
    hands_ = add_resource("hands " + name, 1);
    uses(demonstration_).push_back(use_of(hands_));
    const int wash = add_activity("wash " + name, kWash, kWash, cook);
    uses(wash) = {use_of(hands_), use_of(sink_)};
    finish_.high.push_back({wash, Side::kEnd});
    Term spread;
    spread.team = cook;
    for (const int dish : kMenu[static_cast<std::size_t>(cook)]) {
      const int last = add_dish(cook, kDishes[static_cast<std::size_t>(dish)]);
      problem_.lags.push_back({{last, Side::kEnd}, {wash, Side::kStart}, 0, kNoLimit, -1});
      spread.high.push_back({last, Side::kEnd});
    }
    spread.low = spread.high;
    spreads_.push_back(spread);
  }

  int add_dish(int cook, const Dish& dish) {
    const int first = static_cast<int>(problem_.activities.size());
    for (int k = 0; k < kSteps; ++k) {
      const Step& step = dish.steps[static_cast<std::size_t>(k)];
      const std::string name = std::to_string(cook + 1) + " " + dish.name + " " +
                               std::to_string(k + 1);
      const int i = add_activity(name, step.least, step.most, cook);
      if (step.hands) uses(i).push_back(use_of(hands_));
      if (step.ring) uses(i).push_back(use_of(rings_));
      if (step.oil) uses(i).push_back(use_of(adult_));
      if (step.oven == 0) continue;
      Use oven = use_of(oven_);
      oven.settings = {step.oven == 180 ? 0 : 1};
      uses(i).push_back(oven);
      problem_.activities.back().earliest = kCold;
    }
    for (const Arc& arc : dish.arcs) {
      problem_.lags.push_back({{first + arc.from, Side::kEnd},
                               {first + arc.to, Side::kStart},
                               arc.least,
                               arc.most,
                               -1});
    }
    return first + kSteps - 1;
  }

  ClassroomOptions options_;
  Problem problem_;
  std::vector<Term> spreads_;
  Term finish_;
  int adult_ = 0, demonstration_ = 0, rings_ = 0, sink_ = 0, oven_ = 0, hands_ = 0;
};

}  // namespace

Problem classroom(const ClassroomOptions& options) { return Builder(options).run(); }

}  // namespace scheduler::bench
