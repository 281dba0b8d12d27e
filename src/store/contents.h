// contents.json, the list that lies in an exported zip beside the documents: what their texts do
// not say of themselves. Inside the store only.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/problem.h"
#include "store/document.h"

namespace store {

inline constexpr std::string_view kContentsName = "contents.json";

struct Listed {
  Ref ref;
  std::string title;
  std::optional<std::string> day;
  std::vector<Ref> links;
};

/// As canonical JSON, tidied; `listed` in the order given.
std::string contents_text(const std::vector<Listed>& listed);
/// Errors: zip.contents.
base::Result<std::vector<Listed>> read_contents(std::string_view text);

/// "dish/fruit-scones", and back; nothing if it is not one.
std::string ref_text(const Ref&);
std::optional<Ref> ref_in(std::string_view text);

}  // namespace store
