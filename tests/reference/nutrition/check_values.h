// The rows of tests/data/nutrition/check_values.csv: a value, its source and how sure it is.
#pragma once

#include <string>
#include <vector>

#include "kitchen/food.h"

namespace tests {

struct CheckValue {
  std::string id, group, quantity, value, unit, code;
  double number() const;
};

/// The rows whose group begins with that.
std::vector<CheckValue> check_values(const std::string& group);
/// The shipped food whose figures are from that row of USDA SR26; throws when there is none.
const kitchen::Food& food_of_code(const std::string& code);
/// Text after the first, up to the second mark; empty when the first is not there.
std::string between(const std::string& text, const std::string& from, const std::string& to);

}  // namespace tests
