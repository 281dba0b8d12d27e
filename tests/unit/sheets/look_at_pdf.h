// Looks at a PDF from outside, with poppler's programs: its words, where they stand, its pictures.
#pragma once

#include <string>
#include <vector>

namespace look {

/// The text layer in reading order, all pages.
std::string words(const std::string& pdf);
int pages(const std::string& pdf);

struct Word {
  int page = 0;
  double left = 0, top = 0, right = 0, bottom = 0;  ///< points
  double page_width = 0, page_height = 0;
  std::string text;
};
std::vector<Word> placed_words(const std::string& pdf);
/// Names of the embedded typefaces.
std::string faces(const std::string& pdf);
/// Pages as grey PNG files at `dots` to the inch; their paths.
std::vector<std::string> pictures(const std::string& pdf, int dots, const std::string& name);

}  // namespace look
