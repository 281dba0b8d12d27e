#include "kitchen/ratios/judge.h"

#include <algorithm>

#include "base/text.h"
#include "kitchen/weigh.h"

namespace kitchen {
namespace {

using base::say;

struct Counting {
  const Dish& dish;
  const std::vector<CountedIngredient>& counted;
  const FoundPreparation& found;

  const Ingredient& ingredient(int i) const {
    return dish.ingredients[static_cast<std::size_t>(i)];
  }
};

bool by_leaf(const Ingredient& ingredient) {
  const Quantity quantity = quantity_of(ingredient);
  return quantity.unit == Unit::kPiece && (quantity.piece == "leaf" || quantity.piece == "sheet");
}

bool any_of_role(const Counting& c, Role role, const auto& is) {
  return std::any_of(c.found.ingredients.begin(), c.found.ingredients.end(), [&](int i) {
    return c.counted[static_cast<std::size_t>(i)].role == role && is(c.ingredient(i));
  });
}

bool applies(const Counting& c, const RatioRow& row) {
  const auto in_volume = [](const Ingredient& i) {
    return dimension(quantity_of(i).unit) == Dimension::kVolume;
  };
  if (row.when.empty()) return true;
  const auto any = [](const Ingredient&) { return true; };
  if (row.when == "dried yeast used") return any_of_role(c, Role::kYeast, any);
  if (row.when == "fresh yeast used") return any_of_role(c, Role::kFreshYeast, any);
  if (row.when == "counted in leaves") return any_of_role(c, Role::kGelatine, by_leaf);
  if (row.when == "not counted in leaves") return !any_of_role(c, Role::kGelatine, by_leaf);
  if (row.when == "rice measured by volume") return any_of_role(c, Role::kRice, in_volume);
  if (row.when == "rice weighed") return !any_of_role(c, Role::kRice, in_volume);
  return false;
}

// How much a gram of the ingredient counts on this side; nothing if that cannot be known.
std::optional<Ratio> factor(const CountedIngredient& one, const Share& share, CountedIn in) {
  const auto each = in_a_gram(one, in);
  return each ? std::optional(*each * share.times) : std::nullopt;
}

struct SideCounted {
  std::vector<CountedPart> parts;
  Ratio sum = 0;
  std::string unknown;  ///< why it cannot be told; empty = it can
};

SideCounted count_side(const Counting& c, const Side& side) {
  SideCounted out;
  for (const Share& share : side.shares) {
    for (const int i : c.found.ingredients) {
      const CountedIngredient& one = c.counted[static_cast<std::size_t>(i)];
      if (one.role != share.role) continue;
      const Ingredient& ingredient = c.ingredient(i);
      CountedPart part;
      part.ingredient = i;
      part.sure = one.sure;
      if (side.in == CountedIn::kLeaf) {
        part.amount = quantity_of(ingredient).middle();
        part.how = say(ingredient.name, ": ", base::decimal_text(part.amount), " leaves");
      } else {
        const auto times = factor(one, share, side.in);
        if (!one.grams || !times) {
          out.unknown = say("of ", base::in_quotes(ingredient.name), " ",
                            one.how.empty() ? "the amount is not known" : one.how);
          continue;
        }
        part.amount = *one.grams * *times;
        part.how = say(ingredient.name, ": ", base::decimal_text(*one.grams), " g",
                       one.how.empty() ? "" : say(" = ", one.how),
                       share.times == Ratio(1)
                           ? std::string()
                           : say(", counted ", base::decimal_text(share.times, 3), " times"));
      }
      out.sum += part.amount;
      out.parts.push_back(std::move(part));
    }
  }
  return out;
}

// "water or milk" of "water+milk".
std::string either(const std::string& words) {
  std::vector<std::string> parts(1);
  for (const char c : words) {
    if (c == '+')
      parts.emplace_back();
    else
      parts.back() += c == '_' ? ' ' : c;
  }
  return base::joined(parts, "or");
}

Standing standing(const Ratio& value, const RatioRow& row) {
  if (value < row.least) return Standing::kBelow;
  if (value > row.most) return Standing::kAbove;
  const Ratio margin = (row.most - row.least) * kNearTheEdge;
  // An edge at 0 is no edge: no salt at all is as well within the band as some.
  const bool near_low = row.least > Ratio(0) && value < row.least + margin;
  return near_low || value > row.most - margin ? Standing::kNearEdge : Standing::kWithin;
}

JudgedRatio judge_row(const Counting& c, const RatioRow& row) {
  JudgedRatio out;
  out.row = row;
  SideCounted top = count_side(c, row.numerator), bottom = count_side(c, row.denominator);
  out.numerator = std::move(top.parts);
  out.denominator = std::move(bottom.parts);
  if (!top.unknown.empty() || !bottom.unknown.empty()) {
    out.why_unknown = top.unknown.empty() ? bottom.unknown : top.unknown;
  } else if (out.denominator.empty() || bottom.sum == Ratio(0)) {
    out.why_unknown = say("no ", either(row.denominator.words), " with an amount is on its list");
  } else if (out.numerator.empty() && row.least > Ratio(0)) {
    out.why_unknown = say("no ", either(row.numerator.words), " with an amount is on its list");
  }
  if (!out.why_unknown.empty()) return out;
  out.value = row.per * top.sum / bottom.sum;
  out.standing = standing(*out.value, row);
  const bool low = *out.value < row.value;
  if (out.standing != Standing::kWithin) out.goes_wrong = low ? row.below : row.above;
  return out;
}

std::vector<RatioBound::Term> terms(const Counting& c, const Side& side, const Ratio& times) {
  std::vector<RatioBound::Term> out;
  for (const Share& share : side.shares) {
    for (const int i : c.found.ingredients) {
      const CountedIngredient& one = c.counted[static_cast<std::size_t>(i)];
      if (one.role != share.role) continue;
      if (const auto each = factor(one, share, side.in)) out.push_back({i, *each * times});
    }
  }
  return out;
}

}  // namespace

JudgedPreparation judge(const Dish& dish, const std::vector<CountedIngredient>& counted,
                        const FoundPreparation& found, const Preparations& preparations) {
  JudgedPreparation out;
  out.found = found;
  const Counting counting{dish, counted, found};
  for (const RatioRow* row : preparations.ratios_of(found.key)) {
    if (applies(counting, *row)) out.ratios.push_back(judge_row(counting, *row));
  }
  for (const PreparationNote* note : preparations.notes_of(found.key)) out.notes.push_back(*note);
  return out;
}

std::vector<JudgedPreparation> judge(const Dish& dish, const Foods& foods,
                                     const Preparations& preparations) {
  const auto all = counted(dish, foods);
  std::vector<JudgedPreparation> out;
  for (const FoundPreparation& found : recognise(dish, all))
    out.push_back(judge(dish, all, found, preparations));
  return out;
}

std::vector<RatioBound> ratio_bounds(const Dish& dish, const Foods& foods,
                                     const Preparations& preparations) {
  const auto all = counted(dish, foods);
  std::vector<RatioBound> out;
  for (const FoundPreparation& found : recognise(dish, all)) {
    const Counting counting{dish, all, found};
    for (const JudgedRatio& ratio : judge(dish, all, found, preparations).ratios) {
      if (ratio.standing == Standing::kUnknown || ratio.row.numerator.in == CountedIn::kLeaf)
        continue;
      out.push_back({found.key, ratio.row.id, terms(counting, ratio.row.numerator, ratio.row.per),
                     terms(counting, ratio.row.denominator, 1), ratio.row.least, ratio.row.most});
    }
  }
  return out;
}

}  // namespace kitchen
