#include "app/shipped_data.h"

#include <stdexcept>
#include <string>

#include "app_data.h"

namespace app {

std::string_view shipped_table(std::string_view name) {
  for (const shipped_data::File& file : shipped_data::files()) {
    if (file.path == name) return file.text;
  }
  throw std::logic_error("no table of this name is shipped: " + std::string(name));
}

}  // namespace app
