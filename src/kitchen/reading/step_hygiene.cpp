// What can hurt in a step, and which class of hygiene it belongs to. A guess for a person to look
// over, never a risk assessment: the employer's and the school's own rules come first.
#include <functional>

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
  if (v.says("hot oil") || v.says("drain off the oil"))
    add_hazard(step, Hazard::kHotOil, 0.7, "oil");
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

namespace {

bool cooks(const StepDraft& s) {
  return s.heat && !s.preheat && s.heat->value.where <= Where::kMicrowave;
}

// Whether what a step has in hand is cooked yet, in a step that waits for it.
std::vector<bool> cooked_yet(const std::vector<StepDraft>& method) {
  std::vector<bool> out(method.size(), false);
  for (std::size_t i = method.size(); i-- > 0;) {
    for (const int f : method[i].follows) {
      if (cooks(method[i]) || out[i]) out[static_cast<std::size_t>(f)] = true;
    }
  }
  return out;
}

// Whether a step before, which this one waits for, has what `is` says of it in hand and does not
// cook it.
std::vector<bool> uncooked(const std::vector<StepDraft>& method,
                           const std::function<bool(const StepDraft&)>& is) {
  std::vector<bool> out(method.size(), false);
  for (std::size_t i = 0; i < method.size(); ++i) {
    for (const int f : method[i].follows) {
      const StepDraft& before = method[static_cast<std::size_t>(f)];
      if (!cooks(before) && (is(before) || out[static_cast<std::size_t>(f)])) out[i] = true;
    }
  }
  return out;
}

bool touches_food(Work w) {
  return w == Work::kMix || w == Work::kWhisk || w == Work::kAdd || w == Work::kAssemble ||
         w == Work::kShape || w == Work::kBlend || w == Work::kServe || w == Work::kCut;
}

// What stays in its pan touches no board or bowl, what goes on a rack only cools.
bool in_a_pan_or_on_a_rack(const StepDraft& step) {
  return std::any_of(step.equipment.begin(), step.equipment.end(), [](const auto& e) {
    return ware_kind(e.value) == WareKind::kPan || e.value == "wire rack";
  });
}

}  // namespace

void finish_hygiene_in_order(DishDraft& draft, const std::vector<Work>& works,
                             const IngredientWords& in) {
  const std::vector<bool> cooked = cooked_yet(draft.method);
  const auto uses = [](const StepDraft& step, auto&& is) {
    return std::any_of(step.uses.begin(), step.uses.end(), is);
  };
  const auto floury = [&](const StepDraft& step) {
    return uses(step, [&](int u) {
      const Food* food = in.food(u);
      return food != nullptr && food->category == "flours, grains, starches";
    });
  };
  const std::vector<bool> meat = uncooked(draft.method, [&](const StepDraft& step) {
    return step.hygiene && step.hygiene->value == Hygiene::kRaw &&
           uses(step, [&](int u) { return in.raw_meat(u); });
  });
  const std::vector<bool> flour = uncooked(draft.method, floury);
  for (std::size_t i = 0; i < draft.method.size(); ++i) {
    StepDraft& step = draft.method[i];
    if (step.hygiene || step.heat || !touches_food(works[i])) continue;
    const bool mixed_in = works[i] == Work::kShape || works[i] == Work::kMix;
    if (meat[i] && mixed_in)
      step.hygiene = Guess<Hygiene>{Hygiene::kRaw, 0.7, "raw meat or fish in it"};
    else if (!meat[i] && !cooked[i] && !flour[i] && !floury(step) &&
             (works[i] == Work::kServe || !in_a_pan_or_on_a_rack(step)))
      step.hygiene = Guess<Hygiene>{Hygiene::kReadyToEat, 0.6, "not cooked any more"};
  }
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
  const bool serves = std::any_of(v.pieces.clauses.begin(), v.pieces.clauses.end(),
                                  [](const Clause& c) { return c.work == Work::kServe; });
  const auto does = [&](Work work) {
    return std::any_of(v.pieces.clauses.begin(), v.pieces.clauses.end(),
                       [&](const Clause& c) { return c.work == work; });
  };
  const bool washes = does(Work::kWash) && !v.has({"hand", "tin", "can", "drained"});
  const bool new_raw = any([&](int i) { return raw(i) && v.so_far.used.count(i) == 0; });
  if (new_raw || (any(raw) && !v.cooked_before)) {
    be(Hygiene::kRaw, 0.9);
  } else if (any([&](int i) { return in.egg(i); }) && v.work != Work::kServe) {
    be(Hygiene::kRaw, 0.8);
  } else if (v.work == Work::kServe || (serves && v.cooked_before) ||
             (v.work == Work::kAssemble && v.cooked_before && any(salad))) {
    be(Hygiene::kReadyToEat, 0.7);
  } else if (v.work == Work::kCut || v.work == Work::kGrate) {
    const bool leaf = any(salad) && !any([&](int i) { return vegetable(i) && !salad(i); });
    if ((any(vegetable) && !leaf) || (leaf && washes))
      be(Hygiene::kUnwashed, 0.8);
    else if (leaf || !step.uses.empty() || v.cooked_before)
      be(Hygiene::kReadyToEat, 0.6);
  } else if ((washes || v.work == Work::kWash || v.pieces.main.action->verb == "prick") &&
             any(vegetable)) {
    be(Hygiene::kUnwashed, 0.7);
  }
}

}  // namespace kitchen
