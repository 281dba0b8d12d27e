// A draft made into a dish that can be planned, with what was taken for granted said aloud.
#pragma once

#include <string>
#include <vector>

#include "base/problem.h"
#include "kitchen/dish.h"
#include "kitchen/reading/draft.h"

namespace kitchen {

struct MadeDish {
  Dish dish;
  std::string file;                  ///< the dish as a file (docs/files.md)
  std::vector<std::string> assumed;  ///< sentences, the draft's own among them
};

/// The dish of a draft. An ingredient whose food is not known counts as all fourteen allergens; one
/// whose label decides counts as what the label may say: nothing here is ever made safe. Errors:
/// those of read_dish(), and draft.no_steps.
base::Result<MadeDish> dish_from(const DishDraft&, const Foods&);

/// What only a person can know, at most three, what matters most first; fills `draft.questions`.
void ask(DishDraft& draft, const Foods&);

}  // namespace kitchen
