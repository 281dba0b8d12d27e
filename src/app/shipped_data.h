// The tables of data/ that travel inside the program.
#pragma once

#include <string_view>

namespace app {

/// The text of data/NAME. The name must be one that is shipped.
std::string_view shipped_table(std::string_view name);

}  // namespace app
