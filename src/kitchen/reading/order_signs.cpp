#include "kitchen/reading/order_signs.h"

#include <algorithm>
#include <array>
#include <tuple>

#include "base/folding.h"
#include "base/text.h"
#include "kitchen/reading/made_words.h"
#include "kitchen/reading/ware_words.h"

namespace kitchen {
namespace {

using Words = std::vector<std::string>;
using Names = std::string_view;

// Where the earlier step stands to the later one.
enum Relation { kBeforeInHand, kBefore, kInHand, kOpen, kTaken, kAnywhere, kRelations };
constexpr std::array<Names, kRelations> kRelationNames = {
    "just before, in hand",    "just before",     "in hand",
    "nobody waits for it yet", "taken up before", "anywhere"};

// What the earlier step holds that the later one speaks of.
enum Holding { kFood, kNamed, kMade, kMixture, kStaple, kOtherHolds, kNobodyHolds, kHoldings };
constexpr std::array<Names, kHoldings> kHoldingNames = {
    "had its food",      "had food it names",   "made what it names", "has the mixture it names",
    "had its oil, salt", "others had its food", "nobody had its food"};

enum Kind {
  kPreheat,
  kTinLined,
  kCleaned,
  kWater,
  kPrepares,
  kMixes,
  kPuts,
  kOnRing,
  kInOven,
  kStands,
  kDrains,
  kServes,
  kOther,
  kKinds
};
constexpr std::array<Names, kKinds> kKindNames = {
    "oven set",     "tin lined",  "cleaned",       "water boiled", "prepared",
    "mixed",        "put, added", "on the ring",   "in the oven",  "stands, chills",
    "drained, out", "served",     "something else"};

enum Flag {
  kMeanwhile,
  kSeparate,
  kNewHeading,
  kOpensTins,
  kKettleFlag,
  kPanOfWater,
  kNamesProduct,
  kOwnFromStart,
  kReadiesRaw,
  kInAVessel,
  kOnItsOwn,
  kMakes,
  kMakesSomething,
  kAdds,
  kFreshOnly,
  kNoFood,
  kOldFood,
  kPreparesFlag,
  kIt,
  kLast,
  kWhenDone,
  kNext,
  kTogether,
  kFewWords,
  kOnHeat,
  kSetsUp,
  kFlags
};
constexpr std::array<Names, kFlags> kFlagNames = {"meanwhile",
                                                  "says another",
                                                  "new heading",
                                                  "opens tins",
                                                  "kettle",
                                                  "pan of water",
                                                  "names what is made",
                                                  "own from the start",
                                                  "readies raw food",
                                                  "into a vessel",
                                                  "mixes on its own",
                                                  "makes",
                                                  "makes a thing",
                                                  "adds",
                                                  "fresh food only",
                                                  "no food",
                                                  "food touched before",
                                                  "prepares",
                                                  "says it",
                                                  "last step",
                                                  "when done",
                                                  "next",
                                                  "together",
                                                  "few words",
                                                  "on heat",
                                                  "sets up"};

enum Earlier {
  kItPrepares,
  kItsOnHeat,
  kItIsLeft,
  kItsNoFood,
  kItsMuchFood,
  kOtherHeading,
  kParentOfBefore,
  kFarAway,
  kOwnLine,
  kItMakes,
  kFirstUser,
  kLaterUser,
  kNoUser,
  kFirstNaming,
  kLaterNaming,
  kSharesWord,
  kFoodNotUsed,
  kFoodAllFromOthers,
  kEarlierFlags
};
constexpr std::array<Names, kEarlierFlags> kEarlierNames = {"it prepares",
                                                            "it is on heat",
                                                            "it is left alone",
                                                            "it has no food",
                                                            "it has much food",
                                                            "other heading",
                                                            "the last waits for it",
                                                            "far before",
                                                            "in one line",
                                                            "it makes something",
                                                            "first to use its food",
                                                            "its food is used later",
                                                            "nobody uses its food",
                                                            "first to name what it made",
                                                            "what it made is named later",
                                                            "shares a word",
                                                            "its food is not used",
                                                            "all food from others"};

enum Special {
  kAlways,
  kOvenForOven,
  kTinForTin,
  kTinForOven,
  kCleanThenNext,
  kThenClean,
  kKettleForWater,
  kPanForWater,
  kSamePan,
  kSameBowl,
  kSameBaking,
  kOtherPan,
  kOtherBowl,
  kLastInPan,
  kLastInBowl,
  kLastInTin,
  kOnlyOpen,
  kOpenOfTwo,
  kOpenAtLast,
  kOwnLineBefore,
  kSpecials
};
constexpr std::array<Names, kSpecials> kSpecialNames = {"always",
                                                        "oven set, baked",
                                                        "tin lined, tin named",
                                                        "tin lined, baked",
                                                        "cleaned, touched",
                                                        "touched, cleaned",
                                                        "kettle, hot water",
                                                        "pan of water, boiled",
                                                        "same pan",
                                                        "same bowl",
                                                        "same tin",
                                                        "another pan",
                                                        "another bowl",
                                                        "last in this pan",
                                                        "last in this bowl",
                                                        "last in this tin",
                                                        "only one open",
                                                        "open, one of two",
                                                        "open, at the last",
                                                        "just before, one line"};

// Pairs of kinds are told apart by three relations only: just before, in hand, any other.
constexpr int kPairRelations = 5;
constexpr std::array<Names, kPairRelations> kPairRelationNames = {"just before", "in hand", "open",
                                                                  "taken up", "anywhere"};

constexpr int kStandings = kRelations;
constexpr int kFromHolding = kSpecials;
constexpr int kFromFlags = kFromHolding + kStandings * kHoldings;
constexpr int kFromEarlier = kFromFlags + kStandings * kFlags;
constexpr int kFromPairs = kFromEarlier + kStandings * kEarlierFlags;
// What the earlier step holds, together with what either step is: three places are told apart.
constexpr int kPlaces = 3;
constexpr std::array<Names, kPlaces> kPlaceNames = {"just before", "in hand", "elsewhere"};
constexpr int kFromMine = kFromPairs + kPairRelations * kKinds * kKinds;
constexpr int kFromIts = kFromMine + kPlaces * kHoldings * kKinds;
constexpr int kFromFlagged = kFromIts + kPlaces * kHoldings * kKinds;
constexpr int kSigns = kFromFlagged + kPlaces * kHoldings * kFlags;

bool joins(const std::string& word) {
  return base::one_of(word,
                      {"and", "in", "for", "with", "on", "until", "into", "to", "over", "from"});
}

// The ware of a kind that the step names or stands in.
std::string ware_of(const StepDraft& step, WareKind kind, bool named) {
  for (const auto& e : step.equipment) {
    if (ware_kind(e.value) == kind && (!named || e.confidence == 1)) return e.value;
  }
  return "";
}

}  // namespace

int sign_count() { return kSigns; }
int plain_sign_count() { return kFromFlags; }

std::string sign_name(int sign) {
  const auto name = [](std::string_view a, std::string_view b) { return base::say(a, " | ", b); };
  const auto at = [](const auto& names, int i) { return names[static_cast<std::size_t>(i)]; };
  if (sign < kFromHolding) return std::string(at(kSpecialNames, sign));
  if (sign < kFromFlags) {
    const int k = sign - kFromHolding;
    return name(at(kRelationNames, k % kStandings), at(kHoldingNames, k / kStandings));
  }
  if (sign < kFromEarlier) {
    const int k = sign - kFromFlags;
    return name(at(kRelationNames, k % kStandings), at(kFlagNames, k / kStandings));
  }
  if (sign < kFromPairs) {
    const int k = sign - kFromEarlier;
    return name(at(kRelationNames, k % kStandings), at(kEarlierNames, k / kStandings));
  }
  if (sign >= kFromMine) {
    const bool its = sign >= kFromIts && sign < kFromFlagged, flag = sign >= kFromFlagged;
    const int k = sign - (flag ? kFromFlagged : its ? kFromIts : kFromMine);
    const int what = k / kPlaces / kHoldings;
    return base::say(at(kPlaceNames, k % kPlaces), " | ",
                     at(kHoldingNames, k / kPlaces % kHoldings), " | ", its ? "earlier " : "",
                     flag ? at(kFlagNames, what) : at(kKindNames, what));
  }
  const int k = sign - kFromPairs;
  return name(at(kPairRelationNames, k % kPairRelations),
              base::say(at(kKindNames, k / kPairRelations / kKinds), " > ",
                        at(kKindNames, k / kPairRelations % kKinds)));
}

OrderSigns::OrderSigns(const DishDraft& draft, const std::vector<Work>& works,
                       const IngredientWords& words)
    : draft_(draft),
      works_(works),
      words_(words),
      phrases_(draft, works, words),
      waited_for_(draft.method.size(), false) {
  look_ahead();
}

// Who is the first to use each step's food again, and to name what it made.
void OrderSigns::look_ahead() {
  for (int i = 0; i < count(); ++i) {
    next_user_.push_back(-1);
    next_naming_.push_back(-1);
    const Words made = things_made(phrases_.said(i));
    for (int k = count() - 1; k > i; --k) {
      const auto& uses = step(k).uses;
      const bool uses_it = std::any_of(step(i).uses.begin(), step(i).uses.end(), [&](int u) {
        return !phrases_.staple(u) && std::find(uses.begin(), uses.end(), u) != uses.end();
      });
      if (uses_it) next_user_.back() = k;
      const Words& said = phrases_.said(k);
      const bool names_it = std::any_of(made.begin(), made.end(), [&](const std::string& m) {
        return std::find(said.begin(), said.end(), m) != said.end();
      });
      if (names_it) next_naming_.back() = k;
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

// The step written before, if it makes anything; -1 = none.
int OrderSigns::before(int i) const {
  for (int k = i - 1; k >= 0; --k) {
    if (!set_up(k)) return k;
  }
  return -1;
}

int OrderSigns::relation(int earlier, int later) const {
  const bool just = earlier == before(later);
  if (just) return earlier == main_ ? kBeforeInHand : kBefore;
  if (earlier == main_) return kInHand;
  return waited_for_[static_cast<std::size_t>(earlier)] ? kTaken : kOpen;
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
  flag(kAdds, phrases_.begins(i, {"add", "stir", "pour", "tip", "fold", "top", "sprinkle", "spread",
                                  "spoon", "return"}));
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
  flag(kOwnLine, s.line_number == step(later).line_number && earlier == later - 1);
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

void OrderSigns::find_holders(Look& look) const {
  const int i = look.step;
  const StepDraft& s = step(i);
  for (const int used : s.uses) {
    const auto last = last_of_.find(used);
    if (last == last_of_.end()) continue;
    (phrases_.staple(used) ? look.had_staple : look.had_food).insert(last->second);
  }
  Words words = phrases_.handled(i);
  const Words headings = things_of_heading(s.group);
  for (const std::string& word : words) {
    const auto made = made_of(word);
    const bool own_heading = std::find(headings.begin(), headings.end(), word) != headings.end();
    if (made != made_.end() && !own_heading) look.made.insert(made->second);
  }
  words.erase(std::find_if(words.begin(), words.end(),
                           [](const std::string& w) { return w == "until" || w == "till"; }),
              words.end());
  for (const int named : words_.named_in(words, s.group, {})) {
    const auto last = last_of_.find(named);
    if (last != last_of_.end() && !phrases_.staple(named)) look.named.insert(last->second);
  }
  // "The soy mixture": where soy sauce went last.
  for (std::size_t k = 0; k + 1 < words.size(); ++k) {
    if (!base::one_of(words[k + 1], {"mixture", "mix", "paste"}) || made_.count(words[k]) != 0)
      continue;
    for (const auto& [ingredient, last] : last_of_) {
      if (words_.has_word(ingredient, words[k]) && !prepares(work(last))) look.mixture.insert(last);
    }
  }
  look.any_holder = !look.had_food.empty() || !look.named.empty() || !look.made.empty() ||
                    !look.mixture.empty();
}

OrderSigns::Look OrderSigns::look(int i) const {
  Look look;
  look.step = i;
  look.flags = flags(i);
  find_holders(look);
  for (int k = 0; k < i; ++k)
    look.open += waited_for_[static_cast<std::size_t>(k)] || set_up(k) ? 0 : 1;
  return look;
}

std::vector<int> OrderSigns::signs(int earlier, const Look& look) const {
  const int later = look.step;
  const StepDraft &a = step(earlier), &b = step(later);
  std::vector<int> out;
  const auto special = [&](Special s, bool holds) {
    if (holds) out.push_back(s);
  };
  const int its = kind(earlier), mine = kind(later);
  special(kAlways, true);
  special(kOvenForOven, its == kPreheat && mine == kInOven);
  special(kTinForTin,
          its == kTinLined && phrases_.says(later, {"tin", "tray", "dish", "case", "sheet",
                                                    "ramekin", "mould", "cup", "ring", "liner"}));
  special(kTinForOven, its == kTinLined && mine == kInOven);
  special(kCleanThenNext, its == kCleaned && earlier == later - 1);
  special(kThenClean, mine == kCleaned && earlier == before(later));
  const bool hot_water = phrases_.says_pair(later, "boiling", "water") ||
                         phrases_.says_pair(later, "hot", "water") ||
                         (phrases_.says(later, {"stock"}) &&
                          phrases_.says(later, {"make", "dissolve", "crumble"}));
  special(kKettleForWater, work(earlier) == Work::kKettle && hot_water);
  const bool into_water = phrases_.says(later, {"water"}) || work(later) == Work::kBoil ||
                          work(later) == Work::kSimmer || work(later) == Work::kDeepFry ||
                          work(later) == Work::kFry || (b.heat && phrases_.says(later, {"pan"}));
  special(kPanForWater, phrases_.boils_water(earlier) && into_water);
  for (const auto& [which, same, other, last] :
       {std::tuple{WareKind::kPan, kSamePan, kOtherPan, kLastInPan},
        std::tuple{WareKind::kBowl, kSameBowl, kOtherBowl, kLastInBowl},
        std::tuple{WareKind::kBaking, kSameBaking, kSpecials, kLastInTin}}) {
    const std::string named = ware_of(b, which, true), had = ware_of(a, which, false);
    if (named.empty() || had.empty()) continue;
    special(named == had ? same : other, named == had || other != kSpecials);
    const auto stood = last_in_.find(named);
    special(last, stood != last_in_.end() && stood->second == earlier);
  }
  const bool open = !waited_for_[static_cast<std::size_t>(earlier)] && !set_up(earlier);
  special(kOnlyOpen, open && look.open == 1);
  special(kOpenOfTwo, open && look.open == 2);
  special(kOpenAtLast, open && later + 1 == count());
  special(kOwnLineBefore, earlier == later - 1 && a.line_number == b.line_number);

  const int relation = this->relation(earlier, later);
  const auto held = [&](const std::set<int>& by) { return by.count(earlier) != 0; };
  // Each with where the earlier step stands, and whatever that is.
  const auto add = [&](int from, int sign) {
    out.push_back(from + sign * kStandings + relation);
    out.push_back(from + sign * kStandings + kAnywhere);
  };
  const int place = relation <= kBefore ? 0 : relation == kInHand ? 1 : 2;
  const auto holding = [&](Holding h) {
    add(kFromHolding, h);
    out.push_back(kFromMine + (mine * kHoldings + h) * kPlaces + place);
    out.push_back(kFromIts + (its * kHoldings + h) * kPlaces + place);
    for (const int f : look.flags)
      out.push_back(kFromFlagged + (f * kHoldings + h) * kPlaces + place);
  };
  if (held(look.had_food)) holding(kFood);
  if (held(look.named)) holding(kNamed);
  if (held(look.made)) holding(kMade);
  if (held(look.mixture)) holding(kMixture);
  if (held(look.had_staple)) holding(kStaple);
  const bool mine_held = held(look.had_food) || held(look.named) || held(look.made) ||
                         held(look.mixture);
  if (!mine_held) holding(look.any_holder ? kOtherHolds : kNobodyHolds);
  for (const int f : look.flags) add(kFromFlags, f);
  for (const int f : earlier_flags(earlier, later)) add(kFromEarlier, f);
  const int pair = relation <= kBefore ? 0 : relation == kInHand ? 1 : relation == kOpen ? 2 : 3;
  out.push_back(kFromPairs + (its * kKinds + mine) * kPairRelations + pair);
  out.push_back(kFromPairs + (its * kKinds + mine) * kPairRelations + kPairRelations - 1);
  return out;
}

void OrderSigns::settle(int i) {
  const StepDraft& s = step(i);
  for (const int f : s.follows) waited_for_[static_cast<std::size_t>(f)] = true;
  for (const auto& e : s.equipment) {
    if (ware_kind(e.value) != WareKind::kTool) last_in_[e.value] = i;
  }
  if (set_up(i)) return;
  const bool prepared = prepare(i);
  if (!prepared) {
    const std::set<int> from(s.follows.begin(), s.follows.end());
    for (auto& [ingredient, last] : last_of_) {
      if (from.count(last) != 0 && (!prepares(work(last)) || s.uses.empty())) last = i;
    }
    for (auto& [thing, last] : made_) {
      if (from.count(last) != 0) last = i;
    }
  }
  for (const int used : s.uses) {
    if (!phrases_.takes_part_of(i, used)) last_of_[used] = i;
  }
  for (const std::string& thing : things_made(phrases_.said(i))) {
    if (!words_.mentions(thing)) made_[thing] = i;
  }
  for (const std::string& thing : things_of_heading(s.group)) made_[thing] = i;
  const bool mixes = work(i) == Work::kMix || work(i) == Work::kWhisk || work(i) == Work::kBlend;
  const bool much = s.uses.size() > 2 || !s.follows.empty();
  if (mixes && !s.heat && !prepared && much) made_["mixture"] = i;
  if (!prepared || s.uses.empty()) main_ = i;
}

}  // namespace kitchen
