// One line of JSON about one request, without anything of the person who asked.
#pragma once

#include <string>
#include <string_view>

namespace serve::http {

struct LogEntry {
  long long time_ms = 0;  ///< since 1970
  std::string_view method;
  std::string_view route;  ///< the pattern; empty: no route was found
  int status = 0;
  double ms = 0;                 ///< from the first byte of the request to the last of the answer
  unsigned long long bytes = 0;  ///< of the answer's body as sent
  std::string_view incident;     ///< empty: nothing went wrong
};

/// {"time":"2026-11-29T09:05:00.123Z","method":"GET","route":"/api/plans/{id}","status":200,...}
std::string log_line(const LogEntry&);

}  // namespace serve::http
