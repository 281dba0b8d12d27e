// benchbell foods: what is known of a food, and where each figure comes from.
#include <cstdio>

#include "app/commands.h"
#include "app/files.h"
#include "app/own_tables.h"
#include "print/say_food.h"

namespace app {

int foods(const FoodsAsked& asked) {
  const auto table = foods_with(asked.own_file);
  if (!table) return tell(table.problems());
  const kitchen::Foods& foods = table.value();
  if (asked.words.empty()) {
    std::fputs(print::say_foods(foods).c_str(), stdout);
    return kFits;
  }
  const kitchen::Food* exact = foods.find(asked.words);
  if (exact == nullptr) exact = foods.named(asked.words);
  if (exact != nullptr) {
    std::fputs(print::say_food(*exact).c_str(), stdout);
    return kFits;
  }
  const auto found = foods.search(asked.words);
  if (found.empty()) {
    return tell(
        {{"food.unknown", "", "", "No food is called anything like '" + asked.words + "'.",
          "Try a plainer word, or add it to the school's own foods (docs/files.md) and name "
          "that file with --foods."}});
  }
  std::fputs(print::say_found(found).c_str(), stdout);
  return kFits;
}

}  // namespace app
