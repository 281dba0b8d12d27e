#include "print/words.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <chrono>

namespace print {
namespace {

/// Bytes of the UTF-8 letter at the start of `text`, or 0 when no letter of UTF-8 starts there.
std::size_t letter_bytes(std::string_view text) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  const unsigned first = byte(0);
  if (first < 0x80) return 1;
  const std::size_t size = first >= 0xC2 && first < 0xE0   ? 2
                           : first >= 0xE0 && first < 0xF0 ? 3
                           : first >= 0xF0 && first < 0xF5 ? 4
                                                           : 0;
  if (size == 0 || text.size() < size) return 0;
  for (std::size_t i = 1; i < size; ++i) {
    if ((byte(i) & 0xC0U) != 0x80U) return 0;
  }
  // Overlong forms, surrogates and what lies beyond the last code point are no letters either.
  const unsigned second = byte(1);
  if ((first == 0xE0 && second < 0xA0) || (first == 0xED && second > 0x9F)) return 0;
  if ((first == 0xF0 && second < 0x90) || (first == 0xF4 && second > 0x8F)) return 0;
  return size;
}

}  // namespace

std::string minutes(Seconds t) { return fmt::format("{} min", base::grid_up(t) / base::kGrid); }

std::string span(const kitchen::Lesson& lesson, Seconds from, Seconds to) {
  return kitchen::clock(lesson, from) + " to " + kitchen::clock(lesson, to);
}

std::string day(const std::string& date) {
  static constexpr std::array kDays{"Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"};
  static constexpr std::array kMonths{"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                                      "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};
  if (date.size() != 10 || date[4] != '-' || date[7] != '-') return date;
  std::array<int, 3> part{};  // year, month, day
  std::size_t which = 0;
  for (const char c : date) {
    if (c == '-') {
      ++which;
    } else if (c < '0' || c > '9' || which > 2) {
      return date;
    } else {
      part[which] = part[which] * 10 + (c - '0');
    }
  }
  const std::chrono::year_month_day ymd{std::chrono::year{part[0]},
                                        std::chrono::month{static_cast<unsigned>(part[1])},
                                        std::chrono::day{static_cast<unsigned>(part[2])}};
  if (!ymd.ok()) return date;
  const std::chrono::weekday weekday{std::chrono::sys_days{ymd}};
  return fmt::format("{} {} {}", kDays[weekday.c_encoding()], part[2],
                     kMonths[static_cast<std::size_t>(part[1] - 1)]);
}

std::string count_word(int n) {
  static constexpr std::array kWords{"none",  "one",   "two",  "three", "four",   "five",  "six",
                                     "seven", "eight", "nine", "ten",   "eleven", "twelve"};
  return n >= 0 && n <= 12 ? kWords[static_cast<std::size_t>(n)] : std::to_string(n);
}

std::string counted(int n, std::string_view one, std::string_view many) {
  return fmt::format("{} {}", n, n == 1 ? one : many);
}

std::string listed(const std::vector<std::string>& items) {
  std::string out;
  for (std::size_t i = 0; i < items.size(); ++i) {
    if (i > 0) out += i + 1 == items.size() ? " and " : ", ";
    out += items[i];
  }
  return out;
}

std::string joined(const std::vector<std::string>& items, std::string_view between) {
  return fmt::format("{}", fmt::join(items, between));
}

std::string together(const std::vector<std::string>& names) {
  const bool spaced = std::any_of(names.begin(), names.end(), [](const std::string& n) {
    return n.find(' ') != std::string::npos;
  });
  return joined(names, spaced ? ", " : " ");
}

std::string setting(kitchen::OvenSetting s) {
  switch (s.kind) {
    case kitchen::OvenKind::kFan:
      return fmt::format("{} °C fan", s.celsius);
    case kitchen::OvenKind::kGrill:
      return fmt::format("grill {} °C", s.celsius);
    case kitchen::OvenKind::kConventional:
      break;
  }
  return fmt::format("{} °C", s.celsius);
}

std::string hazard(kitchen::Hazard h) {
  switch (h) {
    case kitchen::Hazard::kHotOil:
      return "hot oil";
    case kitchen::Hazard::kFirstKnife:
      return "knives";
    case kitchen::Hazard::kLargePan:
      return "a large hot pan";
    case kitchen::Hazard::kBlender:
      return "the blender";
    case kitchen::Hazard::kProbing:
      return "the probe";
    case kitchen::Hazard::kAdultOnly:
      return "only an adult does this";
  }
  return "an adult is needed";
}

std::string capital(std::string text) {
  if (!text.empty() && text[0] >= 'a' && text[0] <= 'z')
    text[0] = static_cast<char>(text[0] - 'a' + 'A');
  return text;
}

std::string stopped(std::string text) {
  if (!text.empty() && text.back() != '.' && text.back() != '?' && text.back() != '!') text += '.';
  return text;
}

std::size_t letters(std::string_view text) {
  std::size_t n = 0;
  while (!text.empty()) {
    text.remove_prefix(std::max<std::size_t>(1, letter_bytes(text)));
    ++n;
  }
  return n;
}

std::string shortened(std::string_view text, std::size_t most) {
  if (letters(text) <= most) return std::string(text);
  std::string out;
  for (std::size_t n = 0; n + 1 < most; ++n) {
    const std::size_t size = std::max<std::size_t>(1, letter_bytes(text));
    out += text.substr(0, size);
    text.remove_prefix(size);
  }
  while (!out.empty() && out.back() == ' ') out.pop_back();
  return out + "…";
}

std::string escaped(std::string_view text) {
  std::string out;
  out.reserve(text.size());
  while (!text.empty()) {
    const std::size_t size = letter_bytes(text);
    const char c = text[0];
    if (size == 0 || (size == 1 && (static_cast<unsigned char>(c) < 0x20 || c == 0x7F) &&
                      c != '\n' && c != '\t')) {
      out += "\xEF\xBF\xBD";
    } else if (c == '<') {
      out += "&lt;";
    } else if (c == '>') {
      out += "&gt;";
    } else if (c == '&') {
      out += "&amp;";
    } else if (c == '"') {
      out += "&quot;";
    } else if (c == '\'') {
      out += "&#39;";
    } else {
      out += text.substr(0, size);
    }
    text.remove_prefix(std::max<std::size_t>(1, size));
  }
  return out;
}

}  // namespace print
