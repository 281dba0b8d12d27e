// benchbell plan: a lesson file, or the quick way in; words, picture, JSON out.
#include <unistd.h>

#include <cstdio>

#include "app/commands.h"
#include "app/files.h"
#include "app/planning.h"
#include "print/machine.h"
#include "print/picture.h"
#include "print/say.h"
#include "timeplan/export.h"

namespace app {

int plan(const PlanAsked& asked) {
  auto read = ready_lesson(asked);
  if (!read) return tell(read.problems());
  Ready ready = std::move(read).value();
  const timeplan::Answer answer = planned(ready, asked);
  const kitchen::Lesson& lesson = ready.lesson;

  if (asked.json) {
    std::fputs(print::answer_json(lesson, answer).c_str(), stdout);
    std::fputc('\n', stdout);
  } else {
    print::SayOptions how;
    how.details = asked.details;
    how.width = asked.width;
    how.colour = ::isatty(STDOUT_FILENO) == 1;
    std::fputs(print::say(lesson, answer, how).c_str(), stdout);
  }
  base::Problems problems;
  const auto keep = [&](const char* what, const std::string& file, const std::string& text) {
    if (file.empty()) return;
    const auto written = write_file(file, text);
    if (!written) base::gather(written, problems);
    if (written && !asked.json) std::printf("The %s is in %s\n", what, file.c_str());
  };
  keep("picture", asked.svg_file,
       asked.svg_file.empty() ? "" : print::picture_svg(lesson, answer, {}));
  keep("picture", asked.html_file,
       asked.html_file.empty() ? "" : print::picture_html(lesson, answer, {}));
  keep("model", asked.minizinc_file,
       asked.minizinc_file.empty() ? "" : timeplan::minizinc(lesson, answer));
  if (!problems.empty()) return tell(problems);
  return answer.verdict == timeplan::Verdict::kFits ? kFits : kDoesNotFit;
}

}  // namespace app
