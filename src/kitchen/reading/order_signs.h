// What speaks for a step waiting for an earlier one, and what against: signs that hold or do not.
//
// "Fry the onion" after "Chop the onion": the earlier step had its food last, it is written just
// before, it prepares and this one is on the ring. How much each sign weighs stands in
// order_weights.h; step_order.cpp adds them up.
#pragma once

#include <array>
#include <map>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "kitchen/reading/actions.h"
#include "kitchen/reading/draft.h"
#include "kitchen/reading/ingredient_words.h"
#include "kitchen/reading/step_phrases.h"

namespace kitchen {

/// Steps: nothing waits straight for what was written longer ago. A text may hold thousands.
constexpr int kFarthest = 60;

/// How many signs there are; they are told by numbers from 0.
int sign_count();
/// The first so many stand for themselves; the others go with where a step stands, or in pairs.
int plain_sign_count();
/// In words, for the table of weights: "just before | had its food".
std::string sign_name(int sign);

/// Goes through a method step by step. Keeps the draft, the works and the words.
class OrderSigns {
 public:
  OrderSigns(const DishDraft&, const std::vector<Work>&, const IngredientWords&);

  /// A step as seen from the steps settled before it.
  struct Look {
    int step = 0;
    std::vector<int> flags;
    std::set<int> had_food, had_staple, named, made, mixture;  ///< steps that hold it
    bool any_holder = false;
    int open = 0;   ///< steps nobody waits for yet
    int into = -1;  ///< "to the pan": the step that had one last; -1 = none
  };
  /// Steps 0 to step - 1 must be settled.
  Look look(int step) const;
  /// The signs that hold for `look.step` waiting for `earlier`, in order.
  std::vector<int> signs(int earlier, const Look&) const;
  /// An oven set, a tin lined, hands washed, water put on: nothing of the dish is in it yet.
  bool set_up(int step) const;
  /// Whether the step has a pan.
  bool has_pan(int step) const;
  /// The step's `follows` stand: what it has in hand from now on, and what it has made.
  void settle(int step);

 private:
  const DishDraft& draft_;
  const std::vector<Work>& works_;
  const IngredientWords& words_;
  StepPhrases phrases_;
  std::map<int, int> last_of_;                    // ingredient -> step that handled it last
  std::map<std::string, int> made_;               // "dough" -> the step that has it in hand
  std::map<std::string, int> last_in_;            // pan, bowl or tin -> step that had it last
  std::array<int, 4> last_kind_{-1, -1, -1, -1};  // by WareKind: step that had such a thing last
  std::vector<bool> waited_for_;                  // by some step that is settled
  std::vector<int> next_user_, next_naming_;
  std::map<std::string, int> steps_saying_;
  int main_ = -1;  // the step that holds what is being made

  int count() const { return static_cast<int>(draft_.method.size()); }
  const StepDraft& step(int i) const { return draft_.method[static_cast<std::size_t>(i)]; }
  Work work(int i) const { return works_[static_cast<std::size_t>(i)]; }

  void look_ahead();
  bool shares_word(int earlier, int later) const;
  int before(int i) const;
  int relation(int earlier, int later) const;
  int kind(int i) const;
  bool prepare(int i) const;
  bool sets_heat(int i) const;
  std::vector<int> flags(int i) const;
  std::vector<int> earlier_flags(int earlier, int later) const;
  void find_holders(Look&) const;
  bool fresh_only(const StepDraft&) const;
  bool names_product(int i) const;
  bool makes_something(int i) const;
  std::map<std::string, int>::const_iterator made_of(const std::string& word) const;
};

}  // namespace kitchen
