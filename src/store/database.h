// A thin layer of our own over SQLite: a connection, a statement, a transaction. Inside the store
// only; everybody else sees store/repository.h.
//
//   Statement find(db, "select title from documents where kind = $1 and id = $2");
//   find.bind("$1", "dish").bind("$2", id);
//   if (find.step()) use(find.column<std::string>(0));
//
// Errors are thrown as DatabaseError and become a Problem at the repository's door: a full disk can
// strike in any line, and the transaction must unroll the same way wherever it does.
// A connection and its statements belong to one thread at a time.
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <stdexcept>
#include <string>
#include <string_view>
#include <type_traits>
#include <unordered_map>

struct sqlite3;
struct sqlite3_stmt;

namespace store {

class DatabaseError : public std::runtime_error {
 public:
  /// code: SQLite's extended result code.
  DatabaseError(int code, const std::string& message) : std::runtime_error(message), code_(code) {}
  int code() const { return code_; }
  int primary() const { return code_ & 0xFF; }  ///< without the extension: SQLITE_FULL, SQLITE_BUSY

 private:
  int code_;
};

/// What the call just made on that connection said, which gave `code`; SQLITE_FULL whatever took
/// the room, if errno was 0 before the call.
DatabaseError error_of(sqlite3*, int code, const std::string& what);

enum class Access : std::uint8_t { kRead, kWrite, kWriteOrMake };

struct Finish {
  void operator()(sqlite3_stmt*) const;
};

/// Prepared statements that nobody uses at the moment, by their SQL: preparing costs more than most
/// runs.
using IdleStatements = std::unordered_map<std::string, std::unique_ptr<sqlite3_stmt, Finish>>;

class Database {
 public:
  /// Opens with foreign keys on, full synchronisation and secure deletion; waits `wait_ms` for
  /// other programs. Write-ahead logging is a property of the file: use_write_ahead_log().
  Database(const std::string& path, Access, int wait_ms);

  /// One or more statements without results.
  void run(const char* sql);
  void run(const std::string& sql) { run(sql.c_str()); }
  /// The first column of the first row. The statement must give one.
  std::int64_t number(const std::string& sql);
  std::string text(const std::string& sql);

  void use_write_ahead_log();
  bool in_transaction() const;
  int changed_rows() const;  ///< by the last insert, update or delete

  sqlite3* handle() const { return handle_.get(); }
  const std::shared_ptr<IdleStatements>& idle() const { return idle_; }

 private:
  struct Close {
    void operator()(sqlite3*) const;
  };
  std::unique_ptr<sqlite3, Close> handle_;
  std::shared_ptr<IdleStatements> idle_ = std::make_shared<IdleStatements>();  // ends before the
                                                                               // handle
};

class Statement {
 public:
  Statement(Database&, std::string_view sql);
  ~Statement();
  Statement(const Statement&) = delete;
  Statement& operator=(const Statement&) = delete;

  /// A parameter by its name in the SQL, "$1". SQLite numbers parameters by first appearance, so
  /// names are the only safe way. Texts are copied.
  Statement& bind(const char* name, std::int64_t);
  Statement& bind(const char* name, std::string_view);
  Statement& bind_null(const char* name);
  Statement& bind(const char* name, const char* text) { return bind(name, std::string_view(text)); }
  Statement& bind(const char* name, const std::string& text) {
    return bind(name, std::string_view(text));
  }
  Statement& bind(const char* name, bool flag) { return bind(name, std::int64_t{flag ? 1 : 0}); }
  Statement& bind(const char* name, int value) { return bind(name, std::int64_t{value}); }
  template <class T>
  Statement& bind(const char* name, const std::optional<T>& value) {
    return value ? bind(name, *value) : bind_null(name);
  }

  /// To the next row; false when there is none left.
  bool step();
  /// For statements without rows.
  void run();
  /// Ready to run again, with other parameters.
  void reset();

  /// Column `i`, from 0: std::int64_t, int, bool, std::string, or std::optional of these (NULL is
  /// nothing). NULL without optional is a broken promise and throws std::logic_error.
  template <class T>
  T column(int i) const {
    if constexpr (requires { typename T::value_type; } && !std::is_same_v<T, std::string>) {
      if (is_null(i)) return std::nullopt;
      return column<typename T::value_type>(i);
    } else if constexpr (std::is_same_v<T, std::string>) {
      return text(i);
    } else if constexpr (std::is_same_v<T, bool>) {
      return number(i) != 0;
    } else {
      static_assert(std::is_integral_v<T>);
      return static_cast<T>(number(i));
    }
  }

 private:
  sqlite3* database_;
  std::shared_ptr<IdleStatements> idle_;
  std::unique_ptr<sqlite3_stmt, Finish> handle_;
  bool failed_ = false;

  int place(const char* name) const;
  void check(int code) const;
  bool is_null(int i) const;
  std::int64_t number(int i) const;
  std::string text(int i) const;
};

/// Undone at the end of its scope unless committed.
class Transaction {
 public:
  enum class For : std::uint8_t { kReading, kWriting };  ///< writing: "begin immediate"
  Transaction(Database&, For);
  ~Transaction();
  Transaction(const Transaction&) = delete;
  Transaction& operator=(const Transaction&) = delete;
  void commit();

 private:
  Database& database_;
  bool open_ = true;
};

}  // namespace store
