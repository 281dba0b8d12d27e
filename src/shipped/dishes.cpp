#include "shipped/dishes.h"

#include <string_view>

#include "kitchen/read.h"
#include "shipped/sound.h"
#include "shipped_dishes.h"

namespace shipped {

std::vector<Dish> dishes() {
  std::vector<Dish> all;
  for (const dish_files::File& file : dish_files::files()) {
    std::string_view key = file.path.substr(file.path.rfind('/') + 1);
    key.remove_suffix(std::string_view(".json").size());
    const auto versions = sound(kitchen::read_dish_variants(file.text, std::string(file.path)));
    Dish dish{std::string(key), std::string(file.text), versions.front(), {}};
    for (const kitchen::Dish& version : versions) {
      if (!version.variant.empty()) dish.variants.push_back(version.variant);
    }
    all.push_back(std::move(dish));
  }
  return all;
}

}  // namespace shipped
