// The pure half of reading a request: addresses, queries, cookies and host names, from bytes of a
// stranger to values that can be trusted in shape.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "serve/http/message.h"

namespace serve::http {

struct Target {
  std::string path;
  Pairs query;
  std::string authority;  ///< only of the absolute form ("http://host/path", RFC 9112, 3.2.2)
};

/// A request target, decoded and checked as Request says. Nothing for what no page of ours asks:
/// broken escapes, "." and ".." segments (also escaped), escaped slashes, backslashes, control
/// characters, what is not UTF-8, "*" and "host:port".
std::optional<Target> target_in(std::string_view);

/// application/x-www-form-urlencoded (WHATWG URL), for queries and posted forms: "+" is a space.
/// Nothing for broken escapes, control characters (but tab and line ends) and what is not UTF-8.
std::optional<Pairs> form_in(std::string_view);

/// The pairs of a Cookie header. What is not a pair is left out, as browsers of all ages send odd
/// things.
Pairs cookies_in(std::string_view header);

struct Host {
  std::string name;       ///< lower case, IPv6 without brackets
  int port = 0;           ///< 0: not said
  bool address = false;   ///< an IPv4 or IPv6 address
  bool loopback = false;  ///< 127.0.0.0/8, ::1 or localhost
};
/// A Host header (RFC 9110, 7.2); nothing for what is not one.
std::optional<Host> host_in(std::string_view);

/// May a server with these names, listening there, be called that? See ServerOptions::host_names.
bool host_allowed(const Host&, const std::vector<std::string>& names, bool listens_on_loopback);

}  // namespace serve::http
