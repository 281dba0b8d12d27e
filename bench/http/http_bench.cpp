// How many requests a second the server answers on one core, and how long the slowest hundredth
// waits; and how long an event takes to reach 1,500 open pages.
//
// Clients are kept-alive connections that ask again as soon as they are answered. Server and
// clients are bound to one core each where there are two; on one core the clients' work counts
// against the server.
#include <arpa/inet.h>
#include <netinet/tcp.h>
#include <poll.h>
#include <sched.h>
#include <sys/resource.h>
#include <sys/socket.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <string>
#include <string_view>
#include <thread>
#include <vector>

#include "serve/http/events.h"
#include "serve/http/server.h"

namespace {

using namespace serve::http;
using Clock = std::chrono::steady_clock;
using Milliseconds = std::chrono::duration<double, std::milli>;

[[noreturn]] void fail(const char* what) {
  std::fprintf(stderr, "http_bench: %s\n", what);
  std::exit(1);
}

/// Threads started from here on inherit it.
void stay_on_core(unsigned core) {
  if (std::thread::hardware_concurrency() < 2) return;
  cpu_set_t cores;
  CPU_ZERO(&cores);
  CPU_SET(core, &cores);
  if (sched_setaffinity(0, sizeof cores, &cores) != 0)
    std::printf("(could not bind to core %u: figures are those of both)\n", core);
}

int connected(int port) {
  const int out = ::socket(AF_INET, SOCK_STREAM | SOCK_CLOEXEC, 0);
  sockaddr_in to{};
  to.sin_family = AF_INET;
  to.sin_port = htons(static_cast<std::uint16_t>(port));
  to.sin_addr.s_addr = htonl(INADDR_LOOPBACK);
  if (out < 0 || ::connect(out, reinterpret_cast<const sockaddr*>(&to), sizeof to) != 0)
    fail("no connection");
  const int yes = 1;
  ::setsockopt(out, IPPROTO_TCP, TCP_NODELAY, &yes, sizeof yes);
  return out;
}

void say(int socket, std::string_view bytes) {
  if (::send(socket, bytes.data(), bytes.size(), MSG_NOSIGNAL) !=
      static_cast<ssize_t>(bytes.size()))
    fail("a request was not taken");
}

struct Asking {
  int socket = -1;
  std::size_t got = 0;
  Clock::time_point asked;
};

/// All answers have one length, so that counting bytes is enough to see their ends.
void load(const char* what, int port, const std::string& request, int clients, double seconds) {
  std::array<char, 65536> piece{};
  const int probe = connected(port);
  say(probe, request);
  std::size_t length = 0;
  for (pollfd wait{probe, POLLIN, 0}; ::poll(&wait, 1, length == 0 ? 5000 : 50) > 0;)
    length += static_cast<std::size_t>(
        std::max<ssize_t>(0, ::recv(probe, piece.data(), piece.size(), 0)));
  ::close(probe);
  if (length == 0) fail("no answer");

  std::vector<Asking> asking(static_cast<std::size_t>(clients));
  std::vector<pollfd> waits;
  for (Asking& each : asking) {
    each.socket = connected(port);
    waits.push_back({each.socket, POLLIN, 0});
    each.asked = Clock::now();
    say(each.socket, request);
  }
  std::vector<double> took;
  const auto begin = Clock::now();
  const auto end = begin + std::chrono::duration<double>(seconds);
  while (Clock::now() < end) {
    if (::poll(waits.data(), waits.size(), 5000) <= 0) fail("no answer in five seconds");
    for (std::size_t i = 0; i < waits.size(); ++i) {
      if ((waits[i].revents & POLLIN) == 0) continue;
      const ssize_t n = ::recv(asking[i].socket, piece.data(), piece.size(), 0);
      if (n <= 0) fail("the server closed a connection");
      asking[i].got += static_cast<std::size_t>(n);
      if (asking[i].got < length) continue;
      asking[i].got = 0;
      const auto now = Clock::now();
      took.push_back(Milliseconds(now - asking[i].asked).count());
      asking[i].asked = now;
      say(asking[i].socket, request);
    }
  }
  const double passed = std::chrono::duration<double>(Clock::now() - begin).count();
  for (const Asking& each : asking) ::close(each.socket);
  std::sort(took.begin(), took.end());
  const auto at = [&](double part) {
    return took[static_cast<std::size_t>(part * static_cast<double>(took.size() - 1))];
  };
  std::printf(
      "%-34s %4d clients  %8.0f requests/s  median %.2f ms  99 in 100 within %.2f ms  longest %.1f "
      "ms\n",
      what, clients, static_cast<double>(took.size()) / passed, at(0.5), at(0.99), took.back());
}

void events(Hub& hub, int port, int pages) {
  std::vector<int> sockets;
  std::array<char, 65536> piece{};
  const auto connecting = Clock::now();
  for (int i = 0; i < pages; ++i) {
    sockets.push_back(connected(port));
    say(sockets.back(), "GET /events HTTP/1.1\r\nHost: localhost\r\n\r\n");
  }
  const auto limit = Clock::now() + std::chrono::seconds(30);
  while (hub.listeners() < static_cast<std::size_t>(pages)) {
    if (Clock::now() > limit) fail("the pages did not connect");
    std::this_thread::sleep_for(std::chrono::milliseconds(1));
  }
  std::printf("%d pages listening after %.0f ms\n", pages,
              Milliseconds(Clock::now() - connecting).count());
  for (const int socket : sockets)
    if (::recv(socket, piece.data(), piece.size(), 0) <= 0) fail("no stream");
  const std::string data(350, 'x');
  std::vector<double> took;
  for (int event = 0; event < 20; ++event) {
    const auto told = Clock::now();
    hub.publish("lesson", "state", data);
    for (const int socket : sockets)
      if (::recv(socket, piece.data(), piece.size(), 0) <= 0) fail("a stream ended");
    took.push_back(Milliseconds(Clock::now() - told).count());
  }
  std::sort(took.begin(), took.end());
  rusage used{};
  getrusage(RUSAGE_SELF, &used);
  std::printf(
      "an event of 350 bytes is with all of them after %.1f ms (median of 20), %.1f ms (longest); "
      "%ld MB for server and clients\n",
      took[took.size() / 2], took.back(), used.ru_maxrss / 1024);
  for (const int socket : sockets) ::close(socket);
}

}  // namespace

int main() {
  Hub hub;
  Router router;
  const auto plan = std::make_shared<const std::string>(std::string(800, 'p'));
  const auto file = std::make_shared<const std::string>(std::string(40'000, 'f'));
  std::string long_json = "[";
  for (int i = 0; i < 2000; ++i) long_json += "{\"minute\":" + std::to_string(i) + "},";
  long_json += "0]";
  const auto add = [&router](std::string pattern, Handler handler) {
    Route route;
    route.pattern = std::move(pattern);
    route.handler = std::move(handler);
    router.add(std::move(route));
  };
  add("/plan/{id}", [&](const Request&) {
    Response out = json(200, {});
    out.body = plan;
    return out;
  });
  add("/file", [&](const Request&) {
    Response out;
    out.content_type = "text/javascript";
    out.body = file;
    return out;
  });
  add("/long", [&](const Request&) { return json(200, long_json); });
  add("/events", [&](const Request&) { return follow(hub, {"lesson"}, ""); });
  stay_on_core(0);
  Server server({}, std::move(router));
  const auto port = server.start();
  if (!port) fail(port.problems().front().message.c_str());
  stay_on_core(1);
  const std::string host = " HTTP/1.1\r\nHost: localhost\r\n";
  const std::string plain = "GET /plan/7" + host + "\r\n";
  for (const int clients : {1, 32, 256}) load("JSON of 800 bytes", port.value(), plain, clients, 3);
  load("file of 40 kB", port.value(), "GET /file" + host + "\r\n", 32, 3);
  load("JSON of 30 kB, packed each time", port.value(),
       "GET /long" + host + "Accept-Encoding: gzip\r\n\r\n", 32, 3);
  events(hub, port.value(), 1500);
  return server.stop(std::chrono::seconds(5)) ? 0 : 1;
}
