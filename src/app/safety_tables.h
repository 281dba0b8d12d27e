// The shipped tables of hidden things and substitutes, read once; the school's labels.
#pragma once

#include <string>

#include "safety/substitutes.h"

namespace app {

const safety::Hidden& shipped_hidden();
const safety::Substitutes& shipped_substitutes();

/// The labels of a file; none when `file` is empty. Problems: those of the file and of
/// safety::read_labels().
base::Result<safety::Labels> labels_of(const std::string& file, const kitchen::Foods&);

}  // namespace app
