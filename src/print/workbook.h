// A workbook of plain tables for a school's spreadsheet program (Office Open XML, .xlsx).
//
// Text cells are written as text, so nothing in a dish's or supplier's name can act as a formula.
// The library behind it writes files only, so this stands with the other code that does.
#pragma once

#include <string>
#include <vector>

#include "base/problem.h"

namespace print {

struct Sheet {
  std::string name;  ///< cut to 31 letters; signs a spreadsheet forbids become spaces
  std::vector<std::vector<std::string>> rows;  ///< the first one the headings
  std::vector<std::size_t> figures;  ///< columns whose cells are numbers where they read as one
};

/// Written whole or not at all: to a name beside it, then renamed. Problems: file.unwritable.
base::Result<bool> write_workbook(const std::string& path, const std::vector<Sheet>&);

/// The same as bytes, by way of a file in the system's temporary folder, which is removed again.
base::Result<std::string> workbook(const std::vector<Sheet>&);

}  // namespace print
