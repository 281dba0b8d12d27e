#include "serve/pages.h"

namespace serve {

std::vector<http::Asset> pages() { return {}; }

}  // namespace serve
