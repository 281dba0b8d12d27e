// What the words of a step say by themselves, whatever other steps did before: "in another bowl",
// "put a pan of water on to boil", "half the cheese". Only for order_signs.h, which knows the
// rest.
#pragma once

#include <initializer_list>
#include <string>
#include <string_view>
#include <vector>

#include "kitchen/reading/actions.h"
#include "kitchen/reading/draft.h"
#include "kitchen/reading/ingredient_words.h"

namespace kitchen {

/// Peeling, chopping, washing, weighing: done to the ingredient itself, before it joins anything.
bool prepares(Work);
/// "Rinse the rice and put it in a pan": it is in the pan now.
bool into_a_pan(const StepDraft& s);

/// Steps are told by their place in the method. Keeps all three.
class StepPhrases {
 public:
  StepPhrases(const DishDraft&, const std::vector<Work>&, const IngredientWords&);

  /// Folded, in the singular.
  const std::vector<std::string>& said(int i) const { return said_[static_cast<std::size_t>(i)]; }
  /// But for what only tells when: "While the chicken soaks,".
  const std::vector<std::string>& handled(int i) const {
    return handled_[static_cast<std::size_t>(i)];
  }
  /// Any of the words; the two one after the other; any among the first two words.
  bool says(int i, std::initializer_list<std::string_view> words) const;
  bool says_pair(int i, std::string_view a, std::string_view b) const;
  bool begins(int i, std::initializer_list<std::string_view> words) const;
  /// "Half the cheese", "enough of the milk": what is left is as it was.
  bool takes_part_of(int i, int ingredient) const;
  /// "Slash the skin of the fish", "pat the chicken dry": done to what is raw, by itself.
  bool readies_raw(int i) const;
  /// "Whip the cream", "melt the chocolate", "toast the buns", "unroll the pastry": begun with what
  /// nobody has touched.
  bool own_from_the_start(int i) const;
  /// "Melt the butter in a saucepan": a vessel that was not there before begins something of its
  /// own.
  bool in_a_vessel(int i) const;
  /// "Make the guacamole: halve the avocado ...", "For the sauce, warm the berries".
  bool makes(int i) const;
  /// "Beat the eggs with the milk": two things nobody has touched, and into nothing that is there.
  bool mixes_on_its_own(int i) const;
  /// Whether the step's equipment is called that.
  bool is_ware(int i, const std::string& noun) const;
  bool opens_tins(int i) const;
  /// "Put a large pan of water on to boil", "Heat a deep pan of oil".
  bool boils_water(int i) const;
  /// Hands, board and knife after raw meat: that step comes before, and what is next comes after.
  bool cleans(int i) const;
  bool lines_tin(int i) const;
  bool new_heading(int i) const;
  /// Salt, oil, water: on every bench, so nobody waits for who had it last.
  bool staple(int ingredient) const;

 private:
  bool says_first_for(int i) const;

  const DishDraft& draft_;
  const std::vector<Work>& works_;
  const IngredientWords& words_;
  std::vector<std::vector<std::string>> said_, handled_;

  const StepDraft& step(int i) const { return draft_.method[static_cast<std::size_t>(i)]; }
  Work work(int i) const { return works_[static_cast<std::size_t>(i)]; }
};

}  // namespace kitchen
