#include "print/sheets/words_on_paper.h"

#include "print/paper.h"
#include "print/words.h"

namespace print::sheets {
namespace {

/// Letters that are written from right to left: Hebrew, Arabic and their neighbours, with their
/// presentation forms (the Unicode blocks of those scripts).
bool right_to_left(char32_t letter) {
  return (letter >= 0x0590 && letter <= 0x08FF) || (letter >= 0xFB1D && letter <= 0xFDFF) ||
         (letter >= 0xFE70 && letter <= 0xFEFF);
}

struct Letter {
  char32_t code = 0;
  std::size_t bytes = 1;
};

Letter letter_at(std::string_view text, std::size_t i) {
  const auto byte = [&](std::size_t n) {
    return i + n < text.size() ? static_cast<unsigned char>(text[i + n]) : 0U;
  };
  const unsigned first = byte(0);
  if (first >= 0xC0 && first < 0xE0) return {((first & 0x1FU) << 6U) | (byte(1) & 0x3FU), 2};
  if (first >= 0xE0 && first < 0xF0)
    return {((first & 0x0FU) << 12U) | ((byte(1) & 0x3FU) << 6U) | (byte(2) & 0x3FU), 3};
  return {first, 1};
}

/// A name from right to left must not turn round the figures and words beside it: each stretch of
/// such letters is isolated (Unicode's bidirectional algorithm, UAX 9: FSI and PDI).
std::string isolated(const std::string& text) {
  std::string out;
  for (std::size_t i = 0; i < text.size();) {
    if (!right_to_left(letter_at(text, i).code)) {
      out += text[i++];
      continue;
    }
    std::size_t end = i;  // behind the last such letter; spaces and hyphens may lie between
    for (std::size_t j = i; j < text.size();) {
      const Letter letter = letter_at(text, j);
      const bool ours = right_to_left(letter.code);
      if (!ours && letter.code != ' ' && letter.code != '-' && letter.code != '\'') break;
      j += letter.bytes;
      if (ours) end = j;
    }
    out += "\xE2\x81\xA8" + text.substr(i, end - i) + "\xE2\x81\xA9";
    i = end;
  }
  return out;
}

}  // namespace

Words& Words::add(std::string_view plain) {
  if (!plain.empty()) runs_.push_back({tame(plain), false});
  return *this;
}

Words& Words::bold(std::string_view text) {
  if (!text.empty()) runs_.push_back({tame(text), true});
  return *this;
}

Words& Words::line() {
  runs_.push_back({"\n", false});
  return *this;
}

Words& Words::also(const Words& more) {
  runs_.insert(runs_.end(), more.runs_.begin(), more.runs_.end());
  return *this;
}

std::string Words::plain() const {
  std::string out;
  for (const Run& run : runs_) out += run.text;
  return out;
}

std::string Words::markup() const {
  std::string out;
  for (const Run& run : runs_)
    out += run.bold ? "<b>" + escaped(isolated(run.text)) + "</b>" : escaped(isolated(run.text));
  return out;
}

}  // namespace print::sheets
