// One connection, plain or TLS, with a deadline on everything it waits for. The one place where the
// two differ; the rest of the server sees only this header, which keeps Asio's templates out of it.
//
// Everything here happens on the server's socket thread.
#pragma once

#include <boost/asio/any_io_executor.hpp>
#include <boost/asio/ip/tcp.hpp>
#include <chrono>
#include <cstddef>
#include <memory>
#include <string>
#include <string_view>

#include "base/problem.h"
#include "serve/http/server.h"
#include "serve/http/task.h"

namespace boost::asio::ssl {
class context;
}

namespace serve::http {

class Conn {
 public:
  using Deadline = std::chrono::steady_clock::time_point;

  virtual ~Conn() = default;

  virtual Task<bool> greet(Deadline) = 0;  ///< the TLS handshake
  /// Appends what has come to `to`, at most `most` bytes; 0 when the other side has ended, the
  /// deadline has passed (then late()), or waiting was ended by wake().
  virtual Task<std::size_t> read(std::string& to, std::size_t most, Deadline) = 0;
  /// A read without a deadline of its own, to learn that the other side has gone; what comes is
  /// dropped.
  virtual Task<std::size_t> watch() = 0;
  /// Writes both, one behind the other; both must live until it is done.
  virtual Task<bool> write(std::string_view first, std::string_view second, Deadline) = 0;
  /// Says goodbye; reads nothing more.
  virtual Task<void> end(Deadline) = 0;

  virtual bool late() const = 0;
  virtual void wake() = 0;  ///< ends what is being waited for; the connection can be used further
  virtual void cut() = 0;   ///< closes at once
};

/// Closed by whoever owns the context; null: plain TCP.
std::shared_ptr<Conn> make_conn(boost::asio::ip::tcp::socket, boost::asio::ssl::context*);

/// Errors: serve.certificate.
base::Result<std::shared_ptr<boost::asio::ssl::context>> tls_context(const TlsFiles&);

}  // namespace serve::http
