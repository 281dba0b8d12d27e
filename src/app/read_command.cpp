// benchbell read: somebody's text of a dish, as it was understood, for a person to mend.
#include <cstdio>
#include <iostream>
#include <iterator>
#include <string>

#include "app/commands.h"
#include "app/files.h"
#include "app/own_tables.h"
#include "base/text.h"
#include "kitchen/read.h"
#include "kitchen/reading/footprint.h"
#include "kitchen/reading/json_ld.h"
#include "kitchen/reading/make_dish.h"
#include "kitchen/reading/read_dish_text.h"
#include "print/say_draft.h"
#include "shipped/task_times.h"

namespace app {
namespace {

base::Result<std::string> text_of(const std::string& file) {
  if (file != "-") return read_file(file);
  return std::string(std::istreambuf_iterator<char>(std::cin), {});
}

base::Result<kitchen::DishDraft> draft_of(const ReadAsked& asked, const kitchen::Foods& foods) {
  const auto text = text_of(asked.file);
  if (!text) return text.problems();
  if (kitchen::looks_like_json_ld(text.value()))
    return kitchen::read_json_ld(text.value(), asked.file, foods, shipped::task_times());
  return kitchen::read_dish_text(text.value(), foods, shipped::task_times());
}

int show(const kitchen::Dish& dish, const ReadAsked& asked) {
  const std::string text = asked.json_ld ? kitchen::write_json_ld(dish) : kitchen::write_dish(dish);
  std::fputs(text.c_str(), stdout);
  return kFits;
}

}  // namespace

int read(const ReadAsked& asked) {
  const auto foods = foods_with(asked.own_file);
  if (!foods) return tell(foods.problems());
  if (!asked.footprint.empty()) {
    const auto dish = kitchen::read_footprint(asked.footprint, asked.name, 1);
    return dish ? show(dish.value(), asked) : tell(dish.problems());
  }
  if (asked.file.empty()) {
    return tell({{"read.nothing", "", "", "There is nothing to read.",
                  "Name a file, - for what you paste, or --footprint \"oven 180 C 25 min\"."}});
  }
  const auto draft = draft_of(asked, foods.value());
  if (!draft) return tell(draft.problems());
  if (!asked.json && !asked.json_ld) {
    std::fputs(print::say_draft(draft.value(), foods.value()).c_str(), stdout);
    return kFits;
  }
  const auto made = kitchen::dish_from(draft.value(), foods.value());
  if (!made) return tell(made.problems());
  for (const std::string& each : made.value().assumed)
    std::fprintf(stderr, "Assumed: %s\n", each.c_str());
  for (const auto& each : draft.value().questions)
    std::fprintf(stderr, "To answer: %s\n", each.asks.c_str());
  return show(made.value().dish, asked);
}

}  // namespace app
