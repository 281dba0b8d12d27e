#include "kitchen/reading/page_words.h"

#include <algorithm>
#include <array>
#include <string_view>
#include <vector>

#include "base/folding.h"
#include "base/text.h"

namespace kitchen {
namespace {

bool figures(const std::string& word) {
  return !word.empty() &&
         std::all_of(word.begin(), word.end(), [](char c) { return c >= '0' && c <= '9'; });
}

// "Page 4 of 12", "Slide 3", "Card 27", "p. 31"
bool sheet_number(const std::vector<std::string>& words) {
  static constexpr std::array<std::string_view, 10> kSheets = {
      "page", "slide", "card", "sheet", "p", "pg", "worksheet", "lesson", "week", "unit"};
  return words.size() >= 2 && words.size() <= 5 && base::one_of(words[0], kSheets) &&
         figures(words[1]) && std::all_of(words.begin() + 2, words.end(), [](const std::string& w) {
           return figures(w) || w == "of" || base::one_of(w, kSheets) || w == "year";
         });
}

// "Home > Dinners > Meat free": where a page stands among others.
bool trail(const std::string& tidy) {
  for (const std::string_view mark : {" > ", " >> ", " \u203A ", " \u00BB "}) {
    const auto first = tidy.find(mark);
    if (first != std::string::npos && first > 0 && tidy.size() < 90) return true;
  }
  return false;
}

// "Candidate name: ........  Date: ....": a form's lines to fill in.
bool to_fill_in(const std::string& tidy) {
  const auto first = std::min(tidy.find("....."), tidy.find("____"));
  if (first == std::string::npos) return false;
  const char last = tidy.back();
  return (last == '.' || last == '_') && tidy.find(':') < first;
}

}  // namespace

bool address(const std::string& tidy) {
  return tidy.find("http://") != std::string::npos || tidy.find("https://") != std::string::npos ||
         tidy.find("www.") != std::string::npos || tidy.find(".co.uk") != std::string::npos;
}

bool page_words(const std::string& tidy) {
  static constexpr std::array<std::string_view, 24> kLabels = {
      "source",   "photo",    "rating",  "author", "posted",    "published", "credit",    "tags",
      "category", "calories", "kcal",    "print",  "share",     "nutrition", "copyright", "subject",
      "cc",       "sent",     "updated", "reply",  "candidate", "cuisine",   "keywords",  "course"};
  static constexpr std::array<std::string_view, 31> kOpenings = {
      "jump to",          "skip to",         "advertisement",  "sign up",     "subscribe",
      "log in",           "sign in",         "save for later", "add to my",   "read more",
      "click here",       "tap to",          "pin this",       "leave a",     "rate this",
      "follow us",        "you might also",  "you may also",   "sort by",     "load more",
      "show more",        "all rights",      "cookie",         "accept all",  "scroll",
      "continue reading", "watch the video", "see also",       "back to top", "view all",
      "this page"};
  const std::string folded = base::folded(tidy);
  const auto words = base::words_of(folded);
  if (words.empty()) return true;
  if (words.size() <= 14 && base::one_of(words[0], kLabels)) {
    // "Source the fish" is said to somebody; "Source: my gran" is not.
    if (words.size() == 1 || folded.find(':') != std::string::npos ||
        folded.find('|') != std::string::npos || figures(words[1]) || words.size() <= 3)
      return true;
  }
  const bool opens = std::any_of(kOpenings.begin(), kOpenings.end(),
                                 [&](std::string_view o) { return folded.starts_with(o); });
  if (opens && words.size() <= 12) return true;
  const bool mail = (folded.starts_with("from: ") || folded.starts_with("to: ") ||
                     folded.starts_with("date: ")) &&
                    words.size() <= 10;
  return mail || sheet_number(words) || trail(tidy) || to_fill_in(tidy) || address(tidy);
}

std::size_t title_label(const std::string& tidy) {
  static constexpr std::array<std::string_view, 10> kLabels = {
      "chosen dish:", "dish:",    "recipe:",    "title:",       "name of dish:",
      "my dish:",     "product:", "dish name:", "recipe name:", "today's dish:"};
  const std::string low = base::lower(tidy);
  for (const std::string_view label : kLabels) {
    if (low.starts_with(label) && low.size() > label.size() + 3) {
      std::size_t end = label.size();
      while (end < low.size() && low[end] == ' ') ++end;
      return end;
    }
  }
  return 0;
}

}  // namespace kitchen
