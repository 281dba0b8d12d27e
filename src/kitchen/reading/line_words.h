// The words of ingredient lines and methods: what counts pieces, what is done to food beforehand,
// what only says its size or quality, and the verbs a method begins with.
//
// "finely", "chopped" are preparation; "large", "free-range" are qualities; "clove", "tin" count.
// All words are folded (base::folded). The lists are the trade's usual words: common practice, no
// source.
#pragma once

#include <string>
#include <string_view>

namespace kitchen {

/// "chopped", "peeled", "beaten", "softened": something done to the food before it is used.
bool preparation_word(std::string_view);
/// Of those, what only makes it smaller: "chopped", "sliced", "grated".
bool cutting_word(std::string_view);
/// "finely", "roughly", "freshly", "very": says how a preparation is done.
bool manner_word(std::string_view);
/// "large", "ripe", "free-range", "skinless": size and quality of a food.
bool quality_word(std::string_view);
/// "heaped", "level", "large", "good": size of a spoonful or handful.
bool measure_quality(std::string_view);
/// A verb in the imperative that begins a step: "mix", "preheat", "leave".
bool method_verb(std::string_view);

/// Pieces that need no "of" and no number: "pinch", "handful", "knob".
bool vague_piece(std::string_view singular_piece);
/// Piece words that are as often the food itself: "fillet", "breast", "steak", "roll".
bool names_food_itself(std::string_view singular_piece);

}  // namespace kitchen
