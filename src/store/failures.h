// What the database complains of, in words for the person at the keyboard.
#pragma once

#include <string>

#include "base/problem.h"
#include "store/database.h"

namespace store {

/// During work with a file that is open: store.disk_full, store.locked, store.damaged,
/// store.read_only, store.failed.
base::Problem problem_of(const DatabaseError&, const std::string& path);

/// While opening it: the same and store.not_a_database, store.cannot_open.
/// newest_backup: its path, or empty.
base::Problem opening_problem_of(const DatabaseError&, const std::string& path,
                                 const std::string& newest_backup);

/// "Close Benchbell, ... put a copy of 'school.db.2026-11-17T090500Z.backup' in its place", or what
/// to do when there is no backup.
std::string use_a_backup(const std::string& path, const std::string& newest_backup);

}  // namespace store
