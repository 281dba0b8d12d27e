// The build's own files are read like anybody's, but a fault in them is a broken promise, not
// somebody's input.
#pragma once

#include <stdexcept>
#include <utility>

#include "base/problem.h"

namespace shipped {

/// The value. Throws std::logic_error with the first problem.
template <class Value>
Value sound(base::Result<Value> read) {
  if (!read)
    throw std::logic_error("a shipped file cannot be read: " + read.problems().front().message);
  return std::move(read).value();
}

}  // namespace shipped
