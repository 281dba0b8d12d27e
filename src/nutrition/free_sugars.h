// Which sugars of a food are free: added sugars, and those of honey, syrups, juices and purées; not
// those that stand in whole fruit, vegetables, plain milk or grain.
//
// No table has them. They are estimated by a rule a food, which is said with every figure.
#pragma once

#include <optional>
#include <string_view>

#include "kitchen/food.h"

namespace nutrition {

struct FreeSugars {
  std::optional<double> share;  ///< of the food's sugars, 0 or 1; nothing when the food mixes both
                                ///< kinds
  std::string_view why;         ///< "whole fruit: none free"
};

/// The definition is that of the UK's Scientific Advisory Committee on Nutrition (Carbohydrates and
/// Health, 2015) as worked out by Public Health England in 2018 (Swan and others), from memory:
/// dried fruit is whole fruit; juice, purée and paste of fruit and vegetables are free; so is sugar
/// in all drinks but those of milk; lactose never is.
FreeSugars free_sugars(const kitchen::Food&);

}  // namespace nutrition
