#include "kitchen/reading/ingredient_words.h"

#include <algorithm>
#include <array>

#include "base/folding.h"
#include "base/text.h"
#include "kitchen/reading/actions.h"

namespace kitchen {
namespace {

using Words = std::vector<std::string>;

bool holds(const Words& words, std::string_view word) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

// Words of a name that do not tell which food is meant.
bool says_little(const std::string& word) {
  static constexpr std::array<std::string_view, 56> kLittle = {
      "of",     "in",     "the",      "and",      "or",         "a",      "with",    "for",
      "raw",    "dry",    "dried",    "fresh",    "plain",      "tinned", "canned",  "about",
      "large",  "small",  "medium",   "ripe",     "free-range", "ground", "whole",   "soft",
      "hard",   "red",    "green",    "white",    "brown",      "black",  "yellow",  "mixed",
      "hot",    "cold",   "warm",     "boneless", "skinless",   "lean",   "chopped", "frozen",
      "fine",   "strong", "light",    "dark",     "cooked",     "grated", "sliced",  "crushed",
      "beaten", "melted", "softened", "peeled",   "drained",    "diced",  "toasted", "cooled"};
  return std::find(kLittle.begin(), kLittle.end(), word) != kLittle.end();
}

// Little words around a name, which no step is about.
bool tells_nothing(const std::string& word) {
  return word.size() == 1 ||
         base::one_of(word, {"a",   "an",     "the",   "of",   "and",  "or",  "some",
                             "few", "little", "if",    "you",  "have", "it",  "your",
                             "to",  "plus",   "extra", "each", "both", "more"});
}

Words words_of_name(std::string_view name) {
  Words out;
  for (const std::string& word : base::words_of(base::folded(name.substr(0, name.find(','))))) {
    // "tuna in spring water" is tuna.
    if (!out.empty() && base::one_of(word, {"in", "with", "from", "for", "on"})) break;
    if (!tells_nothing(word)) out.push_back(singular(word));
  }
  // The stock is made up from its cube.
  if (out.size() > 1 && base::one_of(out.back(), {"cube", "pot"}) && out[out.size() - 2] == "stock")
    out.pop_back();
  return out;
}

// One letter left out, put in or changed, or two changed round, in a word of five letters and more.
bool misspells(const std::string& word, const std::string& meant) {
  // Words of their own that look like a food's.
  if (base::one_of(word, {"batter", "better", "bitter", "broad", "creamy", "four", "grate", "paste",
                          "pasta", "slice", "spread", "stick", "stock", "thick"}))
    return false;
  if (meant.size() < 5 || word.size() < 4 || word[0] != meant[0] || word == meant) return false;
  if (word.size() > meant.size() + 1 || meant.size() > word.size() + 1) return false;
  if (base::edit_distance(word, meant) <= 1) return true;
  return word.size() == meant.size() &&
         std::is_permutation(word.begin(), word.end(), meant.begin());
}

// "Wash the fruit", not "peel the kiwi fruit".
bool speaks_of_fruit(const Words& words) {
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (words[i] != "fruit") continue;
    if (i == 0 || base::one_of(words[i - 1], {"the", "all", "your", "with", "and", "of",
                                              "remaining", "fresh", "prepared", "chopped"}))
      return true;
  }
  return false;
}

// Oil that one cooks with, when there are several: not the few drops that season.
bool cooking_oil(const Words& name) {
  return name.size() == 1 || std::none_of(name.begin(), name.end(), [](const std::string& w) {
           return base::one_of(w, {"sesame", "spray", "chilli", "truffle", "walnut"});
         });
}

// "The sugar" is the one that is creamed or rubbed in, not the one that is dusted over.
bool usual_sugar(const Words& name) {
  return name.size() == 1 || holds(name, "caster") || holds(name, "granulated");
}

bool raw_fish_or_meat(const Food& food) {
  if (!base::one_of(food.category, {"beef", "lamb", "pork", "poultry game", "fish"})) return false;
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

Words words_in_singular(std::string_view text) {
  Words out;
  for (const std::string& word : base::words_of(base::folded(text))) out.push_back(singular(word));
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

// How well the words name the ingredient: 0 = not at all.
double IngredientWords::score(std::size_t i, const Words& words) const {
  const Words& name = tokens_[i];
  if (name.empty()) return 0;
  if (name.size() > 1 && name.back() == "cream" && holds(name, "ice") && !holds(words, "ice"))
    return 0;
  // "the chicken" names chicken breast; "the curry" does not name curry powder.
  const auto needs_head = [](const Words& n) {
    return base::one_of(n.back(), {"powder", "paste", "sauce", "oil", "milk", "flour", "stock",
                                   "puree", "seed", "leaf", "cube", "sugar", "vinegar", "syrup",
                                   "wrap", "crumb", "breadcrumb", "noodle"});
  };
  double score = 0;
  bool head = holds(words, name.back()) || (name.back() == "breadcrumb" && holds(words, "crumb"));
  bool all = true;
  for (std::size_t k = 0; k < name.size(); ++k) {
    if (says_little(name[k]) && k + 1 != name.size()) continue;
    if (!holds(words, name[k])) {
      all = false;
      continue;
    }
    const bool only_here = std::none_of(tokens_.begin(), tokens_.end(), [&](const Words& other) {
      return &other != &name && holds(other, name[k]) &&
             (other.back() == name[k] || !needs_head(other));
    });
    score += k + 1 == name.size() ? 1 : (only_here ? 0.8 : 0.4);
    if (only_here && !says_little(name[k]) && !needs_head(name)) head = true;
  }
  if (!head) return other_name(i, words);
  // A describing word decides between two of a kind, but names nothing alone.
  for (const std::string& word : name)
    if (says_little(word) && word != name.back() && holds(words, word)) score += 0.5;
  // "the sugar" of a list with sugar and brown sugar is the one that is called just that.
  return all ? score + 0.1 : score;
}

// "the scallions" of a line that says spring onions: all words of another name, or a word one
// letter off.
double IngredientWords::other_name(std::size_t i, const Words& words) const {
  constexpr double kByAnotherName = 0.3;
  for (const Words& other : other_[i]) {
    const bool all = !other.empty() && std::all_of(other.begin(), other.end(),
                                                   [&](const auto& w) { return holds(words, w); });
    const bool anybody_else = std::any_of(tokens_.begin(), tokens_.end(), [&](const Words& o) {
      return !o.empty() && !other.empty() && o.back() == other.back();
    });
    if (all && !anybody_else && !(other.size() == 1 && action_named(other[0]) != nullptr))
      return kByAnotherName;
  }
  const std::string& head = tokens_[i].back();
  const bool misspelt = std::any_of(words.begin(), words.end(), [&](const std::string& w) {
    return misspells(w, head) && !mentions(w) && action_named(w) == nullptr;
  });
  return misspelt ? kByAnotherName : 0;
}

// Of several with the same head word the one with most of its words is meant; without a difference
// the one of this heading, else all.
std::vector<int> IngredientWords::by_name(const Words& words, const std::string& heading) const {
  std::vector<double> scores(tokens_.size(), 0);
  for (std::size_t i = 0; i < tokens_.size(); ++i) scores[i] = score(i, words);
  const bool both = holds(words, "both");
  std::vector<int> out;
  for (std::size_t i = 0; i < tokens_.size(); ++i) {
    if (scores[i] == 0) continue;
    bool beaten = false;
    for (std::size_t k = 0; k < tokens_.size() && !beaten && !both; ++k) {
      if (k == i || scores[k] == 0 || tokens_[k].back() != tokens_[i].back()) continue;
      const double lead = scores[k] - scores[i];
      const bool level = lead > -1e-9 && lead < 1e-9;
      beaten = lead > 1e-9 ||
               (level && !heading.empty() && groups_[k] == heading && groups_[i] != heading) ||
               (level && tokens_[i].back() == "oil" && cooking_oil(tokens_[k]) &&
                !cooking_oil(tokens_[i])) ||
               (level && tokens_[i].back() == "sugar" && usual_sugar(tokens_[k]) &&
                !usual_sugar(tokens_[i]));
    }
    if (!beaten && !within_another(i, words)) out.push_back(static_cast<int>(i));
  }
  return out;
}

// "chilli powder" does not name the green chilli: the word stands in the whole name of another
// wherever it stands.
bool IngredientWords::within_another(std::size_t i, const Words& words) const {
  const Words& name = tokens_[i];
  bool somewhere = false;
  for (std::size_t at = 0; at < words.size(); ++at) {
    if (!holds(name, words[at]) || says_little(words[at])) continue;
    somewhere = true;
    const bool inside = std::any_of(tokens_.begin(), tokens_.end(), [&](const Words& other) {
      if (&other == &name || other.size() < 2 || other.size() <= name.size() - 1) return false;
      if (other.back() == name.back()) return false;
      for (std::size_t k = 0; k < other.size() && k <= at; ++k) {
        if (at - k + other.size() > words.size()) continue;
        if (std::equal(other.begin(), other.end(),
                       words.begin() + static_cast<std::ptrdiff_t>(at - k)))
          return true;
      }
      return false;
    });
    if (!inside) return false;
  }
  return somewhere;
}

// The heading that "the marinade ingredients" or "everything for the sauce" speaks of.
std::string IngredientWords::heading_in(const Words& words) const {
  for (const std::string& group : groups_) {
    for (const std::string& word : base::words_of(group)) {
      const std::string one = singular(word);
      if (one.size() > 3 &&
          !base::one_of(one, {"with", "mix", "together", "ingredient", "serve"}) &&
          holds(words, one))
        return group;
    }
  }
  return "";
}

std::vector<int> IngredientWords::named_in(const Words& words, const std::string& group,
                                           const std::set<int>& used,
                                           const std::set<int>& combined) const {
  const std::string heading = base::folded(group);
  std::vector<int> out = by_name(words, heading);
  const auto add_where = [&](auto&& wanted) {
    for (std::size_t i = 0; i < tokens_.size(); ++i) {
      const int index = static_cast<int>(i);
      if (combined.count(index) != 0 || !wanted(index) ||
          std::find(out.begin(), out.end(), index) != out.end())
        continue;
      if (!heading.empty() && !groups_[i].empty() && groups_[i] != heading) continue;
      out.push_back(index);
    }
  };
  const auto category = [&](int i, std::initializer_list<std::string_view> kinds) {
    const Food* f = food(i);
    return f != nullptr && base::one_of(f->category, kinds);
  };
  const auto key_is = [&](int i, std::initializer_list<std::string_view> keys) {
    return food(i) != nullptr && base::one_of(food(i)->key, keys);
  };
  if (holds(words, "ingredient") || holds(words, "everything")) {
    const bool remaining = holds(words, "remaining") || holds(words, "other");
    const bool dry = holds(words, "dry"), wet = holds(words, "wet") || holds(words, "liquid");
    const std::string whose = heading_in(words);
    add_where([&](int i) {
      if (!whose.empty()) return groups_[static_cast<std::size_t>(i)] == whose;
      if (dry)
        return category(i, {"flours, grains, starches", "sugars sweet", "baking agents",
                            "herbs spices", "gluten free"});
      if (wet) return category(i, {"dairy", "eggs", "fats oils", "liquids", "dairy free"});
      return !remaining || used.count(i) == 0;
    });
    // What was mixed before is what was made: "pour the wet ingredients into the dry".
    const bool mixed = (dry || wet) && std::all_of(out.begin(), out.end(),
                                                   [&](int i) { return used.count(i) != 0; });
    if (mixed) out = by_name(words, heading);
  }
  const bool all = holds(words, "all");
  if (holds(words, "vegetable") || holds(words, "veg"))
    add_where([&](int i) {
      // Who washes the vegetables thinks of neither garlic nor chilli.
      const bool flavours = key_is(i, {"garlic", "ginger_root", "chilli_red", "chilli_green"});
      return vegetable(i) && category(i, {"veg"}) && (all || !flavours);
    });
  if (speaks_of_fruit(words))
    add_where([&](int i) { return vegetable(i) && category(i, {"fruit"}); });
  if (holds(words, "spice"))
    add_where(
        [&](int i) { return category(i, {"herbs spices"}) && !salad(i) && !key_is(i, {"salt"}); });
  if (holds(words, "herb"))
    add_where([&](int i) {
      return category(i, {"herbs spices"}) && (salad(i) || food(i)->key.ends_with("_dried"));
    });
  if (holds(words, "fat")) add_where([&](int i) { return category(i, {"fats oils"}); });
  const bool pasta = holds(words, "pasta") && !mentions("pasta");
  if (pasta)
    add_where([&](int i) {
      return food(i) != nullptr && (food(i)->key.find("pasta") != std::string::npos ||
                                    key_is(i, {"spaghetti_dry", "macaroni_dry",
                                               "wholewheat_spaghetti_dry", "lasagne_sheets_dry"}));
    });
  for (const char* meat : {"beef", "lamb", "pork"}) {
    if (holds(words, meat) && !mentions(meat))
      add_where([&](int i) { return category(i, {meat}) && raw_meat(i); });
  }
  if (holds(words, "fish") && !mentions("fish"))
    add_where([&](int i) { return category(i, {"fish"}) && raw_meat(i); });
  if (holds(words, "cheese") && out.empty())
    add_where([&](int i) {
      const Food* f = food(i);
      return f != nullptr && f->category == "dairy" &&
             std::any_of(other_[static_cast<std::size_t>(i)].begin(),
                         other_[static_cast<std::size_t>(i)].end(),
                         [](const Words& name) { return holds(name, "cheese"); });
    });
  // "Crumble the cube into a jug": its stock is called by its own word elsewhere.
  if (holds(words, "cube") && !mentions("cube") &&
      (holds(words, "crumble") || holds(words, "dissolve") || holds(words, "stock")))
    add_where([&](int i) {
      return food(i) != nullptr && food(i)->key.find("stock") != std::string::npos;
    });
  if (holds(words, "season")) add_where([&](int i) { return key_is(i, {"salt", "black_pepper"}); });
  if (holds(words, "meat") || holds(words, "mince")) add_where([&](int i) { return raw_meat(i); });
  if (holds(words, "seasoning"))
    add_where([&](int i) { return key_is(i, {"salt", "black_pepper"}); });
  std::sort(out.begin(), out.end());
  return out;
}

bool IngredientWords::mentions(std::string_view word) const {
  return std::any_of(tokens_.begin(), tokens_.end(),
                     [&](const std::vector<std::string>& name) { return holds(name, word); });
}

bool IngredientWords::is_head(std::string_view word) const {
  return std::any_of(tokens_.begin(), tokens_.end(),
                     [&](const Words& name) { return !name.empty() && name.back() == word; });
}

bool IngredientWords::has_word(int ingredient, std::string_view word) const {
  return holds(tokens_[static_cast<std::size_t>(ingredient)], word);
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
  if (f == nullptr || !base::one_of(f->category, {"veg", "fruit", "herbs spices"})) return false;
  const Words words = words_in_singular(f->name);
  for (const char* ready : {"canned", "tinned", "frozen", "dried", "ground", "juice", "puree",
                            "passata", "pickled", "bottled", "carton", "powder", "dry"}) {
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
  return f->category == "herbs spices" && holds(words_in_singular(f->name), "fresh");
}

}  // namespace kitchen
