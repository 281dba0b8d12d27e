// The tables of data/ that travel inside the program.
#pragma once

#include <string_view>

namespace shipped {

/// The text of data/NAME. The name must be one that is shipped.
std::string_view table(std::string_view name);

}  // namespace shipped
