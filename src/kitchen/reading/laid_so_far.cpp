#include "kitchen/reading/laid_so_far.h"

#include <algorithm>

#include "base/folding.h"
#include "base/text.h"

namespace kitchen {

// Whether nearly all of the list so far have amounts.
bool LaidSoFar::counted_list() const {
  std::size_t listed = 0, counted = 0;
  for (const LaidLine& each : laid_) {
    if (each.role != LineRole::kIngredient) continue;
    ++listed;
    const LineLooks its = looks_of(tidied_line(each.text));
    if (its.amount_first || its.amount_last) ++counted;
  }
  return listed >= 2 && counted * 4 >= listed * 3;
}

bool LaidSoFar::continues_ingredient(const Line& line, const std::string& group) const {
  if (laid_.empty() || laid_.back().role != LineRole::kIngredient) return false;
  const LaidLine& last = laid_.back();
  if (last.group != group || last.number + 1 < line.number - 1) return false;
  const std::string before = tidied_line(last.text);
  const LineLooks was = looks_of(before);
  // A table's cells under each other: "Flour", "200 g" or "200 g", "flour".
  if (line.looks.amount_alone)
    return !was.amount_first && !was.amount_last && !was.amount_alone && !last.continues;
  if (was.amount_alone && !last.continues) return !line.looks.amount_first;
  if (line.looks.amount_first || line.looks.bullet || last.number + 1 != line.number) return false;
  const bool open = std::count(before.begin(), before.end(), '(') >
                    std::count(before.begin(), before.end(), ')');
  const bool goes_on = before.ends_with(",") || before.ends_with(" and") ||
                       before.ends_with(" or") || before.ends_with(" for") ||
                       before.ends_with(" of") || before.ends_with(" in") || open;
  if (!small_first(line.tidy)) return open;
  const auto words = base::words_of(base::folded(line.tidy));
  return goes_on || only_prepares(words) || (was.amount_first && no_food_yet(before));
}

// The step before, also when ingredients of another column stand between; nothing if there is
// none.
const LaidLine* LaidSoFar::step_before() const {
  for (auto each = laid_.rbegin(); each != laid_.rend(); ++each) {
    if (each->role == LineRole::kMethod) return &*each;
    if (each->role == LineRole::kHeading && each->text.size() > 3) return nullptr;
  }
  return nullptr;
}

// Whether the step before had not ended.
bool LaidSoFar::goes_on(const Line& line) const {
  constexpr std::size_t kWrapped = 30;  // letters: shorter lines are not wrapped
  const LaidLine* before = step_before();
  if (before == nullptr || line.left) return false;
  const bool column = line.right && laid_.back().role == LineRole::kIngredient;
  if (!column && &laid_.back() != before) return false;
  const std::string& text = before->text;
  const char last = text.back();
  if (last == '.' || last == '!' || last == ':' || last == ')' || last == '?') return false;
  const std::string tidy = tidied_line(text);
  const bool open = last == ',' || tidy.ends_with(" and") || tidy.ends_with(" the") ||
                    tidy.ends_with(" a") || tidy.ends_with(" for") || tidy.ends_with(" with") ||
                    tidy.ends_with(" to") || tidy.ends_with(" in") || tidy.ends_with(" into") ||
                    tidy.ends_with(" of") || tidy.ends_with(" until");
  return open || (!all_small_ && text.size() > (column || line.right ? kWrapped / 2 : kWrapped));
}

bool LaidSoFar::wraps(const Line& line) const {
  if (line.looks.numbered || line.looks.bullet || line.gap || step_before() == nullptr)
    return false;
  constexpr std::size_t kFull = 45;
  if (!goes_on(line) || step_before()->number + 1 < line.number) return false;
  if (small_first(line.tidy)) return true;
  return !line.looks.verb_first && step_before()->text.size() > kFull;
}

}  // namespace kitchen
