// What can hurt in a step, and which class of hygiene it belongs to. A guess for a person to look
// over, never a risk assessment: the employer's and the school's own rules come first.
#include "kitchen/reading/step_view.h"

namespace kitchen {
namespace {

void add_hazard(StepDraft& step, Hazard hazard, double confidence, const std::string& from) {
  for (const auto& each : step.hazards) {
    if (each.value == hazard) return;
  }
  step.hazards.push_back({hazard, confidence, from});
}

bool after_boiling(const StepView& v) {
  return v.so_far.heat == Work::kBoil || v.so_far.heat == Work::kSimmer ||
         v.so_far.heat == Work::kBringToBoil;
}

}  // namespace

void find_hazards(const StepView& v, StepDraft& step) {
  const std::string from(v.pieces.main.action->verb);
  if (v.work == Work::kDeepFry) add_hazard(step, Hazard::kHotOil, 1, from);
  // A layer of oil to fry in spits and burns as deep oil does.
  const bool shallow = v.says("layer of oil") || v.says("cm of oil") || v.says("depth of oil") ||
                       v.has({"smoke", "smoking"});
  if (v.work == Work::kFry && shallow) add_hazard(step, Hazard::kHotOil, 0.7, from);
  for (const Clause& c : v.pieces.clauses) {
    if (c.work == Work::kBlend) add_hazard(step, Hazard::kBlender, 0.9, from);
    if (c.work == Work::kProbe) add_hazard(step, Hazard::kProbing, 0.9, from);
    // "then drain": whatever was boiling, a full pan is carried; a tin is not.
    const bool from_the_pan = (step.uses.empty() && !v.has({"tin", "can"})) || v.inherited ||
                              v.has({"pasta", "spaghetti", "potato", "rice", "noodle", "vegetable",
                                     "macaroni", "penne", "carrot", "pan"});
    if (c.work == Work::kDrain && after_boiling(v) && from_the_pan)
      add_hazard(step, Hazard::kLargePan, 0.7, from);
  }
  if (v.has({"blender", "processor"}) && v.work != Work::kWash)
    add_hazard(step, Hazard::kBlender, 0.8, from);
  if (v.says("core temperature") || v.has({"probe", "thermometer"}) || v.says("75 c"))
    add_hazard(step, Hazard::kProbing, 0.8, from);
}

// Fat, flour, pastry and pulses that are cooked yet are no food to be kept clean.
void finish_hygiene(DishDraft& draft, const std::vector<Work>& works, const IngredientWords& in) {
  bool cooked_later = false;
  for (std::size_t i = draft.method.size(); i-- > 0;) {
    StepDraft& step = draft.method[i];
    const Work w = works[i];
    const bool ready = step.hygiene && step.hygiene->value == Hygiene::kReadyToEat;
    const bool plain = !step.uses.empty() &&
                       std::all_of(step.uses.begin(), step.uses.end(), [&](int u) {
                         const Food* food = in.food(u);
                         return food != nullptr &&
                                base::one_of(food->category,
                                             {"fats oils", "flours, grains, starches",
                                              "bread pastry biscuits", "pulses", "baking agents",
                                              "sugars sweet"});
                       });
    if (ready && cooked_later && plain && (w == Work::kCut || w == Work::kGrate))
      step.hygiene.reset();
    const bool heats = step.heat && !step.preheat && step.heat->value.where <= Where::kMicrowave;
    cooked_later = cooked_later || heats;
  }
}

void find_hygiene(const StepView& v, StepDraft& step) {
  const IngredientWords& in = v.ingredients;
  if (on_heat(v.work) || waits(v.work) || v.work == Work::kSetOven || v.work == Work::kDrain) {
    const auto& all = v.pieces.clauses;
    const bool board = std::any_of(all.begin(), all.end(), [](const Clause& c) {
      return c.work == Work::kCut || c.work == Work::kShape;
    });
    if (!board) return;
  }
  const std::string from(v.pieces.main.action->verb);
  const auto any = [&](auto&& is) { return std::any_of(step.uses.begin(), step.uses.end(), is); };
  const auto be = [&](Hygiene hygiene, double confidence) {
    step.hygiene = Guess<Hygiene>{hygiene, confidence, from};
  };
  const auto raw = [&](int i) { return in.raw_meat(i); };
  const auto vegetable = [&](int i) { return in.vegetable(i); };
  const auto salad = [&](int i) { return in.salad(i); };
  const bool new_raw = any([&](int i) { return raw(i) && v.so_far.used.count(i) == 0; });
  if (new_raw || (any(raw) && !v.cooked_before)) {
    be(Hygiene::kRaw, 0.9);
  } else if (any([&](int i) { return in.egg(i); }) && v.work != Work::kServe) {
    be(Hygiene::kRaw, 0.8);
  } else if (v.work == Work::kServe ||
             (v.work == Work::kAssemble && v.cooked_before && any(salad))) {
    be(Hygiene::kReadyToEat, 0.7);
  } else if (v.work == Work::kCut || v.work == Work::kGrate) {
    const bool leaf = any(salad) && !any([&](int i) { return vegetable(i) && !salad(i); });
    if (any(vegetable) && !leaf)
      be(Hygiene::kUnwashed, 0.8);
    else if (leaf || !step.uses.empty() || v.cooked_before)
      be(Hygiene::kReadyToEat, 0.6);
  } else if ((v.work == Work::kWash || v.pieces.main.action->verb == "prick") && any(vegetable)) {
    be(Hygiene::kUnwashed, 0.7);
  }
}

}  // namespace kitchen
