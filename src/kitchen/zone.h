// Local times to real moments and back, through the time zone tables of the system (package
// tzdata).
#pragma once

#include <optional>
#include <string>

#include "base/clock.h"

namespace kitchen {

/// Seconds since 1970-01-01T00:00Z.
using Instant = base::Seconds;

bool known_zone(const std::string& zone);

/// What a local time means in a zone.
enum class LocalKind : std::int8_t {
  kOnce,   ///< an ordinary time
  kNever,  ///< skipped when the clocks go forward
  kTwice,  ///< comes twice when the clocks go back; `instant` is the earlier
};
struct Meaning {
  LocalKind kind = LocalKind::kOnce;
  Instant instant{0};  ///< kNever: the moment the clocks change
};

/// The zone must be known.
Meaning meaning_of(const std::string& zone, base::Date date, base::Seconds after_midnight);

struct LocalMoment {
  base::Date date;
  base::Seconds after_midnight{0};
  base::Seconds offset{0};  ///< of local time from UTC
  friend bool operator==(const LocalMoment&, const LocalMoment&) = default;
};

/// The zone must be known.
LocalMoment local_at(const std::string& zone, Instant);

}  // namespace kitchen
