// A wave: who is in it, its checkpoints, and its steps in order; and the last safe starts, which
// belong to waves too.
#include <fmt/format.h>

#include <algorithm>

#include "base/index.h"

#include "print/say_parts.h"

namespace print {
namespace {

using base::at;

std::string window_words(const kitchen::Lesson& lesson, const Doing& doing) {
  const kitchen::Window& window = lesson.windows[at(doing.example.window)];
  std::string lead = window.led_by && at(*window.led_by) < lesson.adults.size()
                         ? " " + lesson.adults[at(*window.led_by)].name + " leads."
                         : "";
  switch (window.kind) {
    case kitchen::WindowKind::kStop:
      return "STOP, everybody looks: " + stopped(window.name) + lead;
    case kitchen::WindowKind::kHandsOff:
      return stopped(window.name) + " Hands off." + lead;
    case kitchen::WindowKind::kBreak:
      break;
  }
  return stopped(window.name) + (window.ovens_stay_on
                                     ? " Everybody out; ovens stay on with an adult."
                                     : " Everybody out; rings and ovens off.");
}

/// What stands in brackets behind a step: nothing for plain busy hands.
std::string bracket(const kitchen::Lesson& lesson, const Doing& doing) {
  const Look l = look(lesson, doing.example);
  if (doing.example.kind == TaskKind::kLook) {
    return doing.example.adult < 0 ? ""
                                   : " (look: " + lesson.adults[at(doing.example.adult)].name + ")";
  }
  if (l == Look::kGrownUp) {
    const std::string who = doing.example.adult < 0
                                ? ""
                                : ": " + lesson.adults[at(doing.example.adult)].name;
    return " (grown-up" + who + ")";
  }
  if (l == Look::kHands || l == Look::kClean) return "";
  return " (" + look_word(l) + ")";
}

}  // namespace

std::string where_words(const kitchen::Lesson& lesson, const Wave& wave) {
  if (wave.cooks.size() == lesson.cooks.size()) return "the whole room";
  std::vector<std::string> bays, places;
  for (const int b : wave.bays) {
    std::vector<std::string> here;
    std::size_t cooks = 0, all = 0;
    for (int c = 0; at(c) < lesson.cooks.size(); ++c) all += bay_of(lesson, c) == b ? 1 : 0;
    for (const int c : wave.cooks) {
      if (bay_of(lesson, c) != b) continue;
      ++cooks;
      const std::string& place = lesson.room.places[at(lesson.cooks[at(c)].place)].name;
      if (std::find(here.begin(), here.end(), place) == here.end()) here.push_back(place);
    }
    if (cooks == all) {
      bays.push_back(lesson.room.bays[at(b)].name);
    } else {
      places.insert(places.end(), here.begin(), here.end());
    }
  }
  if (bays.empty()) return together(places);
  const std::string whole = (bays.size() == 1 ? "bay " : "bays ") + listed(bays);
  return places.empty() ? whole : whole + ", also " + together(places);
}

std::string wave_words(const kitchen::Lesson& lesson, const Wave& wave) {
  return fmt::format("Wave {}: {}. {}", wave.number + 1, where_words(lesson, wave),
                     counted(static_cast<int>(wave.cooks.size()), "cook", "cooks"));
}

std::string doing_words(const kitchen::Lesson& lesson, const Doing& doing) {
  if (doing.example.kind == TaskKind::kWindow) return window_words(lesson, doing);
  std::string text = sentence(lesson, doing.example) + bracket(lesson, doing);
  if (!doing.in_turn()) return text;
  return text + ": " + call_order(lesson, doing);
}

void say_wave(Paper& paper, const kitchen::Lesson& lesson, const Answer& answer, const Wave& wave) {
  paper.heading(wave_words(lesson, wave));
  std::vector<std::string> names;
  for (const int c : wave.cooks) {
    const kitchen::Cook& cook = lesson.cooks[at(c)];
    names.push_back(lesson.room.places[at(cook.place)].name + " " + cook.name);
  }
  paper.paragraph(stopped(joined(names, ", ")));

  paper.subheading("Checkpoints");
  bool any = false;
  for (const timeplan::Checkpoint& check : answer.plan->checkpoints) {
    if (check.wave != wave.number) continue;
    any = true;
    const std::string dish = lesson.dishes.size() > 1 ? tag(lesson, check.dish) : "";
    paper.entry(kitchen::clock(lesson, check.at),
                check.says + (dish.empty() ? "" : " (" + dish + ")"), 2, 7);
  }
  if (!any) paper.paragraph("None for this wave.", 2);

  paper.subheading("In order");
  const bool tags = wave.dishes.size() > 1;
  for (const Doing& doing : wave.doings) {
    const std::string mark = tags ? fmt::format("{:<4}", tag(lesson, doing.example.dish)) : "";
    paper.entry(span(lesson, doing.start, doing.end) + "  " + mark, doing_words(lesson, doing), 2,
                tags ? 20 : 16);
  }
}

void say_last_safe_starts(Paper& paper, const kitchen::Lesson& lesson, const Answer& answer) {
  if (answer.last_safe_starts.empty()) return;
  paper.heading("Last safe starts");
  std::vector<timeplan::LastSafeStart> sorted = answer.last_safe_starts;
  std::stable_sort(sorted.begin(), sorted.end(),
                   [](const auto& a, const auto& b) { return a.at < b.at; });
  const bool waves = answer.plan && answer.plan->waves > 1 && !own_timelines(lesson, answer);
  for (const timeplan::LastSafeStart& last : sorted) {
    std::string text = last.says;
    if (waves) text += fmt::format(", wave {}", last.wave + 1);
    if (own_timelines(lesson, answer) && answer.plan && last.task >= 0 &&
        at(last.task) < answer.plan->tasks.size() && answer.plan->tasks[at(last.task)].cook >= 0) {
      text += ", " + call(lesson, answer.plan->tasks[at(last.task)].cook);
    }
    paper.entry(kitchen::clock(lesson, last.at),
                text + (last.instead.empty() ? "" : ". Later than that: " + stopped(last.instead)),
                2, 7);
  }
}

}  // namespace print
