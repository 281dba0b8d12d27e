#include "kitchen/reading/layout_lines.h"

#include <algorithm>
#include <array>

#include "base/folding.h"
#include "base/text.h"
#include "kitchen/reading/amounts.h"
#include "kitchen/reading/cut_line.h"
#include "kitchen/reading/line_words.h"
#include "kitchen/reading/page_words.h"

namespace kitchen {
namespace {

// "You need 1 carrot, ...": the words that open a list inside a sentence, their length; 0 = none.
std::size_t opens_list(const std::string& tidy) {
  const std::string low = base::lower(tidy);
  constexpr std::size_t kEarly = 50;  // "For four bowls of soup you need ..."
  for (const std::string_view words : {"you need ", "you will need ", "you'll need ", "take "}) {
    const auto at = low.find(words);
    if (at > kEarly || (at > 0 && (words == "take " || low[at - 1] != ' '))) continue;
    const std::size_t length = at + words.size();
    return amount_at(line_tokens(std::string_view(low).substr(length)), 0, Measures{}) ? length : 0;
  }
  return 0;
}

// A text that is one paragraph is cut into its sentences.
std::vector<std::string> sentences_in(const std::string& paragraph) {
  std::vector<std::string> out;
  std::size_t from = 0;
  for (std::size_t i = 0; i + 2 < paragraph.size(); ++i) {
    const bool end = paragraph[i] == '.' || paragraph[i] == '!';
    if (!end || paragraph[i + 1] != ' ' || paragraph[i + 2] < 'A' || paragraph[i + 2] > 'Z')
      continue;
    out.push_back(paragraph.substr(from, i + 1 - from));
    from = i + 2;
  }
  out.push_back(paragraph.substr(from));
  return out;
}

}  // namespace

bool small_first(const std::string& tidy) {
  return !tidy.empty() && tidy[0] >= 'a' && tidy[0] <= 'z';
}

// What a table's head says of the columns below it.
HeadingFound columns_headed(const std::string& tidy) {
  HeadingFound found;
  found.rest = tidy.size();
  const auto words = base::words_of(base::folded(tidy));
  const auto says = [&](std::initializer_list<std::string_view> any) {
    return std::any_of(words.begin(), words.end(),
                       [&](const std::string& w) { return base::one_of(w, any); });
  };
  if (says({"ingredient", "ingredients", "food", "foods", "item", "amount", "quantity"}))
    found.section = Section::kIngredients;
  else if (says({"instructions", "instruction", "method", "step", "steps", "do", "task", "tasks",
                 "activity", "action", "directions", "time"}))
    found.section = Section::kMethod;
  return found;
}

std::vector<Line> lines_of(std::string_view text) {
  constexpr std::size_t kParagraph = 300, kOneLine = 100;  // letters
  std::vector<Line> out;
  int number = 1;
  std::string line;
  const auto filled = std::count_if(text.begin(), text.end(), [](char c) { return c == '\n'; });
  Cells columns;
  bool gap = true;
  const auto close = [&] {
    std::vector<Cell> cells;
    if (page_words(tidied_line(line)))
      cells = {{line}};
    else
      cells = columns.of(line);
    if (filled <= 3 && cells.size() == 1 && line.size() > (filled <= 1 ? kOneLine : kParagraph)) {
      cells.clear();
      for (std::string& sentence : sentences_in(line)) cells.push_back({std::move(sentence)});
    }
    bool blank = true;
    for (Cell& cell : cells) {
      Line each;
      each.number = number;
      each.text = base::trimmed(cell.text);
      each.tidy = tidied_line(cell.text);
      if (each.text.empty()) continue;
      each.kind = cell.kind;
      each.right = cell.right;
      each.left = !cell.right && cells.size() > 1 && cells.back().right;
      each.gap = gap && blank;
      blank = false;
      each.looks = looks_of(cell.kind == CellKind::kRow ? tidied_line(in_reading_order(each.text))
                                                        : each.tidy);
      each.looks.bullet = each.looks.bullet || each.text.starts_with("\u2022") ||
                          each.text.starts_with("\u25AA") || each.text.starts_with("\u00B7");
      each.heading = cell.kind == CellKind::kHeader ? columns_headed(each.tidy)
                                                    : section_heading(each.tidy);
      if (const std::size_t opens = opens_list(each.tidy);
          opens != 0 && each.heading.section == Section::kNone && each.kind == CellKind::kText)
        each.heading = {Section::kIngredients, opens};
      out.push_back(std::move(each));
    }
    gap = blank;
    line.clear();
    ++number;
  };
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (text[i] == '\n') {
      close();
    } else if (text[i] == '\r') {
      if (i + 1 >= text.size() || text[i + 1] != '\n') close();
    } else {
      line += text[i];
    }
  }
  close();
  return out;
}

// "peeled and diced", "cut into chunks", but not "grated nutmeg".
bool only_prepares(const std::vector<std::string>& words) {
  static constexpr std::array<std::string_view, 8> kLinks = {"and", "into", "in", "for",
                                                             "to",  "with", "at", "or"};
  std::size_t i = 0;
  while (i < words.size() && manner_word(words[i])) ++i;
  if (i >= words.size() || !preparation_word(words[i])) return false;
  return i + 1 >= words.size() ||
         std::find(kLinks.begin(), kLinks.end(), words[i + 1]) != kLinks.end();
}
// "2 tbsp chopped fresh": the food stands in the next line.
bool no_food_yet(const std::string& tidy) {
  const auto t = line_tokens(tidy);
  const auto amount = amount_at(t, 0, Measures{});
  if (!amount) return false;
  for (std::size_t i = amount->next; i < t.size(); ++i) {
    if (!(preparation_word(t[i].word) || quality_word(t[i].word) || manner_word(t[i].word) ||
          t[i].is("fresh") || t[i].is("and")))
      return false;
  }
  return true;
}

}  // namespace kitchen
