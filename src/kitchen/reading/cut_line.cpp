#include "kitchen/reading/cut_line.h"

#include <algorithm>
#include <array>
#include <cctype>

#include "base/folding.h"
#include "base/text.h"
#include "kitchen/reading/amounts.h"
#include "kitchen/reading/line_looks.h"
#include "kitchen/reading/line_words.h"

namespace kitchen {
namespace {

using Tokens = std::vector<LineToken>;

// Whether an ingredient begins at token `i`: an amount in figures with a food behind it.
bool begins_ingredient(const Tokens& t, std::size_t i) {
  if (i >= t.size()) return false;
  const bool figure = t[i].number();
  const bool article = t[i].is("a") || t[i].is("an") || t[i].is("half") || t[i].is("one") ||
                       t[i].is("two") || t[i].is("three") || t[i].is("four");
  const bool vague = base::one_of(t[i].word, {"pinch", "knob", "handful", "dash", "splash"}) &&
                     i + 1 < t.size() && t[i + 1].kind == LineToken::Kind::kWord;
  if (!figure && !article && !vague) return false;
  const Measures measures;
  const auto amount = amount_at(t, i, measures);
  if (!amount || !amount->quantity.stated() || amount->next >= t.size()) return false;
  const LineToken& name = t[amount->next];
  if (name.kind != LineToken::Kind::kWord) return false;
  // "2 eggs, 1 beaten" is one ingredient, "1 tsp mixed spice" another.
  const std::size_t after = amount->next + 1;
  const bool goes_on = after < t.size() && t[after].kind == LineToken::Kind::kWord &&
                       !t[after].is("and") && !t[after].is("into");
  if (preparation_word(name.word) && !goes_on) return false;
  // "..., a few leaves to garnish" goes on with what was named.
  static constexpr std::array<std::string_view, 15> kNoFood = {
      "minutes", "mins", "min",   "hours",  "hour",  "degrees", "to", "for",
      "c",       "f",    "times", "people", "thick", "wide",    "on"};
  if (std::find(kNoFood.begin(), kNoFood.end(), name.word) != kNoFood.end()) return false;
  return figure || amount->quantity.unit != Unit::kPiece || !amount->quantity.piece.empty();
}

bool remark_word(const LineToken& t) {
  static constexpr std::array<std::string_view, 17> kWords = {
      "for",  "to",   "plus", "or",   "at",   "about",      "if",      "optional", "with",
      "skin", "room", "in",   "such", "each", "preferably", "ideally", "then"};
  return preparation_word(t.word) || manner_word(t.word) || quality_word(t.word) ||
         std::find(kWords.begin(), kWords.end(), t.word) != kWords.end();
}

std::vector<std::string> cut_at(const std::string& text, const std::vector<std::size_t>& cuts) {
  std::vector<std::string> out;
  std::size_t from = 0;
  for (const std::size_t cut : cuts) {
    out.push_back(base::trimmed(text.substr(from, cut - from)));
    from = cut;
  }
  out.push_back(base::trimmed(text.substr(from)));
  std::erase(out, "");
  return out;
}

// The next comma, semicolon or bar outside brackets.
std::size_t next_mark(const Tokens& t, std::size_t from) {
  int depth = 0;
  for (std::size_t i = from; i < t.size(); ++i) {
    if (t[i].is("(")) ++depth;
    if (t[i].is(")")) --depth;
    if (depth <= 0 && (t[i].is(",") || t[i].is(";") || t[i].is("|"))) return i;
  }
  return t.size();
}

// "flour 200 g", "eggs (2)": a word first, an amount last.
bool ends_with_amount(const Tokens& t, std::size_t from, std::size_t to) {
  if (to <= from + 1 || t[from].kind != LineToken::Kind::kWord) return false;
  if (t[to - 1].is(".") || t[to - 1].is(")")) --to;
  for (std::size_t i = from + 1; i < to; ++i) {
    if (!t[i].number()) continue;
    const auto amount = amount_at(t, i, Measures{});
    return amount && amount->next == to;
  }
  return false;
}

std::optional<Portions> counted(const Tokens& t, std::size_t i, std::string_view line) {
  while (i < t.size() && (t[i].is(":") || t[i].is("-") || t[i].is("about") || t[i].is("approx") ||
                          t[i].is("approximately") || t[i].is("around") || t[i].is("up") ||
                          t[i].is("to") || t[i].is("enough") || t[i].is("for") || t[i].is(".") ||
                          t[i].is("roughly") || t[i].is("*") || t[i].is("into")))
    ++i;
  if (i >= t.size() || t[i].is("a") || t[i].is("an")) return std::nullopt;
  std::size_t next = 0;
  const auto least = number_at(t, i, next);
  if (!least || *least < Ratio(1) || *least > Ratio(500)) return std::nullopt;
  Ratio most = *least;
  if (next < t.size() && (t[next].is("-") || t[next].is("to") || t[next].is("or"))) {
    std::size_t after = 0;
    const auto second = number_at(t, next + 1, after);
    if (second && *second > most && *second <= Ratio(500)) {
      most = *second;
      next = after;
    }
  }
  // "Makes 500 g", "makes a 20 cm cake" do not say how many.
  std::size_t unit = 0;
  const Measures measures;
  if (unit_at(t, next, measures, unit)) return std::nullopt;
  if (next < t.size() && (t[next].is("cm") || t[next].is("inch") || t[next].is("minutes") ||
                          t[next].is("%") || t[next].is("mins") || t[next].is("min")))
    return std::nullopt;
  return Portions{static_cast<int>(least->round()), static_cast<int>(most.round()),
                  std::string(line)};
}

bool opens_portions(const LineToken& t) {
  static constexpr std::array<std::string_view, 13> kWords = {
      "serves",   "serve", "makes",    "yield",   "yields", "servings", "serving",
      "portions", "feeds", "quantity", "portion", "enough", "cuts"};
  return std::find(kWords.begin(), kWords.end(), t.word) != kWords.end();
}

std::size_t count_of(const std::string& text, std::string_view what) {
  std::size_t count = 0;
  for (auto at = text.find(what); at != std::string::npos; at = text.find(what, at + what.size()))
    ++count;
  return count;
}

// "350F", "350 °F" without a Celsius figure anywhere.
bool fahrenheit_only(const std::string& folded) {
  bool fahrenheit = false;
  for (std::size_t i = 3; i < folded.size(); ++i) {
    const char c = folded[i];
    if ((c != 'f' && c != 'c') ||
        (i + 1 < folded.size() && std::isalpha(static_cast<unsigned char>(folded[i + 1])) != 0))
      continue;
    std::size_t k = i;
    while (k > 0 && (folded[k - 1] == ' ' || static_cast<unsigned char>(folded[k - 1]) >= 0x80))
      --k;
    if (k < 3 || std::isdigit(static_cast<unsigned char>(folded[k - 1])) == 0 ||
        std::isdigit(static_cast<unsigned char>(folded[k - 2])) == 0 ||
        std::isdigit(static_cast<unsigned char>(folded[k - 3])) == 0)
      continue;
    if (c == 'c') return false;
    fahrenheit = true;
  }
  return fahrenheit || folded.find("degrees f") != std::string::npos;
}

}  // namespace

std::vector<std::string> list_parts(const std::string& text, bool every_comma) {
  const Tokens t = line_tokens(text);
  std::vector<std::size_t> cuts;
  int depth = 0;
  std::size_t from = 0;  // token at which the last part begins
  // Who divides by semicolons has commas for other things.
  const bool semicolons = std::count_if(t.begin(), t.end(),
                                        [](const LineToken& each) { return each.is(";"); }) > 1;
  for (std::size_t i = 0; i + 1 < t.size(); ++i) {
    if (t[i].is("(")) ++depth;
    if (t[i].is(")")) --depth;
    if (depth > 0 || i == 0) continue;
    const bool mark = t[i].is(",") || t[i].is(";") || t[i].is("|");
    const bool joins = t[i].is("and") || t[i].is("&") || t[i].is("+") || t[i].is("n") ||
                       (t[i].is("/") && t[i].spaced && t[i + 1].spaced);
    if (!mark && !joins) continue;
    std::size_t next = i + 1;
    if (mark && (t[next].is("and") || t[next].is("plus"))) ++next;
    if (semicolons && t[i].is(";")) {
      cuts.push_back(t[i + 1].begin);
      continue;
    }
    const bool amount = begins_ingredient(t, next);
    // "1 cup and 2 tbsp milk" is one amount.
    if (joins && (!amount || !t[next].number() || (i > 0 && unit_named(t[i - 1].text)) ||
                  t[i - 1].number())) {
      continue;
    }
    // "Flour 200 g, butter 100 g": the amounts stand behind.
    if (mark && !amount && ends_with_amount(t, from, i) &&
        ends_with_amount(t, i + 1, next_mark(t, i + 1)))
      cuts.push_back(t[i + 1].begin);
    const bool plain = every_comma && mark && next < t.size() &&
                       t[next].kind == LineToken::Kind::kWord && !remark_word(t[next]);
    if ((amount || plain) && (cuts.empty() || cuts.back() != t[i + 1].begin))
      cuts.push_back(t[i + 1].begin);
    if (!cuts.empty() && cuts.back() == t[i + 1].begin) from = i + 1;
  }
  return cut_at(text, cuts);
}

std::optional<std::size_t> method_cut(const std::string& text) {
  for (std::size_t i = text.find(". "); i != std::string::npos; i = text.find(". ", i + 1)) {
    const std::string rest = text.substr(i + 2);
    if (section_heading(rest).section == Section::kMethod) return i + 2;
    const LineLooks looks = looks_of(rest);
    const bool capital = !rest.empty() && rest[0] >= 'A' && rest[0] <= 'Z';
    if (looks.verb_first && capital && looks.words >= 2 && !looks.amount_first) return i + 2;
  }
  for (const std::string_view heading :
       {" Method:", " METHOD:", " Method -", " Instructions:", " Directions:", " Steps:"}) {
    const auto at = text.find(heading);
    if (at != std::string::npos) return at + 1;
  }
  return std::nullopt;
}

std::optional<std::size_t> title_cut(const std::string& text) {
  const auto colon = text.find(": ");
  if (colon == std::string::npos) return std::nullopt;
  const Tokens t = line_tokens(text);
  for (std::size_t i = 0; i < t.size(); ++i) {
    if (t[i].begin == colon) {
      if (!begins_ingredient(t, i + 1)) return std::nullopt;
      return t[i + 1].begin;
    }
  }
  return std::nullopt;
}

std::optional<Portions> portions_in(std::string_view line) {
  constexpr std::size_t kLongest = 70;
  if (line.size() > kLongest) return std::nullopt;
  const std::string_view open = without_number(line);
  Tokens t = line_tokens(open);
  while (!t.empty() && (t[0].is("*") || t[0].is("("))) t.erase(t.begin());
  while (!t.empty() && (t.back().is("*") || t.back().is(")"))) t.pop_back();
  if (t.empty()) return std::nullopt;
  // "Digon i wneud 12 / Makes 12": in two languages.
  for (std::size_t i = 1; i + 2 < t.size(); ++i) {
    if (t[i].is("/") && opens_portions(t[i + 1])) return counted(t, i + 2, line);
  }
  if (t[0].is("number") && t.size() > 2 && t[1].is("of")) t.erase(t.begin(), t.begin() + 2);
  if (opens_portions(t[0])) {
    const bool serve = t[0].is("serve") && !(t.size() > 1 && (t[1].is(":") || t[1].number()));
    if (serve) return std::nullopt;
    const auto found = counted(t, 1, line);
    if (found && t[0].is("serve") && t.size() > 4) return std::nullopt;
    return found;
  }
  if (t[0].is("for") && t.size() == 2 && t[1].number()) return counted(t, 1, line);
  if (t[0].is("for") && t.size() <= 5) {
    const bool people = std::any_of(t.begin(), t.end(), [](const LineToken& each) {
      return each.is("people") || each.is("persons") || each.is("pupils") || each.is("servings");
    });
    if (people) return counted(t, 1, line);
  }
  std::size_t next = 0;
  if (t.size() <= 6 && number_at(t, 0, next)) {
    const bool portions = std::any_of(t.begin() + 1, t.end(), [](const LineToken& each) {
      return each.is("servings") || each.is("portions") || each.is("people") ||
             each.is("helpings") || each.is("serving");
    });
    if (portions) return counted(t, 0, line);
  }
  return std::nullopt;
}

std::optional<Portions> portions_within(const std::string& text) {
  const Tokens t = line_tokens(text);
  for (std::size_t i = 0; i + 1 < t.size(); ++i) {
    const bool opens = t[i].is("serves") || t[i].is("makes") || t[i].is("feeds");
    const bool people = t[i].is("for") && t[i + 1].number() &&
                        (i + 2 >= t.size() || t[i + 2].is("people") || t[i + 2].is("-") ||
                         t[i + 2].is("to") || t[i + 2].is("persons") || t[i + 2].is(")"));
    if (!opens && !people) continue;
    if (auto found = counted(t, i + 1, words_between(text, t, i, t.size()))) return found;
  }
  return std::nullopt;
}

bool american_text(std::string_view text) {
  const std::string folded = base::folded(text.substr(0, 200'000));
  static constexpr std::array<std::string_view, 25> kAmerican = {
      "all-purpose",     "all purpose flour", "confectioners",
      "powdered sugar",  "heavy cream",       "cilantro",
      "zucchini",        "scallion",          "kosher salt",
      "eggplant",        "broiler",           "skillet",
      "half-and-half",   "arugula",           "cornstarch",
      "ground beef",     "graham cracker",    "quart ",
      "quarts",          "stick butter",      "sticks butter",
      "stick of butter", "sticks of butter",  "sticks unsalted",
      "stick unsalted"};
  static constexpr std::array<std::string_view, 14> kBritish = {
      "self-raising", "plain flour", "caster sugar", "icing sugar",  "courgette",
      "aubergine",    "gas mark",    "double cream", "spring onion", "bicarbonate",
      "cornflour",    "beef mince",  "sultanas",     "rapeseed"};
  std::size_t american = fahrenheit_only(folded) ? 2 : 0, british = 0;
  for (const std::string_view word : kAmerican) american += count_of(folded, word) > 0 ? 1 : 0;
  for (const std::string_view word : kBritish) british += count_of(folded, word) > 0 ? 1 : 0;
  if (count_of(folded, " cup") == 0 && count_of(folded, "stick") == 0 &&
      count_of(folded, "pint") == 0 && american < 2)
    return false;
  return american > british;
}

}  // namespace kitchen
