// Labels that were read: the only thing that turns "check the label" into "not listed".
//
// "Gluten-free flour, 1 kg bag, read 2 November: contains nothing of the fourteen, may contain
// lupin." A reading speaks of that packet alone: when the brand is swapped, the old reading is set
// to "in use: no" and the food is back to "check the label".
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/problem.h"
#include "kitchen/foods.h"

namespace safety {

struct LabelRead {
  std::string food;     ///< key of the table of foods
  std::string pack;     ///< which packet: maker and size in the school's own words; never empty
  std::string read_on;  ///< date as written; never empty
  kitchen::Allergens contains;
  kitchen::Allergens may_contain;  ///< the label's warning of traces
  bool in_use = true;              ///< false: not the packet in the cupboard now
  friend bool operator==(const LabelRead&, const LabelRead&) = default;
};
using Labels = std::vector<LabelRead>;

/// The readings of a food that count now: all that are in use (two brands in one cupboard both
/// speak).
std::vector<const LabelRead*> readings(const Labels&, std::string_view food);

/// Columns food, pack, read_on, contains, may_contain, in_use ("yes" or "no"; yes when left out).
/// Errors: table.*, labels.column, labels.food (no such key), labels.value.
base::Result<Labels> read_labels(std::string_view csv, const std::string& file_name,
                                 const kitchen::Foods&);

}  // namespace safety
