#include "best_known.h"

#include <charconv>
#include <fstream>
#include <sstream>
#include <vector>

#include "project.h"

namespace projects {
namespace {

int number(const std::string& cell, const std::string& where) {
  if (cell.empty()) return 0;
  int value = 0;
  const auto [end, error] = std::from_chars(cell.data(), cell.data() + cell.size(), value);
  if (error != std::errc() || end != cell.data() + cell.size())
    throw ReadError(where + "\"" + cell + "\" is not a whole number");
  return value;
}

}  // namespace

BestKnownTable read_best_known(const std::filesystem::path& file) {
  std::ifstream in(file);
  if (!in) throw ReadError(file.string() + ": cannot be opened for reading");
  BestKnownTable result;
  int line_number = 0;
  for (std::string line; std::getline(in, line);) {
    ++line_number;
    const std::string where = file.string() + ":" + std::to_string(line_number) + ": ";
    std::vector<std::string> cells;
    std::istringstream words(line);
    for (std::string cell; std::getline(words, cell, ',');) cells.push_back(cell);
    if (cells.empty() || cells[0] == "set") continue;
    if (cells.size() < 5) throw ReadError(where + "expected set,instance,lb,ub,proved");
    result[{cells[0], cells[1]}] = {number(cells[2], where), number(cells[3], where), cells[4]};
  }
  return result;
}

}  // namespace projects
