// A browser's place in the tests: plain blocking sockets and nothing of the server's own code, so
// that both cannot be wrong in the same way. Every wait ends after twenty seconds with an
// exception.
#pragma once

#include <filesystem>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <string_view>

namespace http_test {

struct Answer {
  int status = 0;
  std::map<std::string, std::string> headers;  ///< names in lower case
  std::string head;                            ///< as it came
  std::string body;

  std::string header(const std::string& name) const {
    const auto found = headers.find(name);
    return found == headers.end() ? "(none)" : found->second;
  }
};

class Client {
 public:
  /// Connects to 127.0.0.1. With `trusted`, over TLS, accepting only certificates that this PEM
  /// file vouches for and that are made out for `name`; throws when it is not so.
  explicit Client(int port, const std::filesystem::path& trusted = {},
                  const std::string& name = "localhost");
  ~Client();
  Client(Client&&) noexcept;
  Client(const Client&) = delete;

  void send(std::string_view bytes);
  /// False when the other side does not take it any more.
  bool try_send(std::string_view bytes);
  /// One answer; `head_only`: to a HEAD.
  Answer answer(bool head_only = false);
  /// GET with "Host: localhost" and these header lines ("Name: value\r\n").
  Answer get(std::string_view path, std::string_view headers = {});
  Answer post(std::string_view path, std::string_view body, std::string_view headers = {});
  /// Head of an answer, the body being left.
  Answer head();
  /// All up to and with the marker.
  std::string until(std::string_view marker);
  /// Everything up to the end of the connection.
  std::string rest();
  /// Has the other side ended, with nothing more to read?
  bool ended();

  std::string cipher() const;  ///< version of TLS, empty without

 private:
  bool more();
  struct Inside;
  std::unique_ptr<Inside> inside_;
  std::string buffer_;
};

/// gzip undone by zlib itself.
std::string unzipped(const std::string& packed);

/// Waits until it holds, at most twenty seconds; false if it never did.
template <class Condition>
bool eventually(Condition condition);

}  // namespace http_test

#include <chrono>
#include <thread>

template <class Condition>
bool http_test::eventually(Condition condition) {
  const auto end = std::chrono::steady_clock::now() + std::chrono::seconds(20);
  while (!condition()) {
    if (std::chrono::steady_clock::now() > end) return false;
    std::this_thread::sleep_for(std::chrono::milliseconds(1));
  }
  return true;
}
