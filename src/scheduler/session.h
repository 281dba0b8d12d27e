// A search in instalments: it stops when its work is used up and goes on later where it stopped,
// with all it has learnt. For choosing among several problems (splits of a class into waves): a
// little work on each, then more on those that are worth it.
//
// A session works in a thread of its own, but only inside work(): while it does, the caller waits,
// so nothing runs side by side, and the same instalments give the same outcome.
#pragma once

#include <cstdint>
#include <memory>

#include "scheduler/solve.h"

namespace scheduler {

class Session {
 public:
  /// Keeps both. Of the options `seconds` and `work_limit` do not count; `stop` ends the session
  /// for good. Proofs cannot be written.
  Session(Problem problem, Options options);
  ~Session();
  Session(const Session&) = delete;
  Session& operator=(const Session&) = delete;

  /// Works on for at most so many ticks and seconds; less when all is proved or close enough.
  /// Gives what is known by then, counted from the beginning. Throws what solve() would.
  Outcome work(std::int64_t ticks, double seconds);

 private:
  struct Inside;
  std::unique_ptr<Inside> inside_;
};

}  // namespace scheduler
