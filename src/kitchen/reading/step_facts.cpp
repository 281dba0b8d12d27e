#include "kitchen/reading/step_facts.h"

#include "base/folding.h"
#include "base/text.h"
#include "kitchen/reading/made_words.h"

namespace kitchen {
namespace {

std::string verb_of(const StepView& v) { return std::string(v.pieces.main.action->verb); }

void find_words(const StepView& v, StepDraft& step) {
  std::size_t sentence = v.sentences.size();
  const auto add = [&](const std::string& part) {
    if (part.empty()) return;
    step.says += (step.says.empty() ? "" : " ") + part;
  };
  for (const Clause& c : v.pieces.clauses) {
    const Sentence& s = v.sentences[c.sentence];
    if (sentence == v.sentences.size()) {
      step.line_number = s.line_number;
      step.group = s.group;
    }
    sentence = c.sentence;
    const std::size_t from = s.tokens[c.begin].begin, to = s.tokens[c.end - 1].end;
    add(base::trimmed(s.text.substr(from, to - from)));
  }
  for (const std::size_t s : v.pieces.sentences) add(v.sentences[s].text);
  // A joint at the end belongs to what comes next.
  for (bool more = true; more;) {
    more = false;
    for (const std::string_view joint : {" and", " then", " &", ",", ";", ":", " -"}) {
      if (!step.says.ends_with(joint)) continue;
      step.says.resize(step.says.size() - joint.size());
      more = true;
    }
  }
}

// The pan, tin or tray nobody names: the one that is in use, else the usual one.
std::string usual_vessel(const StepView& v, Where where) {
  if (where == Where::kRing) return usual_pan(v.work);
  const bool in_use = !v.so_far.vessel.empty() &&
                      (ware_kind(v.so_far.vessel) == WareKind::kBaking ||
                       v.so_far.vessel == "casserole");
  if (where == Where::kOven)
    return v.so_far.vessel == "casserole" ? v.so_far.vessel
           : !v.so_far.tin.empty()        ? v.so_far.tin
           : in_use                       ? v.so_far.vessel
                                          : "baking tray";
  return "grill pan";
}

void find_skills(const StepView& v, StepDraft& step) {
  for (const Clause& c : v.pieces.clauses) {
    if (c.action->skill.empty()) continue;
    const std::string skill(c.action->skill);
    const bool again = std::any_of(step.skills.begin(), step.skills.end(),
                                   [&](const auto& s) { return s.value == skill; });
    if (!again) step.skills.push_back({skill, 0.8, std::string(c.action->verb)});
  }
}

// At most twelve letters: the verb and, if there is room, what it is done to.
void find_brief(const StepView& v, StepDraft& step) {
  constexpr std::size_t kMost = 12;
  const Action& action = *v.pieces.main.action;
  std::string name(action.brief);
  if (name.empty()) {
    for (const std::string& w : base::words_of(base::folded(step.says))) {
      if (base::letters(name) + 1 + base::letters(w) > kMost) break;
      name += (name.empty() ? "" : " ") + w;
    }
    if (!name.empty() && name[0] >= 'a' && name[0] <= 'z')
      name[0] = static_cast<char>(name[0] - 'a' + 'A');
    step.brief = name.empty() ? "Step" : name;
    return;
  }
  const Work work = v.work;
  // "Bring together to a dough" boils nothing.
  if (action.verb == "bring" && work == Work::kMix) name = "Mix";
  if (work == Work::kRollOut) name = "Roll out";
  if (work == Work::kBake && action.work != Work::kBake) name = "Bake";
  if (work == Work::kChill) name = "Chill";
  if (work == Work::kProbe && action.work != Work::kProbe) name = "Check";
  if (work == Work::kGrill && action.work != Work::kGrill) name = "Grill";
  const bool by_itself = work == Work::kBake || work == Work::kGrill || waits(work) ||
                         v.pieces.main.work == Work::kLine || step.uses.size() > 3;
  for (const int i : step.uses) {
    if (by_itself && work != Work::kBoil) break;
    const auto words = base::words_of(
        base::folded(v.draft.ingredients[static_cast<std::size_t>(i)].name));
    if (words.empty()) continue;
    const std::string thing = singular(words.back());
    if (base::letters(name) + 1 + base::letters(thing) <= kMost) {
      name += " " + thing;
      break;
    }
  }
  step.brief = base::first_letters(name, kMost);
}

// What the step leaves for those behind it.
void move_on(const StepView& v, const StepDraft& step, SoFar& so_far) {
  so_far.works.push_back(v.work);
  for (const int i : step.uses) so_far.used.insert(i);
  for (std::string& thing : things_made(v.words)) so_far.made.insert(std::move(thing));
  const bool mixed = on_heat(v.work) || v.work == Work::kMix || v.work == Work::kWhisk ||
                     v.work == Work::kAdd || v.work == Work::kAssemble;
  if (mixed && step.uses.size() > 1) so_far.combined.insert(step.uses.begin(), step.uses.end());
  const bool lines = v.pieces.main.work == Work::kLine;
  std::string put_in;
  for (const auto& e : step.equipment) {
    const WareKind kind = ware_kind(e.value);
    if (kind == WareKind::kBaking && e.confidence == 1) {
      so_far.tin = e.value;
      so_far.tin_called_pan = e.from.ends_with(" pan");
    }
    if (kind == WareKind::kPan && !base::one_of(e.value, {"pan", "small pan", "large pan"}))
      so_far.pan = e.value;
    // The last one that is named holds the food, else the first that is implied.
    if (kind != WareKind::kTool && (e.confidence == 1 || put_in.empty())) put_in = e.value;
  }
  if (v.work == Work::kRollOut || v.work == Work::kShape || v.work == Work::kKnead)
    so_far.vessel = put_in;
  else if (!put_in.empty() && !lines && v.work != Work::kSetOven)
    so_far.vessel = put_in;
  if (!so_far.vessel.empty()) {
    for (const int i : step.uses) so_far.stands_in[i] = so_far.vessel;
  }
  if (v.work == Work::kSetOven && step.heat) so_far.oven = step.heat;
  if (v.work == Work::kDrain || v.says("off the heat") || v.says("from the heat") ||
      v.says("off the ring") || v.says("ring off"))
    so_far.on_ring = so_far.deep_oil = so_far.liquid = false;
  if (!step.heat) return;
  if (step.heat->value.where == Where::kRing) {
    // A pan of its own begins dry.
    if (!named_vessel(v).empty() && !v.says("the pan") && !v.says("same pan"))
      so_far.liquid = false;
    so_far.liquid = so_far.liquid || std::any_of(step.uses.begin(), step.uses.end(), [&](int i) {
                      const Food* food = v.ingredients.food(i);
                      return food != nullptr &&
                             (food->key.find("stock") != std::string::npos ||
                              food->key.find("milk") != std::string::npos ||
                              food->key.find("tomatoes_tinned") != std::string::npos ||
                              food->key == "water" || food->key == "passata" ||
                              food->key.ends_with("_cream"));
                    });
    so_far.deep_oil = v.work == Work::kDeepFry;
    so_far.ring = step.heat->value;
    so_far.on_ring = true;
  } else if (!step.preheat && v.work != Work::kKettle) {
    so_far.on_ring = so_far.deep_oil = so_far.liquid = false;
  }
  if (on_heat(v.work)) so_far.heat = v.work;
}

}  // namespace

void find_heat(const StepView& v, StepDraft& step) {
  const Work work = v.work;
  if (work == Work::kChill || work == Work::kFreeze) {
    step.heat = Guess<HeatDraft>{
        {place_of(work), "", {}, OvenKind::kConventional}, 0.9, verb_of(v)};
    return;
  }
  if (!on_heat(work) && work != Work::kSetOven && work != Work::kKettle) return;
  Guess<HeatDraft> heat;
  heat.value.where = place_of(work);
  heat.confidence = 0.9;
  heat.from = verb_of(v);
  if (work == Work::kSetOven && v.has({"grill", "broiler"}) &&
      (!v.has({"oven"}) || v.says("oven rack") || v.says("oven shelf")))
    heat.value.where = Where::kGrill;
  for (const Clause& c : v.pieces.clauses) {
    if (!c.oven || heat.value.where != Where::kOven) continue;
    heat.value.celsius = c.oven->celsius;
    heat.value.oven = c.oven->kind;
    heat.confidence = c.oven->confidence;
  }
  const Where where = heat.value.where;
  if (where == Where::kOven && !heat.value.celsius && v.so_far.oven) {
    heat.value.celsius = v.so_far.oven->value.celsius;
    heat.value.oven = v.so_far.oven->value.oven;
    heat.confidence = std::min(heat.confidence, v.so_far.oven->confidence);
  }
  heat.value.vessel = named_vessel(v);
  const bool needs_vessel = where == Where::kRing || where == Where::kOven ||
                            where == Where::kGrill;
  if (heat.value.vessel.empty() && needs_vessel) {
    const bool goes_on = where == Where::kRing && v.so_far.ring.has_value();
    heat.value.vessel = goes_on ? v.so_far.ring->vessel : usual_vessel(v, where);
    if (where == Where::kRing) heat.confidence = std::min(heat.confidence, 0.6);
  }
  // "Stir in the cream": on the ring only if the pan still stands there.
  if (where == Where::kRing && !on_heat(v.pieces.main.work) && v.pieces.main.work != Work::kCookOn)
    heat.confidence = kStillOnTheRing;
  step.heat = heat;
}

void find_attention(const StepView& v, StepDraft& step) {
  Attention a = usual_attention(v.work);
  double confidence = 0.8;
  const bool wait = a == Attention::kGlance || a == Attention::kWatch || a == Attention::kStandBy;
  if (wait && (v.has({"constantly", "continuously", "continually"}) || v.says("all the time"))) {
    a = Attention::kStandBy;
    confidence = 0.95;
  } else if (wait && a != Attention::kStandBy && v.has({"frequently", "often", "regularly"})) {
    a = Attention::kWatch;
    confidence = 0.95;
  }
  const bool eye = v.says("an eye on") || v.says("eye on it") || v.says("watch it") ||
                   v.says("watch them") || v.says("watching them") || v.says("stand over it");
  if (eye && (a == Attention::kLeave || a == Attention::kGlance || v.work == Work::kMelt)) {
    a = Attention::kWatch;
    confidence = 0.95;
  }
  // A pan of water comes to the boil by itself.
  const bool water = v.work == Work::kBringToBoil && v.has({"water"}) && step.uses.size() <= 1 &&
                     a == Attention::kWatch;
  if (water) a = Attention::kGlance;
  // "Leave to cool" takes no hands; "Cool" a pan under the tap would, but is rare.
  if (v.work == Work::kChill || v.work == Work::kStand) a = Attention::kLeave;
  if (v.work == Work::kMelt && v.has({"microwave"})) a = Attention::kLeave;
  // "Turning once", "turning half way": somebody looks in.
  if (v.work == Work::kBake && v.has({"turning", "basting", "shaking"})) a = Attention::kGlance;
  if (v.has({"caramel"}) && on_heat(v.work)) a = Attention::kNothingElse;
  const bool hot_oil = std::any_of(step.hazards.begin(), step.hazards.end(),
                                   [](const auto& h) { return h.value == Hazard::kHotOil; });
  if (hot_oil && v.work == Work::kFry) a = Attention::kNothingElse;
  // What no word of the table tells may be anything.
  if (v.pieces.main.action == &some_action()) confidence = 0.5;
  step.attention = {a, confidence, verb_of(v)};
}

StepDraft step_of(const StepPieces& pieces, const std::vector<Sentence>& sentences,
                  const DishDraft& draft, const IngredientWords& words, const TaskTimes& times,
                  SoFar& so_far) {
  StepView v = view_of(pieces, sentences, draft, words, times, so_far);
  v.work = work_of(v);
  StepDraft step;
  find_words(v, step);
  find_uses(v, step);
  find_heat(v, step);
  find_minutes(v, step);
  find_hazards(v, step);
  find_attention(v, step);
  find_equipment(v, step);
  find_hygiene(v, step);
  find_skills(v, step);
  find_brief(v, step);
  step.preheat = v.work == Work::kSetOven;
  move_on(v, step, so_far);
  return step;
}

}  // namespace kitchen
