// One request and its answer, shared by the session and the worker that handles it.
#pragma once

#include <chrono>
#include <cstddef>
#include <optional>
#include <string>

#include "serve/http/read_request.h"
#include "serve/http/router.h"
#include "serve/http/server.h"

namespace serve::http {

struct Exchange {
  explicit Exchange(const Limits& limits) : reader(limits) {}

  RequestReader reader;
  Request request;
  Router::Match match;
  Method method = Method::kOther;  ///< kept, as the request moves on to its handler
  bool http10 = false;
  bool keep = false;     ///< the connection may be used further
  bool unread = false;   ///< a part of the request was left in the line
  bool judged = false;   ///< the answer was found without a handler
  bool done = false;     ///< the worker has finished
  std::size_t held = 0;  ///< bytes counted in Common::bodies_in_hand
  Response response;
  std::string head;  ///< of the answer, but for its end
  std::string incident;
  std::size_t sent = 0;  ///< bytes of the answer's body
  std::chrono::steady_clock::time_point begun;

  void refuse(Response with) {
    response = std::move(with);
    judged = true;
    keep = false;
  }
};

/// Asks middleware and handler, and makes the answer ready to be sent: runs on a worker. What they
/// throw becomes a 500 with a number, told to `options.fault` and to nobody else.
void handle_exchange(Exchange&, const Router&, const ServerOptions&, bool secure);

/// The same for an answer found without a handler.
void prepare_answer(Exchange&, bool secure);

}  // namespace serve::http
