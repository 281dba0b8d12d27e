// A week's cooking as the larder sees it: which class cooks how many sets of what on which day, who
// delivers when, and what may be spent.
//
// "9K cook 13 sets of lentil dhal on Tuesday; Hollin deliver on Monday, order by Friday." How many
// sets a class needs (cooks, demonstration, spares) is decided elsewhere and comes as a number.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/clock.h"
#include "base/problem.h"
#include "kitchen/dish.h"
#include "kitchen/read.h"
#include "larder/measure.h"
#include "larder/money.h"

namespace larder {

using base::Date;

/// One dish (or variant) of a lesson, so many times over.
struct DishUse {
  kitchen::Dish dish;
  Ratio sets = 0;              ///< lots of ingredients as the dish is written; not below 0
  std::vector<int> from_home;  ///< indices into dish.ingredients that families bring
  Ratio school_sets = 0;       ///< sets whose `from_home` lines the school supplies all the same:
                               ///< settled privately, seen in private views only
  friend bool operator==(const DishUse&, const DishUse&) = default;
};

struct WeekLesson {
  std::string title;       ///< "9K, lentil dhal"
  std::string class_name;  ///< "9K"; lessons of one class add up under it
  Date date;
  int pupils = 0;
  std::vector<DishUse> dishes;  ///< empty: not settled yet
  int unanswered = 0;           ///< families who have not said yet whether they bring
  friend bool operator==(const WeekLesson&, const WeekLesson&) = default;
};

/// One van: what is ordered by the end of one day is there before the first lesson of another.
struct Delivery {
  Date order_by, arrives;
  friend bool operator==(const Delivery&, const Delivery&) = default;
};

struct Supplier {
  std::string name;     ///< as in the price list
  Pence delivery = 0;   ///< for each van
  Pence minimum = 0;    ///< goods of each van must come to this
  bool top_up = false;  ///< the shop round the corner: asked once the order is gone
  std::vector<Delivery> vans;
  friend bool operator==(const Supplier&, const Supplier&) = default;
};

/// Nothing said is nothing to hold against.
struct Budget {
  std::optional<Pence> per_pupil;  ///< a lesson
  std::optional<Pence> week;
  std::optional<Pence> term;
  Pence spent_this_term = 0;  ///< before this week
  friend bool operator==(const Budget&, const Budget&) = default;
};

struct Week {
  std::string title;
  std::vector<WeekLesson> lessons;
  std::vector<Supplier> suppliers;
  Budget budget;
  friend bool operator==(const Week&, const Week&) = default;
};

/// Reads a file of the kind "week"; lessons and dishes it names come through the loader.
/// Errors: file.*, week.*, those of the files it names.
base::Result<Week> read_week(std::string_view text, std::string file_name,
                             const kitchen::Loader& loader);

/// A lesson of the planner as a lesson of a week: a set for each cook and dish.
WeekLesson week_lesson(const kitchen::Lesson&);

/// "Tue 17 Nov".
std::string day_text(Date);

}  // namespace larder
