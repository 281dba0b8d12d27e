#include "serve/http/log_line.h"

#include <gtest/gtest.h>

namespace serve::http {
namespace {

TEST(LogLine, IsOneObjectOfJson) {
  LogEntry entry;
  entry.time_ms = 784111777045;  // RFC 9110's example second, and 45 ms
  entry.method = "GET";
  entry.route = "/api/plans/{id}";
  entry.status = 200;
  entry.ms = 12.34;
  entry.bytes = 567;
  EXPECT_EQ(
      log_line(entry),
      R"({"time":"1994-11-06T08:49:37.045Z","method":"GET","route":"/api/plans/{id}","status":200,"ms":12.3,"bytes":567})");
  entry.route = {};
  entry.incident = "abc";
  EXPECT_EQ(
      log_line(entry),
      R"({"time":"1994-11-06T08:49:37.045Z","method":"GET","route":null,"status":200,"ms":12.3,"bytes":567,"incident":"abc"})");
}

}  // namespace
}  // namespace serve::http
