#include "store/failures.h"

#include <sqlite3.h>

#include <filesystem>
#include <system_error>

#include "base/text.h"

namespace store {

using base::Problem;
using base::say;

namespace {

std::string name_in(const std::string& path) {
  return std::filesystem::path(path).filename().string();
}

std::string folder_in(const std::string& path) {
  std::error_code ignored;  // the path as it was given says nearly as much
  const auto whole = std::filesystem::absolute(path, ignored);
  return base::in_quotes(
      (whole.empty() ? std::filesystem::path(path) : whole).parent_path().string());
}

}  // namespace

std::string use_a_backup(const std::string& path, const std::string& newest_backup) {
  if (newest_backup.empty()) {
    return say(
        "There is no backup beside it. Look for a copy of ", base::in_quotes(name_in(path)),
        " elsewhere, on the school's server or a stick; keep the file as it is, somebody who "
        "knows databases may still read it.");
  }
  return say(
      "Close Benchbell, give the file another name (do not throw it away), and put a copy of the "
      "newest backup, ",
      base::in_quotes(name_in(newest_backup)), ", in its place under the name ",
      base::in_quotes(name_in(path)), ".");
}

Problem problem_of(const DatabaseError& error, const std::string& path) {
  const std::string file = base::in_quotes(name_in(path));
  switch (error.primary()) {
    case SQLITE_FULL:
      return {"store.disk_full", path, "",
              say("There is no room left for ", file,
                  ", so this was not saved. Everything saved before is still there."),
              say("Make room on the disk that holds the folder ", folder_in(path),
                  ", or ask whoever looks after that machine to; then save again.")};
    case SQLITE_BUSY:
    case SQLITE_LOCKED:
      return {"store.locked", path, "",
              say("Another program is writing to ", file, " and did not let go."),
              "Wait a moment and try again. If it stays so, close the other program that uses the "
              "file."};
    case SQLITE_CORRUPT:
    case SQLITE_NOTADB:
      return {"store.damaged", path, "",
              say("A part of ", file, " cannot be read: the file is damaged."),
              "Stop working with it, start Benchbell again and follow what it says about backups."};
    case SQLITE_READONLY:
    case SQLITE_PERM:
      return {
          "store.read_only", path, "",
          say("The file ", file, " may be read but not changed, so this was not saved."),
          "Ask whoever looks after this machine for the right to change the file and its folder."};
    default:
      return {"store.failed", path, "",
              say("The disk did not do what it was asked with ", file, ", so this was not saved (",
                  error.what(), ")."),
              "Try again. If it stays so, make a backup elsewhere and have the disk looked at."};
  }
}

Problem opening_problem_of(const DatabaseError& error, const std::string& path,
                           const std::string& newest_backup) {
  const std::string file = base::in_quotes(name_in(path));
  switch (error.primary()) {
    case SQLITE_NOTADB:
      return {"store.not_a_database", path, "",
              say("The file ", file, " is something else, not what Benchbell keeps a school in."),
              newest_backup.empty()
                  ? "Choose another file, or a name that is not taken yet to start a new one."
                  : use_a_backup(path, newest_backup)};
    case SQLITE_CORRUPT:
      return {"store.damaged", path, "",
              say("The file ", file, " is damaged: a part of it cannot be read."),
              use_a_backup(path, newest_backup)};
    case SQLITE_CANTOPEN:
    case SQLITE_AUTH:
      return {"store.cannot_open", path, "", say("The file ", file, " cannot be opened."),
              "Check that it is a file, that its folder is there, and that you may read and change "
              "both."};
    default:
      return problem_of(error, path);
  }
}

}  // namespace store
