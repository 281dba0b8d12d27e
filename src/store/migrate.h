// The shape of the file, in numbered steps that only go forward: src/store/migrations.
#pragma once

#include <cstdint>

#include "store/database.h"

namespace store {

/// Marks a file as ours ("BBel" as four bytes), in SQLite's application_id.
inline constexpr std::int64_t kApplicationId = 0x4242656C;

/// The step this program was written for.
int newest_shape();
/// The step a file stands at; 0: nothing in it yet.
int shape_of(Database&);
/// Takes the next steps up to `wanted`, each whole or not at all, and makes all kinds known.
/// wanted: shape_of() .. newest_shape().
void bring_to_shape(Database&, int wanted);

}  // namespace store
