// One file, one connection that writes, a few that read. The log of SQLite (WAL) lets them all work
// at once; a change is on the disk when its function returns.
#include <sqlite3.h>

#include <condition_variable>
#include <filesystem>
#include <mutex>

#include "base/text.h"
#include "store/backup_files.h"
#include "store/failures.h"
#include "store/forwarding.h"
#include "store/migrate.h"
#include "store/open_file.h"

namespace store {
namespace {

using base::Problem;
using base::Result;
using Clock = std::function<std::int64_t()>;

/// What `look` hands out: reads of one state.
class OneLook final : public Reads<Reader> {
 public:
  OneLook(Database& database, const std::string& path, const Clock& clock)
      : database_(database), path_(path), clock_(clock) {}

 protected:
  std::optional<Problem> reading(const std::function<void(Database&)>& work) override {
    try {
      work(database_);
      return std::nullopt;
    } catch (const DatabaseError& error) {
      return problem_of(error, path_);
    }
  }
  std::int64_t seconds() const override { return clock_(); }

 private:
  Database& database_;
  const std::string& path_;
  const Clock& clock_;
};

/// What `transact` hands out. Each call that fails takes back its own part only; after an error of
/// the database itself nothing of the transaction can be kept.
class OneTransaction final : public Writes<Writer> {
 public:
  OneTransaction(Database& database, const std::string& path, const Clock& clock)
      : database_(database), path_(path), clock_(clock) {}

  const std::optional<Problem>& broken() const { return broken_; }

 protected:
  std::optional<Problem> reading(const std::function<void(Database&)>& work) override {
    return guarded([&] { work(database_); });
  }
  std::optional<Problem> writing(const std::function<bool(Database&)>& work) override {
    return guarded([&] {
      database_.run("savepoint part");
      if (!work(database_)) database_.run("rollback to part");
      database_.run("release part");
    });
  }
  std::int64_t seconds() const override { return clock_(); }

 private:
  Database& database_;
  const std::string& path_;
  const Clock& clock_;
  std::optional<Problem> broken_;

  template <class Work>
  std::optional<Problem> guarded(const Work& work) {
    if (broken_) return broken_;
    try {
      work();
      return std::nullopt;
    } catch (const DatabaseError& error) {
      broken_ = problem_of(error, path_);
      return broken_;
    }
  }
};

class SqliteRepository final : public Writes<Repository> {
 public:
  SqliteRepository(std::string path, Clock clock, std::unique_ptr<Database> writer,
                   std::vector<std::unique_ptr<Database>> readers)
      : path_(std::move(path)),
        clock_(std::move(clock)),
        writer_(std::move(writer)),
        idle_(std::move(readers)) {}

  Result<Outcome> transact(const std::function<Result<Outcome>(Writer&)>& work) override {
    const std::lock_guard alone(writing_);
    try {
      Transaction transaction(*writer_, Transaction::For::kWriting);
      OneTransaction inside(*writer_, path_, clock_);
      Result<Outcome> outcome = work(inside);
      if (inside.broken()) return *inside.broken();
      if (outcome && outcome.value() == Outcome::kKeep) transaction.commit();
      return outcome;
    } catch (const DatabaseError& error) {
      return problem_of(error, path_);
    }
  }

  Result<bool> look(const std::function<Result<bool>(Reader&)>& work) override {
    const Lease reader(*this);
    try {
      const Transaction transaction(*reader, Transaction::For::kReading);
      OneLook inside(*reader, path_, clock_);
      return work(inside);
    } catch (const DatabaseError& error) {
      return problem_of(error, path_);
    }
  }

  Result<Backup> back_up(int keep) override {
    const std::lock_guard alone(backing_up_);
    const Lease reader(*this);
    auto made = make_backup(*reader, path_, clock_());
    if (made) prune_backups(path_, keep);
    return made;
  }

  Result<std::vector<Backup>> backups() override { return backups_beside(path_); }

 protected:
  std::optional<Problem> reading(const std::function<void(Database&)>& work) override {
    const Lease reader(*this);
    try {
      work(*reader);
      return std::nullopt;
    } catch (const DatabaseError& error) {
      return problem_of(error, path_);
    }
  }

  std::optional<Problem> writing(const std::function<bool(Database&)>& work) override {
    const std::lock_guard alone(writing_);
    try {
      Transaction transaction(*writer_, Transaction::For::kWriting);
      if (work(*writer_)) transaction.commit();
      return std::nullopt;
    } catch (const DatabaseError& error) {
      return problem_of(error, path_);
    }
  }

  std::int64_t seconds() const override { return clock_(); }

 private:
  /// A reading connection for the time of a call.
  class Lease {
   public:
    explicit Lease(SqliteRepository& from) : from_(from) {
      std::unique_lock lock(from_.leasing_);
      from_.returned_.wait(lock, [this] { return !from_.idle_.empty(); });
      held_ = std::move(from_.idle_.back());
      from_.idle_.pop_back();
    }
    ~Lease() {
      {
        const std::lock_guard lock(from_.leasing_);
        from_.idle_.push_back(std::move(held_));
      }
      from_.returned_.notify_one();
    }
    Lease(const Lease&) = delete;
    Lease& operator=(const Lease&) = delete;
    Database& operator*() const { return *held_; }

   private:
    SqliteRepository& from_;
    std::unique_ptr<Database> held_;
  };

  const std::string path_;
  const Clock clock_;
  std::mutex writing_;
  std::mutex backing_up_;
  std::mutex leasing_;
  std::condition_variable returned_;
  // The last connection to close tidies the log into the file, and only a writing one can: it is
  // declared first so that it goes last.
  std::unique_ptr<Database> writer_;
  std::vector<std::unique_ptr<Database>> idle_;
};

}  // namespace

Result<std::unique_ptr<Repository>> open_sqlite(const std::string& path,
                                                const SqliteOptions& options) {
  const Clock clock = options.clock ? options.clock : Clock(now_seconds);
  auto writer = open_file(path, options, clock());
  if (!writer) return writer.problems();
  try {
    std::vector<std::unique_ptr<Database>> readers;
    for (int i = 0; i < std::max(options.readers, 1); ++i) {
      readers.push_back(
          std::make_unique<Database>(path, Access::kRead, static_cast<int>(options.wait.count())));
      // The first read maps the shared part of the log; on a full disk that would be too late.
      readers.back()->number("select count(*) from kinds");
    }
    std::unique_ptr<Repository> made = std::make_unique<SqliteRepository>(
        path, clock, std::move(writer).value(), std::move(readers));
    return made;
  } catch (const DatabaseError& error) {
    return opening_problem_of(error, path, newest_backup(path));
  }
}

}  // namespace store
