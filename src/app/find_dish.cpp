#include "app/find_dish.h"

#include <algorithm>
#include <optional>

#include "app/files.h"
#include "base/text.h"
#include "kitchen/read.h"
#include "shipped/dishes.h"

namespace app {
namespace {

base::Result<kitchen::Dish> variant_of(const base::Result<std::vector<kitchen::Dish>>& read,
                                       const std::string& variant, const std::string& asked) {
  if (!read) return read.problems();
  std::vector<std::string> names;
  for (const kitchen::Dish& dish : read.value()) {
    if (base::lower(dish.variant) == base::lower(variant)) return dish;
    if (!dish.variant.empty()) names.push_back(base::in_quotes(dish.variant));
  }
  const std::string known = names.empty() ? "It has no variants: leave the variant out."
                                          : "It has " + base::joined(names) + ".";
  return base::Problem{"dish.no_variant", "", "",
                       base::say("There is no variant ", base::in_quotes(variant), " of ",
                                 base::in_quotes(asked), "."),
                       known};
}

bool holds_words(const std::string& name, const std::string& words) {
  return base::lower(base::replaced(name, '-', ' '))
             .find(base::lower(base::replaced(words, '-', ' '))) != std::string::npos;
}

}  // namespace

base::Result<kitchen::Dish> find_dish(const std::string& asked) {
  const auto colon = asked.rfind(": ");
  const std::string name = base::trimmed(asked.substr(0, colon));
  const std::string variant = colon == std::string::npos ? ""
                                                         : base::trimmed(asked.substr(colon + 1));
  if (name.size() > 5 && name.ends_with(".json")) {
    const auto text = read_file(name);
    if (!text) return text.problems();
    return variant_of(kitchen::read_dish_variants(text.value(), name), variant, name);
  }
  const std::vector<shipped::Dish> all = shipped::dishes();
  std::vector<const shipped::Dish*> fitting;
  std::vector<std::string> keys;
  for (const shipped::Dish& dish : all) {
    keys.push_back(dish.key);
    if (dish.key == name || base::lower(dish.dish.name) == base::lower(name)) {
      fitting = {&dish};
      break;
    }
    if (!name.empty() && (holds_words(dish.dish.name, name) || holds_words(dish.key, name)))
      fitting.push_back(&dish);
  }
  if (fitting.size() == 1) {
    return variant_of(kitchen::read_dish_variants(fitting.front()->text, fitting.front()->key),
                      variant, name);
  }
  std::vector<std::string> names;
  for (const shipped::Dish* dish : fitting) names.push_back(dish->key);
  if (names.size() > 1) {
    return base::Problem{"dish.several", "", "",
                         base::say("More than one dish fits ", base::in_quotes(name), ": ",
                                   base::joined(names), "."),
                         "Name one of them."};
  }
  const std::optional<std::string> near = base::nearest(name, keys);
  return base::Problem{
      "dish.unknown", "", "", base::say("There is no dish called ", base::in_quotes(name), "."),
      base::say(near ? "Did you mean " + *near + "? " : "",
                "`benchbell dishes` lists them; a dish file of your own ends in .json.")};
}

}  // namespace app
