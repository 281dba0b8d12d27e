#include "print/sheets/bay_cards.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

#include "base/index.h"
#include "print/say_parts.h"

namespace print::sheets {
namespace {

using base::at;

std::vector<int> cooks_of(const kitchen::Lesson& lesson, int bay) {
  std::vector<int> out;
  for (int c = 0; at(c) < lesson.cooks.size(); ++c) {
    if (bay_of(lesson, c) == bay) out.push_back(c);
  }
  return out;
}

std::string place_of(const kitchen::Lesson& lesson, int cook) {
  return lesson.room.places[at(lesson.cooks[at(cook)].place)].name;
}

std::string after_start(Seconds s) { return std::to_string((s.count() + 59) / 60); }

/// A variant says nothing on a card: a step is known by its dish's name and its number.
std::string dish_key(const kitchen::Lesson& lesson, const Task& task) {
  return task.dish < 0 ? "" : lesson.dishes[at(task.dish)].tag;
}

/// The dish's name without its variant.
std::string plain_name(const kitchen::Lesson& lesson, int dish) {
  for (const kitchen::Dish& each : lesson.dishes) {
    if (each.tag == lesson.dishes[at(dish)].tag && each.variant.empty()) return each.name;
  }
  return lesson.dishes[at(dish)].name;
}

std::string card_words(const kitchen::Lesson& lesson, const Task& task) {
  if (task.kind == TaskKind::kFullClean && task.kit >= 0)
    return "Full clean of the " + lesson.room.kit[at(task.kit)].item;
  if (task.kind != TaskKind::kStep) return sentence(lesson, task);
  // The words of the dish as written, also where a variant changes them.
  for (const kitchen::Dish& dish : lesson.dishes) {
    if (dish.tag == lesson.dishes[at(task.dish)].tag && dish.variant.empty() &&
        at(task.step) < dish.method.size()) {
      Task plain = task;
      plain.dish = static_cast<int>(&dish - lesson.dishes.data());
      return sentence(lesson, plain);
    }
  }
  return sentence(lesson, task);
}

bool attends(const kitchen::Lesson& lesson, const Task& window, const std::vector<int>& cooks) {
  const std::vector<int> there = audience(lesson, lesson.windows[at(window.window)]);
  return std::any_of(cooks.begin(), cooks.end(), [&](int c) {
    return std::find(there.begin(), there.end(), c) != there.end();
  });
}

/// Two minutes or more in which nobody of the bay has anything in hand.
void add_waits(const kitchen::Lesson& lesson, const Plan& plan, const std::vector<int>& cooks,
               std::vector<BayLine>& lines) {
  std::vector<const Task*> busy, alone;
  for (const Task& task : plan.tasks) {
    const bool ours = task.kind == TaskKind::kWindow
                          ? attends(lesson, task, cooks)
                          : std::find(cooks.begin(), cooks.end(), task.cook) != cooks.end();
    if (!ours) continue;
    const bool hands = task.kind != TaskKind::kStep || keeps_hands_busy(lesson, task);
    (hands ? busy : alone).push_back(&task);
  }
  Seconds free{0};
  for (const Task* task : busy) {  // by start
    if (free > Seconds{0} && task->start >= free + base::minutes(2)) {
      std::vector<std::string> cooking;
      for (const Task* other : alone) {
        const std::string name = brief(lesson, *other);
        if (other->start < task->start && other->end > free &&
            std::find(cooking.begin(), cooking.end(), name) == cooking.end())
          cooking.push_back(name);
      }
      BayLine wait;
      wait.from = free;
      wait.to = task->start;
      wait.each = wait.to - wait.from;
      wait.look = Look::kLeave;
      wait.waits = true;
      wait.says = cooking.empty() ? "Wait for the others; clear your place"
                                  : "Hands free while it cooks: " + listed(cooking);
      lines.push_back(std::move(wait));
    }
    free = std::max(free, task->end);
  }
  std::stable_sort(lines.begin(), lines.end(),
                   [](const BayLine& a, const BayLine& b) { return a.from < b.from; });
}

}  // namespace

std::vector<BayLine> bay_lines(const kitchen::Lesson& lesson, const Plan& plan, int bay) {
  const std::vector<int> cooks = cooks_of(lesson, bay);
  std::set<std::string> tags;
  for (const int c : cooks) {
    for (const int d : lesson.cooks[at(c)].dishes) tags.insert(lesson.dishes[at(d)].tag);
  }
  struct Gathered {
    BayLine line;
    std::map<Seconds, std::vector<std::string>> turns;
  };
  using Key = std::tuple<int, std::string, int, int, int, int>;
  std::vector<std::pair<Key, Gathered>> all;
  for (const Task& task : plan.tasks) {
    const bool window = task.kind == TaskKind::kWindow;
    if (window ? !attends(lesson, task, cooks)
               : task.cook < 0 || std::find(cooks.begin(), cooks.end(), task.cook) == cooks.end())
      continue;
    const Key key{static_cast<int>(task.kind),
                  dish_key(lesson, task),
                  task.step,
                  task.part,
                  task.window,
                  task.kit};
    auto found = std::find_if(all.begin(), all.end(),
                              [&](const auto& each) { return each.first == key; });
    if (found == all.end()) {
      all.push_back({key, {}});
      found = all.end() - 1;
      BayLine& line = found->second.line;
      line.from = task.start;
      line.look = look(lesson, task);
      line.each = task.end - task.start;
      line.hands_off = window;
      if (tags.size() > 1) line.dish = dish_key(lesson, task);
      line.says = card_words(lesson, task);
    }
    BayLine& line = found->second.line;
    line.from = std::min(line.from, task.start);
    line.to = std::max(line.to, task.end);
    if (task.cook >= 0) found->second.turns[task.start].push_back(place_of(lesson, task.cook));
  }
  std::vector<BayLine> out;
  for (auto& [key, gathered] : all) {
    auto& [line, turns] = gathered;
    std::set<std::string> whole;
    for (const int c : cooks) whole.insert(place_of(lesson, c));
    const bool everybody = turns.size() == 1 &&
                           std::set<std::string>(turns.begin()->second.begin(),
                                                 turns.begin()->second.end()) == whole;
    std::vector<std::string> parts;
    for (const auto& [when, places] : turns) {
      std::set<std::string> once(places.begin(), places.end());
      parts.push_back(joined({once.begin(), once.end()}) +
                      (turns.size() > 1 ? " at " + after_start(when) : ""));
    }
    if (!everybody) line.in_turn = joined(parts, ", ");
    out.push_back(std::move(line));
  }
  std::stable_sort(out.begin(), out.end(),
                   [](const BayLine& a, const BayLine& b) { return a.from < b.from; });
  add_waits(lesson, plan, cooks, out);
  return out;
}

namespace {

void draw_card(Document& document, const Planned& p, int bay, double size) {
  const kitchen::Lesson& lesson = p.lesson;
  const std::string name = lesson.room.bays[at(bay)].name;
  document.begin_part(kA4, foot_words(p), "Bay " + name);
  Flow flow = Flow::on_new_page(document);
  const std::vector<BayLine> lines = bay_lines(lesson, *p.answer.plan, bay);
  const bool tags = std::any_of(lines.begin(), lines.end(),
                                [](const BayLine& line) { return !line.dish.empty(); });
  std::vector<std::string> places, dishes;
  for (const int c : cooks_of(lesson, bay)) {
    const std::string place = place_of(lesson, c);
    if (std::find(places.begin(), places.end(), place) == places.end()) places.push_back(place);
    for (const int d : lesson.cooks[at(c)].dishes) {
      const kitchen::Dish& dish = lesson.dishes[at(d)];
      const std::string said = (tags ? dish.tag + " " : "") + plain_name(lesson, d);
      if (std::find(dishes.begin(), dishes.end(), said) == dishes.end()) dishes.push_back(said);
    }
  }
  draw_head(flow, {name, joined(dishes, ", "),
                   (places.size() == 1 ? "Place " : "Places ") + listed(places),
                   "minutes to the bell", after_start(lesson.bell), true});
  flow.paragraph(Words("Minutes count from the start of the lesson. Today it starts at ")
                     .add("______ . ")
                     .bold("Use only what lies on your own tray."),
                 {10});

  Table table;
  table.columns = {{"Minute", 9, {size + 4, true, Align::kRight}, true},
                   {"", 4, {}},
                   {"", 10, {std::min(size, 10.5)}, true},
                   {"", tags ? 6.0 : 0.1, {size, true}, true},
                   {"Do", 58, {size}},
                   {"For", 9, {size - 0.5}, true},
                   {"", 5, {}}};
  for (const BayLine& line : lines) {
    Words says(line.says);
    if (!line.in_turn.empty()) says.add(". ").bold(line.in_turn);
    table.rows.push_back({{{after_start(line.from)},
                           line.hands_off || line.waits ? Cell{} : look_cell(line.look),
                           {line.hands_off ? "hands off"
                            : line.waits   ? "wait"
                                           : look_word(line.look)},
                           {tags ? line.dish : ""},
                           {says},
                           {minutes(line.each)},
                           line.waits ? Cell{} : tick_cell()}});
  }
  table.least_row = size * 1.6;
  table.pad = size > 10 ? 3 : 1.5;
  flow.table(table);
  flow.paragraph(Words("Stuck, cut or burnt? ")
                     .bold("Hand up, stay at your place.")
                     .add(" Cool a burn under cool running water at once and tell your teacher."),
                 {10});
}

}  // namespace

namespace {

/// Every cook their own times: a column a cook, the short names only.
void draw_own_card(Document& document, const Planned& p, int bay, double size) {
  const kitchen::Lesson& lesson = p.lesson;
  const std::string name = lesson.room.bays[at(bay)].name;
  document.begin_part(kA4, foot_words(p), "Bay " + name);
  Flow flow = Flow::on_new_page(document);
  draw_head(flow, {name, "Each place has its own times", "Minutes from the start of the lesson",
                   "minutes to the bell", after_start(lesson.bell), true});
  flow.paragraph(bold("Use only what lies on your own tray."), {10});
  const std::vector<int> cooks = cooks_of(lesson, bay);
  const double gap = 10;
  const double width = (flow.width() - gap * static_cast<double>(cooks.size() - 1)) /
                       static_cast<double>(cooks.size());
  for (std::size_t i = 0; i < cooks.size(); ++i) {
    Flow column(document, flow.page(),
                {flow.x() + static_cast<double>(i) * (width + gap), flow.y(), width, flow.left()});
    column.heading(place_of(lesson, cooks[i]), 14);
    Table table;
    table.columns = {
        {"", 17, {size + 1, true, Align::kRight}, true}, {"", 14, {}}, {"", 69, {size}}};
    table.pad = 1.5;
    for (const Task& task : p.answer.plan->tasks) {
      const bool window = task.kind == TaskKind::kWindow;
      if (window ? !attends(lesson, task, {cooks[i]}) : task.cook != cooks[i]) continue;
      const std::string dish = lesson.cooks[at(cooks[i])].dishes.size() > 1 ? dish_key(lesson, task)
                                                                            : "";
      table.rows.push_back({{{after_start(task.start)},
                             window ? Cell{} : look_cell(look(lesson, task)),
                             {(dish.empty() ? "" : dish + " ") + brief(lesson, task)}}});
    }
    column.table(table);
  }
}

}  // namespace

void draw_bay_cards(Document& document, const Planned& p) {
  if (!p.answer.plan) return;
  const auto draw = own_timelines(p.lesson, p.answer) ? draw_own_card : draw_card;
  for (int bay = 0; at(bay) < p.lesson.room.bays.size(); ++bay) {
    if (cooks_of(p.lesson, bay).empty()) continue;
    const double size = size_that_fits({14, 13, 12, 11, 10, 9.5, 9, kSmall, 8}, 1,
                                       [&](Document& d, double s) { draw(d, p, bay, s); });
    draw(document, p, bay, size);
  }
}

std::string pdf_of_bay_cards(const Planned& p) {
  Document document(p.lesson.title, p.lesson.date);
  draw_bay_cards(document, p);
  return document.pdf();
}

}  // namespace print::sheets
