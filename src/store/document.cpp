#include "store/document.h"

#include <algorithm>

#include "base/folding.h"

namespace store {
namespace {

constexpr std::size_t kLongestId = 80;

bool id_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9'); }

const KindName& row_of(Kind kind) {
  const auto* row = std::find_if(kKinds.begin(), kKinds.end(),
                                 [kind](const KindName& each) { return each.kind == kind; });
  return row == kKinds.end() ? kKinds[0] : *row;
}

}  // namespace

std::string_view name_of(Kind kind) { return row_of(kind).name; }

std::string_view words_of(Kind kind) { return row_of(kind).words; }

std::optional<Kind> kind_named(std::string_view name) {
  for (const KindName& each : kKinds) {
    if (each.name == name) return each.kind;
  }
  return std::nullopt;
}

bool good_id(std::string_view id) {
  if (id.empty() || id.size() > kLongestId || id.front() == '-' || id.back() == '-') return false;
  return id.find("--") == std::string_view::npos &&
         std::all_of(id.begin(), id.end(), [](char c) { return c == '-' || id_letter(c); });
}

std::string id_from(std::string_view title) {
  // Room for "-2", "-3" ... when the word is taken.
  constexpr std::size_t kRoom = kLongestId - 10;
  std::string id;
  for (const char c : base::folded(title)) {
    if (id_letter(c)) {
      id += c;
    } else if (c != '\'' && !id.empty() && id.back() != '-') {
      id += '-';  // "cook's choice" is cooks-choice
    }
  }
  if (id.size() > kRoom) {
    const auto word_end = id.rfind('-', kRoom);
    id.resize(word_end == std::string::npos || word_end == 0 ? kRoom : word_end);
  }
  while (!id.empty() && id.back() == '-') id.pop_back();
  return id.empty() ? "untitled" : id;
}

}  // namespace store
