// What each sign is called in the table of weights.
#include <array>

#include "base/text.h"
#include "kitchen/reading/order_sign_numbers.h"
#include "kitchen/reading/order_signs.h"

namespace kitchen {
namespace {

using namespace order;
using Names = std::string_view;

constexpr std::array<Names, kRelations> kRelationNames = {
    "just before, in hand",    "just before",     "in hand",
    "nobody waits for it yet", "taken up before", "anywhere"};

constexpr std::array<Names, kHoldings> kHoldingNames = {
    "had its food",      "had food it names",   "made what it names", "has the mixture it names",
    "had its oil, salt", "others had its food", "nobody had its food"};

constexpr std::array<Names, kKinds> kKindNames = {
    "oven set",     "tin lined",  "cleaned",       "water boiled", "prepared",
    "mixed",        "put, added", "on the ring",   "in the oven",  "stands, chills",
    "drained, out", "served",     "something else"};

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
                                                        "just before, one line",
                                                        "into that pan",
                                                        "into that bowl",
                                                        "into that tin"};

constexpr std::array<Names, kPairPlaces> kPairPlaceNames = {"just before", "in hand", "open",
                                                            "taken up", "anywhere"};

constexpr std::array<Names, kPlaces> kPlaceNames = {"just before", "in hand", "elsewhere"};

}  // namespace

int sign_count() { return kSigns; }
int plain_sign_count() { return kFromFlags; }

std::string sign_name(int sign) {
  const auto name = [](std::string_view a, std::string_view b) { return base::say(a, " | ", b); };
  const auto at = [](const auto& names, int i) { return names[static_cast<std::size_t>(i)]; };
  if (sign < kFromHolding) return std::string(at(kSpecialNames, sign));
  if (sign < kFromFlags) {
    const int k = sign - kFromHolding;
    return name(at(kRelationNames, k % kRelations), at(kHoldingNames, k / kRelations));
  }
  if (sign < kFromEarlier) {
    const int k = sign - kFromFlags;
    return name(at(kRelationNames, k % kRelations), at(kFlagNames, k / kRelations));
  }
  if (sign < kFromPairs) {
    const int k = sign - kFromEarlier;
    return name(at(kRelationNames, k % kRelations), at(kEarlierNames, k / kRelations));
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
  return name(at(kPairPlaceNames, k % kPairPlaces),
              base::say(at(kKindNames, k / kPairPlaces / kKinds), " > ",
                        at(kKindNames, k / kPairPlaces % kKinds)));
}

}  // namespace kitchen
