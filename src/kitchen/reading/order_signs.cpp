#include "kitchen/reading/order_signs.h"

#include <algorithm>
#include <tuple>

#include "base/text.h"
#include "kitchen/reading/made_words.h"
#include "kitchen/reading/order_sign_numbers.h"
#include "kitchen/reading/ware_words.h"

namespace kitchen {
namespace {

using namespace order;
using Words = std::vector<std::string>;

// The ware of a kind that the step names or stands in.
std::string ware_of(const StepDraft& step, WareKind kind, bool named) {
  for (const auto& e : step.equipment) {
    if (ware_kind(e.value) == kind && (!named || e.confidence == 1)) return e.value;
  }
  return "";
}

bool vessel_word(const std::string& word, WareKind kind) {
  if (kind == WareKind::kPan)
    return base::one_of(word, {"pan", "pot", "wok", "saucepan", "casserole", "skillet", "frying"});
  if (kind == WareKind::kBowl) return base::one_of(word, {"bowl", "basin", "jug"});
  return base::one_of(word, {"tin", "dish", "case", "tray"});
}

// "to the pan", "into the same bowl", "back in the hot pot".
bool says_into(const Words& said, WareKind kind) {
  for (std::size_t i = 0; i + 2 < said.size(); ++i) {
    if (!base::one_of(said[i], {"to", "into", "in"}) || !base::one_of(said[i + 1], {"the", "same"}))
      continue;
    if (vessel_word(said[i + 2], kind)) return true;
    if (i + 3 < said.size() && base::one_of(said[i + 2], {"same", "hot", "big", "large"}) &&
        vessel_word(said[i + 3], kind))
      return true;
  }
  return false;
}

}  // namespace

OrderSigns::OrderSigns(const DishDraft& draft, const std::vector<Work>& works,
                       const IngredientWords& words)
    : draft_(draft),
      works_(works),
      words_(words),
      phrases_(draft, works, words),
      waited_for_(draft.method.size(), false) {
  look_ahead();
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
  // A bowl or tin may be "the" one that was only fetched; a pan has something in it.
  if (says_into(phrases_.said(i), WareKind::kPan))
    look.into = last_kind_[static_cast<std::size_t>(WareKind::kPan)];
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
  // "Add the tomatoes to the pan": to the one there is.
  for (const auto& [kind, sign] :
       {std::pair{WareKind::kPan, kIntoThatPan}, std::pair{WareKind::kBowl, kIntoThatBowl},
        std::pair{WareKind::kBaking, kIntoThatTin}}) {
    const bool there = last_kind_[static_cast<std::size_t>(kind)] == earlier;
    special(sign, there && says_into(phrases_.said(later), kind));
  }
  const bool open = !waited_for_[static_cast<std::size_t>(earlier)] && !set_up(earlier);
  special(kOnlyOpen, open && look.open == 1);
  special(kOpenOfTwo, open && look.open == 2);
  special(kOpenAtLast, open && later + 1 == count());
  special(kOwnLineBefore,
          earlier == later - 1 && a.line_number != 0 && a.line_number == b.line_number);

  const int relation = this->relation(earlier, later);
  const auto held = [&](const std::set<int>& by) { return by.count(earlier) != 0; };
  // Each with where the earlier step stands, and whatever that is.
  const auto add = [&](int from, int sign) {
    out.push_back(from + sign * kRelations + relation);
    out.push_back(from + sign * kRelations + kAnywhere);
  };
  const int place = relation <= kBefore   ? kPlaceBefore
                    : relation == kInHand ? kPlaceInHand
                                          : kPlaceElsewhere;
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
  const int pair = relation <= kBefore   ? kPairBefore
                   : relation == kInHand ? kPairInHand
                   : relation == kOpen   ? kPairOpen
                                         : kPairTaken;
  out.push_back(kFromPairs + (its * kKinds + mine) * kPairPlaces + pair);
  out.push_back(kFromPairs + (its * kKinds + mine) * kPairPlaces + kPairAnywhere);
  return out;
}

bool OrderSigns::has_pan(int i) const {
  const auto& wares = step(i).equipment;
  return std::any_of(wares.begin(), wares.end(),
                     [](const auto& e) { return ware_kind(e.value) == WareKind::kPan; });
}

void OrderSigns::settle(int i) {
  const StepDraft& s = step(i);
  for (const int f : s.follows) waited_for_[static_cast<std::size_t>(f)] = true;
  for (const auto& e : s.equipment) {
    const WareKind kind = ware_kind(e.value);
    if (kind == WareKind::kTool) continue;
    last_in_[e.value] = i;
    if (!set_up(i)) last_kind_[static_cast<std::size_t>(kind)] = i;
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
