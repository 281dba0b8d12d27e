// benchbell allergens: what is stated of dishes, and who in a lesson must not have it.
#include <unistd.h>
#include <algorithm>
#include <cstdio>
#include <deque>
#include <map>
#include <optional>

#include "app/commands.h"
#include "app/files.h"
#include "app/find_dish.h"
#include "app/known_dishes.h"
#include "app/own_tables.h"
#include "kitchen/json_tree.h"
#include "kitchen/words.h"
#include "print/say_allergens.h"
#include "shipped/dishes.h"
#include "shipped/safety.h"

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
  const std::vector<kitchen::Dish> more = variants_in(text, file);
  asked.known.insert(asked.known.end(), more.begin(), more.end());
}

// A lesson in which a cook makes what they must avoid is refused by its reader. Here that is the
// very question, so it is read without the allergies, which are put back after.
base::Result<kitchen::Lesson> read_though_avoided(const std::string& text, const std::string& file,
                                                  const kitchen::Loader& load) {
  Problems problems;
  auto tree = kitchen::parse_json(text, file, problems);
  kitchen::Node* cooks = tree ? tree->find("cooks") : nullptr;
  if (cooks == nullptr) return problems;
  std::map<std::string, kitchen::Allergens> avoids;
  for (kitchen::Node& cook : cooks->items) {
    const kitchen::Node* name = cook.find("name");
    const kitchen::Node* list = cook.find("avoids");
    if (name == nullptr || list == nullptr) continue;
    for (const kitchen::Node& each : list->items) {
      if (const auto a = kitchen::value_of(kitchen::kAllergenWords, each.text))
        avoids[name->text].insert(*a);
    }
    cook.erase("avoids");
  }
  auto read = kitchen::read_lesson(kitchen::json_text(*tree), file, load);
  if (!read) return read.problems();
  kitchen::Lesson lesson = std::move(read).value();
  for (kitchen::Cook& cook : lesson.cooks) cook.avoids = avoids[cook.name];
  return lesson;
}

void take_lesson(Asked& asked, const std::string& text, const std::string& file,
                 Problems& problems) {
  const kitchen::Loader load = [&, open = file_loader()](const std::string& path) {
    auto loaded = open(path);
    if (loaded) know_variants(asked, loaded.value(), path);
    return loaded;
  };
  auto lesson = kitchen::read_lesson(text, file, load);
  const bool only_avoided = !lesson && std::all_of(lesson.problems().begin(),
                                                   lesson.problems().end(), [](const auto& p) {
                                                     return p.code == "lesson.cook_avoids";
                                                   });
  if (only_avoided) lesson = read_though_avoided(text, file, load);
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

int print_sheet(const Asked& asked, const safety::Evidence& evidence, const AllergensAsked& how) {
  print::AllergenSheet sheet{asked.dishes, {}, {}, evidence};
  std::vector<safety::DayLesson> day;
  bool stop = false;
  for (std::size_t i = 0; i < asked.lessons.size(); ++i) {
    const kitchen::Lesson& lesson = asked.lessons[i];
    const safety::LessonNeeds& needs = asked.needs[i];
    day.push_back({lesson, needs});
    auto found = safety::conflicts({lesson, needs, evidence, shipped::substitutes(), asked.known});
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
  for (const shipped::Dish& dish : shipped::dishes()) know_variants(read, dish.text, dish.key);
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
  return print_sheet(read, {foods.value(), labels.value(), shipped::hidden()}, asked);
}

}  // namespace app
