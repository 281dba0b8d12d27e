#include "kitchen/ratios/change.h"

#include <algorithm>

#include "base/folding.h"
#include "base/text.h"
#include "kitchen/ratios/rules.h"
#include "kitchen/weigh.h"
#include "kitchen/words.h"

namespace kitchen {
namespace {

using base::in_quotes;
using base::say;

// Beyond an edge by more than half the band's width it fails; up to there it works worse. Our own
// reading of soft bands.
const Ratio kFarOutside{1, 2};

class ChangeJudge {
 public:
  ChangeJudge(const Dish& dish, const Change& change, const Foods& foods,
              const Preparations& preparations)
      : dish_(dish),
        change_(change),
        foods_(foods),
        preparations_(preparations),
        counted_(counted(dish, foods)),
        found_(recognise(dish, counted_)) {}

  base::Result<ChangeVerdict> judged() {
    if (change_.kind != ChangeKind::kAdd) {
      const auto found = ingredient_named();
      if (!found) return found.problems();
      at_ = found.value();
    }
    out_.changed = dish_;
    if (const auto problem = make_the_change()) return *problem;
    after_ = counted(out_.changed, foods_);
    add_cautions();
    if (change_.kind == ChangeKind::kAdd)
      judge_added();
    else
      judge_changed();
    for (const Reason& reason : out_.reasons) out_.outcome = std::max(out_.outcome, reason.outcome);
    return std::move(out_);
  }

 private:
  const Dish& dish_;
  const Change& change_;
  const Foods& foods_;
  const Preparations& preparations_;
  std::vector<CountedIngredient> counted_, after_;
  std::vector<FoundPreparation> found_;
  std::size_t at_ = 0;
  ChangeVerdict out_;

  void because(const FoundPreparation* in, Outcome outcome, std::string says) {
    out_.reasons.push_back({in == nullptr ? "" : in->name, outcome, std::move(says)});
  }

  // The exact name first, then the shortest name that holds the words: "butter" before "butter for
  // scones".
  base::Result<std::size_t> ingredient_named() const {
    const std::string words = singular_words(change_.what);
    std::optional<std::size_t> best;
    std::vector<std::string> names;
    for (std::size_t i = 0; i < dish_.ingredients.size(); ++i) {
      names.push_back(dish_.ingredients[i].name);
      const std::string name = singular_words(names.back());
      const bool by_role = role_word(counted_[i].role) == base::folded(change_.what);
      if (name.find(words) == std::string::npos && !by_role) continue;
      if (!best || names.back().size() < names[*best].size()) best = i;
    }
    if (best) return *best;
    const auto near = base::nearest(change_.what, names);
    return base::Problem{"change.no_ingredient", "", "",
                         say("The dish has no ", in_quotes(change_.what), "."),
                         near ? say("Did you mean ", in_quotes(*near), "?")
                              : say("It has ", base::joined(names), ".")};
  }

  void set_amount(Ingredient& ingredient, const Quantity& quantity) const {
    ingredient.amount = quantity.middle().value();
    ingredient.unit = quantity.unit == Unit::kPiece ? quantity.piece
                                                    : std::string(unit_word(quantity.unit));
  }

  std::optional<base::Problem> make_the_change() {
    auto& list = out_.changed.ingredients;
    switch (change_.kind) {
      case ChangeKind::kAdd: {
        Ingredient fresh;
        fresh.name = change_.what;
        if (change_.amount.stated()) set_amount(fresh, change_.amount);
        at_ = list.size();
        list.push_back(std::move(fresh));
        break;
      }
      case ChangeKind::kSwap: {
        Ingredient fresh;
        fresh.name = change_.with;
        if (change_.amount.stated()) {
          set_amount(fresh, change_.amount);
        } else if (counted_[at_].grams) {
          set_amount(fresh, Quantity::of(*counted_[at_].grams, Unit::kGram));
        }
        list[at_] = std::move(fresh);
        break;
      }
      case ChangeKind::kTimes:
        list[at_].amount *= change_.times.value();
        break;
      case ChangeKind::kByAmount:
        return change_by_amount();
      case ChangeKind::kLeaveOut:
        list[at_].amount = 0;
        break;
    }
    return std::nullopt;
  }

  std::optional<base::Problem> change_by_amount() {
    Ingredient& ingredient = out_.changed.ingredients[at_];
    const Quantity before = quantity_of(ingredient);
    Quantity by = change_.amount;
    if (by.unit == Unit::kPiece) by.piece = before.piece;
    std::optional<Ratio> after;
    if (by.unit == before.unit) {
      after = before.middle() + by.middle();
    } else if (const auto same = converted(by, before.unit)) {
      after = before.middle() + same->middle();
    } else if (counted_[at_].food != nullptr && counted_[at_].grams) {
      const auto grams = weigh(kitchen::times(by, by.middle() < Ratio(0) ? Ratio(-1) : Ratio(1)),
                               *counted_[at_].food);
      if (grams) {
        const Ratio sign = by.middle() < Ratio(0) ? Ratio(-1) : Ratio(1);
        set_amount(ingredient, Quantity::of(1, Unit::kGram));
        after = *counted_[at_].grams + sign * grams.value().grams;
      }
    }
    if (!after || *after < Ratio(0)) {
      return base::Problem{
          "change.no_amount", "", "",
          say("The dish has ", quantity_text(before), " of ", in_quotes(ingredient.name), "."),
          after ? "Take away less than that, or leave it out."
                : "Say the change in the unit of the dish, or in grams."};
    }
    ingredient.amount = after->value();
    return std::nullopt;
  }

  std::string new_name() const {
    return change_.kind == ChangeKind::kSwap ? change_.with : change_.what;
  }

  void add_cautions() {
    if (change_.kind != ChangeKind::kSwap && change_.kind != ChangeKind::kAdd) return;
    const Food* food = after_[at_].food;
    if (food == nullptr) {
      out_.cautions.push_back(say(in_quotes(new_name()),
                                  " is not in the table of foods: look at its "
                                  "label for allergens."));
      return;
    }
    if (food->category == "eggs" && not_cooked_through()) {
      out_.cautions.push_back(
          "Here egg is not cooked through: follow your employer's rules for raw egg.");
    }
    std::vector<std::string> brings;
    const Allergens there = known_allergens();
    for (const Allergen allergen : food->contains) {
      if (!there.contains(allergen)) brings.emplace_back(word(allergen));
    }
    for (const Allergen allergen : food->check_for) {
      if (!there.contains(allergen)) brings.push_back(say("perhaps ", word(allergen)));
    }
    if (!brings.empty()) {
      out_.cautions.push_back(say(food->name, " brings ", base::joined(brings),
                                  ": look at the label and at who eats it."));
    }
  }

  bool not_cooked_through() const {
    return std::any_of(found_.begin(), found_.end(), [](const FoundPreparation& in) {
      return in.key == "mayonnaise" || in.key == "mousse" || in.key == "hollandaise" ||
             in.key == "cheesecake";
    });
  }

  // What the dish contains for certain before the change: the new food does not bring that.
  Allergens known_allergens() const {
    Allergens out;
    for (std::size_t i = 0; i < dish_.ingredients.size(); ++i) {
      if (i == at_) continue;
      if (dish_.ingredients[i].label_read) out.merge(Allergens(dish_.ingredients[i].contains));
      if (counted_[i].food != nullptr) out.merge(Allergens(counted_[i].food->contains));
    }
    return out;
  }

  bool holds(const FoundPreparation& in, std::size_t ingredient) const {
    return std::find(in.ingredients.begin(), in.ingredients.end(), static_cast<int>(ingredient)) !=
           in.ingredients.end();
  }

  // Another ingredient of the preparation that does the same job.
  bool another_does(const FoundPreparation& in, const Function& function) const {
    return std::any_of(in.ingredients.begin(), in.ingredients.end(), [&](int i) {
      const auto index = static_cast<std::size_t>(i);
      if (index == at_ || (after_[index].grams && *after_[index].grams == Ratio(0))) return false;
      for (const Function* other : functions_of(in.key, after_[index].role)) {
        if (other->job == function.job && function.job != Job::kBody) return true;
      }
      return false;
    });
  }

  // What is added was not in the dish before.
  const std::string& name() const {
    return at_ < dish_.ingredients.size() ? dish_.ingredients[at_].name
                                          : out_.changed.ingredients[at_].name;
  }
  Role role() const { return at_ < counted_.size() ? counted_[at_].role : after_[at_].role; }

  void judge_changed() {
    bool belongs = false;
    for (const FoundPreparation& in : found_) {
      if (!holds(in, at_)) continue;
      belongs = true;
      const std::size_t before = out_.reasons.size();
      if (change_.kind == ChangeKind::kLeaveOut) judge_missing(in);
      if (change_.kind == ChangeKind::kSwap) judge_stand_in(in);
      if (change_.kind != ChangeKind::kLeaveOut) judge_ratios(in);
      if (out_.reasons.size() == before) because(&in, Outcome::kWorks, still_works(in));
    }
    if (belongs) return;
    because(
        nullptr, Outcome::kWorks,
        say(in_quotes(name()), " belongs to no preparation whose ratios count here: it is free."));
  }

  std::string still_works(const FoundPreparation& in) const {
    if (functions_of(in.key, role()).empty()) {
      return say(in_quotes(name()), " is flavour or filling here: it is free.");
    }
    return "the ratios that must stay do stay.";
  }

  void judge_missing(const FoundPreparation& in) {
    for (const Function* function : functions_of(in.key, counted_[at_].role)) {
      if (function->without == Outcome::kWorks || another_does(in, *function)) continue;
      because(&in, function->without,
              say("leaving out the ", dish_.ingredients[at_].name, ": ", function->loss, "."));
    }
    // What is left is judged only if something of the same kind is left.
    for (const Function* function : functions_of(in.key, counted_[at_].role)) {
      if (!another_does(in, *function)) continue;
      judge_ratios(in);
      return;
    }
  }

  void judge_stand_in(const FoundPreparation& in) {
    const CountedIngredient& fresh = after_[at_];
    const std::string key = fresh.food == nullptr ? "" : fresh.food->key;
    const std::string& old = dish_.ingredients[at_].name;
    for (const Function* function : functions_of(in.key, counted_[at_].role)) {
      if (function->job == Job::kRaise && another_does(in, *function)) continue;
      CanDo can = can_do(function->job, fresh.role, key, counted_[at_].role);
      if (can.outcome == Outcome::kWorks) continue;
      if (can.outcome == Outcome::kFails && function->without != Outcome::kFails)
        can.outcome = function->without;
      if (can.outcome == Outcome::kWorks) continue;
      std::string says = say("the job of the ", old, " here is to ", job_word(function->job), "; ");
      says += can.reason.empty() ? say(new_name(), " cannot: ", function->loss) : can.reason;
      because(&in, can.outcome, says + ".");
    }
  }

  void judge_ratios(const FoundPreparation& in) {
    FoundPreparation as_it_was = in;
    if (at_ >= dish_.ingredients.size()) std::erase(as_it_was.ingredients, static_cast<int>(at_));
    const JudgedPreparation before = judge(dish_, counted_, as_it_was, preparations_);
    const JudgedPreparation after = judge(out_.changed, after_, in, preparations_);
    for (const JudgedRatio& now : after.ratios) {
      if (now.standing != Standing::kBelow && now.standing != Standing::kAbove) continue;
      const auto was = std::find_if(before.ratios.begin(), before.ratios.end(),
                                    [&](const JudgedRatio& r) { return r.row.id == now.row.id; });
      if (was != before.ratios.end() && was->value && *was->value == *now.value) continue;
      because(&in, far_outside(now) ? Outcome::kFails : Outcome::kWorksBut, moved(now));
    }
  }

  static bool far_outside(const JudgedRatio& ratio) {
    const Ratio width = (ratio.row.most - ratio.row.least) * kFarOutside;
    return *ratio.value < ratio.row.least - width || *ratio.value > ratio.row.most + width;
  }

  static std::string moved(const JudgedRatio& ratio) {
    return say(ratio.row.quantity, " becomes ", base::decimal_text(*ratio.value, 1),
               "; it works between ", base::decimal_text(ratio.row.least), " and ",
               base::decimal_text(ratio.row.most), ": ", ratio.goes_wrong, ".");
  }

  void judge_added() {
    const Role role = after_[at_].role;
    if (is_free(role)) {
      because(nullptr, Outcome::kWorks, say(in_quotes(change_.what), " is flavour: it is free."));
      return;
    }
    for (FoundPreparation in : found_) {
      const bool counts = std::any_of(
          preparations_.ratios.begin(), preparations_.ratios.end(), [&](const RatioRow& row) {
            const auto has = [&](const Side& side) {
              return std::any_of(side.shares.begin(), side.shares.end(),
                                 [&](const Share& share) { return share.role == role; });
            };
            return row.preparation == in.key && (has(row.numerator) || has(row.denominator));
          });
      if (!counts) continue;
      if (!after_[at_].grams) {
        because(&in, Outcome::kCannotTell,
                say("how much ", change_.what, "? It counts in the ratios of this."));
        continue;
      }
      in.ingredients.push_back(static_cast<int>(at_));
      const std::size_t before = out_.reasons.size();
      judge_ratios(in);
      if (out_.reasons.size() == before)
        because(&in, Outcome::kWorks, "the ratios that must stay do stay.");
    }
    if (out_.reasons.empty()) {
      because(
          nullptr, Outcome::kWorks,
          say(in_quotes(change_.what), " counts in no working ratio of this dish: it is free."));
    }
  }
};

}  // namespace

base::Result<ChangeVerdict> judge_change(const Dish& dish, const Change& change, const Foods& foods,
                                         const Preparations& preparations) {
  return ChangeJudge(dish, change, foods, preparations).judged();
}

}  // namespace kitchen
