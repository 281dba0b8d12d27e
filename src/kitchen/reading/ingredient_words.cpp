#include "kitchen/reading/ingredient_words.h"

#include <algorithm>
#include <array>

#include "base/folding.h"
#include "kitchen/reading/actions.h"

namespace kitchen {
namespace {

using Words = std::vector<std::string>;

bool holds(const Words& words, std::string_view word) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

bool one_of(std::string_view word, std::initializer_list<std::string_view> all) {
  return std::find(all.begin(), all.end(), word) != all.end();
}

// Words of a name that do not tell which food is meant.
bool says_little(const std::string& word) {
  static constexpr std::array<std::string_view, 44> kLittle = {
      "of",       "in",    "the",        "and",    "or",     "a",      "with",  "for",   "raw",
      "dry",      "dried", "fresh",      "plain",  "tinned", "canned", "about", "large", "small",
      "medium",   "ripe",  "free-range", "ground", "whole",  "soft",   "hard",  "red",   "green",
      "white",    "brown", "black",      "yellow", "mixed",  "hot",    "cold",  "warm",  "boneless",
      "skinless", "lean",  "chopped",    "frozen", "fine",   "strong", "light", "dark"};
  return std::find(kLittle.begin(), kLittle.end(), word) != kLittle.end();
}

Words words_of_name(std::string_view name) {
  Words out;
  for (const std::string& word : base::words_of(base::folded(name))) out.push_back(singular(word));
  return out;
}

bool raw_fish_or_meat(const Food& food) {
  if (!one_of(food.category, {"beef", "lamb", "pork", "poultry game", "fish"})) return false;
  const Words words = words_of_name(food.name);
  for (const char* cooked :
       {"cooked", "canned", "smoked", "cured", "corned", "ham", "pepperoni", "chorizo", "salami",
        "roast", "tuna", "anchovy", "finger", "stick", "prosciutto"}) {
    if (holds(words, cooked)) return holds(words, "bacon") || holds(words, "haddock");
  }
  return true;
}

}  // namespace

Words singular_words(const std::vector<LineToken>& tokens, std::size_t begin, std::size_t end) {
  Words out;
  for (std::size_t i = begin; i < std::min(end, tokens.size()); ++i) {
    if (tokens[i].kind != LineToken::Kind::kWord) continue;
    for (const std::string& word : base::words_of(tokens[i].word)) out.push_back(singular(word));
  }
  return out;
}

IngredientWords::IngredientWords(const std::vector<IngredientDraft>& ingredients,
                                 const Foods& foods) {
  for (const IngredientDraft& each : ingredients) {
    tokens_.push_back(words_of_name(each.name));
    foods_.push_back(each.food.value.empty() ? nullptr : foods.find(each.food.value));
    std::vector<Words> other;
    if (foods_.back() != nullptr) {
      for (const std::string& name : foods_.back()->other_names)
        other.push_back(words_of_name(name));
    }
    other_.push_back(std::move(other));
    groups_.push_back(base::folded(each.group));
  }
}

IngredientWords::Named IngredientWords::named_in(const Words& words, const std::string& group,
                                                 const std::set<int>& used) const {
  Named out;
  const std::string heading = base::folded(group);
  std::vector<double> score(tokens_.size(), 0);
  for (std::size_t i = 0; i < tokens_.size(); ++i) {
    const Words& name = tokens_[i];
    if (name.empty()) continue;
    bool head = holds(words, name.back());
    for (std::size_t k = 0; k < name.size(); ++k) {
      if (says_little(name[k]) && k + 1 != name.size()) continue;
      if (!holds(words, name[k])) continue;
      const bool only_here = std::none_of(tokens_.begin(), tokens_.end(), [&](const Words& other) {
        return &other != &name && holds(other, name[k]);
      });
      score[i] += k + 1 == name.size() ? 1 : (only_here ? 0.8 : 0.4);
      // "the chicken" names chicken breast; "the curry" does not name curry powder.
      const bool needs_head = one_of(
          name.back(),
          {"powder", "paste", "sauce", "oil", "milk", "flour", "stock", "puree", "seed", "leaf",
           "cube", "sugar", "vinegar", "syrup", "wrap", "crumb", "breadcrumb"});
      if (only_here && !says_little(name[k]) && !needs_head) head = true;
    }
    // A describing word decides between two of a kind, but names nothing alone.
    if (head) {
      for (const std::string& word : name)
        if (says_little(word) && word != name.back() && holds(words, word)) score[i] += 0.5;
    }
    if (!head) score[i] = 0;
    // "the scallions" of a line that says spring onions: all words of another name.
    if (score[i] > 0) continue;
    for (const Words& other : other_[i]) {
      const bool all = !other.empty() &&
                       std::all_of(other.begin(), other.end(),
                                   [&](const auto& w) { return holds(words, w); });
      const bool anybody_else = std::any_of(tokens_.begin(), tokens_.end(), [&](const Words& o) {
        return !o.empty() && !other.empty() && o.back() == other.back();
      });
      if (all && !anybody_else && !(other.size() == 1 && action_named(other[0]) != nullptr))
        score[i] = 0.3;
    }
  }
  // Of several with the same head word the one with most of its words is meant; without a
  // difference the one of this heading, else all.
  for (std::size_t i = 0; i < tokens_.size(); ++i) {
    if (score[i] == 0) continue;
    bool beaten = false;
    for (std::size_t k = 0; k < tokens_.size(); ++k) {
      if (k == i || score[k] == 0 || tokens_[k].back() != tokens_[i].back()) continue;
      if (score[k] > score[i] + 1e-9) beaten = true;
      if (score[k] == score[i] && !heading.empty() && groups_[k] == heading &&
          groups_[i] != heading)
        beaten = true;
    }
    if (!beaten) out.ingredients.push_back(static_cast<int>(i));
  }
  const auto add_where = [&](double confidence, auto&& wanted) {
    for (std::size_t i = 0; i < tokens_.size(); ++i) {
      const int index = static_cast<int>(i);
      if (!wanted(index) ||
          std::find(out.ingredients.begin(), out.ingredients.end(), index) != out.ingredients.end())
        continue;
      if (!heading.empty() && !groups_[i].empty() && groups_[i] != heading) continue;
      out.ingredients.push_back(index);
      out.confidence = std::min(out.confidence, confidence);
    }
  };
  const auto category = [&](int i, std::initializer_list<std::string_view> kinds) {
    const Food* f = food(i);
    return f != nullptr && one_of(f->category, kinds);
  };
  const bool remaining = holds(words, "remaining") || holds(words, "other");
  if (holds(words, "ingredient") || holds(words, "everything")) {
    const bool dry = holds(words, "dry"), wet = holds(words, "wet") || holds(words, "liquid");
    add_where(0.7, [&](int i) {
      if (dry)
        return category(i, {"flours, grains, starches", "sugars sweet", "baking agents",
                            "herbs spices", "gluten free"});
      if (wet) return category(i, {"dairy", "eggs", "fats oils", "liquids", "dairy free"});
      return !remaining || used.count(i) == 0;
    });
  }
  if (holds(words, "vegetable") || holds(words, "veg"))
    add_where(0.7, [&](int i) { return vegetable(i) && category(i, {"veg"}); });
  if (holds(words, "fruit")) add_where(0.7, [&](int i) { return category(i, {"fruit"}); });
  if (holds(words, "spice"))
    add_where(0.7, [&](int i) { return category(i, {"herbs spices"}) && !salad(i); });
  if (holds(words, "herb")) add_where(0.7, [&](int i) { return category(i, {"herbs spices"}); });
  if (holds(words, "meat") || holds(words, "mince"))
    add_where(0.8, [&](int i) { return raw_meat(i); });
  if (holds(words, "seasoning"))
    add_where(0.7, [&](int i) {
      return food(i) != nullptr && one_of(food(i)->key, {"salt", "black_pepper"});
    });
  std::sort(out.ingredients.begin(), out.ingredients.end());
  return out;
}

bool IngredientWords::mentions(std::string_view word) const {
  return std::any_of(tokens_.begin(), tokens_.end(),
                     [&](const std::vector<std::string>& name) { return holds(name, word); });
}

bool IngredientWords::raw_meat(int i) const {
  return food(i) != nullptr && raw_fish_or_meat(*food(i));
}

bool IngredientWords::egg(int i) const {
  const Food* f = food(i);
  return f != nullptr && f->category == "eggs" && f->key != "egg_boiled";
}

bool IngredientWords::vegetable(int i) const {
  const Food* f = food(i);
  if (f == nullptr || !one_of(f->category, {"veg", "fruit", "herbs spices"})) return false;
  const Words words = words_of_name(f->name);
  for (const char* ready : {"canned", "frozen", "dried", "ground", "juice", "puree", "passata",
                            "pickled", "bottled", "carton", "powder", "dry"}) {
    if (holds(words, ready)) return false;
  }
  return f->category != "herbs spices" || holds(words, "fresh") || holds(words, "root");
}

bool IngredientWords::salad(int i) const {
  const Food* f = food(i);
  if (f == nullptr) return false;
  const Words words = words_of_name(f->name);
  for (const char* leaf :
       {"lettuce", "cucumber", "rocket", "watercress", "radish", "avocado", "strawberry",
        "raspberry", "blueberry", "grape", "kiwi", "banana", "melon"}) {
    if (holds(words, leaf)) return true;
  }
  return f->category == "herbs spices" && holds(words, "fresh");
}

}  // namespace kitchen
