#include "kitchen/reading/cells.h"

#include <algorithm>
#include <array>
#include <cctype>

#include "base/folding.h"
#include "base/text.h"
#include "kitchen/reading/amounts.h"
#include "kitchen/reading/cut_line.h"
#include "kitchen/reading/line_looks.h"
#include "kitchen/reading/line_words.h"
#include "kitchen/reading/page_words.h"
#include "kitchen/reading/ware_words.h"

namespace kitchen {
namespace {

using Pieces = std::vector<std::string>;

bool digit(char c) { return c >= '0' && c <= '9'; }

// A row of a file: "Onion;1;chopped". Between sentences and foods a space stands behind it.
bool divided_by_semicolons(const std::string& line) {
  std::size_t marks = 0;
  for (std::size_t i = 0; i < line.size(); ++i) {
    if (line[i] != ';') continue;
    if (i + 1 < line.size() && line[i + 1] == ' ') return false;
    ++marks;
  }
  return marks >= 2;
}

// Letters, not bytes.
std::size_t letters_in(std::string_view text) {
  return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), [](char c) {
    return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U;
  }));
}
std::size_t byte_of(std::string_view text, std::size_t letter) {
  std::size_t at = 0;
  for (std::size_t seen = 0; at < text.size(); ++at) {
    if ((static_cast<unsigned char>(text[at]) & 0xC0U) == 0x80U) continue;
    if (seen++ == letter) break;
  }
  return at;
}

std::string without_bars(std::string_view text) {
  std::string out = base::trimmed(text);
  while (!out.empty() && (out.front() == '|' || out.front() == ' ')) out.erase(0, 1);
  while (!out.empty() && (out.back() == '|' || out.back() == ';' || out.back() == ' '))
    out.pop_back();
  return out;
}
std::string plain(std::string_view piece) { return tidied_line(without_bars(piece)); }

// Cut behind each mark, which stays on the piece before it; "| a | b |" begins with one.
Pieces cut_at(const std::string& line, char mark) {
  Pieces out;
  std::size_t from = 0;
  for (std::size_t i = 0; i < line.size(); ++i) {
    const bool bar = line[i] == mark && (mark != '|' || i == 0 || line[i - 1] == ' ' ||
                                         i + 1 >= line.size() || line[i + 1] == ' ');
    if (!bar || base::trimmed(line.substr(from, i - from)).empty()) continue;
    if (without_bars(line.substr(from, i - from)).empty()) continue;
    out.push_back(line.substr(from, i + 1 - from));
    from = i + 1;
  }
  if (!base::trimmed(line.substr(from)).empty()) {
    const bool rest = !without_bars(line.substr(from)).empty();
    if (rest || out.empty())
      out.push_back(line.substr(from));
    else
      out.back() += line.substr(from);
  }
  return out;
}

// "200 g flour • 2 eggs • a pinch of salt": cut behind each point between, which stays on the piece
// before it. One piece when most of them are no amounts.
Pieces cut_at_points(const std::string& line) {
  for (const std::string_view point : {" • ", " · ", " ● ", " ∙ "}) {
    Pieces out;
    std::size_t from = 0;
    for (auto at = line.find(point); at != std::string::npos; at = line.find(point, from)) {
      if (base::trimmed(line.substr(from, at - from)).empty()) break;
      out.push_back(line.substr(from, at + point.size() - from));
      from = at + point.size();
    }
    out.push_back(line.substr(from));
    const auto amounts = std::count_if(out.begin(), out.end(), [&](std::string piece) {
      if (piece.ends_with(point)) piece.resize(piece.size() - point.size());
      const LineLooks looks = looks_of(tidied_line(piece));
      return looks.amount_first || looks.amount_last;
    });
    if (out.size() > 2 && static_cast<std::size_t>(amounts) * 3 >= out.size() * 2) return out;
  }
  return {line};
}

// Cut where at least `wide` spaces stand between words, and not behind dots that lead the eye.
Pieces cut_at_gaps(const std::string& line, std::size_t wide) {
  Pieces out;
  std::size_t from = line.find_first_not_of(' ');
  if (from == std::string::npos) return {line};
  for (std::size_t i = from; i < line.size();) {
    if (line[i] != ' ') {
      ++i;
      continue;
    }
    std::size_t end = i;
    while (end < line.size() && line[end] == ' ') ++end;
    if (end - i >= wide && end < line.size()) {
      out.push_back(line.substr(from, end - from));
      from = end;
    }
    i = end;
  }
  out.push_back(line.substr(from));
  return out;
}

// "9.15", "09:15", "9:15am"; the offset behind it, or `at` itself.
std::size_t clock_at(std::string_view t, std::size_t at) {
  std::size_t i = at;
  while (i < t.size() && digit(t[i])) ++i;
  if (i == at || i - at > 2 || i + 2 >= t.size() || (t[i] != '.' && t[i] != ':')) return at;
  if (!digit(t[i + 1]) || i + 2 >= t.size() || !digit(t[i + 2])) return at;
  if (i + 3 < t.size() && digit(t[i + 3])) return at;
  const int hours = std::stoi(std::string(t.substr(at, i - at)));
  if (hours > 23 || t[i + 1] > '5') return at;
  i += 3;
  const std::string_view rest = t.substr(i);
  for (const std::string_view half : {"am", "pm", " am", " pm"}) {
    if (rest.starts_with(half) && (rest.size() == half.size() ||
                                   !std::isalpha(static_cast<unsigned char>(rest[half.size()]))))
      return i + half.size();
  }
  return i;
}

std::size_t spaces_from(std::string_view t, std::size_t i) {
  while (i < t.size() && t[i] == ' ') ++i;
  return i;
}
std::size_t dash_from(std::string_view t, std::size_t i) {
  const std::size_t at = spaces_from(t, i);
  if (at < t.size() && t[at] == '-') return spaces_from(t, at + 1);
  if (t.substr(at).starts_with("to ")) return at + 3;
  return i;
}
std::size_t minutes_word(std::string_view t, std::size_t i) {
  const std::size_t at = spaces_from(t, i);
  for (const std::string_view word : {"minutes", "minute", "mins", "min", "m", "'"}) {
    if (!t.substr(at).starts_with(word)) continue;
    const std::size_t end = at + word.size();
    if (end >= t.size() || !std::isalpha(static_cast<unsigned char>(t[end]))) return end;
  }
  return i;
}

// A clock time, two of them, or minutes of the lesson; the offset behind it, 0 = none. `clock`
// tells which.
std::size_t time_at_front(std::string_view t, bool& clock) {
  clock = false;
  if (const std::size_t first = clock_at(t, 0); first > 0) {
    clock = true;
    const std::size_t dash = dash_from(t, first);
    if (dash > first) {
      const std::size_t second = clock_at(t, dash);
      if (second > dash) return second;
    }
    return first;
  }
  std::size_t i = 0;
  for (const std::string_view word : {"minutes ", "minute ", "mins ", "min "}) {
    if (base::lower(std::string(t.substr(0, 8))).starts_with(word)) i = word.size();
  }
  const bool named = i > 0;
  const std::size_t from = i;
  while (i < t.size() && digit(t[i])) ++i;
  if (i == from || i - from > 3) return 0;
  if (const std::size_t mid = minutes_word(t, i); mid > i && dash_from(t, mid) > mid) i = mid;
  const std::size_t dash = dash_from(t, i);
  if (dash > i) {
    std::size_t end = dash;
    while (end < t.size() && digit(t[end])) ++end;
    if (end > dash) i = end;
  }
  const std::size_t end = minutes_word(t, i);
  if (end == i && !named) return 0;
  return end;
}

bool whole_time(const std::string& tidy) {
  std::string_view t = tidy;
  while (!t.empty() && (t.front() == '(' || t.front() == '[' || t.front() == '*'))
    t.remove_prefix(1);
  while (!t.empty() && (t.back() == ')' || t.back() == ']' || t.back() == '.' || t.back() == ':' ||
                        t.back() == '*' || t.back() == '-' || t.back() == ' '))
    t.remove_suffix(1);
  bool clock = false;
  const std::size_t end = time_at_front(t, clock);
  return end > 0 && end == t.size();
}

bool header_word(const std::string& tidy) {
  static constexpr std::array<std::string_view, 46> kWords = {
      "qty",       "prep time",  "timing",     "minutes",      "mins",       "step",
      "steps",     "no",         "number",     "done",         "tick",       "who",
      "amount",    "quantity",   "how much",   "weight",       "measure",    "unit",
      "units",     "time",       "item",       "preparation",  "prep",       "notes",
      "comments",  "cost",       "price",      "equipment",    "checks",     "safety",
      "food",      "foods",      "ingredient", "ingredients",  "hygiene",    "hazard",
      "stage",     "activity",   "task",       "tasks",        "what to do", "action",
      "key point", "key points", "what",       "quality check"};
  std::string bare;
  for (const std::string& word : base::words_of(base::folded(tidy)))
    bare += (bare.empty() ? "" : " ") + word;
  return base::one_of(bare, kWords) || section_heading(tidy).section != Section::kNone;
}

bool names_wares_only(const std::string& tidy) {
  std::string phrase = " ";
  std::size_t words = 0;
  for (const std::string& word : base::words_of(base::folded(tidy.substr(0, tidy.find(" ("))))) {
    phrase += singular(word) + " ";
    ++words;
  }
  if (words == 0 || words > 5) return false;
  const auto wares = wares_in(phrase);
  return std::any_of(wares.begin(), wares.end(),
                     [&](const NamedWare& w) { return phrase.ends_with(" " + w.from + " "); });
}

struct Look {
  LineLooks looks;
  std::string tidy;
  bool time = false, amount = false, number = false, unit = false, box = false, step = false;
};

Look look(const std::string& piece) {
  Look out;
  out.tidy = plain(piece);
  out.looks = looks_of(out.tidy);
  const auto t = line_tokens(out.tidy);
  out.time = whole_time(out.tidy);
  out.box = std::none_of(out.tidy.begin(), out.tidy.end(), [](char c) {
    return std::isalnum(static_cast<unsigned char>(c)) != 0 ||
           static_cast<unsigned char>(c) >= 0x80;
  });
  out.number = (t.size() == 1 || (t.size() == 2 && (t[1].is(".") || t[1].is(")")))) &&
               t[0].number() && t[0].value.whole() && t[0].value < base::Ratio(100);
  std::size_t next = 0;
  const bool unit = !t.empty() && unit_at(t, 0, Measures{}, next).has_value();
  out.unit = unit && next >= t.size();
  if (const auto amount = t.empty() ? std::nullopt : amount_at(t, 0, Measures{})) {
    const bool bracket = amount->next < t.size() && t[amount->next].is("(");
    // "a few leaves to garnish"
    const bool remark = amount->next < t.size() &&
                        (t[amount->next].is("to") || t[amount->next].is("for"));
    out.amount = (amount->next >= t.size() || bracket || remark) && !out.time;
  }
  // "1 clove" beside "garlic"; alone it may be a food.
  const bool pieces = t.size() == 2 && t[0].number() && piece_word(t[1].word).has_value();
  // "1 large", "4 small (about 180 g)", "small handful"
  std::size_t k = !t.empty() && t[0].number() ? 1 : 0;
  while (k < t.size() && measure_quality(t[k].word)) ++k;
  const bool sized = k > 1 && t[0].number() && (k == t.size() || t[k].is("("));
  const bool vague = k > 0 && k + 1 == t.size() && piece_word(t[k].word).has_value();
  out.amount = out.amount || pieces || sized || vague ||
               base::one_of(base::folded(out.tidy), {"a little", "to taste", "a few", "some", "few",
                                                     "as needed", "pinch", "a pinch"});
  out.step = (out.looks.verb_first && (out.looks.words >= 3 || out.looks.sentence)) ||
             (out.looks.sentence && out.looks.words >= 6);
  return out;
}

// The pieces [from, to) are one ingredient: an amount (perhaps its number and unit apart) and a
// food beside it.
bool ingredient_row(const std::vector<Look>& all, std::size_t from, std::size_t to) {
  std::size_t amounts = 0, names = 0;
  for (std::size_t i = from; i < to; ++i) {
    const Look& each = all[i];
    if (each.step || each.time) return false;
    if (each.amount || each.number) {
      ++amounts;
      if (i + 1 < to && all[i + 1].unit) ++i;
    } else if (!each.box && each.looks.words > 0 && !each.unit) {
      ++names;
    }
  }
  return amounts == 1 && names >= 1 && to - from >= 2;
}

}  // namespace

std::size_t slot_before(std::string_view tidy) {
  std::size_t from = 0;
  while (from < tidy.size() && (tidy[from] == '(' || tidy[from] == '[' || tidy[from] == '*' ||
                                tidy[from] == '-' || tidy[from] == ' '))
    ++from;
  bool clock = false;
  std::size_t end = time_at_front(tidy.substr(from), clock);
  if (end == 0) return 0;
  end += from;
  const std::size_t time_end = end;
  bool mark = false;
  while (end < tidy.size() && (tidy[end] == ' ' || tidy[end] == ':' || tidy[end] == '-' ||
                               tidy[end] == ')' || tidy[end] == ']' || tidy[end] == '*' ||
                               tidy[end] == '|' || tidy[end] == '.' || tidy[end] == ',')) {
    mark = mark || tidy[end] != ' ';
    ++end;
  }
  if (end >= tidy.size() || end == time_end) return 0;
  const LineLooks rest = looks_of(tidy.substr(end));
  const auto t = line_tokens(tidy.substr(end));
  std::size_t next = 0;
  if (rest.words < 2 || (!t.empty() && unit_at(t, 0, Measures{}, next))) return 0;
  const bool capital = tidy[end] >= 'A' && tidy[end] <= 'Z';
  if (clock) return rest.verb_first || mark || capital ? end : 0;
  // "10 min Cream the butter": not "5 minutes before the end".
  return (rest.verb_first || mark) && capital ? end : 0;
}

std::string in_reading_order(std::string_view line) {
  const std::string whole(line);
  Pieces pieces;
  if (whole.find('\t') != std::string::npos) {
    pieces = cut_at(whole, '\t');
  } else if (divided_by_semicolons(whole)) {
    pieces = cut_at(whole, ';');
  } else if (whole.find('|') != std::string::npos) {
    pieces = cut_at(whole, '|');
  } else {
    pieces = cut_at_gaps(base::trimmed(whole), 3);
  }
  if (pieces.size() < 2) return whole;
  std::vector<Look> all;
  for (const std::string& piece : pieces) all.push_back(look(piece));
  if (!ingredient_row(all, 0, all.size())) return whole;
  std::string amount, names;
  for (std::size_t i = 0; i < all.size(); ++i) {
    if (amount.empty() && (all[i].amount || all[i].number)) {
      amount = all[i].tidy;
      if (i + 1 < all.size() && all[i + 1].unit) amount += " " + all[++i].tidy;
    } else if (!all[i].box) {
      names += (names.empty() ? "" : ", ") + all[i].tidy;
    }
  }
  // "1 sheet (320 g)" has its bracket behind the food in a list.
  const bool vague = base::one_of(base::folded(amount), {"to taste", "as needed"}) ||
                     amount.find(" to ") != std::string::npos ||
                     amount.find(" for ") != std::string::npos;
  if (vague) return names + ", " + amount;
  return amount + " " + names;
}

std::vector<Cell> Cells::judged(std::vector<std::string> pieces, bool firm) {
  std::vector<Look> all;
  for (const std::string& piece : pieces) all.push_back(look(piece));
  const auto joined = [&](std::size_t from, std::size_t to) {
    std::string out;
    for (std::size_t i = from; i < to; ++i) out += pieces[i];
    return out;
  };
  // The heads of columns.
  const bool heads = std::all_of(all.begin(), all.end(),
                                 [](const Look& l) { return l.box || header_word(l.tidy); });
  if (heads && firm) {
    Section left = section_heading(all.front().tidy).section;
    Section right = section_heading(all.back().tidy).section;
    aside_ = false;
    // Two columns beside each other are two headings.
    if (all.size() == 2 && left == Section::kIngredients && right == Section::kMethod)
      return {{pieces[0]}, {pieces[1], CellKind::kText, true}};
    aside_ = all.size() == 2 && left != Section::kNone && left != Section::kOther &&
             right == Section::kOther;
    return {{joined(0, pieces.size()), CellKind::kHeader}};
  }
  std::vector<Cell> out;
  std::size_t i = 0;
  while (i < pieces.size()) {
    // The longest run of pieces that is one ingredient.
    std::size_t to = pieces.size();
    while (to > i + 1 && !ingredient_row(all, i, to)) --to;
    if (to > i + 1) {
      out.push_back({joined(i, to), CellKind::kRow});
      i = to;
      continue;
    }
    const bool step_next = i + 1 < pieces.size() && all[i + 1].step;
    const bool beside_step = i > 0 && all[i - 1].step && all[i].looks.words <= 2 &&
                             !all[i].looks.verb_first && !all[i].looks.amount_first;
    const bool aside = beside_step || (i > 0 && page_words(all[i].tidy) && !all[i].box);
    CellKind kind = aside ? CellKind::kAside : CellKind::kText;
    if (all[i].time) kind = CellKind::kTime;
    if (all[i].box || (all[i].number && (step_next || i + 1 == pieces.size())) ||
        (all[i].looks.words <= 1 && header_word(all[i].tidy) && i > 0))
      kind = CellKind::kMark;
    out.push_back({pieces[i], kind, i > 0});
    ++i;
  }
  return out;
}

std::vector<Cell> Cells::gapped(const std::string& line) {
  const std::string whole = line;
  // Where the right column stood before.
  if (column_) {
    // What is wrapped may stand under the words behind a number: a few letters further in.
    constexpr std::size_t kIndent = 5;
    std::size_t at = byte_of(whole, *column_);
    const bool gap = at > 1 && at < whole.size() && whole[at - 1] == ' ' && whole[at - 2] == ' ';
    const std::size_t column = at;
    while (gap && at < column + kIndent && at < whole.size() && whole[at] == ' ') ++at;
    if (gap && at < whole.size() && whole[at] != ' ') {
      const std::string left = whole.substr(0, at), right = whole.substr(at);
      const CellKind kind = aside_ ? CellKind::kAside : CellKind::kText;
      const bool clock = whole_time(plain(right));
      if (base::trimmed(left).empty()) return {{right, kind, true}};
      return {{left}, {right, clock ? CellKind::kTime : kind, true}};
    }
  }
  Pieces pieces = cut_at_gaps(whole, 3);
  if (pieces.size() < 2) {
    // "... until thick (8-10 minutes). 9.20": a clock time at the end of a sentence.
    const std::string tidy = base::trimmed(line);
    const auto space = tidy.rfind(' ');
    if (space != std::string::npos && space > 1 && whole_time(tidy.substr(space + 1)) &&
        clock_at(tidy, space + 1) > space + 1 && (tidy[space - 1] == '.' || tidy[space - 1] == '!'))
      return {{tidy.substr(0, space)}, {tidy.substr(space + 1), CellKind::kTime, true}};
    return {{line}};
  }
  std::vector<Look> all;
  for (const std::string& piece : pieces) all.push_back(look(piece));
  const bool heads = std::all_of(all.begin(), all.end(),
                                 [](const Look& l) { return header_word(l.tidy); });
  bool row = false, page = false, step = false, wares = false, time = false, foods = false;
  for (std::size_t i = 0; i < all.size(); ++i) {
    step = step || all[i].step || all[i].looks.numbered;
    time = time || all[i].time;
    page = page || (i > 0 && page_words(all[i].tidy));
    wares = wares || (i > 0 && names_wares_only(all[i].tidy));
    const bool little = base::folded(all[i].tidy).starts_with("a little ");
    foods = foods || (i > 0 && (all[i].looks.amount_first || all[i].looks.amount_last || little));
  }
  row = ingredient_row(all, 0, all.size());
  const bool left = all[0].looks.amount_first || all[0].looks.amount_last;
  const bool portions = portions_in(all.back().tidy).has_value() ||
                        (all.size() == 2 && portions_in(all[0].tidy));
  if (!heads && !row && !portions && !page &&
      !(step && (left || time || all[0].number || all.back().box)) && !(left && (wares || foods)) &&
      !(time && all.size() == 2 && all[0].looks.words >= 2))
    return {{line}};
  if (!row) {
    // The last gap that is wide parts the two columns.
    const std::size_t at = whole.size() - pieces.back().size();
    if (pieces.size() == 2 && (left || heads))
      column_ = letters_in(std::string_view(whole).substr(0, at));
  }
  std::vector<Cell> cells = judged(std::move(pieces), true);
  if (wares && left && !heads && cells.size() == 2) cells[1].kind = CellKind::kAside;
  return cells;
}

std::vector<Cell> Cells::of(const std::string& line) {
  const std::string whole = base::trimmed(line);
  if (whole.empty()) return {{line}};
  std::vector<Cell> cells;
  const auto tabs = std::count(whole.begin(), whole.end(), '\t');
  const bool listed = divided_by_semicolons(whole);
  const bool bars = whole.find(" | ") != std::string::npos || whole.front() == '|';
  if (tabs > 0) {
    column_.reset();
    cells = judged(cut_at(line, '\t'), true);
  } else if (listed) {
    column_.reset();
    cells = judged(cut_at(line, ';'), true);
  } else if (bars) {
    column_.reset();
    cells = judged(cut_at(line, '|'), true);
  } else if (Pieces points = cut_at_points(line); points.size() > 1) {
    column_.reset();
    for (std::string& piece : points) cells.push_back({std::move(piece)});
  } else {
    cells = gapped(line);
  }
  // A time before the step in the same cell.
  std::vector<Cell> out;
  for (Cell& cell : cells) {
    const std::string text = base::trimmed(cell.text);
    const std::string tidy = tidied_line(text);
    const std::size_t slot = cell.kind == CellKind::kText ? slot_before(tidy) : 0;
    if (slot == 0) {
      out.push_back(std::move(cell));
      continue;
    }
    out.push_back({tidy.substr(0, slot), CellKind::kTime, cell.right});
    out.push_back({tidy.substr(slot), CellKind::kText, cell.right});
  }
  return out;
}

}  // namespace kitchen
