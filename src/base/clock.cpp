#include "base/clock.h"

#include <charconv>
#include <chrono>

namespace base {
namespace {

/// Takes `least` to `most` digits off the front.
std::optional<int> take_digits(std::string_view& text, std::size_t least, std::size_t most) {
  std::size_t n = 0;
  while (n < text.size() && n < most && text[n] >= '0' && text[n] <= '9') ++n;
  if (n < least) return std::nullopt;
  int value = 0;
  std::from_chars(text.data(), text.data() + n, value);
  text.remove_prefix(n);
  return value;
}

bool take(std::string_view& text, char c) {
  if (text.empty() || text.front() != c) return false;
  text.remove_prefix(1);
  return true;
}

/// Takes "10:50" or "10:50:30" off the front.
std::optional<Seconds> take_clock(std::string_view& text, std::size_t hour_digits) {
  const auto hour = take_digits(text, hour_digits, 2);
  if (!hour || *hour > 23 || !take(text, ':')) return std::nullopt;
  const auto minute = take_digits(text, 2, 2);
  if (!minute || *minute > 59) return std::nullopt;
  int second = 0;
  if (take(text, ':')) {
    const auto seconds = take_digits(text, 2, 2);
    if (!seconds || *seconds > 59) return std::nullopt;
    second = *seconds;
  }
  return Seconds{*hour * 3600 + *minute * 60 + second};
}

void put_two_digits(std::string& out, long long n) {
  out += static_cast<char>('0' + n / 10 % 10);
  out += static_cast<char>('0' + n % 10);
}

}  // namespace

std::optional<Date> date_in(std::string_view text) {
  const auto year = take_digits(text, 4, 4);
  if (!year || !take(text, '-')) return std::nullopt;
  const auto month = take_digits(text, 2, 2);
  if (!month || !take(text, '-')) return std::nullopt;
  const auto day = take_digits(text, 2, 2);
  if (!day || !text.empty() || *year < 1970 || *year > 2200) return std::nullopt;
  const std::chrono::year_month_day date{std::chrono::year{*year},
                                         std::chrono::month{static_cast<unsigned>(*month)},
                                         std::chrono::day{static_cast<unsigned>(*day)}};
  if (!date.ok()) return std::nullopt;
  return Date{static_cast<int>(std::chrono::sys_days{date}.time_since_epoch().count())};
}

std::string date_text(Date date) {
  const std::chrono::year_month_day shown{std::chrono::sys_days{std::chrono::days{date.days}}};
  std::string out = std::to_string(static_cast<int>(shown.year()));
  out += '-';
  put_two_digits(out, static_cast<unsigned>(shown.month()));
  out += '-';
  put_two_digits(out, static_cast<unsigned>(shown.day()));
  return out;
}

std::optional<LocalTime> local_time_in(std::string_view text) {
  LocalTime out;
  if (text.size() > 10 && text[10] == 'T') {
    out.date = date_in(text.substr(0, 10));
    if (!out.date) return std::nullopt;
    text.remove_prefix(11);
  }
  const auto clock = take_clock(text, out.date ? 2 : 1);
  if (!clock) return std::nullopt;
  out.after_midnight = *clock;
  if (!out.date || text.empty()) return text.empty() ? std::optional{out} : std::nullopt;
  if (text == "Z") {
    out.offset = Seconds{0};
    return out;
  }
  const int sign = take(text, '+') ? 1 : take(text, '-') ? -1 : 0;
  if (sign == 0) return std::nullopt;
  const auto offset = take_clock(text, 2);
  if (!offset || !text.empty()) return std::nullopt;
  out.offset = *offset * sign;
  return out;
}

std::string clock_text(Seconds after_midnight) {
  constexpr long long kDay = 86400;
  const long long t = ((after_midnight.count() % kDay) + kDay) % kDay;
  std::string out;
  put_two_digits(out, t / 3600);
  out += ':';
  put_two_digits(out, t / 60 % 60);
  if (t % 60 != 0) {
    out += ':';
    put_two_digits(out, t % 60);
  }
  return out;
}

}  // namespace base
