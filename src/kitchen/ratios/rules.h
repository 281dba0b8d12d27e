// By what a base preparation is known: the roles it cannot be without, the words of its method and
// of its name, and the amounts it lies between.
//
// "Flour, fat and water, rubbed in, no raising agent, half as much fat as flour: shortcrust." The
// windows of amounts are far wider than the bands of data/ratios.csv: a scone that is too dry is
// still a scone. Common practice, no source.
#pragma once

#include <string_view>
#include <vector>

#include "kitchen/ratios/roles.h"

namespace kitchen {

/// Grams of some roles to grams of others lie usually between these.
struct AmountWindow {
  std::string_view numerator, denominator;  ///< words as in data/ratios.csv, joined by +
  double least = 0, most = 0;
};

struct Rule {
  std::string_view key;                  ///< "choux"
  std::string_view name;                 ///< "choux pastry"
  std::vector<std::vector<Role>> needs;  ///< one of each; the first is what it is made around
  std::vector<Role> takes;               ///< what else may belong to it
  std::vector<Role> against;             ///< what speaks against it
  std::vector<std::string_view> method;  ///< words of its method
  std::vector<std::string_view> names;   ///< words of its name
  std::vector<AmountWindow> windows;
  std::string_view made_of = {};  ///< what it is made around is called so: "lentil"
};

const std::vector<Rule>& rules();
/// The rule of a key; nothing for a key that has none.
const Rule* rule_of(std::string_view key);

}  // namespace kitchen
