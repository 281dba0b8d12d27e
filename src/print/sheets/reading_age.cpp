#include "print/sheets/reading_age.h"

#include <algorithm>
#include <array>
#include <string>

#include "base/text.h"

namespace print::sheets {
namespace {

bool letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }
bool digit(char c) { return c >= '0' && c <= '9'; }
bool vowel(char c) { return std::string_view("aeiouy").find(c) != std::string_view::npos; }

struct Exception {
  std::string_view word;
  int syllables;
};
// Words of kitchens and classrooms that the rule below counts wrongly.
constexpr auto kExceptions = std::to_array<Exception>(
    {{"area", 3},      {"being", 2},      {"vegetable", 3},   {"vegetables", 3}, {"chocolate", 2},
     {"every", 2},     {"everybody", 4},  {"everything", 3},  {"minute", 2},     {"minutes", 2},
     {"ready", 2},     {"recipe", 3},     {"recipes", 3},     {"sieve", 1},      {"simmer", 2},
     {"somebody", 3},  {"something", 2},  {"temperature", 4}, {"allergy", 3},    {"oregano", 4},
     {"piece", 1},     {"pieces", 2},     {"puree", 2},       {"purée", 2},      {"sauté", 2},
     {"cafe", 2},      {"crème", 1},      {"creature", 2},    {"mayonnaise", 3}, {"safely", 2},
     {"carefully", 3}, {"evenly", 3},     {"loosely", 2},     {"closely", 2},    {"cheesecake", 2},
     {"teaspoon", 2},  {"tablespoon", 3}, {"fire", 1},        {"hour", 1},       {"hours", 1},
     {"our", 1},       {"poem", 2},       {"quiet", 2},       {"science", 2},    {"diet", 2},
     {"fluid", 2},     {"lion", 2},       {"area's", 3},      {"once", 1},       {"coating", 2},
     {"dough", 1},     {"dhal", 1}});

}  // namespace

int syllables(std::string_view written) {
  std::string word = base::lower(written);
  const auto exception = std::find_if(kExceptions.begin(), kExceptions.end(),
                                      [&](const Exception& e) { return e.word == word; });
  if (exception != kExceptions.end()) return exception->syllables;
  if (word.ends_with("'s")) word.resize(word.size() - 2);
  int groups = 0;
  bool in_group = false;
  for (std::size_t i = 0; i < word.size(); ++i) {
    const bool v = vowel(word[i]) && !(i == 0 && word[i] == 'y');
    if (v && !in_group) ++groups;
    // Two vowels that are said apart: "i-a" in "media", "e-o" in "video", "u-a" in "gradual".
    if (v && in_group && i > 0) {
      const std::string pair = word.substr(i - 1, 2);
      if ((pair == "ia" && !word.ends_with("cial") && !word.ends_with("lian")) || pair == "eo" ||
          pair == "iu" ||
          (pair == "io" && i > 1 && word[i - 2] != 't' && word[i - 2] != 's' && word[i - 2] != 'n'))
        ++groups;
    }
    in_group = v;
  }
  const auto ends = [&](std::string_view end) {
    return word.ends_with(end) && word.size() > end.size();
  };
  const auto before_end = [&](std::size_t n) {
    return word.size() > n ? word[word.size() - n - 1] : ' ';
  };
  // A silent e: "slice", "sliced", "slices" after a soft end are told apart by the letter before.
  if (ends("e") && !vowel(before_end(1)) && !(ends("le") && !vowel(before_end(2)))) --groups;
  if (ends("ed") && !vowel(before_end(2)) && before_end(2) != 't' && before_end(2) != 'd') --groups;
  if (ends("es") && !vowel(before_end(2)) &&
      std::string_view("sxzcg").find(before_end(2)) == std::string_view::npos && !ends("ches") &&
      !ends("shes") && !(ends("les") && !vowel(before_end(3))))
    --groups;
  if (ends("ely") && !vowel(before_end(3))) --groups;
  return std::max(1, groups);
}

Counted count_reading(std::string_view text) {
  Counted out;
  std::string word;
  bool words_since_stop = false;
  const auto end_word = [&] {
    if (word.empty()) return;
    ++out.words;
    words_since_stop = true;
    if (digit(word[0])) {
      out.syllables += static_cast<int>(std::count_if(word.begin(), word.end(), digit));
    } else {
      out.syllables += syllables(word);
    }
    word.clear();
  };
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = text[i];
    const bool inside = i + 1 < text.size() && !word.empty() &&
                        (letter(text[i + 1]) || digit(text[i + 1]));
    if (letter(c) || digit(c) || static_cast<unsigned char>(c) >= 0x80) {
      // "75 °C": a sign alone is no word.
      if (static_cast<unsigned char>(c) < 0x80 || !word.empty()) word += c;
    } else if ((c == '\'' || c == '-' || c == '.' || c == ':') && inside) {
      if (c == '-') {
        end_word();  // "half-moon" is read as two
      } else {
        word += c;
      }
    } else {
      end_word();
      if ((c == '.' || c == '!' || c == '?') && words_since_stop) {
        ++out.sentences;
        words_since_stop = false;
      }
    }
  }
  end_word();
  if (words_since_stop) ++out.sentences;
  return out;
}

double grade(const Counted& n) {
  if (n.words == 0 || n.sentences == 0) return 0;
  return 0.39 * n.words / n.sentences + 11.8 * n.syllables / n.words - 15.59;
}

double reading_grade(std::string_view text) { return grade(count_reading(text)); }

}  // namespace print::sheets
