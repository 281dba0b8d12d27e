#include "print/paper.h"

#include <algorithm>

#include "print/words.h"

namespace print {

std::string tame(std::string_view text) {
  std::string out;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const auto c = static_cast<unsigned char>(text[i]);
    // The C1 controls U+0080 to U+009F are C2 80 to C2 9F in UTF-8.
    const bool c1 = c == 0xC2 && i + 1 < text.size() &&
                    static_cast<unsigned char>(text[i + 1]) < 0xA0;
    if (c == '\n' || c == '\t' || c == '\r') {
      out += ' ';
    } else if (c1) {
      ++i;
    } else if (c >= 0x20 && c != 0x7F) {
      out += text[i];
    }
  }
  return out;
}

std::vector<std::string> wrapped(std::string_view text, int width) {
  std::vector<std::string> lines;
  std::string line;
  std::size_t used = 0;
  const std::string clean = tame(text);
  std::string_view rest = clean;
  while (!rest.empty()) {
    const std::size_t end = std::min(rest.find(' '), rest.size());
    const std::string_view word = rest.substr(0, end);
    rest.remove_prefix(std::min(end + 1, rest.size()));
    if (word.empty()) continue;
    const std::size_t length = letters(word);
    if (!line.empty() && used + 1 + length > static_cast<std::size_t>(std::max(1, width))) {
      lines.push_back(std::move(line));
      line.clear();
      used = 0;
    }
    if (!line.empty()) {
      line += ' ';
      ++used;
    }
    line += word;
    used += length;
  }
  if (!line.empty()) lines.push_back(std::move(line));
  return lines;
}

Paper::Paper(int width, bool colour) : width_(std::max(width, 40)), colour_(colour) {}

std::string Paper::inked(std::string_view text, Ink ink) const {
  if (!colour_ || ink == Ink::kPlain) return std::string(text);
  const char* code = ink == Ink::kStrong ? "1"
                     : ink == Ink::kGood ? "1;32"
                     : ink == Ink::kBad  ? "1;31"
                                         : "2";
  return "\x1b[" + std::string(code) + "m" + std::string(text) + "\x1b[0m";
}

void Paper::heading(std::string_view text, Ink ink) {
  space();
  for (const std::string& line : wrapped(text, width_)) text_ += inked(line, ink) + "\n";
}

void Paper::subheading(std::string_view text) {
  space();
  for (const std::string& line : wrapped(text, width_ - 2))
    text_ += "  " + inked(line, Ink::kStrong) + "\n";
}

void Paper::paragraph(std::string_view text, int indent, Ink ink) {
  for (const std::string& line : wrapped(text, width_ - indent)) {
    text_ += std::string(static_cast<std::size_t>(indent), ' ') + inked(line, ink) + "\n";
  }
}

void Paper::entry(std::string_view lead, std::string_view text, int indent, int lead_width) {
  const std::string start(static_cast<std::size_t>(indent), ' ');
  std::string tamed = tame(lead);
  while (tamed.ends_with(' ')) tamed.pop_back();
  const auto column = static_cast<std::size_t>(lead_width);
  const std::size_t length = letters(tamed);
  std::vector<std::string> lines = wrapped(text, width_ - indent - lead_width);
  text_ += start + inked(tamed, Ink::kStrong);
  if (lines.empty()) {
    text_ += "\n";
    return;
  }
  if (length >= column) {  // a long lead keeps its own line
    text_ += "\n" + start + std::string(column, ' ');
  } else {
    text_ += std::string(column - length, ' ');
  }
  for (std::size_t i = 0; i < lines.size(); ++i) {
    if (i > 0) text_ += start + std::string(column, ' ');
    text_ += lines[i] + "\n";
  }
}

void Paper::grid(const std::vector<std::string>& items, int indent) {
  std::vector<std::string> tamed;
  std::size_t widest = 0;
  for (const std::string& item : items) {
    tamed.push_back(tame(item));
    widest = std::max(widest, letters(tamed.back()));
  }
  const std::size_t room = static_cast<std::size_t>(width_ - indent);
  const std::size_t columns = std::max<std::size_t>(1, (room + 2) / (widest + 2));
  const std::string start(static_cast<std::size_t>(indent), ' ');
  for (std::size_t i = 0; i < tamed.size(); ++i) {
    const bool last = (i + 1) % columns == 0 || i + 1 == tamed.size();
    if (i % columns == 0) text_ += start;
    text_ += last ? tamed[i] + "\n" : tamed[i] + std::string(widest + 2 - letters(tamed[i]), ' ');
  }
}

void Paper::row(std::string_view text) { text_ += tame(text) + "\n"; }

void Paper::space() {
  if (text_.empty() || text_.ends_with("\n\n")) return;
  text_ += "\n";
}

}  // namespace print
