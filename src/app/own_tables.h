// The school's own tables: foods over the shipped ones, labels that were read.
#pragma once

#include <string>

#include "base/problem.h"
#include "kitchen/foods.h"
#include "safety/labels.h"

namespace app {

/// The shipped table with the school's own file over it; the shipped one alone when `own_file` is
/// empty. Problems: those of the file and of kitchen::read_foods().
base::Result<kitchen::Foods> foods_with(const std::string& own_file);

/// The labels of a file; none when `file` is empty. Problems: those of the file and of
/// safety::read_labels().
base::Result<safety::Labels> labels_of(const std::string& file, const kitchen::Foods&);

}  // namespace app
