// A dish as it was understood from a text, for a person to look over: each line with how sure it
// is, what was assumed, what is asked, what was not understood.
//
// "sure    2 · onion · finely chopped" stands for "2 onions, finely chopped".
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

#include "kitchen/foods.h"
#include "kitchen/reading/draft.h"

namespace print {

/// "sure" from 0.85, "likely" from 0.6, else "guess".
std::string_view sureness(double confidence);

/// How sure a step is read. Minutes that nobody states do not count: they are said as "about".
double step_confidence(const kitchen::StepDraft&);

/// What a step was understood as: "Fry onion, about 8 min, stand by, ring; after Peel onion".
std::string step_understood(const kitchen::DishDraft&, std::size_t step);

/// Wrapped at `width` letters.
std::string say_draft(const kitchen::DishDraft&, const kitchen::Foods&, int width = 80);

}  // namespace print
