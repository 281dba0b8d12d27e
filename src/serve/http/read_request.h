// From bytes to a Request, a piece at a time, without a socket: what a stranger sends is judged
// here and nowhere else. (The grammar of messages is Boost.Beast's parser; what it lets through
// that we must not is refused on top.)
#pragma once

#include <cstddef>
#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <string_view>

#include "serve/http/message.h"
#include "serve/http/server.h"

namespace serve::http {

/// Reads one request. Bytes behind it (the next one, RFC 9112, 9.3.2) are left alone.
class RequestReader {
 public:
  enum class State {
    kHead,     ///< the headers are not all there
    kBody,     ///< they are: look at request(), call allow_body(), then feed on
    kDone,     ///< take() it
    kRefused,  ///< refusal() says why; the connection cannot be used further
  };

  /// Only head_bytes, headers and target_bytes of the limits are looked at.
  explicit RequestReader(const Limits&);
  ~RequestReader();
  RequestReader(RequestReader&&) noexcept;
  RequestReader& operator=(RequestReader&&) noexcept;

  /// Reads on and returns how many bytes were used up. Bytes not used must be offered again, with
  /// more behind them, at the next call. Stops where the head ends.
  std::size_t feed(std::string_view);
  State state() const;
  /// Has anything but blank lines been seen of it?
  bool begun() const;

  /// From kBody on: all but the body. Host and address are not judged.
  const Request& request() const;
  bool http10() const;
  bool keep_alive() const;
  /// The client waits for "100 Continue" before it sends the body.
  bool waits_for_continue() const;
  /// Bytes of the body, if they were said.
  std::optional<std::uint64_t> length() const;
  /// The body may have that many bytes; more, said or sent, is refused with 413. In kBody, once.
  void allow_body(std::size_t bytes);
  std::size_t body_bytes() const;  ///< read until now

  /// In kRefused: what to answer before closing.
  Response refusal() const;
  /// In kDone: the request, once.
  Request take();

 private:
  class Parser;
  void refuse(int status, std::string code, std::string message, std::string remedy);
  void refuse_unread(int status, std::string_view what);
  void refuse_size();
  void finish_head();

  Limits limits_;
  std::unique_ptr<Parser> parser_;
  State state_ = State::kHead;
  std::size_t head_used_ = 0;
  std::size_t body_limit_ = 0;
  Response refusal_;
};

}  // namespace serve::http
