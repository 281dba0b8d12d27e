// Text for paper: plain words, some of them bold. People's own words go in as they are and are made
// safe here, so that a name with "<b>" in it prints as it was written.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace print::sheets {

/// "Contains " and "MILK" in bold. A line end inside a text becomes a space; `line()` begins a new
/// line.
class Words {
 public:
  Words() = default;
  Words(std::string_view plain) { add(plain); }    // NOLINT(google-explicit-constructor): a text is
  Words(const std::string& plain) { add(plain); }  // NOLINT  words in most places
  Words(const char* plain) { add(plain); }         // NOLINT

  Words& add(std::string_view plain);
  Words& bold(std::string_view text);
  Words& line();
  Words& also(const Words& more);

  bool empty() const { return runs_.empty(); }
  /// The letters alone, without what makes them bold.
  std::string plain() const;
  /// For Pango: escaped, bold marked.
  std::string markup() const;

 private:
  struct Run {
    std::string text;
    bool bold = false;
  };
  std::vector<Run> runs_;
};

inline Words bold(std::string_view text) { return Words().bold(text); }

}  // namespace print::sheets
