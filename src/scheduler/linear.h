// Weighted sums of variables with an upper limit, for goal levels: sum of weight * value(side) <=
// limit.
#pragma once

#include <cstdint>
#include <vector>

#include "scheduler/core.h"

namespace scheduler {

struct Summand {
  std::int64_t weight = 1;  ///< > 0
  int side = 0;
};

class Linear : public Propagator {
 public:
  Linear(std::vector<Summand> summands, std::int64_t limit)
      : summands_(std::move(summands)), limit_(limit) {}
  std::vector<int> sides() const;
  bool propagate(Core& core) override;

 private:
  void explain(Core& core, std::size_t skipped, std::int64_t spare);

  std::vector<Summand> summands_;
  std::int64_t limit_;
  std::vector<Literal> reason_;
};

}  // namespace scheduler
