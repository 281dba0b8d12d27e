// Rules that need the whole lesson: does the room have what the dishes need, may this year fry, is
// anybody to cook what they must not eat. The reader calls it; so does whoever changes a lesson
// afterwards.
#pragma once

#include <string>
#include <vector>

#include "base/problem.h"
#include "kitchen/lesson.h"

namespace kitchen {

/// Everything wrong with a lesson, empty when nothing is. `where` points into the lesson as
/// write_lesson() writes it, as far as cooks, adults, windows, bans, sittings, carry and ovens are
/// concerned; `file` is empty.
base::Problems check(const Lesson&);

/// What the reader added or decided, in plain sentences: closing steps, variants, a clock time that
/// comes twice; and rule_notes().
std::vector<std::string> notes(const Lesson&);

/// "Pinned for Aisha and Ben: Simmer of 'Lentil dhal' starts at 10:25."
std::string pin_words(const Lesson&, const Pin&);

/// What house rules ask of the people of this lesson, where they bite, a sentence each: gas that is
/// left out, boxes that go home out of the fridge, raw mixtures nobody tastes.
std::vector<std::string> rule_notes(const Lesson&);

/// Which steps of a dish this lesson does: all, or one half of a dish over two lessons (rule C1).
std::vector<bool> steps_done(const Lesson&, int dish);

}  // namespace kitchen
