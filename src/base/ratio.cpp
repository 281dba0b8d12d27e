#include "base/ratio.h"

#include <cmath>
#include <limits>
#include <numeric>

#include "base/text.h"

namespace base {
namespace {

__extension__ using Wide = __int128;

constexpr std::int64_t kMost = std::numeric_limits<std::int64_t>::max() / 2;
constexpr std::int64_t kMillion = 1'000'000;

Wide gcd(Wide a, Wide b) {
  if (a < 0) a = -a;
  while (b != 0) {
    const Wide rest = a % b;
    a = b;
    b = rest;
  }
  return a == 0 ? 1 : a;
}

// In lowest terms if it fits, else the nearest millionth, else the largest there is.
Ratio fitted(Wide numerator, Wide denominator) {
  const Wide common = gcd(numerator, denominator);
  numerator /= common;
  denominator /= common;
  const auto fits = [](Wide n) { return n <= kMost && n >= -kMost; };
  if (fits(numerator) && fits(denominator)) {
    // The public maker reduces again, which costs little and keeps one way in.
    return {static_cast<std::int64_t>(numerator), static_cast<std::int64_t>(denominator)};
  }
  const long double exact = static_cast<long double>(numerator) /
                            static_cast<long double>(denominator);
  const long double limit = static_cast<long double>(kMost) / static_cast<long double>(kMillion);
  const long double held = exact > limit ? limit : exact < -limit ? -limit : exact;
  return {static_cast<std::int64_t>(std::llround(held * kMillion)), kMillion};
}

}  // namespace

Ratio::Ratio(std::int64_t numerator, std::int64_t denominator) {
  const std::int64_t common = std::gcd(numerator, denominator);
  const std::int64_t sign = denominator < 0 ? -1 : 1;
  numerator_ = common == 0 ? 0 : sign * (numerator / common);
  denominator_ = common == 0 ? 1 : sign * (denominator / common);
}

std::optional<Ratio> Ratio::in(std::string_view text) {
  if (text.empty()) return std::nullopt;
  const bool negative = text.front() == '-';
  if (negative) text.remove_prefix(1);
  std::int64_t digits = 0, scale = 1;
  bool point = false, any = false;
  for (const char c : text) {
    if (c == '.' && !point) {
      point = true;
      continue;
    }
    if (c < '0' || c > '9' || digits > kMost / 10 || scale > kMost / 10) return std::nullopt;
    any = true;
    digits = digits * 10 + (c - '0');
    if (point) scale *= 10;
  }
  if (!any) return std::nullopt;
  return Ratio(negative ? -digits : digits, scale);
}

Ratio Ratio::near(double value) {
  if (std::isnan(value)) return {};
  const double limit = static_cast<double>(kMost) / kMillion;
  const double held = std::min(std::max(value, -limit), limit);
  return {static_cast<std::int64_t>(std::llround(held * kMillion)), kMillion};
}

std::int64_t Ratio::floor() const {
  const std::int64_t whole = numerator_ / denominator_;
  return numerator_ % denominator_ < 0 ? whole - 1 : whole;
}

std::int64_t Ratio::ceil() const {
  const std::int64_t whole = numerator_ / denominator_;
  return numerator_ % denominator_ > 0 ? whole + 1 : whole;
}

std::int64_t Ratio::round() const {
  const Ratio half(1, 2);
  return numerator_ < 0 ? (*this - half).ceil() : (*this + half).floor();
}

Ratio operator+(const Ratio& a, const Ratio& b) {
  return fitted(Wide{a.numerator_} * b.denominator_ + Wide{b.numerator_} * a.denominator_,
                Wide{a.denominator_} * b.denominator_);
}

Ratio operator-(const Ratio& a, const Ratio& b) {
  return fitted(Wide{a.numerator_} * b.denominator_ - Wide{b.numerator_} * a.denominator_,
                Wide{a.denominator_} * b.denominator_);
}

Ratio operator*(const Ratio& a, const Ratio& b) {
  return fitted(Wide{a.numerator_} * b.numerator_, Wide{a.denominator_} * b.denominator_);
}

Ratio operator/(const Ratio& a, const Ratio& b) {
  return fitted(Wide{a.numerator_} * b.denominator_, Wide{a.denominator_} * b.numerator_);
}

std::strong_ordering operator<=>(const Ratio& a, const Ratio& b) {
  const Wide left = Wide{a.numerator_} * b.denominator_;
  const Wide right = Wide{b.numerator_} * a.denominator_;
  return left < right   ? std::strong_ordering::less
         : left > right ? std::strong_ordering::greater
                        : std::strong_ordering::equal;
}

Ratio rounded_to(const Ratio& value, const Ratio& step) {
  return Ratio((value / step + Ratio(1, 2)).floor()) * step;
}

std::string decimal_text(const Ratio& value, int decimals) {
  std::int64_t scale = 1;
  for (int i = 0; i < decimals; ++i) scale *= 10;
  return number_text(static_cast<double>((value * Ratio(scale)).round()) /
                     static_cast<double>(scale));
}

std::string fraction_text(const Ratio& value, int decimals) {
  const std::int64_t d = value.denominator();
  if (value < Ratio(0) || !(d == 2 || d == 3 || d == 4 || d == 8))
    return decimal_text(value, decimals);
  const std::int64_t whole = value.floor();
  const std::string part = say(value.numerator() - whole * d, "/", d);
  return whole == 0 ? part : say(whole, " ", part);
}

}  // namespace base
