#include "kitchen/reading/food_words.h"

#include <algorithm>
#include <array>
#include <map>
#include <unordered_set>

#include "base/folding.h"
#include "base/text.h"
#include "kitchen/foods.h"

namespace kitchen {
namespace {

using Words = std::vector<std::string>;

// What people say for short.
std::string in_full(std::string word) {
  static const std::map<std::string_view, std::string_view> kShort = {
      {"tom", "tomato"},      {"toms", "tomato"},     {"marg", "margarine"},
      {"spud", "potato"},     {"parm", "parmesan"},   {"choc", "chocolate"},
      {"cuke", "cucumber"},   {"spag", "spaghetti"},  {"bicarb", "bicarbonate"},
      {"pdr", "powder"},      {"pwd", "powder"},      {"ess", "essence"},
      {"evap", "evaporated"}, {"cond", "condensed"},  {"veg", "vegetable"},
      {"pots", "potato"},     {"caps", "capsicum"},   {"moz", "mozzarella"},
      {"mozz", "mozzarella"}, {"mayo", "mayonnaise"}, {"wholem", "wholemeal"},
      {"des", "desiccated"},  {"gran", "granulated"}, {"brekkie", "breakfast"}};
  const auto found = kShort.find(word);
  return found == kShort.end() ? word : std::string(found->second);
}

}  // namespace

std::vector<std::string> food_words(std::string_view text) {
  Words out;
  for (const std::string& word : base::words_of(base::folded(text))) {
    std::string one = word;
    if (one.ends_with("'s")) one.resize(one.size() - 2);
    while (!one.empty() && one.back() == '\'') one.pop_back();
    if (!one.empty()) out.push_back(in_full(singular(one)));
  }
  // "Plain flower"
  for (std::size_t i = 1; i < out.size(); ++i) {
    if (out[i] == "flower" && base::one_of(out[i - 1], {"plain", "raising", "strong", "bread",
                                                        "wholemeal", "corn", "purpose"}))
      out[i] = "flour";
  }
  // "GF flour"
  for (std::size_t i = 0; i < out.size(); ++i) {
    if (out[i] != "gf") continue;
    out[i] = "gluten";
    out.insert(out.begin() + static_cast<std::ptrdiff_t>(i) + 1, "free");
  }
  // "s.r. flour"
  for (std::size_t i = 0; i + 2 < out.size(); ++i) {
    if (out[i] == "s" && out[i + 1] == "r") {
      out[i] = "self";
      out[i + 1] = "raising";
    }
  }
  return out;
}

std::string spoken(const Words& words, std::size_t from, std::size_t to) {
  std::string out;
  for (std::size_t i = from; i < to; ++i) {
    if (!out.empty()) out += ' ';
    out += words[i];
  }
  return out;
}

// Words that make another food of what they stand with: never dropped, never ignored.
bool changes_food(const std::string& word) {
  static const std::unordered_set<std::string_view> kWords = {
      "free",    "vegan",       "vegetarian", "veggie",      "dairy",       "gluten",    "plant",
      "lactose", "reduced",     "low",        "light",       "less",        "sugar",     "diet",
      "mock",    "imitation",   "oil",        "juice",       "flour",       "puree",     "paste",
      "sauce",   "stock",       "vinegar",    "powder",      "butter",      "milk",      "cream",
      "extract", "essence",     "syrup",      "jam",         "jelly",       "drink",     "yogurt",
      "yoghurt", "cheese",      "spread",     "soup",        "crisp",       "cake",      "bread",
      "noodle",  "pasta",       "rice",       "seed",        "nut",         "zest",      "rind",
      "peel",    "pickle",      "pickled",    "chutney",     "ketchup",     "cube",      "mince",
      "sausage", "burger",      "bacon",      "ham",         "liver",       "bone",      "yolk",
      "white",   "wine",        "beer",       "mix",         "biscuit",     "pie",       "pastry",
      "wrap",    "concentrate", "substitute", "alternative", "nutritional", "preserved", "flax",
      "flower",  "blossom"};
  return kWords.contains(word);
}

// Little words, and words that add nothing to which food is meant.
bool idle(const std::string& word) {
  static const std::unordered_set<std::string_view> kWords = {
      "of",      "the",     "a",       "an",       "and",     "or",     "in",      "with",
      "for",     "your",    "some",    "leaf",     "piece",   "chunk",  "fresh",   "good",
      "quality", "pure",    "real",    "whole",    "floret",  "fillet", "raw",     "dry",
      "plain",   "british", "english", "italian",  "local",   "large",  "small",   "medium",
      "baby",    "young",   "ripe",    "standard", "natural", "vine",   "premium", "traditional",
      "style",   "of",      "cube",    "wedge",    "portion", "steak",  "bulb",    "stalk",
      "stem",    "sprig",   "head",    "clove",    "curly",   "flat",   "coarse",  "fine",
      "quick"};
  return kWords.contains(word);
}

// The parts of keys that only say in which form a food is.
bool form_word(std::string_view word) {
  static constexpr std::array<std::string_view, 18> kForms = {
      "fresh", "dried", "dry",    "ground", "seed",   "seeds", "tinned", "frozen", "cooked",
      "raw",   "root",  "flakes", "powder", "rinsed", "juice", "brine",  "water",  "oil"};
  return base::one_of(word, kForms);
}

std::string stem_of(const std::string& key) {
  std::string stem = key;
  for (;;) {
    const auto bar = stem.rfind('_');
    if (bar == std::string::npos || !form_word(std::string_view(stem).substr(bar + 1))) return stem;
    stem.resize(bar);
  }
}

bool has(const Words& words, std::string_view word) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

// A word with doubled letters written once.
std::string once(const std::string& word) {
  std::string out;
  for (const char c : word) {
    if (out.empty() || out.back() != c) out += c;
  }
  return out;
}

// What is left of a word when its vowels are: "sossage" and "sausage" sound alike.
std::string sound(const std::string& word) {
  std::string out;
  for (const char c : word) {
    const char one = c == 'c' || c == 'q' ? 'k' : c == 'z' ? 's' : c;
    if (base::one_of(std::string_view(&one, 1), {"a", "e", "i", "o", "u", "y", "h"})) continue;
    if (out.empty() || out.back() != one) out += one;
  }
  return out;
}

}  // namespace kitchen
