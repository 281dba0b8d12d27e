// How long a step takes a pupil: as the text states it, else by the table of task times.
#include <cmath>

#include "kitchen/reading/step_view.h"

namespace kitchen {
namespace {

std::string time_text(const StepView& v, const Clause& c) {
  const Sentence& s = v.sentences[c.sentence];
  return words_between(s.text, s.tokens, c.begin + c.time->begin, c.begin + c.time->end);
}

// "in two batches": each takes the time that is said.
int batches(const StepView& v) {
  static constexpr std::pair<std::string_view, int> kNumbers[] = {
      {"two", 2}, {"2", 2}, {"three", 3}, {"3", 3}, {"four", 4}, {"4", 4}, {"five", 5}, {"5", 5}};
  for (std::size_t i = 0; i + 1 < v.raw.size(); ++i) {
    if (v.raw[i + 1] != "batches") continue;
    for (const auto& [word, many] : kNumbers) {
      if (v.raw[i] == word) return many;
    }
  }
  return 1;
}

std::optional<StatedTime> time_stated(const StepView& v, std::string& from) {
  std::optional<StatedTime> sum;
  for (const Clause& c : v.pieces.clauses) {
    if (!c.time) continue;
    if (!sum) {
      sum = c.time;
    } else {
      sum->least += c.time->least;
      sum->most += c.time->most;
    }
    from += (from.empty() ? "" : "; ") + time_text(v, c);
  }
  // A sentence without a verb may still say how long: "About 20 minutes should do."
  for (const std::size_t s : v.pieces.sentences) {
    if (sum) break;
    sum = stated_time(v.sentences[s].tokens);
    if (sum) from = v.sentences[s].text;
  }
  if (sum) {
    sum->least *= batches(v);
    sum->most *= batches(v);
  }
  return sum;
}

bool names_nothing(const StepView& v, const std::string& group, const Clause& c) {
  const auto words = singular_words(v.tokens(c), c.begin, c.end);
  return v.ingredients.named_in(words, group, {}).empty();
}

double clause_minutes(const StepView& v, const std::string& group, const Clause& c) {
  const std::vector<std::string> words = singular_words(v.tokens(c), c.begin, c.end);
  std::string verb(c.action->verb);
  if (c.work == Work::kRollOut) verb = "rollout";
  if (c.work == Work::kSetOven) verb = "preheat";
  if (c.work != c.action->work) {
    verb = c.work == Work::kBake        ? "bake"
           : c.work == Work::kChill     ? "chill"
           : c.work == Work::kFreeze    ? "freeze"
           : c.work == Work::kGrill     ? "grill"
           : c.work == Work::kSimmer    ? "simmer"
           : c.work == Work::kBoil      ? "boil"
           : c.work == Work::kMicrowave ? "microwave"
                                        : verb;
  }
  const TaskTime* row = v.times.find(verb, words);
  if (row == nullptr) row = v.times.find(verb, v.words);
  // Leaving and waiting without a time: nobody knows; ten minutes are asked about.
  if (row == nullptr) return waits(c.work) ? 10 : 2;
  double count = 1;
  if (row->each) {
    const auto named = v.ingredients.named_in(words, group, {});
    if (c.work == Work::kWeigh) count = std::max<double>(1, static_cast<double>(named.size()));
    for (const int i : named) {
      const Quantity& q = v.draft.ingredients[static_cast<std::size_t>(i)].quantity.value;
      if (q.unit == Unit::kPiece) count = std::max(count, q.middle().value());
    }
    count = std::min(count, 12.0);
  }
  return row->novice_minutes * count;
}

double estimated_minutes(const StepView& v, const std::string& group) {
  // Putting in and seasoning go along with the rest; what cooks, cooks at the same time.
  double estimate = 0, longest = 0;
  for (const Clause& c : v.pieces.clauses) {
    const double minutes = clause_minutes(v, group, c);
    const bool along = c.work == Work::kAdd || c.work == Work::kSeason ||
                       (c.work == Work::kTakeOut && v.work != Work::kTakeOut);
    // "Peel and dice the onion": the table's time for the second holds the first.
    const bool begins_cut = c.work == Work::kCut && &c != &v.pieces.clauses.back() &&
                            (&c + 1)->work == Work::kCut && names_nothing(v, group, c);
    if (begins_cut) continue;
    const bool mixes = c.work == Work::kMix || c.work == Work::kAssemble;
    if (on_heat(v.work) || waits(v.work) || along)
      longest = std::max(longest, along && v.pieces.clauses.size() > 1 ? 0.5 : minutes);
    else if (mixes)
      longest = std::max(longest, minutes);
    else
      estimate += minutes;
  }
  return estimate + longest;
}

}  // namespace

void find_minutes(const StepView& v, StepDraft& step) {
  std::string from;
  const auto stated = time_stated(v, from);
  if (stated && v.work != Work::kSetOven) {
    step.least = {stated->least, 1, from};
    step.most = {stated->most, 1, from};
    return;
  }
  // An oven heats by itself; setting the knob is nothing.
  // "Cut the biggest piece in half: no pink" is a look.
  constexpr double kOvenHeats = 10, kLook = 2;
  const bool looks = v.work == Work::kProbe && v.pieces.main.work != Work::kProbe;
  const double estimate = v.work == Work::kSetOven ? kOvenHeats
                          : looks                  ? kLook
                                                   : estimated_minutes(v, step.group);
  const double rounded = std::max(0.5, std::round(estimate * 2) / 2);
  const Seconds length(static_cast<std::int64_t>(rounded * 60));
  step.least = step.most = {length, 0.4, ""};
}

}  // namespace kitchen
