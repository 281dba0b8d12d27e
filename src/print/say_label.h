// What a dish holds, said to a teacher: the label's table for a portion and 100 g, the colours as
// word and pattern, five a day, shares of a day, and above all what is not known. Every figure can
// be opened.
#pragma once

#include <optional>
#include <string>

#include "nutrition/dish_nutrients.h"
#include "nutrition/needs.h"

namespace print {

struct LabelPage {
  bool drink = false;
  bool details = false;  ///< how each ingredient was weighed and cooked, and what it brings to each
                         ///< figure
  std::optional<nutrition::Band> band = std::nullopt;  ///< whose day the shares are of; both of 11
                                                       ///< to 14 when not said
};

/// The patterns that stand beside a colour's word: "[   ]" low, "[//.]" medium, "[###]" high, "[ ?
/// ]" not known.
std::string say_label(const nutrition::DishNutrients&, const nutrition::CookingTables&,
                      const LabelPage&);

/// The same for machines, opened down to every ingredient. Amounts are whole numbers and fractions
/// as worked out, not rounded; `most` is null where nothing bounds what is missing.
std::string label_json(const nutrition::DishNutrients&, const nutrition::CookingTables&,
                       const LabelPage&);

/// What holds for every figure here. Stands at the end of everything printed about nutrition.
std::string nutrition_cautions();

}  // namespace print
