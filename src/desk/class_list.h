// A class: who is in it, what each may not have, how fast they are, and who sits where with whom.
//
// A class list is a comfort, not a condition: a lesson can be planned for "24 pupils" alone. What
// stands here about health is shown only to those who need it (desk/redact.h).
#pragma once

#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "base/problem.h"
#include "kitchen/dish.h"
#include "safety/needs.h"

namespace desk {

/// Limits a plan or a seat must respect; the words of the files.
enum class Limit : std::int8_t {
  kLowBench,       ///< "low bench": sits at a place that is named low
  kNotAtHobAlone,  ///< "not at the hob alone": never a cook of one
  kLeftHanded,     ///< "left-handed": said on the bay card, so that two do not knock elbows
  kNearTeacher,    ///< "near the teacher": first bay
};

struct Pupil {
  std::string name;   ///< once in the class: "Aisha K."
  double pace = 1.0;  ///< 0.5 to 2; minutes are multiplied by it
  std::vector<safety::Need> needs;
  std::vector<Limit> limits;
  friend bool operator==(const Pupil&, const Pupil&) = default;
};

struct Class {
  std::string name;  ///< "7B"
  int year = 7;      ///< 1 to 13
  int together = 2;  ///< how many work as one cook: 1, 2 or 3
  std::vector<Pupil> pupils;
  std::vector<std::pair<std::string, std::string>> never_together;
  std::vector<std::pair<std::string, std::string>> always_together;
  friend bool operator==(const Class&, const Class&) = default;
};

/// Errors: class.*, field.*, file.*.
base::Result<Class> read_class(std::string_view text, std::string file_name);
/// Canonical text; reading it again gives an equal value.
std::string write_class(const Class&);

/// The allergens a pupil must not have, whatever the reach.
kitchen::Allergens avoids(const Pupil&);
std::string_view word(Limit);

}  // namespace desk
