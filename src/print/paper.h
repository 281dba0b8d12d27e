// Text for a terminal or a sheet of paper: headings, paragraphs and hanging entries, wrapped at a
// width.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace print {

enum class Ink { kPlain, kStrong, kGood, kBad, kSoft };

class Paper {
 public:
  /// Widths below 40 are taken as 40: a clock time, a place and a word must fit on a line.
  Paper(int width, bool colour);

  void heading(std::string_view text, Ink ink = Ink::kStrong);
  /// A smaller heading, indented by two.
  void subheading(std::string_view text);
  void paragraph(std::string_view text, int indent = 0, Ink ink = Ink::kPlain);
  /// `lead` stands at `indent`, the text in a column `lead_width` further right.
  void entry(std::string_view lead, std::string_view text, int indent, int lead_width);
  /// Short items side by side in columns of equal width, read across.
  void grid(const std::vector<std::string>& items, int indent);
  /// A row of a table as it is, columns already set with spaces.
  void row(std::string_view text);
  /// One empty line, never two.
  void space();

  int width() const { return width_; }
  const std::string& text() const { return text_; }

 private:
  std::string inked(std::string_view text, Ink ink) const;

  int width_;
  bool colour_;
  std::string text_;
};

/// Breaks at spaces into lines of at most `width` letters; a longer word stands alone, unbroken.
std::vector<std::string> wrapped(std::string_view text, int width);

/// Someone else's words for the terminal: line ends become spaces, control characters are left out,
/// so a name in a file cannot move the cursor or change colours.
std::string tame(std::string_view);

}  // namespace print
