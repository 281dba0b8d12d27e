// The delivery at the door: what came, what did not, and what came instead.
//
// A packet of another make than the one whose label was read re-opens the allergen check of every
// lesson that uses it. This names those lessons; a person reads the label. Health data (who avoids
// what) comes in as data and goes out only in the lines that need it.
#pragma once

#include "larder/order.h"

namespace larder {

/// One order line ticked off. A line without a tick has not come yet.
struct Ticked {
  int line = 0;                 ///< index into Order::lines
  int came = 0;                 ///< packs; may be 0
  std::optional<Date> use_by;   ///< from the packet
  bool swapped = false;         ///< another make or product than ordered
  std::string product;          ///< its words, if swapped
  bool label_read = false;      ///< of the swapped product: unread counts as all fourteen
  kitchen::Allergens contains;  ///< by that label
};

/// Who avoids what in a lesson, from the school's own records.
struct Avoids {
  int lesson = 0;    ///< index into Week::lessons
  std::string cook;  ///< as the lesson names them
  kitchen::Allergens allergens;
};

/// A lesson's dish whose allergens must be checked again before it is cooked.
struct Recheck {
  int lesson = 0;
  std::string dish;     ///< with its variant
  std::string food;     ///< the food's name
  std::string product;  ///< what came
  bool label_read = false;
  kitchen::Allergens more;  ///< on the label (or all, if unread) and not known of the ingredient
  std::vector<std::string> cooks;  ///< who avoid one of `more`; staff only
  friend bool operator==(const Recheck&, const Recheck&) = default;
};

struct Missing {
  int line = 0;
  int packs = 0;                ///< that did not come
  Ratio amount = 0;             ///< what they hold
  std::vector<LessonUse> hits;  ///< lessons that are short, the last ones first
  friend bool operator==(const Missing&, const Missing&) = default;
};

struct DeliveryOutcome {
  std::vector<StockLot> lots;  ///< to put away, with the use-by dates of the packets
  std::vector<Missing> missing;
  std::vector<Recheck> rechecks;
  std::vector<int> not_ticked;  ///< lines
  base::Problems faults;        ///< delivery.line (no such line), delivery.twice, delivery.use_by
                                ///< (passed)
};

/// `today` is the day it came.
DeliveryOutcome take_in(const OrderInput&, const Order&, const std::vector<Ticked>&,
                        const std::vector<Avoids>&, Date today);

}  // namespace larder
