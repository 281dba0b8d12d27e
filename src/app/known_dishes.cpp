#include "app/known_dishes.h"

#include "app/files.h"
#include "kitchen/read.h"
#include "shipped/dishes.h"

namespace app {
namespace {

void add(std::vector<kitchen::Dish>& known, const std::vector<kitchen::Dish>& more) {
  known.insert(known.end(), more.begin(), more.end());
}

}  // namespace

std::vector<kitchen::Dish> variants_in(const std::string& text, const std::string& file) {
  const auto kind = kitchen::document_kind(text, file);
  if (!kind || kind.value() != kitchen::DocumentKind::kDish) return {};
  const auto read = kitchen::read_dish_variants(text, file);
  return read ? read.value() : std::vector<kitchen::Dish>{};
}

std::vector<kitchen::Dish> known_dishes(const std::string& lesson_file) {
  std::vector<kitchen::Dish> known;
  for (const shipped::Dish& dish : shipped::dishes()) add(known, variants_in(dish.text, dish.key));
  const kitchen::Loader load = [&, open = file_loader()](const std::string& path) {
    auto loaded = open(path);
    if (loaded) add(known, variants_in(loaded.value(), path));
    return loaded;
  };
  const auto text = read_file(lesson_file);
  // What is wrong with the lesson is told where the lesson itself is read.
  if (text) (void)kitchen::read_lesson(text.value(), lesson_file, load);
  return known;
}

}  // namespace app
