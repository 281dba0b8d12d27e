#include "kitchen/reading/step_looks.h"

#include <algorithm>
#include <array>
#include <string_view>
#include <vector>

#include "base/folding.h"
#include "base/text.h"
#include "kitchen/foods.h"
#include "kitchen/reading/line_tokens.h"
#include "kitchen/reading/line_words.h"
#include "kitchen/reading/passive.h"
#include "kitchen/reading/ware_words.h"

namespace kitchen {
namespace {

using Tokens = std::vector<LineToken>;

bool person(const LineToken& t) {
  static constexpr std::array<std::string_view, 12> kPersons = {
      "i",       "we",     "you",      "they",  "he",  "she",
      "partner", "pupils", "everyone", "group", "and", "then"};
  return base::one_of(t.word, kPersons);
}
bool being(const LineToken& t) {
  static constexpr std::array<std::string_view, 12> kBeing = {
      "was", "were", "is", "are", "be", "been", "being", "get", "gets", "got", "should", "must"};
  return base::one_of(t.word, kBeing);
}

bool ends_with_ware(const std::string& part) {
  std::string phrase = " ";
  std::size_t words = 0;
  for (const std::string& word : base::words_of(base::folded(part))) {
    if (word == "and" || word == "a" || word == "an" || word == "for") continue;
    phrase += singular(word) + " ";
    ++words;
  }
  // A stock pot and a tin are food as often.
  if (words == 0 || words > 6 || phrase.find(" stock ") != std::string::npos ||
      phrase.find(" of ") != std::string::npos)
    return false;
  const auto wares = wares_in(phrase);
  return std::any_of(wares.begin(), wares.end(), [&](const NamedWare& ware) {
    return phrase.ends_with(" " + ware.from + " ");
  });
}

}  // namespace

bool tells_actions(const std::string& tidy) {
  const Tokens t = line_tokens(tidy);
  std::size_t told = 0;
  for (std::size_t i = 1; i < t.size(); ++i) {
    if (t[i].kind != LineToken::Kind::kWord) continue;
    // "I carefully chopped", "are then roasted"
    std::size_t before = i - 1;
    if (before > 0 &&
        (t[before].word.ends_with("ly") || t[before].is("then") || t[before].is("all")))
      --before;
    const bool done = action_of_form(t[i].word) != nullptr &&
                      (person(t[before]) || being(t[before]));
    const bool asked = method_verb(t[i].word) && (t[before].is("should") || t[before].is("must") ||
                                                  t[before].is("to") || t[before].is("they"));
    if (done || asked) ++told;
  }
  return told >= 2 || (told == 1 && tidy.find(" min") != std::string::npos);
}

bool telegraphic(const std::string& tidy) {
  static constexpr std::array<std::string_view, 8> kFirst = {"off",  "under", "into", "in",
                                                             "onto", "back",  "over", "then"};
  static constexpr std::array<std::string_view, 9> kLast = {"on",   "in",       "off", "out", "top",
                                                            "boil", "together", "up",  "over"};
  const Tokens t = line_tokens(tidy);
  if (t.size() < 2) return false;
  if (base::one_of(t[0].word, kFirst)) return true;
  for (std::size_t i = 1; i < t.size(); ++i) {
    const bool ends = i + 1 == t.size() || t[i + 1].is(",") || t[i + 1].is(".") || t[i + 1].is("+");
    const bool place = i + 1 < t.size() && (t[i].is("on") || t[i].is("over")) &&
                       base::one_of(t[i + 1].word, {"top", "other", "one", "each", "side"});
    if (place || (ends && base::one_of(t[i].word, kLast))) return true;
    const bool minutes = t[i].number() && i + 1 < t.size() &&
                         base::one_of(t[i + 1].word, {"min", "mins", "minutes", "minute", "hour"});
    if (minutes) return true;
    if (t[i].is("into") && t[i].spaced && i + 1 < t.size()) return !preparation_word(t[i - 1].word);
  }
  return false;
}

bool wares_only(const std::string& tidy) {
  std::string open = tidy;
  if (const auto bracket = open.find(" ("); bracket != std::string::npos && open.back() == ')')
    open.resize(bracket);
  std::size_t from = 0, parts = 0;
  for (std::size_t i = 0; i <= open.size(); ++i) {
    const bool mark = i == open.size() || open[i] == ',' || open[i] == ';' || open[i] == '/';
    if (!mark) continue;
    const std::string part = base::trimmed(open.substr(from, i - from));
    from = i + 1;
    if (part.empty()) continue;
    ++parts;
    if (!ends_with_ware(part)) return false;
  }
  return parts > 0;
}

}  // namespace kitchen
