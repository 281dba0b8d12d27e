#include "kitchen/reading/two_foods.h"

#include <algorithm>

#include "base/text.h"
#include "kitchen/reading/line_parts.h"

namespace kitchen {

// Where a line that names two foods may be cut: "4 tbsp mayonnaise and a squeeze of lemon juice",
// "lemon wedges and salad leaves, to serve". Behind the cut stands an amount or, like before it, a
// food of the table; what the table knows as one ("macaroni and cheese") stays one.
std::optional<std::size_t> second_food(const std::string& tidy, const FoodMatcher& foods,
                                       const Measures& measures) {
  constexpr double kSure = 0.85;
  const FoodGuess whole = foods.match(tidy, {});
  if (whole.food != nullptr && whole.confidence >= kSure && foods.match(tidy, {}).others.empty())
    return std::nullopt;
  for (auto at = tidy.find(" and "); at != std::string::npos; at = tidy.find(" and ", at + 1)) {
    const std::string before = tidy.substr(0, at), behind = tidy.substr(at + 5);
    const auto named = [&](const std::string& text) {
      std::string name = text.substr(0, text.find(','));
      for (const std::string_view tail :
           {" to serve", " to garnish", " to finish", " to decorate"}) {
        if (name.ends_with(tail)) name.resize(name.size() - tail.size());
      }
      const FoodGuess guess = foods.match(name, {});
      return guess.food != nullptr && guess.confidence >= kSure;
    };
    const auto t = line_tokens(behind);
    const auto amount = t.empty() ? std::nullopt : amount_at(t, 0, measures);
    const bool counted = amount && amount->quantity.stated() && amount->next < t.size() &&
                         !(t[0].is("a") && amount->quantity.unit == Unit::kPiece &&
                           amount->quantity.piece.empty() && !amount->about);
    const auto first = line_tokens(before);
    const auto opens = first.empty() ? std::nullopt : amount_at(first, 0, measures);
    const bool first_counted = opens && opens->quantity.stated() && opens->next < first.size();
    if (counted && first_counted) return at;
    if (!first_counted && !counted && named(before) && named(behind)) return at;
  }
  return std::nullopt;
}

// "1 egg beaten with 2 tbsp milk", "chia seeds soaked in 120 ml water": where what is weighed apart
// begins, told by an amount with a unit and a food of the table behind it.
std::optional<std::size_t> weighed_second(const std::string& tidy, const FoodMatcher& foods,
                                          const Measures& measures) {
  constexpr double kSure = 0.85;
  const auto t = line_tokens(tidy);
  const auto first = t.empty() ? std::nullopt : amount_at(t, 0, measures);
  for (std::size_t i = first ? first->next + 1 : 1; i + 2 < t.size(); ++i) {
    if (!base::one_of(t[i].word, {"in", "with", "+", "w"})) continue;
    std::size_t from = i + 1;
    if (t[from].is("/")) ++from;
    const auto amount = amount_at(t, from, measures);
    if (!amount || !amount->quantity.stated() || amount->next >= t.size() ||
        dimension(amount->quantity.unit) != Dimension::kVolume)
      continue;
    std::size_t end = amount->next;
    while (end < t.size() && t[end].kind == LineToken::Kind::kWord) ++end;
    const FoodGuess guess = foods.match(as_written(t, amount->next, end), {});
    if (guess.food != nullptr && guess.confidence >= kSure) return t[from].begin;
  }
  return std::nullopt;
}

// "self - raising flour": old print has spaces around its hyphens.
std::string hyphens_closed(std::string tidy) {
  for (const std::string_view first : {"self", "semi", "free", "sun", "fast", "easy", "full", "low",
                                       "ready", "all", "half", "stir", "extra"}) {
    const std::string apart = base::say(first, " - ");
    for (auto at = base::lower(tidy).find(apart); at != std::string::npos;
         at = base::lower(tidy).find(apart, at + 1)) {
      if (at > 0 && tidy[at - 1] != ' ') continue;
      tidy.erase(at + first.size(), 1);
      tidy.erase(at + first.size() + 1, 1);
    }
  }
  return tidy;
}

}  // namespace kitchen
