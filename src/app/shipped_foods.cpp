#include "app/shipped_foods.h"

#include <stdexcept>

#include "app/files.h"
#include "app/shipped_data.h"
#include "base/text.h"

namespace app {

const kitchen::Foods& shipped_foods() {
  static const kitchen::Foods kFoods = [] {
    auto read = kitchen::read_foods(shipped_table("foods.csv"), "foods.csv");
    // The build's own file: a fault in it is a broken promise, not somebody's input.
    if (!read)
      throw std::logic_error("the shipped foods cannot be read: " +
                             read.problems().front().message);
    return std::move(read).value();
  }();
  return kFoods;
}

base::Result<kitchen::Foods> foods_with(const std::string& own_file) {
  if (own_file.empty()) return shipped_foods();
  const auto text = read_file(own_file);
  if (!text) return text.problems();
  const auto own = kitchen::read_foods(text.value(), own_file);
  if (!own) return own.problems();
  return shipped_foods().with(own.value());
}

}  // namespace app
