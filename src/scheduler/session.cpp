#include "scheduler/session.h"

#include <exception>
#include <optional>
#include <semaphore>
#include <thread>
#include <utility>

#include "scheduler/run.h"

namespace scheduler {

// Why a thread: the search stops wherever its work is used up, deep inside a propagator as well,
// and a stack of its own is the one way to keep that place. The semaphores pass the turn to and
// fro.
struct Session::Inside {
  Inside(Problem given, Options wishes)
      : problem(std::move(given)),
        options(without_limits(std::move(wishes))),
        run(problem, options),
        thread([this] { search(); }) {}

  ~Inside() {
    instalment.reset();
    if (!ended) give_turn();
    thread.join();
  }

  static Options without_limits(Options options) {
    options.proof = nullptr;
    options.seconds = 0;
    options.work_limit = 0;
    return options;
  }

  /// In the caller's thread: the search has its turn until the instalment is used up.
  void give_turn() {
    to_search.release();
    to_caller.acquire();
  }

  /// In the search's own thread, as all below.
  void search() {
    to_search.acquire();
    try {
      run.budget().when_used_up([this] { return next(); });
      if (instalment) search_all(run);
    } catch (...) {
      error = std::current_exception();
    }
    ended = true;
    to_caller.release();
  }
  /// The instalment that came with this turn, or the one of the next turn.
  std::optional<Budget::Instalment> next() {
    if (!fresh) {
      to_caller.release();
      to_search.acquire();
    }
    fresh = false;
    return instalment;
  }

  Problem problem;
  Options options;
  Run run;
  bool ended = false, fresh = false;
  std::optional<Budget::Instalment> instalment;  // none: the session is given up
  std::exception_ptr error;
  std::binary_semaphore to_search{0}, to_caller{0};
  std::thread thread;  // last: it uses all the others
};

Session::Session(Problem problem, Options options)
    : inside_(std::make_unique<Inside>(std::move(problem), std::move(options))) {}

Session::~Session() = default;

Outcome Session::work(std::int64_t ticks, double seconds) {
  if (!inside_->ended) {
    inside_->instalment = {ticks, seconds};
    inside_->fresh = true;
    inside_->give_turn();
  }
  if (inside_->error) std::rethrow_exception(inside_->error);
  return inside_->run.outcome();
}

}  // namespace scheduler
