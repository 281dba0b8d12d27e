// What stands around a dish on a page, a slide or a form and is no part of it: "Jump to recipe",
// "Page 4 of 12", "Home > Dinners", "Candidate name: ......", "From: ...".
#pragma once

#include <string>

namespace kitchen {

/// Whether a line is of the page, not of the dish. Times, portions and headings are none.
bool page_words(const std::string& tidied_line);
/// An address of the web stands in it.
bool address(const std::string& tidied_line);
/// "Chosen dish: Raspberry Swiss roll", "Recipe: Pasties": the length of the label; 0 = none.
std::size_t title_label(const std::string& tidied_line);

}  // namespace kitchen
