// Small lessons for the planner's tests, made from the quick way in and dishes written here
// (invented).
#pragma once

#include <string>
#include <vector>

#include "kitchen/read.h"
#include "timeplan/quick_lesson.h"

namespace sample {

inline kitchen::Step step(const std::string& id, int minutes, kitchen::Attention attention,
                          std::vector<kitchen::Follows> follows) {
  kitchen::Step s;
  s.id = id;
  s.says = id + ".";
  s.brief = id;
  s.least = s.most = base::minutes(minutes);
  s.spread = 0;
  s.attention = attention;
  s.follows = std::move(follows);
  return s;
}

inline kitchen::Follows after(int step_index, std::optional<int> within = std::nullopt) {
  kitchen::Follows f;
  f.step = step_index;
  if (within) f.most = base::minutes(*within);
  return f;
}

/// Chop 6, soup 12 on a ring with a glance, serve 2: twenty minutes one after another.
inline kitchen::Dish soup() {
  kitchen::Dish d;
  d.name = "Barley soup";
  d.tag = "BS";
  d.portions = 2;
  d.method = {step("chop", 6, kitchen::Attention::kHands, {}),
              step("boil", 12, kitchen::Attention::kGlance, {after(0)}),
              step("ladle", 2, kitchen::Attention::kHands, {after(1, 1)})};
  kitchen::Heat ring;
  ring.vessel = "pan";
  d.method[1].heat = ring;
  d.method[2].closes = 1;
  d.wash_after = 0;
  return d;
}

/// Rub in 8, bake 15 at 200 degrees, out 1.
inline kitchen::Dish crumble() {
  kitchen::Dish d;
  d.name = "Plum crumble";
  d.tag = "PC";
  d.portions = 2;
  d.method = {step("rub in", 8, kitchen::Attention::kHands, {}),
              step("bake", 15, kitchen::Attention::kLeave, {after(0, 10)}),
              step("out", 1, kitchen::Attention::kHands, {after(1, 1)})};
  kitchen::Heat oven;
  oven.with = kitchen::HeatKind::kOven;
  oven.vessel = "tin";
  oven.setting = {200, kitchen::OvenKind::kConventional};
  d.method[1].heat = oven;
  d.method[2].closes = 1;
  d.hold.most = base::minutes(40);
  return d;
}

inline kitchen::HouseRules rules() {
  return kitchen::read_house_rules(R"({"kind": "house_rules", "version": 1})", "rules").value();
}

inline kitchen::Lesson lesson(std::vector<kitchen::Dish> dishes, int pupils, int together,
                              int cookers, int sinks, int minutes) {
  timeplan::QuickWish wish;
  wish.dishes = std::move(dishes);
  wish.pupils = pupils;
  wish.together = together;
  wish.cookers = cookers;
  wish.sinks = sinks;
  wish.from_minute = 9 * 60;
  wish.to_minute = 9 * 60 + minutes;
  wish.rules = rules();
  return timeplan::quick_lesson(wish).value();
}

}  // namespace sample
