// The words for pans, tins and tools, and what the room calls each.
//
// "In a large non-stick skillet" names the frying pan, "on a lined cookie sheet" the baking tray,
// "on kitchen roll" kitchen paper. Common practice, no source.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace kitchen {

enum class WareKind : std::int8_t {
  kTool,    ///< a knife, a whisk, a rack
  kBowl,    ///< bowl, jug, plate: holds food, off the heat
  kPan,     ///< on a ring
  kBaking,  ///< tin, tray, dish: goes into the oven
};

struct NamedWare {
  std::string name;  ///< the room's word
  std::string from;  ///< the text's words
  WareKind kind = WareKind::kTool;
};

/// What the phrase names, each once, pots and tins before tools. `phrase`: folded singular words
/// with a space before, between and behind.
std::vector<NamedWare> wares_in(std::string_view phrase);

/// "20 cm flan tin", "2 boards", "a hot frying pan": nothing but things to work with, their number
/// and size. `words`: folded, in the singular.
bool only_ware(const std::vector<std::string>& words);

/// The kind of a ware by the room's word; tools for words the table does not have.
WareKind ware_kind(std::string_view name);

}  // namespace kitchen
