// A lesson's document made from a changed lesson without losing what it refers to: a room or a dish
// that is as it was stays a reference, so that mending the dish later mends the lesson too.
#pragma once

#include <string>
#include <vector>

#include "base/problem.h"
#include "kitchen/json_tree.h"
#include "kitchen/lesson.h"

namespace desk {

/// Of a dish's name in a document the key alone: "scones" of "scones: no dairy".
std::string key_in(const std::string& name);

/// The name each dish of a lesson has in the document it was read from: "scones: no dairy". Its
/// dishes come in the order of the document's keys, every version that is cooked by itself.
std::vector<std::string> names_in(const kitchen::Node& tree, const kitchen::Lesson&);

/// `before` was read from `tree`; `after` is what it became.
base::Result<std::string> written_again(const kitchen::Node& tree, const std::string& file,
                                        const kitchen::Lesson& before,
                                        const kitchen::Lesson& after);

/// The room as if that cooker were not there. Places that had only this one use the nearest of
/// their bay, else the room's first.
/// Errors: room.unknown_cooker, room.last_cooker.
base::Result<kitchen::Room> without_cooker(const kitchen::Room&, const std::string& name);

}  // namespace desk
