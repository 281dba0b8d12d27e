// What a pack holds, from the words of a price list.
#include <algorithm>
#include <cctype>

#include "base/folding.h"
#include "base/text.h"
#include "larder/prices.h"

namespace larder {

using kitchen::Quantity;
using kitchen::Ratio;
using kitchen::Unit;

namespace {

// Numbers and words of a size, "1.5kg" as two.
std::vector<std::string> tokens_of(const std::string& text) {
  std::vector<std::string> out;
  enum class Kind { kNone, kNumber, kWord } last = Kind::kNone;
  for (const char c : text) {
    const bool space = c == ' ';
    const bool number = (c >= '0' && c <= '9') || c == '.' || c == ',';
    if (space) {
      last = Kind::kNone;
      continue;
    }
    const Kind kind = number ? Kind::kNumber : Kind::kWord;
    if (kind != last) out.emplace_back();
    out.back() += c;
    last = kind;
  }
  return out;
}

std::optional<Ratio> number_of(const std::string& token) {
  const auto value = Ratio::in(base::replaced(token, ',', '.'));
  if (!value || *value <= Ratio(0) || *value > Ratio(1'000'000)) return std::nullopt;
  return value;
}

bool times_sign(const std::string& token) {
  return token == "x" || token == "\u00d7" || token == "*";
}

}  // namespace

std::optional<Quantity> size_in(std::string_view written) {
  const std::vector<std::string> tokens = tokens_of(base::folded(written));
  if (tokens.empty()) return std::nullopt;
  if (tokens.size() == 1 && (tokens[0] == "each" || tokens[0] == "loose"))
    return Quantity::pieces(Ratio(1), "");
  auto amount = number_of(tokens[0]);
  if (!amount) return std::nullopt;
  std::size_t next = 1;
  if (next + 1 < tokens.size() && times_sign(tokens[next])) {
    const auto each = number_of(tokens[next + 1]);
    if (!each) return std::nullopt;
    amount = *amount * *each;
    next += 2;
  }
  if (next >= tokens.size()) return Quantity::pieces(*amount, "");
  // Another number behind it ("500 g 250 ml", "1-2 kg") contradicts the first.
  for (std::size_t i = next; i < tokens.size(); ++i) {
    if (std::isdigit(static_cast<unsigned char>(tokens[i].front())) != 0) return std::nullopt;
  }
  for (std::size_t words = std::min<std::size_t>(2, tokens.size() - next); words > 0; --words) {
    std::string unit = tokens[next];
    if (words == 2) unit += " " + tokens[next + 1];
    const auto known = kitchen::unit_named(unit);
    if (known && *known != Unit::kToTaste) return Quantity::of(*amount, *known);
  }
  if (!std::isalpha(static_cast<unsigned char>(tokens[next].front()))) return std::nullopt;
  return Quantity::pieces(*amount, kitchen::singular(tokens.back()));
}

}  // namespace larder
