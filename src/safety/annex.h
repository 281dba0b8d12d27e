// The fourteen as Annex II of Regulation (EU) No 1169/2011 has them, kept in UK law: its numbers,
// which cereals and which nuts are meant, from how much sulphite on, and what is exempt.
//
// "Gluten" alone is not enough on a label: the cereal must be named, and the nut (Article 21 with
// Annex II, points 1 and 8). kinds_in(spelt flour, gluten) is "wheat (spelt)". The wording here is
// ours; the facts were compared with the Annex's text as published.
#pragma once

#include <array>
#include <string>
#include <string_view>
#include <vector>

#include "safety/statements.h"

namespace safety {

struct AnnexPoint {
  int number = 0;  ///< of Annex II, 1 to 14
  Allergen allergen = Allergen::kGluten;
  std::string_view name;    ///< "cereals containing gluten"
  std::string_view named;   ///< which ones, where the Annex names them; may be empty
  std::string_view exempt;  ///< what need not be declared; may be empty
};

/// In the order of the Annex.
extern const std::array<AnnexPoint, kAllergenCount> kAnnexII;
const AnnexPoint& annex_point(Allergen);

/// Sulphur dioxide and sulphites are declared above this, as total SO2, in mg a kilogram or litre
/// of the food as eaten (Annex II, point 12).
inline constexpr double kSulphitesAbove = 10;
constexpr bool sulphites_declared(double mg_per_kg) { return mg_per_kg > kSulphitesAbove; }

/// The eight tree nuts (Annex II, point 8). Coconut, pine nuts, chestnuts and nutmeg are not among
/// them, and peanuts are a point of their own.
inline constexpr std::array<std::string_view, 8> kTreeNuts = {
    "almond", "hazelnut", "walnut", "cashew", "pecan", "brazil", "pistachio", "macadamia"};

/// Which cereal or nut a food that contains the allergen holds, by the words of its name and of its
/// source: "wheat", "barley", "almond". Empty when they do not tell: the label does.
std::vector<std::string> kinds_in(const kitchen::Food&, Allergen);

}  // namespace safety
