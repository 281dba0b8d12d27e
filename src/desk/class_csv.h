// A class list as a school's other programs give it out: any column order, any headings. What each
// column was taken for is shown, and a person can say better.
#pragma once

#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "desk/class_list.h"

namespace desk {

/// What a column can mean, as words: "name", "first name", "surname", "class", "year", "allergies",
/// "needs", "pace", "notes" (read for limits), "leave out".
struct ColumnMeaning {
  std::string heading;
  std::string meaning;
  friend bool operator==(const ColumnMeaning&, const ColumnMeaning&) = default;
};

struct ClassPreview {
  Class group;
  std::vector<ColumnMeaning> columns;  ///< in the order of the file
  std::vector<std::string> notes;      ///< rows left out, words not understood: nothing is dropped
                                       ///< silently
};

/// `bytes` in UTF-8, UTF-16 or Windows-1252; commas, semicolons or tabs. `said` gives the meaning
/// of headings a person has put right.
/// Errors: table.*, class.csv.*.
base::Result<ClassPreview> class_from_csv(std::string_view bytes, const std::string& file_name,
                                          const std::map<std::string, std::string>& said);

}  // namespace desk
