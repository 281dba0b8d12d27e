#include "timeplan/quick_lesson.h"

#include <algorithm>
#include <map>

#include <fmt/format.h>

namespace timeplan {
namespace {

void need_range(base::Problems& problems, const std::string& code, const std::string& what,
                int value, int least, int most) {
  if (value >= least && value <= most) return;
  problems.push_back({"quick." + code, "", "", fmt::format("{} is {}.", what, value),
                      fmt::format("Give a number from {} to {}.", least, most)});
}

// As many sinks in each bay as can be, the first bays one more; a bay without a sink shares the
// next one's.
kitchen::Room stock_room(const QuickWish& wish, int cooks) {
  kitchen::Room room;
  room.name = fmt::format("A room with {} cookers and {} sinks", wish.cookers, wish.sinks);
  const int bays = std::min(wish.cookers, wish.sinks);
  for (int b = 0; b < bays; ++b) {
    room.bays.push_back({std::string(1, static_cast<char>('A' + b)),
                         wish.sinks / bays + (b < wish.sinks % bays ? 1 : 0)});
  }
  for (int c = 0; c < wish.cookers; ++c) {
    kitchen::Cooker cooker;
    cooker.bay = c % bays;
    cooker.name = fmt::format("{} cooker{}", room.bays[static_cast<std::size_t>(cooker.bay)].name,
                              c < bays ? "" : fmt::format(" {}", c / bays + 1));
    room.cookers.push_back(cooker);
  }
  std::vector<int> placed(static_cast<std::size_t>(bays), 0);
  for (int p = 0; p < cooks; ++p) {
    kitchen::Place place;
    const int cooker = p % wish.cookers;
    place.bay = room.cookers[static_cast<std::size_t>(cooker)].bay;
    place.name = fmt::format("{}{}", room.bays[static_cast<std::size_t>(place.bay)].name,
                             ++placed[static_cast<std::size_t>(place.bay)]);
    place.cookers = {cooker};
    room.places.push_back(place);
  }
  return room;
}

void stock_kit(kitchen::Room& room, const QuickWish& wish, int cooks) {
  std::map<std::string, int> most;
  for (const kitchen::Dish& dish : wish.dishes) {
    for (const kitchen::Step& step : dish.method) {
      for (const kitchen::KitNeed& need : step.kit)
        most[need.item] = std::max(most[need.item], need.count);
    }
  }
  for (const auto& [item, count] : most) {
    kitchen::Kit kit;
    kit.item = item;
    kit.count = count * cooks;
    // Machines are few in every room; the usual numbers are common practice, no source.
    if (item == "food processor" || item == "hand blender" || item == "electric mixer" ||
        item == "piping set")
      kit.count = std::min(kit.count, 6 * count);
    room.kit.push_back(kit);
  }
}

}  // namespace

base::Result<kitchen::Lesson> quick_lesson(const QuickWish& wish) {
  base::Problems problems;
  need_range(problems, "pupils", "The number of pupils", wish.pupils, 1, 40);
  need_range(problems, "together", "The number working together", wish.together, 1, 3);
  need_range(problems, "cookers", "The number of cookers", wish.cookers, 1, 20);
  need_range(problems, "sinks", "The number of sinks", wish.sinks, 1, 20);
  if (wish.to_minute <= wish.from_minute) {
    problems.push_back({"quick.bell", "", "", "The lesson ends before it starts.",
                        "Give --to later than --from."});
  }
  if (wish.dishes.empty())
    problems.push_back({"quick.dish", "", "", "No dish is named.", "Name one with --dish."});
  if (!problems.empty()) return problems;

  const int cooks = (wish.pupils + wish.together - 1) / wish.together;
  kitchen::Lesson lesson;
  for (const kitchen::Dish& dish : wish.dishes)
    lesson.title += (lesson.title.empty() ? "" : " and ") + dish.name;
  lesson.date = "2026-01-12";  // any school day: nothing is printed of it
  lesson.opens_minute = wish.from_minute;
  lesson.bell = base::minutes(wish.to_minute - wish.from_minute);
  lesson.purpose = wish.purpose;
  lesson.rules = wish.rules;
  lesson.room = stock_room(wish, cooks);
  stock_kit(lesson.room, wish, cooks);
  lesson.dishes = wish.dishes;
  int left = wish.pupils;
  for (int c = 0; c < cooks; ++c) {
    kitchen::Cook cook;
    cook.place = c;
    cook.name = lesson.room.places[static_cast<std::size_t>(c)].name;
    // The last cooks take what is left over: 23 pupils in pairs are eleven pairs and one alone.
    cook.people = std::max(1, std::min(wish.together, left));
    left -= cook.people;
    cook.leaves = lesson.bell;
    for (int d = 0; d < static_cast<int>(wish.dishes.size()); ++d) cook.dishes.push_back(d);
    lesson.cooks.push_back(cook);
  }
  kitchen::Adult teacher;
  teacher.name = "You";
  teacher.leads = true;
  teacher.may_watch = {kitchen::Hazard::kHotOil,   kitchen::Hazard::kFirstKnife,
                       kitchen::Hazard::kLargePan, kitchen::Hazard::kBlender,
                       kitchen::Hazard::kProbing,  kitchen::Hazard::kAdultOnly};
  teacher.to = lesson.bell;
  lesson.adults = {teacher};
  if (wish.purpose != kitchen::Purpose::kTakeHome)
    lesson.sittings = {{"serve", base::Seconds{0}, lesson.bell, {}}};
  return lesson;
}

}  // namespace timeplan
