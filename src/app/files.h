// Files in and out, and how problems are shown. The only place of the command line that touches the
// disk.
#pragma once

#include <string>

#include "base/problem.h"
#include "kitchen/read.h"

namespace app {

/// The whole text of a file. Problems: file.missing, file.unreadable, file.too_large (over 32 MB).
base::Result<std::string> read_file(const std::string& path);
/// Written whole or not at all: to a temporary name beside it, on disk, then renamed. Problems:
/// file.unwritable.
base::Result<bool> write_file(const std::string& path, const std::string& text);
/// Reads the files a lesson names.
kitchen::Loader file_loader();
/// Each problem with its file, place, what is wrong and how to mend it, on the error stream.
/// Returns kBadInput.
int tell(const base::Problems&);

}  // namespace app
