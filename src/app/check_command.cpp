// benchbell check: are these files whole? benchbell dishes: what is shipped.
#include <cstdio>
#include <optional>

#include "app/commands.h"
#include "app/files.h"
#include "app/find_dish.h"
#include "base/text.h"
#include "kitchen/check_lesson.h"
#include "kitchen/json_tree.h"
#include "kitchen/read.h"
#include "larder/week.h"
#include "shipped/dishes.h"

namespace app {
namespace {

// A file of the kind "week", which belongs to the larder; nothing for other kinds.
std::optional<base::Result<std::string>> look_at_week(const std::string& text,
                                                      const std::string& file) {
  base::Problems faults;
  const auto tree = kitchen::parse_json(text, file, faults);
  const kitchen::Node* kind = tree ? tree->find("kind") : nullptr;
  if (kind == nullptr || kind->text != "week") return std::nullopt;
  const auto week = larder::read_week(text, file, file_loader());
  if (!week) return base::Result<std::string>(week.problems());
  return base::Result<std::string>(base::say(
      "week ", base::in_quotes(week.value().title), ", ",
      base::counted(static_cast<long long>(week.value().lessons.size()), "lesson", "lessons")));
}

// What a good file is, in a few words; or its problems.
base::Result<std::string> look_at(const std::string& file) {
  const auto text = read_file(file);
  if (!text) return text.problems();
  if (auto week = look_at_week(text.value(), file)) return *std::move(week);
  const auto kind = kitchen::document_kind(text.value(), file);
  if (!kind) return kind.problems();
  switch (kind.value()) {
    case kitchen::DocumentKind::kDish: {
      const auto dish = kitchen::read_dish(text.value(), file);
      if (!dish) return dish.problems();
      return base::say(
          "dish ", base::in_quotes(dish.value().name), ", ",
          base::counted(static_cast<long long>(dish.value().method.size()), "step", "steps"));
    }
    case kitchen::DocumentKind::kRoom: {
      const auto room = kitchen::read_room(text.value(), file);
      if (!room) return room.problems();
      return base::say(
          "room ", base::in_quotes(room.value().name), ", ",
          base::counted(static_cast<long long>(room.value().places.size()), "place", "places"));
    }
    case kitchen::DocumentKind::kHouseRules: {
      const auto rules = kitchen::read_house_rules(text.value(), file);
      if (!rules) return rules.problems();
      return base::say("house rules of ",
                       rules.value().school.empty() ? "a school" : rules.value().school);
    }
    case kitchen::DocumentKind::kLesson: {
      const auto lesson = kitchen::read_lesson(text.value(), file, file_loader());
      if (!lesson) return lesson.problems();
      std::string says = base::say(
          "lesson ", base::in_quotes(lesson.value().title), ", ",
          base::counted(static_cast<long long>(lesson.value().cooks.size()), "cook", "cooks"));
      for (const std::string& note : kitchen::notes(lesson.value())) says += "\n  " + note;
      return says;
    }
  }
  return base::Problem{
      "file.kind", file, "", "This kind of file is not known.",
      "Write \"kind\": \"dish\", \"room\", \"house_rules\", \"lesson\" or \"week\"."};
}

}  // namespace

int check(const CheckAsked& asked) {
  base::Problems problems;
  for (const std::string& file : asked.files) {
    const auto looked = look_at(file);
    if (looked) {
      std::printf("%s: good: %s\n", file.c_str(), looked.value().c_str());
    } else {
      base::gather(looked, problems);
    }
  }
  return problems.empty() ? kFits : tell(problems);
}

int dishes(const DishesAsked& asked) {
  if (!asked.name.empty()) {
    for (const shipped::Dish& dish : shipped::dishes()) {
      if (dish.key != asked.name) continue;
      std::fputs(dish.text.c_str(), stdout);
      return kFits;
    }
    const auto found = find_dish(asked.name);
    if (!found) return tell(found.problems());
    std::fputs(kitchen::write_dish(found.value()).c_str(), stdout);
    return kFits;
  }
  for (const shipped::Dish& dish : shipped::dishes()) {
    std::printf("%-22s %s\n", dish.key.c_str(), dish.dish.name.c_str());
    for (const std::string& variant : dish.variants)
      std::printf("%-22s   \"%s: %s\"\n", "", dish.key.c_str(), variant.c_str());
  }
  return kFits;
}

}  // namespace app
