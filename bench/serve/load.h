// Many pages open at once: requests over keep-alive connections, from a process of its own so that
// the server's core is the server's.
#pragma once

#include <string>
#include <vector>

namespace serve_bench {

struct Load {
  int port = 0;
  int connections = 8;
  double seconds = 5;
  double per_second = 0;            ///< asked for in all; 0 = as fast as answers come
  std::vector<std::string> reads;   ///< paths, taken in turn
  std::vector<std::string> writes;  ///< documents that are read and written back, one request in
                                    ///< ten
};

struct LoadResult {
  double per_second = 0;               ///< answers
  double p50 = 0, p99 = 0, worst = 0;  ///< ms from the moment a request was due to its answer
  long answers = 0, clashes = 0, faults = 0;
};

/// Blocks. Runs on the core it is called on.
LoadResult run_load(const Load&);

}  // namespace serve_bench
