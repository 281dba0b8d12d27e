#include "sample_dishes.h"

namespace sample {
namespace {

using kitchen::Attention;
using kitchen::Step;

Step step(const char* id, const char* says, const char* brief, int minutes, Attention attention) {
  Step s;
  s.id = id;
  s.says = says;
  s.brief = brief;
  s.least = s.most = base::minutes(minutes);
  s.attention = attention;
  return s;
}

Step on_ring(Step s, const char* vessel) {
  s.heat = kitchen::Heat{};
  s.heat->with = kitchen::HeatKind::kRing;
  s.heat->vessel = vessel;
  return s;
}

Step in_oven(Step s, int celsius, bool shared) {
  s.heat = kitchen::Heat{};
  s.heat->with = kitchen::HeatKind::kOven;
  s.heat->vessel = "tray";
  s.heat->setting = {celsius, kitchen::OvenKind::kFan};
  s.heat->shared_tray = shared;
  s.heat->shelf_twelfths = shared ? 6 : 12;
  return s;
}

Step closing(Step s, int closes) {
  s.closes = closes;
  return s;
}

Step with(Step s, const char* item) {
  s.kit.push_back({item, 1});
  return s;
}

}  // namespace

kitchen::Dish soup() {
  kitchen::Dish d;
  d.name = "Leek and potato soup";
  d.tag = "LS";
  d.portions = 2;
  Step chop = with(
      step("chop", "Trim and slice the leek, dice the potato.", "Slice leek", 9, Attention::kHands),
      "knife");
  chop.gate = kitchen::Gate{"even dice, no grit in the leek", base::minutes(1), base::minutes(6)};
  d.method = {with(step("weigh", "Weigh the leek, potato and stock powder.", "Weigh out", 3,
                        Attention::kHands),
                   "scales"),
              chop,
              on_ring(step("soften", "Soften the leek gently in the butter.", "Soften leek", 5,
                           Attention::kStandBy),
                      "large pan"),
              on_ring(step("simmer", "Simmer with the lid on until the potato is soft.",
                           "Simmer soup", 18, Attention::kWatch),
                      "large pan"),
              closing(step("off", "Lift the pan off and leave it to stop bubbling.", "Pan off", 1,
                           Attention::kHands),
                      3),
              with(step("blend", "Blend until smooth, lid held down with a cloth.", "Blend soup", 3,
                        Attention::kNothingElse),
                   "stick blender"),
              step("season", "Taste, season and probe.", "Season", 2, Attention::kHands)};
  d.cooling = base::minutes(8);
  d.wash_after = 2;
  return d;
}

kitchen::Dish scones() {
  kitchen::Dish d;
  d.name = "Cheese scones";
  d.tag = "CS";
  d.portions = 8;
  d.method = {
      step("rub", "Rub the butter into the flour until it looks like crumbs.", "Rub in", 6,
           Attention::kHands),
      step("mix", "Stir in the cheese and milk to a soft dough.", "Mix dough", 4,
           Attention::kHands),
      step("shape", "Pat out to two fingers thick and cut eight.", "Cut scones", 5,
           Attention::kHands),
      in_oven(step("bake", "Bake until golden.", "Bake scones", 14, Attention::kLeave), 200, true),
      closing(step("out", "Take the tray out and move the scones to the rack.", "Tray out", 1,
                   Attention::kHands),
              3)};
  d.cooling = base::minutes(10);
  d.wash_after = 2;
  return d;
}

kitchen::Dish spring_rolls() {
  kitchen::Dish d;
  d.name = "Spring rolls";
  d.tag = "SR";
  d.portions = 6;
  Step fry = on_ring(step("fry", "Fry the rolls, two at a time, turning with tongs.", "Fry rolls",
                          6, Attention::kNothingElse),
                     "deep pan");
  fry.hazard = kitchen::Hazard::kHotOil;
  d.method = {
      with(
          step("shred", "Shred the cabbage, carrot and ginger.", "Shred veg", 8, Attention::kHands),
          "knife"),
      step("stir", "Stir-fry the filling and let it cool.", "Fry filling", 5, Attention::kHands),
      step("cool", "Leave the filling to cool on a plate.", "Cool filling", 10, Attention::kLeave),
      step("roll", "Fill and roll six, sealing the edges with water.", "Fill, roll", 9,
           Attention::kHands),
      fry,
      closing(step("drain", "Lift out and drain on paper.", "Drain rolls", 2, Attention::kHands),
              4)};
  d.wash_after = 3;
  return d;
}

}  // namespace sample
