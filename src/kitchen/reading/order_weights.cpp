#include "kitchen/reading/order_weights.h"

#include <map>
#include <stdexcept>
#include <string>

#include "kitchen/reading/order_signs.h"
#include "kitchen/reading/order_weight_table.h"

namespace kitchen {

const std::vector<double>& order_weights() {
  static const std::vector<double> kWeights = [] {
    std::map<std::string, std::size_t, std::less<>> number;
    for (int s = 0; s < sign_count(); ++s)
      number.emplace(sign_name(s), static_cast<std::size_t>(s));
    std::vector<double> weights(static_cast<std::size_t>(sign_count()), 0.0);
    for (const SignWeight& row : kSignWeights) {
      const auto sign = number.find(row.sign);
      if (sign == number.end())
        throw std::logic_error("no sign is called " + std::string(row.sign));
      weights[sign->second] = row.weight;
    }
    return weights;
  }();
  return kWeights;
}

}  // namespace kitchen
