#include <algorithm>

#include "kitchen/check_parts.h"
#include "kitchen/lesson_clock.h"
#include "kitchen/raw_tasting.h"

namespace kitchen {
namespace {

std::string gas_words(const Cooker& cooker) {
  return cooker.gas == Gas::kAll ? cooker.name : say("the rings of ", cooker.name);
}

/// Cookers that somebody would reach for, were the class old enough for gas.
std::vector<std::string> gas_left_out(const Lesson& lesson) {
  std::vector<bool> told(lesson.room.cookers.size(), false);
  std::vector<std::string> out;
  for (const Cook& cook : lesson.cooks) {
    for (const int k : lesson.room.places[static_cast<std::size_t>(cook.place)].cookers) {
      const Cooker& cooker = lesson.room.cookers[static_cast<std::size_t>(k)];
      const auto wanted = [&](int d) {
        const std::vector<Step>& method = dish_at(lesson, d).method;
        return std::any_of(method.begin(), method.end(), [&](const Step& step) {
          return step.heat && !may_use(lesson, cooker, step.heat->with);
        });
      };
      if (told[static_cast<std::size_t>(k)] ||
          std::none_of(cook.dishes.begin(), cook.dishes.end(), wanted))
        continue;
      told[static_cast<std::size_t>(k)] = true;
      out.push_back(gas_words(cooker));
    }
  }
  return out;
}

/// Names of the dishes, each once, that `wanted` picks.
template <class Wanted>
std::string dishes_that(const Lesson& lesson, Wanted wanted) {
  std::vector<std::string> names;
  for (const int d : dishes_cooked(lesson)) {
    const std::string& name = dish_at(lesson, d).name;
    if (wanted(d) && std::find(names.begin(), names.end(), name) == names.end())
      names.push_back(name);
  }
  return base::joined(names);
}

std::string chilled_words(const Lesson& lesson) {
  const std::string dishes = dishes_that(lesson,
                                         [&](int d) { return chilled_before_home(lesson, d); });
  if (dishes.empty()) return {};
  return lesson.rack_for
             ? say("House rule: ", dishes,
                   " may go home only out of the fridge. What is left on "
                   "the rack, ",
                   lesson.adults[static_cast<std::size_t>(*lesson.rack_for)].name,
                   " puts into it within 90 min of cooking; the plan keeps no space for it.")
             : say("House rule: ", dishes,
                   " may go home only out of the fridge. Each box is in it "
                   "within 90 min of cooking and stays until home time.");
}

std::string raw_words(const Lesson& lesson) {
  if (!lesson.rules.no_raw_tasting) return {};
  std::vector<std::string> raw;
  const std::string dishes = dishes_that(lesson, [&](int d) {
    const std::vector<std::string> in = raw_in(dish_at(lesson, d));
    for (const std::string& each : in) {
      if (std::find(raw.begin(), raw.end(), each) == raw.end()) raw.push_back(each);
    }
    return !in.empty();
  });
  if (dishes.empty()) return {};
  return say("House rule: nobody tastes or licks a raw mixture. Raw until it is cooked: ",
             base::joined(raw), " in ", dishes, ".");
}

}  // namespace

std::string pin_words(const Lesson& lesson, const Pin& pin) {
  constexpr std::size_t kMostNames = 3;  // more are a number: nobody reads a class list here
  const Dish& dish = dish_at(lesson, pin.step.dish);
  const Step& step = dish.method[static_cast<std::size_t>(pin.step.step)];
  std::vector<std::string> names;
  for (const int c : pin.cooks) names.push_back(cook_at(lesson, c).name);
  const std::string whom = names.empty()               ? std::string()
                           : names.size() > kMostNames ? say(" for ", names.size(), " cooks")
                                                       : say(" for ", base::joined(names));
  return say("Pinned", whom, ": ", step.brief.empty() ? step.id : step.brief, " of ",
             dish_name(dish), " starts at ", clock(lesson, pin.at), ".");
}

std::vector<std::string> rule_notes(const Lesson& lesson) {
  std::vector<std::string> out;
  if (const std::vector<std::string> gas = gas_left_out(lesson); !gas.empty()) {
    out.push_back(say("House rule: year ", lesson.year, " does not cook on gas (from year ",
                      lesson.rules.gas_from_year, "), so the plan leaves out ", base::joined(gas),
                      "."));
  }
  for (std::string words : {chilled_words(lesson), raw_words(lesson)}) {
    if (!words.empty()) out.push_back(std::move(words));
  }
  if (!out.empty()) out.push_back("Your employer's and local rules come before the house rules.");
  return out;
}

std::vector<std::string> notes(const Lesson& lesson) {
  std::vector<std::string> out;
  for (const Pin& pin : lesson.pins) out.push_back(pin_words(lesson, pin));
  for (const int d : dishes_cooked(lesson)) {
    const Dish& dish = dish_at(lesson, d);
    for (const Step& step : dish.method) {
      if (!step.added || !step.closes) continue;
      out.push_back(
          say("In ", dish_name(dish), " the step \"", step.says, "\" was added after ",
              in_quotes(dish.method[static_cast<std::size_t>(*step.closes)].id),
              ": someone must take it off the heat, within 1 min, and that needs hands."));
    }
    if (dish.variant.empty()) continue;
    std::vector<std::string> names;
    int people = 0;
    for (const Cook& cook : lesson.cooks) {
      if (std::find(cook.dishes.begin(), cook.dishes.end(), d) == cook.dishes.end()) continue;
      names.push_back(cook.name);
      people += cook.people;
    }
    out.push_back(say(base::joined(names), people == 1 ? " cooks" : " cook", " the variant ",
                      dish_name(dish), "."));
  }
  for (std::string& rule : rule_notes(lesson)) out.push_back(std::move(rule));
  const auto date = base::date_in(lesson.date);
  if (date && known_zone(lesson.zone) &&
      meaning_of(lesson.zone, *date, base::minutes(lesson.opens_minute)).kind ==
          LocalKind::kTwice) {
    out.push_back(say("The clock shows ", clock(lesson, Seconds{0}), " twice on ", lesson.date,
                      "; the lesson starts at the first."));
  }
  if (const auto opens = opening_instant(lesson)) {
    const auto before = local_at(lesson.zone, *opens).offset;
    const auto after = local_at(lesson.zone, *opens + lesson.bell).offset;
    if (before != after)
      out.push_back("The clocks change during the lesson; all lengths are real minutes.");
  }
  return out;
}

}  // namespace kitchen
