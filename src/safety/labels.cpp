#include "safety/labels.h"

#include "safety/rows.h"

namespace safety {

std::vector<const LabelRead*> readings(const Labels& labels, std::string_view food) {
  std::vector<const LabelRead*> out;
  for (const LabelRead& label : labels) {
    if (label.in_use && label.food == food) out.push_back(&label);
  }
  return out;
}

base::Result<Labels> read_labels(std::string_view csv, const std::string& file_name,
                                 const kitchen::Foods& foods) {
  Rows rows(base::read_csv(csv, file_name), file_name, "labels");
  // "contains" must be there even if empty: a list nobody wrote is not an empty list.
  if (!rows.has_columns({"food", "pack", "read_on", "contains", "may_contain"}))
    return rows.problems();
  Labels out;
  while (rows.next()) {
    LabelRead label;
    label.food = rows.needed("food");
    if (!label.food.empty()) rows.check_food("food", label.food, foods);
    label.pack = rows.needed("pack");
    label.read_on = rows.needed("read_on");
    label.contains = rows.allergens("contains");
    label.may_contain = rows.allergens("may_contain");
    label.in_use = rows.yes("in_use", true);
    out.push_back(std::move(label));
  }
  if (!rows.problems().empty()) return rows.problems();
  return out;
}

}  // namespace safety
