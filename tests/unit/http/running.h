// A server that runs for the length of a test, with what it logged.
#pragma once

#include <gtest/gtest.h>

#include <mutex>
#include <string>
#include <utility>
#include <vector>

#include "client.h"
#include "serve/http/server.h"

namespace http_test {

class Running {
 public:
  explicit Running(serve::http::Router router, serve::http::ServerOptions options = {})
      : server_(std::move(options), std::move(router), [this](std::string_view line) {
          const std::lock_guard lock(mutex_);
          lines_.emplace_back(line);
        }) {
    const auto started = server_.start();
    if (!started) throw std::runtime_error(started.problems().front().message);
    port_ = started.value();
  }

  int port() const { return port_; }
  serve::http::Server& server() { return server_; }
  Client client() const { return Client(port_); }
  std::vector<std::string> log() const {
    const std::lock_guard lock(mutex_);
    return lines_;
  }
  /// The log once it has that many lines.
  std::vector<std::string> log(std::size_t lines) const {
    EXPECT_TRUE(eventually([&] { return log().size() >= lines; }));
    return log();
  }

 private:
  mutable std::mutex mutex_;
  std::vector<std::string> lines_;
  serve::http::Server server_;  // last: it logs until it has ended
  int port_ = 0;
};

inline serve::http::Route route(serve::http::Method method, std::string pattern,
                                serve::http::Handler handler) {
  serve::http::Route out;
  out.method = method;
  out.pattern = std::move(pattern);
  out.handler = std::move(handler);
  return out;
}

inline serve::http::Route get_route(std::string pattern, serve::http::Handler handler) {
  return route(serve::http::Method::kGet, std::move(pattern), std::move(handler));
}

/// GET /hello, GET /dishes/{id}, POST /echo (small bodies), POST /upload (to 1 MB).
inline serve::http::Router little_router() {
  using namespace serve::http;
  Router out;
  out.add(get_route("/hello", [](const Request&) { return text(200, "good morning"); }));
  out.add(get_route("/dishes/{id}", [](const Request& r) { return text(200, r.parameter("id")); }));
  Route echo = route(Method::kPost, "/echo", [](const Request& r) { return text(200, r.body); });
  echo.body_limit = 1000;
  out.add(std::move(echo));
  Route upload = route(Method::kPost, "/upload",
                       [](const Request& r) { return text(200, std::to_string(r.body.size())); });
  upload.body_limit = 1U << 20U;
  out.add(std::move(upload));
  return out;
}

}  // namespace http_test
