// Random numbers as a pure function of what they are for (7.5): the same seed, run, cook, step and
// purpose always give the same number, so two plans meet the same luck and a step more shifts
// nobody else's.
#pragma once

#include <cstdint>
#include <string_view>

namespace timeplan {

/// What a number is drawn for.
enum class LuckFor : std::uint64_t {
  kRoom = 1,
  kCook,
  kStep,
  kCookStep,
  kCall,
  kHelp,
  kNextCall,
  kNextHelp
};

/// A stable number for a name (FNV-1a, 64 bits, from memory): ids are hashed, never positions.
std::uint64_t id_of(std::string_view name);
/// A stable number for two ids in this order.
std::uint64_t id_of(std::uint64_t first, std::uint64_t second);

/// A number strictly between 0 and 1. The finisher is that of splitmix64 (Steele, Lea, Flood 2014,
/// from memory).
double uniform(std::uint64_t seed, std::uint64_t run, std::uint64_t cook, std::uint64_t step,
               LuckFor what);

/// Inverse of the standard normal distribution, relative error below 2e-9 (Acklam's rational fit,
/// from memory; the test checks it against std::erfc). `p` strictly between 0 and 1.
double normal_quantile(double p);

/// A standard normal number.
double normal(std::uint64_t seed, std::uint64_t run, std::uint64_t cook, std::uint64_t step,
              LuckFor what);

}  // namespace timeplan
