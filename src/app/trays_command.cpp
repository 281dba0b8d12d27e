// benchbell trays: what to weigh and where to set it out, and the cards on the trays.
#include "app/commands.h"
#include "app/files.h"
#include "app/larder_files.h"
#include "app/own_tables.h"
#include "base/csv.h"
#include "kitchen/read.h"
#include "print/say_trays.h"

namespace app {

int trays(const TraysAsked& asked) {
  const auto foods = foods_with(asked.own_file);
  if (!foods) return tell(foods.problems());
  const auto text = read_file(asked.lesson_file);
  if (!text) return tell(text.problems());
  const auto lesson = kitchen::read_lesson(text.value(), asked.lesson_file, file_loader());
  if (!lesson) return tell(lesson.problems());
  const larder::Trays set = larder::trays_of(lesson.value(), foods.value());
  Spoken spoken;
  spoken.text = asked.cards ? print::tray_cards(lesson.value(), set)
                            : print::say_trays(lesson.value(), set);
  for (const auto& row : print::weighing_rows(set)) spoken.csv += base::csv_line(row);
  spoken.csv += '\n';
  for (const auto& row : print::tray_rows(set)) spoken.csv += base::csv_line(row);
  spoken.json = print::trays_json(lesson.value(), set);
  spoken.sheets = {{"Weigh", print::weighing_rows(set), {2}},
                   {"Set out", print::tray_rows(set), {}}};
  return give(spoken, asked.format, asked.out_file);
}

}  // namespace app
