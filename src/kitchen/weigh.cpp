#include "kitchen/weigh.h"

#include <algorithm>

#include "base/folding.h"
#include "base/text.h"
#include "kitchen/foods.h"

namespace kitchen {

using base::in_quotes;
using base::say;

namespace {

const PieceWeight* piece_weight(const Food& food, const std::string& piece) {
  const auto named = [&](std::string_view word) -> const PieceWeight* {
    const auto found = std::find_if(food.pieces.begin(), food.pieces.end(),
                                    [&](const PieceWeight& p) { return p.piece == word; });
    return found == food.pieces.end() ? nullptr : &*found;
  };
  if (piece.empty()) return named("each");
  if (const PieceWeight* found = named(piece)) return found;
  // "1 lemon" of lemon juice, "2 eggs" of egg: the food's own name counts the food itself; "large
  // potato" a large one of it.
  const auto own = [&](const std::string& word) {
    const auto says = [&](const std::string& name) {
      for (const std::string& each : base::words_of(base::folded(name))) {
        if (singular(each) == word) return true;
      }
      return false;
    };
    return says(food.name) || std::any_of(food.other_names.begin(), food.other_names.end(), says);
  };
  std::string rest;
  bool named_itself = false;
  for (const std::string& each : base::words_of(base::folded(piece))) {
    const std::string word = singular(each);
    if (named(word) == nullptr && own(word)) {
      named_itself = true;
    } else {
      rest += (rest.empty() ? "" : " ") + word;
    }
  }
  if (!named_itself) return nullptr;
  return named(rest.empty() ? "each" : rest);
}

// Measured rows of a table are sure; what everybody says is not.
bool sure(const std::string& source) { return source.find("SR WEIGHT") != std::string::npos; }

}  // namespace

base::Result<Weighed> weigh(const Quantity& q, const Food& food) {
  const bool range = q.least != q.most;
  switch (dimension(q.unit)) {
    case Dimension::kMass: {
      return Weighed{converted(q, Unit::kGram)->middle(), "", !range};
    }
    case Dimension::kVolume: {
      if (!food.density) {
        return base::Problem{"weigh.no_density", "", "",
                             say("What ", quantity_text(q), " of ", in_quotes(food.name),
                                 " weighs is not known: nobody has written down how dense it is."),
                             "Give the amount in grams, or the density in the school's own foods."};
      }
      const Ratio ml = converted(q, Unit::kMillilitre)->middle();
      const bool measured = sure(food.density_source);
      return Weighed{ml * Ratio::near(*food.density),
                     say(base::decimal_text(ml), " ml at ", base::number_text(*food.density),
                         " g a ml (", food.density_source, ")"),
                     measured && !range};
    }
    case Dimension::kCount: {
      const PieceWeight* piece = piece_weight(food, q.piece);
      if (piece == nullptr) {
        std::vector<std::string> known;
        for (const PieceWeight& each : food.pieces) known.push_back(in_quotes(each.piece));
        return base::Problem{"weigh.no_piece", "", "",
                             say("What one ", q.piece.empty() ? "piece" : in_quotes(q.piece),
                                 " of ", in_quotes(food.name), " weighs is not known."),
                             known.empty()
                                 ? "Give the amount in grams."
                                 : say("Give grams, or count in ", base::joined(known, "or"), ".")};
      }
      const Ratio each = Ratio::near(piece->grams);
      return Weighed{q.middle() * each,
                     say(quantity_text(q), " at ", base::number_text(piece->grams), " g (",
                         piece->source, ")"),
                     sure(piece->source) && !range};
    }
    case Dimension::kNone:
      break;
  }
  return base::Problem{"weigh.no_amount", "", "",
                       say("No amount of ", in_quotes(food.name), " is given."),
                       "Give an amount if it should be counted."};
}

base::Result<Ratio> millilitres(const Quantity& q, const Food& food) {
  if (dimension(q.unit) == Dimension::kVolume) return converted(q, Unit::kMillilitre)->middle();
  const auto weighed = weigh(q, food);
  if (!weighed) return weighed.problems();
  if (!food.density) {
    return base::Problem{"weigh.no_density", "", "",
                         say("What room ", quantity_text(q), " of ", in_quotes(food.name),
                             " takes is not known: nobody has written down how dense it is."),
                         "Give the amount in millilitres."};
  }
  return weighed.value().grams / Ratio::near(*food.density);
}

Quantity quantity_of(const Ingredient& ingredient) {
  if (ingredient.amount <= 0) return {};
  const Ratio amount = Ratio::near(ingredient.amount);
  if (const auto unit = unit_named(ingredient.unit)) return Quantity::of(amount, *unit);
  return Quantity::pieces(amount, singular(base::folded(ingredient.unit)));
}

const Food* food_of(const Ingredient& ingredient, const Foods& foods) {
  if (!ingredient.food.empty()) return foods.find(ingredient.food);
  return foods.named(ingredient.name);
}

}  // namespace kitchen
