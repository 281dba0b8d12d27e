#include "samples_of_sheets.h"

#include "kitchen/foods.h"
#include "print/sheets/adult_sheets.h"
#include "print/sheets/allergy_sheet.h"
#include "print/sheets/bay_cards.h"
#include "print/sheets/cook_sheet.h"
#include "print/sheets/labels.h"
#include "print/sheets/larder_sheets.h"
#include "print/sheets/letter.h"
#include "print/sheets/picture_cards.h"
#include "print/sheets/risk_sheet.h"
#include "print/sheets/room_sheets.h"
#include "print/sheets/teacher_page.h"
#include "print/sheets/wall_page.h"

namespace sample {

using print::sheets::Document;
namespace sheets = print::sheets;

namespace {

template <class Draw>
std::function<void(Document&, const Told&)> of_plan(Draw draw) {
  return [draw](Document& d, const Told& told) {
    draw(d, sheets::Planned{told.lesson, told.answer, "Mon 16 Nov"});
  };
}

}  // namespace

std::vector<NamedSheet> all_sheets() {
  return {
      {"teacher", of_plan(sheets::draw_teacher_page)},
      {"wall", of_plan(sheets::draw_wall_page)},
      {"bays", of_plan(sheets::draw_bay_cards)},
      {"cooks",
       of_plan([](Document& d, const sheets::Planned& p) { sheets::draw_cook_sheets(d, p); })},
      {"pictures", of_plan(sheets::draw_picture_cards)},
      {"adults", of_plan(sheets::draw_adult_sheets)},
      {"bay-check", of_plan(sheets::draw_bay_check)},
      {"probe", of_plan(sheets::draw_probe_log)},
      {"rota", of_plan([](Document& d, const sheets::Planned& p) { sheets::draw_rota(d, p); })},
      {"trays",
       [](Document& d, const Told& told) {
         sheets::draw_tray_list(d, told.lesson, larder::trays_of(told.lesson, {}));
       }},
      {"allergies",
       [](Document& d, const Told& told) {
         const safety::LessonNeeds needs = safety::needs_in(told.lesson);
         sheets::draw_allergy_sheet(d, {told.lesson, needs, {}, {}});
       }},
      {"labels",
       [](Document& d, const Told& told) {
         const kitchen::Foods foods;
         const safety::Labels labels;
         const safety::Hidden hidden;
         sheets::draw_labels(d, told.lesson, {foods, labels, hidden},
                             {sheets::sticker_sheet("3x7").value(), false, true, 2, ""});
       }},
      {"letter",
       [](Document& d, const Told& told) {
         sheets::draw_letter(d, {told.lesson, {}, ""});
       }},
      {"risks", [](Document& d, const Told& told) { sheets::draw_risk_sheet(d, told.lesson); }}};
}

Told hard_names() {
  Told told = assessed(30);
  const char* const names[] = {
      "Wilhelmina-Anastasia Featherstonehaugh-Cholmondeley of the Upper Lower Meadow",
      "Donaudampfschifffahrtsgesellschaftskapitänstochter",
      "عبد الرحمن بن خالد",
      "שושנה בת-שבע",
      "Zoë 😀 Łukasz",
      "<b>Bold</b> & \"Quoted\"",
      "Ñandú O’Connor\nof two lines",
      "Владислава Константинопольская"};
  for (std::size_t i = 0; i < told.lesson.cooks.size(); ++i) {
    kitchen::Cook& cook = told.lesson.cooks[i];
    cook.name = names[i % std::size(names)] + std::string(" ") + std::to_string(i + 1);
    if (i % 4 == 0) cook.avoids = {kitchen::Allergen::kMilk};
  }
  return told;
}

std::string pdf_of(const NamedSheet& sheet, const Told& told) {
  Document document(told.lesson.title, told.lesson.date);
  sheet.draw(document, told);
  return document.pdf();
}

}  // namespace sample
