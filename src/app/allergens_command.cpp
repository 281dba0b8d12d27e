// benchbell allergens: what is stated of dishes, and who in a lesson must not have it.
#include <unistd.h>
#include <cstdio>
#include <deque>

#include "app/commands.h"
#include "app/files.h"
#include "app/safety_tables.h"
#include "app/shipped.h"
#include "app/shipped_foods.h"
#include "print/say_allergens.h"

namespace app {
namespace {

using base::Problems;

void keep(Problems& problems, const Problems& more) {
  problems.insert(problems.end(), more.begin(), more.end());
}

/// What was asked for, read. Lists that others point into never move: deques.
struct Asked {
  std::vector<kitchen::Dish> dishes;
  std::deque<kitchen::Lesson> lessons;
  std::deque<safety::LessonNeeds> needs;
  std::vector<kitchen::Dish> known;  ///< every variant of every dish file read or shipped
};

void know_variants(Asked& asked, const std::string& text, const std::string& file) {
  const auto kind = kitchen::document_kind(text, file);
  if (!kind || kind.value() != kitchen::DocumentKind::kDish) return;
  const auto read = kitchen::read_dish_variants(text, file);
  if (!read) return;  // told where the lesson or dish itself is read
  asked.known.insert(asked.known.end(), read.value().begin(), read.value().end());
}

void take_lesson(Asked& asked, const std::string& text, const std::string& file,
                 Problems& problems) {
  const kitchen::Loader load = file_loader();
  auto lesson = kitchen::read_lesson(text, file, [&](const std::string& path) {
    auto loaded = load(path);
    if (loaded) know_variants(asked, loaded.value(), path);
    return loaded;
  });
  if (lesson) {
    asked.lessons.push_back(std::move(lesson).value());
  } else {
    keep(problems, lesson.problems());
  }
}

void take(Asked& asked, const std::string& what, Problems& problems) {
  const bool file = what.size() > 5 && what.ends_with(".json");
  if (file) {
    const auto text = read_file(what);
    if (!text) return keep(problems, text.problems());
    const auto kind = kitchen::document_kind(text.value(), what);
    if (!kind) return keep(problems, kind.problems());
    if (kind.value() == kitchen::DocumentKind::kLesson)
      return take_lesson(asked, text.value(), what, problems);
  }
  const auto dish = find_dish(what);
  if (dish) {
    asked.dishes.push_back(dish.value());
  } else {
    keep(problems, dish.problems());
  }
}

void take_needs(Asked& asked, const std::string& file, Problems& problems) {
  std::optional<std::string> text;
  if (!file.empty()) {
    const auto read = read_file(file);
    if (!read) return keep(problems, read.problems());
    text = read.value();
  }
  for (const kitchen::Lesson& lesson : asked.lessons) {
    if (!text) {
      asked.needs.push_back(safety::needs_in(lesson));
      continue;
    }
    auto needs = safety::read_needs(*text, file, lesson);
    if (!needs) return keep(problems, needs.problems());
    asked.needs.push_back(std::move(needs).value());
  }
}

base::Result<safety::Labels> labels_of(const std::string& file, const kitchen::Foods& foods) {
  if (file.empty()) return safety::Labels{};
  const auto text = read_file(file);
  if (!text) return text.problems();
  return safety::read_labels(text.value(), file, foods);
}

int print_sheet(const Asked& asked, const safety::Evidence& evidence, const AllergensAsked& how) {
  print::AllergenSheet sheet{asked.dishes, {}, {}, evidence};
  std::vector<safety::DayLesson> day;
  bool stop = false;
  for (std::size_t i = 0; i < asked.lessons.size(); ++i) {
    const kitchen::Lesson& lesson = asked.lessons[i];
    const safety::LessonNeeds& needs = asked.needs[i];
    day.push_back({lesson, needs});
    auto found = safety::conflicts({lesson, needs, evidence, shipped_substitutes(), asked.known});
    for (const safety::Conflict& c : found)
      stop = stop || c.seriousness == safety::Seriousness::kStop;
    sheet.lessons.push_back(
        {lesson, needs, std::move(found), safety::order_at_things(lesson, needs, evidence)});
  }
  sheet.leftovers = safety::leftovers(day, evidence);
  const std::string text = how.json ? print::allergens_json(sheet)
                                    : print::say_allergens(sheet, {how.details, how.width,
                                                                   ::isatty(STDOUT_FILENO) == 1});
  std::fputs(text.c_str(), stdout);
  return stop ? kDoesNotFit : kFits;
}

}  // namespace

int allergens(const AllergensAsked& asked) {
  Problems problems;
  Asked read;
  for (const ShippedDish& dish : shipped_dishes()) know_variants(read, dish.text, dish.key);
  for (const std::string& what : asked.what) take(read, what, problems);
  take_needs(read, asked.needs_file, problems);
  const auto foods = foods_with(asked.foods_file);
  if (!foods) {
    keep(problems, foods.problems());
    return tell(problems);
  }
  const auto labels = labels_of(asked.labels_file, foods.value());
  if (!labels) keep(problems, labels.problems());
  if (!problems.empty()) return tell(problems);
  return print_sheet(read, {foods.value(), labels.value(), shipped_hidden()}, asked);
}

}  // namespace app
