// How long paper takes: the sheets of a class of twenty-four, and of thirty with three dishes each.
// A class set of cooks' sheets is to be there in under two seconds.
#include <fmt/format.h>

#include <chrono>

#include "print/sheets/bay_cards.h"
#include "print/sheets/cook_sheet.h"
#include "print/sheets/picture_cards.h"
#include "print/sheets/teacher_page.h"
#include "print/sheets/wall_page.h"
#include "sample.h"

namespace {

using namespace print::sheets;

void time_of(const char* what, const sample::Told& told, void (*draw)(Document&, const Planned&)) {
  double best = 1e9;
  std::size_t bytes = 0;
  int pages = 0;
  for (int i = 0; i < 3; ++i) {
    const auto start = std::chrono::steady_clock::now();
    Document document(told.lesson.title, told.lesson.date);
    draw(document, {told.lesson, told.answer, ""});
    pages = document.pages();
    bytes = document.pdf().size();
    best = std::min(
        best, std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count());
  }
  fmt::print("{:<42} {:>3} pages {:>7.1f} kB {:>7.3f} s\n", what, pages,
             static_cast<double>(bytes) / 1000, best);
}

void cooks(Document& document, const Planned& planned) { draw_cook_sheets(document, planned); }

}  // namespace

int main() {
  const sample::Told twelve = sample::two_waves();
  const sample::Told class_set = sample::assessed(24);
  const sample::Told thirty = sample::assessed(30);
  time_of("teacher's page, two waves", twelve, draw_teacher_page);
  time_of("wall page, two waves", twelve, draw_wall_page);
  time_of("bay cards, two waves", twelve, draw_bay_cards);
  time_of("cooks' sheets, twelve with two dishes", twelve, cooks);
  time_of("cooks' sheets, twenty-four, three dishes", class_set, cooks);
  time_of("cooks' sheets, thirty, three dishes", thirty, cooks);
  time_of("teacher's page, thirty, three dishes", thirty, draw_teacher_page);
  time_of("bay cards, thirty, three dishes", thirty, draw_bay_cards);
  time_of("picture cards, three dishes", thirty, draw_picture_cards);
}
