#include "larder/money.h"

#include <algorithm>

#include "base/folding.h"
#include "base/text.h"

namespace larder {
namespace {

bool digits(std::string_view text) {
  return !text.empty() && text.size() <= 9 &&
         std::all_of(text.begin(), text.end(), [](char c) { return c >= '0' && c <= '9'; });
}

Pence whole(std::string_view text) {
  Pence out = 0;
  for (const char c : text) out = out * 10 + (c - '0');
  return out;
}

}  // namespace

std::optional<Pence> pence_in(std::string_view written) {
  std::string text;
  for (const char c : base::folded(written)) {
    if (c != ' ') text += c;
  }
  constexpr std::string_view kSign = "\u00a3";
  bool pounds = false;
  if (text.starts_with(kSign)) {
    text.erase(0, kSign.size());
    pounds = true;
  }
  if (text.starts_with("gbp")) {
    text.erase(0, 3);
    pounds = true;
  }
  if (text.ends_with("p") && !pounds) {
    text.pop_back();
    if (!digits(text)) return std::nullopt;
    return whole(text);
  }
  const auto mark = text.find_first_of(".,");
  const std::string before = text.substr(0, mark);
  std::string after = mark == std::string::npos ? "" : text.substr(mark + 1);
  if (mark != std::string::npos && !digits(after)) return std::nullopt;
  // "1,200" is either; a school's price list is asked rather than guessed.
  if (after.size() > 2) return std::nullopt;
  after.resize(2, '0');
  if (!digits(before) && !(before.empty() && mark != std::string::npos)) return std::nullopt;
  return whole(before) * 100 + whole(after);
}

std::string pounds_text(Pence pence) {
  const Pence size = pence < 0 ? -pence : pence;
  const Pence part = size % 100;
  return base::say(pence < 0 ? "-" : "", "\u00a3", size / 100, ".", part < 10 ? "0" : "", part);
}

std::string pounds_text(const base::Ratio& pence) { return pounds_text(pence.round()); }

}  // namespace larder
