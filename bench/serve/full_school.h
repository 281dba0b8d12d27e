// A school of some years for measuring: the invented school many times over.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "base/clock.h"
#include "kitchen/json_tree.h"
#include "store/repository.h"

namespace serve_bench {

struct FullSchool {
  std::unique_ptr<store::Repository> store;
  std::vector<std::string> dishes;   ///< ids
  std::vector<std::string> lessons;  ///< ids of the lessons of the week shown
};

/// 50 classes of 24, 500 dishes (those shipped under other names), 3,000 lessons (those of the demo
/// on other days). Throws std::runtime_error when the store refuses.
FullSchool full_school(const std::string& path, base::Date today);

/// A JSON text as its tree. Throws std::runtime_error when it is none.
kitchen::Node tree(const std::string& text);

}  // namespace serve_bench
