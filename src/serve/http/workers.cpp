#include "serve/http/workers.h"

#include <algorithm>
#include <utility>

namespace serve::http {

Workers::Workers(int threads, std::size_t waiting) : most_waiting_(waiting) {
  for (int i = 0; i < std::max(1, threads); ++i) threads_.emplace_back([this] { work(); });
}

Workers::~Workers() {
  std::deque<std::function<void()>> dropped;
  {
    const std::lock_guard lock(mutex_);
    over_ = true;
    dropped.swap(line_);
  }
  something_.notify_all();
  for (std::thread& each : threads_) each.join();
}

bool Workers::add(std::function<void()> job) {
  {
    const std::lock_guard lock(mutex_);
    if (over_ || line_.size() >= most_waiting_) return false;
    line_.push_back(std::move(job));
  }
  something_.notify_one();
  return true;
}

void Workers::work() {
  for (;;) {
    std::function<void()> job;
    {
      std::unique_lock lock(mutex_);
      something_.wait(lock, [this] { return over_ || !line_.empty(); });
      if (over_) return;
      job = std::move(line_.front());
      line_.pop_front();
    }
    job();
  }
}

}  // namespace serve::http
