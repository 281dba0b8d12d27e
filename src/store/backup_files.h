// Backups as files beside the school's file: "school.db.2026-11-17T090500Z.backup". Inside the
// store only.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "base/problem.h"
#include "store/database.h"
#include "store/repository.h"

namespace store {

/// Newest first. A folder that cannot be read has none.
std::vector<Backup> backups_beside(const std::string& path);
/// The newest one's path, or empty.
std::string newest_backup(const std::string& path);

/// Copies what `source` sees, without its sessions, checks the copy, and only then gives it its
/// name. Errors: store.backup_failed, store.disk_full.
base::Result<Backup> make_backup(Database& source, const std::string& path, std::int64_t now);
/// Removes all but the newest `keep`.
void prune_backups(const std::string& path, int keep);

/// The file made and readable by its owner only, if there is none; on the disk before this returns.
/// False if that cannot be done.
bool make_private_file(const std::string& path);

}  // namespace store
