// What a cook must not have: allergens, and religious and dietary rules, each with how far it
// reaches.
//
// "Daisy: milk, may not eat. Samir: no pork, may not touch. Leo: peanuts, not in the room." To be
// allowed to touch but not to eat is something else than not to be allowed to touch: a vegetarian
// may dice chicken for the family, another may not hold the board it lay on.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "base/problem.h"
#include "kitchen/lesson.h"
#include "kitchen/words.h"

namespace safety {

/// How far "must not have" goes; each contains the ones before.
enum class Reach : std::int8_t {
  kEat,    ///< may touch, may not eat
  kTouch,  ///< may not touch: not on their board, hands, cloth
  kRoom,   ///< not in the room: what flies or steams reaches them
};

/// Rules about food that are not allergies. What each means for foods and things: diets.h.
enum class Diet : std::int8_t {
  kVegetarian,
  kVegan,
  kHalal,
  kKosherStyle,
  kNoPork,
  kNoBeef,
  kNoAlcohol,
  kNoGelatine,
  kNoRennet,
  kCoeliac,
};

inline constexpr kitchen::Word<Reach> kReachWords[] = {{"may not eat", Reach::kEat},
                                                       {"may not touch", Reach::kTouch},
                                                       {"not in the room", Reach::kRoom}};
inline constexpr kitchen::Word<Diet> kDietWords[] = {{"vegetarian", Diet::kVegetarian},
                                                     {"vegan", Diet::kVegan},
                                                     {"halal", Diet::kHalal},
                                                     {"kosher-style", Diet::kKosherStyle},
                                                     {"no pork", Diet::kNoPork},
                                                     {"no beef", Diet::kNoBeef},
                                                     {"no alcohol", Diet::kNoAlcohol},
                                                     {"no gelatine", Diet::kNoGelatine},
                                                     {"no animal rennet", Diet::kNoRennet},
                                                     {"coeliac", Diet::kCoeliac}};

/// One thing a cook must not have.
struct Need {
  std::variant<kitchen::Allergen, Diet> what = kitchen::Allergen::kMilk;
  Reach reach = Reach::kEat;
  friend bool operator==(const Need&, const Need&) = default;
};

/// Whether a mistake can make somebody ill: every allergen, and coeliac.
bool of_health(const Need&);
/// The word of the files: "milk", "no pork".
std::string_view word(const Need&);

struct CookNeeds {
  int cook = 0;             ///< index into Lesson::cooks
  std::vector<Need> needs;  ///< each `what` once
  friend bool operator==(const CookNeeds&, const CookNeeds&) = default;
};
using LessonNeeds = std::vector<CookNeeds>;  ///< cooks in the order of the lesson; only those with
                                             ///< needs

/// What the lesson itself says: each allergen a cook avoids (rule K2), as "may not eat".
LessonNeeds needs_in(const kitchen::Lesson&);

/// The lesson's needs with those of the school's list: columns cook, need (an allergen or a diet),
/// reach, and lesson (a title; left out, the line is for every lesson). Where both name one thing
/// the farther reach counts. Errors: table.*, needs.column, needs.cook (no cook of that name in the
/// lesson), needs.value.
base::Result<LessonNeeds> read_needs(std::string_view csv, const std::string& file_name,
                                     const kitchen::Lesson&);

}  // namespace safety
