#include "serve/http/exchange.h"

#include <exception>
#include <random>
#include <string_view>
#include <utility>

#include "serve/http/respond.h"
#include "serve/http/static_files.h"

namespace serve::http {
namespace {

long long now_in_seconds() {
  return std::chrono::duration_cast<std::chrono::seconds>(
             std::chrono::system_clock::now().time_since_epoch())
      .count();
}

/// Short enough to be read out over the telephone; no letters that look alike.
std::string new_incident() {
  constexpr std::string_view kLetters = "23456789abcdefghjkmnpqrstuvwxyz";
  thread_local std::mt19937_64 luck{std::random_device{}()};
  std::string out;
  for (int i = 0; i < 8; ++i) out += kLetters[luck() % kLetters.size()];
  return out;
}

void went_wrong(Exchange& exchange, const ServerOptions& options, std::string_view what) {
  exchange.incident = new_incident();
  exchange.response = refused(
      500, "serve.fault",
      "Something in the program went wrong. Nothing is lost that was saved before. Number of this "
      "fault: " +
          exchange.incident + '.',
      "Try once more. If it happens again, give this number to whoever looks after the program.");
  if (!options.fault) return;
  try {
    options.fault(
        exchange.incident,
        exchange.match.route ? std::string_view(exchange.match.route->pattern) : std::string_view(),
        what);
  } catch (...) {  // telling of a fault must not become one: the number is in the log all the same
  }
}

}  // namespace

void prepare_answer(Exchange& exchange, bool secure) {
  exchange.head = head_of(exchange.response, secure, now_in_seconds());
}

void handle_exchange(Exchange& exchange, const Router& router, const ServerOptions& options,
                     bool secure) {
  try {
    const bool takes_gzip = accepts_gzip(exchange.request);  // the request goes to the handler
    exchange.response = router.answer(std::move(exchange.request), exchange.match);
    compress(takes_gzip, exchange.response);
    prepare_answer(exchange, secure);
    return;
  } catch (const std::exception& fault) {
    went_wrong(exchange, options, fault.what());
  } catch (...) {
    went_wrong(exchange, options, "something that is no std::exception");
  }
  prepare_answer(exchange, secure);
}

}  // namespace serve::http
