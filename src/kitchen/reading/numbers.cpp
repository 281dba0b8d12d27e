// Plain numbers in figures and words: "3", "1 1/2", "one and a half", "half a", "a dozen".
#include <algorithm>
#include <array>
#include <string_view>

#include "kitchen/reading/amounts.h"

namespace kitchen {
namespace {

using Tokens = std::vector<LineToken>;

bool number(const Tokens& t, std::size_t i) { return i < t.size() && t[i].number(); }
bool word(const Tokens& t, std::size_t i) {
  return i < t.size() && t[i].kind == LineToken::Kind::kWord;
}

struct NumberWord {
  std::string_view word;
  int numerator, denominator;
};
constexpr std::array<NumberWord, 20> kNumberWords = {{
    {"one", 1, 1},      {"two", 2, 1},      {"three", 3, 1},   {"four", 4, 1},
    {"five", 5, 1},     {"six", 6, 1},      {"seven", 7, 1},   {"eight", 8, 1},
    {"nine", 9, 1},     {"ten", 10, 1},     {"eleven", 11, 1}, {"twelve", 12, 1},
    {"fifteen", 15, 1}, {"sixteen", 16, 1}, {"twenty", 20, 1}, {"half", 1, 2},
    {"quarter", 1, 4},  {"third", 1, 3},    {"thirds", 1, 3},  {"quarters", 1, 4},
}};

std::optional<Ratio> number_word(const Tokens& t, std::size_t i) {
  if (!word(t, i)) return std::nullopt;
  for (const NumberWord& each : kNumberWords) {
    if (t[i].word == each.word) return Ratio(each.numerator, each.denominator);
  }
  return std::nullopt;
}

bool part_word(const Tokens& t, std::size_t i) {
  const auto value = number_word(t, i);
  return value && *value < Ratio(1);
}

// "1 1/2", "1-1/2", "1 and 1/2", "1 & a half" from the whole number before token `i`.
std::optional<Ratio> part_after(const Tokens& t, std::size_t i, std::size_t& next) {
  const auto part = [&](std::size_t k) -> std::optional<Ratio> {
    if (number(t, k) && t[k].fraction && t[k].value < Ratio(1)) {
      next = k + 1;
      return t[k].value;
    }
    return std::nullopt;
  };
  if (const auto plain = part(i)) return plain;
  if (at(t, i, "-") && !t[i].spaced && number(t, i + 1) && !t[i + 1].spaced) return part(i + 1);
  if (!at(t, i, "and") && !at(t, i, "&") && !at(t, i, "+")) return std::nullopt;
  if (const auto later = part(i + 1)) return later;
  const std::size_t k = at(t, i + 1, "a") || at(t, i + 1, "one") ? i + 2 : i + 1;
  if (k == i + 1 || !part_word(t, k)) return std::nullopt;
  next = k + 1;
  return number_word(t, k);
}

std::optional<Ratio> dozens(const Tokens& t, std::size_t i, const Ratio& many, std::size_t& next) {
  std::size_t k = i;
  if (at(t, k, "a")) ++k;
  if (!at(t, k, "dozen")) return std::nullopt;
  next = k + 1;
  return many * Ratio(12);
}

// "half a", "half an", "quarter of a", "three quarters of a".
void skip_of_a(const Tokens& t, std::size_t& i) {
  std::size_t k = i;
  if (at(t, k, "of")) ++k;
  if (at(t, k, "a") || at(t, k, "an")) i = k + 1;
}

std::optional<Ratio> number_from_article(const Tokens& t, std::size_t i, std::size_t& next) {
  if (const auto dozen = dozens(t, i, Ratio(1), next)) return dozen;
  if (part_word(t, i + 1)) {
    next = i + 2;
    skip_of_a(t, next);
    return number_word(t, i + 1);
  }
  if (at(t, i + 1, "couple")) {
    next = at(t, i + 2, "of") ? i + 3 : i + 2;
    return Ratio(2);
  }
  static constexpr std::array<std::string_view, 8> kNotOne = {"little", "bit",  "lot",   "few",
                                                              "touch",  "good", "taste", "la"};
  if (!word(t, i + 1)) return std::nullopt;
  const bool vague = std::find(kNotOne.begin(), kNotOne.end(), t[i + 1].word) != kNotOne.end();
  const bool good = t[i + 1].word == "good" && word(t, i + 2) && piece_word(t[i + 2].word);
  if (vague && !good) return std::nullopt;
  next = i + 1;
  return Ratio(1);
}

}  // namespace

std::optional<Ratio> number_at(const std::vector<LineToken>& t, std::size_t i, std::size_t& next) {
  if (number(t, i)) {
    Ratio value = t[i].value;
    next = i + 1;
    if (value.whole() && !t[i].fraction) {
      if (const auto part = part_after(t, i + 1, next)) return value + *part;
      if (const auto dozen = dozens(t, i + 1, value, next)) return dozen;
    } else if (value < Ratio(1)) {
      skip_of_a(t, next);
    }
    return value;
  }
  if ((at(t, i, "a") || at(t, i, "an")) && number(t, i + 1))
    return number_at(t, i + 1, next);  // "a 2 cm piece", "a 400 g tin"
  if (at(t, i, "a") || at(t, i, "an")) return number_from_article(t, i, next);
  const auto value = number_word(t, i);
  if (!value) return std::nullopt;
  next = i + 1;
  if (const auto dozen = dozens(t, i + 1, *value, next)) return dozen;
  if (*value < Ratio(1)) {
    // "half fat", "half-fat" are qualities.
    if (at(t, next, "fat") || at(t, next, "and")) return std::nullopt;
    skip_of_a(t, next);
    return value;
  }
  if (part_word(t, i + 1)) {  // "three quarters of a"
    next = i + 2;
    skip_of_a(t, next);
    return *value * *number_word(t, i + 1);
  }
  if (const auto part = part_after(t, i + 1, next)) return *value + *part;
  return value;
}

}  // namespace kitchen
