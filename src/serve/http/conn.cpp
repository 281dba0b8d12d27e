#include "serve/http/conn.h"

#include <openssl/ssl.h>

#include <algorithm>
#include <array>
#include <boost/asio/buffer.hpp>
#include <boost/asio/ssl/context.hpp>
#include <boost/asio/ssl/stream.hpp>
#include <boost/asio/steady_timer.hpp>
#include <boost/asio/write.hpp>
#include <type_traits>
#include <utility>

#include "base/text.h"
#include "serve/http/task.h"

namespace serve::http {
namespace {

namespace asio = boost::asio;
using Tcp = asio::ip::tcp::socket;
using Tls = asio::ssl::stream<Tcp>;

template <class Stream>
class ConnOver final : public Conn, public std::enable_shared_from_this<ConnOver<Stream>> {
 public:
  static constexpr bool kTls = std::is_same_v<Stream, Tls>;

  template <class... Given>
  explicit ConnOver(Given&&... given)
      : stream_(std::forward<Given>(given)...), timer_(stream_.get_executor()) {}

  Task<bool> greet(Deadline by) override {
    if constexpr (kTls) {
      const auto self = this->shared_from_this();
      wait_until(by);
      Fault fault;
      co_await stream_.async_handshake(asio::ssl::stream_base::server, quietly(fault));
      wait_until(Deadline::max());
      co_return !fault;
    } else {
      co_return true;
    }
  }

  Task<std::size_t> read(std::string& to, std::size_t most, Deadline by) override {
    const auto self = this->shared_from_this();
    const std::size_t before = to.size();
    to.resize(before + most);
    wait_until(by);
    const auto place = asio::buffer(to.data() + before, most);
    Fault fault;
    const std::size_t n = co_await stream_.async_read_some(place, quietly(fault));
    wait_until(Deadline::max());
    to.resize(before + n);
    co_return n;
  }

  Task<std::size_t> watch() override {
    const auto self = this->shared_from_this();
    std::array<char, 512> dropped{};
    const auto place = asio::buffer(dropped);
    Fault fault;
    const std::size_t n = co_await stream_.async_read_some(place, quietly(fault));
    co_return n;
  }

  Task<bool> write(std::string_view first, std::string_view second, Deadline by) override {
    const auto self = this->shared_from_this();
    std::string joined;
    // One packet, and under TLS one record, for a small answer.
    if (!first.empty() && !second.empty() && first.size() + second.size() <= kJoinUpTo) {
      joined.reserve(first.size() + second.size());
      joined.append(first).append(second);
      first = joined;
      second = {};
    }
    wait_until(by);
    const std::array<asio::const_buffer, 2> both{asio::buffer(first.data(), first.size()),
                                                 asio::buffer(second.data(), second.size())};
    Fault fault;
    co_await asio::async_write(stream_, both, quietly(fault));
    wait_until(Deadline::max());
    co_return !fault;
  }

  Task<void> end(Deadline by) override {
    const auto self = this->shared_from_this();
    if constexpr (kTls) {
      wait_until(by);
      Fault fault;
      co_await stream_.async_shutdown(quietly(fault));
      wait_until(Deadline::max());
    }
    Fault ignored;  // the other side may have gone before
    socket().shutdown(Tcp::shutdown_send, ignored);
    co_return;
  }

  bool late() const override { return late_; }

  void wake() override {
    Fault ignored;
    socket().cancel(ignored);
  }

  void cut() override {
    Fault ignored;
    socket().close(ignored);
  }

 private:
  static constexpr std::size_t kJoinUpTo = 16U << 10U;

  Tcp& socket() {
    if constexpr (kTls)
      return stream_.next_layer();
    else
      return stream_;
  }

  /// Sets the deadline of what is waited for next. One timer runs on and looks at the deadline when
  /// it
  /// rings: setting it anew for every read and write would cost more than the reads and writes.
  void wait_until(Deadline by) {
    deadline_ = by;
    if (by == Deadline::max()) return;
    late_ = false;
    if (by < rings_at_) ring_at(by);
  }

  void ring_at(Deadline when) {
    rings_at_ = when;
    timer_.expires_at(when);
    timer_.async_wait([weak = this->weak_from_this()](Fault fault) {
      const auto self = weak.lock();
      if (self && !fault) self->rang();
    });
  }

  void rang() {
    rings_at_ = Deadline::max();
    if (deadline_ == Deadline::max()) return;
    if (std::chrono::steady_clock::now() < deadline_) return ring_at(deadline_);
    late_ = true;
    wake();
  }

  Stream stream_;
  asio::steady_timer timer_;
  Deadline deadline_ = Deadline::max();
  Deadline rings_at_ = Deadline::max();  ///< max: it is not running
  bool late_ = false;
};

}  // namespace

std::shared_ptr<Conn> make_conn(Tcp socket, asio::ssl::context* tls) {
  Fault ignored;  // without it answers are only slower
  socket.set_option(asio::ip::tcp::no_delay(true), ignored);
  if (tls != nullptr) return std::make_shared<ConnOver<Tls>>(std::move(socket), *tls);
  return std::make_shared<ConnOver<Tcp>>(std::move(socket));
}

base::Result<std::shared_ptr<asio::ssl::context>> tls_context(const TlsFiles& files) {
  auto context = std::make_shared<asio::ssl::context>(asio::ssl::context::tls_server);
  SSL_CTX_set_min_proto_version(context->native_handle(), TLS1_2_VERSION);
  SSL_CTX_set_options(context->native_handle(), SSL_OP_NO_RENEGOTIATION | SSL_OP_NO_COMPRESSION);
  // An idle connection then needs 30 kB less.
  SSL_CTX_set_mode(context->native_handle(), SSL_MODE_RELEASE_BUFFERS);
  const auto problem = [](const std::filesystem::path& file, std::string_view what) {
    return base::Problem{
        "serve.certificate", file.string(), "",
        base::say("The ", what, " in ", base::in_quotes(file.string()), " cannot be used for TLS."),
        "Give the certificate and its key as two PEM files that this program may "
        "read, the key without a passphrase."};
  };
  Fault fault;
  context->use_certificate_chain_file(files.certificate.string(), fault);
  if (fault) return problem(files.certificate, "certificate");
  context->use_private_key_file(files.key.string(), asio::ssl::context::pem, fault);
  if (fault || SSL_CTX_check_private_key(context->native_handle()) != 1)
    return problem(files.key, "key");
  return context;
}

}  // namespace serve::http
