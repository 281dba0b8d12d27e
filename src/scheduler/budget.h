// Work counted in ticks, and the only reader of the clock. Work and stop requests are polled every
// few thousand ticks (a fraction of a millisecond), in search, conflict analysis, model building
// and construction alike.
#pragma once

#include <chrono>
#include <cstdint>
#include <functional>
#include <optional>
#include <utility>

namespace scheduler {

/// Thrown by Budget::spend when the whole run has to end; caught once, in search_all().
struct OutOfBudget {};

class Budget {
 public:
  Budget(double seconds, std::int64_t work_limit, std::function<bool()> stop)
      : begin_(std::chrono::steady_clock::now()),
        seconds_(seconds),
        work_limit_(work_limit),
        stop_(std::move(stop)) {}

  /// Counts work; throws OutOfBudget when time, work or the caller's patience is used up.
  void spend(std::int64_t ticks) {
    ticks_ += ticks;
    if (ticks_ >= next_poll_) poll();
  }

  std::int64_t ticks() const { return ticks_; }

  /// Ends at so many ticks in all, if not sooner; at the next tick when these are over already.
  void end_by(std::int64_t ticks) {
    if (work_limit_ >= 0 && ticks >= work_limit_) return;
    work_limit_ = ticks;
    next_poll_ = ticks_;
  }

  struct Instalment {
    std::int64_t ticks = 0;
    double seconds = 0;
  };
  /// Asked when time or work is used up: so much more, and the run goes on where it was. The time
  /// it takes to answer does not count.
  void when_used_up(std::function<std::optional<Instalment>()> more) { more_ = std::move(more); }

  /// Conflicts of all models of the run, for the outcome's report only.
  void count_conflict() { ++conflicts_; }
  std::int64_t conflicts() const { return conflicts_; }

  /// Learnt clauses of all cores of the run may hold so many bytes; -1 = no limit.
  void limit_memory(std::int64_t bytes) { memory_limit_ = bytes; }
  void hold(std::int64_t bytes) { held_ += bytes; }
  std::int64_t held() const { return held_; }
  bool crowded() const { return memory_limit_ >= 0 && held_ > memory_limit_; }

  /// For the outcome's report only; no decision depends on it.
  double elapsed() const {
    return std::chrono::duration<double>(std::chrono::steady_clock::now() - begin_).count();
  }

 private:
  static constexpr std::int64_t kPollEvery = 20000;

  void poll() {
    if (stop_ && stop_()) throw OutOfBudget{};
    while ((work_limit_ >= 0 && ticks_ >= work_limit_) || elapsed() >= seconds_) {
      const auto asked = std::chrono::steady_clock::now();
      const std::optional<Instalment> more = more_ ? more_() : std::nullopt;
      if (!more) throw OutOfBudget{};
      begin_ += std::chrono::steady_clock::now() - asked;
      work_limit_ = ticks_ + more->ticks;
      seconds_ = elapsed() + more->seconds;
    }
    next_poll_ = ticks_ + kPollEvery;
    // The limit itself must be noticed at the same tick in every run.
    if (work_limit_ >= 0 && next_poll_ > work_limit_) next_poll_ = work_limit_;
  }

  std::chrono::steady_clock::time_point begin_;
  double seconds_;
  std::int64_t work_limit_;
  std::function<bool()> stop_;
  std::function<std::optional<Instalment>()> more_;
  std::int64_t ticks_ = 0, conflicts_ = 0;
  std::int64_t next_poll_ = 0;
  std::int64_t memory_limit_ = -1, held_ = 0;
};

}  // namespace scheduler
