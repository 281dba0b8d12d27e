// A zip as a list of named texts, in memory. Reading trusts nothing; writing is the same every
// time. What the texts are is not known here. Inside the store only.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/problem.h"

namespace store {

struct ZipEntry {
  std::string name;
  std::string text;
};

/// In the order given, deflated, dated 1 January 1980 (the first day a zip can say).
/// Errors: zip.not_written.
base::Result<std::string> write_zip(const std::vector<ZipEntry>&);

/// The files in it, in its order; folders and what computers add by themselves ("__MACOSX/",
/// ".DS_Store") are passed over. Names are not checked here.
/// Errors: zip.not_a_zip, zip.too_big, zip.too_many, zip.bomb, zip.encrypted, zip.unreadable.
base::Result<std::vector<ZipEntry>> read_zip(std::string_view bytes);

}  // namespace store
