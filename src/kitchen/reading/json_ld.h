// Dishes as schema.org Recipe in JSON-LD, the open standard web pages and programs exchange: read
// into a draft, and written from a Dish.
//
// The text may be the JSON alone, a list, an @graph, or a whole web page with it inside a script.
// Read, ingredient lines go through the same reading as a pasted text. Written, a dish says all the
// standard has words for; attention, waits, heat and hygiene have none and stay in our own file.
// https://schema.org/Recipe
#pragma once

#include <string>
#include <string_view>

#include "base/problem.h"
#include "kitchen/dish.h"
#include "kitchen/foods.h"
#include "kitchen/reading/draft.h"
#include "kitchen/reading/task_times.h"

namespace kitchen {

/// The first Recipe of the text. Fields that are no ingredient, step, name or yield are kept in
/// `unread` ("totalTime: 45 min", "suitableForDiet: VeganDiet").
/// Errors: json_ld.too_big, json_ld.none (no JSON-LD, or no Recipe in it), file.*.
base::Result<DishDraft> read_json_ld(std::string_view text, const std::string& file_name,
                                     const Foods& foods, const TaskTimes& times);
/// Whether a text is JSON or a web page rather than a dish in plain words.
bool looks_like_json_ld(std::string_view text);

/// The Recipe, as JSON. Reading it again gives the same ingredients (food, amount, preparation) and
/// the same words of each step.
std::string write_json_ld(const Dish&);

/// "PT1H30M" as minutes; nothing when it is no ISO 8601 duration or has years or months in it.
std::optional<double> iso_minutes(std::string_view);
std::string iso_duration(Seconds);

}  // namespace kitchen
