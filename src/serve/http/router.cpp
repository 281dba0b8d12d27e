#include "serve/http/router.h"

#include <algorithm>
#include <stdexcept>
#include <utility>

namespace serve::http {
namespace {

std::vector<std::string> segments_of(std::string_view path) {
  std::vector<std::string> out;
  for (std::size_t at = 1; at < path.size();) {
    const auto end = std::min(path.find('/', at), path.size());
    out.emplace_back(path.substr(at, end - at));
    at = end + 1;
  }
  return out;
}

bool parameter(std::string_view segment) { return segment.starts_with('{'); }
bool rest(std::string_view segment) { return segment.ends_with("*}"); }
std::string_view name_of(std::string_view segment) {
  return segment.substr(1, segment.size() - (rest(segment) ? 3 : 2));
}

/// Which of two segments is the closer fit: fixed text, then {name}, then {name*}.
int looseness(std::string_view segment) { return !parameter(segment) ? 0 : rest(segment) ? 2 : 1; }

[[noreturn]] void refuse(const std::string& pattern, const std::string& why) {
  throw std::invalid_argument("route " + pattern + ": " + why);
}

void check_pattern(const std::string& pattern, const std::vector<std::string>& segments) {
  if (!pattern.starts_with('/') || pattern.find("//") != std::string::npos ||
      (pattern.size() > 1 && pattern.ends_with('/')))
    refuse(pattern, "a pattern is /one/{two}/{three*}");
  std::vector<std::string_view> names;
  for (std::size_t i = 0; i < segments.size(); ++i) {
    const std::string_view segment = segments[i];
    if (!parameter(segment)) {
      if (segment.find_first_of("{}*") != std::string_view::npos)
        refuse(pattern, "a parameter is a whole segment");
      continue;
    }
    if (!segment.ends_with('}') || name_of(segment).empty() ||
        name_of(segment).find_first_of("{}*") != std::string_view::npos)
      refuse(pattern, "a parameter is {name} or {name*}");
    if (rest(segment) && i + 1 != segments.size()) refuse(pattern, "{name*} must be last");
    if (std::find(names.begin(), names.end(), name_of(segment)) != names.end())
      refuse(pattern, "two parameters of one name");
    names.push_back(name_of(segment));
  }
}

bool same_shape(const std::vector<std::string>& a, const std::vector<std::string>& b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                    [](const std::string& x, const std::string& y) {
                      return looseness(x) == looseness(y) && (parameter(x) || x == y);
                    });
}

bool fits(const std::vector<std::string>& pattern, const std::vector<std::string>& path) {
  for (std::size_t i = 0; i < pattern.size(); ++i) {
    if (i >= path.size()) return false;
    if (rest(pattern[i])) return true;
    if (!parameter(pattern[i]) && pattern[i] != path[i]) return false;
  }
  return pattern.size() == path.size();
}

/// Is `a` the closer fit to a path that both fit? Decided at the first segment where they differ.
bool closer(const std::vector<std::string>& a, const std::vector<std::string>& b) {
  for (std::size_t i = 0; i < std::min(a.size(), b.size()); ++i)
    if (looseness(a[i]) != looseness(b[i])) return looseness(a[i]) < looseness(b[i]);
  return false;
}

Pairs parameters_of(const std::vector<std::string>& pattern, const std::vector<std::string>& path) {
  Pairs out;
  for (std::size_t i = 0; i < pattern.size(); ++i) {
    if (!parameter(pattern[i])) continue;
    std::string value = path[i];
    if (rest(pattern[i]))
      for (std::size_t more = i + 1; more < path.size(); ++more) value += '/' + path[more];
    out.push_back({std::string(name_of(pattern[i])), std::move(value)});
  }
  return out;
}

}  // namespace

void Router::add(Route route) {
  auto segments = segments_of(route.pattern);
  check_pattern(route.pattern, segments);
  if (!route.handler) refuse(route.pattern, "there is no handler");
  if (route.method == Method::kHead || route.method == Method::kOther)
    refuse(route.pattern, "GET answers HEAD; other methods have no routes");
  for (std::size_t i = 0; i < routes_.size(); ++i)
    if (routes_[i].method == route.method && same_shape(segments_[i], segments))
      refuse(route.pattern, "is there already as " + routes_[i].pattern);
  routes_.push_back(std::move(route));
  segments_.push_back(std::move(segments));
}

Router::Match Router::match(Method method, std::string_view path) const {
  const auto segments = segments_of(path);
  const Method wanted = method == Method::kHead ? Method::kGet : method;
  std::optional<std::size_t> best;  // among all methods: the address decides first, then the method
  for (std::size_t i = 0; i < routes_.size(); ++i)
    if (fits(segments_[i], segments) && (!best || closer(segments_[i], segments_[*best]))) best = i;
  if (!best) return {};
  Match out;
  std::vector<std::string> allowed;
  for (std::size_t i = 0; i < routes_.size(); ++i) {
    if (!same_shape(segments_[i], segments_[*best])) continue;
    if (routes_[i].method == wanted) {
      out.route = &routes_[i];
      out.parameters = parameters_of(segments_[i], segments);
      return out;
    }
    allowed.emplace_back(method_text(routes_[i].method));
    if (routes_[i].method == Method::kGet) allowed.emplace_back("HEAD");
  }
  std::sort(allowed.begin(), allowed.end());
  for (const std::string& each : allowed) out.allow += (out.allow.empty() ? "" : ", ") + each;
  return out;
}

Response Router::answer(Request request) const {
  const Match found = match(request.method, request.path);
  return answer(std::move(request), found);
}

Response Router::answer(Request request, const Match& match) const {
  request.parameters = match.parameters;
  const Handler none = [&match](const Request&) {
    if (match.allow.empty()) return not_found();
    Response out = refused(405, "serve.method", "This address does not take that kind of request.",
                           "It takes " + match.allow + '.');
    out.headers.push_back({"Allow", match.allow});
    return out;
  };
  const Handler& next = match.route != nullptr ? match.route->handler : none;
  return middleware_ ? middleware_(request, match.route, next) : next(request);
}

}  // namespace serve::http
