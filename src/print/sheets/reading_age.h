// How hard a text is to read: the Flesch-Kincaid grade level (Kincaid, Fishburne, Rogers and
// Chissom, Naval Technical Training, Research Branch Report 8-75, 1975; the formula as it is
// published everywhere): 0.39 words a sentence + 11.8 syllables a word - 15.59.
//
// "The cat sat on the mat." is -1.45: six words, six syllables. A grade is a year of school in the
// United States; add five for an age. Our own texts are measured with it; it knows nothing of a
// pupil.
#pragma once

#include <string_view>

namespace print::sheets {

struct Counted {
  int sentences = 0, words = 0, syllables = 0;
  friend bool operator==(const Counted&, const Counted&) = default;
};
/// Figures count as one word of one syllable a digit; a text without a full stop is one sentence.
Counted count_reading(std::string_view text);
/// By rule with a list of exceptions, English only.
int syllables(std::string_view word);

/// 0 for an empty text.
double grade(const Counted&);
double reading_grade(std::string_view text);

}  // namespace print::sheets
