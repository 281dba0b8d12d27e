// Clock times and dates as people write them: "10:50", "2026-11-17T10:50". No time zones here.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "base/time.h"

namespace base {

/// Days since 1 January 1970, of a date that exists.
struct Date {
  int days = 0;
  friend auto operator<=>(const Date&, const Date&) = default;
};

/// A moment on a wall clock. `offset` is there only if the text said it ("+01:00", "Z").
struct LocalTime {
  std::optional<Date> date;   ///< nothing: the day is understood
  Seconds after_midnight{0};  ///< [0, 24 h)
  std::optional<Seconds> offset;
  friend bool operator==(const LocalTime&, const LocalTime&) = default;
};

/// "2026-11-17" (ISO 8601); nothing for a date that does not exist or lies outside 1970 to 2200.
std::optional<Date> date_in(std::string_view);
std::string date_text(Date);

/// "10:50", "9:05", "10:50:30", "2026-11-17T10:50", "2026-11-17T10:50:00+00:00", "...Z".
std::optional<LocalTime> local_time_in(std::string_view);

/// "10:50", with seconds only if there are any: "10:50:30". Longer than a day: counted on, "25:10"
/// never appears because the day is taken off.
std::string clock_text(Seconds after_midnight);

}  // namespace base
