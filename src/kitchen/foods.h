// The table of foods: the shipped one (data/foods.csv) and the school's own over it.
//
// auto foods = read_foods(csv, "foods.csv"); foods.value().named("scallion")->key == "spring_onion"
#pragma once

#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "base/problem.h"
#include "kitchen/food.h"

namespace kitchen {

/// A food found by words, best first.
struct FoundFood {
  const Food* food = nullptr;
  double likeness = 0;  ///< 1 = the very name; above 0
  std::string by;       ///< the name that was matched, as the table writes it
};

class Foods {
 public:
  Foods() = default;
  explicit Foods(std::vector<Food> foods);

  const std::vector<Food>& all() const { return foods_; }
  const Food* find(std::string_view key) const;
  /// The food with exactly this name or other name, whatever its case, accents, and whether one or
  /// many ("Onions", "scallions"); nothing if there is none.
  const Food* named(std::string_view name) const;
  /// Foods whose names are like the words, in any order, misspelt or cut short: best first, at most
  /// `most`, each food once. Under 5 ms for the shipped table (bench).
  std::vector<FoundFood> search(std::string_view words, std::size_t most = 8) const;

  /// Foods of `own` replace those with the same key and win over shipped ones of the same name.
  Foods with(const Foods& own) const;

 private:
  struct Name {
    std::size_t food;
    std::string text;                 ///< as the table writes it
    std::vector<std::size_t> tokens;  ///< indices into tokens_
  };
  std::vector<Food> foods_;
  std::vector<Name> names_;
  std::vector<std::string> tokens_;  ///< folded words in the singular, each once, sorted
  std::map<std::string, std::size_t, std::less<>> by_key_, by_name_;

  void index();
};

/// Errors: table.*, foods.column, foods.key_twice, foods.name_twice, foods.value: a figure below 0,
/// above 100 g in 100 g or that cannot be read, an unknown word.
base::Result<Foods> read_foods(std::string_view csv, std::string file_name);

/// A word in the singular, as far as British cookery needs it: "tomatoes" -> "tomato", "leaves" ->
/// "leaf", "berries" -> "berry"; "couscous", "hummus", "swiss" stay.
std::string singular(std::string_view folded_word);
/// " plain white flour ": each word folded and in the singular, a space on both sides, so that
/// whole words can be looked for.
std::string singular_words(std::string_view);

}  // namespace kitchen
