// The pan, bowl or tin of a step that names none, once the order is known: it is the one of the
// step it waits for, not of whatever was written just before.
#include "base/text.h"
#include "kitchen/reading/step_view.h"

namespace kitchen {
namespace {

constexpr double kGuessed = 0.6;  // at most so sure is a vessel the text does not name

class Vessels {
 public:
  explicit Vessels(DishDraft& draft) : draft_(draft) {}

  void finish() {
    for (std::size_t i = 0; i < draft_.method.size(); ++i) one(draft_.method[i]);
  }

 private:
  DishDraft& draft_;

  static bool vessel(const Guess<std::string>& ware) {
    return ware_kind(ware.value) != WareKind::kTool && ware.value != "plate";
  }

  // What the food stands in when the step is done; empty = nothing is known.
  const std::string* left_in(int i) const {
    const StepDraft& s = draft_.method[static_cast<std::size_t>(i)];
    if (s.preheat) return nullptr;
    const Guess<std::string>* last = nullptr;
    for (const auto& ware : s.equipment) {
      if (vessel(ware) && (last == nullptr || ware.confidence >= last->confidence)) last = &ware;
    }
    return last == nullptr ? nullptr : &last->value;
  }

  const std::string* vessel_before(const StepDraft& step) const {
    std::vector<int> open(step.follows.rbegin(), step.follows.rend());
    for (std::size_t k = 0; k < open.size() && k < draft_.method.size(); ++k) {
      if (const std::string* found = left_in(open[k])) return found;
      const auto& f = draft_.method[static_cast<std::size_t>(open[k])].follows;
      open.insert(open.end(), f.rbegin(), f.rend());
    }
    return nullptr;
  }

  void one(StepDraft& step) {
    if (step.follows.empty()) return;
    const auto named = std::any_of(step.equipment.begin(), step.equipment.end(), [](const auto& e) {
      return vessel(e) && e.confidence > kGuessed;
    });
    if (named) return;
    const auto guessed = std::find_if(step.equipment.begin(), step.equipment.end(), vessel);
    if (guessed == step.equipment.end()) return;
    const std::string* before = vessel_before(step);
    if (before == nullptr || *before == guessed->value) return;
    const bool ring = step.heat && step.heat->value.where == Where::kRing;
    const bool same_use = ware_kind(*before) == ware_kind(guessed->value);
    // A bowl does not go on the ring, nor a pan under the grill.
    if (step.heat && !same_use) return;
    if (ring && ware_kind(*before) != WareKind::kPan) return;
    if (step.heat && step.heat->value.vessel == guessed->value) step.heat->value.vessel = *before;
    guessed->value = *before;
  }
};

}  // namespace

void finish_vessels_in_order(DishDraft& draft) { Vessels(draft).finish(); }

}  // namespace kitchen
