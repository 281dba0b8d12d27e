#include "timeplan/chance/statistics.h"

#include <algorithm>
#include <cmath>

namespace timeplan {

Interval wilson(int good, int of) {
  if (of <= 0) return {0, 1};
  constexpr double z = 1.959963984540054;  // 97.5 % point of the normal distribution
  const double n = of, p = good / n;
  const double centre = (p + z * z / (2 * n)) / (1 + z * z / n);
  const double half = z / (1 + z * z / n) * std::sqrt(p * (1 - p) / n + z * z / (4 * n * n));
  return {good == 0 ? 0.0 : std::max(0.0, centre - half),
          good == of ? 1.0 : std::min(1.0, centre + half)};
}

int quantile(const std::vector<int>& sorted, double share) {
  const auto rank = static_cast<std::size_t>(
      std::max(1.0, std::ceil(share * static_cast<double>(sorted.size()) - 1e-9)));
  return sorted.at(std::min(rank, sorted.size()) - 1);
}

std::string about_in_ten(double share) {
  if (share > 0.95) return "more than 19 in 20";
  if (share < 0.05) return "fewer than 1 in 20";
  const long tenths = std::clamp(std::lround(10 * share), 1L, 9L);
  return "about " + std::to_string(tenths) + " in 10";
}

}  // namespace timeplan
