// A question of a browser and the answer to it, as plain values: no sockets, no Asio.
//
// GET /api/documents/dish/fruit-scones?portions=24 becomes a Request whose parameters are
// {kind: "dish", id: "fruit-scones"} and whose query is {portions: "24"}; a handler makes a
// Response.
#pragma once

#include <any>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

#include "base/problem.h"
#include "serve/http/events.h"

namespace serve::http {

/// Everything that is none of ours (TRACE, CONNECT, made-up words) is kOther and meets no route.
enum class Method { kGet, kHead, kPost, kPut, kPatch, kDelete, kOther };

std::string_view method_text(Method);
/// By its exact upper-case name (RFC 9110, 9.1: methods are case-sensitive).
Method method_in(std::string_view);

/// One header, or one pair of a query or a form.
struct Pair {
  std::string name;
  std::string value;
  friend bool operator==(const Pair&, const Pair&) = default;
};
using Pairs = std::vector<Pair>;

/// The first value with exactly that name, or nothing.
const std::string* find(const Pairs&, std::string_view name);
/// The same, whatever the case of a to z: for headers.
const std::string* find_header(const Pairs&, std::string_view name);

/// What was asked. Valid from birth: `path` holds no control characters, no "." or ".." segments,
/// no backslash, is UTF-8 and begins with "/"; `query`, `cookies` and header values hold no control
/// characters (line ends and tabs may stand in a query value).
struct Request {
  Method method = Method::kGet;
  std::string path = "/";  ///< decoded; no empty segments, no "/" at the end but in "/" itself
  Pairs query;             ///< decoded, in order, names may repeat
  Pairs headers;           ///< in order, as sent
  Pairs cookies;
  Pairs parameters;  ///< from the route's pattern, decoded
  std::string body;
  std::string remote;   ///< address without port: "192.0.2.7", "2001:db8::7"
  std::string host;     ///< lower case, with port if one was sent: "localhost:8080"; empty only for
                        ///< HTTP/1.0
  bool secure = false;  ///< came over TLS
  bool loopback = false;  ///< from this very machine
  /// What the middleware found out about who asks; handlers any_cast it. Nothing here looks into
  /// it.
  std::any who;

  const std::string* header(std::string_view name) const { return find_header(headers, name); }
  const std::string* asked(std::string_view name) const { return find(query, name); }
  const std::string* cookie(std::string_view name) const { return find(cookies, name); }
  /// A parameter of the route's own pattern. Throws std::out_of_range for a name not in it.
  const std::string& parameter(std::string_view name) const;
};

/// The bytes of an answer: own text, text shared by many answers, or bytes that live as long as the
/// program (files embedded in it).
class Body {
 public:
  Body() = default;
  Body(std::string own) : content_(std::move(own)) {}
  Body(const char* own) : content_(std::string(own)) {}
  Body(std::shared_ptr<const std::string> shared) : content_(std::move(shared)) {}
  /// `bytes` must outlive every answer.
  static Body lasting(std::string_view bytes);

  std::string_view view() const;
  bool empty() const { return view().empty(); }

 private:
  std::variant<std::string, std::shared_ptr<const std::string>, std::string_view> content_;
};

/// The answer. The server adds Date, Content-Length, Connection, the security headers (security.h),
/// and Cache-Control: no-store unless a header of that name stands in `headers`. A header given
/// here replaces the server's own of the same name (a printed page may need another
/// Content-Security-Policy); a line end inside a header makes the answer a 500 instead.
struct Response {
  int status = 200;
  std::string content_type;  ///< empty: none is sent
  Pairs headers;
  Body body;
  /// With a stream, `body` and `status` are ignored: the answer is 200 text/event-stream.
  std::optional<EventStream> stream;
};

Response json(int status, std::string text);
Response text(int status, std::string plain);
Response html(int status, std::string page);
Response no_content();
/// 303: go and GET `location` (a path of ours).
Response see_other(std::string location);
/// A file to keep: Content-Disposition with the name in ASCII and, when it differs, in UTF-8
/// (RFC 6266).
Response download(std::string content_type, std::string_view file_name, Body);

/// {"problems": [{"code", "where", "message", "remedy"}]}: the one shape of every refusal.
Response refused(int status, const base::Problems&);
/// The same for one problem without a place in a document.
Response refused(int status, std::string code, std::string message, std::string remedy);
Response not_found();
/// 429 with Retry-After in whole seconds, rounded up.
Response too_many(double wait_seconds);

/// HTTP date (RFC 9110, 5.6.7), also for the Expires of a cookie. Seconds since 1970.
std::string http_date(long long seconds_since_1970);

struct Cookie {
  std::string name;   ///< token (RFC 6265)
  std::string value;  ///< cookie-octets: no spaces, quotes, commas, semicolons, backslashes
  std::optional<long long> max_age_seconds;  ///< nothing: until the browser closes; 0: forget it
                                             ///< now
  bool secure = false;                       ///< set it from Request::secure
  std::string path = "/";
};
/// The value for Set-Cookie: always HttpOnly and SameSite=Strict. Throws std::invalid_argument for
/// a name or value that a cookie cannot hold.
std::string set_cookie(const Cookie&);

/// Does the browser say that a page of another site asks (Sec-Fetch-Site; failing that, Origin
/// against Host)? The server refuses these itself for all methods but GET and HEAD.
bool from_another_site(const Request&);

/// A JSON string with its quotes; what is not UTF-8 becomes U+FFFD.
std::string json_quoted(std::string_view);

}  // namespace serve::http
