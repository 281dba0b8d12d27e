// The words of a web page's bits: scripts of JSON-LD, and texts without tags and character codes.
//
// "<p>Mix &frac12; of it</p>" is "Mix ½ of it". Enough for recipes in JSON-LD; not a browser.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace kitchen {

/// What stands inside each <script type="application/ld+json">.
std::vector<std::string_view> json_ld_scripts(std::string_view page);

/// Without tags (those that end a line end a line here too), character references resolved, no
/// spaces at the ends. A "<" that opens no tag stays.
std::string text_of_html(std::string_view html);

}  // namespace kitchen
