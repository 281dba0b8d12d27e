#include "app/own_tables.h"

#include "app/files.h"
#include "shipped/foods.h"

namespace app {

base::Result<kitchen::Foods> foods_with(const std::string& own_file) {
  if (own_file.empty()) return shipped::foods();
  const auto text = read_file(own_file);
  if (!text) return text.problems();
  const auto own = kitchen::read_foods(text.value(), own_file);
  if (!own) return own.problems();
  return shipped::foods().with(own.value());
}

base::Result<safety::Labels> labels_of(const std::string& file, const kitchen::Foods& foods) {
  if (file.empty()) return safety::Labels{};
  const auto text = read_file(file);
  if (!text) return text.problems();
  return safety::read_labels(text.value(), file, foods);
}

}  // namespace app
