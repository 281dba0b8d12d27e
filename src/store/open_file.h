// The way to a school's file: is it one, is it whole, is it of our time? Inside the store only.
#pragma once

#include <cstdint>
#include <memory>
#include <string>

#include "base/problem.h"
#include "store/database.h"
#include "store/repository.h"

namespace store {

/// The writing connection to a file that is whole and of the newest shape.
/// Errors: those of open_sqlite.
base::Result<std::unique_ptr<Database>> open_file(const std::string& path, const SqliteOptions&,
                                                  std::int64_t now);

}  // namespace store
