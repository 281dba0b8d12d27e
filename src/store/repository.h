// The one door to what a school keeps. SQLite stands behind it today (open_sqlite); the words are
// those of the school, so another database can stand there too.
//
//   auto opened = store::open_sqlite("school.benchbell");
//   if (!opened) return tell(opened.problems());
//   auto scones = opened.value()->create(Kind::kDish, {}, {.body = text}, {who, "Typed in"});
//
// Threads: every function may be called from any thread. Reads run side by side; writes wait for
// each other. All of them block: never call them from a thread that serves the network.
// Problems any of them may return: store.disk_full, store.locked, store.damaged, store.read_only,
// store.failed. After a problem nothing was written and reading goes on.
#pragma once

#include <chrono>
#include <cstddef>
#include <cstdint>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "base/problem.h"
#include "store/document.h"
#include "store/people.h"

namespace store {

/// What can be read.
class Reader {
 public:
  Reader() = default;
  Reader(const Reader&) = delete;
  Reader& operator=(const Reader&) = delete;
  virtual ~Reader() = default;

  /// In order of day, then title, then id.
  virtual base::Result<std::vector<Summary>> list(Kind, const Filter& = {}) = 0;
  /// The days on which documents of the kind stand, each once, in order; of `filter` its days alone
  /// count.
  virtual base::Result<std::vector<std::string>> days(Kind, const Filter& = {}) = 0;
  /// Id and version of each document of the kind that stands: what remembered work is checked
  /// against.
  virtual base::Result<std::vector<std::pair<std::string, std::int64_t>>> versions(Kind) = 0;
  /// The current version, also of a removed document (`deleted` says so); nothing if there never
  /// was one.
  virtual base::Result<std::optional<Document>> get(Kind, const std::string& id) = 0;
  virtual base::Result<std::optional<Document>> get(Kind, const std::string& id,
                                                    std::int64_t version) = 0;
  /// Newest first; empty if there never was such a document.
  virtual base::Result<std::vector<Change>> history(Kind, const std::string& id) = 0;
  /// Standing documents that link to this one, in order of kind and title.
  virtual base::Result<std::vector<Summary>> used_by(Kind, const std::string& id) = 0;
  /// Standing documents of the kind with the same content, whatever their layout and the order of
  /// members: a dish typed in twice.
  virtual base::Result<std::vector<Summary>> same_as(Kind, const std::string& body) = 0;

  virtual base::Result<std::vector<User>> users() = 0;  ///< in order of name
  virtual base::Result<std::optional<User>> user(const std::string& id) = 0;
  /// By name, whatever its case, accents and spaces.
  virtual base::Result<std::optional<User>> user_named(const std::string& name) = 0;
  /// The session of a token that has not expired; nothing for any other text.
  virtual base::Result<std::optional<Session>> session(const std::string& token) = 0;

  virtual base::Result<std::optional<std::string>> setting(const std::string& key) = 0;
  virtual base::Result<std::vector<std::pair<std::string, std::string>>> settings() = 0;
};

/// What can be written. Every `replace`, `remove` and `restore` names the version it saw.
class Writer : public Reader {
 public:
  /// A new document. Without an id it is made from the title ("fruit-scones", then
  /// "fruit-scones-2"). A given id that was removed comes back with its history.
  /// Errors: store.body, store.body_too_big, store.kind_differs, store.no_title, store.day,
  ///         store.bad_id, store.id_taken, store.link_missing.
  virtual base::Result<Document> create(Kind, const std::optional<std::string>& id, const Draft&,
                                        const Act&) = 0;
  /// Errors: as create, and store.not_found. A removed document is a Clash.
  virtual base::Result<Changed> replace(Kind, const std::string& id, std::int64_t expected,
                                        const Draft&, const Act&) = 0;
  /// Puts it aside; its history stays and restore brings it back.
  /// Errors: store.not_found; store.in_use names the documents that use it.
  virtual base::Result<Changed> remove(Kind, const std::string& id, std::int64_t expected,
                                       const Act&) = 0;
  /// Writes an earlier version, with its links, as the newest: undo, and the way back from remove.
  /// Errors: store.not_found, store.no_version (also for the version of a removal),
  ///         store.link_missing.
  virtual base::Result<Changed> restore(Kind, const std::string& id, std::int64_t version,
                                        std::int64_t expected, const Act&) = 0;
  /// Takes a document and its whole history out of the file for good: for the retention of pupils'
  /// data. True if there was one. Backups and exports made before still hold it.
  /// Errors: store.in_use.
  virtual base::Result<bool> erase(Kind, const std::string& id) = 0;

  /// Errors: store.no_name, store.name_taken.
  virtual base::Result<User> add_user(const std::string& name, Role,
                                      const std::string& password_hash) = 0;
  /// Name, role and hash of `user.id` become those given; the counts stay. A new hash ends all the
  /// user's sessions. Errors: store.not_found, store.no_name, store.name_taken.
  virtual base::Result<User> change_user(const User& user) = 0;
  /// With all their sessions. True if there was one.
  virtual base::Result<bool> remove_user(const std::string& id) = 0;
  /// A right password sets the count of wrong ones to 0, a wrong one adds to it; returns the user
  /// as they stand then. Errors: store.not_found.
  virtual base::Result<User> note_sign_in(const std::string& user_id, bool right) = 0;

  /// Errors: store.not_found.
  virtual base::Result<NewSession> start_session(const std::string& user_id,
                                                 std::chrono::seconds lasts) = 0;
  /// The session of a token, with `seen_at` moved on when it is more than five minutes old. When
  /// that cannot be written the session holds all the same.
  virtual base::Result<std::optional<Session>> see_session(const std::string& token) = 0;
  virtual base::Result<bool> end_session(const std::string& token) = 0;
  virtual base::Result<int> end_sessions_of(const std::string& user_id) = 0;
  virtual base::Result<int> clear_expired_sessions() = 0;

  /// Errors: store.bad_key (small letters, digits, dots, underscores, hyphens; up to 80),
  ///         store.setting_too_big (64 KB).
  virtual base::Result<bool> set_setting(const std::string& key, const std::string& value) = 0;
  virtual base::Result<bool> drop_setting(const std::string& key) = 0;
};

/// What happens to what a transaction wrote. A problem returned undoes it as well.
enum class Outcome : std::uint8_t { kKeep, kUndo };

/// A finished backup.
struct Backup {
  std::string path;
  std::string made_at;  ///< universal time
  std::uint64_t bytes = 0;
};

/// Every function of Writer, called on the repository itself, is one transaction.
class Repository : public Writer {
 public:
  /// Several writes, all or nothing; what is read in between is what stands. Other writers wait, so
  /// compute first and write then. The Writer must not be kept, nor the repository used inside.
  virtual base::Result<Outcome> transact(
      const std::function<base::Result<Outcome>(Writer&)>& work) = 0;
  /// Several reads of one and the same state. The Reader must not be kept, nor the repository used
  /// inside.
  virtual base::Result<bool> look(const std::function<base::Result<bool>(Reader&)>& work) = 0;

  /// A whole copy, checked, while others read and write; then all but the newest `keep` are
  /// removed (keep >= 1). Errors: store.backup_failed, store.disk_full.
  virtual base::Result<Backup> back_up(int keep) = 0;
  virtual base::Result<std::vector<Backup>> backups() = 0;  ///< newest first
};

struct SqliteOptions {
  int readers = 3;                       ///< reads at once, >= 1
  std::chrono::milliseconds wait{5000};  ///< for another program that is writing
  std::uint64_t largest_bytes = 0;       ///< the file may not grow beyond it; 0: the disk decides
  /// Seconds since 1970, universal time; the machine's clock if empty. For tests.
  std::function<std::int64_t()> clock;
};

/// Opens the file, or makes it if there is none, and brings an older one up to date after a backup
/// of it. The file is readable by its owner only.
/// Errors: store.no_folder, store.not_a_database, store.other_program, store.damaged, store.locked,
///         store.newer, store.read_only, store.cannot_open, store.disk_full. Each names the newest
///         backup if there is one.
/// Cost:   a quick check of every page: about a tenth of a second for a school's years.
base::Result<std::unique_ptr<Repository>> open_sqlite(const std::string& path,
                                                      const SqliteOptions& = {});

}  // namespace store
