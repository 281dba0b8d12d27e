#include "app/paper_sheets.h"

#include <cstdio>

#include "app/files.h"
#include "app/known_dishes.h"
#include "app/larder_files.h"
#include "app/own_tables.h"
#include "base/text.h"
#include "larder/worked_order.h"
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
#include "print/words.h"
#include "shipped/safety.h"

namespace app {
namespace {

namespace sheets = print::sheets;
using base::Result;
using Draw = std::function<Result<bool>(sheets::Document&, const PaperFrom&)>;

template <class Sheet>
Draw of_plan(Sheet draw) {
  return [draw](sheets::Document& document, const PaperFrom& from) -> Result<bool> {
    draw(document, from.planned());
    return true;
  };
}

Result<bool> draw_cooks(sheets::Document& document, const PaperFrom& from) {
  sheets::CookSheets how;
  for (const sheets::Level level :
       {sheets::Level::kFew, sheets::Level::kPlain, sheets::Level::kFull}) {
    if (from.asked.reading != sheets::word(level)) continue;
    how.level = level;
    sheets::draw_cook_sheets(document, from.planned(), how);
    return true;
  }
  return base::Problem{"paper.reading", "", "",
                       base::say(base::in_quotes(from.asked.reading), " is no level of reading."),
                       "Say \"few words\", plain or full."};
}

Result<bool> draw_trays(sheets::Document& document, const PaperFrom& from) {
  const auto foods = foods_with(from.asked.foods_file);
  if (!foods) return foods.problems();
  const kitchen::Lesson& lesson = from.ready.as_written;
  sheets::draw_tray_list(document, lesson, larder::trays_of(lesson, foods.value()));
  return true;
}

Result<bool> draw_order(sheets::Document& document, const PaperFrom& from) {
  if (from.asked.week_file.empty() || from.asked.prices_file.empty())
    return base::Problem{"paper.week", "", "", "An order is made from a week and a price list.",
                         "Add --week WEEK.json --prices PRICES.csv."};
  const auto foods = foods_with(from.asked.foods_file);
  if (!foods) return foods.problems();
  const auto week = week_in(from.asked.week_file);
  if (!week) return week.problems();
  const auto prices = prices_in(from.asked.prices_file, foods.value());
  if (!prices) return prices.problems();
  const auto stock = stock_in(from.asked.stock_file, foods.value());
  if (!stock) return stock.problems();
  const larder::Needs needs = larder::needs_of(week.value(), foods.value());
  const larder::OrderInput in{week.value(), needs, prices.value(), stock.value().lots,
                              foods.value()};
  const larder::WorkedOrder made = larder::worked_order(in, from.today);
  sheets::draw_order(document, {in, made.order, made.costs, made.days});
  return true;
}

Result<bool> draw_allergies(sheets::Document& document, const PaperFrom& from) {
  const auto foods = foods_with(from.asked.foods_file);
  if (!foods) return foods.problems();
  const auto labels = labels_of(from.asked.labels_file, foods.value());
  if (!labels) return labels.problems();
  const kitchen::Lesson& lesson = from.ready.as_written;
  safety::LessonNeeds needs = safety::needs_in(lesson);
  if (!from.asked.needs_file.empty()) {
    const auto text = read_file(from.asked.needs_file);
    if (!text) return text.problems();
    auto read = safety::read_needs(text.value(), from.asked.needs_file, lesson);
    if (!read) return read.problems();
    needs = std::move(read).value();
  }
  const safety::Evidence evidence{foods.value(), labels.value(), shipped::hidden()};
  const std::vector<kitchen::Dish> known = known_dishes(from.asked.lesson_file);
  sheets::draw_allergy_sheet(
      document,
      {lesson, needs, safety::conflicts({lesson, needs, evidence, shipped::substitutes(), known}),
       safety::order_at_things(lesson, needs, evidence)});
  return true;
}

Result<bool> draw_labels(sheets::Document& document, const PaperFrom& from) {
  const auto foods = foods_with(from.asked.foods_file);
  if (!foods) return foods.problems();
  const auto labels = labels_of(from.asked.labels_file, foods.value());
  if (!labels) return labels.problems();
  const auto stickers = sheets::sticker_sheet(from.asked.stickers);
  if (!stickers) return stickers.problems();
  const sheets::LabelWish wish{stickers.value(), from.asked.numbers, from.asked.given_out,
                               from.asked.gone, from.asked.keep_words};
  const sheets::LabelsDrawn drawn = sheets::draw_labels(
      document, from.ready.as_written, {foods.value(), labels.value(), shipped::hidden()}, wish);
  for (const std::string& dish : drawn.not_whole)
    std::fprintf(stderr, "Not for sale or giving away yet. %s: not known.\n", dish.c_str());
  if (drawn.labels > 0 && drawn.smallest < sheets::kLeastLabelPrint)
    std::fprintf(stderr,
                 "Some labels are printed smaller than a label of food may be (an x of 1.2 mm): "
                 "take larger stickers, such as --stickers 2x4.\n");
  return true;
}

Result<sheets::Letter> letter_of(const PaperFrom& from) {
  sheets::Letter letter{from.ready.as_written, {}, from.asked.reply_by};
  if (from.asked.week_file.empty()) return letter;
  const auto foods = foods_with(from.asked.foods_file);
  if (!foods) return foods.problems();
  const auto week = week_in(from.asked.week_file);
  if (!week) return week.problems();
  larder::PriceList prices;
  if (!from.asked.prices_file.empty()) {
    auto read = prices_in(from.asked.prices_file, foods.value());
    if (!read) return read.problems();
    prices = std::move(read).value();
  }
  for (const larder::WeekLesson& lesson : week.value().lessons) {
    if (lesson.title != letter.lesson.title || base::date_text(lesson.date) != letter.lesson.date)
      continue;
    for (const larder::DishUse& use : lesson.dishes) {
      if (!use.from_home.empty())
        letter.bring.push_back(larder::bring_list(use, prices, foods.value()));
    }
  }
  return letter;
}

Result<bool> draw_letter(sheets::Document& document, const PaperFrom& from) {
  const auto letter = letter_of(from);
  if (!letter) return letter.problems();
  sheets::draw_letter(document, letter.value());
  return true;
}

Result<std::string> letter_text(const PaperFrom& from) {
  const auto letter = letter_of(from);
  if (!letter) return letter.problems();
  return sheets::text_of_letter(letter.value());
}

Result<bool> draw_risks(sheets::Document& document, const PaperFrom& from) {
  sheets::draw_risk_sheet(document, from.ready.as_written);
  return true;
}

Result<std::string> risks_to_edit(const PaperFrom& from) {
  return sheets::odt_of_risk_sheet(from.ready.as_written);
}

}  // namespace

sheets::Planned PaperFrom::planned() const {
  return {ready.lesson, *answer, print::day(base::date_text(today))};
}

const std::vector<PaperSheet>& paper_sheets() {
  static const std::vector<PaperSheet> all = {
      {"teacher", true, false, of_plan(sheets::draw_teacher_page)},
      {"wall", true, true, of_plan(sheets::draw_wall_page)},
      {"bays", true, true, of_plan(sheets::draw_bay_cards)},
      {"cooks", true, true, draw_cooks},
      {"pictures", true, false, of_plan(sheets::draw_picture_cards)},
      {"adults", true, true, of_plan(sheets::draw_adult_sheets)},
      {"bay-check", true, true, of_plan(sheets::draw_bay_check)},
      {"probe", true, false, of_plan(sheets::draw_probe_log)},
      {"rota", true, false, of_plan([](sheets::Document& document, const sheets::Planned& planned) {
         sheets::draw_rota(document, planned);
       })},
      {"trays", false, false, draw_trays},
      {"order", false, false, draw_order},
      {"allergies", false, false, draw_allergies},
      {"labels", false, false, draw_labels},
      {"letter", false, false, draw_letter, PaperBeside{".txt", letter_text}},
      {"risks", false, false, draw_risks, PaperBeside{".odt", risks_to_edit}},
  };
  return all;
}

}  // namespace app
