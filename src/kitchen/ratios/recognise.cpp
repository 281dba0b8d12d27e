#include "kitchen/ratios/recognise.h"

#include <algorithm>
#include <set>

#include "base/text.h"
#include "kitchen/ratios/flow.h"
#include "kitchen/ratios/rules.h"

namespace kitchen {
namespace {

using base::say;

// How much each sign weighs; found by trying the dishes of tests/reference/kitchen. Ingredients
// alone never reach the threshold: flour and butter are in everything.
constexpr double kIngredients = 0.3, kMethod = 0.25, kName = 0.35, kNameInMethod = 0.2,
                 kAmounts = 0.15, kOutsideAmounts = 0.5, kSpeaksAgainst = 0.45;
constexpr double kThreshold = 0.5;

bool has(const std::vector<Role>& roles, Role role) {
  return std::find(roles.begin(), roles.end(), role) != roles.end();
}

bool needed(const Rule& rule, Role role) {
  return std::any_of(rule.needs.begin(), rule.needs.end(),
                     [&](const auto& one_of) { return has(one_of, role); });
}

class Recogniser {
 public:
  Recogniser(const Dish& dish, const std::vector<CountedIngredient>& counted)
      : dish_(dish), counted_(counted), flow_(dish) {}

  std::vector<FoundPreparation> find() {
    std::vector<FoundPreparation> all;
    for (const Rule& rule : rules()) {
      std::set<int> done;
      for (const CountedIngredient& one : counted_) {
        if (!made_of(rule, one) || done.contains(one.ingredient)) continue;
        if (auto found = candidate(rule, one.ingredient)) {
          done.insert(found->ingredients.begin(), found->ingredients.end());
          all.push_back(std::move(*found));
        }
      }
    }
    // Of two that are as sure, the one that explains more: sweet shortcrust before shortcrust.
    std::stable_sort(all.begin(), all.end(), [](const auto& a, const auto& b) {
      if (a.confidence != b.confidence) return a.confidence > b.confidence;
      return rule_of(a.key)->needs.size() > rule_of(b.key)->needs.size();
    });
    return without_rivals(std::move(all));
  }

 private:
  const Dish& dish_;
  const std::vector<CountedIngredient>& counted_;
  Flow flow_;

  const CountedIngredient& at(int ingredient) const {
    return counted_[static_cast<std::size_t>(ingredient)];
  }

  bool made_of(const Rule& rule, const CountedIngredient& one) const {
    if (!has(rule.needs.front(), one.role)) return false;
    if (rule.made_of.empty()) return true;
    return says_one_of(plain_text(dish_.ingredients[static_cast<std::size_t>(one.ingredient)].name),
                       {rule.made_of});
  }

  // A method written as one line runs from the pastry into its filling: of all the places where
  // the mixture may begin and end, the one that reads surest; of equals, the latest of both.
  std::optional<FoundPreparation> candidate(const Rule& rule, int around) const {
    constexpr int kMostStepsBack = 2;
    std::optional<FoundPreparation> best;
    for (int back = kMostStepsBack; back >= 0; --back) {
      for (const Flow::Made& made : flow_.made_around(around, rule.method, back)) {
        auto found = reading(rule, made);
        if (found && (!best || found->confidence >= best->confidence)) best = std::move(found);
      }
    }
    return best;
  }

  std::optional<FoundPreparation> reading(const Rule& rule, const Flow::Made& made) const {
    FoundPreparation found;
    found.key = rule.key;
    found.name = rule.name;
    found.steps = made.steps;
    for (const int i : made.ingredients) {
      if (needed(rule, at(i).role) || has(rule.takes, at(i).role)) found.ingredients.push_back(i);
    }
    for (const auto& one_of : rule.needs) {
      const bool there = std::any_of(found.ingredients.begin(), found.ingredients.end(),
                                     [&](int i) { return has(one_of, at(i).role); });
      if (!there) return std::nullopt;
    }
    weigh_signs(rule, made, found);
    if (found.confidence <= kThreshold) return std::nullopt;
    return found;
  }

  void weigh_signs(const Rule& rule, const Flow::Made& made, FoundPreparation& found) const {
    double sure = kIngredients;
    std::vector<std::string> there;
    for (const int i : found.ingredients) {
      if (needed(rule, at(i).role)) there.push_back(name(i));
    }
    found.why.push_back(say("made around ", base::joined(there)));
    bool method = false, named = false;
    for (const int step : made.steps) {
      method = method || flow_.says(step, rule.method);
      named = named || flow_.says(step, rule.names);
    }
    if (method) {
      sure += kMethod;
      found.why.push_back("the method reads like it");
    }
    if (says_one_of(flow_.name(), rule.names)) {
      sure += kName;
      found.why.push_back("the dish's name says so");
    } else if (named) {
      sure += kNameInMethod;
      found.why.push_back("the method names it");
    }
    if (!rule.windows.empty()) weigh_amounts(rule, found, sure);
    for (const int i : made.ingredients) {
      if (!has(rule.against, at(i).role)) continue;
      sure *= kSpeaksAgainst;
      found.why.push_back(say(name(i), " speaks against it"));
    }
    found.confidence = std::min(sure, 1.0);
  }

  void weigh_amounts(const Rule& rule, FoundPreparation& found, double& sure) const {
    bool all_inside = true, any = false;
    for (const AmountWindow& window : rule.windows) {
      const auto top = grams(found, window.numerator), bottom = grams(found, window.denominator);
      if (!top || !bottom || *bottom <= 0) continue;
      if (*top == 0 && window.least > 0 && !listed(found, window.numerator)) continue;
      any = true;
      const double share = *top / *bottom;
      if (share >= window.least && share <= window.most) continue;
      all_inside = false;
      sure *= kOutsideAmounts;
      found.why.push_back(say("its ", window.numerator, " to ", window.denominator, " is ",
                              base::decimal_text(Ratio::near(share)), ", unusual for it"));
    }
    if (any && all_inside) {
      sure += kAmounts;
      found.why.push_back("the amounts fit");
    }
  }

  template <class Each>
  void for_each_share(const FoundPreparation& found, std::string_view words, Each each) const {
    std::string part;
    for (const char c : std::string(words) + "+") {
      if (c != '+') {
        part += c;
        continue;
      }
      for (const Share& share : shares_of(part).value_or(std::vector<Share>{})) {
        for (const int i : found.ingredients) {
          if (at(i).role == share.role) each(at(i), share);
        }
      }
      part.clear();
    }
  }

  // Nothing when one of them cannot be weighed.
  std::optional<double> grams(const FoundPreparation& found, std::string_view words) const {
    double sum = 0;
    bool known = true;
    for_each_share(found, words, [&](const CountedIngredient& one, const Share& share) {
      if (one.grams)
        sum += one.grams->value() * share.times.value();
      else
        known = false;
    });
    return known ? std::optional(sum) : std::nullopt;
  }

  bool listed(const FoundPreparation& found, std::string_view words) const {
    bool any = false;
    for_each_share(found, words, [&](const CountedIngredient&, const Share&) { any = true; });
    return any;
  }

  std::string name(int ingredient) const {
    return dish_.ingredients[static_cast<std::size_t>(ingredient)].name;
  }

  // One flour makes one dough: the surest reading of it stands, the others go.
  std::vector<FoundPreparation> without_rivals(std::vector<FoundPreparation> all) const {
    std::vector<FoundPreparation> kept;
    for (FoundPreparation& each : all) {
      const Rule& rule = *rule_of(each.key);
      const bool rival = std::any_of(kept.begin(), kept.end(), [&](const FoundPreparation& other) {
        const Rule& taken = *rule_of(other.key);
        return std::any_of(each.ingredients.begin(), each.ingredients.end(), [&](int i) {
          const bool core = has(rule.needs.front(), at(i).role);
          return core && needed(taken, at(i).role) &&
                 std::find(other.ingredients.begin(), other.ingredients.end(), i) !=
                     other.ingredients.end();
        });
      });
      if (!rival) kept.push_back(std::move(each));
    }
    return kept;
  }
};

}  // namespace

std::vector<FoundPreparation> recognise(const Dish& dish,
                                        const std::vector<CountedIngredient>& counted) {
  return Recogniser(dish, counted).find();
}

}  // namespace kitchen
