#include "client.h"

#include <arpa/inet.h>
#include <netinet/tcp.h>
#include <openssl/ssl.h>
#include <openssl/x509v3.h>
#include <sys/socket.h>
#include <unistd.h>
#include <zlib.h>

#include <algorithm>
#include <array>
#include <cctype>
#include <csignal>
#include <stdexcept>

namespace http_test {
namespace {

struct FreeContext {
  void operator()(SSL_CTX* it) const { SSL_CTX_free(it); }
};
struct FreeSsl {
  void operator()(SSL* it) const { SSL_free(it); }
};

std::string low(std::string text) {
  std::transform(text.begin(), text.end(), text.begin(),
                 [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  return text;
}

}  // namespace

struct Client::Inside {
  int socket = -1;
  std::unique_ptr<SSL_CTX, FreeContext> context;
  std::unique_ptr<SSL, FreeSsl> ssl;
  ~Inside() {
    ssl.reset();
    if (socket >= 0) ::close(socket);
  }
};

Client::Client(int port, const std::filesystem::path& trusted, const std::string& name)
    : inside_(std::make_unique<Inside>()) {
  std::signal(SIGPIPE, SIG_IGN);  // OpenSSL writes without MSG_NOSIGNAL
  inside_->socket = ::socket(AF_INET, SOCK_STREAM | SOCK_CLOEXEC, 0);
  const timeval patience{20, 0};
  ::setsockopt(inside_->socket, SOL_SOCKET, SO_RCVTIMEO, &patience, sizeof patience);
  ::setsockopt(inside_->socket, SOL_SOCKET, SO_SNDTIMEO, &patience, sizeof patience);
  const int yes = 1;
  ::setsockopt(inside_->socket, IPPROTO_TCP, TCP_NODELAY, &yes, sizeof yes);
  sockaddr_in to{};
  to.sin_family = AF_INET;
  to.sin_port = htons(static_cast<std::uint16_t>(port));
  to.sin_addr.s_addr = htonl(INADDR_LOOPBACK);
  if (::connect(inside_->socket, reinterpret_cast<const sockaddr*>(&to), sizeof to) != 0)
    throw std::runtime_error("no connection");
  if (trusted.empty()) return;
  inside_->context.reset(SSL_CTX_new(TLS_client_method()));
  SSL_CTX_set_verify(inside_->context.get(), SSL_VERIFY_PEER, nullptr);
  SSL_CTX_load_verify_locations(inside_->context.get(), trusted.c_str(), nullptr);
  inside_->ssl.reset(SSL_new(inside_->context.get()));
  SSL* ssl = inside_->ssl.get();
  if (X509_VERIFY_PARAM_set1_ip_asc(SSL_get0_param(ssl), name.c_str()) != 1)
    SSL_set1_host(ssl, name.c_str());
  SSL_set_fd(ssl, inside_->socket);
  if (SSL_connect(ssl) != 1)
    throw std::runtime_error(std::string("no TLS: ") +
                             X509_verify_cert_error_string(SSL_get_verify_result(ssl)));
}

Client::~Client() = default;
Client::Client(Client&&) noexcept = default;

bool Client::try_send(std::string_view bytes) {
  while (!bytes.empty()) {
    const long n = inside_->ssl
                       ? SSL_write(inside_->ssl.get(), bytes.data(), static_cast<int>(bytes.size()))
                       : ::send(inside_->socket, bytes.data(), bytes.size(), MSG_NOSIGNAL);
    if (n <= 0) return false;
    bytes.remove_prefix(static_cast<std::size_t>(n));
  }
  return true;
}

void Client::send(std::string_view bytes) {
  if (!try_send(bytes)) throw std::runtime_error("the server takes no more");
}

bool Client::more() {
  std::array<char, 65536> piece{};
  const long n = inside_->ssl
                     ? SSL_read(inside_->ssl.get(), piece.data(), static_cast<int>(piece.size()))
                     : ::recv(inside_->socket, piece.data(), piece.size(), 0);
  if (n < 0 && !inside_->ssl && (errno == EAGAIN || errno == EWOULDBLOCK))
    throw std::runtime_error("nothing came for twenty seconds; until then: " + buffer_);
  if (n <= 0) return false;
  buffer_.append(piece.data(), static_cast<std::size_t>(n));
  return true;
}

std::string Client::until(std::string_view marker) {
  std::size_t at = 0;
  while ((at = buffer_.find(marker)) == std::string::npos)
    if (!more()) throw std::runtime_error("the connection ended; before that: " + buffer_);
  std::string out = buffer_.substr(0, at + marker.size());
  buffer_.erase(0, out.size());
  return out;
}

Answer Client::head() {
  Answer out;
  out.head = until("\r\n\r\n");
  if (out.head.rfind("HTTP/1.1 ", 0) != 0) throw std::runtime_error("no answer: " + out.head);
  out.status = std::stoi(out.head.substr(9, 3));
  for (std::size_t at = out.head.find("\r\n") + 2; at + 2 < out.head.size();) {
    const auto end = out.head.find("\r\n", at);
    const std::string line = out.head.substr(at, end - at);
    const auto colon = line.find(": ");
    const std::string name = low(line.substr(0, colon));
    if (!out.headers.emplace(name, line.substr(colon + 2)).second)
      throw std::runtime_error("twice the header " + name);
    at = end + 2;
  }
  return out;
}

Answer Client::answer(bool head_only) {
  Answer out = head();
  if (head_only || out.status == 204 || out.status == 304 || out.status == 100) return out;
  const std::size_t length = std::stoul(out.headers.at("content-length"));
  while (buffer_.size() < length)
    if (!more()) throw std::runtime_error("the body is short");
  out.body = buffer_.substr(0, length);
  buffer_.erase(0, length);
  return out;
}

Answer Client::get(std::string_view path, std::string_view headers) {
  send("GET " + std::string(path) + " HTTP/1.1\r\nHost: localhost\r\n" + std::string(headers) +
       "\r\n");
  return answer();
}

Answer Client::post(std::string_view path, std::string_view body, std::string_view headers) {
  send("POST " + std::string(path) + " HTTP/1.1\r\nHost: localhost\r\nContent-Length: " +
       std::to_string(body.size()) + "\r\n" + std::string(headers) + "\r\n" + std::string(body));
  return answer();
}

std::string Client::rest() {
  while (more()) {
  }
  return std::move(buffer_);
}

bool Client::ended() { return buffer_.empty() && !more(); }

std::string Client::cipher() const {
  return inside_->ssl ? SSL_get_version(inside_->ssl.get()) : std::string();
}

std::string unzipped(const std::string& packed) {
  z_stream stream{};
  if (inflateInit2(&stream, 15 + 16) != Z_OK) throw std::runtime_error("zlib");
  std::string out(1U << 22U, '\0');
  stream.next_in = reinterpret_cast<Bytef*>(const_cast<char*>(packed.data()));
  stream.avail_in = static_cast<uInt>(packed.size());
  stream.next_out = reinterpret_cast<Bytef*>(out.data());
  stream.avail_out = static_cast<uInt>(out.size());
  const int done = inflate(&stream, Z_FINISH);
  out.resize(stream.total_out);
  inflateEnd(&stream);
  if (done != Z_STREAM_END) throw std::runtime_error("not gzip");
  return out;
}

}  // namespace http_test
