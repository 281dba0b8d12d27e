// The pan, bowl or tin of a step that names none, once the order is known: it is the one of the
// step it waits for, not of whatever was written just before.
#include "base/text.h"
#include "kitchen/reading/step_phrases.h"
#include "kitchen/reading/step_view.h"

namespace kitchen {
namespace {

constexpr double kGuessed = 0.6;  // at most so sure is a vessel the text does not name

class Vessels {
 public:
  Vessels(DishDraft& draft, const std::vector<Work>& works) : draft_(draft), works_(works) {}

  void finish() {
    for (std::size_t i = 0; i < draft_.method.size(); ++i) one(draft_.method[i], works_[i]);
  }

 private:
  DishDraft& draft_;
  const std::vector<Work>& works_;

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

  static bool mixes(Work work) {
    return work == Work::kMix || work == Work::kWhisk || work == Work::kMash ||
           work == Work::kSeason;
  }

  // Whether it waits for more than what is prepared for it.
  bool goes_on(const StepDraft& step) const {
    return std::any_of(step.follows.begin(), step.follows.end(), [&](int f) {
      const auto at = static_cast<std::size_t>(f);
      return !draft_.method[at].preheat && !prepares(works_[at]) && works_[at] != Work::kWash;
    });
  }

  void one(StepDraft& step, Work work) {
    const auto named = std::any_of(step.equipment.begin(), step.equipment.end(), [](const auto& e) {
      return vessel(e) && e.confidence > kGuessed;
    });
    if (named) return;
    const auto guessed = std::find_if(step.equipment.begin(), step.equipment.end(), vessel);
    if (guessed == step.equipment.end()) return;
    const std::string* before = vessel_before(step);
    const bool ring = step.heat && step.heat->value.where == Where::kRing;
    std::string usual;
    if (ring && (before == nullptr || ware_kind(*before) != WareKind::kPan)) {
      usual = usual_pan(work);
      before = &usual;
    }
    // What is mixed and goes on from nothing that stands anywhere has a bowl of its own.
    if (!step.heat && mixes(work) && !goes_on(step)) {
      usual = "mixing bowl";
      before = &usual;
    }
    if (before == nullptr || *before == guessed->value) return;
    const bool same_use = ware_kind(*before) == ware_kind(guessed->value);
    // A bowl does not go on the ring, nor a pan under the grill.
    if (step.heat && !same_use) return;
    if (step.heat && step.heat->value.vessel == guessed->value) step.heat->value.vessel = *before;
    guessed->value = *before;
  }
};

// In a bowl, in the oven, left to cool: a step after which nothing is on a ring.
bool off_the_ring(const StepDraft& step, Work work) {
  if (step.heat) return step.heat->value.where != Where::kRing;
  if (work == Work::kStand || work == Work::kServe || work == Work::kChill || work == Work::kFreeze)
    return true;
  return std::any_of(step.equipment.begin(), step.equipment.end(), [](const auto& e) {
    const WareKind kind = ware_kind(e.value);
    return e.confidence == 1 && (kind == WareKind::kBowl || kind == WareKind::kBaking);
  });
}

// Whether all the step goes on with has left the ring; what is only prepared for it does not tell.
bool nothing_on_the_ring(const DishDraft& draft, const std::vector<Work>& works, std::size_t i) {
  bool told = false;
  for (const int f : draft.method[i].follows) {
    const StepDraft& before = draft.method[static_cast<std::size_t>(f)];
    const Work work = works[static_cast<std::size_t>(f)];
    if (before.preheat || prepares(work)) continue;
    if (!off_the_ring(before, work)) return false;
    told = true;
  }
  return told;
}

}  // namespace

void finish_rings_in_order(DishDraft& draft, const std::vector<Work>& works) {
  for (std::size_t i = 0; i < draft.method.size(); ++i) {
    StepDraft& step = draft.method[i];
    const bool guessed = step.heat && step.heat->value.where == Where::kRing &&
                         step.heat->confidence == kStillOnTheRing;
    if (!guessed || !nothing_on_the_ring(draft, works, i)) continue;
    step.heat.reset();
    step.attention.value = Attention::kHands;
  }
}

void finish_vessels_in_order(DishDraft& draft, const std::vector<Work>& works) {
  Vessels(draft, works).finish();
}

}  // namespace kitchen
