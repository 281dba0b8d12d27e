// The HTTP/1.1 server (RFC 9110, RFC 9112): one thread for the sockets, a few workers for the
// handlers.
//
//   Server server({.address = "127.0.0.1", .port = 0}, std::move(router), log_line);
//   const auto port = server.start();     // or the Problem that keeps it from starting
//   ...
//   server.stop(std::chrono::seconds(10)); // what is in hand is finished
//
// It knows no route and no role. What it refuses by itself is listed in
// docs/decisions/0014-http.md.
#pragma once

#include <chrono>
#include <cstddef>
#include <filesystem>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/problem.h"
#include "serve/http/router.h"

namespace serve::http {

struct TlsFiles {
  std::filesystem::path certificate;  ///< PEM, with the chain if there is one
  std::filesystem::path key;          ///< PEM, no passphrase
};

/// How long the server waits for the other side.
struct Patience {
  using Time = std::chrono::milliseconds;
  Time greeting{10'000};     ///< TLS handshake
  Time head{10'000};         ///< from the first byte of a request to the end of its headers
  Time body{30'000};         ///< between two pieces of a body
  Time whole_body{300'000};  ///< for all of it
  Time write{30'000};        ///< to take one answer, or one piece of a stream
  Time idle{60'000};         ///< between two requests on one connection
  Time heartbeat{15'000};    ///< a comment on every silent stream, so that lost readers are noticed
};

/// What one request may weigh, and how much there may be of everything.
struct Limits {
  std::size_t head_bytes = 16U << 10U;       ///< request line and headers; beyond: 431
  std::size_t headers = 100;                 ///< their number; beyond: 431
  std::size_t target_bytes = 4096;           ///< beyond: 414
  std::size_t body_bytes = 8U << 20U;        ///< unless the route says otherwise; beyond: 413
  std::size_t bodies_in_hand = 128U << 20U;  ///< bytes of all bodies being read or answered;
                                             ///< beyond: 503
  std::size_t connections = 4000;            ///< beyond: closed at once
  std::size_t waiting = 1000;                ///< requests waiting for a worker; beyond: 503
  std::size_t stream_queue = 64;  ///< events a reader may lag behind before its stream is closed
};

struct ServerOptions {
  std::string address = "127.0.0.1";  ///< "0.0.0.0" or "::" for every machine in the school
  int port = 0;                       ///< 0: any free one
  int workers = 2;
  std::optional<TlsFiles> tls = std::nullopt;
  /// Names by which the server may be called, lower case, without port. Empty: on a loopback
  /// address only localhost and loopback addresses; elsewhere any. A wrong one gets 421, so that a
  /// page of some other name cannot reach a server of this machine (DNS rebinding). Addresses are
  /// always right but on loopback.
  std::vector<std::string> host_names = {};
  Limits limits = {};
  Patience patience = {};
  /// When a handler throws: the number shown to the person, the route's pattern, what was thrown.
  /// For whoever mends the program; may hold what a person typed, so it is never part of the log.
  std::function<void(std::string_view incident, std::string_view pattern, std::string_view what)>
      fault = {};
};

/// One JSON line a request, without a line end: time (UTC), method, route (its pattern, never the
/// path), status, ms, bytes (of the answer's body), and incident when a handler threw. Called on
/// the server's socket thread: do not wait in it, and it must not throw.
using LogSink = std::function<void(std::string_view line)>;

class Server {
 public:
  Server(ServerOptions, Router, LogSink = {});
  ~Server();  ///< stops at once if it still runs
  Server(const Server&) = delete;
  Server& operator=(const Server&) = delete;

  /// Opens the port and returns its number; after this every request is answered. Once only.
  /// Errors: serve.address, serve.port_in_use, serve.port_refused, serve.certificate.
  base::Result<int> start();
  /// No more connections; idle ones and streams close; requests in hand are finished, for at most
  /// that long. Returns when all is closed: true if nothing had to be cut off. From any thread,
  /// again and again; not from a handler.
  bool stop(std::chrono::milliseconds graceful);
  /// Until the server has stopped.
  void wait();
  /// Connections open now.
  std::size_t connections() const;

 private:
  struct Inside;
  std::unique_ptr<Inside> inside_;
};

}  // namespace serve::http
