// Which ingredients the words of a step speak of.
#pragma once

#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "kitchen/reading/draft.h"
#include "kitchen/reading/line_tokens.h"

namespace kitchen {

/// Finds ingredients by their words: "the onion", "flour and sugar", "the spices", "everything".
class IngredientWords {
 public:
  IngredientWords(const std::vector<IngredientDraft>&, const Foods&);

  /// `group`: the heading the step stands under; `used`: those already used (for "the remaining");
  /// `combined`: those that "the vegetables" no longer means.
  /// Indices of ingredients, in order.
  std::vector<int> named_in(const std::vector<std::string>& words, const std::string& group,
                            const std::set<int>& used, const std::set<int>& combined = {}) const;

  /// Whether some ingredient's name has the word (singular).
  bool mentions(std::string_view word) const;
  /// Whether it is the word some ingredient's name ends with: "bun" of "burger buns".
  bool is_head(std::string_view word) const;
  /// Whether this ingredient's name has it.
  bool has_word(int ingredient, std::string_view word) const;
  /// Raw meat, poultry, fish or shellfish as bought; egg apart.
  bool raw_meat(int ingredient) const;
  bool egg(int ingredient) const;
  bool vegetable(int ingredient) const;  ///< or fruit: to be washed or peeled
  bool salad(int ingredient) const;      ///< eaten as it is: salad leaves, herbs, fruit
  const Food* food(int ingredient) const { return foods_[static_cast<std::size_t>(ingredient)]; }

 private:
  std::vector<std::vector<std::string>> tokens_;  ///< of the name, singular; the head word last
  std::vector<std::vector<std::vector<std::string>>> other_;  ///< the food's other names, as words
  std::vector<const Food*> foods_;
  std::vector<std::string> groups_;  ///< headings, folded

  double score(std::size_t ingredient, const std::vector<std::string>& words) const;
  double other_name(std::size_t ingredient, const std::vector<std::string>& words) const;
  std::vector<int> by_name(const std::vector<std::string>& words, const std::string& heading) const;
  bool within_another(std::size_t ingredient, const std::vector<std::string>& words) const;
  std::string heading_in(const std::vector<std::string>& words) const;
};

/// The tokens as folded words in the singular.
std::vector<std::string> singular_words(const std::vector<LineToken>&, std::size_t begin,
                                        std::size_t end);
/// The words of a text, folded, in the singular.
std::vector<std::string> words_in_singular(std::string_view text);

}  // namespace kitchen
