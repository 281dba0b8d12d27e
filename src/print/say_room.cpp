// Cook by cook, adult by adult, and what the room's equipment does.
#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "base/index.h"

#include "print/say_parts.h"

namespace print {
namespace {

using base::at;

}  // namespace

std::string own_times(const kitchen::Lesson& lesson, const Wave& wave, int cook) {
  std::vector<std::string> parts;
  for (const Doing& doing : wave.doings) {
    if (!doing.in_turn()) continue;
    for (const Turn& turn : doing.turns) {
      if (std::find(turn.cooks.begin(), turn.cooks.end(), cook) == turn.cooks.end()) continue;
      std::string what = brief(lesson, doing.example);
      if (wave.dishes.size() > 1 && doing.example.dish >= 0)
        what = tag(lesson, doing.example.dish) + " " + what;
      parts.push_back(kitchen::clock(lesson, turn.start) + " " + what);
    }
  }
  return joined(parts, "; ");
}

std::string tray_words(const kitchen::Lesson& lesson, const Batch& batch) {
  std::vector<std::string> trays;
  for (const Tray& tray : batch.trays) {
    std::vector<std::string> names;
    for (const int c : tray.cooks) names.push_back(call(lesson, c));
    trays.push_back(joined(names, "+") +
                    (lesson.dishes.size() > 1 ? " " + tag(lesson, tray.dish) : ""));
  }
  return joined(trays, ", ");
}

std::string times_words(const kitchen::Lesson& lesson, const OvenUse& oven) {
  std::vector<std::string> batches;
  for (const Batch& batch : oven.batches) {
    batches.push_back(fmt::format("{} {}, {}", span(lesson, batch.from, batch.to),
                                  setting(batch.setting),
                                  counted(static_cast<int>(batch.trays.size()), "tray", "trays")));
  }
  return joined(batches, "; then ");
}

std::string most_words(const kitchen::Lesson& lesson, const Usage& use, int there) {
  if (use.most == 0) return "not used.";
  return fmt::format("{} of {} at most, {}.", use.most, there,
                     span(lesson, use.most_from, use.most_to));
}

std::vector<std::pair<std::string, std::string>> kit_lines(const kitchen::Lesson& lesson,
                                                           const Plan& plan) {
  std::vector<std::pair<std::string, std::string>> out;
  for (int k = 0; at(k) < lesson.room.kit.size(); ++k) {
    const kitchen::Kit& kit = lesson.room.kit[at(k)];
    const std::vector<Turn> turns = kit_turns(lesson, plan, k);
    if (turns.empty()) continue;
    std::string text = most_words(lesson, kit_use(lesson, plan, k), kit.count);
    std::set<int> cooks;
    for (const Turn& turn : turns) cooks.insert(turn.cooks.begin(), turn.cooks.end());
    if (kit.washed_between || at(kit.count) < cooks.size()) {  // somebody waits: the order matters
      std::vector<std::string> order;
      for (const Turn& turn : turns) {
        std::vector<std::string> names;
        for (const int c : turn.cooks) names.push_back(call(lesson, c));
        order.push_back(kitchen::clock(lesson, turn.start) + " " + joined(names));
      }
      text += " In turn: " + joined(order, ", ") + ".";
    }
    out.push_back({kit.item, text});
  }
  return out;
}

std::vector<std::pair<std::string, std::string>> adult_lines(const kitchen::Lesson& lesson,
                                                             const Plan& plan, int adult) {
  std::vector<std::pair<Seconds, std::pair<std::string, std::string>>> lines;
  for (const Stand& s : stands(lesson, plan, adult)) {
    lines.push_back({s.from, {span(lesson, s.from, s.to), stopped(stand_words(lesson, s))}});
  }
  if (lesson.adults[at(adult)].leads) {
    for (const KnobRound& r : knob_rounds(oven_use(lesson, plan))) {
      lines.push_back(
          {r.turn.at,
           {kitchen::clock(lesson, r.turn.at), stopped(capital(knob_words(lesson, r)))}});
    }
  }
  std::stable_sort(lines.begin(), lines.end(),
                   [](const auto& x, const auto& y) { return x.first < y.first; });
  std::vector<std::pair<std::string, std::string>> out;
  for (auto& [when, line] : lines) out.push_back(std::move(line));
  return out;
}

namespace {

void say_ovens(Paper& paper, const kitchen::Lesson& lesson, const Plan& plan) {
  for (const OvensAlike& alike : ovens_alike(lesson, oven_use(lesson, plan))) {
    std::vector<std::string> names, each;
    for (const OvenUse& oven : alike.ovens) {
      names.push_back(lesson.room.cookers[at(oven.cooker)].name);
      std::vector<std::string> batches;
      for (const Batch& batch : oven.batches) batches.push_back(tray_words(lesson, batch));
      each.push_back(names.back() + ": " + joined(batches, ", then "));
    }
    const bool one = names.size() == 1;
    std::string text = fmt::format("{}: {}{}.", joined(names),
                                   times_words(lesson, alike.ovens.front()), one ? "" : " each");
    if (!alike.own_trays_only) text += " In oven " + joined(each, "; ") + ".";
    paper.entry(one ? "Oven" : "Ovens", text, 2, 10);
  }
}

}  // namespace

void say_by_place(Paper& paper, const kitchen::Lesson& lesson, const Plan& plan) {
  if (lesson.cooks.empty()) return;
  paper.heading("By place: the times that are theirs alone");
  for (const Wave& wave : waves(lesson, plan)) {
    for (const int c : wave.cooks) {
      const kitchen::Cook& cook = lesson.cooks[at(c)];
      const std::string times = own_times(lesson, wave, c);
      paper.entry(lesson.room.places[at(cook.place)].name,
                  cook.name + (times.empty() ? ": all with the wave." : ": " + times + "."), 2, 5);
    }
  }
}

void say_own_lists(Paper& paper, const kitchen::Lesson& lesson, const Plan& plan) {
  for (const Wave& wave : waves(lesson, plan)) {
    for (const int c : wave.cooks) {
      const kitchen::Cook& cook = lesson.cooks[at(c)];
      std::vector<std::string> dishes;
      for (const int d : cook.dishes) dishes.push_back(tag(lesson, d));
      paper.heading(lesson.room.places[at(cook.place)].name + " " + cook.name +
                    (dishes.empty() ? "" : ": " + joined(dishes, ", ")));
      std::vector<std::string> items;
      for (const Doing& doing : wave.doings) {
        const bool mine = doing.example.kind == TaskKind::kWindow || doing.example.cook == c;
        if (!mine) continue;
        const std::string dish = tag(lesson, doing.example.dish);
        items.push_back(kitchen::clock(lesson, doing.start) + " " +
                        (dish.empty() ? "" : dish + " ") + brief(lesson, doing.example));
      }
      paper.grid(items, 2);
    }
  }
}

void say_adults(Paper& paper, const kitchen::Lesson& lesson, const Plan& plan) {
  for (int a = 0; at(a) < lesson.adults.size(); ++a) {
    const kitchen::Adult& adult = lesson.adults[at(a)];
    const auto lines = adult_lines(lesson, plan, a);
    paper.heading("Where " + adult.name + " stands" + (adult.leads ? " (leads the lesson)" : ""));
    if (lines.empty()) paper.paragraph("Free to help anywhere.", 2);
    for (const auto& [when, what] : lines) paper.entry(when, what, 2, 16);
  }
}

void say_equipment(Paper& paper, const kitchen::Lesson& lesson, const Plan& plan) {
  if (plan.tasks.empty()) return;
  paper.heading("Equipment");
  say_ovens(paper, lesson, plan);
  paper.entry("Rings", most_words(lesson, ring_use(lesson, plan), rings_in_room(lesson)), 2, 10);
  paper.entry("Sinks", most_words(lesson, sink_use(lesson, plan), sinks_in_room(lesson)), 2, 10);
  for (const auto& [item, text] : kit_lines(lesson, plan))
    paper.entry("Kit", item + ": " + text, 2, 10);
}

}  // namespace print
