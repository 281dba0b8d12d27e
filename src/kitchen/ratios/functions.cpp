#include "kitchen/ratios/functions.h"

#include <algorithm>

#include "kitchen/ratios/function_table.h"

namespace kitchen {

using namespace function_table;

namespace {

bool names_role(std::string_view word, Role role) {
  // Self-raising flour is also the raising agent; a bare "baking_powder" line is meant for that.
  const auto shares = shares_of(word);
  return shares && std::any_of(shares->begin(), shares->end(),
                               [&](const Share& share) { return share.role == role; });
}

}  // namespace

std::string_view job_word(Job job) {
  for (const JobWord& each : kJobWords) {
    if (each.job == job) return each.word;
  }
  return "";
}

std::vector<const Function*> functions_of(std::string_view preparation, Role role) {
  std::vector<const Function*> out;
  for (const Function& function : kFunctions) {
    if (function.preparation == preparation && names_role(function.role, role))
      out.push_back(&function);
  }
  return out;
}

CanDo can_do(Job job, Role role, std::string_view food_key, Role instead_of) {
  for (const bool by_food : {true, false}) {
    for (const Stand& stand : kStands) {
      if (stand.job != job || stand.food.empty() == by_food) continue;
      if (by_food ? stand.food != food_key : stand.role != role) continue;
      return {stand.outcome, std::string(stand.reason)};
    }
  }
  if (role == instead_of) return {Outcome::kWorks, ""};
  if (job == Job::kBody) {
    return {Outcome::kWorksBut,
            "it becomes another dish; the method and times are those of the new food"};
  }
  return {Outcome::kFails, ""};
}

}  // namespace kitchen
