// The United Kingdom's nutrient profiling score of 2004/5: the points of energy, saturates, sugars
// and sodium, less those of fruit, vegetables and nuts, fibre and protein, all for 100 g.
//
// Cheddar: 20 points, "less healthy" in the model's words. It sorts foods for advertising to
// children; it says nothing of a meal, and is shown only where asked for. Source: Department of
// Health, Nutrient Profiling Technical Guidance, January 2011 (table seen in a page of the Food
// Standards Agency). The model of 2018 is not this one.
#pragma once

#include <optional>
#include <string>

#include "nutrition/dish_nutrients.h"

namespace nutrition {

struct ProfileInput {
  double energy_kj = 0, saturates = 0, sugars = 0, sodium_mg = 0;  ///< in 100 g
  double fruit_veg_nuts_percent = 0, fibre = 0, protein = 0;       ///< in 100 g
  bool nsp_fibre = false;  ///< fibre measured as non-starch polysaccharides rather than by AOAC
  bool drink = false;
};

struct Profile {
  int energy = 0, saturates = 0, sugars = 0, sodium = 0;  ///< A points, 0 to 10 each
  int fruit_veg_nuts = 0, fibre = 0, protein = 0;         ///< C points, 0 to 5 each
  bool protein_counts = true;  ///< not with 11 A points or more, unless fruit, vegetables and nuts
                               ///< have 5
  bool drink = false;
  int a_points() const { return energy + saturates + sugars + sodium; }
  int score() const;
  /// The model's term for 4 points or more (a drink: 1 or more).
  bool less_healthy() const { return score() >= (drink ? 1 : 4); }
};

Profile profile(const ProfileInput&);

/// Share of the dish's weight, before cooking, that is fruit, vegetables (pulses among them) or
/// nuts; dried fruit and vegetables and tomato purée count twice on both sides (technical guidance,
/// from memory). Potatoes and other starchy roots, seeds, and coconut do not count. Per cent.
double fruit_veg_nuts_percent(const DishNutrients&);

struct DishProfile {
  std::optional<Profile> profile;  ///< nothing when the weight is not known
  bool sure = true;                ///< false when missing figures could change the score
  double fruit_veg_nuts_percent = 0;
};
/// From 100 g as served, protein as the label states it.
DishProfile profile_of(const DishNutrients&, bool drink = false);

}  // namespace nutrition
