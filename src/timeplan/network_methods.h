// The parts of network() that look at one dish only: planned lengths, which half of a carried-over
// dish is cooked, raw groups, the buffer. Pure functions of the nouns; see docs/methods/rules.md.
#pragma once

#include <optional>
#include <utility>
#include <vector>

#include "kitchen/lesson.h"

namespace timeplan {

using base::Seconds;

/// Planned length of a step: for hands-on steps the mean for a cook of this pace, up to the minute
/// (equal ends); for others [least up, most down].
std::pair<Seconds, Seconds> planned_length(const kitchen::Step&, double pace);

/// Number of parts a hands-on step is split into (rule P1), 1 = not split, and the length of each
/// part.
std::pair<int, Seconds> parts(const kitchen::Step&, Seconds planned);

/// [step] true when this lesson cooks it (rules C1 to C3).
std::vector<bool> cooked_here(const kitchen::Dish&, std::optional<kitchen::CarryOver>);

/// Runs of raw steps that are neighbours in reading order, of the steps cooked here.
std::vector<std::vector<int>> raw_groups(const kitchen::Dish&, const std::vector<bool>& here);

/// Runs of equal hygiene class above ready-to-eat among the steps at the place, in reading order.
std::vector<std::vector<int>> soiling_groups(const kitchen::Dish&, const std::vector<bool>& here);

/// The cook is in the window's audience; an empty audience is everyone.
bool covers(const kitchen::Window&, int cook);

/// The carry-over of a dish of the lesson, if any.
std::optional<kitchen::CarryOver> carry_of(const kitchen::Lesson&, int dish);

/// Buffer b_c of one cook (rule 8.1), before taking the largest of a wave.
Seconds buffer_of(const kitchen::Lesson&, int cook, double pace);

/// Wash-up length of a cook and its parts: count and length of each (K5, Y6).
std::pair<int, Seconds> wash_up_parts(const kitchen::Lesson&, int cook);

/// Settings that every oven step of the vessel accepts; empty when the vessel is not in an oven.
std::vector<kitchen::OvenSetting> accepted_settings(const kitchen::Heat&);

}  // namespace timeplan
