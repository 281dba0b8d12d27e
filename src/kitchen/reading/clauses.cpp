#include "kitchen/reading/clauses.h"

#include <algorithm>

#include "base/folding.h"
#include "base/text.h"
#include "kitchen/reading/passive.h"

namespace kitchen {
namespace {

using Tokens = std::vector<LineToken>;

bool digit(char c) { return c >= '0' && c <= '9'; }

// "1.", "2)", "Step 3:", "(4)", "-", "*" before a step.
std::string without_number(std::string text) {
  std::size_t at = 0;
  const auto skip = [&](std::string_view marks) {
    while (at < text.size() && marks.find(text[at]) != std::string_view::npos) ++at;
  };
  skip(" -*(#");
  const std::string low = base::lower(text.substr(at, 5));
  const bool step = low.starts_with("step ");
  if (step) at += 5;
  const std::size_t first = at;
  while (at < text.size() && digit(text[at])) ++at;
  const bool number = at > first && at - first <= 3;
  const bool mark = at < text.size() &&
                    std::string_view(".):-").find(text[at]) != std::string_view::npos;
  // "2. Fry" and "2 Fry" are numbered; "2 onions" and "1.5" are not.
  const bool bare = number && at + 1 < text.size() && text[at] == ' ' && text[at + 1] >= 'A' &&
                    text[at + 1] <= 'Z';
  const bool decimal = mark && at + 1 < text.size() && digit(text[at + 1]);
  if (number && !decimal && (mark || bare || step)) {
    skip(" .):-");
  } else {
    at = step ? 5 : 0;
    skip(" -*#");
  }
  return text.substr(at);
}

std::string word_from(const std::string& text, std::size_t at) {
  std::string word;
  while (at < text.size() && text[at] != ' ' && text[at] != ',') word += text[at++];
  return base::folded(word);
}

// Whether a sentence ends at the mark: a new one begins with a capital, a list number or a verb.
bool ends_here(const std::string& text, std::size_t mark) {
  std::size_t next = mark + 1;
  while (next < text.size() && (text[next] == ')' || text[next] == '"' || text[next] == '\''))
    ++next;
  if (next >= text.size()) return true;
  if (text[mark] == ';') return action_named(word_from(text, next + 1)) != nullptr;
  if (text[next] != ' ')
    return text[mark] == '.' && text[next] >= 'A' && text[next] <= 'Z' && mark > 1 &&
           !digit(text[mark - 1]);
  const char first = next + 1 < text.size() ? text[next + 1] : ' ';
  if (first >= 'A' && first <= 'Z') return true;
  if (digit(first)) {
    std::size_t at = next + 1;
    while (at < text.size() && digit(text[at])) ++at;
    return at < text.size() && (text[at] == '.' || text[at] == ')') &&
           !(at + 1 < text.size() && digit(text[at + 1]));
  }
  const std::string word = word_from(text, next + 1);
  return word == "then" || word == "meanwhile" || action_named(word) != nullptr;
}

bool adverb(const LineToken& t) {
  return t.kind == LineToken::Kind::kWord &&
         ((t.word.size() > 4 && t.word.ends_with("ly")) ||
          base::one_of(t.word, {"next",        "now",    "also",      "just",    "once",   "again",
                                "immediately", "please", "meanwhile", "first",   "while",  "whilst",
                                "afterwards",  "so",     "i",         "we",      "you",    "should",
                                "must",        "will",   "can",       "finally", "lastly", "they",
                                "he",          "she",    "meantime",  "pupils"}));
}

// "turn the heat down", "reduce the heat", "set aside": how, not what.
bool modifies(const Tokens& t, std::size_t i) {
  const auto near = [&](std::initializer_list<std::string_view> words) {
    return says(t, i + 1, std::min(i + 6, t.size()), words);
  };
  const std::string& w = t[i].word;
  if (w == "set") return near({"aside"}) || near({"timer"});
  if (w == "bring") return false;
  if (base::one_of(w, {"turn", "reduce", "lower", "increase", "raise", "take", "put"}))
    return near({"heat", "temperature"}) && !near({"off", "from"}) && !near({"oven"});
  if (w == "cover") return near({"lid"}) || i + 1 >= t.size();
  if (w == "let" || w == "allow") return false;
  return false;
}

// What may stand between two clauses.
bool joint(const LineToken& t) {
  return base::one_of(t.word, {",", "and", "then", "&", "+", ";", ":", "-", "(", ")", "/", "or"});
}

Work seen_in_words(const Tokens& t, const Clause& c) {
  const auto here = [&](std::initializer_list<std::string_view> words) {
    return says(t, c.begin, c.end, words);
  };
  const Work w = c.action->work;
  const bool moving = w == Work::kAdd || w == Work::kAssemble || w == Work::kStand ||
                      w == Work::kCookOn || w == Work::kFry || w == Work::kMelt;
  if (c.action->verb == "bring" && here({"together"})) return Work::kMix;
  if (c.action->verb == "bring" && here({"simmer"}) && !here({"boil"})) return Work::kBringToBoil;
  if (w == Work::kStand) {
    if (here({"simmer", "bubble"})) return Work::kSimmer;
    if (here({"cook"}) && !here({"cool"})) return Work::kCookOn;
  }
  if (!moving) return w;
  if (here({"microwave"})) return Work::kMicrowave;
  if (here({"fridge", "refrigerator"})) return Work::kChill;
  if (here({"freezer"}) && !here({"bag", "bags"})) return Work::kFreeze;
  // A Dutch oven is a pot.
  if (here({"oven"}) && !here({"gloves", "glove", "dutch"})) return Work::kBake;
  if (here({"grill", "broiler"})) return Work::kGrill;
  if (w == Work::kFry && c.action->verb == "toast" && here({"bread", "buns", "muffins"}))
    return Work::kGrill;
  if (w == Work::kFry && here({"deep", "fryer"})) return Work::kDeepFry;
  if (w == Work::kCookOn && here({"pasta", "spaghetti", "rice", "noodles", "potatoes", "macaroni",
                                  "penne", "boiling", "lentils", "couscous", "packet"}))
    return Work::kBoil;
  return w;
}

// "The oven was turned on": the subject stands before the verb.
bool oven_is_set(const Tokens& t, const PassiveAction& passive) {
  return base::one_of(passive.action->verb, {"heat", "turn", "set", "warm", "light"}) &&
         says(t, passive.begin, passive.verb, {"oven"});
}

Clause made(const Sentence& s, std::size_t index, std::size_t begin, std::size_t end,
            const Action* action) {
  Clause c;
  c.sentence = index;
  c.begin = begin;
  c.end = end;
  c.action = action;
  const Tokens part(s.tokens.begin() + static_cast<std::ptrdiff_t>(begin),
                    s.tokens.begin() + static_cast<std::ptrdiff_t>(end));
  c.time = stated_time(part);
  c.oven = stated_oven(part);
  c.work = seen_in_words(s.tokens, c);
  return c;
}

}  // namespace

bool says(const Tokens& t, std::size_t begin, std::size_t end,
          std::initializer_list<std::string_view> words) {
  for (std::size_t i = begin; i < std::min(end, t.size()); ++i) {
    if (base::one_of(t[i].word, words)) return true;
  }
  return false;
}

std::vector<Sentence> sentences_of(const std::vector<MethodLine>& lines) {
  std::vector<Sentence> out;
  for (std::size_t index = 0; index < lines.size(); ++index) {
    const MethodLine& line = lines[index];
    const std::string text = tidied_line(line.text);
    std::size_t from = 0;
    const auto close = [&](std::size_t end) {
      std::string part = without_number(base::trimmed(text.substr(from, end - from)));
      from = end;
      if (base::words_of(base::folded(part)).empty()) return;
      out.push_back({part, line_tokens(part), index, line.line_number, line.group});
    };
    std::size_t start = 0;  // a list number at the beginning ends no sentence
    while (start < text.size() && (digit(text[start]) || text[start] == '.' || text[start] == ')'))
      ++start;
    for (std::size_t i = start; i < text.size(); ++i) {
      if (std::string_view(".!?;").find(text[i]) == std::string_view::npos) continue;
      if (ends_here(text, i)) close(i + 1);
    }
    if (from < text.size()) close(text.size());
  }
  return out;
}

std::vector<Clause> clauses_of(const Sentence& s, std::size_t index) {
  const Tokens& t = s.tokens;
  std::vector<std::size_t> starts;
  std::vector<const Action*> actions;
  // "While the pasta cooks, chop the onion": what is done stands behind the comma.
  std::size_t from = 0;
  if (!t.empty() &&
      base::one_of(t[0].word, {"while", "when", "once", "as", "after", "if", "whilst", "until",
                               "using", "in", "with", "before", "on", "to"})) {
    for (std::size_t i = 0; i < t.size(); ++i) {
      if (t[i].is(",")) {
        from = i + 1;
        break;
      }
    }
  }
  for (std::size_t i = from; i < t.size(); ++i) {
    const Action* action = action_at(t, i);
    if (action == nullptr || modifies(t, i)) continue;
    bool begins = i == from;
    std::size_t before = i;
    while (before > from && adverb(t[before - 1])) --before;
    begins = begins || before == from || joint(t[before - 1]);
    // "until bubbling and brown on top": how it looks, not what is done.
    const std::size_t clause = starts.empty() ? 0 : starts.back();
    const bool looks = says(t, clause, i, {"until", "till"}) &&
                       base::one_of(t[i].word,
                                    {"brown", "cool", "warm", "set", "smooth", "level", "toast"});
    if (!begins || looks) continue;
    const std::size_t start = starts.empty() ? 0 : before;
    starts.push_back(start);
    actions.push_back(action);
  }
  // "The onion was peeled and chopped": told as what was done. "I put in the garlic and stirred it"
  // has one verb that looks like an instruction.
  const auto told = passive_actions(t);
  if (starts.empty() || (told.size() > starts.size())) {
    starts.clear();
    actions.clear();
    for (const PassiveAction& each : told) {
      starts.push_back(starts.empty() ? 0 : each.begin);
      actions.push_back(oven_is_set(t, each) ? action_named("preheat") : each.action);
    }
  }
  // No verb where one is looked for: the first one anywhere ("From here on the pupils stir").
  if (starts.empty()) {
    for (std::size_t i = 0; i < t.size() && starts.empty(); ++i) {
      const Action* action = action_at(t, i);
      if (action == nullptr || modifies(t, i)) continue;
      starts.push_back(0);
      actions.push_back(action);
    }
  }
  std::vector<Clause> out;
  for (std::size_t k = 0; k < starts.size(); ++k) {
    const std::size_t end = k + 1 < starts.size() ? starts[k + 1] : t.size();
    out.push_back(made(s, index, starts[k], end, actions[k]));
  }
  return out;
}

}  // namespace kitchen
