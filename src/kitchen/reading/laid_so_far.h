// What the lines laid so far say of the next one: whether it goes on with an ingredient or a step,
// and whether the list before it is one of amounts. Only for layout.cpp.
#pragma once

#include <string>
#include <vector>

#include "kitchen/reading/layout.h"
#include "kitchen/reading/layout_lines.h"

namespace kitchen {

class LaidSoFar {
 public:
  /// Keeps `laid`, which grows. `all_small`: no capitals are written, so a small letter begins a
  /// step as well.
  LaidSoFar(const std::vector<LaidLine>& laid, bool all_small)
      : laid_(laid), all_small_(all_small) {}

  bool counted_list() const;
  bool continues_ingredient(const Line& line, const std::string& group) const;
  const LaidLine* step_before() const;
  bool goes_on(const Line& line) const;
  bool wraps(const Line& line) const;

 private:
  const std::vector<LaidLine>& laid_;
  const bool all_small_;
};

}  // namespace kitchen
