#include "kitchen/reading/senders.h"

#include <algorithm>
#include <vector>

#include "base/text.h"

namespace kitchen {
namespace {

bool digit(char c) { return c >= '0' && c <= '9'; }

// Where what was said begins: behind a time of day and a name with a colon; 0 = the line does not
// begin so.
std::size_t said_from(std::string_view line) {
  constexpr std::size_t kLongestStamp = 32, kLongestName = 40;
  std::size_t time = 0;
  for (std::size_t i = 1; i + 2 < std::min(line.size(), kLongestStamp); ++i) {
    if (line[i] != ':' || !digit(line[i - 1]) || !digit(line[i + 1]) || !digit(line[i + 2]))
      continue;
    time = i + 3;
    break;
  }
  if (time == 0) return 0;
  const auto colon = line.find(": ", time);
  if (colon == std::string_view::npos || colon > time + kLongestName) return 0;
  const std::string_view name = line.substr(time, colon - time);
  return std::any_of(name.begin(), name.end(), digit) ? 0 : colon + 2;
}

}  // namespace

std::string without_senders(std::string_view text) {
  constexpr std::size_t kFewest = 3;
  std::vector<std::string_view> lines;
  for (std::size_t from = 0; from <= text.size();) {
    const auto end = std::min(text.find('\n', from), text.size());
    lines.push_back(text.substr(from, end - from));
    from = end + 1;
  }
  const auto filled = static_cast<std::size_t>(std::count_if(
      lines.begin(), lines.end(), [](std::string_view line) { return !base::blank(line); }));
  const auto sent = static_cast<std::size_t>(std::count_if(
      lines.begin(), lines.end(), [](std::string_view line) { return said_from(line) > 0; }));
  if (sent < kFewest || 5 * sent < 4 * filled) return std::string(text);
  std::string out;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    if (i > 0) out += '\n';
    out += lines[i].substr(said_from(lines[i]));
  }
  return out;
}

}  // namespace kitchen
