#include "app/shipped_ratios.h"

#include <stdexcept>

#include "app/shipped_data.h"

namespace app {

const kitchen::Preparations& shipped_ratios() {
  static const kitchen::Preparations kRatios = [] {
    auto read = kitchen::read_preparations(shipped_table("ratios.csv"), "ratios.csv");
    // The build's own file: a fault in it is a broken promise, not somebody's input.
    if (!read)
      throw std::logic_error("the shipped ratios cannot be read: " +
                             read.problems().front().message);
    return std::move(read).value();
  }();
  return kRatios;
}

}  // namespace app
