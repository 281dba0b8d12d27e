// The signs of order_signs.h by number: what can be said of an earlier step seen from a later one,
// and how such sayings are joined into one sign each.
#pragma once

namespace kitchen::order {

// Where the earlier step stands to the later one.
enum Relation { kBeforeInHand, kBefore, kInHand, kOpen, kTaken, kAnywhere, kRelations };

// What the earlier step holds that the later one speaks of.
enum Holding { kFood, kNamed, kMade, kMixture, kStaple, kOtherHolds, kNobodyHolds, kHoldings };

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
  kIntoThatPan,
  kIntoThatBowl,
  kIntoThatTin,
  kSpecials
};

/// Where pairs of kinds are told apart: just before, in hand, open, taken up, anywhere.
enum PairPlace { kPairBefore, kPairInHand, kPairOpen, kPairTaken, kPairAnywhere, kPairPlaces };
/// Where what the earlier step holds, joined with what either step is, is told apart.
enum Place { kPlaceBefore, kPlaceInHand, kPlaceElsewhere, kPlaces };

// Numbers in this order; those of a block count its first part fastest.
constexpr int kFromHolding = kSpecials;
constexpr int kFromFlags = kFromHolding + int{kRelations} * int{kHoldings};
constexpr int kFromEarlier = kFromFlags + int{kRelations} * int{kFlags};
constexpr int kFromPairs = kFromEarlier + int{kRelations} * int{kEarlierFlags};
constexpr int kFromMine = kFromPairs + int{kPairPlaces} * int{kKinds} * int{kKinds};
constexpr int kFromIts = kFromMine + int{kPlaces} * int{kHoldings} * int{kKinds};
constexpr int kFromFlagged = kFromIts + int{kPlaces} * int{kHoldings} * int{kKinds};
constexpr int kSigns = kFromFlagged + int{kPlaces} * int{kHoldings} * int{kFlags};

}  // namespace kitchen::order
