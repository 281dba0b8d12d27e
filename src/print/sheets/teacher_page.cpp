#include "print/sheets/teacher_page.h"

#include <fmt/format.h>

#include <algorithm>

#include "base/index.h"
#include "base/text.h"
#include "kitchen/check_lesson.h"
#include "print/chance_words.h"
#include "print/say_parts.h"
#include "print/sheets/strip.h"

namespace print::sheets {
namespace {

using base::at;

bool any_avoided(const kitchen::Lesson& lesson) {
  return std::any_of(lesson.cooks.begin(), lesson.cooks.end(),
                     [](const kitchen::Cook& cook) { return !cook.avoids.empty(); });
}

void say_chance_line(Flow& flow, const Planned& p) {
  const auto chance = likely(p.lesson, p.answer);
  if (!chance) return;
  const double picture = 150;
  const double top = flow.y();
  Canvas c = flow.canvas();
  draw_chance(c, p.lesson, chance->marks, {flow.x() + flow.width() - picture, top, picture, 38});
  Flow words(flow.document(), flow.page(),
             {flow.x(), top, flow.width() - picture - 12, flow.left()});
  words.paragraph(Words().bold(chance->whole), {9.5});
  for (const std::string& sentence : chance->says) words.paragraph(sentence, {9});
  flow.gap(std::max(42.0, words.y() - top));
}

/// Why it does not fit and what would help, as the plan says it.
void say_trouble(Flow& flow, const Planned& p) {
  const timeplan::Answer& answer = p.answer;
  if (answer.verdict == timeplan::Verdict::kFits) return;
  if (!answer.causes.empty()) flow.heading("What stops it");
  for (const timeplan::Cause& cause : answer.causes) flow.paragraph(stopped(cause.says));
  if (!answer.remedies.empty()) flow.heading("What would help");
  int n = 0;
  for (const timeplan::Remedy& remedy : answer.remedies) {
    std::string text = stopped(remedy.says);
    if (!remedy.buys.empty()) text += " " + stopped(capital(remedy.buys));
    flow.entry(std::to_string(++n), text, 14);
  }
  if (!answer.remedies.empty()) flow.paragraph("Each was checked by planning again.", {9});
}

/// What follows is a plan that does not fit: it must not be taught from.
void say_late(Flow& flow, const Planned& p) {
  if (p.answer.verdict == timeplan::Verdict::kFits) return;
  flow.heading("The least late plan");
  flow.paragraph(bold("It runs past the bell. It is here to show where the time goes."), {11});
}

void say_checkpoints(Flow& flow, const Planned& p, double size) {
  const bool waves = p.answer.plan->waves > 1;
  if (p.answer.plan->checkpoints.empty()) return;
  flow.heading("Checkpoints: say these aloud");
  int wave = -1;
  for (const timeplan::Checkpoint& check : p.answer.plan->checkpoints) {
    if (waves && check.wave != wave)
      flow.paragraph(bold(fmt::format("Wave {}", check.wave + 1)), {size});
    wave = check.wave;
    const std::string dish = several_dishes(p.lesson) ? tag(p.lesson, check.dish) : "";
    flow.entry(kitchen::clock(p.lesson, check.at),
               check.says + (dish.empty() ? "" : " (" + dish + ")"), size * 4.6, {size * 1.5});
  }
}

/// Windows and stops, and from when to when results are looked at; whom to call stands where the
/// adult's own times are.
void say_stops(Flow& flow, const Planned& p, const std::vector<Wave>& all, double size) {
  struct Line {
    Seconds from{0}, to{0};
    std::string says;
    bool gate = false;
  };
  std::vector<Line> lines;
  for (const Wave& wave : all) {
    for (const Doing& doing : wave.doings) {
      const bool gate = doing.example.kind == TaskKind::kLook;
      if (!gate && doing.example.kind != TaskKind::kWindow) continue;
      std::string says = gate ? stopped(sentence(p.lesson, doing.example))
                              : doing_words(p.lesson, doing);
      const auto same = std::find_if(lines.begin(), lines.end(), [&](const Line& line) {
        return line.says == says && (gate || (line.from == doing.start && line.to == doing.end));
      });
      if (same == lines.end()) {
        lines.push_back({doing.start, doing.end, std::move(says), gate});
      } else {
        same->from = std::min(same->from, doing.start);
        same->to = std::max(same->to, doing.end);
      }
    }
  }
  if (lines.empty()) return;
  std::stable_sort(lines.begin(), lines.end(),
                   [](const Line& a, const Line& b) { return a.from < b.from; });
  Table table;
  table.columns = {{"", 31, {size, true}, true}, {"", 69, {size}}};
  for (const Line& line : lines)
    table.rows.push_back({{{span(p.lesson, line.from, line.to)}, {line.says}}});
  flow.heading("Stops and gates");
  flow.table(table);
}

void say_last_starts(Flow& flow, const Planned& p, double size) {
  if (p.answer.last_safe_starts.empty()) return;
  std::vector<timeplan::LastSafeStart> sorted = p.answer.last_safe_starts;
  std::stable_sort(sorted.begin(), sorted.end(),
                   [](const auto& a, const auto& b) { return a.at < b.at; });
  const bool own = own_timelines(p.lesson, p.answer);
  Table table;
  table.columns = {{"Latest", 14, {size + 1, true}, true},
                   {"Start", 36, {size}},
                   {"Later than that", 50, {size}}};
  for (const timeplan::LastSafeStart& last : sorted) {
    std::string what = last.says;
    if (!own && p.answer.plan->waves > 1) what += fmt::format(", wave {}", last.wave + 1);
    if (own && last.task >= 0 && p.answer.plan->tasks[at(last.task)].cook >= 0)
      what += ", " + call(p.lesson, p.answer.plan->tasks[at(last.task)].cook);
    table.rows.push_back({{{kitchen::clock(p.lesson, last.at)},
                           {capital(what)},
                           {last.instead.empty() ? "" : stopped(capital(last.instead))}}});
  }
  flow.heading("Last safe starts");
  flow.table(table);
}

void say_where_to_stand(Flow& flow, const Planned& p, double size) {
  for (int a = 0; at(a) < p.lesson.adults.size(); ++a) {
    const kitchen::Adult& adult = p.lesson.adults[at(a)];
    if (!adult.leads) continue;
    flow.heading("Where " + adult.name + " stands");
    Table table;
    table.columns = {{"", 31, {size, true}, true}, {"", 69, {size}}};
    for (const auto& [when, what] : adult_lines(p.lesson, *p.answer.plan, a))
      table.rows.push_back({{{when}, {what}}});
    if (table.rows.empty()) {
      flow.paragraph("Free to help anywhere.", {size});
    } else {
      flow.table(table);
    }
  }
}

/// Of all dishes, each once, in their order.
std::vector<std::string> questions_of(const kitchen::Lesson& lesson) {
  std::vector<std::string> out;
  for (const kitchen::Dish& dish : lesson.dishes) {
    for (const std::string& question : dish.questions) {
      if (std::find(out.begin(), out.end(), question) == out.end()) out.push_back(question);
    }
  }
  return out;
}

void say_waiting(Flow& flow, const Planned& p, double size) {
  const std::vector<Wait> all = waiting_minutes(p.lesson, *p.answer.plan);
  const std::vector<std::string> questions = questions_of(p.lesson);
  if (all.empty() || own_timelines(p.lesson, p.answer)) return;
  flow.heading("A question for the waiting minutes");
  for (std::size_t i = 0; i < all.size(); ++i) {
    const Wait& wait = all[i];
    std::string text = span(p.lesson, wait.from, wait.to);
    if (p.answer.plan->waves > 1) text += fmt::format(", wave {}", wait.wave + 1);
    const Words when = Words().bold(text).add(" while it waits: " + wait.meanwhile);
    if (questions.empty()) {
      flow.to_fill_in(when, 1, {size});
    } else {
      flow.paragraph(when, {size});
      flow.paragraph(questions[i % questions.size()], {size});
    }
  }
}

/// What the dishes are cooked to learn, and the words to know afterwards.
void say_aims(Flow& flow, const kitchen::Lesson& lesson, double size) {
  bool headed = false;
  for (const kitchen::Dish& dish : lesson.dishes) {
    if ((dish.aim.empty() && dish.key_words.empty()) || !dish.variant.empty()) continue;
    if (!headed) flow.heading("What it is for");
    headed = true;
    Words words = Words().bold(dish.name + ". ").add(dish.aim);
    if (!dish.key_words.empty())
      words = words.add((dish.aim.empty() ? "Words: " : " Words: ") + base::joined(dish.key_words) +
                        ".");
    flow.paragraph(words, {size});
  }
}

void say_health(Flow& flow, const kitchen::Lesson& lesson, double size) {
  flow.heading("Allergies and first aid");
  if (any_avoided(lesson))
    flow.paragraph("An allergy is recorded for this class: the allergy sheet says whose.", {size});
  flow.to_fill_in("Injectors and inhalers are kept", 1, {size});
  flow.to_fill_in("Trained to use them", 1, {size});
  flow.to_fill_in("To know today", 1, {size});
}

void say_in_order(Flow& flow, const Planned& p, const std::vector<Wave>& all, double size) {
  for (const Wave& wave : all) {
    if (wave.cooks.empty()) continue;
    Table table;
    const bool tags = several_dishes(p.lesson, wave.dishes);
    table.columns = {{"When", 17, {size, true}, true},
                     {"", 6, {size, true}, true},
                     {"", 4, {}},
                     {"Do", 73, {size}}};
    for (const Doing& doing : wave.doings) {
      const bool window = doing.example.kind == TaskKind::kWindow;
      table.rows.push_back({{{span(p.lesson, doing.start, doing.end)},
                             {tags ? tag(p.lesson, doing.example.dish) : ""},
                             window ? Cell{} : look_cell(look(p.lesson, doing.example)),
                             {doing_words(p.lesson, doing)}}});
    }
    flow.heading(wave_words(p.lesson, wave));
    flow.table(table);
  }
}

}  // namespace

std::vector<Wait> waiting_minutes(const kitchen::Lesson& lesson, const Plan& plan) {
  std::vector<Wait> out;
  for (const Wave& wave : waves(lesson, plan)) {
    // Everybody's hands are free: from the end of one thing to the start of the next.
    Seconds free{0};
    for (const Doing& doing : wave.doings) {
      const bool busy = doing.example.kind == TaskKind::kWindow ||
                        doing.example.kind == TaskKind::kLook ||
                        keeps_hands_busy(lesson, doing.example);
      if (!busy) continue;
      if (free > Seconds{0} && doing.start >= free + base::minutes(3)) {
        std::vector<std::string> meanwhile;
        for (const Doing& other : wave.doings) {
          if (!keeps_hands_busy(lesson, other.example) && other.example.kind == TaskKind::kStep &&
              other.start < doing.start && other.end > free)
            meanwhile.push_back(brief(lesson, other.example));
        }
        if (!meanwhile.empty()) out.push_back({free, doing.start, wave.number, listed(meanwhile)});
      }
      free = std::max(free, doing.end);
    }
  }
  return out;
}

namespace {

void draw_front(Document& document, const Planned& p, double size) {
  Flow flow = Flow::on_new_page(document);
  draw_head(flow, {"", verdict_words(p.lesson, p.answer), lesson_words(p.lesson), "the bell",
                   kitchen::clock(p.lesson, p.lesson.bell), true});
  say_chance_line(flow, p);
  say_trouble(flow, p);
  if (!p.answer.plan) return;
  const std::vector<Wave> all = waves(p.lesson, *p.answer.plan);
  say_late(flow, p);
  draw_strip(flow, p, size + 2);
  draw_key(flow);

  const double gap = 16, half = (flow.width() - gap) / 2;
  if (flow.left() < 120) flow.next_page();
  Flow left(document, flow.page(), {flow.x(), flow.y(), half, flow.left()});
  Flow right(document, flow.page(), {flow.x() + half + gap, flow.y(), half, flow.left()});
  const bool own = own_timelines(p.lesson, p.answer);
  say_checkpoints(left, p, size);
  say_last_starts(left, p, size);
  say_health(left, p.lesson, size);
  say_waiting(left, p, size);
  say_aims(left, p.lesson, size);
  if (!own) say_stops(right, p, all, size);
  say_where_to_stand(right, p, size);
  const std::vector<std::string> rules = kitchen::rule_notes(p.lesson);
  if (!rules.empty()) right.heading("House rules today");
  for (const std::string& rule : rules) right.paragraph(rule, {size});
  right.gap(4);
  right.paragraph(caution_words(), {size, true});
}

}  // namespace

void draw_teacher_page(Document& document, const Planned& p) {
  const auto begin = [&](Document& d) { d.begin_part(kA4, foot_words(p), p.lesson.title); };
  begin(document);
  draw_front(document, p,
             size_that_fits({11.5, 10.5, 9.5, 9, kSmall}, 1, [&](Document& d, double s) {
               begin(d);
               draw_front(d, p, s);
             }));
  if (!p.answer.plan || own_timelines(p.lesson, p.answer)) return;
  // The order step by step goes on the back.
  const std::vector<Wave> all = waves(p.lesson, *p.answer.plan);
  const auto back = [&](Document& d, double size) {
    Flow flow = Flow::on_new_page(d);
    say_late(flow, p);
    say_in_order(flow, p, all, size);
  };
  back(document, size_that_fits({11, 10, 9.5, 9, kSmall}, 1, [&](Document& d, double s) {
         begin(d);
         back(d, s);
       }));
}

std::string pdf_of_teacher_page(const Planned& p) {
  Document document(p.lesson.title, p.lesson.date);
  draw_teacher_page(document, p);
  return document.pdf();
}

}  // namespace print::sheets
