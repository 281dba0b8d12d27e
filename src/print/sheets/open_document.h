// An OpenDocument text (ISO/IEC 26300-1:2015) of headings, paragraphs and tables, as bytes. The
// package follows part 3: `mimetype` is the first file and is stored, not packed.
#pragma once

#include <string>
#include <vector>

#include "print/sheets/words_on_paper.h"

namespace print::sheets {

class OpenDocument {
 public:
  explicit OpenDocument(std::string title) : title_(std::move(title)) {}
  void heading(const Words&, int level = 1);
  void paragraph(const Words&);
  /// The first row is the head. `shares` of the width, one a column.
  void table(const std::vector<double>& shares, const std::vector<std::vector<Words>>& rows);
  /// The bytes of the file; the same calls give the same bytes.
  std::string bytes() const;

 private:
  std::string title_, body_, styles_;
  int tables_ = 0;
};

}  // namespace print::sheets
