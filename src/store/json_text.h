// JSON as text: checked, laid out, and brought into the one form in which equal documents are equal
// texts. What the members mean is not known here.
#pragma once

#include <map>
#include <string>
#include <string_view>

#include "base/problem.h"

namespace store {

inline constexpr int kDeepestJson = 64;

/// What the store must know of a body, and the three ways to write it.
struct JsonBody {
  std::string compact;    ///< on one line, members in the order written
  std::string canonical;  ///< RFC 8785: members sorted, no spaces, numbers as ECMAScript
  std::map<std::string, std::string> texts;  ///< its top members that are texts: "name", "date"
};

/// A JSON object in UTF-8. Refused are repeated members (which one would count?), more than 64
/// levels, and numbers beyond a double.
/// Errors: store.body, store.body_too_big.
base::Result<JsonBody> read_body(std::string_view text);

/// RFC 8785 of any JSON value. Errors: store.body.
base::Result<std::string> canonical_json(std::string_view text);

/// For people: two spaces a level, members in the order written, a line end at the end.
/// Errors: store.body.
base::Result<std::string> tidy_json(std::string_view text);

}  // namespace store
