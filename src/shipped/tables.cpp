#include "shipped/tables.h"

#include <stdexcept>
#include <string>

#include "shipped_tables.h"

namespace shipped {

std::string_view table(std::string_view name) {
  for (const table_files::File& file : table_files::files()) {
    if (file.path == name) return file.text;
  }
  throw std::logic_error("no table of this name is shipped: " + std::string(name));
}

}  // namespace shipped
