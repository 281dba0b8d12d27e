// By the scarcest: how often the dish can be made of what there is.
#include <optional>

#include "base/folding.h"
#include "base/text.h"
#include "kitchen/weigh.h"
#include "larder/scale.h"

namespace larder {
namespace {

using base::in_quotes;
using base::say;
using kitchen::Dish;
using kitchen::Food;
using kitchen::Foods;
using kitchen::Ingredient;
using kitchen::Unit;

// "900", "g" or "900g"; the words that are left name the ingredient.
struct AmountWords {
  std::optional<Ratio> number;
  std::string unit, rest;
};

AmountWords split(std::string_view words) {
  AmountWords out;
  for (std::string word : base::parts(base::folded(words), ' ')) {
    const auto letter = word.find_first_not_of("0123456789.");
    const auto number = Ratio::in(word.substr(0, letter));
    if (!out.number && number && letter != 0) {
      out.number = number;
      if (letter != std::string::npos) out.unit = word.substr(letter);
    } else if (out.number && out.unit.empty() && kitchen::unit_named(word)) {
      out.unit = word;
    } else {
      out.rest += out.rest.empty() ? word : " " + word;
    }
  }
  return out;
}

// In the dish's own unit where that can be, else both in grams.
base::Result<Ratio> how_often(const Quantity& need, Quantity have, const Food* food) {
  if (have.unit == Unit::kPiece && need.unit == Unit::kPiece) have.piece = need.piece;
  if (const auto same = converted(have, need.unit)) return same->middle() / need.middle();
  if (food == nullptr) {
    return base::Problem{"weigh.no_food", "", "",
                         say("What ", quantity_text(have), " is in the unit of the dish (",
                             quantity_text(need), ") is not known."),
                         "Say what there is in the unit of the dish."};
  }
  const auto have_grams = weigh(have, *food);
  if (!have_grams) return have_grams.problems();
  const auto need_grams = weigh(need, *food);
  if (!need_grams) return need_grams.problems();
  return have_grams.value().grams / need_grams.value().grams;
}

class ScarcestFinder {
 public:
  ScarcestFinder(const Dish& dish, const Foods& foods) : dish_(dish), foods_(foods) {}

  base::Result<Scarcest> find(const std::vector<Have>& all) {
    if (all.empty()) return Scarcest{};
    for (const Have& have : all) look_at(have);
    if (!problems_.empty()) return problems_;
    return *best_;
  }

 private:
  const Dish& dish_;
  const Foods& foods_;
  base::Problems problems_;
  std::optional<Scarcest> best_;

  void look_at(const Have& have) {
    const std::string words = kitchen::singular_words(have.ingredient);
    std::optional<Ratio> all_of_it;  // times^-1: how much of what there is one dish takes
    int first = -1;
    std::vector<std::string> names;
    for (std::size_t i = 0; i < dish_.ingredients.size(); ++i) {
      const Ingredient& ingredient = dish_.ingredients[i];
      names.push_back(ingredient.name);
      if (kitchen::singular_words(ingredient.name).find(words) == std::string::npos) continue;
      if (first < 0) first = static_cast<int>(i);
      const Quantity need = quantity_of(ingredient);
      if (!need.stated()) continue;
      const auto often = how_often(need, have.amount, food_of(ingredient, foods_));
      if (!often) {
        base::gather(often, problems_);
        return;
      }
      all_of_it = all_of_it.value_or(Ratio(0)) + Ratio(1) / often.value();
    }
    if (first < 0) {
      problems_.push_back({"scale.no_ingredient", "", "",
                           say("The dish has no ", in_quotes(have.ingredient), "."),
                           say("It has ", base::joined(names), ".")});
    } else if (!all_of_it) {
      problems_.push_back({"scale.no_amount", "", "",
                           say("The dish says no amount of ", in_quotes(have.ingredient), "."),
                           "Name an ingredient with an amount."});
    } else {
      const Ratio factor = Ratio(1) / *all_of_it;
      if (!best_ || factor < best_->factor) best_ = Scarcest{factor, first};
    }
  }
};

}  // namespace

base::Result<Have> read_have(std::string_view words) {
  const AmountWords said = split(words);
  if (!said.number || *said.number <= Ratio(0) || said.rest.empty()) {
    return base::Problem{"scale.have", "", "",
                         say("What there is, ", in_quotes(words), ", is not understood."),
                         "Say it like \"flour 900 g\" or \"eggs 10\"."};
  }
  Have have;
  have.ingredient = said.rest;
  const auto unit = kitchen::unit_named(said.unit);
  have.amount = unit ? Quantity::of(*said.number, *unit)
                     : Quantity::pieces(*said.number, kitchen::singular(said.unit));
  return have;
}

base::Result<Scarcest> factor_for_have(const Dish& dish, const std::vector<Have>& have,
                                       const Foods& foods) {
  return ScarcestFinder(dish, foods).find(have);
}

}  // namespace larder
