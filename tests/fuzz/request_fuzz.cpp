// Whatever a stranger sends is a request or a refusal: no bytes are read twice, what is read keeps
// its promises, and it does not matter into which pieces the network cuts it.
#include <cstdint>
#include <cstdlib>
#include <iostream>
#include <string>
#include <string_view>

#include "base/text.h"
#include "serve/http/read_request.h"
#include "serve/http/static_files.h"
#include "serve/http/target.h"

namespace {

using namespace serve::http;
using State = RequestReader::State;

[[noreturn]] void fail(std::string_view why) {
  std::cerr << "request_fuzz: " << why << '\n';
  std::abort();
}

constexpr std::size_t kBody = 4096;

bool control(char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7F; }

void judge(const Request& request) {
  const std::string& path = request.path;
  if (path.empty() || path[0] != '/') fail("a path without a slash");
  if (base::not_utf8(path)) fail("a path with a broken letter");
  if (path.size() > 1 && path.back() == '/') fail("a path that ends in a slash");
  const std::string closed = path + '/';
  for (const char* way : {"/../", "/./", "\\"})
    if (closed.find(way) != std::string::npos) fail("a path that is a way");
  if (path.find("//") != std::string::npos) fail("an empty segment");
  for (const char c : path)
    if (control(c)) fail("a control character in a path");
  for (const Pair& header : request.headers) {
    if (header.name.empty()) fail("a header without a name");
    for (const char c : header.value)
      if (control(c) && c != '\t') fail("a control character in a header");
  }
  for (const Pair& pair : request.query)
    if (base::not_utf8(pair.name) || base::not_utf8(pair.value)) fail("a broken letter in a query");
  if (request.body.size() > kBody) fail("a body larger than allowed");
  static_cast<void>(accepts_gzip(request));
  static_cast<void>(from_another_site(request));
}

/// The requests in the bytes, one after another, as text; offered in pieces of that size.
std::string all_read(std::string_view bytes, std::size_t piece) {
  std::string out, buffer;
  RequestReader reader{Limits{}};
  std::size_t at = 0;
  for (;;) {
    const State before = reader.state();
    const std::size_t used = reader.feed(buffer);
    if (used > buffer.size()) fail("more was read than there is");
    buffer.erase(0, used);
    if (before == State::kHead && reader.state() == State::kBody) {
      reader.allow_body(kBody);
      continue;
    }
    if (reader.state() == State::kRefused) {
      const int status = reader.refusal().status;
      if (status < 400 || status > 501) fail("a refusal that is none");
      return out;  // when it is refused may depend on the pieces, what was read before must not
    }
    if (reader.state() == State::kDone) {
      const Request request = reader.take();
      judge(request);
      out += request.path + '\n' + request.host + '\n' + request.body + '\n';
      for (const Pair& each : request.headers) out += each.name + ':' + each.value + '\n';
      reader = RequestReader{Limits{}};
      if (!buffer.empty()) continue;
    }
    if (at == bytes.size()) return out;
    buffer += bytes.substr(at, piece);
    at = std::min(bytes.size(), at + piece);
  }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  std::string_view bytes(reinterpret_cast<const char*>(data), size);
  std::size_t piece = 1;
  if (!bytes.empty()) {
    piece = 1 + static_cast<unsigned char>(bytes[0]) % 64;
    bytes.remove_prefix(1);
  }
  // Limits on heads depend on how much has come at once, so only small inputs must agree exactly.
  const std::string cut = all_read(bytes, piece), whole = all_read(bytes, bytes.size() + 1);
  if (bytes.size() < 2000 && cut != whole) fail("the pieces make a difference");
  const auto target = target_in(bytes);
  if (target) {
    Request request;
    request.path = target->path;
    request.query = target->query;
    judge(request);
  }
  static_cast<void>(host_in(bytes));
  static_cast<void>(cookies_in(bytes));
  return 0;
}
