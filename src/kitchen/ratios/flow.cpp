#include "kitchen/ratios/flow.h"

#include <algorithm>
#include <set>

#include "base/folding.h"
#include "kitchen/foods.h"

namespace kitchen {
namespace {

// Words of an ingredient's name that do not name it.
constexpr std::string_view kPlainWords[] = {
    "plain", "strong",  "fresh",  "dried",  "ground", "large",   "medium", "small",
    "white", "whole",   "tinned", "mature", "caster", "raising", "self",   "fine",
    "soft",  "light",   "dark",   "brown",  "mixed",  "free",    "gluten", "instant",
    "hot",   "cold",    "warm",   "thick",  "for",    "and",     "of",     "the",
    "in",    "rolling", "frozen", "mild",   "red",    "green",   "sweet",  "mince"};
// First of several words, these belong to what follows: coconut milk is no coconut.
constexpr std::string_view kBelong[] = {"milk",  "cream",  "egg",  "coconut", "oat",    "butter",
                                        "lemon", "tomato", "lime", "bread",   "baking", "soda"};

bool one_of(std::string_view word, const auto& list) {
  return std::find(std::begin(list), std::end(list), word) != std::end(list);
}

std::vector<std::string> naming_words(const std::string& name) {
  // "Butter for scones" is named by butter.
  const std::string folded = base::folded(name);
  const auto words = base::words_of(folded.substr(0, folded.find(" for ")));
  std::vector<std::string> out;
  for (std::size_t i = 0; i < words.size(); ++i) {
    const bool last = i + 1 == words.size();
    if (!last && (one_of(words[i], kPlainWords) || one_of(words[i], kBelong))) continue;
    if (words[i].size() >= 3) out.push_back(singular(words[i]));
  }
  return out;
}

bool holds(const std::vector<int>& list, int value) {
  return std::find(list.begin(), list.end(), value) != list.end();
}

std::vector<int> listed(const std::set<int>& set) { return {set.begin(), set.end()}; }

}  // namespace

std::string plain_text(std::string_view text) {
  std::string out = " ";
  for (const std::string& word : base::words_of(base::folded(text))) out += word + " ";
  return out;
}

bool says_one_of(const std::string& text, const std::vector<std::string_view>& words) {
  return std::any_of(words.begin(), words.end(), [&](std::string_view word) {
    std::string start = plain_text(word);
    start.pop_back();  // "rub" finds "rubbing"
    return text.find(start) != std::string::npos;
  });
}

Flow::Flow(const Dish& dish)
    : dish_(dish),
      name_(plain_text(dish.name)),
      before_(dish.method.size()),
      after_(dish.method.size()) {
  const std::vector<std::string_view> collecting = {"weigh",  "wash",    "line",      "measure",
                                                    "grease", "collect", "cut paper", "rinse"};
  for (std::size_t i = 0; i < dish.method.size(); ++i) {
    const Step& step = dish.method[i];
    text_.push_back(plain_text(step.says));
    auto handled = step.uses;
    if (handled.empty()) handled = named_in(text_.back());
    std::sort(handled.begin(), handled.end());
    handled_.push_back(std::move(handled));
    text_.back() += plain_text(step.id).substr(1);  // "prove" may stand in the id alone
    // Only the first word counts: "Weigh the flour, then rub in" is told by its second sentence.
    const std::string first = text_.back().substr(0, text_.back().find(' ', 1) + 1);
    const bool two_deeds = text_.back().find(" then ") != std::string::npos;
    prepares_.push_back(
        !two_deeds && (says_one_of(first, collecting) || says_one_of(text_.back(), {"cut paper"})));
    for (const Follows& follows : step.follows) {
      before_[i].push_back(follows.step);
      after_[index(follows.step)].push_back(static_cast<int>(i));
    }
  }
}

bool Flow::says(int step, const std::vector<std::string_view>& words) const {
  return says_one_of(text(step), words);
}

std::vector<int> Flow::named_in(const std::string& text) const {
  const bool all = says_one_of(text, {"all the ingredients", "everything"});
  std::string words = " ";
  for (const std::string& word : base::words_of(text)) words += singular(word) + " ";
  std::vector<int> out;
  for (std::size_t i = 0; i < dish_.ingredients.size(); ++i) {
    const auto names = naming_words(dish_.ingredients[i].name);
    const bool named = std::any_of(names.begin(), names.end(), [&](const std::string& name) {
      return words.find(" " + name + " ") != std::string::npos;
    });
    if (all || named) out.push_back(static_cast<int>(i));
  }
  return all ? out : without_namesakes(out, words);
}

// "Cream the butter and caster sugar" does not mean the icing sugar, and "rub in the butter" not
// the butter for the sauce.
std::vector<int> Flow::without_namesakes(const std::vector<int>& named,
                                         const std::string& words) const {
  struct Name {
    std::string last, whole, purpose;
    bool said;
  };
  std::vector<Name> names;
  for (const int i : named) {
    const std::string name = base::folded(dish_.ingredients[index(i)].name);
    const auto cut = name.find(" for ");
    Name out{" ", singular_words(name.substr(0, cut)), "", false};
    const auto parts = naming_words(name);
    if (!parts.empty()) out.last = parts.back();
    if (cut != std::string::npos) out.purpose = singular_words(name.substr(cut + 5));
    out.said = words.find(out.whole) != std::string::npos;
    names.push_back(std::move(out));
  }
  std::vector<int> kept;
  for (std::size_t i = 0; i < names.size(); ++i) {
    const Name& mine = names[i];
    const bool purpose_said = !mine.purpose.empty() &&
                              words.find(mine.purpose) != std::string::npos;
    const bool meant_less = std::any_of(names.begin(), names.end(), [&](const Name& other) {
      if (&other == &mine || other.last != mine.last) return false;
      const bool other_purpose = !other.purpose.empty() &&
                                 words.find(other.purpose) != std::string::npos;
      if (purpose_said != other_purpose) return other_purpose;
      if (mine.purpose.empty() != other.purpose.empty()) return other.purpose.empty();
      return other.said && !mine.said;
    });
    if (!meant_less) kept.push_back(named[i]);
  }
  return kept;
}

// After the oven, the grill or the frying pan nothing more goes into a dough or batter.
bool Flow::ends_the_mixing(int step) const {
  const auto& heat = dish_.method[index(step)].heat;
  if (heat && heat->with != HeatKind::kRing) return true;
  return says(step, {"bake", "fry", "grill"});
}

bool Flow::leads_to(int from, int to) const {
  std::set<int> seen{from};
  std::vector<int> open{from};
  while (!open.empty()) {
    const int step = open.back();
    open.pop_back();
    if (step == to) return true;
    if (ends_the_mixing(step)) continue;
    for (const int next : after_[index(step)]) {
      if (seen.insert(next).second) open.push_back(next);
    }
  }
  return false;
}

std::set<int> Flow::core(int ingredient, const std::vector<std::string_view>& words,
                         int back) const {
  std::set<int> steps;
  const int count = static_cast<int>(dish_.method.size());
  for (int s = 0; s < count; ++s) {
    if (!only_prepares(s) && holds(handled(s), ingredient)) steps.insert(s);
  }
  const std::set<int> worked = steps;
  for (int s = 0; s < count; ++s) {
    if (only_prepares(s) || handled(s).empty() || !says(s, words)) continue;
    const bool joins = std::any_of(worked.begin(), worked.end(),
                                   [&](int w) { return leads_to(s, w); });
    if (joins) steps.insert(s);
  }
  for (; back > 0; --back) {
    const std::set<int> now = steps;
    for (const int step : now) {
      for (const int led : before_[index(step)]) {
        if (!only_prepares(led) && !ends_the_mixing(led)) steps.insert(led);
      }
    }
  }
  return steps;
}

std::vector<Flow::Made> Flow::made_around(int ingredient,
                                          const std::vector<std::string_view>& words,
                                          int back) const {
  std::set<int> steps = core(ingredient, words, back);
  if (steps.empty()) {
    Made all;
    for (std::size_t i = 0; i < dish_.method.size(); ++i) all.steps.push_back(static_cast<int>(i));
    for (std::size_t i = 0; i < dish_.ingredients.size(); ++i)
      all.ingredients.push_back(static_cast<int>(i));
    return {all};
  }
  const std::set<int> core = steps;
  std::vector<Made> out{made_in(steps, core, ingredient)};
  std::set<int> edge = steps;
  while (!edge.empty()) {
    std::set<int> next;
    for (const int step : edge) {
      if (ends_the_mixing(step)) continue;
      for (const int follower : after_[index(step)]) {
        if (!only_prepares(follower) && steps.insert(follower).second) next.insert(follower);
      }
    }
    if (!next.empty()) out.push_back(made_in(steps, core, ingredient));
    edge = std::move(next);
  }
  return out;
}

Flow::Made Flow::made_in(const std::set<int>& steps, const std::set<int>& core, int around) const {
  std::set<int> ingredients{around};
  for (const int step : steps) {
    ingredients.insert(handled(step).begin(), handled(step).end());
    // "Fold the purée into the cream" names no list: what led here comes along.
    const bool says_all = !dish_.method[index(step)].uses.empty() || core.contains(step);
    if (says_all || ends_the_mixing(step)) continue;
    for (const int led : before_[index(step)]) {
      if (!only_prepares(led)) ingredients.insert(handled(led).begin(), handled(led).end());
    }
  }
  return {listed(steps), listed(ingredients)};
}

}  // namespace kitchen
