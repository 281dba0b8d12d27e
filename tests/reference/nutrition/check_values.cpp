#include "check_values.h"

#include <stdexcept>

#include "../../support/nutrition_tables.h"
#include "base/csv.h"
#include "base/text.h"

namespace tests {

double CheckValue::number() const {
  const auto read = base::number_in(value);
  if (!read) throw std::runtime_error(id + " is no number");
  return *read;
}

std::vector<CheckValue> check_values(const std::string& group) {
  const auto read = base::read_csv(text_of("tests/data/nutrition/check_values.csv"),
                                   "check_values.csv");
  if (!read) throw std::runtime_error("no check values");
  std::vector<CheckValue> out;
  for (const auto& row : read.value().rows) {
    if (row.cells[1].starts_with(group))
      out.push_back(
          {row.cells[0], row.cells[1], row.cells[2], row.cells[3], row.cells[4], row.cells[6]});
  }
  return out;
}

const kitchen::Food& food_of_code(const std::string& code) {
  for (const kitchen::Food& food : shipped_foods().all()) {
    const bool own = food.match == kitchen::Match::kExact || food.match == kitchen::Match::kNear;
    if (own && food.source.find("SR26 " + code) != std::string::npos) return food;
  }
  throw std::runtime_error("no food of row " + code);
}

std::string between(const std::string& text, const std::string& from, const std::string& to) {
  const auto start = text.find(from);
  if (start == std::string::npos) return {};
  const auto begin = start + from.size();
  const auto end = text.find(to, begin);
  return text.substr(begin, end == std::string::npos ? end : end - begin);
}

}  // namespace tests
