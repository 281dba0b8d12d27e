#include "timeplan/verify/lengths.h"

#include <algorithm>
#include <cmath>

namespace timeplan::judge {

namespace {

constexpr double kCookForm = 0.15;  // sigma of a cook's form of the day (from memory)
constexpr double kRoomForm = 0.08;  // sigma of the room's (from memory)
constexpr int kPart = 5;            // minutes of a part at most (rule P1)
constexpr int kWholeUpTo = 10;      // minutes a step may last without being split (rule P1)

std::int64_t ceil_div(std::int64_t a, std::int64_t b) { return (a + b - 1) / b; }

LengthRange exactly(Seconds t) {
  const auto rounded = base::grid_up(t);
  return {rounded, rounded};
}

Seconds all_washing_up(const Case& c, int cook) {
  const auto& rules = c.lesson.rules;
  const auto& who = c.cook(cook);
  const auto further = std::max<std::int64_t>(0, std::ssize(who.dishes) - 1);
  const auto first = who.people == 1   ? rules.wash_up_one
                     : who.people == 2 ? rules.wash_up_two
                                       : rules.wash_up_three;
  return first + further * rules.wash_up_more;
}

LengthRange apron_length(const Case& c, const Task& t) {
  const auto positions = std::max(1, hand_positions(c, t.cook, t.basin));
  return exactly(c.lesson.rules.apron_and_hands * ceil_div(c.cook(t.cook).people, positions));
}

LengthRange step_length(const Case& c, const Task& t) {
  const auto& step = c.step(t.dish, t.step);
  if (!kitchen::hands_on(step.attention)) {
    const auto least = base::grid_up(step.least);
    return {least, std::max(least, base::grid_down(step.most))};
  }
  const auto mean = planned_mean(c, t.cook, t.dish, t.step);
  return exactly(mean / step_parts(c, t.cook, t.dish, t.step));
}

LengthRange wash_up_length(const Case& c, const Task& t) {
  return exactly(
      base::Seconds{ceil_div(all_washing_up(c, t.cook).count(), wash_up_parts(c, t.cook))});
}

}  // namespace

std::int64_t minutes_up(double minutes) {
  return static_cast<std::int64_t>(std::ceil(minutes - 1e-6));
}

Seconds planned_mean(const Case& c, int cook, int dish, int step) {
  const auto& s = c.step(dish, step);
  const double median = static_cast<double>(s.least.count()) / 60.0;
  const double variance = s.spread * s.spread + kCookForm * kCookForm + kRoomForm * kRoomForm;
  const double pace = c.pace[static_cast<std::size_t>(cook)];
  return base::minutes(minutes_up(median * pace * std::exp(variance / 2)));
}

Seconds usual_length(const Case& c, int cook, int dish, int step) {
  const auto& s = c.step(dish, step);
  return kitchen::hands_on(s.attention) ? planned_mean(c, cook, dish, step)
                                        : base::grid_up(s.least);
}

int step_parts(const Case& c, int cook, int dish, int step) {
  const auto& s = c.step(dish, step);
  if (!s.can_put_down || !kitchen::hands_on(s.attention)) return 1;
  const auto minutes = planned_mean(c, cook, dish, step).count() / 60;
  return minutes > kWholeUpTo ? static_cast<int>(ceil_div(minutes, kPart)) : 1;
}

int wash_up_parts(const Case& c, int cook) {
  if (!c.lesson.rules.wash_in_parts) return 1;
  const auto seconds = all_washing_up(c, cook).count();
  return std::max(1, static_cast<int>(ceil_div(seconds, kPart * 60)));
}

int hand_positions(const Case& c, int cook, bool basin) {
  const auto& room = c.lesson.room;
  return basin ? room.hand_basins : room.bays[static_cast<std::size_t>(c.place_of(cook).bay)].sinks;
}

LengthRange length_of(const Case& c, const Task& t) {
  using enum TaskKind;
  const auto& rules = c.lesson.rules;
  switch (t.kind) {
    case kApronAndHands:
      return apron_length(c, t);
    case kCollectIngredients:
      return exactly(rules.collect_ingredients);
    case kCollectEquipment:
      return exactly(rules.collect_equipment);
    case kStep:
      return step_length(c, t);
    case kHandWash:
      return exactly(rules.hand_wash);
    case kKitWash:
      return exactly(rules.kit_wash);
    case kLook:
      return exactly(c.step(t.dish, t.step).gate->length);
    case kStore:
      return exactly(rules.store);
    case kTakeOutOfStore:
      return exactly(base::minutes(1));
    case kPack:
      return exactly(rules.pack);
    case kWashUp:
      return wash_up_length(c, t);
    case kWindow:
      return exactly(c.lesson.windows[static_cast<std::size_t>(t.window)].length);
    case kKnivesOut:
    case kKnivesIn:
      return exactly(base::minutes(2));
    case kBayLook:
      return exactly(base::minutes(1));
    case kCleanDown:
    case kFullClean:
      break;
  }
  return {};
}

}  // namespace timeplan::judge
