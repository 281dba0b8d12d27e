#include "serve/http/message.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <ctime>
#include <stdexcept>

#include "base/text.h"
#include "serve/http/target.h"

namespace serve::http {
namespace {

constexpr std::array<std::pair<Method, std::string_view>, 6> kMethods{
    {{Method::kGet, "GET"},
     {Method::kHead, "HEAD"},
     {Method::kPost, "POST"},
     {Method::kPut, "PUT"},
     {Method::kPatch, "PATCH"},
     {Method::kDelete, "DELETE"}}};

bool same_letters(std::string_view a, std::string_view b) {
  const auto low = [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c; };
  return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                    [&](char x, char y) { return low(x) == low(y); });
}

/// token of RFC 9110, 5.6.2.
bool token(std::string_view text) {
  return !text.empty() && std::all_of(text.begin(), text.end(), [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') ||
           std::string_view("!#$%&'*+-.^_`|~").find(c) != std::string_view::npos;
  });
}

/// cookie-octet of RFC 6265, 4.1.1.
bool cookie_octets(std::string_view text) {
  return std::all_of(text.begin(), text.end(), [](char c) {
    return c > 0x20 && c < 0x7F && c != '"' && c != ',' && c != ';' && c != '\\';
  });
}

Response made(int status, std::string_view type, std::string body) {
  Response out;
  out.status = status;
  out.content_type = type;
  out.body = std::move(body);
  return out;
}

}  // namespace

std::string_view method_text(Method method) {
  for (const auto& [each, name] : kMethods)
    if (each == method) return name;
  return "OTHER";
}

Method method_in(std::string_view text) {
  for (const auto& [each, name] : kMethods)
    if (name == text) return each;
  return Method::kOther;
}

const std::string* find(const Pairs& pairs, std::string_view name) {
  for (const Pair& pair : pairs)
    if (pair.name == name) return &pair.value;
  return nullptr;
}

const std::string* find_header(const Pairs& pairs, std::string_view name) {
  for (const Pair& pair : pairs)
    if (same_letters(pair.name, name)) return &pair.value;
  return nullptr;
}

const std::string& Request::parameter(std::string_view name) const {
  if (const std::string* found = find(parameters, name)) return *found;
  throw std::out_of_range("the route has no parameter " + std::string(name));
}

Body Body::lasting(std::string_view bytes) {
  Body out;
  out.content_ = bytes;
  return out;
}

std::string_view Body::view() const {
  if (const auto* own = std::get_if<std::string>(&content_)) return *own;
  if (const auto* shared = std::get_if<std::shared_ptr<const std::string>>(&content_))
    return *shared ? std::string_view(**shared) : std::string_view();
  return std::get<std::string_view>(content_);
}

Response json(int status, std::string text) {
  return made(status, "application/json", std::move(text));
}
Response text(int status, std::string plain) {
  return made(status, "text/plain; charset=utf-8", std::move(plain));
}
Response html(int status, std::string page) {
  return made(status, "text/html; charset=utf-8", std::move(page));
}

Response no_content() {
  Response out;
  out.status = 204;
  return out;
}

Response see_other(std::string location) {
  Response out;
  out.status = 303;
  out.headers.push_back({"Location", std::move(location)});
  return out;
}

Response download(std::string content_type, std::string_view file_name, Body body) {
  std::string ascii, escaped;
  constexpr std::string_view kHex = "0123456789ABCDEF";
  for (const char c : file_name) {
    const bool plain = c >= 0x20 && c < 0x7F && c != '"' && c != '\\' && c != '/' && c != '%';
    ascii += plain ? c : '_';
    if ((c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-' ||
        c == '.' || c == '_') {
      escaped += c;
    } else {
      escaped += '%';
      escaped += kHex[static_cast<unsigned char>(c) >> 4U];
      escaped += kHex[static_cast<unsigned char>(c) & 15U];
    }
  }
  Response out;
  out.content_type = std::move(content_type);
  std::string how = "attachment; filename=\"" + ascii + '"';
  if (ascii != file_name) how += "; filename*=UTF-8''" + escaped;
  out.headers.push_back({"Content-Disposition", std::move(how)});
  out.body = std::move(body);
  return out;
}

Response refused(int status, const base::Problems& problems) {
  std::string body = "{\"problems\":[";
  for (const base::Problem& problem : problems) {
    if (&problem != &problems.front()) body += ',';
    body += "{\"code\":" + json_quoted(problem.code) + ",\"where\":" + json_quoted(problem.where) +
            ",\"message\":" + json_quoted(problem.message) +
            ",\"remedy\":" + json_quoted(problem.remedy) + '}';
  }
  return json(status, body + "]}");
}

Response refused(int status, std::string code, std::string message, std::string remedy) {
  return refused(status,
                 {base::Problem{std::move(code), "", "", std::move(message), std::move(remedy)}});
}

Response not_found() {
  return refused(404, "serve.not_found", "There is nothing at this address.",
                 "Go back to the first page and look from there.");
}

Response too_many(double wait_seconds) {
  const auto seconds = static_cast<long long>(std::ceil(std::max(1.0, wait_seconds)));
  Response out = refused(
      429, "serve.too_many", "That was tried too often.",
      "Try again in " + (seconds < 90 ? std::to_string(seconds) + " seconds."
                                      : std::to_string((seconds + 59) / 60) + " minutes."));
  out.headers.push_back({"Retry-After", std::to_string(seconds)});
  return out;
}

std::string http_date(long long seconds_since_1970) {
  // Not strftime: the day's name must be English whatever the locale.
  constexpr std::array kDays{"Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"};
  constexpr std::array kMonths{"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                               "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};
  const auto time = static_cast<std::time_t>(seconds_since_1970);
  std::tm parts{};
  gmtime_r(&time, &parts);
  const auto two = [](int n) { return std::string(n < 10 ? "0" : "") + std::to_string(n); };
  return std::string(kDays[static_cast<std::size_t>(parts.tm_wday)]) + ", " + two(parts.tm_mday) +
         ' ' + kMonths[static_cast<std::size_t>(parts.tm_mon)] + ' ' +
         std::to_string(parts.tm_year + 1900) + ' ' + two(parts.tm_hour) + ':' + two(parts.tm_min) +
         ':' + two(parts.tm_sec) + " GMT";
}

std::string set_cookie(const Cookie& cookie) {
  if (!token(cookie.name) || !cookie_octets(cookie.value) || !cookie_octets(cookie.path))
    throw std::invalid_argument("a cookie cannot hold this name, value or path");
  std::string out = cookie.name + '=' + cookie.value + "; Path=" + cookie.path;
  if (cookie.max_age_seconds) out += "; Max-Age=" + std::to_string(*cookie.max_age_seconds);
  out += "; HttpOnly; SameSite=Strict";
  if (cookie.secure) out += "; Secure";
  return out;
}

bool from_another_site(const Request& request) {
  if (const std::string* site = request.header("Sec-Fetch-Site"))
    return *site != "same-origin" && *site != "none";
  const std::string* origin = request.header("Origin");
  if (origin == nullptr) return false;  // not a browser, or a very old one
  const auto slashes = origin->find("://");
  if (slashes == std::string::npos) return true;  // "null": a sandboxed page
  return base::lower(std::string_view(*origin).substr(slashes + 3)) != request.host;
}

std::string json_quoted(std::string_view text) {
  constexpr std::string_view kHex = "0123456789abcdef";
  std::string clean;
  while (const auto bad = base::not_utf8(text)) {
    clean += text.substr(0, *bad);
    clean += "\xEF\xBF\xBD";
    text.remove_prefix(*bad + 1);
  }
  clean += text;
  std::string out = "\"";
  for (const char c : clean) {
    if (c == '"' || c == '\\') {
      out += '\\';
      out += c;
    } else if (c == '\n') {
      out += "\\n";
    } else if (static_cast<unsigned char>(c) < 0x20) {
      out += "\\u00";
      out += kHex[static_cast<unsigned char>(c) >> 4U];
      out += kHex[static_cast<unsigned char>(c) & 15U];
    } else {
      out += c;
    }
  }
  return out + '"';
}

}  // namespace serve::http
