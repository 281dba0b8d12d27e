// Long work beside the requests: started, watched, stopped. One works at a time, so that planning
// leaves a core for the pages; the others wait in order.
#pragma once

#include <atomic>
#include <chrono>
#include <condition_variable>
#include <deque>
#include <functional>
#include <map>
#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <thread>

#include "base/problem.h"

namespace serve {

enum class JobState : std::uint8_t { kWaiting, kWorking, kDone, kStopped, kFailed };
std::string_view name_of(JobState);

/// How good the best so far is, and what it cannot be better than.
struct JobGap {
  std::string of;  ///< what is counted: "minutes over the bell"
  std::int64_t best = 0, bound = 0;
};

/// A job as it stands.
struct JobView {
  std::string id;
  std::string owner;  ///< whose news it is: the key of a session
  JobState state = JobState::kWaiting;
  std::string says;  ///< what it is doing, one short sentence
  std::optional<JobGap> gap;
  double seconds = 0;
  std::string lesson;       ///< id, or empty
  std::string result;       ///< JSON text; empty until there is one
  base::Problems problems;  ///< why it failed
};

/// What the work may ask and say while it runs.
class JobDesk {
 public:
  virtual ~JobDesk() = default;
  virtual bool stop() const = 0;
  /// A gap that was told stays until another is.
  virtual void says(const std::string&, const std::optional<JobGap>& gap = std::nullopt) = 0;
};

/// The result as JSON text, or why there is none.
using Work = std::function<base::Result<std::string>(JobDesk&)>;

class Jobs {
 public:
  /// `news` is called from the working thread, and from those that start or stop a job, with every
  /// step of it.
  explicit Jobs(std::function<void(const JobView&)> news);
  ~Jobs();  ///< stops what runs, forgets what waits
  Jobs(const Jobs&) = delete;
  Jobs& operator=(const Jobs&) = delete;

  /// What somebody waits for goes before what nobody asked for.
  enum class Turn : std::uint8_t { kAsked, kUnasked };
  /// Nothing when `kMostWaiting` wait already.
  std::optional<JobView> start(const std::string& owner, const std::string& lesson, Work,
                               Turn = Turn::kAsked);
  std::optional<JobView> view(const std::string& id) const;
  /// Asks it to stop; a waiting one is stopped at once.
  std::optional<JobView> stop(const std::string& id);

  static constexpr std::size_t kMostWaiting = 40;
  static constexpr std::size_t kKept = 200;  ///< finished jobs that can still be asked for

 private:
  struct Job;
  class Desk;
  std::function<void(const JobView&)> news_;
  mutable std::mutex mutex_;
  std::condition_variable wake_;
  std::map<std::string, std::shared_ptr<Job>> all_;
  std::deque<std::shared_ptr<Job>> waiting_;
  std::deque<std::string> finished_;
  std::uint64_t last_ = 0;
  bool busy_ = false;
  bool closing_ = false;
  std::thread worker_;

  void work();
  void finish(const std::string& id);  ///< under the lock; forgets the oldest
  void run(const std::shared_ptr<Job>&);
};

}  // namespace serve
