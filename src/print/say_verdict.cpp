// The first lines: does it fit, if not why and what would help, and which lesson this is.
#include <fmt/format.h>

#include <algorithm>

#include "print/say_parts.h"

namespace print {
namespace {

std::string trial_words(const timeplan::WaveTrial& trial) {
  const std::string waves = count_word(trial.waves) + (trial.waves == 1 ? " wave " : " waves ");
  if (trial.fits) return waves + (trial.waves == 1 ? "fits" : "fit");
  if (trial.misses_by) {
    return waves + (trial.waves == 1 ? "misses" : "miss") + " the bell by " +
           minutes(*trial.misses_by) + (trial.proved ? "" : " or less");
  }
  return waves + (trial.proved ? "cannot fit" : "not found to fit");
}

void say_remedies(Paper& paper, const Answer& answer) {
  if (answer.remedies.empty()) return;
  paper.heading("What would help");
  int n = 0;
  for (const timeplan::Remedy& r : answer.remedies) {
    std::string text = stopped(r.says);
    if (!r.buys.empty()) text += " " + stopped(capital(r.buys));
    if (!r.fits && r.gain > Seconds{0} && r.buys.find("min") == std::string::npos)
      text += " Wins " + minutes(r.gain) + ".";
    paper.entry(std::to_string(++n), text, 0, 3);
  }
  paper.paragraph("Each was checked by planning again.", 0, Ink::kSoft);
}

void say_causes(Paper& paper, const Answer& answer) {
  if (answer.causes.empty()) return;
  paper.heading("What stops it");
  for (const timeplan::Cause& cause : answer.causes) paper.entry("-", stopped(cause.says), 0, 2);
  if (!answer.causes_minimal) {
    paper.paragraph("Not every one of these may be needed; there was no time to try each without.",
                    0, Ink::kSoft);
  }
}

}  // namespace

bool own_timelines(const kitchen::Lesson& lesson, const Answer& answer) {
  return answer.own_timelines_needed || lesson.timelines == kitchen::Timelines::kOwn;
}

std::string verdict_words(const kitchen::Lesson& lesson, const Answer& answer) {
  std::string shape;
  if (answer.plan && !lesson.cooks.empty()) {
    shape = own_timelines(lesson, answer) ? " Every cook has their own times."
                                          : " " + capital(count_word(answer.plan->waves)) +
                                                (answer.plan->waves == 1 ? " wave." : " waves.");
  }
  switch (answer.verdict) {
    case timeplan::Verdict::kFits:
      return (answer.spare > Seconds{0} ? "It fits: " + minutes(answer.spare) + " spare."
                                        : "It fits: nothing to spare.") +
             shape;
    case timeplan::Verdict::kDoesNotFit:
      return answer.overrun > Seconds{0}
                 ? "It does not fit: " + minutes(answer.overrun) + " over the bell."
                 : "It does not fit.";
    case timeplan::Verdict::kNotFound:
      break;
  }
  return "A risk: no plan that fits was found in the time given. It may still fit.";
}

std::string trials_words(const Answer& answer) {
  if (answer.trials.size() < 2) return "";
  std::vector<std::string> parts;
  for (const timeplan::WaveTrial& trial : answer.trials) parts.push_back(trial_words(trial));
  return capital(joined(parts, ", ")) + ".";
}

std::string lesson_words(const kitchen::Lesson& lesson) {
  int people = 0;
  for (const kitchen::Cook& c : lesson.cooks) people += c.people;
  const int cooks = static_cast<int>(lesson.cooks.size());
  std::string out = lesson.title.empty() ? "" : stopped(lesson.title) + " ";
  out += (lesson.date.empty() ? "" : day(lesson.date) + ", ") + kitchen::clock(lesson, Seconds{0}) +
         " to the bell at " + kitchen::clock(lesson, lesson.bell) + ". ";
  out += people == cooks ? counted(cooks, "cook", "cooks")
                         : fmt::format("{} at {}", counted(people, "pupil", "pupils"),
                                       counted(cooks, "place", "places"));
  if (!lesson.room.name.empty()) out += ", " + lesson.room.name;
  if (!lesson.rules.school.empty()) out += ", " + lesson.rules.school;
  return out + ".";
}

std::string caution_words() {
  return "A prediction never replaces a probe or your own risk assessment. Follow your employer's "
         "and local rules.";
}

void say_verdict(Paper& paper, const kitchen::Lesson& lesson, const Answer& answer) {
  const bool fits = answer.verdict == timeplan::Verdict::kFits;
  paper.heading(verdict_words(lesson, answer), fits ? Ink::kGood : Ink::kBad);
  if (!fits) {
    say_causes(paper, answer);
    say_remedies(paper, answer);
    paper.space();
  }
  const std::string trials = trials_words(answer);
  if (!trials.empty()) paper.paragraph(trials);
  if (answer.own_timelines_needed && lesson.timelines == kitchen::Timelines::kWaves) {
    paper.paragraph(
        "No plan in waves fits, so every cook has their own times. Hand out the lists below.");
  }
  paper.paragraph(lesson_words(lesson));
  if (lesson.dishes.size() > 1) {
    std::vector<std::string> dishes;
    for (const kitchen::Dish& d : lesson.dishes) dishes.push_back(d.tag + " " + dish_name(d));
    paper.paragraph(joined(dishes, ", ") + ".");
  }
  if (fits && answer.grid_cost > Seconds{0}) {
    paper.paragraph(
        "Checkpoints every five minutes cost " + minutes(answer.grid_cost) + "; that is counted.",
        0, Ink::kSoft);
  }
  if (fits && !answer.remedies.empty()) say_remedies(paper, answer);
  if (answer.stopped_early) {
    paper.paragraph("You stopped early: this is the best so far.", 0, Ink::kSoft);
  }
}

}  // namespace print
