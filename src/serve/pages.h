// The files of the user interface inside the program: build/pages.cpp, made by tools/ui.sh, or
// no_pages.cpp.
#pragma once

#include <vector>

#include "serve/http/static_files.h"

namespace serve {

/// Empty when the program was built without them.
std::vector<http::Asset> pages();

}  // namespace serve
