// Every field a week's file may have, as data: the reader refuses the rest and a test holds the
// schema against it.
#pragma once

#include <string_view>

namespace larder {

inline constexpr std::string_view kWeekFields[] = {"kind",    "version",   "title",
                                                   "lessons", "suppliers", "budget"};
inline constexpr std::string_view kWeekLessonFields[] = {"lesson",     "title",     "class",
                                                         "date",       "pupils",    "dishes",
                                                         "extra_sets", "from_home", "unanswered"};
inline constexpr std::string_view kDishUseFields[] = {"dish", "variant", "sets", "from_home",
                                                      "school_sets"};
inline constexpr std::string_view kSupplierFields[] = {"name", "delivery", "minimum", "top_up",
                                                       "vans"};
inline constexpr std::string_view kVanFields[] = {"order_by", "arrives"};
inline constexpr std::string_view kBudgetFields[] = {"per_pupil", "week", "term",
                                                     "spent_this_term"};

}  // namespace larder
