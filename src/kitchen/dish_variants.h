// A variant is a dish whose file was changed by a few lines: it is made by changing the tree and
// reading that.
#pragma once

#include <string>

#include "kitchen/fields.h"

namespace kitchen {

/// The tree of the dish with the variant's changes: ingredients swapped (also where steps use
/// them), steps dropped (what followed them follows what they followed), fields of steps replaced.
/// Every changed part remembers where it stands. `dish` must have been read without fault; faults
/// of the variant itself are noted.
Node with_variant(Reader&, const Node& dish, const std::string& dish_where, const Node& variant,
                  const std::string& where);

}  // namespace kitchen
