// What must wait for what: by the food that flows from step to step, not by the order of writing.
//
// Chopping the onion and chopping the pepper wait for nothing; frying waits for both; "meanwhile"
// begins a strand of its own, and the step that brings the strands together waits for each.
#pragma once

#include <set>
#include <vector>

#include "kitchen/reading/actions.h"
#include "kitchen/reading/draft.h"
#include "kitchen/reading/ingredient_words.h"

namespace kitchen {

/// Fills `follows` of every step. `works`: what kind of work each step is, one for a step.
/// `weights`: one for each sign (order_signs.h).
void order_steps(DishDraft&, const std::vector<Work>& works, const IngredientWords&,
                 const std::vector<double>& weights);

/// Of waits (for each step those before it) also those through others.
std::vector<std::set<int>> all_waits(const std::vector<std::set<int>>&);
/// Of waits (for each step those before it) the ones that no other wait implies.
std::vector<std::set<int>> needed_waits(const std::vector<std::set<int>>&);

}  // namespace kitchen
