#include "store/database.h"

#include <sqlite3.h>

#include <cerrno>
#include <new>
#include <utility>

#include "base/text.h"

namespace store {
namespace {

/// SQLite calls only a full disk full. A person's share of the disk that is used up, a file that
/// may not grow, or no room for the shared part of the log are errors of reading and writing to it;
/// for whoever wants to save something they are the same. What the system said is asked of SQLite,
/// and, as it does not say so for a commit, of the system itself: errno is cleared before each
/// call.
bool no_room(sqlite3* database, int code, int said) {
  if ((code & 0xFF) != SQLITE_IOERR) return false;
  const int known = sqlite3_system_errno(database);
  const int system = known == 0 ? said : known;
  return system == ENOSPC || system == EDQUOT || system == EFBIG;
}

[[noreturn]] void fail(sqlite3* database, int code, const char* sql) {
  if (database == nullptr) throw DatabaseError(code, base::say(sqlite3_errstr(code), ": ", sql));
  throw error_of(database, code, sql);
}

}  // namespace

DatabaseError error_of(sqlite3* database, int code, const std::string& what) {
  const int said = errno;
  const int extended = sqlite3_extended_errcode(database);
  const int told = extended == SQLITE_OK ? code : extended;
  return {no_room(database, told, said) ? SQLITE_FULL : told,
          base::say(sqlite3_errmsg(database), ": ", what)};
}

void Database::Close::operator()(sqlite3* handle) const { sqlite3_close_v2(handle); }

Database::Database(const std::string& path, Access access, int wait_ms) {
  int flags = SQLITE_OPEN_NOMUTEX | SQLITE_OPEN_EXRESCODE;
  flags |= access == Access::kRead ? SQLITE_OPEN_READONLY : SQLITE_OPEN_READWRITE;
  if (access == Access::kWriteOrMake) flags |= SQLITE_OPEN_CREATE;
  sqlite3* opened = nullptr;
  const int code = sqlite3_open_v2(path.c_str(), &opened, flags, nullptr);
  handle_.reset(opened);  // there is a handle even when opening failed, and it must be closed
  if (code != SQLITE_OK) fail(opened, code, "open");
  sqlite3_busy_timeout(opened, wait_ms);
  // A file from anywhere may hold views and triggers that call functions; those are not ours.
  sqlite3_db_config(opened, SQLITE_DBCONFIG_DEFENSIVE, 1, nullptr);
  sqlite3_db_config(opened, SQLITE_DBCONFIG_TRUSTED_SCHEMA, 0, nullptr);
  // The first of these that looks into the file says if it is damaged, locked or no database.
  run("pragma foreign_keys = on; pragma synchronous = full; pragma secure_delete = on; "
      "pragma temp_store = memory;");
}

void Database::run(const char* sql) {
  errno = 0;
  const int code = sqlite3_exec(handle(), sql, nullptr, nullptr, nullptr);
  if (code != SQLITE_OK) fail(handle(), code, sql);
}

std::int64_t Database::number(const std::string& sql) {
  Statement statement(*this, sql);
  if (!statement.step()) throw std::logic_error("no row: " + sql);
  return statement.column<std::int64_t>(0);
}

std::string Database::text(const std::string& sql) {
  Statement statement(*this, sql);
  if (!statement.step()) throw std::logic_error("no row: " + sql);
  return statement.column<std::string>(0);
}

void Database::use_write_ahead_log() {
  const std::string mode = text("pragma journal_mode = wal");
  if (mode != "wal") {
    throw DatabaseError(SQLITE_CANTOPEN, "write-ahead logging is not possible here: " + mode);
  }
}

bool Database::in_transaction() const { return sqlite3_get_autocommit(handle()) == 0; }

int Database::changed_rows() const { return sqlite3_changes(handle()); }

void Finish::operator()(sqlite3_stmt* handle) const { sqlite3_finalize(handle); }

Statement::Statement(Database& database, std::string_view sql)
    : database_(database.handle()), idle_(database.idle()) {
  if (auto kept = idle_->extract(std::string(sql))) {
    handle_ = std::move(kept.mapped());
    return;
  }
  sqlite3_stmt* made = nullptr;
  const int code = sqlite3_prepare_v3(database_, sql.data(), static_cast<int>(sql.size()),
                                      SQLITE_PREPARE_PERSISTENT, &made, nullptr);
  handle_.reset(made);
  if (code != SQLITE_OK) fail(database_, code, std::string(sql).c_str());
  if (made == nullptr) throw std::logic_error("an empty statement");
}

// One that failed is not used again, and neither are more than a repository's own: searches put
// their words together.
Statement::~Statement() {
  constexpr std::size_t kMostIdle = 100;
  if (failed_ || handle_ == nullptr || idle_->size() >= kMostIdle) return;
  reset();
  try {
    idle_->try_emplace(sqlite3_sql(handle_.get()), std::move(handle_));
  } catch (const std::bad_alloc&) {
    // It is prepared again next time.
  }
}

int Statement::place(const char* name) const {
  const int index = sqlite3_bind_parameter_index(handle_.get(), name);
  if (index == 0) {
    throw std::logic_error(base::say("no parameter ", name, " in: ", sqlite3_sql(handle_.get())));
  }
  return index;
}

void Statement::check(int code) const {
  if (code != SQLITE_OK) fail(database_, code, sqlite3_sql(handle_.get()));
}

Statement& Statement::bind(const char* name, std::int64_t value) {
  check(sqlite3_bind_int64(handle_.get(), place(name), value));
  return *this;
}

Statement& Statement::bind(const char* name, std::string_view text) {
  // A null pointer would bind NULL; an empty text is a text.
  check(sqlite3_bind_text64(handle_.get(), place(name), text.empty() ? "" : text.data(),
                            text.size(), SQLITE_TRANSIENT, SQLITE_UTF8));
  return *this;
}

Statement& Statement::bind_null(const char* name) {
  check(sqlite3_bind_null(handle_.get(), place(name)));
  return *this;
}

bool Statement::step() {
  errno = 0;
  const int code = sqlite3_step(handle_.get());
  if (code == SQLITE_ROW) return true;
  if (code == SQLITE_DONE) return false;
  failed_ = true;
  fail(database_, code, sqlite3_sql(handle_.get()));
}

void Statement::run() {
  if (step()) throw std::logic_error(base::say("rows from: ", sqlite3_sql(handle_.get())));
  reset();
}

void Statement::reset() {
  sqlite3_reset(handle_.get());  // repeats the error of the last step, which was thrown then
  sqlite3_clear_bindings(handle_.get());
}

bool Statement::is_null(int i) const {
  return sqlite3_column_type(handle_.get(), i) == SQLITE_NULL;
}

std::int64_t Statement::number(int i) const {
  if (is_null(i)) throw std::logic_error(base::say("NULL in column ", i));
  return sqlite3_column_int64(handle_.get(), i);
}

std::string Statement::text(int i) const {
  if (is_null(i)) throw std::logic_error(base::say("NULL in column ", i));
  const auto* bytes = reinterpret_cast<const char*>(sqlite3_column_text(handle_.get(), i));
  if (bytes == nullptr) throw DatabaseError(SQLITE_NOMEM, "no memory for a text");
  return {bytes, static_cast<std::size_t>(sqlite3_column_bytes(handle_.get(), i))};
}

Transaction::Transaction(Database& database, For purpose) : database_(database) {
  database_.run(purpose == For::kWriting ? "begin immediate" : "begin");
}

Transaction::~Transaction() {
  // After some errors, a full disk among them, SQLite has rolled back by itself. A rollback that
  // fails leaves nothing to do: the next connection to open the file rolls back.
  if (open_ && database_.in_transaction()) {
    sqlite3_exec(database_.handle(), "rollback", nullptr, nullptr, nullptr);
  }
}

void Transaction::commit() {
  database_.run("commit");
  open_ = false;
}

}  // namespace store
