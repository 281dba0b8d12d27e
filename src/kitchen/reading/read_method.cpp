#include "kitchen/reading/read_method.h"

namespace kitchen {

void read_method(DishDraft& draft, const std::vector<MethodLine>& lines, const Foods&) {
  for (const MethodLine& line : lines) {
    StepDraft step;
    step.says = line.text;
    step.line_number = line.line_number;
    step.group = line.group;
    draft.method.push_back(std::move(step));
  }
}

}  // namespace kitchen
