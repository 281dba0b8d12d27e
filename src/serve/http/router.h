// Which handler answers which address. Routes are values, so that a test can hold the list of them
// against the written contract.
//
//   Router router;
//   router.add({.method = Method::kGet, .pattern = "/api/documents/{kind}/{id}", .needs =
//   "teacher",
//               .handler = show_document});
//   router.add({.method = Method::kGet, .pattern = "/assets/{path*}", .handler = asset});
//
// A fixed segment goes before {name}, {name} before {name*}, whatever the order of adding. {name*}
// is the last segment and takes the rest of the path, slashes and all (at least one letter).
#pragma once

#include <cstddef>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "serve/http/message.h"

namespace serve::http {

/// Runs on one of the server's workers, several at once: it may wait for a database, it must not
/// plan for half a minute (there are two workers).
using Handler = std::function<Response(const Request&)>;

struct Route {
  Method method = Method::kGet;  ///< GET answers HEAD too
  std::string pattern;
  /// Who may: a word that only the application's middleware reads. Empty means nothing here.
  std::string needs;
  Handler handler;
  std::optional<std::size_t> body_limit = std::nullopt;  ///< bytes, instead of the server's own
};

/// Runs around every handler, on the worker: signs in, refuses, or calls `next`. Also asked when
/// there is no such route, with nothing as route, so that strangers need not learn what exists.
using Middleware = std::function<Response(Request&, const Route*, const Handler& next)>;

class Router {
 public:
  /// Throws std::invalid_argument for a pattern that is not one ("//", "{}", the same name twice,
  /// {x*} not last) and for a method and shape that is there already: mistakes of the programmer.
  void add(Route);
  void use(Middleware middleware) { middleware_ = std::move(middleware); }

  const std::vector<Route>& routes() const { return routes_; }

  struct Match {
    const Route* route = nullptr;  ///< nothing: see `allow`
    Pairs parameters;
    std::string allow;  ///< for 405: "GET, HEAD, PUT"; empty: 404
  };
  /// `path` as in Request::path. A HEAD falls to the GET of the same pattern.
  Match match(Method, std::string_view path) const;

  /// Handler, middleware, 404 and 405 in one call, without a server: what tests of handlers use.
  /// Exceptions of handlers pass through.
  Response answer(Request) const;
  /// The same when the match is known already.
  Response answer(Request, const Match&) const;

 private:
  std::vector<Route> routes_;
  std::vector<std::vector<std::string>> segments_;  ///< of each route's pattern
  Middleware middleware_;
};

}  // namespace serve::http
