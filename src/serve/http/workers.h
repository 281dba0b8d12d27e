// A few threads that do one job after another.
#pragma once

#include <condition_variable>
#include <cstddef>
#include <deque>
#include <functional>
#include <mutex>
#include <thread>
#include <vector>

namespace serve::http {

class Workers {
 public:
  /// `threads` >= 1; `waiting`: jobs that may stand in line.
  Workers(int threads, std::size_t waiting);
  ~Workers();  ///< finishes the jobs in hand, drops those in line
  Workers(const Workers&) = delete;
  Workers& operator=(const Workers&) = delete;

  /// False when the line is full: the job was not taken. A job must not throw.
  bool add(std::function<void()> job);

 private:
  void work();

  std::size_t most_waiting_;
  std::mutex mutex_;
  std::condition_variable something_;
  std::deque<std::function<void()>> line_;
  bool over_ = false;
  std::vector<std::thread> threads_;  // last: they use all of the above
};

}  // namespace serve::http
