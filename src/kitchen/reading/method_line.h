// One line or paragraph of a method as it stood in the text.
#pragma once

#include <string>

namespace kitchen {

struct MethodLine {
  int line_number = 0;  ///< in the text, from 1
  std::string group;    ///< the heading it stands under: "For the topping"; empty = none
  std::string text;     ///< lines that were only wrapped are put together; step numbers are gone
};

}  // namespace kitchen
