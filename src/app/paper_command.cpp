// benchbell paper: the sheets of a lesson as PDF, in a folder or as one file.
#include <algorithm>
#include <cstdio>
#include <filesystem>
#include <functional>
#include <optional>

#include "app/commands.h"
#include "app/files.h"
#include "app/larder_files.h"
#include "app/planning.h"
#include "base/text.h"
#include "print/sheets/adult_sheets.h"
#include "print/sheets/bay_cards.h"
#include "print/sheets/cook_sheet.h"
#include "print/sheets/picture_cards.h"
#include "print/sheets/room_sheets.h"
#include "print/sheets/teacher_page.h"
#include "print/sheets/wall_page.h"
#include "print/words.h"

namespace app {
namespace {

namespace sheets = print::sheets;

/// What a sheet is made from; the answer only when a sheet that was asked for needs a plan.
struct From {
  const PaperAsked& asked;
  const Ready& ready;
  const std::optional<timeplan::Answer>& answer;
  std::string today;

  sheets::Planned planned() const { return {ready.lesson, *answer, print::day(today)}; }
};

struct SheetKind {
  const char* name;
  bool plan;  ///< needs one
  std::function<base::Result<bool>(sheets::Document&, const From&)> draw;
};

template <class Draw>
std::function<base::Result<bool>(sheets::Document&, const From&)> of_plan(Draw draw) {
  return [draw](sheets::Document& document, const From& from) -> base::Result<bool> {
    draw(document, from.planned());
    return true;
  };
}

base::Result<bool> draw_cooks(sheets::Document& document, const From& from) {
  sheets::CookSheets how;
  for (const sheets::Level level :
       {sheets::Level::kFew, sheets::Level::kPlain, sheets::Level::kFull}) {
    if (from.asked.reading != sheets::word(level)) continue;
    how.level = level;
    sheets::draw_cook_sheets(document, from.planned(), how);
    return true;
  }
  return base::Problem{"paper.reading", "", "",
                       base::say(base::quoted(from.asked.reading), " is no level of reading."),
                       "Say few words, plain or full."};
}

const std::vector<SheetKind>& kinds() {
  static const std::vector<SheetKind> all = {
      {"teacher", true, of_plan(sheets::draw_teacher_page)},
      {"wall", true, of_plan(sheets::draw_wall_page)},
      {"bays", true, of_plan(sheets::draw_bay_cards)},
      {"cooks", true, draw_cooks},
      {"pictures", true, of_plan(sheets::draw_picture_cards)},
      {"adults", true, of_plan(sheets::draw_adult_sheets)},
      {"bay-check", true, of_plan(sheets::draw_bay_check)},
      {"probe", true, of_plan(sheets::draw_probe_log)},
      {"rota", true, of_plan([](sheets::Document& d, const sheets::Planned& p) {
         sheets::draw_rota(d, p);
       })},
  };
  return all;
}

base::Result<std::vector<const SheetKind*>> asked_kinds(const std::string& what) {
  std::vector<const SheetKind*> out;
  base::Problems problems;
  for (const std::string& name : base::parts(what, ',')) {
    const auto found = std::find_if(kinds().begin(), kinds().end(),
                                    [&](const SheetKind& kind) { return name == kind.name; });
    if (found != kinds().end()) {
      out.push_back(&*found);
      continue;
    }
    std::vector<std::string> names;
    for (const SheetKind& kind : kinds()) names.emplace_back(kind.name);
    problems.push_back({"paper.what", "", "",
                        base::say("There is no sheet called ", base::quoted(name), "."),
                        base::say("There are ", base::joined(names), ".")});
  }
  if (problems.empty() && out.empty())
    problems.push_back({"paper.what", "", "", "No sheet was named.", "Say --what teacher,wall."});
  if (!problems.empty()) return problems;
  return out;
}

base::Result<bool> write(const std::string& path, const std::string& bytes) {
  const auto written = write_file(path, bytes);
  if (!written) return written.problems();
  std::printf("%s\n", path.c_str());
  return true;
}

void warn_of_unknown(const sheets::Document& document, const std::string& path) {
  const int unknown = document.unknown_letters();
  if (unknown == 0) return;
  std::fprintf(stderr,
               "%s: %s not in any typeface of this machine and print as boxes. A package of "
               "typefaces for that script mends it.\n",
               path.c_str(),
               base::counted(unknown, "letter is", "letters are").c_str());
}

base::Result<bool> one_file(const std::vector<const SheetKind*>& wanted, const From& from) {
  sheets::Document document(from.ready.lesson.title, from.ready.lesson.date);
  for (const SheetKind* kind : wanted) {
    const auto drawn = kind->draw(document, from);
    if (!drawn) return drawn;
  }
  warn_of_unknown(document, from.asked.out);
  return write(from.asked.out, document.pdf());
}

base::Result<bool> a_folder(const std::vector<const SheetKind*>& wanted, const From& from) {
  const std::filesystem::path folder = from.asked.out;
  std::error_code error;
  std::filesystem::create_directories(folder, error);
  if (error)
    return base::Problem{"file.unwritable", folder.string(), "",
                         base::say("The folder ", base::quoted(folder.string()),
                                   " cannot be made: ", error.message(), "."),
                         "Name another folder with --out."};
  for (const SheetKind* kind : wanted) {
    sheets::Document document(from.ready.lesson.title, from.ready.lesson.date);
    const auto drawn = kind->draw(document, from);
    if (!drawn) return drawn;
    const std::string path = (folder / (std::string(kind->name) + ".pdf")).string();
    warn_of_unknown(document, path);
    const auto written = write(path, document.pdf());
    if (!written) return written;
  }
  return true;
}

}  // namespace

int paper(const PaperAsked& asked) {
  const auto wanted = asked_kinds(asked.what);
  if (!wanted) return tell(wanted.problems());
  const auto today = day_or_today(asked.today);
  if (!today) return tell(today.problems());
  PlanAsked how;
  how.lesson_file = asked.lesson_file;
  how.foods_file = asked.foods_file;
  how.labels_file = asked.labels_file;
  how.seconds = asked.seconds;
  how.seed = asked.seed;
  auto read = ready_lesson(how);
  if (!read) return tell(read.problems());
  Ready ready = std::move(read).value();
  std::optional<timeplan::Answer> answer;
  const bool plan = std::any_of(wanted.value().begin(), wanted.value().end(),
                                [](const SheetKind* kind) { return kind->plan; });
  if (plan) answer = planned(ready, how);
  const From from{asked, ready, answer, base::date_text(today.value())};
  const bool fits = !plan || answer->verdict == timeplan::Verdict::kFits;

  std::vector<const SheetKind*> can = wanted.value();
  if (!fits) {
    // Sheets for the room would promise what the room cannot keep; the teacher's page says why.
    std::erase_if(can, [](const SheetKind* kind) {
      return kind->plan && kind->name != std::string("teacher");
    });
    std::fprintf(stderr,
                 "This lesson does not fit, so sheets with its times are not printed. The "
                 "teacher's page says why and what would help.\n");
    if (can.empty()) return kDoesNotFit;
  }
  const bool pdf = asked.out.ends_with(".pdf");
  const auto done = pdf ? one_file(can, from) : a_folder(can, from);
  if (!done) return tell(done.problems());
  return fits ? kFits : kDoesNotFit;
}

}  // namespace app
