#include "serve/http/read_request.h"

#include <algorithm>
#include <boost/beast/http/basic_parser.hpp>
#include <limits>
#include <utility>

#include "base/text.h"
#include "serve/http/target.h"

namespace serve::http {
namespace {

namespace beast_http = boost::beast::http;
using Fault = beast_http::error;

/// Chunk headers and trailers are not part of a body; more of them than this in one piece is no
/// honest client.
constexpr std::size_t kMostBetweenChunks = 16U << 10U;
constexpr std::size_t kReserveAtMost = 1U << 20U;

std::string_view view(boost::beast::string_view text) { return {text.data(), text.size()}; }

bool is_word(const std::string& text, std::string_view word) {
  return base::lower(base::trimmed(text)) == word;
}

}  // namespace

/// Collects what Beast's grammar finds. Its own names for the callbacks are given by the base
/// class.
class RequestReader::Parser : public beast_http::basic_parser<true> {
 public:
  explicit Parser(const Limits& limits) : limits_(limits) {
    header_limit(static_cast<std::uint32_t>(limits.head_bytes + 1));
    // allow_body() decides, when the route is known. Not boost::none: version 1.74 takes that for
    // 0.
    body_limit(std::numeric_limits<std::uint64_t>::max());
    eager(false);  // stop where the head ends
  }

  Request request;
  std::string target;
  bool target_too_long = false;
  bool too_many_headers = false;
  bool bad_header = false;
  bool version10 = false;

 private:
  using error_code = boost::beast::error_code;
  using text = boost::beast::string_view;

  void on_request_impl(beast_http::verb, text method, text path, int version,
                       error_code& ec) override {
    request.method = method_in(view(method));
    version10 = version == 10;
    target_too_long = path.size() > limits_.target_bytes;
    if (target_too_long) ec = Fault::header_limit;
    target = view(path.substr(0, limits_.target_bytes));
  }
  void on_response_impl(int, text, int, error_code& ec) override { ec = Fault::bad_method; }
  void on_field_impl(beast_http::field, text name, text value, error_code& ec) override {
    if (head_done_) return;  // trailers (RFC 9110, 6.5) are read and not believed
    too_many_headers = request.headers.size() >= limits_.headers;
    if (too_many_headers) ec = Fault::header_limit;
    bad_header = std::any_of(value.begin(), value.end(), [](char c) {
      return (static_cast<unsigned char>(c) < 0x20 && c != '\t') || c == 0x7F;
    });
    if (bad_header) ec = Fault::bad_value;
    if (!ec) request.headers.push_back({std::string(view(name)), std::string(view(value))});
  }
  void on_header_impl(error_code&) override { head_done_ = true; }
  void on_body_init_impl(const boost::optional<std::uint64_t>& length, error_code&) override {
    if (length)
      request.body.reserve(
          static_cast<std::size_t>(std::min<std::uint64_t>(*length, kReserveAtMost)));
  }
  std::size_t on_body_impl(text piece, error_code&) override {
    request.body.append(piece.data(), piece.size());
    return piece.size();
  }
  void on_chunk_header_impl(std::uint64_t, text, error_code&) override {}
  std::size_t on_chunk_body_impl(std::uint64_t, text piece, error_code& ec) override {
    return on_body_impl(piece, ec);
  }
  void on_finish_impl(error_code&) override {}

  Limits limits_;
  bool head_done_ = false;
};

RequestReader::RequestReader(const Limits& limits)
    : limits_(limits), parser_(std::make_unique<Parser>(limits)) {}
RequestReader::~RequestReader() = default;
RequestReader::RequestReader(RequestReader&&) noexcept = default;
RequestReader& RequestReader::operator=(RequestReader&&) noexcept = default;

RequestReader::State RequestReader::state() const { return state_; }
bool RequestReader::begun() const { return parser_->got_some() || head_used_ > 0; }
const Request& RequestReader::request() const { return parser_->request; }
bool RequestReader::http10() const { return parser_->version10; }
bool RequestReader::keep_alive() const {
  return state_ != State::kRefused && state_ != State::kHead && parser_->keep_alive();
}
std::size_t RequestReader::body_bytes() const { return parser_->request.body.size(); }
Response RequestReader::refusal() const { return refusal_; }
Request RequestReader::take() { return std::move(parser_->request); }

bool RequestReader::waits_for_continue() const {
  return state_ == State::kBody && !http10() && request().header("Expect") != nullptr;
}

std::optional<std::uint64_t> RequestReader::length() const {
  const auto said = parser_->content_length();
  if (!said) return std::nullopt;
  return *said;
}

void RequestReader::refuse(int status, std::string code, std::string message, std::string remedy) {
  state_ = State::kRefused;
  refusal_ = refused(status, std::move(code), std::move(message), std::move(remedy));
}

void RequestReader::refuse_unread(int status, std::string_view what) {
  refuse(status, "serve.unreadable", base::say("This request cannot be read: ", what, '.'),
         "Load the page again. If that does not help, the program that asks has a fault.");
}

std::size_t RequestReader::feed(std::string_view bytes) {
  if (state_ == State::kDone || state_ == State::kRefused) return 0;
  std::size_t used = 0;
  // RFC 9112, 2.2: blank lines before a request are passed over.
  while (!begun() && used < bytes.size() && (bytes[used] == '\r' || bytes[used] == '\n')) ++used;
  boost::beast::error_code fault;
  while (used < bytes.size() && !fault && !parser_->is_done()) {
    const bool in_head = state_ == State::kHead;
    const auto taken = parser_->put({bytes.data() + used, bytes.size() - used}, fault);
    used += taken;
    if (!in_head) continue;
    // Beast counts each header anew; the sum of them is counted here.
    head_used_ += taken;
    if (parser_->is_header_done()) break;
    if (head_used_ + (bytes.size() - used) > limits_.head_bytes) fault = Fault::header_limit;
  }
  if (fault == Fault::need_more) {
    if (state_ == State::kBody && bytes.size() - used > kMostBetweenChunks)
      refuse_unread(400, "the pieces of its body are not marked as they should be");
    return used;
  }
  if (fault == Fault::header_limit) {
    if (parser_->target_too_long)
      refuse(414, "serve.address_too_long", "This address is too long.", "Use a shorter one.");
    else
      refuse(431, "serve.headers_too_large",
             parser_->too_many_headers ? "This request has too many headers."
                                       : "The headers of this request are too large.",
             "Remove this site's cookies in the browser and load the page again.");
  } else if (fault == Fault::body_limit) {
    refuse_size();
  } else if (fault) {
    refuse_unread(400, fault == Fault::bad_version ? "it is not in HTTP 1.0 or 1.1"
                                                   : "it is not formed as it should be");
  } else if (state_ == State::kHead && parser_->is_header_done()) {
    finish_head();
  } else if (parser_->is_done()) {
    state_ = State::kDone;
  }
  return used;
}

void RequestReader::finish_head() {
  Request& request = parser_->request;
  int hosts = 0, codings = 0;
  for (const Pair& header : request.headers) {
    const std::string name = base::lower(header.name);
    if (name == "host") {
      ++hosts;
      request.host = base::lower(base::trimmed(header.value));
    } else if (name == "cookie") {
      for (Pair& each : cookies_in(header.value)) request.cookies.push_back(std::move(each));
    } else if (name == "transfer-encoding") {
      // Anything but one "chunked" leaves the end of the body in doubt, and two readers of one
      // connection may then see different requests in it (RFC 9112, 6.1 and 11.2).
      if (++codings > 1 || !is_word(header.value, "chunked"))
        return refuse_unread(501, "its body comes in a form that is not known here");
    } else if (name == "expect" && !is_word(header.value, "100-continue")) {
      return refuse_unread(417, "it expects something that is not known here");
    }
  }
  if (codings > 0 && http10()) return refuse_unread(400, "the end of its body is in doubt");
  if (hosts > 1 || (hosts == 0 && !http10()))
    return refuse_unread(400, "it does not say which server it is for");
  auto target = target_in(parser_->target);
  if (!target)
    return refuse(400, "serve.address", "This address is not one that can exist here.",
                  "Go back to the first page and look from there.");
  request.path = std::move(target->path);
  request.query = std::move(target->query);
  if (!target->authority.empty()) request.host = base::lower(target->authority);
  if (!request.host.empty() && !host_in(request.host))
    return refuse_unread(400, "the name of its server is not a name");
  state_ = parser_->is_done() ? State::kDone : State::kBody;
}

void RequestReader::refuse_size() {
  const std::size_t limit = body_limit_;
  const std::string words = limit >= (1U << 20U) ? base::say(limit >> 20U, " MB")
                            : limit >= 1024      ? base::say(limit >> 10U, " kB")
                                                 : base::say(limit, " bytes");
  refuse(413, "serve.too_large",
         base::say("That is too large: at most ", words, " can be sent here."),
         "Send a smaller file, or a part of it at a time.");
}

void RequestReader::allow_body(std::size_t bytes) {
  if (state_ != State::kBody) return;
  body_limit_ = bytes;
  if (length().value_or(0) > bytes) return refuse_size();
  parser_->body_limit(bytes);
  parser_->eager(true);
}

}  // namespace serve::http
