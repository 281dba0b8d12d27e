#include "kitchen/reading/step_pieces.h"

#include <algorithm>
#include <array>

namespace kitchen {
namespace {

// How much a kind of work decides what the step is.
int rank(Work w) {
  switch (w) {
    case Work::kSetOven:
      return 20;
    case Work::kDeepFry:
      return 19;
    case Work::kBake:
      return 18;
    case Work::kGrill:
      return 17;
    case Work::kMicrowave:
      return 16;
    case Work::kSimmer:
    case Work::kBoil:
      return 15;
    case Work::kFreeze:
    case Work::kChill:
      return 14;
    case Work::kThicken:
    case Work::kFry:
    case Work::kMelt:
    case Work::kCookOn:
      return 13;
    case Work::kBringToBoil:
      return 12;
    case Work::kKettle:
      return 11;
    case Work::kStand:
      return 10;
    case Work::kDrain:
      return 9;
    case Work::kBlend:
      return 8;
    case Work::kKnead:
      return 8;
    case Work::kProbe:
      return 8;
    case Work::kRollOut:
      return 7;
    case Work::kShape:
      return 6;
    case Work::kWhisk:
      return 6;
    case Work::kCut:
    case Work::kGrate:
      return 5;
    case Work::kMix:
    case Work::kMash:
      return 4;
    case Work::kLine:
    case Work::kServe:
    case Work::kAssemble:
      return 3;
    case Work::kWeigh:
    case Work::kWash:
    case Work::kOpen:
      return 2;
    default:
      return 1;
  }
}

enum class Group { kPrepare, kMixing, kDough, kBuild, kOther };

Group group(Work w) {
  switch (w) {
    case Work::kCut:
    case Work::kGrate:
    case Work::kWash:
    case Work::kOpen:
      return Group::kPrepare;
    case Work::kMix:
    case Work::kWhisk:
    case Work::kAdd:
    case Work::kMash:
      return Group::kMixing;
    case Work::kRollOut:
    case Work::kShape:
      return Group::kDough;
    case Work::kAssemble:
    case Work::kServe:
    case Work::kLine:
    case Work::kTakeOut:
      return Group::kBuild;
    default:
      return Group::kOther;
  }
}

bool ring_work(Work w) {
  return w == Work::kFry || w == Work::kMelt || w == Work::kThicken || w == Work::kCookOn ||
         w == Work::kBringToBoil || w == Work::kBoil || w == Work::kSimmer;
}
bool busy_at_ring(Work w) {
  return w == Work::kFry || w == Work::kMelt || w == Work::kThicken || w == Work::kCookOn;
}
bool light(Work w) {
  return w == Work::kAdd || w == Work::kMix || w == Work::kAssemble || w == Work::kTakeOut ||
         w == Work::kSeason;
}

class Gatherer {
 public:
  explicit Gatherer(const std::vector<Sentence>& sentences) : sentences_(sentences) {}

  std::vector<StepPieces> run(std::vector<std::size_t>& aside) {
    for (std::size_t s = 0; s < sentences_.size(); ++s) {
      const std::vector<Clause> clauses = clauses_of(sentences_[s], s);
      if (clauses.empty()) {
        // A line of its own without an action is a remark, not a part of the step above it.
        const bool apart = out_.empty() || sentences_[out_.back().clauses.back().sentence].line !=
                                               sentences_[s].line;
        if (apart && (instructs(sentences_[s]) || works_by_itself(sentences_[s]))) {
          take(whole(s), nullptr, 1);
        } else if (apart) {
          aside.push_back(s);
        } else {
          out_.back().sentences.push_back(s);
        }
        continue;
      }
      for (std::size_t k = 0; k < clauses.size(); ++k)
        take(clauses[k], k + 1 < clauses.size() ? &clauses[k + 1] : nullptr, clauses.size());
    }
    return std::move(out_);
  }

 private:
  const std::vector<Sentence>& sentences_;
  std::vector<StepPieces> out_;

  void take(const Clause& c, const Clause* next, std::size_t clauses_in_sentence) {
    if (out_.empty() || !joins(c, next, clauses_in_sentence)) {
      out_.push_back({{c}, {}, c});
      return;
    }
    StepPieces& step = out_.back();
    step.clauses.push_back(c);
    if (rank(c.work) > rank(step.main.work)) step.main = c;
  }

  // "Build layers of sauce and pasta": an instruction by its form, whatever its verb. "This keeps
  // well" and "My gran's" are none.
  static bool instructs(const Sentence& s) {
    static constexpr std::array<std::string_view, 34> kTells = {
        "this", "it",   "i",     "we",    "my",   "our",    "your",  "you",   "the",
        "a",    "an",   "there", "these", "that", "they",   "note",  "notes", "tip",
        "tips", "nb",   "about", "enjoy", "if",   "serves", "makes", "for",   "some",
        "all",  "good", "very",  "so",    "not",  "he",     "she"};
    std::size_t words = 0;
    for (const LineToken& t : s.tokens) words += t.kind == LineToken::Kind::kWord ? 1 : 0;
    return words >= 2 && s.tokens.front().kind == LineToken::Kind::kWord &&
           std::find(kTells.begin(), kTells.end(), s.tokens.front().word) == kTells.end() &&
           s.text.back() != '!' && s.text.back() != '?';
  }

  // "They go in the fridge for 15 minutes", "The oven is lit on 180 °C": told, not asked for, but
  // somebody has to do it.
  static bool works_by_itself(const Sentence& s) {
    const auto& t = s.tokens;
    const bool place = says(t, 0, t.size(), {"fridge", "freezer", "oven", "grill", "in"});
    const bool heats = says(t, 0, t.size(), {"oven", "ovens"}) && stated_oven(t).has_value();
    return heats || (place && stated_time(t).has_value());
  }

  Clause whole(std::size_t s) const {
    Clause c;
    c.sentence = s;
    c.end = sentences_[s].tokens.size();
    c.action = &some_action();
    c.work = c.action->work;
    c.time = stated_time(sentences_[s].tokens);
    c.oven = stated_oven(sentences_[s].tokens);
    // "Oven 200, gas 6.": no verb, but what is meant is plain.
    const auto& t = sentences_[s].tokens;
    const auto here = [&](std::initializer_list<std::string_view> words) {
      return says(t, 0, t.size(), words);
    };
    const auto be = [&](std::string_view verb, Work work) {
      c.action = action_named(verb);
      c.work = work;
    };
    const bool on = here({"on"}) && t.size() <= 12;
    if (c.oven && says(t, 0, 3, {"oven", "ovens"}) && !c.time) {
      be("preheat", Work::kSetOven);
    } else if (on && says(t, 0, 2, {"oven", "ovens", "grill"}) && !c.time) {
      be("preheat", Work::kSetOven);
    } else if (here({"water"}) && here({"boil"})) {
      be("boil", Work::kBringToBoil);
    } else if (here({"fridge"})) {
      be("chill", Work::kChill);
    } else if (here({"freezer"})) {
      be("freeze", Work::kFreeze);
    } else if (here({"grill"}) && c.time) {
      be("grill", Work::kGrill);
    } else if (here({"oven"}) && c.time) {
      be("bake", Work::kBake);
    } else if (here({"rack"}) && t.size() <= 4) {
      be("cool", Work::kStand);
    } else if (here({"in"}) && c.time) {
      be("cook", Work::kCookOn);
    }
    return c;
  }

  bool new_strand(const Clause& c) const {
    const Sentence& s = sentences_[c.sentence];
    return says(s.tokens, c.begin, std::min(c.begin + 2, c.end), {"meanwhile", "while", "whilst"});
  }

  bool short_sentence(const Clause& c) const { return sentences_[c.sentence].tokens.size() <= 5; }

  static bool closed(const StepPieces& step) {
    const bool timed = std::any_of(step.clauses.begin(), step.clauses.end(),
                                   [](const Clause& c) { return c.time.has_value(); });
    return timed || waits(step.main.work);
  }

  bool joins(const Clause& c, const Clause* next, std::size_t clauses_in_sentence) const {
    const StepPieces& step = out_.back();
    const Work was = step.main.work, now = c.work, last = step.clauses.back().work;
    const bool same_sentence = step.clauses.back().sentence == c.sentence;
    // Who writes a new line begins a new step.
    const bool same_line = sentences_[step.clauses.back().sentence].line ==
                           sentences_[c.sentence].line;
    if (now == Work::kSetOven || was == Work::kSetOven || new_strand(c) || !same_line) return false;
    if (now == Work::kSeason) return same_sentence;
    if (!same_sentence) {
      if (closed(step) && now != Work::kTakeOut) return false;
      if (closed(step)) return c.action->brief == "Turn" && !waits(was) && short_sentence(c);
      // "Heat the oil in a pan. Fry the onion for 5 minutes.": one step, with the fat in it.
      const bool fat_heats = step.clauses.size() == 1 && !step.clauses.front().time &&
                             step.clauses.front().action->verb == "heat" && was == Work::kFry;
      if (fat_heats && busy_at_ring(now)) return true;
      const bool tiny = clauses_in_sentence == 1 && short_sentence(c) && !c.time;
      if (ring_work(was) && tiny && (now == Work::kMix || now == Work::kAdd)) return true;
      if (on_heat(now) || on_heat(was) || waits(now)) return false;
      return tiny && (now == Work::kMix || now == Work::kAssemble) &&
             (group(was) == Group::kMixing || group(was) == Group::kBuild) && !c.time;
    }
    // What is put in together with the next heat belongs to that.
    if ((now == Work::kAdd || now == Work::kMix) && next != nullptr && on_heat(next->work) &&
        (on_heat(was) || closed(step)))
      return !closed(step) && busy_at_ring(was) && busy_at_ring(next->work);
    if (closed(step)) return now == Work::kTakeOut && c.action->brief == "Turn" && ring_work(was);
    const bool tap = (now == Work::kWash || now == Work::kDrain || now == Work::kOpen) &&
                     (was == Work::kWash || was == Work::kDrain || was == Work::kOpen);
    if (tap) return true;
    if (on_heat(now)) {
      if (ring_work(was) && ring_work(now))
        return was == Work::kBringToBoil || busy_at_ring(now) == busy_at_ring(was);
      if (on_heat(was)) return false;
      return all_light(step) && (now != Work::kBake || last != Work::kTakeOut);
    }
    if (on_heat(was)) return now == Work::kAdd || now == Work::kMix || now == Work::kTakeOut;
    if (waits(now)) return all_light(step);
    if (was == Work::kTakeOut || now == Work::kTakeOut) return true;
    if (group(was) == group(now)) return group(was) != Group::kOther;
    if (now == Work::kAdd || was == Work::kAdd)
      return group(was) != Group::kOther || was == Work::kAdd;
    if (now == Work::kCut && (was == Work::kRollOut || was == Work::kShape)) return true;
    if (now == Work::kWhisk || was == Work::kWhisk) return group(was) == group(now);
    return now == Work::kAssemble && (group(was) == Group::kMixing || group(was) == Group::kDough);
  }

  static bool all_light(const StepPieces& step) {
    return std::all_of(step.clauses.begin(), step.clauses.end(),
                       [](const Clause& c) { return light(c.work); });
  }
};

}  // namespace

std::vector<StepPieces> gathered(const std::vector<Sentence>& sentences,
                                 std::vector<std::size_t>& aside) {
  return Gatherer(sentences).run(aside);
}

}  // namespace kitchen
