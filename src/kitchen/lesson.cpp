#include "kitchen/lesson.h"

#include <algorithm>

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

bool may_use(const Lesson& lesson, const Cooker& cooker, HeatKind heat) {
  return lesson.year >= lesson.rules.gas_from_year || !burns_gas(cooker, heat);
}

bool chilled_before_home(const Lesson& lesson, int dish) {
  const bool put_away = std::any_of(
      lesson.carry.begin(), lesson.carry.end(),
      [dish](const CarryOver& c) { return c.dish == dish && !c.second_half; });
  return lesson.rules.food_home_chilled && lesson.purpose == Purpose::kTakeHome && !put_away &&
         needs_chilling(lesson.dishes[static_cast<std::size_t>(dish)]);
}

int pin_of(const Lesson& lesson, int cook, StepRef step) {
  for (std::size_t p = 0; p < lesson.pins.size(); ++p) {
    const Pin& pin = lesson.pins[p];
    const bool theirs = pin.cooks.empty() ||
                        std::find(pin.cooks.begin(), pin.cooks.end(), cook) != pin.cooks.end();
    if (pin.step == step && theirs) return static_cast<int>(p);
  }
  return -1;
}

int bay_of(const Lesson& lesson, int cook) {
  const int place = lesson.cooks[static_cast<std::size_t>(cook)].place;
  return lesson.room.places[static_cast<std::size_t>(place)].bay;
}

}  // namespace kitchen
