// The changes a teacher makes to a lesson, one function each: the document is changed, and what
// changed is said. Errors say what the change lacks or what the lesson does not have. Only for
// lesson_change.cpp.
#pragma once

#include <string>

#include "base/problem.h"
#include "desk/lesson_change.h"
#include "desk/lesson_document.h"

namespace desk {

using Sentence = base::Result<std::string>;

/// `where` points into the change; `remedy` says what it should tell.
base::Problem nothing_said(const char* where, const char* remedy);

// Who cooks: changes_of_cooks.cpp.
Sentence set_pace(LessonDocument&, const kitchen::Lesson&, const LessonChange&);
Sentence set_away(LessonDocument&, const kitchen::Lesson&, const LessonChange&);
Sentence not_here(LessonDocument&, const kitchen::Lesson&, const LessonChange&);
Sentence swap(LessonDocument&, const kitchen::Lesson&, const LessonChange&);
Sentence pin(LessonDocument&, const kitchen::Lesson&, const LessonChange&);
Sentence set_dish(LessonDocument&, const kitchen::Lesson&, const LessonChange&);

// What is done and when: changes_of_steps.cpp.
Sentence close_cooker(LessonDocument&, const kitchen::Lesson&, const LessonChange&);
Sentence move_window(LessonDocument&, const kitchen::Lesson&, const LessonChange&);
Sentence add_stop(LessonDocument&, const kitchen::Lesson&, const LessonChange&);
Sentence add_gate(LessonDocument&, const kitchen::Lesson&, const LessonChange&);
Sentence pin_step(LessonDocument&, const kitchen::Lesson&, const LessonChange&);
Sentence unpin_step(LessonDocument&, const kitchen::Lesson&, const LessonChange&);
Sentence set_bell(LessonDocument&, const kitchen::Lesson&, const LessonChange&);
Sentence set_purpose(LessonDocument&, const kitchen::Lesson&, const LessonChange&);

}  // namespace desk
