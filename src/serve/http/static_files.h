// Files of the pages, embedded in the program and compressed when it was built.
#pragma once

#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "serve/http/message.h"

namespace serve::http {

/// One file. The bytes must outlive the server.
struct Asset {
  std::string path;        ///< "/assets/page-4f1a.js", as in Request::path
  std::string_view plain;  ///< the bytes as they are
  std::string_view gzip;   ///< the same compressed; empty: not worth it
  std::string content_type;
  std::string etag;        ///< of the plain bytes, without quotes
  bool immutable = false;  ///< its name changes with its content: keep it for a year
};

class StaticFiles {
 public:
  /// Throws std::invalid_argument for two files with one path.
  explicit StaticFiles(std::vector<Asset>);

  const Asset* find(std::string_view path) const;
  /// The file at `path` in the form the browser accepts, 304 if it has it already (If-None-Match),
  /// 404 if there is none. `path` need not be the request's: one page may answer for many
  /// addresses.
  Response answer(const Request&, std::string_view path) const;
  /// As a handler for "/{path*}": the request's own path.
  Response operator()(const Request& request) const { return answer(request, request.path); }

 private:
  std::map<std::string, Asset, std::less<>> files_;
};

/// Would this browser take gzip (RFC 9110, 12.5.3)? "gzip;q=0" says no.
bool accepts_gzip(const Request&);

}  // namespace serve::http
