// The nutrition declaration of a dish as the law lays it out: energy in kJ and kcal, fat,
// saturates, carbohydrate, sugars, fibre, protein, salt; then vitamins and minerals in significant
// amounts.
//
// "Energy 1480 kJ / 351 kcal, fat 12 g, of which saturates 5.1 g ..." for a portion and 100 g as
// served. Source: Regulation (EU) No 1169/2011, Annexes I, XIII, XIV, XV. Not for sale as it
// stands: an estimate from tables.
#pragma once

#include <string>
#include <vector>

#include "nutrition/dish_nutrients.h"
#include "nutrition/per_food.h"
#include "nutrition/reference_values.h"

namespace nutrition {

/// Grams that give energy.
struct EnergyGrams {
  double protein = 0, fat = 0, carbohydrate = 0, fibre = 0;  ///< carbohydrate is the available,
                                                             ///< polyols left out
  double alcohol = 0, polyols = 0, organic_acids = 0;
};
/// Annex XIV, each from the grams; one is never converted into the other.
double kilojoules(const EnergyGrams&);
double kilocalories(const EnergyGrams&);

/// Energy of the whole dish. Missing energy of an ingredient is bounded by its weight as fat.
Figure kilojoules(const DishNutrients&, Protein = Protein::kLabel);
Figure kilocalories(const DishNutrients&, Protein = Protein::kLabel);

/// Grams of salt of milligrams of sodium. Annex I point 11: x 2.5.
inline double salt_of_sodium(double milligrams) { return milligrams * 2.5 / 1000; }
Figure salt(const DishNutrients&);  ///< of the whole dish, grams

/// How a figure is rounded on a label. Source: the European Commission's guidance on tolerances,
/// December 2012, from memory (confidence: memory).
enum class Rounding : std::int8_t {
  kEnergy,     ///< to 1
  kGrams,      ///< 10 and above to 1; to 0.1; 0.5 and below "<0.5"; nothing "0"
  kSaturates,  ///< the same, but 0.1 and below "<0.1"
  kSalt,       ///< 1 and above to 0.1; to 0.01; 0.0125 and below "<0.01"; nothing "0"
  kTwoFigures,
  kThreeFigures,
};
/// "12", "3.1", "<0.5", "0".
std::string label_number(double, Rounding);
/// "3.1", "3.1 to 3.4", "at least 3.1", "not known", "about 3.1" when the weight is not known.
std::string label_number(const Figure&, Rounding);

struct LabelLine {
  std::string name;  ///< "of which saturates"
  std::string unit;  ///< "g"
  Rounding rounding = Rounding::kGrams;
  Figure whole, portion, per_100_g;
  std::optional<double> reference;  ///< an adult's day, in `unit`
};

struct Label {
  std::vector<LabelLine> lines;     ///< kJ, kcal, fat, saturates, carbohydrate, sugars, fibre,
                                    ///< protein, salt
  std::vector<LabelLine> vitamins;  ///< vitamins and minerals in significant amounts in 100 g, in
                                    ///< Annex XIII's order
  bool drink = false;
};

/// Orders and names of Annex XV. `drink` decides what is significant.
Label label_of(const DishNutrients&, bool drink = false, Protein = Protein::kLabel);

}  // namespace nutrition
