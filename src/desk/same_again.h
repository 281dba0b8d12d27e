// Last year's lesson with another day, bell, room or class: the first thing a teacher does, since
// four lessons in five are not new.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/problem.h"

namespace desk {

struct AgainWish {
  std::string date;      ///< ISO
  std::string from, to;  ///< clock; empty = as it was
  std::string room;      ///< path as the document names rooms; empty = as it was
  std::string same_as;   ///< id of the lesson it is copied from, kept in "about"
  std::string class_id;  ///< kept in "about"; empty = as it was
  std::string title;     ///< empty = as it was
};

struct Again {
  std::string text;                  ///< the new lesson's document, read by nobody yet
  std::vector<std::string> differs;  ///< against the old one, in words
};

/// Clock times inside the lesson (windows, serving, bans, who is away) move with its opening; dates
/// written inside them are dropped. Cooks stay as they are: another class is seated by whoever
/// asks.
/// Errors: again.* and those of the JSON reader.
base::Result<Again> same_again(std::string_view text, const std::string& file, const AgainWish&);

}  // namespace desk
