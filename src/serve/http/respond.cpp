#include "serve/http/respond.h"

#include <zlib.h>

#include <algorithm>
#include <array>
#include <stdexcept>
#include <utility>

namespace serve::http {
namespace {

constexpr std::size_t kWorthPacking = 1000;

/// What every answer says unless it says otherwise itself. Sources: W3C Content Security Policy 3,
/// WHATWG Fetch (nosniff, Cross-Origin-Resource-Policy), W3C Referrer Policy, W3C Permissions
/// Policy, WHATWG HTML (Cross-Origin-Opener-Policy, Cross-Origin-Embedder-Policy).
constexpr std::array<std::pair<std::string_view, std::string_view>, 9> kAlways{{
    {"Content-Security-Policy",
     "default-src 'self'; base-uri 'none'; object-src 'none'; form-action 'self'; "
     "frame-ancestors 'none'"},
    {"X-Content-Type-Options", "nosniff"},
    {"X-Frame-Options", "DENY"},  // for browsers that do not know frame-ancestors
    {"Referrer-Policy", "no-referrer"},
    {"Permissions-Policy",
     "camera=(), microphone=(), geolocation=(), payment=(), usb=(), display-capture=()"},
    {"Cross-Origin-Opener-Policy", "same-origin"},
    {"Cross-Origin-Embedder-Policy", "require-corp"},
    {"Cross-Origin-Resource-Policy", "same-origin"},
    {"Cache-Control", "no-store"},
}};
constexpr std::string_view kHsts = "max-age=31536000";

bool good_name(std::string_view name) {
  return !name.empty() && std::all_of(name.begin(), name.end(), [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-' ||
           c == '_';
  });
}

bool good_value(std::string_view value) {
  return std::none_of(value.begin(), value.end(), [](char c) {
    return (static_cast<unsigned char>(c) < 0x20 && c != '\t') || c == 0x7F;
  });
}

/// `name` is one of this program's or of a handler, `value` may hold what a person typed.
void put(std::string& head, std::string_view name, std::string_view value) {
  if (!good_name(name) || !good_value(value))
    throw std::invalid_argument("a header that would break the answer: " + std::string(name));
  head.append(name).append(": ").append(value).append("\r\n");
}

bool packs_well(std::string_view type) {
  return type.starts_with("text/") || type.starts_with("application/json") ||
         type.starts_with("application/ld+json") || type.starts_with("application/problem+json") ||
         type.starts_with("image/svg+xml");
}

}  // namespace

std::string_view reason(int status) {
  constexpr std::array<std::pair<int, std::string_view>, 31> kReasons{{
      {200, "OK"},
      {201, "Created"},
      {202, "Accepted"},
      {204, "No Content"},
      {301, "Moved Permanently"},
      {302, "Found"},
      {303, "See Other"},
      {304, "Not Modified"},
      {307, "Temporary Redirect"},
      {308, "Permanent Redirect"},
      {400, "Bad Request"},
      {401, "Unauthorized"},
      {403, "Forbidden"},
      {404, "Not Found"},
      {405, "Method Not Allowed"},
      {406, "Not Acceptable"},
      {408, "Request Timeout"},
      {409, "Conflict"},
      {410, "Gone"},
      {412, "Precondition Failed"},
      {413, "Content Too Large"},
      {414, "URI Too Long"},
      {415, "Unsupported Media Type"},
      {417, "Expectation Failed"},
      {421, "Misdirected Request"},
      {422, "Unprocessable Content"},
      {429, "Too Many Requests"},
      {431, "Request Header Fields Too Large"},
      {500, "Internal Server Error"},
      {501, "Not Implemented"},
      {503, "Service Unavailable"},
  }};
  for (const auto& [each, words] : kReasons)
    if (each == status) return words;
  return "Answer";
}

std::string gzipped(std::string_view plain) {
  z_stream stream{};
  // 15 + 16: the largest window, in gzip's own wrapping. Level 5: nearly the smallest, twice as
  // quick.
  if (deflateInit2(&stream, 5, Z_DEFLATED, 15 + 16, 8, Z_DEFAULT_STRATEGY) != Z_OK) return {};
  std::string out(deflateBound(&stream, static_cast<uLong>(plain.size())), '\0');
  stream.next_in = reinterpret_cast<Bytef*>(const_cast<char*>(plain.data()));
  stream.avail_in = static_cast<uInt>(plain.size());
  stream.next_out = reinterpret_cast<Bytef*>(out.data());
  stream.avail_out = static_cast<uInt>(out.size());
  const int done = deflate(&stream, Z_FINISH);
  out.resize(stream.total_out);
  deflateEnd(&stream);
  return done == Z_STREAM_END ? out : std::string();
}

void compress(bool takes_gzip, Response& response) {
  const std::string_view plain = response.body.view();
  if (response.stream || plain.size() < kWorthPacking || plain.size() > (1U << 30U) ||
      !packs_well(response.content_type) || find_header(response.headers, "Content-Encoding"))
    return;
  // Said in either case: a store between us must know that the answer depends on it.
  if (find_header(response.headers, "Vary") == nullptr)
    response.headers.push_back({"Vary", "Accept-Encoding"});
  if (!takes_gzip) return;
  std::string packed = gzipped(plain);
  if (packed.empty() || packed.size() >= plain.size()) return;
  response.body = std::move(packed);
  response.headers.push_back({"Content-Encoding", "gzip"});
}

std::string head_of(const Response& response, bool secure, long long now) {
  const int status = response.stream ? 200 : response.status;
  std::string head;
  head.reserve(1024);
  head.append("HTTP/1.1 ").append(std::to_string(status)).append(" ").append(reason(status));
  head.append("\r\nDate: ").append(http_date(now)).append("\r\n");
  for (const auto& [name, value] : kAlways)
    if (find_header(response.headers, name) == nullptr) put(head, name, value);
  if (secure && find_header(response.headers, "Strict-Transport-Security") == nullptr)
    put(head, "Strict-Transport-Security", kHsts);
  for (const Pair& pair : response.headers) put(head, pair.name, pair.value);
  if (response.stream) {
    put(head, "Content-Type", "text/event-stream");
    return head;
  }
  if (!response.content_type.empty()) put(head, "Content-Type", response.content_type);
  // 204 and 304 have no body and must not claim a length of 0 (RFC 9110, 8.6).
  if (status != 204 && status != 304)
    put(head, "Content-Length", std::to_string(response.body.view().size()));
  return head;
}

std::string_view end_of_head(bool keep, bool http10) {
  if (!keep) return "Connection: close\r\n\r\n";
  return http10 ? "Connection: keep-alive\r\n\r\n" : "\r\n";
}

}  // namespace serve::http
