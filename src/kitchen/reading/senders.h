// A text copied out of a conversation: when and by whom before every line.
#pragma once

#include <string>
#include <string_view>

namespace kitchen {

/// "[Sun 11:42] Bev: Chop the onion" becomes "Chop the onion" where nearly every line of the text
/// begins so; else the text as it is. The lines stay as many.
std::string without_senders(std::string_view text);

}  // namespace kitchen
