#include "kitchen/zone.h"

#include <date/tz.h>

#include <stdexcept>

namespace kitchen {
namespace {

const date::time_zone* find_zone(const std::string& zone) {
  try {
    return date::locate_zone(zone);
  } catch (const std::runtime_error&) {
    return nullptr;  // the library's only way to say "no such zone"
  }
}

}  // namespace

bool known_zone(const std::string& zone) { return find_zone(zone) != nullptr; }

Meaning meaning_of(const std::string& zone, base::Date date, base::Seconds after_midnight) {
  const date::local_seconds local{date::days{date.days} + after_midnight};
  const date::local_info info = find_zone(zone)->get_info(local);
  const Instant as_first = local.time_since_epoch() - info.first.offset;
  switch (info.result) {
    case date::local_info::nonexistent:
      return {LocalKind::kNever, info.first.end.time_since_epoch()};
    case date::local_info::ambiguous:
      return {LocalKind::kTwice, as_first};
    default:
      return {LocalKind::kOnce, as_first};
  }
}

LocalMoment local_at(const std::string& zone, Instant instant) {
  const auto offset = find_zone(zone)->get_info(date::sys_seconds{instant}).offset;
  const base::Seconds local = instant + offset;
  const auto day = date::floor<date::days>(local);
  return {base::Date{static_cast<int>(day.count())}, local - day, offset};
}

}  // namespace kitchen
