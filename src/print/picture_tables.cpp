// The printed twin: the figures of the picture as tables, in the same order.
#include <fmt/format.h>

#include <algorithm>

#include "base/index.h"
#include "print/picture_parts.h"
#include "print/say_parts.h"

namespace print {
namespace {

using base::at;

using Cells = std::vector<std::string>;

std::string table(const std::string& caption, const Cells& heads, const std::vector<Cells>& rows) {
  if (rows.empty()) return "";
  std::string out = "<table><caption>" + escaped(caption) + "</caption><thead><tr>";
  for (const std::string& head : heads) out += "<th scope=\"col\">" + escaped(head) + "</th>";
  out += "</tr></thead><tbody>\n";
  for (const Cells& row : rows) {
    out += "<tr>";
    for (std::size_t i = 0; i < row.size(); ++i) {
      out += i == 0 ? "<th scope=\"row\">" + escaped(row[i]) + "</th>"
                    : "<td>" + escaped(row[i]) + "</td>";
    }
    out += "</tr>\n";
  }
  return out + "</tbody></table>\n";
}

std::string look_cell(const kitchen::Lesson& lesson, const Task& task) {
  return task.kind == TaskKind::kWindow ? "hands off" : look_word(look(lesson, task));
}

std::string wave_table(const kitchen::Lesson& lesson, const Wave& wave) {
  std::vector<Cells> rows;
  for (const Doing& doing : wave.doings) {
    rows.push_back({span(lesson, doing.start, doing.end), tag(lesson, doing.example.dish),
                    doing_words(lesson, doing), look_cell(lesson, doing.example)});
  }
  return table(wave_words(lesson, wave), {"When", "Dish", "Do", "Attention"}, rows);
}

std::string checkpoint_table(const kitchen::Lesson& lesson, const Plan& plan) {
  std::vector<Cells> rows;
  for (const timeplan::Checkpoint& check : plan.checkpoints) {
    rows.push_back({kitchen::clock(lesson, check.at), std::to_string(check.wave + 1), check.says});
  }
  return table("Checkpoints", {"At", "Wave", "Reached"}, rows);
}

std::string last_table(const kitchen::Lesson& lesson, const Answer& answer) {
  std::vector<timeplan::LastSafeStart> sorted = answer.last_safe_starts;
  std::stable_sort(sorted.begin(), sorted.end(),
                   [](const auto& a, const auto& b) { return a.at < b.at; });
  std::vector<Cells> rows;
  for (const timeplan::LastSafeStart& last : sorted) {
    rows.push_back({kitchen::clock(lesson, last.at), last.says,
                    own_timelines(lesson, answer) ? "" : std::to_string(last.wave + 1),
                    last.instead});
  }
  return table("Last safe starts", {"Latest", "Step", "Wave", "Later than that"}, rows);
}

std::string place_table(const kitchen::Lesson& lesson, const Plan& plan) {
  std::vector<Cells> rows;
  for (const Wave& wave : waves(lesson, plan)) {
    for (const int c : wave.cooks) {
      const kitchen::Cook& cook = lesson.cooks[at(c)];
      const std::string times = own_times(lesson, wave, c);
      rows.push_back({lesson.room.places[at(cook.place)].name, cook.name,
                      std::to_string(wave.number + 1),
                      times.empty() ? "all with the wave" : times});
    }
  }
  return table("By place: the times that are theirs alone", {"Place", "Cook", "Wave", "Times"},
               rows);
}

std::string own_table(const kitchen::Lesson& lesson, const Wave& wave, int cook) {
  std::vector<Cells> rows;
  for (const Doing& doing : wave.doings) {
    if (doing.example.kind != TaskKind::kWindow && doing.example.cook != cook) continue;
    rows.push_back({kitchen::clock(lesson, doing.start), tag(lesson, doing.example.dish),
                    sentence(lesson, doing.example), look_cell(lesson, doing.example),
                    minutes(doing.end - doing.start)});
  }
  const kitchen::Cook& who = lesson.cooks[at(cook)];
  return table(lesson.room.places[at(who.place)].name + " " + who.name,
               {"Start", "Dish", "Do", "Attention", "For"}, rows);
}

std::string adult_tables(const kitchen::Lesson& lesson, const Plan& plan) {
  std::string out;
  for (int a = 0; at(a) < lesson.adults.size(); ++a) {
    std::vector<Cells> rows;
    for (const auto& [when, what] : adult_lines(lesson, plan, a)) rows.push_back({when, what});
    out += table("Where " + lesson.adults[at(a)].name + " stands", {"When", "Where and why"}, rows);
  }
  return out;
}

std::string equipment_table(const kitchen::Lesson& lesson, const Plan& plan) {
  std::vector<Cells> rows;
  for (const OvenUse& oven : oven_use(lesson, plan)) {
    std::vector<std::string> trays;
    for (const Batch& batch : oven.batches) trays.push_back(tray_words(lesson, batch));
    rows.push_back({"Oven " + lesson.room.cookers[at(oven.cooker)].name,
                    times_words(lesson, oven) + ". " + joined(trays, ", then ")});
  }
  if (plan.tasks.empty()) return "";
  rows.push_back({"Rings", most_words(lesson, ring_use(lesson, plan), rings_in_room(lesson))});
  rows.push_back({"Sinks", most_words(lesson, sink_use(lesson, plan), sinks_in_room(lesson))});
  for (const auto& [item, text] : kit_lines(lesson, plan)) rows.push_back({capital(item), text});
  return table("Equipment", {"What", "In use"}, rows);
}

}  // namespace

std::string tables(const kitchen::Lesson& lesson, const Answer& answer) {
  if (!answer.plan) return "";
  const Plan& plan = *answer.plan;
  std::string out;
  if (own_timelines(lesson, answer)) {
    out += last_table(lesson, answer);
    for (const Wave& wave : waves(lesson, plan)) {
      for (const int c : wave.cooks) out += own_table(lesson, wave, c);
    }
  } else {
    out += checkpoint_table(lesson, plan);
    for (const Wave& wave : waves(lesson, plan)) out += wave_table(lesson, wave);
    out += last_table(lesson, answer) + place_table(lesson, plan);
  }
  return out + adult_tables(lesson, plan) + equipment_table(lesson, plan);
}

}  // namespace print
