// One line or paragraph of a dish's method, before it is understood.
#pragma once

#include <string>

namespace kitchen {

struct MethodLine {
  int line_number = 0;  ///< in the text, from 1
  std::string group;    ///< the heading it stands under; empty = none
  std::string text;     ///< as written
};

}  // namespace kitchen
