// Places in lists are counted with int, as activities and cooks are; containers want std::size_t.
#pragma once

#include <cstddef>

namespace base {

/// The place as containers count it. `index` is never below nothing.
constexpr std::size_t at(int index) { return static_cast<std::size_t>(index); }

}  // namespace base
