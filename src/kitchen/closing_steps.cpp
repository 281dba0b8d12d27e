// Pans, tins and trays: what one vessel may do, and who takes it off the heat.
#include <algorithm>

#include "kitchen/method.h"

namespace kitchen {

using base::in_quotes;
using base::say;

namespace {

struct Vessel {
  std::string name;
  std::vector<int> steps;  // heat steps, as written
};

std::vector<Vessel> vessels_of(const std::vector<Step>& steps) {
  std::vector<Vessel> vessels;
  for (std::size_t i = 0; i < steps.size(); ++i) {
    if (!steps[i].heat) continue;
    const std::string& name = steps[i].heat->vessel;
    auto at = std::find_if(vessels.begin(), vessels.end(),
                           [&](const Vessel& v) { return v.name == name; });
    if (at == vessels.end()) at = vessels.insert(vessels.end(), Vessel{name, {}});
    at->steps.push_back(static_cast<int>(i));
  }
  return vessels;
}

std::string setting_words(const Heat& heat) {
  std::string out = say(heat.setting.celsius, " °C");
  if (heat.setting.kind == OvenKind::kFan) out += " fan";
  if (heat.setting.kind == OvenKind::kGrill) out += " grill";
  if (heat.tolerance > 0) out += say(" (", heat.tolerance, " either way)");
  return out;
}

class VesselCheck {
 public:
  VesselCheck(Reader& reader, const Method& method) : reader_(reader), method_(method) {}

  void check(const Vessel& vessel) {
    const int first = vessel.steps.front();
    int low = lowest(first);
    int high = highest(first);
    for (const int i : vessel.steps) {
      const Heat& heat = *step(i).heat;
      const Heat& other = *step(first).heat;
      if (heat.with != other.with) {
        reader_.add("dish.vessel.two_heats", where(i),
                    say("The ", vessel.name, " has its heat from two places: in ",
                        in_quotes(step(first).id), " and in ", in_quotes(step(i).id), "."),
                    say("Give it a second name after it moves, such as ",
                        in_quotes(vessel.name + " in the oven"), "."));
        return;
      }
      if (heat.with == HeatKind::kRing) continue;
      low = std::max(low, lowest(i));
      high = std::min(high, highest(i));
      if (heat.setting.kind == other.setting.kind && low <= high) continue;
      reader_.add("dish.vessel.no_common_setting", where(i),
                  say("The ", vessel.name, " stays in one oven, but ", in_quotes(step(first).id),
                      " wants ", setting_words(other), " and ", in_quotes(step(i).id), " wants ",
                      setting_words(heat), "."),
                  "Give the steps one setting, widen a tolerance, or name a second tin.");
      return;
    }
  }

  void check_closing(const Vessel& vessel) {
    int closed_by = -1;
    for (std::size_t k = 0; k < method_.steps.size(); ++k) {
      const int i = static_cast<int>(k);
      if (!step(i).closes || std::find(vessel.steps.begin(), vessel.steps.end(), *step(i).closes) ==
                                 vessel.steps.end())
        continue;
      if (*step(i).closes != vessel.steps.back()) {
        reader_.add("dish.step.closes_too_early", where(i),
                    say("The step ", in_quotes(step(i).id), " takes the ", vessel.name,
                        " off after ", in_quotes(step(*step(i).closes).id), ", but ",
                        in_quotes(step(vessel.steps.back()).id), " still needs it."),
                    say("Close the last step of the ", vessel.name,
                        ", or give it a second name from then on."));
      } else if (closed_by >= 0) {
        reader_.add("dish.step.closed_twice", where(i),
                    say("Both ", in_quotes(step(closed_by).id), " and ", in_quotes(step(i).id),
                        " take the ", vessel.name, " off the heat."),
                    "Let one step close it.");
      }
      closed_by = i;
    }
  }

  bool closed(const Vessel& vessel) const {
    return tenths(step(vessel.steps.back()).attention) >= 8 ||
           std::any_of(method_.steps.begin(), method_.steps.end(),
                       [&](const Step& s) { return s.closes == vessel.steps.back(); });
  }

 private:
  Reader& reader_;
  const Method& method_;

  const Step& step(int i) const { return method_.steps[static_cast<std::size_t>(i)]; }
  const std::string& where(int i) const { return method_.where[static_cast<std::size_t>(i)]; }
  int lowest(int i) const {
    return std::max(50, step(i).heat->setting.celsius - step(i).heat->tolerance);
  }
  int highest(int i) const {
    return std::min(260, step(i).heat->setting.celsius + step(i).heat->tolerance);
  }
};

Step closing_step(const std::vector<Step>& steps, int of) {
  const Step& heated = steps[static_cast<std::size_t>(of)];
  const std::string vessel = heated.heat->vessel;
  Step step;
  std::string stem = heated.id.substr(0, 32);  // an id has at most forty signs
  while (stem.back() == '-') stem.pop_back();
  step.id = first_free_id(steps, stem + "-out");
  switch (heated.heat->with) {
    case HeatKind::kRing:
      step.says = say("Take the ", vessel, " off the ring.");
      step.brief = "Off the ring";
      break;
    case HeatKind::kOven:
      step.says = say("Take the ", vessel, " out of the oven.");
      step.brief = "Take out";
      break;
    case HeatKind::kGrill:
      step.says = say("Take the ", vessel, " out from under the grill.");
      step.brief = "Take out";
      break;
  }
  step.follows = {{.step = of, .most = base::minutes(1)}};
  step.closes = of;
  step.added = true;
  step.uses = heated.uses;
  return step;
}

/// Makes room for one more step at `at` and puts it there.
void insert_step(Method& method, int at, Step step) {
  const auto shift = [at](int& index) {
    if (index >= at) ++index;
  };
  const int closed = *step.closes;
  for (Step& each : method.steps) {
    if (each.closes) shift(*each.closes);
    for (Follows& wait : each.follows) {
      // What came after the end of the heat now comes after the pan is off it.
      if (wait.step == closed && wait.of == Moment::kEnd)
        wait.step = at;
      else
        shift(wait.step);
    }
  }
  method.steps.insert(method.steps.begin() + at, std::move(step));
  method.where.insert(method.where.begin() + at, method.where[static_cast<std::size_t>(closed)]);
}

}  // namespace

std::string first_free_id(const std::vector<Step>& steps, const std::string& wanted) {
  std::string id = wanted;
  for (int n = 2; step_called(steps, id) >= 0; ++n) id = say(wanted, "-", n);
  return id;
}

void close_vessels(Reader& reader, Method& method) {
  VesselCheck check(reader, method);
  for (const Vessel& vessel : vessels_of(method.steps)) {
    check.check(vessel);
    check.check_closing(vessel);
  }
  if (!reader.clean()) return;
  // One at a time: every insertion moves the indices.
  for (bool added = true; added;) {
    added = false;
    for (const Vessel& vessel : vessels_of(method.steps)) {
      if (VesselCheck(reader, method).closed(vessel)) continue;
      const int last = vessel.steps.back();
      insert_step(method, last + 1, closing_step(method.steps, last));
      added = true;
      break;
    }
  }
}

}  // namespace kitchen
