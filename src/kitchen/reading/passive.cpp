#include "kitchen/reading/passive.h"

#include <algorithm>
#include <string>

#include "base/text.h"

namespace kitchen {
namespace {

using Tokens = std::vector<LineToken>;

bool be(const LineToken& t) {
  return base::one_of(t.word, {"is", "are", "was", "were", "be", "been", "being"});
}

// Who tells what was done: "I peeled", "my partner then crushed", "it simmered".
bool teller(const LineToken& t) {
  return base::one_of(t.word, {"i", "we", "they", "he", "she", "it", "you", "partner", "pupils",
                               "teacher", "everyone"});
}

bool adverb(const LineToken& t) {
  return t.kind == LineToken::Kind::kWord &&
         ((t.word.size() > 4 && t.word.ends_with("ly")) ||
          base::one_of(t.word,
                       {"then", "now", "also", "first", "again", "well", "next", "already"}));
}

bool joint(const LineToken& t) {
  return base::one_of(t.word, {",", "and", "then", ";", "&", "before"});
}

bool determiner(const LineToken& t) {
  return base::one_of(t.word, {"the", "a", "an", "this", "these", "they", "it", "half", "all",
                               "some", "both", "everything", "each"});
}

// Where the clause behind the last verb begins: behind ", and", else at the first "and the".
std::size_t subject_from(const Tokens& t, std::size_t last_verb, std::size_t be_at) {
  std::size_t first = be_at;
  for (std::size_t i = last_verb + 1; i < be_at; ++i) {
    if (!joint(t[i])) continue;
    const bool comma_and = t[i].is(",") && i + 1 < be_at && joint(t[i + 1]);
    if (comma_and) return i;
    if (first == be_at && i + 1 < be_at && determiner(t[i + 1])) first = i;
  }
  return first;
}

// How it looks, not what is done.
bool tells_how(const Tokens& t, std::size_t from, std::size_t to) {
  for (std::size_t i = from; i < to; ++i) {
    if (base::one_of(t[i].word, {"until", "till", "once", "when", "if", "which", "that", "as"}))
      return true;
  }
  return false;
}

}  // namespace

const Action* action_of_form(std::string_view word) {
  static constexpr std::pair<std::string_view, std::string_view> kIrregular[] = {
      {"left", "leave"}, {"made", "make"},  {"beaten", "beat"},   {"broken", "break"},
      {"kept", "keep"},  {"taken", "take"}, {"brought", "bring"}, {"frozen", "freeze"},
      {"torn", "tear"},  {"laid", "lay"},   {"shaken", "shake"},  {"cut", "cut"},
      {"put", "put"},    {"set", "set"},    {"spread", "spread"}, {"split", "split"},
      {"fried", "fry"},  {"let", "let"}};
  for (const auto& [form, plain] : kIrregular) {
    if (word == form) return action_named(plain);
  }
  const bool past = word.ends_with("ed") && word.size() > 4;
  const bool going_on = word.ends_with("ing") && word.size() > 5;
  if (!past && !going_on) return nullptr;
  const std::string stem(word.substr(0, word.size() - (past ? 2 : 3)));
  if (const Action* found = action_named(stem)) return found;
  if (const Action* found = action_named(stem + "e")) return found;
  const std::size_t n = stem.size();
  if (n > 2 && stem[n - 1] == stem[n - 2]) return action_named(stem.substr(0, n - 1));
  if (past && stem.ends_with("i")) return action_named(stem.substr(0, n - 1) + "y");
  return nullptr;
}

std::vector<PassiveAction> passive_actions(const Tokens& t) {
  std::vector<PassiveAction> out;
  std::size_t clause = 0;  // where the clause that is read begins
  for (std::size_t i = 1; i < t.size(); ++i) {
    if (t[i].kind != LineToken::Kind::kWord || t[i].word.ends_with("ing")) continue;
    const Action* action = action_of_form(t[i].word);
    if (action == nullptr) continue;
    std::size_t before = i;
    while (before > 0 && adverb(t[before - 1])) --before;
    if (before == 0) continue;
    const std::size_t last = out.empty() ? 0 : out.back().verb;
    // "was peeled and chopped": the second goes with the first.
    const bool goes_with = !out.empty() && joint(t[before - 1]) && before - 1 > out.back().verb &&
                           !tells_how(t, out.back().verb, i);
    if (goes_with) {
      out.push_back({action, i, before - 1});
      continue;
    }
    if (!be(t[before - 1]) && !(teller(t[before - 1]))) continue;
    clause = out.empty() ? 0 : subject_from(t, last, before - 1);
    if (tells_how(t, clause, before)) continue;
    out.push_back({action, i, clause});
  }
  return out;
}

}  // namespace kitchen
