#include "app/safety_tables.h"

#include <stdexcept>

#include "app/files.h"
#include "app/shipped_data.h"
#include "app/shipped_foods.h"

namespace app {
namespace {

// The build's own files: a fault in them is a broken promise, not somebody's input.
template <class Table>
Table sound(base::Result<Table> read) {
  if (!read)
    throw std::logic_error("a shipped table cannot be read: " + read.problems().front().message);
  return std::move(read).value();
}

}  // namespace

const safety::Hidden& shipped_hidden() {
  static const safety::Hidden kHidden = sound(
      safety::read_hidden(shipped_table("hidden.csv"), "hidden.csv", shipped_foods()));
  return kHidden;
}

const safety::Substitutes& shipped_substitutes() {
  static const safety::Substitutes kSubstitutes = sound(safety::read_substitutes(
      shipped_table("substitutes.csv"), "substitutes.csv", shipped_foods()));
  return kSubstitutes;
}

base::Result<safety::Labels> labels_of(const std::string& file, const kitchen::Foods& foods) {
  if (file.empty()) return safety::Labels{};
  const auto text = read_file(file);
  if (!text) return text.problems();
  return safety::read_labels(text.value(), file, foods);
}

}  // namespace app
