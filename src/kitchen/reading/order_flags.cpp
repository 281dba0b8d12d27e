// What is said of a step in itself, and of an earlier one seen from a later one.
#include <algorithm>
#include <set>

#include "base/text.h"
#include "kitchen/reading/made_words.h"
#include "kitchen/reading/order_sign_numbers.h"
#include "kitchen/reading/order_signs.h"

namespace kitchen {
namespace {

using namespace order;
using Words = std::vector<std::string>;

bool joins(const std::string& word) {
  return base::one_of(word,
                      {"and", "in", "for", "with", "on", "until", "into", "to", "over", "from"});
}

}  // namespace

// Who is the first to use each step's food again, and to name what it made.
void OrderSigns::look_ahead() {
  for (int i = 0; i < count(); ++i) {
    next_user_.push_back(-1);
    next_naming_.push_back(-1);
    const Words made = things_made(phrases_.said(i));
    for (int k = i + 1; k < std::min(count(), i + kFarthest + 1); ++k) {
      const auto& uses = step(k).uses;
      const bool uses_it = std::any_of(step(i).uses.begin(), step(i).uses.end(), [&](int u) {
        return !phrases_.staple(u) && std::find(uses.begin(), uses.end(), u) != uses.end();
      });
      if (uses_it && next_user_.back() < 0) next_user_.back() = k;
      const Words& said = phrases_.said(k);
      const bool names_it = std::any_of(made.begin(), made.end(), [&](const std::string& m) {
        return std::find(said.begin(), said.end(), m) != said.end();
      });
      if (names_it && next_naming_.back() < 0) next_naming_.back() = k;
    }
    for (const std::string& word :
         std::set<std::string>(phrases_.said(i).begin(), phrases_.said(i).end()))
      ++steps_saying_[word];
  }
}

// A word that few steps say and that is neither food nor ware nor what is done: "kofta", "salad".
bool OrderSigns::shares_word(int earlier, int later) const {
  constexpr int kFew = 4;
  const Words &a = phrases_.said(earlier), &b = phrases_.said(later);
  return std::any_of(a.begin(), a.end(), [&](const std::string& word) {
    return word.size() > 3 && std::find(b.begin(), b.end(), word) != b.end() &&
           steps_saying_.at(word) <= kFew && can_be_made(word) && action_named(word) == nullptr &&
           !words_.mentions(word) && !phrases_.is_ware(later, word) &&
           !base::one_of(
               word,
               {"with",    "until", "into",   "over",  "then",   "from",   "them",      "each",
                "minute",  "about", "more",   "large", "small",  "your",   "this",      "that",
                "when",    "once",  "gently", "well",  "both",   "make",   "high",      "medium",
                "have",    "just",  "all",    "very",  "little", "golden", "soft",      "brown",
                "smooth",  "using", "degree", "cover", "again",  "while",  "meanwhile", "sure",
                "through", "down",  "back",   "side",  "turn",   "they"});
  });
}

// "Heat the grill to high": nothing is under it yet.
bool OrderSigns::sets_heat(int i) const {
  const StepDraft& s = step(i);
  if (!s.heat || !s.uses.empty()) return false;
  const Where where = s.heat->value.where;
  return (where == Where::kOven || where == Where::kGrill) &&
         phrases_.begins(i, {"heat", "preheat", "turn", "set", "light"}) &&
         phrases_.says(i, {"oven", "grill", "broiler"});
}

bool OrderSigns::set_up(int i) const {
  return step(i).preheat || sets_heat(i) || phrases_.lines_tin(i) || phrases_.cleans(i) ||
         phrases_.boils_water(i);
}

bool OrderSigns::prepare(int i) const {
  return prepares(work(i)) && !step(i).heat && !into_a_pan(step(i));
}

int OrderSigns::kind(int i) const {
  const StepDraft& s = step(i);
  if (s.preheat || sets_heat(i)) return kPreheat;
  if (phrases_.lines_tin(i)) return kTinLined;
  if (phrases_.cleans(i)) return kCleaned;
  if (phrases_.boils_water(i) || work(i) == Work::kKettle) return kWater;
  if (prepare(i)) return kPrepares;
  if (s.heat) {
    const Where where = s.heat->value.where;
    if (where == Where::kRing) return kOnRing;
    if (where == Where::kFridge || where == Where::kFreezer) return kStands;
    return kInOven;
  }
  switch (work(i)) {
    case Work::kMix:
    case Work::kWhisk:
    case Work::kKnead:
    case Work::kMash:
    case Work::kBlend:
    case Work::kSeason:
      return kMixes;
    case Work::kRollOut:
    case Work::kShape:
    case Work::kAssemble:
    case Work::kAdd:
      return kPuts;
    case Work::kChill:
    case Work::kFreeze:
    case Work::kStand:
      return kStands;
    case Work::kDrain:
    case Work::kTakeOut:
      return kDrains;
    case Work::kServe:
      return kServes;
    default:
      return on_heat(work(i)) ? kOnRing : kOther;
  }
}

// Only ingredients nobody has touched yet; salt, oil and water are on every bench.
bool OrderSigns::fresh_only(const StepDraft& s) const {
  return !s.uses.empty() && std::none_of(s.uses.begin(), s.uses.end(), [&](int u) {
    return last_of_.count(u) != 0 && !phrases_.staple(u);
  });
}

// Pastry is made as a dough and rolled out as pastry.
std::map<std::string, int>::const_iterator OrderSigns::made_of(const std::string& word) const {
  const auto made = made_.find(word);
  if (made != made_.end() || words_.mentions(word)) return made;
  return word == "pastry" ? made_.find("dough") : word == "dough" ? made_.find("pastry") : made;
}

// "Make the dressing:", "Next your white sauce", "Start with the raita", "Now for the filling".
bool OrderSigns::makes_something(int i) const {
  const Words& w = phrases_.said(i);
  constexpr std::size_t kLeast = 5;  // "Now for the filling ...": two words behind "the"
  if (w.size() < kLeast || !base::one_of(w[0], {"make", "next", "now", "start", "begin"}))
    return false;
  std::size_t at = 1;
  if (base::one_of(w[at], {"make", "for", "with"})) ++at;
  if (!base::one_of(w[at], {"the", "your"})) return false;
  const bool known = words_.mentions(w[at + 1]) || words_.mentions(w[at + 2]);
  return !known && w[at + 1] != "rest" && can_be_made(w[at + 1]) && made_.count(w[at + 1]) == 0;
}

// "the fishcakes", "the mixture": something made before.
bool OrderSigns::names_product(int i) const {
  const Words& words = phrases_.handled(i);
  for (std::size_t k = 0; k + 1 < words.size(); ++k) {
    if (!base::one_of(words[k], {"the", "each", "your"})) continue;
    if (k > 0 && base::one_of(words[k - 1], {"make", "for"})) continue;
    for (std::size_t m = k + 1; m < std::min(k + 3, words.size()); ++m) {
      const std::string& noun = words[m];
      const bool known = made_of(noun) != made_.end() ||
                         !words_.named_in({noun}, step(i).group, {}).empty() ||
                         words_.mentions(noun) || phrases_.is_ware(i, noun) ||
                         base::one_of(
                             noun, {"vegetable", "veg", "fruit", "spice", "herb", "cheese", "meat",
                                    "fish", "pasta", "ingredient", "juice", "zest"});
      if (known) break;
      if (m == k + 2 || m + 1 == words.size() || joins(words[m + 1])) return can_be_made(noun);
    }
  }
  return false;
}

std::vector<int> OrderSigns::flags(int i) const {
  const StepDraft& s = step(i);
  std::vector<int> out;
  const auto flag = [&](Flag f, bool holds) {
    if (holds) out.push_back(f);
  };
  flag(kMeanwhile,
       phrases_.begins(i, {"meanwhile", "while", "whilst"}) || phrases_.says(i, {"meanwhile"}));
  flag(kSeparate, phrases_.says(i, {"separate", "another", "second"}) ||
                      phrases_.says_pair(i, "clean", "pan"));
  flag(kNewHeading, phrases_.new_heading(i));
  flag(kOpensTins, phrases_.opens_tins(i));
  flag(kKettleFlag, work(i) == Work::kKettle || phrases_.says(i, {"kettle"}));
  flag(kPanOfWater, s.uses.empty() && phrases_.says_pair(i, "of", "water") && s.heat);
  flag(kNamesProduct, names_product(i));
  flag(kOwnFromStart, phrases_.own_from_the_start(i));
  flag(kReadiesRaw, phrases_.readies_raw(i));
  flag(kInAVessel, phrases_.in_a_vessel(i));
  flag(kOnItsOwn, phrases_.mixes_on_its_own(i));
  flag(kMakes, phrases_.makes(i));
  flag(kMakesSomething, makes_something(i));
  // "Stir-fry the carrot" stirs nothing into anything.
  flag(kAdds, !phrases_.says_pair(i, "stir", "fry") &&
                  phrases_.begins(i, {"add", "stir", "pour", "tip", "fold", "top", "sprinkle",
                                      "spread", "spoon", "return"}));
  const bool fresh = fresh_only(s);
  flag(kFreshOnly, fresh);
  flag(kNoFood, s.uses.empty());
  flag(kOldFood, !s.uses.empty() && !fresh);
  flag(kPreparesFlag, prepare(i));
  flag(kIt, phrases_.says(i, {"it", "them", "each", "this", "these"}));
  flag(kLast, i + 1 == count());
  flag(kWhenDone, phrases_.begins(i, {"when", "once", "after"}));
  flag(kNext, phrases_.begins(i, {"next", "then", "finally", "now"}));
  flag(kTogether, phrases_.says(i, {"together", "everything", "combine", "all", "assemble"}));
  flag(kFewWords, phrases_.said(i).size() < 7);
  flag(kSetsUp, set_up(i) && !phrases_.cleans(i));
  flag(kOnHeat, s.heat.has_value() && !s.preheat);
  return out;
}

std::vector<int> OrderSigns::earlier_flags(int earlier, int later) const {
  const StepDraft& s = step(earlier);
  std::vector<int> out;
  const auto flag = [&](Earlier f, bool holds) {
    if (holds) out.push_back(f);
  };
  flag(kItPrepares, prepare(earlier));
  flag(kItsOnHeat, s.heat.has_value() && !s.preheat);
  flag(kItIsLeft, s.attention.value == Attention::kLeave && !s.preheat);
  flag(kItsNoFood, s.uses.empty());
  flag(kItsMuchFood, s.uses.size() > 2);
  flag(kOtherHeading, s.group != step(later).group);
  const int last = before(later);
  const auto& f = step(std::max(last, 0)).follows;
  flag(kParentOfBefore, last >= 0 && std::find(f.begin(), f.end(), earlier) != f.end());
  flag(kFarAway, later - earlier > 4);
  flag(kOwnLine,
       s.line_number != 0 && s.line_number == step(later).line_number && earlier == later - 1);
  const int user = next_user_[static_cast<std::size_t>(earlier)];
  flag(kFirstUser, user == later);
  flag(kLaterUser, user > later);
  flag(kNoUser, user < 0 && !s.uses.empty());
  const int naming = next_naming_[static_cast<std::size_t>(earlier)];
  flag(kFirstNaming, naming == later);
  flag(kLaterNaming, naming > later);
  flag(kSharesWord, shares_word(earlier, later));
  const auto& uses = step(later).uses;
  const bool used = std::any_of(s.uses.begin(), s.uses.end(), [&](int u) {
    return std::find(uses.begin(), uses.end(), u) != uses.end();
  });
  flag(kFoodNotUsed, !s.uses.empty() && !uses.empty() && !used);
  flag(kFoodAllFromOthers, !uses.empty() && std::all_of(uses.begin(), uses.end(), [&](int u) {
         const auto last = last_of_.find(u);
         return phrases_.staple(u) || (last != last_of_.end() && last->second != earlier);
       }));
  flag(kItMakes, !things_made(phrases_.said(earlier)).empty() || phrases_.makes(earlier));
  return out;
}

}  // namespace kitchen
