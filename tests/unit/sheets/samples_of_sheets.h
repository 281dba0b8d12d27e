// Every sheet of a lesson by name, and lessons that are hard on paper.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "print/sheets/signs.h"
#include "sample.h"

namespace sample {

struct NamedSheet {
  std::string name;
  std::function<void(print::sheets::Document&, const Told&)> draw;
};
/// All that need nothing but a lesson and its answer.
std::vector<NamedSheet> all_sheets();

/// Thirty cooks with three dishes each, whose names are long, run from right to left, hold signs of
/// feeling or what looks like markup.
Told hard_names();

std::string pdf_of(const NamedSheet&, const Told&);

}  // namespace sample
