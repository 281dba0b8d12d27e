#include "store/backup_files.h"

#include <fcntl.h>
#include <sqlite3.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <filesystem>
#include <system_error>

#include "base/text.h"
#include "store/failures.h"
#include "store/stamp.h"

namespace store {

namespace fs = std::filesystem;
using base::Problem;

namespace {

constexpr std::string_view kEnd = ".backup";
constexpr std::string_view kPattern = "dddd-dd-ddTddddddZ";  // d: a digit

bool is_stamp(std::string_view text) {
  if (text.size() != kPattern.size()) return false;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const bool digit = text[i] >= '0' && text[i] <= '9';
    if (kPattern[i] == 'd' ? !digit : text[i] != kPattern[i]) return false;
  }
  return true;
}

/// "2026-11-17T090500Z": a colon may not stand in a file's name everywhere.
std::string file_stamp(std::int64_t seconds) {
  std::string stamp = stamp_of(seconds);
  std::erase(stamp, ':');
  return stamp;
}

std::string clock_stamp(const std::string& stamp) {
  return stamp.substr(0, 13) + ":" + stamp.substr(13, 2) + ":" + stamp.substr(15);
}

bool on_disk(const std::string& path) {
  const int file = ::open(path.c_str(), O_RDONLY | O_CLOEXEC);
  if (file < 0) return false;
  const bool done = ::fsync(file) == 0;
  ::close(file);
  return done;
}

std::string folder_of(const std::string& path) {
  const fs::path folder = fs::path(path).parent_path();
  return folder.empty() ? "." : folder.string();
}

void copy(Database& source, const std::string& part) {
  Database target(part, Access::kWrite, 0);
  sqlite3_backup* work = sqlite3_backup_init(target.handle(), "main", source.handle(), "main");
  if (work == nullptr) {
    throw DatabaseError(sqlite3_extended_errcode(target.handle()), "backup");
  }
  errno = 0;
  const int stepped = sqlite3_backup_step(work, -1);  // all pages: one and the same state
  const int code = sqlite3_backup_finish(work);
  if (stepped != SQLITE_DONE)
    throw error_of(target.handle(), code == SQLITE_OK ? stepped : code, "backup");
  // One file, complete in itself, in which nobody is signed in.
  if (target.text("pragma journal_mode = delete") != "delete") {
    throw DatabaseError(SQLITE_IOERR, "backup: journal mode");
  }
  // A backup made before a step up may be older than sessions.
  if (target.number("select count(*) from sqlite_schema where name = 'sessions'") > 0) {
    target.run("delete from sessions");
  }
  const std::string checked = target.text("pragma quick_check(1)");
  if (checked != "ok") throw DatabaseError(SQLITE_CORRUPT, checked);
}

}  // namespace

std::vector<Backup> backups_beside(const std::string& path) {
  const std::string start = fs::path(path).filename().string() + ".";
  std::vector<Backup> found;
  std::error_code error;
  for (fs::directory_iterator file(folder_of(path), error), end; !error && file != end;
       file.increment(error)) {
    const std::string name = file->path().filename().string();
    if (!name.starts_with(start) || !name.ends_with(kEnd)) continue;
    if (name.size() < start.size() + kEnd.size()) continue;
    const std::string stamp = name.substr(start.size(), name.size() - start.size() - kEnd.size());
    if (!is_stamp(stamp)) continue;  // somebody's own copy: not ours to list or remove
    std::error_code no_size;
    const auto bytes = file->file_size(no_size);
    found.push_back({file->path().string(), clock_stamp(stamp), no_size ? 0 : bytes});
  }
  std::sort(found.begin(), found.end(),
            [](const Backup& a, const Backup& b) { return a.made_at > b.made_at; });
  return found;
}

std::string newest_backup(const std::string& path) {
  const auto all = backups_beside(path);
  return all.empty() ? "" : all.front().path;
}

base::Result<Backup> make_backup(Database& source, const std::string& path, std::int64_t now) {
  std::string name;
  // Two in a second: the later one takes the next second's name rather than the first one's place.
  for (std::int64_t second = now; name.empty() || fs::exists(name); ++second) {
    name = path + "." + file_stamp(second) + std::string(kEnd);
  }
  const std::string part = path + ".backup-being-made";
  std::error_code ignored;
  fs::remove(part, ignored);
  const auto failed = [&](Problem problem) {
    fs::remove(part, ignored);
    fs::remove(part + "-journal", ignored);
    return problem;
  };
  const auto no_file = [&](const char* why) {
    return failed({"store.backup_failed", path, "", why,
                   "Check that there is room beside the school's file and that its folder may be "
                   "changed, then make the backup again."});
  };
  if (!make_private_file(part)) return no_file("The backup could not be written.");
  try {
    copy(source, part);
  } catch (const DatabaseError& error) {
    if (error.primary() == SQLITE_FULL) {
      return failed({"store.disk_full", path, "",
                     "There is no room left for a backup; none was made.",
                     "Make room on the disk, then make the backup again."});
    }
    if (error.primary() == SQLITE_CORRUPT || error.primary() == SQLITE_NOTADB) {
      return failed(problem_of(error, path));
    }
    return no_file("The backup could not be made.");
  }
  std::error_code error;
  if (on_disk(part)) fs::rename(part, name, error);
  if (error || !fs::exists(name)) return no_file("The backup could not be given its name.");
  on_disk(folder_of(path));
  const auto bytes = fs::file_size(name, error);
  const std::string stamp = name.substr(path.size() + 1, kPattern.size());
  return Backup{name, clock_stamp(stamp), error ? 0 : bytes};
}

void prune_backups(const std::string& path, int keep) {
  const auto all = backups_beside(path);
  std::error_code ignored;  // one that cannot be removed today is removed another day
  for (std::size_t i = static_cast<std::size_t>(std::max(keep, 1)); i < all.size(); ++i) {
    fs::remove(all[i].path, ignored);
  }
}

bool make_private_file(const std::string& path) {
  const int file = ::open(path.c_str(), O_CREAT | O_EXCL | O_WRONLY | O_CLOEXEC, 0600);
  if (file < 0) return fs::exists(path);
  const bool done = ::fsync(file) == 0;
  ::close(file);
  return done && on_disk(folder_of(path));
}

}  // namespace store
