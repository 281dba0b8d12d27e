#include "kitchen/lesson.h"

#include "kitchen/lesson_clock.h"

namespace kitchen {

std::optional<Instant> opening_instant(const Lesson& lesson) {
  const auto date = base::date_in(lesson.date);
  if (!date || !known_zone(lesson.zone)) return std::nullopt;
  return meaning_of(lesson.zone, *date, base::minutes(lesson.opens_minute)).instant;
}

std::string clock(const Lesson& lesson, Seconds since_opening) {
  const auto opens = opening_instant(lesson);
  // A lesson without a date has no clock change either.
  if (!opens) return base::clock_text(base::minutes(lesson.opens_minute) + since_opening);
  return base::clock_text(local_at(lesson.zone, *opens + since_opening).after_midnight);
}

std::string file_time(const Lesson& lesson, Seconds since_opening) {
  const auto opens = opening_instant(lesson);
  if (!opens) return base::clock_text(base::minutes(lesson.opens_minute) + since_opening);
  const Instant instant = *opens + since_opening;
  const LocalMoment local = local_at(lesson.zone, instant);
  const std::string time = base::clock_text(local.after_midnight);
  const std::string date = base::date_text(local.date);
  const bool later_of_two = meaning_of(lesson.zone, local.date, local.after_midnight).instant !=
                            instant;
  if (!later_of_two) return date == lesson.date ? time : date + "T" + time;
  const bool west = local.offset < Seconds{0};
  return date + "T" + time + (west ? "-" : "+") +
         base::clock_text(west ? -local.offset : local.offset);
}

int bay_of(const Lesson& lesson, int cook) {
  const int place = lesson.cooks[static_cast<std::size_t>(cook)].place;
  return lesson.room.places[static_cast<std::size_t>(place)].bay;
}

}  // namespace kitchen
