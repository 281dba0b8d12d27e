#include "print/sheets/room_sheets.h"

#include <algorithm>

#include "base/clock.h"
#include "base/index.h"
#include "base/text.h"
#include "print/say_parts.h"

namespace print::sheets {
namespace {

using base::at;

std::vector<int> by_place(const kitchen::Lesson& lesson) {
  std::vector<int> out;
  for (int c = 0; at(c) < lesson.cooks.size(); ++c) out.push_back(c);
  std::stable_sort(out.begin(), out.end(), [&](int a, int b) {
    return lesson.cooks[at(a)].place < lesson.cooks[at(b)].place;
  });
  return out;
}

std::vector<int> cooks_in(const kitchen::Lesson& lesson, int bay) {
  std::vector<int> out;
  for (const int c : by_place(lesson)) {
    if (bay_of(lesson, c) == bay) out.push_back(c);
  }
  return out;
}

std::string place_of(const kitchen::Lesson& lesson, int cook) {
  return lesson.room.places[at(lesson.cooks[at(cook)].place)].name;
}

int knives_of(const kitchen::Step& step) {
  int count = 0;
  for (const kitchen::KitNeed& need : step.kit) {
    if (need.item.find("knife") != std::string::npos) count += need.count;
  }
  return count;
}

/// Knives in a place's hands at once by the plan; without a plan what its busiest step needs.
int knives_at(const Planned& p, int cook) {
  const kitchen::Lesson& lesson = p.lesson;
  int most = 0;
  for (const int dish : lesson.cooks[at(cook)].dishes) {
    for (const kitchen::Step& step : lesson.dishes[at(dish)].method)
      most = std::max(most, knives_of(step));
  }
  if (!p.answer.plan) return most;
  const std::vector<Task>& all = p.answer.plan->tasks;
  const auto held = [&](const Task& task) {
    const kitchen::Step* step = task.cook == cook ? step_of(lesson, task) : nullptr;
    return step == nullptr || task.kind != TaskKind::kStep ? 0 : knives_of(*step);
  };
  for (const Task& one : all) {
    if (held(one) == 0) continue;
    int now = 0;
    for (const Task& other : all) {
      if (other.start <= one.start && other.end > one.start) now += held(other);
    }
    most = std::max(most, now);
  }
  return most;
}

/// The plan's time for an adult's task of a kind; empty when there is none.
std::string when(const Planned& p, TaskKind kind, int bay = -1) {
  if (!p.answer.plan) return "";
  for (const Task& task : p.answer.plan->tasks) {
    if (task.kind == kind && (bay < 0 || task.bay == bay))
      return kitchen::clock(p.lesson, task.start);
  }
  return "";
}

void begin(Document& document, const Planned& p, const std::string& name) {
  document.begin_part(kA4, foot_words(p), name);
}

// What is looked at before a bay may go: common practice, no source.
constexpr const char* kLooks[] = {"Rings and oven off", "Oven empty, shut", "Worktop dry",
                                  "Sink, drainer",      "Drawers complete", "Floor, stools"};

}  // namespace

bool wants_probe(const kitchen::Dish& dish) {
  const bool heated = std::any_of(dish.method.begin(), dish.method.end(),
                                  [](const kitchen::Step& step) { return step.heat.has_value(); });
  const bool asked = std::any_of(dish.method.begin(), dish.method.end(), [](const auto& step) {
    return step.hygiene == kitchen::Hygiene::kRaw || step.hazard == kitchen::Hazard::kProbing ||
           std::any_of(step.kit.begin(), step.kit.end(), [](const kitchen::KitNeed& need) {
             return need.item.find("probe") != std::string::npos;
           });
  });
  return heated && (asked || dish.hold.kind == kitchen::HoldKind::kHot);
}

void draw_bay_check(Document& document, const Planned& p) {
  const kitchen::Lesson& lesson = p.lesson;
  begin(document, p, "Bay check and knife count");
  Flow flow = Flow::on_new_page(document);
  draw_head(flow, {"", "Bay check and knife count", under_title(lesson), "the bell",
                   kitchen::clock(lesson, lesson.bell), true});

  flow.heading("Knives");
  std::string out = when(p, TaskKind::kKnivesOut), in = when(p, TaskKind::kKnivesIn);
  flow.paragraph(Words("Count out")
                     .bold(out.empty() ? "" : " at " + out)
                     .add(", count in")
                     .bold(in.empty() ? "" : " at " + in)
                     .add(". Nobody leaves while one is missing."));
  Table knives;
  knives.columns = {{"Bay", 10, {13, true}}, {"Places that cut", 34, {10}},
                    {"Due", 8, {13, true}},  {"Out", 12, {}},
                    {"In", 12, {}},          {"Missing, found where", 24, {}}};
  knives.least_row = 24;
  int whole = 0;
  for (int bay = 0; at(bay) < lesson.room.bays.size(); ++bay) {
    const std::vector<int> cooks = cooks_in(lesson, bay);
    if (cooks.empty()) continue;
    std::vector<std::string> places;
    int due = 0;
    for (const int c : cooks) {
      const int knives = knives_at(p, c);
      if (knives == 0) continue;
      due += knives;
      places.push_back(place_of(lesson, c) +
                       (knives > 1 ? " (" + std::to_string(knives) + ")" : ""));
    }
    whole += due;
    knives.rows.push_back({{{lesson.room.bays[at(bay)].name},
                            {joined(places)},
                            {std::to_string(due)},
                            line_cell(),
                            line_cell(),
                            line_cell()}});
  }
  knives.rows.push_back(
      {{{"All"}, {""}, {std::to_string(whole)}, line_cell(), line_cell(), line_cell()}});
  flow.table(knives);
  flow.paragraph(
      "Due is what the plan has in use at each place at once; change it if you give out "
      "another number.",
      {9});

  flow.heading("Before they go");
  Table bays;
  bays.columns = {{"Bay", 9, {13, true}}, {"At", 10, {11, true}, true}};
  for (const char* look : kLooks) bays.columns.push_back({look, 11, {8.5, false, Align::kCentre}});
  bays.columns.push_back({"Seen by", 15, {}});
  bays.least_row = 26;
  for (int bay = 0; at(bay) < lesson.room.bays.size(); ++bay) {
    if (cooks_in(lesson, bay).empty()) continue;
    Row row{{{lesson.room.bays[at(bay)].name}, {when(p, TaskKind::kBayLook, bay)}}};
    for (std::size_t i = 0; i < std::size(kLooks); ++i) row.cells.push_back(tick_cell());
    row.cells.push_back(line_cell());
    bays.rows.push_back(std::move(row));
  }
  flow.table(bays);

  flow.heading("The room");
  Table room;
  room.columns = {{"", 6, {}}, {"", 94, {11}}};
  room.rules = false;
  for (const char* what : {"Gas or main switch off", "Fridges and freezers shut",
                           "Scales, processors and blenders off at the wall, blades counted",
                           "Cloths to the wash, bins emptied"})
    room.rows.push_back({{tick_cell(), {what}}});
  flow.table(room);
  flow.to_fill_in("Broken, lost or to mend", 2);
}

void draw_probe_log(Document& document, const Planned& p) {
  const kitchen::Lesson& lesson = p.lesson;
  begin(document, p, "Probe log");
  Flow flow = Flow::on_new_page(document);
  draw_head(flow, {"", "Probe log", under_title(lesson), "", "", false});
  // Times and temperatures: advice of the Food Standards Agency for cooking and reheating; hot
  // holding: Food Safety and Hygiene (England) Regulations 2013, Schedule 4.
  flow.paragraph(Words("In the middle of the thickest part: ")
                     .bold("75 °C for 30 seconds or 70 °C for 2 minutes")
                     .add(", or your school's own figure (in Scotland reheated food: 82 °C). Below "
                          "that: cook on and probe again. Wipe the probe before and after; the raw "
                          "food's probe never goes into ready food unwiped."));
  flow.to_fill_in("Probe checked in ice (-1 to 1 °C) and boiling water (99 to 101 °C) on");
  Table table;
  table.columns = {
      {"Place", 9, {11, true}, true},      {"Dish", 36, {9.5}}, {"Time", 12, {}}, {"°C", 10, {}},
      {"What was done, if below", 22, {}}, {"By", 11, {}}};
  table.least_row = 19;
  for (const int c : by_place(lesson)) {
    for (const int d : lesson.cooks[at(c)].dishes) {
      const kitchen::Dish& dish = lesson.dishes[at(d)];
      if (!wants_probe(dish)) continue;
      const bool raw = std::any_of(dish.method.begin(), dish.method.end(), [](const auto& step) {
        return step.hygiene == kitchen::Hygiene::kRaw;
      });
      Words name(dish.name);
      if (raw) name.bold(" (raw food in it)");
      table.rows.push_back(
          {{{place_of(lesson, c)}, {name}, line_cell(), line_cell(), line_cell(), line_cell()}});
    }
  }
  for (int i = 0; i < 3; ++i)
    table.rows.push_back(
        {{line_cell(), line_cell(), line_cell(), line_cell(), line_cell(), line_cell()}});
  flow.table(table);
  flow.heading("Kept hot and kept cold");
  flow.paragraph(
      "Hot food for service: 63 °C or more. Fridge: 5 °C or below is the aim, 8 °C the "
      "legal limit.");
  Table kept;
  kept.columns = {{"What", 40, {}}, {"Time", 15, {}}, {"°C", 12, {}}, {"By", 18, {}}};
  kept.least_row = 21;
  for (int i = 0; i < 4; ++i)
    kept.rows.push_back({{{i == 0   ? "Fridge at the start"
                           : i == 1 ? "Fridge at the end"
                                    : ""},
                          line_cell(),
                          line_cell(),
                          line_cell()}});
  flow.table(kept);
}

namespace {

// Jobs of a bay and of the room: common practice, no source.
constexpr const char* kBayJobs[] = {"Wash up", "Dry, put away", "Worktop, hob, oven",
                                    "Sink, drainer, floor"};
constexpr const char* kRoomJobs[] = {"Ingredients table",     "Hand basins, soap, towels",
                                     "Scales and shared kit", "Food waste and recycling",
                                     "Cloths and aprons",     "Stools under, windows"};

int week_of(const std::string& date) {
  const auto day = base::date_in(date);
  return day ? (day->days + 3) / 7 : 0;  // weeks begin on a Monday
}

}  // namespace

void draw_rota(Document& document, const Planned& p, int turn) {
  const kitchen::Lesson& lesson = p.lesson;
  if (turn < 0) turn = week_of(lesson.date);
  begin(document, p, "Rota");
  Flow flow = Flow::on_new_page(document);
  draw_head(flow, {"", "Whose job is it?", under_title(lesson), "", "", false});
  flow.paragraph("Everybody moves on by one job each week.", {11});
  Table table;
  table.columns = {{"Bay", 9, {15, true}}};
  for (const char* job : kBayJobs) table.columns.push_back({job, 23, {11}});
  table.least_row = 40;
  std::vector<int> used;
  for (int bay = 0; at(bay) < lesson.room.bays.size(); ++bay) {
    const std::vector<int> cooks = cooks_in(lesson, bay);
    if (cooks.empty()) continue;
    used.push_back(bay);
    Row row{{{lesson.room.bays[at(bay)].name}}};
    for (std::size_t job = 0; job < std::size(kBayJobs); ++job) {
      const int cook = cooks[(job + at(turn)) % cooks.size()];
      row.cells.push_back({bold(place_of(lesson, cook)).add(" " + lesson.cooks[at(cook)].name)});
    }
    table.rows.push_back(std::move(row));
  }
  flow.table(table);
  flow.heading("For the whole room", 14);
  Table room;
  room.columns = {{"Job", 60, {13}}, {"Bay", 20, {18, true}}, {"", 8, {}}};
  room.least_row = 26;
  for (std::size_t job = 0; job < std::size(kRoomJobs); ++job) {
    const std::string bay = used.empty()
                                ? ""
                                : lesson.room.bays[at(used[(job + at(turn)) % used.size()])].name;
    room.rows.push_back({{{kRoomJobs[job]}, {bay}, tick_cell()}});
  }
  flow.table(room);
  flow.paragraph(
      "Knives are washed one at a time and never left in a sink. Hot pans wait until they are "
      "cold.",
      {11, true});
}

std::string pdf_of_bay_check(const Planned& p) {
  Document document(p.lesson.title, p.lesson.date);
  draw_bay_check(document, p);
  return document.pdf();
}

std::string pdf_of_probe_log(const Planned& p) {
  Document document(p.lesson.title, p.lesson.date);
  draw_probe_log(document, p);
  return document.pdf();
}

std::string pdf_of_rota(const Planned& p, int turn) {
  Document document(p.lesson.title, p.lesson.date);
  draw_rota(document, p, turn);
  return document.pdf();
}

}  // namespace print::sheets
