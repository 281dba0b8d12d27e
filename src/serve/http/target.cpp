#include "serve/http/target.h"

#include <arpa/inet.h>

#include <algorithm>
#include <charconv>

#include "base/text.h"

namespace serve::http {
namespace {

int hex_digit(char c) {
  if (c >= '0' && c <= '9') return c - '0';
  if (c >= 'a' && c <= 'f') return c - 'a' + 10;
  if (c >= 'A' && c <= 'F') return c - 'A' + 10;
  return -1;
}

/// "%41" becomes "A"; nothing when a "%" does not begin two hex digits.
std::optional<std::string> unescaped(std::string_view text, bool plus_is_space) {
  std::string out;
  out.reserve(text.size());
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (text[i] == '%') {
      if (i + 2 >= text.size()) return std::nullopt;
      const int high = hex_digit(text[i + 1]), low = hex_digit(text[i + 2]);
      if (high < 0 || low < 0) return std::nullopt;
      out += static_cast<char>(high * 16 + low);
      i += 2;
    } else {
      out += plus_is_space && text[i] == '+' ? ' ' : text[i];
    }
  }
  return out;
}

bool control(char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7F; }

/// A segment as a name, never as a way: a file system must not be able to make anything of it.
bool good_segment(std::string_view segment) {
  return segment != "." && segment != ".." && !base::not_utf8(segment) &&
         std::none_of(segment.begin(), segment.end(),
                      [](char c) { return control(c) || c == '/' || c == '\\'; });
}

std::optional<std::string> path_in(std::string_view raw) {
  std::string path;
  for (std::size_t at = 0; at < raw.size();) {
    const auto end = std::min(raw.find('/', at), raw.size());
    if (end > at) {
      const auto segment = unescaped(raw.substr(at, end - at), false);
      if (!segment || !good_segment(*segment)) return std::nullopt;
      path += '/';
      path += *segment;
    }
    at = end + 1;
  }
  return path.empty() ? "/" : path;
}

std::optional<std::string> form_text(std::string_view raw) {
  auto text = unescaped(raw, true);
  if (!text || base::not_utf8(*text)) return std::nullopt;
  if (std::any_of(text->begin(), text->end(),
                  [](char c) { return control(c) && c != '\t' && c != '\n' && c != '\r'; }))
    return std::nullopt;
  return text;
}

}  // namespace

std::optional<Pairs> form_in(std::string_view raw) {
  Pairs out;
  for (std::size_t at = 0; at < raw.size();) {
    const auto end = std::min(raw.find('&', at), raw.size());
    const auto pair = raw.substr(at, end - at);
    at = end + 1;
    if (pair.empty()) continue;
    const auto equals = pair.find('=');
    auto name = form_text(pair.substr(0, equals));
    auto value = form_text(equals == std::string_view::npos ? std::string_view()
                                                            : pair.substr(equals + 1));
    if (!name || !value) return std::nullopt;
    out.push_back({std::move(*name), std::move(*value)});
  }
  return out;
}

std::optional<Target> target_in(std::string_view raw) {
  Target out;
  if (raw.starts_with("http://") || raw.starts_with("https://")) {
    raw.remove_prefix(raw.find("//") + 2);
    const auto end = std::min(raw.find_first_of("/?#"), raw.size());
    if (end == 0) return std::nullopt;
    out.authority = raw.substr(0, end);
    raw.remove_prefix(end);
    if (raw.empty()) raw = "/";
  }
  if (!raw.starts_with('/') || raw.find('#') != std::string_view::npos) return std::nullopt;
  const auto question = std::min(raw.find('?'), raw.size());
  auto path = path_in(raw.substr(0, question));
  auto query = form_in(question < raw.size() ? raw.substr(question + 1) : std::string_view());
  if (!path || !query) return std::nullopt;
  out.path = std::move(*path);
  out.query = std::move(*query);
  return out;
}

Pairs cookies_in(std::string_view header) {
  Pairs out;
  for (const std::string& part : base::parts(header, ';')) {
    const auto equals = part.find('=');
    if (equals == std::string::npos || equals == 0) continue;
    std::string value = base::trimmed(part.substr(equals + 1));
    if (value.size() >= 2 && value.front() == '"' && value.back() == '"')
      value = value.substr(1, value.size() - 2);
    out.push_back({base::trimmed(part.substr(0, equals)), std::move(value)});
  }
  return out;
}

std::optional<Host> host_in(std::string_view raw) {
  Host out;
  std::string_view port;
  if (raw.starts_with('[')) {
    const auto close = raw.find(']');
    if (close == std::string_view::npos) return std::nullopt;
    out.name = base::lower(raw.substr(1, close - 1));
    in6_addr six{};
    if (inet_pton(AF_INET6, out.name.c_str(), &six) != 1) return std::nullopt;
    out.address = true;
    out.loopback = IN6_IS_ADDR_LOOPBACK(&six);
    raw.remove_prefix(close + 1);
    if (!raw.empty() && raw.front() != ':') return std::nullopt;
    if (!raw.empty()) port = raw.substr(1);
  } else {
    const auto colon = raw.find(':');
    out.name = base::lower(raw.substr(0, colon));
    if (colon != std::string_view::npos) port = raw.substr(colon + 1);
    // RFC 952 and RFC 1123 names, and "_" because real machines have it.
    if (out.name.empty() || out.name.size() > 253 ||
        !std::all_of(out.name.begin(), out.name.end(), [](char c) {
          return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-' || c == '.' ||
                 c == '_';
        }))
      return std::nullopt;
    in_addr four{};
    out.address = inet_pton(AF_INET, out.name.c_str(), &four) == 1;
    out.loopback = out.address ? (ntohl(four.s_addr) >> 24U) == 127 : out.name == "localhost";
  }
  if (!port.empty()) {
    const auto [end, fault] = std::from_chars(port.data(), port.data() + port.size(), out.port);
    if (fault != std::errc() || end != port.data() + port.size() || out.port < 1 ||
        out.port > 65535)
      return std::nullopt;
  }
  return out;
}

bool host_allowed(const Host& host, const std::vector<std::string>& names,
                  bool listens_on_loopback) {
  if (host.loopback) return true;  // such a name leads a browser to its own machine only
  if (std::find(names.begin(), names.end(), host.name) != names.end()) return true;
  if (listens_on_loopback) return false;
  // Rebinding needs a name whose address the attacker can change; an address has none.
  return host.address || names.empty();
}

}  // namespace serve::http
