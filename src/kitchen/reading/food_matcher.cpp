#include "kitchen/reading/food_matcher.h"

#include <algorithm>
#include <array>
#include <map>

#include "base/folding.h"
#include "base/text.h"
#include "kitchen/reading/amounts.h"
#include "kitchen/reading/food_words.h"
#include "kitchen/reading/line_words.h"

namespace kitchen {
namespace {

using Words = std::vector<std::string>;

constexpr double kNearEnough = 0.72;  // below it no food is named: measured on tests/data/dishes

bool spice_measure(const Quantity& q) {
  return q.unit == Unit::kTeaspoon ||
         (q.unit == Unit::kPiece && (q.piece == "pinch" || q.piece == "dash"));
}
bool fresh_measure(const Quantity& q) {
  static constexpr std::array<std::string_view, 9> kFresh = {
      "bunch", "handful", "sprig", "leaf", "stem", "stalk", "pot", "punnet", "frond"};
  return q.unit == Unit::kPiece && base::one_of(q.piece, kFresh);
}

bool vegetable_measure(const Quantity& q) {
  if (q.unit == Unit::kPiece) return q.piece.empty() || q.piece == "half" || q.piece == "slice";
  return q.unit == Unit::kGram || q.unit == Unit::kKilogram || q.unit == Unit::kPound ||
         q.unit == Unit::kOunce || q.unit == Unit::kCup || q.unit == Unit::kAmericanCup;
}

// Whether a food can be what a "vegan", "gluten-free" or "nut-free" name means. A last net under
// everything else: neither the food nor what might be meant instead may be what is shunned.
bool may_be(const Food& food, const Words& words) {
  if (has(words, "vegan") && food.vegan != Known::kYes) return false;
  if ((has(words, "vegetarian") || has(words, "veggie")) && food.vegetarian == Known::kNo)
    return false;
  if (!has(words, "free") || food.key.starts_with("gf_")) return true;
  const auto shuns = [&](std::string_view word, Allergen allergen) {
    return has(words, word) && food.contains.contains(allergen);
  };
  return !(shuns("dairy", Allergen::kMilk) || shuns("milk", Allergen::kMilk) ||
           shuns("gluten", Allergen::kGluten) || shuns("wheat", Allergen::kGluten) ||
           shuns("egg", Allergen::kEggs) || shuns("nut", Allergen::kNuts) ||
           shuns("nut", Allergen::kPeanuts) || shuns("peanut", Allergen::kPeanuts) ||
           shuns("soya", Allergen::kSoya) || shuns("soy", Allergen::kSoya) ||
           shuns("fish", Allergen::kFish) || shuns("sesame", Allergen::kSesame));
}

bool herb_or_spice(const Food& food) { return food.category.starts_with("herbs"); }

}  // namespace

FoodMatcher::FoodMatcher(const Foods& foods) : foods_(foods) {
  names_.reserve(foods.all().size() * 5);
  for (const Food& food : foods.all()) {
    add_name(food, food.name);
    for (const std::string& other : food.other_names) add_name(food, other);
    by_stem_[stem_of(food.key)].push_back(&food);
  }
  for (std::size_t i = 0; i < names_.size(); ++i) {
    for (const int word : names_[i].core) {
      auto& list = words_[static_cast<std::size_t>(word)].names;
      if (list.empty() || list.back() != i) list.push_back(i);
    }
  }
}

bool FoodMatcher::shuns(std::string_view name) {
  const Words words = food_words(name);
  return std::any_of(words.begin(), words.end(), [](const std::string& w) {
    return base::one_of(w, {"free", "vegan", "vegetarian", "veggie", "dairy", "lactose", "plant",
                            "mock", "imitation", "alternative", "substitute", "flax"});
  });
}

void FoodMatcher::add_name(const Food& food, std::string_view text) {
  Name name{&food, {}, {}};
  std::string core, rest;
  int depth = 0;
  bool behind = false;
  for (const char c : text) {
    if (c == '(') ++depth;
    if (c == ',') behind = true;
    (depth > 0 || behind ? rest : core) += c;
    if (c == ')') --depth;
  }
  for (const std::string& word : food_words(core)) name.core.push_back(number_of(word));
  for (const std::string& word : food_words(rest)) name.rest.push_back(number_of(word));
  if (!name.core.empty()) names_.push_back(std::move(name));
}

int FoodMatcher::number_of(const std::string& word) {
  const auto [found, fresh] = numbers_.emplace(word, static_cast<int>(words_.size()));
  if (fresh) words_.push_back({idle(word), changes_food(word), {}});
  return found->second;
}

const FoodMatcher::Word* FoodMatcher::word_of(const std::string& word) const {
  const auto found = numbers_.find(word);
  if (found == numbers_.end()) return nullptr;
  const Word& known = words_[static_cast<std::size_t>(found->second)];
  return known.names.empty() ? nullptr : &known;
}

bool FoodMatcher::knows_word(const std::string& word) const { return word_of(word) != nullptr; }

const Food* FoodMatcher::exact(const Words& words) const {
  return words.empty() ? nullptr : foods_.named(spoken(words, 0, words.size()));
}

const Food* FoodMatcher::sibling(const Food& food,
                                 std::initializer_list<std::string_view> forms) const {
  const auto found = by_stem_.find(stem_of(food.key));
  if (found == by_stem_.end()) return nullptr;
  for (const std::string_view form : forms) {
    for (const Food* each : found->second) {
      const std::string tail = each->key.substr(found->first.size());
      if (tail.size() > 1 && std::string_view(tail).substr(1).starts_with(form)) return each;
    }
  }
  return nullptr;
}

// A form the writer states wins; else what the measure and the container tell.
const Food* FoodMatcher::in_form(const Food& food, const Words& words,
                                 const FoodHints& hints) const {
  const auto or_self = [&](const Food* other) { return other != nullptr ? other : &food; };
  if (has(words, "dried") || has(words, "dry")) return or_self(sibling(food, {"dried", "dry"}));
  if (has(words, "frozen")) return or_self(sibling(food, {"frozen"}));
  if (has(words, "tinned") || has(words, "canned")) return or_self(sibling(food, {"tinned"}));
  if (has(words, "fresh")) return or_self(sibling(food, {"fresh", "root"}));
  if (has(words, "ground") || has(words, "powdered"))
    return or_self(sibling(food, {"ground", "powder"}));
  if (has(words, "cooked")) {
    if (const Food* other = sibling(food, {"cooked"})) return other;
    // Dry rice is never "cooked basmati rice".
    return or_self(foods_.named(base::say("cooked ", words.back())));
  }
  if (has(words, "raw")) return or_self(sibling(food, {"raw", "fillet"}));
  if (has(words, "seed")) return or_self(sibling(food, {"seed"}));
  if (hints.container || (hints.drained && food.key.ends_with("_dry"))) {
    if (food.key.find("tinned") != std::string::npos) return &food;
    if (const Food* tinned = sibling(food, {"tinned"})) return tinned;
    if (!words.empty()) {
      if (const Food* tinned = foods_.named(base::say("tinned ", spoken(words, 0, words.size()))))
        return tinned;
    }
    if (food.key.ends_with("_dry") && food.category.starts_with("pulse"))
      return or_self(foods_.named(base::say("cooked ", words.back())));
    return &food;
  }
  if (food.category == "veg" && food.key != "ginger_root") return &food;
  if (!herb_or_spice(food) && food.key != "ginger_root") return &food;
  if (fresh_measure(hints.quantity) || hints.cut) return or_self(sibling(food, {"fresh", "root"}));
  if (spice_measure(hints.quantity) && !has(words, "leaf")) {
    if (food.key.ends_with("_fresh") || food.key.ends_with("_root"))
      return or_self(sibling(food, {"ground", "dried"}));
  }
  return &food;
}

// The known words a misspelt one is nearest to, at most three; itself when it is known or nothing
// is near.
FoodMatcher::WordList FoodMatcher::similar_words(const std::string& word) const {
  if (word.size() < 4 || knows_word(word)) return {word};
  const std::size_t bearable = word.size() >= 8 ? 2 : 1;
  const std::string sounds = sound(word);
  WordList best;
  std::size_t least = 3;
  // Nobody misspells the first letter; that keeps the search short.
  for (auto each = numbers_.lower_bound(word.substr(0, 1));
       each != numbers_.end() && each->first[0] == word[0]; ++each) {
    const std::string& known = each->first;
    if (words_[static_cast<std::size_t>(each->second)].names.empty()) continue;
    if (known.size() + 2 < word.size() || known.size() > word.size() + 2) continue;
    // What sounds alike may be further off; of a short word only the last letter may be missing.
    const bool alike = word.size() > 4 && sounds.size() > 1 && sound(known) == sounds;
    const bool begun = known.size() == word.size() + 1 && known.starts_with(word);
    const std::size_t off = base::edit_distance(word, known);
    if (off > (alike ? 2 : word.size() < 5 ? (begun ? 1U : 0U) : bearable)) continue;
    if (off > least) continue;
    if (off < least) best.clear();
    least = off;
    // "Peper" is rather pepper than paper: people forget to double a letter.
    const bool first = once(known) == once(word) ||
                       (alike && !best.empty() && sound(best.front()) != sounds);
    best.insert(first ? best.begin() : best.end(), known);
  }
  constexpr std::size_t kMost = 3;
  if (best.size() > kMost) best.resize(kMost);
  return best.empty() ? WordList{word} : best;
}

double FoodMatcher::likeness(const std::vector<Asked>& asked, const Name& name) const {
  const auto has_number = [](const std::vector<int>& words, int number) {
    return std::find(words.begin(), words.end(), number) != words.end();
  };
  const auto is_asked = [&](int number) {
    return std::any_of(asked.begin(), asked.end(),
                       [&](const Asked& each) { return each.number == number; });
  };
  double met = 0, weight = 0, missed = 1;
  bool named = false;
  for (const Asked& word : asked) {
    const double w = word.idle ? 0.2 : 1;
    weight += w;
    if (word.number >= 0 && has_number(name.core, word.number)) {
      met += w;
      named = named || asked.size() == 1 || !word.mark;
    } else if (word.number >= 0 && has_number(name.rest, word.number)) {
      met += w;
      weight += 0.05;
    } else if (word.changes_food) {
      missed = 0.5;
    }
  }
  if (!named) return 0;
  double unmet = 0;
  for (const int number : name.core) {
    if (is_asked(number)) continue;
    const Word& word = words_[static_cast<std::size_t>(number)];
    unmet += word.idle ? 0.1 : 0.5;
    if (word.changes_food) missed = 0.5;
  }
  for (const int number : name.rest) {
    if (!is_asked(number)) unmet += 0.03;
  }
  return missed * met / (weight + unmet);
}

std::vector<FoodMatcher::Found> FoodMatcher::nearest(const Words& words) const {
  // "Gluten-free" alone is no food.
  static constexpr std::array<std::string_view, 14> kMarks = {
      "free",  "gluten", "dairy",   "vegan", "vegetarian", "low",   "reduced",
      "light", "fat",    "lactose", "nut",   "egg",        "extra", "salt"};
  std::vector<Asked> asked;
  for (const std::string& word : words) {
    const auto found = numbers_.find(word);
    asked.push_back({found == numbers_.end() ? -1 : found->second, idle(word), changes_food(word),
                     base::one_of(word, kMarks)});
  }
  std::vector<char> seen(names_.size(), 0);
  std::map<const Food*, std::size_t> place;  // in `out`
  std::vector<Found> out;
  for (const Asked& word : asked) {
    if (word.number < 0 || (word.idle && words.size() > 1)) continue;
    for (const std::size_t i : words_[static_cast<std::size_t>(word.number)].names) {
      if (seen[i] != 0) continue;
      seen[i] = 1;
      const double like = likeness(asked, names_[i]);
      const auto [same, fresh] = place.emplace(names_[i].food, out.size());
      if (fresh) {
        out.push_back({names_[i].food, like});
      } else {
        Found& there = out[same->second];
        there.likeness = std::max(there.likeness, like);
      }
    }
  }
  std::stable_sort(out.begin(), out.end(),
                   [](const Found& a, const Found& b) { return a.likeness > b.likeness; });
  return out;
}

// "vine tomatoes" by "tomatoes", "parsley leaves" by "parsley": the longest part that is a food's
// very name, when nothing that is left out makes another food of it.
FoodGuess FoodMatcher::guess_from_part(const Words& words, const FoodHints& hints) const {
  for (std::size_t length = words.size() - 1; length >= 1; --length) {
    for (std::size_t from = words.size() - length + 1; from-- > 0;) {
      const Food* food = foods_.named(spoken(words, from, from + length));
      if (food == nullptr) continue;
      double confidence = 0.92;
      bool fits = true;
      for (std::size_t i = 0; i < words.size(); ++i) {
        if (i >= from && i < from + length) continue;
        const std::string& word = words[i];
        const bool form = form_word(word) || word == "canned";
        if (idle(word) || quality_word(word) || preparation_word(word) || form) continue;
        // A word that names foods of its own makes another food; one nobody knows is a variety.
        // "Apricot jam", "raspberry jelly": the fruit it is made of.
        const Food* flavour = foods_.named(word);
        const bool sweet = food->key.find("jam") != std::string::npos ||
                           food->key.find("jelly") != std::string::npos;
        if (sweet && flavour != nullptr && flavour->category == "fruit" && i + 1 == from) {
          confidence -= 0.12;
          continue;
        }
        if (changes_food(word) || (knows_word(word) && i + 1 != from)) fits = false;
        if (knows_word(word)) fits = fits && !foods_.named(word);
        confidence -= 0.12;
      }
      if (!fits || confidence < 0.6) continue;
      const Food* tinned = hints.container ? foods_.named(base::say(
                                                 "tinned ", spoken(words, from, from + length)))
                                           : nullptr;
      return {tinned != nullptr ? tinned : in_form(*food, words, hints), confidence, {}};
    }
  }
  return {};
}

// "Milk to loosen", "lard the size of a walnut", "kosher salt": what stands before the first word
// that tells how, without the words nobody knows.
FoodGuess FoodMatcher::guess_from_core(const Words& words, const FoodHints& hints) const {
  const auto tail = std::find_if(words.begin(), words.end(), [](const std::string& w) {
    return base::one_of(
        w, {"to", "for", "from",  "the",     "that", "which", "any",   "if",   "you", "left",
            "in", "on",  "mixed", "steeped", "per",  "at",    "about", "just", "and", "or"});
  });
  Words core;
  double sure = 0.8;
  for (auto word = words.begin(); word != tail; ++word) {
    const bool number = (*word)[0] >= '0' && (*word)[0] <= '9';
    const bool share = number && word + 1 != tail && *(word + 1) == "fat";
    if (share) {
      ++word;
      continue;
    }
    const std::string spelt = similar_words(*word).front();
    if (number || (!knows_word(spelt) && !changes_food(*word))) {
      sure *= 0.9;
      continue;
    }
    core.push_back(spelt);
  }
  if (core.empty() || core.size() == words.size()) return {};
  const bool only_idle = std::all_of(core.begin(), core.end(), [](const std::string& w) {
    return idle(w) || preparation_word(w) || piece_word(w).has_value();
  });
  if (only_idle) return {};
  FoodGuess guess = match(spoken(core, 0, core.size()), hints);
  guess.confidence *= sure;
  return guess;
}

FoodGuess FoodMatcher::match(std::string_view name, const FoodHints& hints) const {
  Words words = food_words(name);
  if (words.size() > 12) words.resize(12);
  if (words.empty()) return {};
  FoodGuess guess;
  // American chili powder is a mild blend; the singular of the table makes one word of both.
  if (base::folded(name).find("chili powder") != std::string::npos) {
    if (const Food* mild = foods_.find("chilli_powder_mild"))
      return {mild, 0.85, {"chilli_powder"}};
  }
  // "Peppers" are the vegetable; a little "pepper" is the spice.
  if (words.size() == 1 && words[0] == "pepper") {
    const bool many = base::folded(name).ends_with("s");
    const char* meant = many || vegetable_measure(hints.quantity) ? "red pepper" : "black pepper";
    if (const Food* food = foods_.named(meant)) return {food, 0.9, {}};
  }
  // The very words first: what the table calls "peppers" need not be its "pepper".
  const Food* const as_written = foods_.named(name);
  const Food* const known = as_written != nullptr && exact(words) != nullptr ? as_written
                                                                             : exact(words);
  if (const Food* food = known) {
    // What names a food exactly has said its form.
    const bool said = std::any_of(words.begin(), words.end(), [](const std::string& w) {
      return form_word(w) || w == "canned";
    });
    const Food* form = said ? food : in_form(*food, words, hints);
    guess = {form, form == food ? 1.0 : 0.9, {}};
  }
  // Whole ones are counted: "2 mixed peppers" are not the sliced ones from the freezer.
  const bool whole_ones = hints.quantity.unit == Unit::kPiece && hints.quantity.piece.empty();
  if (guess.food != nullptr && whole_ones && words.size() > 1 && !has(words, "frozen") &&
      guess.food->key.ends_with("_frozen")) {
    const FoodGuess fresh = match(words.back() + "s", hints);
    if (fresh.food != nullptr) guess = {fresh.food, 0.8, {guess.food->key}};
  }
  Words spelt = words;
  double doubt = 1;
  if (guess.food == nullptr) {
    std::vector<WordList> ways;
    for (std::string& word : spelt) {
      ways.push_back(idle(word) || quality_word(word) ? WordList{word} : similar_words(word));
      if (ways.back().front() != word) doubt *= 0.85;
      word = ways.back().front();
    }
    // "Chicken breat" is no bread: of words as near the one that makes a food's name.
    for (std::size_t i = 0; i < spelt.size() && exact(spelt) == nullptr; ++i) {
      for (const std::string& other : ways[i]) {
        Words tried = spelt;
        tried[i] = other;
        if (exact(tried) == nullptr) continue;
        spelt = std::move(tried);
        break;
      }
    }
    if (doubt < 1 && spelt.size() == 1 && spelt[0] == "pepper") {
      guess = match("pepper", hints);
      guess.confidence *= doubt;
    } else if (doubt < 1) {
      if (const Food* food = exact(spelt)) guess = {in_form(*food, spelt, hints), doubt, {}};
    }
  }
  if (guess.food == nullptr && words.size() > 1) {
    guess = guess_from_part(words, hints);
    if (guess.food == nullptr && doubt < 1) {
      guess = guess_from_part(spelt, hints);
      guess.confidence *= doubt;
    }
  }
  const std::vector<Found> found = nearest(spelt);
  if (guess.food == nullptr && !found.empty() && found.front().likeness >= kNearEnough) {
    const Food* form = in_form(*found.front().food, spelt, hints);
    guess.food = form;
    guess.confidence = 0.9 * doubt * found.front().likeness;
    if (found.size() > 1 && found[1].likeness > 0.97 * found.front().likeness)
      guess.confidence *= 0.8;
  }
  if (guess.food == nullptr) guess = guess_from_core(words, hints);
  if (guess.food != nullptr && !may_be(*guess.food, words)) guess = {};
  std::erase_if(guess.others,
                [&](const std::string& key) { return !may_be(*foods_.find(key), words); });
  const double worth_naming = guess.food != nullptr ? 0.35 : 0.2;
  for (const Found& each : found) {
    if (guess.others.size() >= 3 || each.likeness < worth_naming) break;
    if (each.food != guess.food && may_be(*each.food, words))
      guess.others.push_back(each.food->key);
  }
  return guess;
}

}  // namespace kitchen
