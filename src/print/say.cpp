#include "print/say.h"

#include <algorithm>

#include "print/say_parts.h"

namespace print {

std::string say(const kitchen::Lesson& lesson, const timeplan::Answer& answer,
                const SayOptions& options) {
  Paper paper(options.width, options.colour);
  say_verdict(paper, lesson, answer);
  say_chance(paper, lesson, answer);
  if (answer.plan) {
    const Plan& plan = *answer.plan;
    if (answer.verdict != timeplan::Verdict::kFits) {
      paper.heading("The least late plan");
      paper.paragraph("It runs past the bell. It is here to show where the time goes.");
    }
    const bool own = own_timelines(lesson, answer);
    if (!own) {
      for (const Wave& wave : waves(lesson, plan)) say_wave(paper, lesson, answer, wave);
    }
    say_last_safe_starts(paper, lesson, answer);
    if (own) {
      say_own_lists(paper, lesson, plan);
    } else {
      say_by_place(paper, lesson, plan);
    }
    say_adults(paper, lesson, plan);
    say_equipment(paper, lesson, plan);
  }
  if (options.details) say_details(paper, lesson, answer);
  if (!answer.notes.empty()) {
    paper.heading("Notes");
    for (const std::string& note : answer.notes) paper.entry("-", note, 0, 2);
  }
  paper.space();
  paper.paragraph(caution_words(), 0, Ink::kSoft);
  return paper.text();
}

}  // namespace print
