// A small invented lesson and a plan for it made the plain way: each cook one thing after another,
// cooks side by side.
#pragma once

#include "kitchen/lesson.h"
#include "timeplan/network.h"
#include "timeplan/plan.h"

namespace small_lesson {

/// Two cooks at places of their own, everything there twice, the bell far off: chop, simmer, drain,
/// plate; serve; wash.
kitchen::Lesson soup();
/// The network of everybody in one wave.
timeplan::Network network_of(const kitchen::Lesson& lesson);
/// A plan that holds: every task of a cook after all before it.
timeplan::Plan one_after_another(const kitchen::Lesson& lesson, const timeplan::Network& net);

}  // namespace small_lesson
