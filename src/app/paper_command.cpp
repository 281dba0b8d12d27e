// benchbell paper: the sheets of a lesson as PDF, in a folder or as one file.
#include <algorithm>
#include <cstdio>
#include <filesystem>

#include "app/commands.h"
#include "app/files.h"
#include "app/larder_files.h"
#include "app/paper_sheets.h"
#include "base/text.h"

namespace app {
namespace {

using base::Result;
using print::sheets::Document;
using Wanted = std::vector<const PaperSheet*>;

Result<Wanted> wanted_sheets(const std::string& what) {
  Wanted out;
  base::Problems problems;
  for (const std::string& name : base::parts(what, ',')) {
    const auto found = std::find_if(paper_sheets().begin(), paper_sheets().end(),
                                    [&](const PaperSheet& sheet) { return name == sheet.name; });
    if (found != paper_sheets().end()) {
      out.push_back(&*found);
      continue;
    }
    std::vector<std::string> names;
    for (const PaperSheet& sheet : paper_sheets()) names.push_back(sheet.name);
    problems.push_back({"paper.what", "", "",
                        base::say("There is no sheet called ", base::in_quotes(name), "."),
                        base::say("There are ", base::joined(names), ".")});
  }
  if (problems.empty() && out.empty())
    problems.push_back({"paper.what", "", "", "No sheet was named.", "Say --what teacher,wall."});
  if (!problems.empty()) return problems;
  return out;
}

/// The lesson, completed and checked for the planner when a sheet needs a plan; else as written, so
/// that the allergy sheet of a lesson that may not go on can be printed to mend it.
Result<Ready> ready_for(const PlanAsked& how, bool plan) {
  if (plan) return ready_lesson(how);
  const auto lesson = lesson_of(how);
  if (!lesson) return lesson.problems();
  return Ready{lesson.value(), lesson.value(), {}};
}

Result<bool> write(const std::string& path, const std::string& bytes) {
  const auto written = write_file(path, bytes);
  if (!written) return written.problems();
  std::printf("%s\n", path.c_str());
  return true;
}

Result<bool> write(const std::string& path, Document& document) {
  const int unknown = document.unknown_letters();
  if (unknown > 0)
    std::fprintf(stderr,
                 "%s: %s in no typeface of this machine and printed as a box. A package of "
                 "typefaces for that script mends it.\n",
                 path.c_str(), base::counted(unknown, "letter is", "letters are").c_str());
  return write(path, document.pdf());
}

Result<bool> one_file(const Wanted& wanted, const PaperFrom& from) {
  Document document(from.ready.lesson.title, from.ready.lesson.date);
  for (const PaperSheet* sheet : wanted) {
    const auto drawn = sheet->draw(document, from);
    if (!drawn) return drawn;
  }
  return write(from.asked.out, document);
}

Result<bool> a_folder(const Wanted& wanted, const PaperFrom& from) {
  const std::filesystem::path folder = from.asked.out;
  std::error_code error;
  std::filesystem::create_directories(folder, error);
  if (error)
    return base::Problem{"file.unwritable", folder.string(), "",
                         base::say("The folder ", base::in_quotes(folder.string()),
                                   " cannot be made: ", error.message(), "."),
                         "Name another folder with --out."};
  for (const PaperSheet* sheet : wanted) {
    Document document(from.ready.lesson.title, from.ready.lesson.date);
    auto done = sheet->draw(document, from);
    if (!done) return done;
    const std::string path = (folder / sheet->name).string();
    done = write(path + ".pdf", document);
    if (!done) return done;
    if (!sheet->beside) continue;
    const auto made = sheet->beside->make(from);
    if (!made) return made.problems();
    done = write(path + sheet->beside->ending, made.value());
    if (!done) return done;
  }
  return true;
}

}  // namespace

int paper(const PaperAsked& asked) {
  auto wanted = wanted_sheets(asked.what);
  if (!wanted) return tell(wanted.problems());
  Wanted sheets = std::move(wanted).value();
  const auto today = day_or_today(asked.today);
  if (!today) return tell(today.problems());
  PlanAsked how;
  how.lesson_file = asked.lesson_file;
  how.foods_file = asked.foods_file;
  how.labels_file = asked.labels_file;
  how.seconds = asked.seconds;
  how.seed = asked.seed;
  const bool plan = std::any_of(sheets.begin(), sheets.end(),
                                [](const PaperSheet* sheet) { return sheet->plan; });
  auto read = ready_for(how, plan);
  if (!read) return tell(read.problems());
  Ready ready = std::move(read).value();
  std::optional<timeplan::Answer> answer;
  if (plan) answer = planned(ready, how);
  const bool fits = !plan || answer->verdict == timeplan::Verdict::kFits;
  if (!fits && std::erase_if(sheets, [](const PaperSheet* sheet) { return sheet->timed; }) > 0)
    std::fprintf(stderr,
                 "This lesson does not fit, so sheets with its times are not printed. The "
                 "teacher's page (--what teacher) says why and what would help.\n");
  if (sheets.empty()) return kDoesNotFit;
  const PaperFrom from{asked, ready, answer, today.value()};
  const auto done = asked.out.ends_with(".pdf") ? one_file(sheets, from) : a_folder(sheets, from);
  if (!done) return tell(done.problems());
  return fits ? kFits : kDoesNotFit;
}

}  // namespace app
