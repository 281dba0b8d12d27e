#include "store/open_file.h"

#include <sqlite3.h>
#include <unistd.h>

#include <filesystem>
#include <optional>
#include <system_error>

#include "base/text.h"
#include "store/backup_files.h"
#include "store/failures.h"
#include "store/migrate.h"

namespace store {

namespace fs = std::filesystem;
using base::Problem;
using base::say;

namespace {

std::string shown(const std::string& path) {
  return base::in_quotes(fs::path(path).filename().string());
}

/// What can be seen from outside.
std::optional<Problem> look_from_outside(const std::string& path) {
  std::error_code error;
  const fs::path folder = fs::path(path).parent_path();
  if (!folder.empty() && !fs::is_directory(folder, error)) {
    return Problem{"store.no_folder", path, "",
                   say("The folder for ", shown(path),
                       " is not there: ", base::in_quotes(folder.string()), "."),
                   "Make the folder, or choose a file in one that is there."};
  }
  if (fs::is_directory(path, error)) {
    return Problem{"store.cannot_open", path, "", say(shown(path), " is a folder, not a file."),
                   "Name a file in it, like school.benchbell."};
  }
  // An empty file is a new one, but where there are backups there was a full one once, and opening
  // it as new would look as if everything were lost.
  const bool empty = fs::is_regular_file(path, error) && fs::file_size(path, error) == 0;
  if (const std::string backup = newest_backup(path); empty && !backup.empty()) {
    return Problem{"store.damaged", path, "",
                   say("The file ", shown(path),
                       " is empty, and it was not always so: there are "
                       "backups of it."),
                   use_a_backup(path, backup)};
  }
  return std::nullopt;
}

/// Whose file is it, and how old?
std::optional<Problem> look_inside(Database& database, const std::string& path) {
  const std::string backup = newest_backup(path);
  const auto application = database.number("pragma application_id");
  const int shape = shape_of(database);
  const bool anything = database.number("select count(*) from sqlite_schema") > 0;
  if (application != kApplicationId && (application != 0 || shape != 0 || anything)) {
    return Problem{"store.other_program", path, "",
                   say("The file ", shown(path), " is a database of another program."),
                   "Choose another file; this one was left as it is."};
  }
  if (shape > newest_shape()) {
    return Problem{"store.newer", path, "",
                   say("The file ", shown(path), " was last used by a newer Benchbell (step ",
                       shape, "; this one knows steps up to ", newest_shape(), ")."),
                   backup.empty()
                       ? "Use the newer Benchbell on this machine too. The file was left as it is."
                       : say("Use the newer Benchbell on this machine too. The file was left as it "
                             "is. The newest backup beside it is ",
                             base::in_quotes(fs::path(backup).filename().string()), ".")};
  }
  const std::string checked = database.text("pragma quick_check(1)");
  if (checked == "ok") return std::nullopt;
  return Problem{"store.damaged", path, "",
                 say("The file ", shown(path), " is damaged: a part of it cannot be read."),
                 use_a_backup(path, backup)};
}

}  // namespace

base::Result<std::unique_ptr<Database>> open_file(const std::string& path,
                                                  const SqliteOptions& options, std::int64_t now) {
  if (auto problem = look_from_outside(path)) return *problem;
  try {
    if (!make_private_file(path)) throw DatabaseError(SQLITE_CANTOPEN, "make the file");
    // SQLite would open it for reading alone, and complain of something else later.
    const std::string folder = fs::path(path).parent_path().string();
    if (::access(path.c_str(), R_OK | W_OK) != 0 ||
        ::access(folder.empty() ? "." : folder.c_str(), W_OK) != 0) {
      throw DatabaseError(SQLITE_READONLY, "open");
    }
    auto database = std::make_unique<Database>(path, Access::kWrite,
                                               static_cast<int>(options.wait.count()));
    if (auto problem = look_inside(*database, path)) return *problem;
    database->use_write_ahead_log();
    if (options.largest_bytes > 0) {
      const auto page = static_cast<std::uint64_t>(database->number("pragma page_size"));
      database->number(say("pragma max_page_count = ", options.largest_bytes / page));
    }
    const int shape = shape_of(*database);
    if (shape > 0 && shape < newest_shape()) {
      if (auto backup = make_backup(*database, path, now); !backup) return backup.problems();
    }
    bring_to_shape(*database, newest_shape());
    return database;
  } catch (const DatabaseError& error) {
    return opening_problem_of(error, path, newest_backup(path));
  }
}

}  // namespace store
