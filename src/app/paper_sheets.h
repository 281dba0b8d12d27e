// The sheets `benchbell paper` knows, by name, and what each is made from.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "app/commands.h"
#include "app/planning.h"
#include "base/clock.h"
#include "base/problem.h"
#include "print/sheets/page.h"
#include "print/sheets/signs.h"

namespace app {

/// What a sheet is made from; the answer only when a sheet that was asked for needs a plan.
struct PaperFrom {
  const PaperAsked& asked;
  const Ready& ready;
  const std::optional<timeplan::Answer>& answer;
  base::Date today;

  print::sheets::Planned planned() const;
};

/// A file that stands beside the PDF in a folder: the letter as text, the risk sheet to edit.
struct PaperBeside {
  std::string ending;  ///< ".txt"
  std::function<base::Result<std::string>(const PaperFrom&)> make;
};

struct PaperSheet {
  std::string name;
  bool plan = false;   ///< needs one
  bool timed = false;  ///< promises the plan's times, so it is not printed when they do not fit
  std::function<base::Result<bool>(print::sheets::Document&, const PaperFrom&)> draw;
  std::optional<PaperBeside> beside = std::nullopt;
};
const std::vector<PaperSheet>& paper_sheets();

}  // namespace app
