// What 100 g of a food hold, with the few things that follow from its figures though no cell says
// them.
//
// Plain flour: 10.33 g protein by the table's factor 5.70 is 11.33 g as a label states it (N
// x 6.25).
#pragma once

#include <optional>

#include "kitchen/food.h"
#include "nutrition/what.h"

namespace nutrition {

/// Which protein is meant where protein is counted.
enum class Protein : std::int8_t {
  kLabel,  ///< nitrogen x 6.25, as labels must
  kTable,  ///< as the table has it, nitrogen by a factor of the food's own
};

/// In 100 g of the edible part; nothing when it is not known. Units as unit_of(What).
/// A blank that can only be 0 is 0: sugars and fibre where there is no carbohydrate, saturates
/// where there is no fat. A food that is only a distant relative of its row (kPoor) or has none
/// holds nothing that is known. Available carbohydrate is never below 0 nor below the sugars, which
/// in a few rows of the table exceed the total.
std::optional<double> per_100_g(const kitchen::Food&, What);

/// What 100 g can hold at the very most though the figure is missing: sugars not more than
/// carbohydrate, saturates not more than fat, nothing more than 100 g, sodium not more than pure
/// salt has. Nothing for vitamins and minerals.
std::optional<double> most_per_100_g(const kitchen::Food&, What);
/// The same of something that nobody knows.
std::optional<double> most_per_100_g(What);

/// What 100 g hold at the very least though the figure is missing: carbohydrate not less than its
/// sugars; else 0.
double least_per_100_g(const kitchen::Food&, What);

/// Whether the food's figures are its own or a near relative's: what coverage counts.
bool has_figures(const kitchen::Food&);

}  // namespace nutrition
