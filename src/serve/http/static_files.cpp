#include "serve/http/static_files.h"

#include <cstddef>
#include <stdexcept>

#include "base/text.h"

namespace serve::http {
namespace {

/// The weight of one coding in Accept-Encoding: ";q=0" and its longer forms mean "not that".
bool weight_is_zero(std::string_view parameters) {
  const auto q = parameters.find("q=");
  if (q == std::string_view::npos) return false;
  const auto weight = base::number_in(base::trimmed(parameters.substr(q + 2)));
  return weight && *weight <= 0;
}

/// Do these ETags (a list, or "*") name that one? Weak comparison, as If-None-Match wants.
bool names_etag(std::string_view list, std::string_view etag) {
  for (std::string& each : base::parts(list, ',')) {
    std::string_view one = each;
    if (one == "*") return true;
    if (one.starts_with("W/")) one.remove_prefix(2);
    if (one == etag) return true;
  }
  return false;
}

}  // namespace

bool accepts_gzip(const Request& request) {
  const std::string* header = request.header("Accept-Encoding");
  if (header == nullptr) return false;
  bool any = false;
  for (const std::string& part : base::parts(base::lower(*header), ',')) {
    const auto semicolon = part.find(';');
    const std::string coding = base::trimmed(part.substr(0, semicolon));
    const bool refused = semicolon != std::string::npos &&
                         weight_is_zero(std::string_view(part).substr(semicolon));
    if (coding == "gzip" || coding == "x-gzip") return !refused;
    if (coding == "*") any = !refused;
  }
  return any;
}

StaticFiles::StaticFiles(std::vector<Asset> assets) {
  for (Asset& asset : assets) {
    const std::string path = asset.path;
    if (!files_.emplace(path, std::move(asset)).second)
      throw std::invalid_argument("two files for " + path);
  }
}

const Asset* StaticFiles::find(std::string_view path) const {
  const auto found = files_.find(path);
  return found == files_.end() ? nullptr : &found->second;
}

Response StaticFiles::answer(const Request& request, std::string_view path) const {
  const Asset* asset = find(path);
  if (asset == nullptr) return not_found();
  const bool packed = !asset->gzip.empty() && accepts_gzip(request);
  // The packed form is another sequence of bytes and so needs another strong ETag (RFC
  // 9110, 8.8.3.3).
  const std::string plain_tag = '"' + asset->etag + '"';
  const std::string packed_tag = '"' + asset->etag + "-gz\"";
  Response out;
  out.headers.push_back({"ETag", packed ? packed_tag : plain_tag});
  out.headers.push_back(
      {"Cache-Control", asset->immutable ? "public, max-age=31536000, immutable" : "no-cache"});
  if (!asset->gzip.empty()) out.headers.push_back({"Vary", "Accept-Encoding"});
  const std::string* known = request.header("If-None-Match");
  if (known != nullptr && (names_etag(*known, plain_tag) || names_etag(*known, packed_tag))) {
    out.status = 304;
    return out;
  }
  out.content_type = asset->content_type;
  if (packed) out.headers.push_back({"Content-Encoding", "gzip"});
  out.body = Body::lasting(packed ? asset->gzip : asset->plain);
  return out;
}

}  // namespace serve::http
