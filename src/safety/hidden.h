// What hides in a food and is no allergen: gelatine in marshmallows, rennet in hard cheese, fish in
// Worcestershire sauce, alcohol in vanilla extract.
//
// The shipped table is data/hidden.csv; every row is common practice and says so. It only ever adds
// a doubt or a "contains" to what the table of foods says, never takes one away.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/problem.h"
#include "kitchen/foods.h"
#include "kitchen/words.h"

namespace safety {

/// What a rule about food may forbid.
enum class Matter : std::int8_t {
  kMeat,  ///< of any land animal, stock and fat too
  kPork,
  kBeef,
  kFish,
  kShellfish,  ///< crustaceans and molluscs
  kGelatine,
  kRennet,  ///< from animals
  kAlcohol,
  kMilk,
  kAnimal,    ///< anything from an animal: not vegan
  kSlaughter  ///< anything for which an animal died: not vegetarian
};

inline constexpr kitchen::Word<Matter> kMatterWords[] = {
    {"meat", Matter::kMeat},
    {"pork", Matter::kPork},
    {"beef", Matter::kBeef},
    {"fish", Matter::kFish},
    {"shellfish", Matter::kShellfish},
    {"gelatine", Matter::kGelatine},
    {"animal rennet", Matter::kRennet},
    {"alcohol", Matter::kAlcohol},
    {"milk", Matter::kMilk},
    {"food from animals", Matter::kAnimal},
    {"meat, fish or what is made of them", Matter::kSlaughter}};

struct HiddenIn {
  std::string food;  ///< key of the table of foods
  Matter matter = Matter::kGelatine;
  kitchen::Known how = kitchen::Known::kCheckLabel;  ///< contains or check label, never no
  std::string why;     ///< "melting marshmallows are set with gelatine, mostly of pork"
  std::string source;  ///< "common practice, no source"
  friend bool operator==(const HiddenIn&, const HiddenIn&) = default;
};
using Hidden = std::vector<HiddenIn>;

/// Columns food, brings, how ("contains", "check label"), why, source. Errors: table.*,
/// hidden.column, hidden.food, hidden.value.
base::Result<Hidden> read_hidden(std::string_view csv, const std::string& file_name,
                                 const kitchen::Foods&);

/// Whether a food brings a matter, from its columns, its allergens and the hidden ones; the
/// strongest counts. What neither says to be in it is "no".
kitchen::Known brings(const kitchen::Food&, Matter, const Hidden&);
/// Why it is hidden there, or empty.
std::string why_hidden(const kitchen::Food&, Matter, const Hidden&);

}  // namespace safety
