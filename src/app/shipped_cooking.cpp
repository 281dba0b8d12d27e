#include "app/shipped_cooking.h"

#include <stdexcept>

#include "app/shipped_data.h"

namespace app {

const nutrition::CookingTables& shipped_cooking() {
  static const nutrition::CookingTables kTables = [] {
    auto read = nutrition::read_cooking(shipped_table("yields.csv"),
                                        shipped_table("retention.csv"));
    // The build's own files: a fault in them is a broken promise, not somebody's input.
    if (!read)
      throw std::logic_error("the shipped cooking tables cannot be read: " +
                             read.problems().front().message);
    return std::move(read).value();
  }();
  return kTables;
}

}  // namespace app
