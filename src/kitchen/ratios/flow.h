// How ingredients travel through a method: which step handles which, and what is made together.
//
// "Rub in: flour, butter. Mix, after it: sugar, sultanas, milk" are one dough; the soup beside it
// is not. What a step handles is what it says it uses, else the ingredients its sentence names.
#pragma once

#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "kitchen/dish.h"

namespace kitchen {

class Flow {
 public:
  explicit Flow(const Dish&);

  /// Ingredients a step handles, ascending.
  const std::vector<int>& handled(int step) const { return handled_[index(step)]; }
  /// Weighing, washing, lining, fetching: it brings together what does not belong together.
  bool only_prepares(int step) const { return prepares_[index(step)]; }
  /// Whether one of the words stands in the step's sentence (folded; parts of words count at their
  /// beginning: "whisk" finds "whisking").
  bool says(int step, const std::vector<std::string_view>& words) const;
  /// The dish's name folded, with spaces around.
  const std::string& name() const { return name_; }
  const std::string& text(int step) const { return text_[index(step)]; }

  struct Made {
    std::vector<int> steps, ingredients;
  };
  /// What is made around an ingredient, from narrow to wide. First the steps in which it is worked
  /// and those that lead into them by the `words` of a method, with what comes `back` steps before
  /// ("Whisk egg and milk. Stir the wet into the flour."); then, one layer after the other, what
  /// follows, up to the oven. Where in a method one mixture begins and ends is the caller's to
  /// judge. An ingredient that no step names: everything.
  std::vector<Made> made_around(int ingredient, const std::vector<std::string_view>& words,
                                int back) const;

 private:
  const Dish& dish_;
  std::string name_;
  std::vector<std::string> text_;
  std::vector<std::vector<int>> handled_;
  std::vector<std::vector<int>> before_, after_;  ///< steps
  std::vector<bool> prepares_;

  static std::size_t index(int i) { return static_cast<std::size_t>(i); }
  std::vector<int> named_in(const std::string& text) const;
  bool ends_the_mixing(int step) const;
  std::set<int> core(int ingredient, const std::vector<std::string_view>& words, int back) const;
  std::vector<int> without_namesakes(const std::vector<int>& named, const std::string& words) const;
  bool leads_to(int from, int to) const;
  Made made_in(const std::set<int>& steps, const std::set<int>& core, int around) const;
};

/// Whether one of the words begins a word of a text that is folded and has spaces around.
bool says_one_of(const std::string& text, const std::vector<std::string_view>& words);
/// Folded, punctuation as single spaces, one space at both ends.
std::string plain_text(std::string_view);

}  // namespace kitchen
