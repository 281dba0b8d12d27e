// What two thousand runs come to: shares with their intervals, quantiles, and the words for them.
#pragma once

#include <string>
#include <vector>

namespace timeplan {

/// Bounds of a share.
struct Interval {
  double low = 0;
  double high = 1;
  friend bool operator==(const Interval&, const Interval&) = default;
};

/// 95 % interval of a share of `of` independent runs (Wilson 1927, from memory). `of` 0 gives [0,
/// 1].
Interval wilson(int good, int of);

/// The value at a share of a sorted list: the smallest with at least that share at or below it.
int quantile(const std::vector<int>& sorted, double share);

/// "about 8 in 10"; below 1 and above 9 in 10 "fewer than 1 in 20", "more than 19 in 20" where that
/// is so.
std::string about_in_ten(double share);

}  // namespace timeplan
