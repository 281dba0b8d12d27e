// Parts of a problem as numbers, without names: two parts are the same if the numbers are. All that
// matters of a part is in them but what it refers to (activities, resources), which the caller adds
// under names of its own. Names, teams and constraint groups do not matter.
#pragma once

#include <cstdint>
#include <initializer_list>
#include <vector>

#include "scheduler/problem.h"

namespace scheduler {

using Description = std::vector<std::int64_t>;

void put(Description& text, std::initializer_list<std::int64_t> numbers);
/// With its length before it.
void put_list(Description& text, const Description& numbers);

/// Without the resource it cleans and the uses of its modes.
void put_activity(Description& text, const Activity& activity);
void put_resource(Description& text, const Resource& resource);
/// Without its resource.
void put_use(Description& text, const Use& use);
/// Without its events and activities.
void put_term(Description& text, const Term& term);

}  // namespace scheduler
