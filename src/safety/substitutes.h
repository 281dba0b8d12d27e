// What can take an ingredient's place and still do its work in the dish.
//
// "Two eggs that bind the fishcakes: 14 g ground linseed in 90 ml water, stand 10 min; does not
// foam." An egg that binds is not an egg that foams: a substitute is listed for the work it does,
// with what changes in the method and what it does not do. Every row is common practice and says
// so; try it before the lesson.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "safety/diets.h"

namespace safety {

/// The work of an ingredient in a dish.
enum class Function : std::int8_t {
  kBinding,
  kSetting,
  kFoaming,
  kEmulsifying,
  kGlazing,
  kEnriching,
  kCoating,
  kLiquid,
  kCreaming,
  kRubbingIn,
  kFrying,
  kStructure,
  kThickening,
  kTexture,
  kFlavour,
  kRaising,
};
inline constexpr kitchen::Word<Function> kFunctionWords[] = {
    {"binding", Function::kBinding},       {"setting", Function::kSetting},
    {"foaming", Function::kFoaming},       {"emulsifying", Function::kEmulsifying},
    {"glazing", Function::kGlazing},       {"enriching", Function::kEnriching},
    {"coating", Function::kCoating},       {"liquid", Function::kLiquid},
    {"creaming", Function::kCreaming},     {"rubbing in", Function::kRubbingIn},
    {"frying", Function::kFrying},         {"structure", Function::kStructure},
    {"thickening", Function::kThickening}, {"texture", Function::kTexture},
    {"flavour", Function::kFlavour},       {"raising", Function::kRaising}};

/// An amount as the table of substitutes says it: "45 ml", "1 egg".
struct Measure {
  double amount = 0;  ///< > 0
  std::string unit;   ///< g, ml, egg or piece
  friend bool operator==(const Measure&, const Measure&) = default;
};

struct Part {
  std::string food;  ///< key of the table of foods
  Measure measure;
  friend bool operator==(const Part&, const Part&) = default;
};

struct Substitute {
  std::vector<std::string> foods;  ///< what it stands for: keys
  Function function = Function::kBinding;
  Measure per;              ///< the amount replaced: "1 egg", "100 g"
  std::vector<Part> parts;  ///< what is used for that amount; never empty
  std::string method_change;
  std::string does_not;  ///< what it does not do; may be empty
  std::string source;
  friend bool operator==(const Substitute&, const Substitute&) = default;
};
using Substitutes = std::vector<Substitute>;

/// Columns foods, function, per, use ("linseed=7 g;water=45 ml"), method_change, does_not, source.
/// Errors: table.*, substitutes.column, substitutes.food, substitutes.value, substitutes.self
/// (stands for itself).
base::Result<Substitutes> read_substitutes(std::string_view csv, const std::string& file_name,
                                           const kitchen::Foods&);

/// The rows that replace a food where it does that work, in the order of the table.
std::vector<const Substitute*> substitutes_for(const Substitutes&, std::string_view food, Function);

/// What the substitute itself brings of the fourteen: by the table of foods and labels, the
/// strongest of its parts.
Summary brought_by(const Substitute&, const Evidence&);
/// What it brings of what a need forbids; "not listed" is what a teacher hopes for.
Stated brought_by(const Substitute&, const Need&, const Evidence&);

/// The parts for the amount of an ingredient: "14 g linseed and 90 ml water". Without an amount, or
/// in a unit that is not the row's, the row's own figures: "for each egg 7 g ...". A medium egg
/// shelled is taken as 50 g (USDA SR26 01123, "large" = 50 g, the British medium).
std::string amount_words(const Substitute&, const kitchen::Ingredient&, const kitchen::Foods&);

/// The likely work of an ingredient, guessed from the words of the steps that use it and from what
/// else is in the dish; nothing when no substitute is listed for it or nothing fits. A guess: the
/// teacher knows better.
std::optional<Function> likely_function(const kitchen::Dish&, int ingredient, const kitchen::Foods&,
                                        const Substitutes&);

}  // namespace safety
