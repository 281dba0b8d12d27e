#include "timeplan/chance/luck.h"

#include <cmath>

namespace timeplan {
namespace {

std::uint64_t mixed(std::uint64_t z) {
  z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9ULL;
  z = (z ^ (z >> 27)) * 0x94d049bb133111ebULL;
  return z ^ (z >> 31);
}

constexpr std::uint64_t kStride = 0x9e3779b97f4a7c15ULL;  // 2^64 / golden ratio, odd

double central(double q) {
  const double r = q * q;
  const double above = (((((-3.969683028665376e+01 * r + 2.209460984245205e+02) * r -
                           2.759285104469687e+02) *
                              r +
                          1.383577518672690e+02) *
                             r -
                         3.066479806614716e+01) *
                            r +
                        2.506628277459239e+00) *
                       q;
  const double below = ((((-5.447609879822406e+01 * r + 1.615858368580409e+02) * r -
                          1.556989798598866e+02) *
                             r +
                         6.680131188771972e+01) *
                            r -
                        1.328068155288572e+01) *
                           r +
                       1.0;
  return above / below;
}

double tail(double p) {
  const double q = std::sqrt(-2.0 * std::log(p));
  const double above = ((((-7.784894002430293e-03 * q - 3.223964580411365e-01) * q -
                          2.400758277161838e+00) *
                             q -
                         2.549732539343734e+00) *
                            q +
                        4.374664141464968e+00) *
                           q +
                       2.938163982698783e+00;
  const double below = (((7.784695709041462e-03 * q + 3.224671290700398e-01) * q +
                         2.445134137142996e+00) *
                            q +
                        3.754408661907416e+00) *
                           q +
                       1.0;
  return above / below;
}

}  // namespace

std::uint64_t id_of(std::string_view name) {
  std::uint64_t hash = 0xcbf29ce484222325ULL;
  for (const char c : name) hash = (hash ^ static_cast<unsigned char>(c)) * 0x100000001b3ULL;
  return hash;
}

std::uint64_t id_of(std::uint64_t first, std::uint64_t second) {
  return mixed(mixed(first + kStride) ^ (second + 2 * kStride));
}

double uniform(std::uint64_t seed, std::uint64_t run, std::uint64_t cook, std::uint64_t step,
               LuckFor what) {
  std::uint64_t z = mixed(seed + kStride);
  for (const std::uint64_t part : {run, cook, step, static_cast<std::uint64_t>(what)})
    z = mixed((z ^ part) + kStride);
  return (static_cast<double>(z >> 11) + 0.5) * 0x1.0p-53;
}

double normal_quantile(double p) {
  constexpr double kTail = 0.02425;
  if (p < kTail) return tail(p);
  if (p > 1.0 - kTail) return -tail(1.0 - p);
  return central(p - 0.5);
}

double normal(std::uint64_t seed, std::uint64_t run, std::uint64_t cook, std::uint64_t step,
              LuckFor what) {
  return normal_quantile(uniform(seed, run, cook, step, what));
}

}  // namespace timeplan
