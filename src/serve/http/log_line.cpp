#include "serve/http/log_line.h"

#include <fmt/format.h>

#include <ctime>

#include "serve/http/message.h"

namespace serve::http {

std::string log_line(const LogEntry& entry) {
  const auto seconds = static_cast<std::time_t>(entry.time_ms / 1000);
  std::tm t{};
  gmtime_r(&seconds, &t);
  std::string out = fmt::format(
      R"({{"time":"{:04}-{:02}-{:02}T{:02}:{:02}:{:02}.{:03}Z","method":{},"route":{},"status":{},"ms":{:.1f},"bytes":{})",
      t.tm_year + 1900, t.tm_mon + 1, t.tm_mday, t.tm_hour, t.tm_min, t.tm_sec,
      entry.time_ms % 1000, json_quoted(entry.method),
      entry.route.empty() ? "null" : json_quoted(entry.route), entry.status, entry.ms, entry.bytes);
  if (!entry.incident.empty()) out += ",\"incident\":" + json_quoted(entry.incident);
  return out + '}';
}

}  // namespace serve::http
