// benchbell label: what a dish holds, or several side by side.
#include <algorithm>
#include <cstdio>

#include "app/commands.h"
#include "app/files.h"
#include "app/find_dish.h"
#include "app/own_tables.h"
#include "base/text.h"
#include "nutrition/compare.h"
#include "print/say_compared.h"
#include "print/say_label.h"
#include "shipped/cooking.h"

namespace app {
namespace {

base::Result<std::optional<nutrition::Band>> band_of(const std::string& words) {
  if (words.empty()) return std::optional<nutrition::Band>();
  std::vector<std::string> known;
  for (const nutrition::Band band : nutrition::kBands) {
    const std::string name(nutrition::name_of(band));
    known.push_back(base::in_quotes(name.substr(0, name.find(" to "))));
    if (name.starts_with(base::lower(words))) return std::optional(band);
  }
  return base::Problem{"label.band", "", "", "The advice knows no " + base::in_quotes(words) + ".",
                       "Say " + base::joined(known, "or") + "."};
}

nutrition::Version version_of(const kitchen::Dish& dish, const kitchen::Foods& foods,
                              const LabelAsked& asked) {
  nutrition::Options options;
  options.yields = !asked.raw_weights;
  options.retention = !asked.keep_vitamins;
  if (asked.weighed > 0) options.weighed = asked.weighed;
  if (asked.portions > 0) options.portions = asked.portions;
  const auto found = nutrition::foods_of(dish, foods);
  nutrition::Version version;
  version.nutrients = nutrition::dish_nutrients(dish, found, shipped::cooking(), options);
  version.name = version.nutrients.dish;
  version.allergens = nutrition::allergens_of(dish, found);
  version.five_a_day = nutrition::five_a_day(version.nutrients, shipped::cooking());
  return version;
}

}  // namespace

int label(const LabelAsked& asked) {
  base::Problems problems;
  const auto foods = foods_with(asked.own_file);
  base::gather(foods, problems);
  const auto band = band_of(asked.band);
  base::gather(band, problems);
  std::vector<kitchen::Dish> dishes;
  for (const std::string& name : asked.dishes) {
    auto dish = find_dish(name);
    if (dish)
      dishes.push_back(std::move(dish).value());
    else
      base::gather(dish, problems);
  }
  if (!problems.empty()) return tell(problems);
  std::vector<nutrition::Version> versions;
  for (const kitchen::Dish& dish : dishes)
    versions.push_back(version_of(dish, foods.value(), asked));
  const print::LabelPage page{asked.drink, asked.details, band.value()};
  std::string out;
  if (asked.json) {
    // One document a dish, one after the other.
    for (const auto& version : versions)
      out += print::label_json(version.nutrients, shipped::cooking(), page);
  } else if (versions.size() == 1) {
    out = print::say_label(versions[0].nutrients, shipped::cooking(), page);
  } else {
    out = print::say_compared(versions, asked.drink);
  }
  std::fputs(out.c_str(), stdout);
  return kFits;
}

}  // namespace app
