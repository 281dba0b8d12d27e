// What an ingredient is there for in a preparation, and what can do its work.
//
// The egg of a sponge foams, the egg of a custard sets, the egg of a burger binds: an egg replacer
// that binds is no use in the first two. Common practice, no source, on every line.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "kitchen/ratios/roles.h"

namespace kitchen {

enum class Job : std::int8_t {
  kStructure,  ///< gluten or starch that holds the whole
  kShorten,    ///< fat between the flour: short, tender
  kHoldAir,    ///< fat beaten with sugar
  kBind,
  kFoam,
  kSteady,  ///< sugar that keeps a foam from collapsing
  kPart,    ///< fat that keeps starch from going lumpy
  kSet,     ///< sets when heated
  kEmulsify,
  kRaise,
  kFerment,
  kSweeten,
  kMoisten,
  kThicken,
  kGel,  ///< sets when cold
  kPreserve,
  kEnrich,
  kSeason,
  kBody,  ///< what it is made of
};
/// As a sentence goes on after "to": "bind", "foam".
std::string_view job_word(Job);

enum class Outcome : std::int8_t { kWorks, kWorksBut, kFails, kCannotTell };

struct Function {
  std::string_view preparation, role;  ///< role: a word of shares_of()
  Job job;
  Outcome without;        ///< what leaving it out means
  std::string_view loss;  ///< "nothing sets the custard"
};

/// What the role does there, most important first; empty when it is free.
std::vector<const Function*> functions_of(std::string_view preparation, Role);

struct CanDo {
  Outcome outcome = Outcome::kFails;
  std::string reason;
};
/// Whether a food of that role (and key, which may be empty) can do the job that `instead_of` did.
CanDo can_do(Job, Role, std::string_view food_key, Role instead_of);

}  // namespace kitchen
