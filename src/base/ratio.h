// Exact fractions: two thirds of a cup stays two thirds until somebody reads it off a scale.
//
// Ratio(2, 3) * Ratio(3) == Ratio(2). Amounts of food are scaled with these and rounded once, when
// they are shown. Not for measured science (temperatures, energies): those are doubles.
#pragma once

#include <compare>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace base {

/// A fraction in lowest terms, its denominator positive. Exact while numerator and denominator fit
/// in 63 bits; a result that does not is the nearest fraction of a millionth, and one beyond nine
/// million million is held at that.
class Ratio {
 public:
  constexpr Ratio() = default;
  constexpr Ratio(std::int64_t whole) : numerator_(whole) {}
  /// `denominator` must not be 0.
  Ratio(std::int64_t numerator, std::int64_t denominator);

  /// The decimal a text says, exactly ("0.125", "3"); nothing if it says something else.
  static std::optional<Ratio> in(std::string_view text);
  /// The nearest thousandth of a thousandth.
  static Ratio near(double);

  std::int64_t numerator() const { return numerator_; }
  std::int64_t denominator() const { return denominator_; }
  double value() const {
    return static_cast<double>(numerator_) / static_cast<double>(denominator_);
  }
  bool whole() const { return denominator_ == 1; }
  std::int64_t floor() const;
  std::int64_t ceil() const;
  std::int64_t round() const;  ///< halves away from nothing

  friend Ratio operator+(const Ratio&, const Ratio&);
  friend Ratio operator-(const Ratio&, const Ratio&);
  friend Ratio operator*(const Ratio&, const Ratio&);
  /// The divisor must not be 0.
  friend Ratio operator/(const Ratio&, const Ratio&);
  Ratio& operator+=(const Ratio& other) { return *this = *this + other; }
  Ratio& operator*=(const Ratio& other) { return *this = *this * other; }
  friend bool operator==(const Ratio&, const Ratio&) = default;
  friend std::strong_ordering operator<=>(const Ratio&, const Ratio&);

 private:
  std::int64_t numerator_ = 0;
  std::int64_t denominator_ = 1;
};

/// Rounded to the nearest multiple of `step` (> 0), halves up.
Ratio rounded_to(const Ratio&, const Ratio& step);
/// As a person writes it: "1 1/2", "2/3", "250", "0.35" (fractions of 2, 3, 4 and 8; else decimals,
/// at most `decimals`).
std::string fraction_text(const Ratio&, int decimals = 2);
/// As a decimal, at most `decimals` places, no zeros at the end: "1.5", "0.67".
std::string decimal_text(const Ratio&, int decimals = 2);

}  // namespace base
