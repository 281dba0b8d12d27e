#include "kitchen/reading/told_foods.h"

#include <algorithm>
#include <array>
#include <optional>
#include <string_view>

#include "base/folding.h"
#include "base/text.h"
#include "kitchen/reading/actions.h"
#include "kitchen/reading/ingredient_line.h"
#include "kitchen/reading/ingredient_words.h"
#include "kitchen/reading/line_words.h"
#include "kitchen/reading/passive.h"
#include "kitchen/reading/ware_words.h"

namespace kitchen {
namespace {

using Tokens = std::vector<LineToken>;

constexpr double kSure = 0.8;
constexpr std::size_t kLongestName = 6;  // words

// What ends the name of a food in a sentence.
bool ends_name(const LineToken& t) {
  static constexpr auto kEnds = std::to_array<std::string_view>(
      {"minutes", "minute", "mins",   "min",    "hours", "hour",  "seconds", "degrees", "c",
       "cm",      "times",  "people", "groups", "days",  "weeks", "and",     "or",      "with",
       "into",    "to",     "on",     "for",    "at",    "until", "then",    "in",      "over",
       "from",    "by",     "that",   "which",  "is",    "are",   "was",     "were",    "while",
       "when",    "but",    "so",     "as",     "it",    "they",  "i",       "we",      "per",
       "each",    "the",    "a",      "an",     "n",     "plus",  "if",      "because", "around",
       "through", "off",    "out"});
  if (t.kind != LineToken::Kind::kWord) return !t.is("-") && !t.is("%");
  return base::one_of(t.word, kEnds);
}

// Words that are foods and parts of dishes alike, or tell no food to be bought.
bool general(std::string_view word) {
  static constexpr std::array<std::string_view, 30> kWords = {
      "sauce",   "dough", "pastry", "soup",    "filling", "topping",  "mixture",   "batter",
      "pasta",   "salad", "cake",   "bread",   "stew",    "curry",    "vegetable", "fruit",
      "meat",    "fish",  "sponge", "biscuit", "stock",   "dressing", "spice",     "herb",
      "crumble", "pizza", "pie",    "base",    "ice",     "liquid"};
  return base::one_of(word, kWords);
}

bool before_food(const Tokens& t, std::size_t i) {
  return i < t.size() && t[i].kind == LineToken::Kind::kWord && !ends_name(t[i]);
}

bool listed(const std::vector<IngredientDraft>& known, const Food& food, const std::string& name) {
  const auto words = base::words_of(base::folded(name));
  const std::string head = words.empty() ? "" : singular(words.back());
  return std::any_of(known.begin(), known.end(), [&](const IngredientDraft& each) {
    if (each.food.value == food.key) return true;
    const auto its = base::words_of(base::folded(each.name));
    return std::any_of(its.begin(), its.end(),
                       [&](const std::string& w) { return singular(w) == head; });
  });
}

class Telling {
 public:
  Telling(const std::string& line, const FoodMatcher& foods, const Measures& measures,
          std::vector<IngredientDraft> known)
      : line_(line),
        t_(line_tokens(line)),
        foods_(foods),
        measures_(measures),
        known_(std::move(known)),
        taken_(t_.size(), false) {}

  std::vector<IngredientDraft> with_amounts() {
    for (std::size_t i = 0; i < t_.size(); ++i) {
      if (const std::size_t end = amount_of_food(i); end > i) i = end - 1;
    }
    return std::move(found_);
  }

  std::vector<IngredientDraft> named() {
    static_cast<void>(with_amounts());
    found_.clear();
    for (std::size_t i = 0; i < t_.size(); ++i) {
      if (const std::size_t end = name_at(i); end > i) i = end - 1;
    }
    return std::move(found_);
  }

 private:
  const std::string& line_;
  Tokens t_;
  const FoodMatcher& foods_;
  const Measures& measures_;
  std::vector<IngredientDraft> known_, found_;
  std::vector<bool> taken_;

  // "2 cloves of garlic", "a 400g tin of chopped tomatoes", "half a tin of beans"; where it ends.
  std::size_t amount_of_food(std::size_t i) {
    if (i > 0 && (t_[i - 1].is("-") || t_[i - 1].is("/")) && !t_[i].spaced) return i;
    auto amount = amount_at(t_, i, measures_);
    std::size_t from = i;
    // "a 400 g tin"
    if ((t_[i].is("a") || t_[i].is("an")) && i + 1 < t_.size() && t_[i + 1].number()) {
      amount = amount_at(t_, i + 1, measures_);
      from = i + 1;
    }
    if (!amount || amount->next <= from || amount->next >= t_.size()) return i;
    if (!amount->quantity.stated() && !amount->about) return i;
    std::size_t begin = amount->next;
    // "2 tablespoons of the oil": of what was there already. "(150g) of cream": a size in brackets.
    if (t_[begin].is("(")) {
      std::size_t close = begin;
      while (close < t_.size() && !t_[close].is(")")) ++close;
      if (close + 1 >= t_.size()) return i;
      begin = close + 1;
      if (t_[begin].is("of")) ++begin;
    }
    if (begin >= t_.size() || t_[begin].is("the") || t_[begin].is("it") || t_[begin].is("them"))
      return i;
    if (ends_name(t_[begin])) return i;
    std::size_t end = begin;
    while (before_food(t_, end) && end < begin + kLongestName) ++end;
    for (; end > begin; --end) {
      const std::string phrase = words_between(line_, t_, from, end);
      const std::string name = words_between(line_, t_, begin, end);
      auto read = read_ingredient_line(phrase, foods_, measures_);
      if (read.size() != 1 || read[0].food.value.empty() || read[0].food.confidence < kSure)
        continue;
      const auto words = base::words_of(base::folded(name));
      if (words.empty()) continue;
      // "In a hot frying pan", "in a jam jar", "the tea towel": the next word makes a ware of it.
      if (before_ware(i, end)) return i;
      const bool counted = read[0].quantity.value.unit == Unit::kPiece &&
                           read[0].quantity.value.piece.empty();
      if (counted && (t_[i].is("a") || t_[i].is("an")) && general(singular(words.back()))) continue;
      const bool again = !t_[i].number() &&
                         listed(known_, *foods_.foods().find(read[0].food.value), name);
      std::fill(taken_.begin() + static_cast<std::ptrdiff_t>(i),
                taken_.begin() + static_cast<std::ptrdiff_t>(end), true);
      if (!again) add(std::move(read[0]));
      return end;
    }
    return i;
  }

  // Whether what stands from `i` on is a ware once one word more is taken in.
  bool before_ware(std::size_t i, std::size_t end) const {
    const auto with = words_in_singular(words_between(line_, t_, i, std::min(end + 1, t_.size())));
    return only_ware(with) || only_ware(words_in_singular(words_between(line_, t_, i, end)));
  }

  // A food that is only named: the longest name of the table that begins here.
  std::size_t name_at(std::size_t i) {
    if (taken_[i] || t_[i].kind != LineToken::Kind::kWord || ends_name(t_[i])) return i;
    std::size_t end = i;
    while (before_food(t_, end) && end < i + kLongestName && !taken_[end]) ++end;
    for (; end > i; --end) {
      const std::string name = words_between(line_, t_, i, end);
      const Food* food = foods_.named(name);
      if (food == nullptr) continue;
      // "Butter the tin", "cream the sugar", "a roll": verbs and wares.
      const bool verb = end == i + 1 &&
                        (action_named(t_[i].word) != nullptr || method_verb(t_[i].word));
      const bool ware = end == i + 1 && !wares_in(" " + singular(t_[i].word) + " ").empty();
      if (verb || ware || before_ware(i, end) || general(singular(t_[end - 1].word))) return end;
      if (listed(known_, *food, name)) return end;
      auto read = read_ingredient_line(name, foods_, measures_);
      if (read.size() == 1 && !read[0].food.value.empty()) add(std::move(read[0]));
      return end;
    }
    return i;
  }

  void add(IngredientDraft draft) {
    known_.push_back(draft);
    found_.push_back(std::move(draft));
  }
};

}  // namespace

std::vector<IngredientDraft> told_foods(const std::string& line, const FoodMatcher& foods,
                                        const Measures& measures,
                                        std::vector<IngredientDraft> known, bool named_only) {
  Telling telling(line, foods, measures, std::move(known));
  return named_only ? telling.named() : telling.with_amounts();
}

}  // namespace kitchen
