#include "kitchen/raw_tasting.h"

#include <algorithm>
#include <array>
#include <string_view>

#include "base/text.h"

namespace kitchen {
namespace {

constexpr std::array<std::string_view, 4> kTaste = {"taste", "tasting", "lick", "licking"};
/// The word before that turns it round: "season to taste", "do not taste", "without tasting".
constexpr std::array<std::string_view, 6> kNotSo = {"to", "not", "don't", "never", "no", "without"};
constexpr std::array<std::string_view, 4> kEgg = {"egg", "eggs", "yolk", "yolks"};
/// Foods with egg in their name that are not raw egg.
constexpr std::array<std::string_view, 5> kCookedEgg = {"noodles", "noodle", "pasta", "mayonnaise",
                                                        "boiled"};
constexpr std::array<std::string_view, 12> kMeat = {"chicken", "turkey", "duck",     "beef",
                                                    "pork",    "lamb",   "mince",    "sausage",
                                                    "bacon",   "gammon", "sausages", "steak"};

std::vector<std::string> words_of(std::string_view text) {
  std::string plain = base::lower(std::string(text));
  for (char& c : plain) {
    const bool letter = (c >= 'a' && c <= 'z') || c == '\'' || static_cast<unsigned char>(c) > 127;
    if (!letter) c = ' ';
  }
  return base::parts(plain, ' ');
}

template <std::size_t N>
bool is_one_of(const std::array<std::string_view, N>& list, std::string_view word) {
  return std::find(list.begin(), list.end(), word) != list.end();
}

template <std::size_t N>
bool has(const Ingredient& ingredient, const std::array<std::string_view, N>& list) {
  const std::vector<std::string> words = words_of(ingredient.name);
  return std::any_of(words.begin(), words.end(),
                     [&](const std::string& word) { return is_one_of(list, word); });
}

bool is_egg(const Ingredient& i) { return has(i, kEgg) && !has(i, kCookedEgg); }
bool is_flour(const Ingredient& i) { return has(i, std::array<std::string_view, 1>{"flour"}); }
bool is_fish(const Ingredient& i) {
  return i.label_read &&
         (i.contains.contains(Allergen::kFish) || i.contains.contains(Allergen::kCrustaceans) ||
          i.contains.contains(Allergen::kMolluscs));
}

bool any_of_it(const Dish& dish, bool (*is)(const Ingredient&)) {
  return std::any_of(dish.ingredients.begin(), dish.ingredients.end(), is);
}

/// before[a][b]: step a has ended when step b starts, by waits from end to start.
std::vector<std::vector<bool>> ended_before(const Dish& dish) {
  const std::size_t n = dish.method.size();
  std::vector<std::vector<bool>> before(n, std::vector<bool>(n, false));
  for (std::size_t b = 0; b < n; ++b) {
    for (const Follows& wait : dish.method[b].follows) {
      if (wait.of == Moment::kEnd && wait.moment == Moment::kStart)
        before[static_cast<std::size_t>(wait.step)][b] = true;
    }
  }
  for (std::size_t k = 0; k < n; ++k) {
    for (std::size_t a = 0; a < n; ++a) {
      for (std::size_t b = 0; before[a][k] && b < n; ++b) {
        if (before[k][b]) before[a][b] = true;
      }
    }
  }
  return before;
}

}  // namespace

std::vector<std::string> raw_in(const Dish& dish) {
  std::vector<std::string> out;
  if (any_of_it(dish, is_egg)) out.emplace_back("egg");
  if (any_of_it(dish, is_flour)) out.emplace_back("flour");
  const bool marked = std::any_of(dish.method.begin(), dish.method.end(),
                                  [](const Step& step) { return step.hygiene == Hygiene::kRaw; });
  if (!marked) return out;
  if (std::any_of(dish.ingredients.begin(), dish.ingredients.end(),
                  [](const Ingredient& i) { return has(i, kMeat); }))
    out.emplace_back("meat");
  if (any_of_it(dish, is_fish)) out.emplace_back("fish");
  if (out.empty()) out.emplace_back("meat or fish");
  return out;
}

bool says_to_taste(const Step& step) {
  const std::vector<std::string> words = words_of(step.says);
  for (std::size_t w = 0; w < words.size(); ++w) {
    if (is_one_of(kTaste, words[w]) && (w == 0 || !is_one_of(kNotSo, words[w - 1]))) return true;
  }
  return false;
}

bool brings_raw(const Dish& dish, int index) {
  const Step& step = dish.method[static_cast<std::size_t>(index)];
  return step.hygiene == Hygiene::kRaw ||
         std::any_of(step.uses.begin(), step.uses.end(), [&](int i) {
           const Ingredient& ingredient = dish.ingredients[static_cast<std::size_t>(i)];
           return is_egg(ingredient) || is_flour(ingredient);
         });
}

bool has_unnamed_raw(const Dish& dish) {
  for (std::size_t i = 0; i < dish.ingredients.size(); ++i) {
    if (!is_egg(dish.ingredients[i]) && !is_flour(dish.ingredients[i])) continue;
    const auto named = [&](const Step& step) {
      return std::find(step.uses.begin(), step.uses.end(), static_cast<int>(i)) != step.uses.end();
    };
    if (std::none_of(dish.method.begin(), dish.method.end(), named)) return true;
  }
  return false;
}

std::vector<int> tasted_raw(const Dish& dish) {
  const std::size_t n = dish.method.size();
  std::vector<int> out;
  const bool any = std::any_of(dish.method.begin(), dish.method.end(), says_to_taste);
  if (!any) return out;
  const std::vector<std::vector<bool>> before = ended_before(dish);
  const bool from_the_start = has_unnamed_raw(dish);
  for (std::size_t t = 0; t < n; ++t) {
    if (!says_to_taste(dish.method[t])) continue;
    // A heat step that is over by then and had the raw step before it, or was it.
    const auto cooked_since = [&](std::size_t raw) {
      for (std::size_t h = 0; h < n; ++h) {
        if (dish.method[h].heat && before[h][t] && (h == raw || before[raw][h])) return true;
      }
      return false;
    };
    bool raw = false;
    for (std::size_t s = 0; s < n && !raw; ++s)
      raw = brings_raw(dish, static_cast<int>(s)) && (s == t || before[s][t]) && !cooked_since(s);
    if (from_the_start && !raw) {
      raw = true;
      for (std::size_t h = 0; h < n; ++h) raw = raw && !(dish.method[h].heat && before[h][t]);
    }
    if (raw) out.push_back(static_cast<int>(t));
  }
  return out;
}

}  // namespace kitchen
