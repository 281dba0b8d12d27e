#include "nutrition/method_heat.h"

#include <algorithm>
#include <array>
#include <set>
#include <string>

#include "base/folding.h"
#include "kitchen/foods.h"

namespace nutrition {

using kitchen::Dish;
using kitchen::HeatKind;
using kitchen::Step;

namespace {

using Set = std::set<int>;

std::vector<std::string> words_in(const std::string& text) {
  std::vector<std::string> words = base::words_of(base::folded(text));
  for (std::string& word : words) word = kitchen::singular(word);
  return words;
}

bool says(const Step& step, const std::vector<std::string_view>& wanted) {
  for (const std::string& word : words_in(step.says)) {
    for (const std::string_view start : wanted) {
      if (word.starts_with(start)) return true;
    }
  }
  return false;
}

// Words that are in the names of many ingredients without naming one.
bool tells_nothing(const std::string& word) {
  static const std::set<std::string> kCommon = {
      "fresh",  "dried", "ground", "plain",   "tinned", "small",  "large", "for",  "and",
      "mature", "thick", "fine",   "mixed",   "white",  "leaf",   "of",    "in",   "the",
      "a",      "salt",  "pepper", "chopped", "rolled", "strong", "mild",  "whole"};
  return kCommon.contains(word) || word.size() < 3;
}

Set mentioned(const Dish& dish, const Step& step) {
  Set out;
  const std::vector<std::string> sentence = words_in(step.says);
  for (std::size_t i = 0; i < dish.ingredients.size(); ++i) {
    for (const std::string& word : words_in(dish.ingredients[i].name)) {
      if (!tells_nothing(word) &&
          std::find(sentence.begin(), sentence.end(), word) != sentence.end())
        out.insert(static_cast<int>(i));
    }
  }
  return out;
}

// What the steps hold, worked out from the first on; a method whose waits go in a circle is none.
class Reading {
 public:
  explicit Reading(const Dish& dish)
      : dish_(dish),
        holds_(dish.method.size()),
        known_(dish.method.size()),
        before_(dish.method.size()) {
    for (std::size_t s = 0; s < dish.method.size(); ++s) work_out(s);
  }
  const Set& holds(std::size_t step) const { return holds_[step]; }

 private:
  const Dish& dish_;
  std::vector<Set> holds_;   // when the step is done
  std::vector<int> known_;   // 0 not yet, 1 being worked out, 2 known
  std::vector<Set> before_;  // steps it follows, near and far

  void work_out(std::size_t s) {
    if (known_[s] != 0) return;
    known_[s] = 1;
    const Step& step = dish_.method[s];
    Set brought;
    for (const kitchen::Follows& follows : step.follows) {
      const auto other = static_cast<std::size_t>(follows.step);
      work_out(other);
      before_[s].insert(follows.step);
      before_[s].insert(before_[other].begin(), before_[other].end());
      brought.insert(holds_[other].begin(), holds_[other].end());
    }
    Set own(step.uses.begin(), step.uses.end());
    const bool named = !own.empty();
    if (!named) own = mentioned(dish_, step);
    if (!step.heat) {
      own.insert(brought.begin(), brought.end());
    } else {
      const bool held = add_what_the_vessel_held(s, own);
      const bool on_ring = step.heat->with == HeatKind::kRing;
      if (named && !on_ring)
        add_what_was_mixed_in(s, own);
      else if ((!on_ring && !held) || own.empty())
        own.insert(brought.begin(), brought.end());
    }
    holds_[s] = std::move(own);
    known_[s] = 2;
  }

  // A pan that was on before keeps what it held; other work that merely came before stays outside.
  bool add_what_the_vessel_held(std::size_t s, Set& own) const {
    bool any = false;
    for (const int other : before_[s]) {
      const auto& heat = dish_.method[static_cast<std::size_t>(other)].heat;
      if (!heat || heat->vessel != dish_.method[s].heat->vessel) continue;
      const Set& held = holds_[static_cast<std::size_t>(other)];
      own.insert(held.begin(), held.end());
      any = any || !held.empty();
    }
    return any;
  }

  // "Grill the pork" grills the burgers' apple and crumbs too: what an earlier step put together
  // with it.
  void add_what_was_mixed_in(std::size_t s, Set& own) const {
    const std::vector<int>& uses = dish_.method[s].uses;
    for (const int other : before_[s]) {
      const Step& step = dish_.method[static_cast<std::size_t>(other)];
      const bool shares = std::any_of(uses.begin(), uses.end(), [&](int i) {
        return std::find(step.uses.begin(), step.uses.end(), i) != step.uses.end();
      });
      if (shares && !says(step, {"weigh", "wash", "measure", "collect"}))
        own.insert(step.uses.begin(), step.uses.end());
    }
  }
};

bool drained(const Dish& dish, std::size_t heat_step) {
  static const std::vector<std::string_view> kDrain = {"drain", "strain", "colander"};
  if (says(dish.method[heat_step], kDrain)) return true;
  const std::string& vessel = dish.method[heat_step].heat->vessel;
  return std::any_of(dish.method.begin(), dish.method.end(), [&](const Step& step) {
    if (!step.closes) return false;
    const auto& closed = dish.method[static_cast<std::size_t>(*step.closes)].heat;
    return closed && closed->vessel == vessel && says(step, kDrain);
  });
}

Cooking on_ring(const Dish& dish, std::size_t s, const Set& contents,
                const std::vector<Weighted>& ingredients) {
  const Step& step = dish.method[s];
  if (step.hazard == kitchen::Hazard::kHotOil) return Cooking::kDeepFried;
  const bool liquid = std::any_of(contents.begin(), contents.end(), [&](int i) {
    return ingredients[static_cast<std::size_t>(i)].liquid;
  });
  const bool wet = says(step,
                        {"boil", "simmer", "poach", "blanch", "steam", "stew", "bubble", "reduce"});
  const bool dry = says(
      step, {"fry", "fri", "soften", "brown", "sweat", "saut", "sear", "griddle", "toast", "dry"});
  if (wet || (liquid && !dry))
    return drained(dish, s) || !liquid ? Cooking::kBoiled : Cooking::kSimmered;
  return Cooking::kFried;
}

}  // namespace

std::vector<std::vector<int>> contents_of_steps(const Dish& dish) {
  const Reading reading(dish);
  std::vector<std::vector<int>> out;
  for (std::size_t s = 0; s < dish.method.size(); ++s) {
    const Set& holds = reading.holds(s);
    out.emplace_back(holds.begin(), holds.end());
  }
  return out;
}

std::vector<Heating> heatings(const Dish& dish, const std::vector<Weighted>& ingredients) {
  const Reading reading(dish);
  std::vector<Heating> out;
  for (std::size_t s = 0; s < dish.method.size(); ++s) {
    const auto& heat = dish.method[s].heat;
    if (!heat) continue;
    const Set& contents = reading.holds(s);
    Heating heating{static_cast<int>(s), Cooking::kBaked, {contents.begin(), contents.end()}};
    if (heat->with == HeatKind::kRing)
      heating.cooking = on_ring(dish, s, contents, ingredients);
    else if (heat->with == HeatKind::kGrill || heat->setting.kind == kitchen::OvenKind::kGrill)
      heating.cooking = Cooking::kGrilled;
    out.push_back(std::move(heating));
  }
  return out;
}

}  // namespace nutrition
