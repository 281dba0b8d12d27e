#include "print/sheets/allergy_sheet.h"

#include "base/index.h"
#include "print/allergen_parts.h"
#include "print/words.h"

namespace print::sheets {
namespace {

using base::at;

void draw_confidential(Flow& flow) {
  Document& d = flow.document();
  const Block word = d.set("CONFIDENTIAL", {15, true, Align::kLeft, 1});
  Canvas c = flow.canvas();
  c.fill({flow.x(), flow.y(), flow.width(), word.height + 4});
  c.put(word, flow.x() + 8, flow.y() + 2);
  const Block who = d.set("For the adults of this lesson only. Not on a wall, not on a bench.",
                          {10, true, Align::kLeft, 1});
  c.put(who, flow.x() + 20 + word.width, flow.y() + 2 + (word.height - who.height) / 2);
  flow.gap(word.height + 10);
}

void draw_cook(Flow& flow, const AllergenLesson& one, const safety::CookNeeds& needs) {
  const kitchen::Lesson& lesson = one.lesson;
  const kitchen::Cook& cook = lesson.cooks[at(needs.cook)];
  flow.heading(lesson.room.places[at(cook.place)].name + " " + cook.name, 15);
  flow.paragraph(bold(capital(needs_words(needs)) + "."), {11});
  Table table;
  table.columns = {
      {"What", 16, {10, true}}, {"Why", 42, {10}}, {"What settles it", 42, {10}}, {"Done", 7, {}}};
  std::string_view last;
  for (const safety::Conflict& conflict : one.conflicts) {
    if (conflict.cook != needs.cook) continue;
    const std::string_view what = word(conflict.seriousness);
    Words settled;
    for (const safety::Remedy& remedy : conflict.settled_by) {
      if (!settled.empty()) settled.line();
      settled.add(stopped(remedy.says));
    }
    const std::string of = needs.needs.size() > 1 ? std::string(word(conflict.need)) + ": " : "";
    table.rows.push_back({{{what == last ? "" : capital(std::string(what))},
                           {of + sentence(lesson, conflict)},
                           {settled},
                           tick_cell()}});
    last = what;
  }
  if (table.rows.empty()) {
    flow.paragraph("Nothing in the dishes of this lesson is stated or in doubt for this cook.");
  } else {
    flow.table(table);
  }
  const std::string things = own_things_words(needs);
  if (!things.empty()) flow.entry("Own things", things, 76);
  flow.to_fill_in("Care plan read on, medicine is, trained adult today");
}

}  // namespace

void draw_allergy_sheet(Document& document, const AllergenLesson& one) {
  const kitchen::Lesson& lesson = one.lesson;
  document.begin_part(kA4, "CONFIDENTIAL. " + stopped(lesson.title) + " " + day(lesson.date),
                      "CONFIDENTIAL: for the adults of this lesson only");
  Flow flow = Flow::on_new_page(document);
  draw_confidential(flow);
  draw_head(flow, {"", "Allergies and diets in this lesson", under_title(lesson), "", "", false});
  if (one.needs.empty()) {
    flow.paragraph(
        "No cook of this lesson is recorded with an allergy or a diet. Check the school's records.",
        {12});
  }
  for (const safety::CookNeeds& needs : one.needs) draw_cook(flow, one, needs);
  if (!one.order.empty()) {
    flow.heading("Who goes first", 13);
    for (const safety::ThingOrder& thing : one.order)
      flow.entry(capital(thing.thing), turns_words(lesson, thing), 110);
  }
  flow.gap(6);
  flow.paragraph(kLabelsDecide, {10, true});
  flow.paragraph("Shred this sheet after the lesson.", {10});
}

std::string pdf_of_allergy_sheet(const AllergenLesson& one) {
  Document document(one.lesson.title, one.lesson.date);
  draw_allergy_sheet(document, one);
  return document.pdf();
}

}  // namespace print::sheets
