#include "load.h"

#include <arpa/inet.h>
#include <netinet/in.h>
#include <netinet/tcp.h>
#include <sys/socket.h>
#include <unistd.h>

#include <algorithm>
#include <atomic>
#include <chrono>
#include <mutex>
#include <stdexcept>
#include <thread>

#include "full_school.h"
#include "kitchen/json_tree.h"

namespace serve_bench {
namespace {

using Clock = std::chrono::steady_clock;

struct Answer {
  int status = 0;
  std::string body;
};

/// One keep-alive connection.
class Connection {
 public:
  explicit Connection(int port) : socket_(::socket(AF_INET, SOCK_STREAM, 0)) {
    sockaddr_in to{};
    to.sin_family = AF_INET;
    to.sin_port = htons(static_cast<std::uint16_t>(port));
    to.sin_addr.s_addr = htonl(INADDR_LOOPBACK);
    const int on = 1;
    ::setsockopt(socket_, IPPROTO_TCP, TCP_NODELAY, &on, sizeof on);
    if (::connect(socket_, reinterpret_cast<const sockaddr*>(&to), sizeof to) != 0)
      throw std::runtime_error("no connection");
  }
  ~Connection() { ::close(socket_); }
  Connection(const Connection&) = delete;
  Connection& operator=(const Connection&) = delete;

  Answer ask(const std::string& method, const std::string& path, const std::string& headers = "",
             const std::string& body = "") {
    std::string text = method + " " + path + " HTTP/1.1\r\nHost: localhost\r\n" + headers;
    if (!body.empty())
      text += "Content-Type: application/json\r\nContent-Length: " + std::to_string(body.size()) +
              "\r\n";
    text += "\r\n" + body;
    for (std::size_t sent = 0; sent < text.size();) {
      const auto n = ::send(socket_, text.data() + sent, text.size() - sent, MSG_NOSIGNAL);
      if (n <= 0) throw std::runtime_error("the connection ended");
      sent += static_cast<std::size_t>(n);
    }
    std::size_t head = std::string::npos;
    while ((head = buffer_.find("\r\n\r\n")) == std::string::npos) more();
    Answer out;
    out.status = std::stoi(buffer_.substr(9, 3));
    const auto length_at = buffer_.find("Content-Length: ");
    const std::size_t length = length_at == std::string::npos || length_at > head
                                   ? 0
                                   : std::stoul(buffer_.substr(length_at + 16, 12));
    while (buffer_.size() < head + 4 + length) more();
    out.body = buffer_.substr(head + 4, length);
    buffer_.erase(0, head + 4 + length);
    return out;
  }

 private:
  int socket_;
  std::string buffer_;

  void more() {
    char bytes[65536];
    const auto n = ::recv(socket_, bytes, sizeof bytes, 0);
    if (n <= 0) throw std::runtime_error("the connection ended");
    buffer_.append(bytes, static_cast<std::size_t>(n));
  }
};

class Run {
 public:
  explicit Run(const Load& load) : load_(load) {
    Connection first(load.port);
    token_ = tree(first.ask("GET", "/api/me").body).find("token")->text;
  }

  LoadResult go() {
    begin_ = Clock::now();
    std::vector<std::thread> threads;
    for (int i = 0; i < load_.connections; ++i) threads.emplace_back([this] { one_page(); });
    for (std::thread& each : threads) each.join();
    const double took = std::chrono::duration<double>(Clock::now() - begin_).count();
    std::sort(took_.begin(), took_.end());
    LoadResult out;
    out.answers = static_cast<long>(took_.size());
    out.per_second = static_cast<double>(took_.size()) / took;
    if (!took_.empty()) {
      out.p50 = took_[took_.size() / 2];
      out.p99 = took_[took_.size() * 99 / 100];
      out.worst = took_.back();
    }
    out.clashes = clashes_;
    out.faults = faults_;
    return out;
  }

 private:
  const Load& load_;
  std::string token_;
  Clock::time_point begin_;
  std::atomic<long> next_{0}, clashes_{0}, faults_{0};
  std::mutex mutex_;
  std::vector<double> took_;

  /// When request number `n` is due; at once when they go as fast as they can.
  Clock::time_point due(long n) const {
    if (load_.per_second <= 0) return Clock::now();
    return begin_ + std::chrono::duration_cast<Clock::duration>(
                        std::chrono::duration<double>(static_cast<double>(n) / load_.per_second));
  }

  void one_page() {
    Connection connection(load_.port);
    std::vector<double> own;
    const auto end = begin_ + std::chrono::duration_cast<Clock::duration>(
                                  std::chrono::duration<double>(load_.seconds));
    for (;;) {
      const long n = next_++;
      const auto when = due(n);
      if (when >= end) break;
      std::this_thread::sleep_until(when);
      if (n % 10 == 9 && !load_.writes.empty()) {
        write(connection, load_.writes[static_cast<std::size_t>(n / 10) % load_.writes.size()],
              when, own);
      } else {
        note(connection.ask("GET", load_.reads[static_cast<std::size_t>(n) % load_.reads.size()]),
             200);
        own.push_back(ms(when));
      }
    }
    const std::lock_guard lock(mutex_);
    took_.insert(took_.end(), own.begin(), own.end());
  }

  // Reading and writing back are two requests, each with its own time.
  void write(Connection& connection, const std::string& path, Clock::time_point when,
             std::vector<double>& own) {
    const Answer read = connection.ask("GET", path);
    note(read, 200);
    own.push_back(ms(when));
    if (read.status != 200) return;
    const kitchen::Node document = tree(read.body);
    kitchen::Node change = kitchen::Node::object();
    change.set("body", *document.find("body"));
    const auto version = static_cast<long>(document.find("version")->number);
    const std::string body = kitchen::json_text(change);
    const auto begin = Clock::now();
    const Answer written = connection.ask(
        "PUT", path,
        "X-Benchbell-Token: " + token_ + "\r\nIf-Match: \"" + std::to_string(version) + "\"\r\n",
        body);
    own.push_back(ms(begin));
    if (written.status == 412)
      ++clashes_;
    else
      note(written, 200);
  }

  void note(const Answer& answer, int wanted) {
    if (answer.status != wanted) ++faults_;
  }
  static double ms(Clock::time_point since) {
    return std::chrono::duration<double, std::milli>(Clock::now() - since).count();
  }
};

}  // namespace

LoadResult run_load(const Load& load) { return Run(load).go(); }

}  // namespace serve_bench
