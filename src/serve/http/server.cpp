#include "serve/http/server.h"

#include <sys/resource.h>

#include <boost/asio/co_spawn.hpp>
#include <boost/asio/detached.hpp>
#include <boost/asio/executor_work_guard.hpp>
#include <boost/asio/io_context.hpp>
#include <boost/asio/ip/tcp.hpp>
#include <boost/asio/ip/v6_only.hpp>
#include <boost/asio/post.hpp>
#include <boost/asio/ssl/context.hpp>
#include <boost/asio/steady_timer.hpp>
#include <condition_variable>
#include <cstdint>
#include <mutex>
#include <stdexcept>
#include <thread>
#include <utility>

#include "base/text.h"
#include "serve/http/conn.h"
#include "serve/http/session.h"
#include "serve/http/task.h"
#include "serve/http/workers.h"

namespace serve::http {
namespace {

namespace asio = boost::asio;
using asio::ip::tcp;
constexpr std::chrono::milliseconds kBreath{100};

/// Every page open in the school is a connection, and the usual limit is 1024 files.
void raise_file_limit() {
  rlimit limit{};
  if (getrlimit(RLIMIT_NOFILE, &limit) != 0 || limit.rlim_cur == limit.rlim_max) return;
  limit.rlim_cur = limit.rlim_max;
  setrlimit(RLIMIT_NOFILE, &limit);  // if not, fewer connections: Limits::connections still holds
}

base::Problem port_problem(Fault fault, const std::string& address, int port) {
  if (fault == asio::error::address_in_use)
    return {"serve.port_in_use", "", "",
            base::say("Port ", port,
                      " is taken: another program, or a second copy of this one, uses "
                      "it already."),
            "Close the other program, or choose another port."};
  if (fault == asio::error::access_denied)
    return {"serve.port_refused", "", "",
            base::say("This computer does not let the program use port ", port, '.'),
            "Choose a port above 1023."};
  return {"serve.address", "", "",
          base::say("This computer cannot listen at the address ", base::in_quotes(address), '.'),
          "Use 127.0.0.1 for this computer alone or 0.0.0.0 for the whole building."};
}

}  // namespace

struct Server::Inside {
  Inside(ServerOptions given, Router routes, LogSink sink)
      : options(std::move(given)), router(std::move(routes)), log(std::move(sink)) {}

  base::Result<int> open();
  static Task<void> accept(Inside*);
  static Task<void> cut_later(Inside*, std::chrono::milliseconds);
  void begin_stop(std::chrono::milliseconds graceful);
  void all_ended();

  const ServerOptions options;
  const Router router;
  const LogSink log;
  std::shared_ptr<asio::ssl::context> tls;
  asio::io_context sockets{1};
  asio::executor_work_guard<asio::io_context::executor_type> at_work{sockets.get_executor()};
  tcp::acceptor acceptor{sockets};
  asio::steady_timer breath{sockets};    // when the computer has no connection to give
  asio::steady_timer patience{sockets};  // of stop()
  std::unique_ptr<Workers> workers;
  std::unique_ptr<Common> common;
  std::thread thread;

  std::mutex mutex;  // of what follows
  std::condition_variable changed;
  enum class State { kNew, kRunning, kStopping, kStopped } state = State::kNew;
  bool clean = true;  ///< nothing was cut off
};

base::Result<int> Server::Inside::open() {
  Fault fault;
  const auto address = asio::ip::make_address(options.address, fault);
  if (fault || options.port < 0 || options.port > 65535)
    return port_problem(asio::error::invalid_argument, options.address, options.port);
  if (options.tls) {
    auto made = tls_context(*options.tls);
    if (!made) return made.problems();
    tls = std::move(made).value();
  }
  const tcp::endpoint place(address, static_cast<std::uint16_t>(options.port));
  acceptor.open(place.protocol(), fault);
  if (!fault) acceptor.set_option(tcp::acceptor::reuse_address(true), fault);
  if (!fault && address == asio::ip::address_v6::any())
    acceptor.set_option(asio::ip::v6_only(false), fault);
  if (!fault) acceptor.bind(place, fault);
  if (!fault) acceptor.listen(asio::socket_base::max_listen_connections, fault);
  if (fault) {
    Fault ignored;
    acceptor.close(ignored);
    return port_problem(fault, options.address, options.port);
  }
  workers = std::make_unique<Workers>(options.workers, options.limits.waiting);
  common = std::make_unique<Common>(options, router, log, *workers, sockets.get_executor());
  common->secure = tls != nullptr;
  common->on_loopback = address.is_loopback();
  common->last_ended = [this] { all_ended(); };
  return static_cast<int>(acceptor.local_endpoint().port());
}

Task<void> Server::Inside::accept(Inside* inside) {
  Common& common = *inside->common;
  while (!common.stopping) {
    Fault fault;
    tcp::socket socket = co_await inside->acceptor.async_accept(quietly(fault));
    if (common.stopping) co_return;
    if (fault) {  // most likely no file is left for it: others must end first
      inside->breath.expires_after(kBreath);
      co_await inside->breath.async_wait(quietly(fault));
      continue;
    }
    if (common.sessions.size() >= inside->options.limits.connections) continue;  // closes it
    Fault gone;
    const auto remote = socket.remote_endpoint(gone);
    if (gone) continue;
    auto session = std::make_shared<Session>(
        common, make_conn(std::move(socket), inside->tls.get()), remote);
    asio::co_spawn(inside->sockets, Session::run(std::move(session)), asio::detached);
  }
}

/// On the socket thread.
void Server::Inside::begin_stop(std::chrono::milliseconds graceful) {
  if (!common->stopping) {
    common->stopping = true;
    Fault ignored;
    acceptor.close(ignored);
    breath.cancel();
    const auto sessions = common->sessions;  // finish() may end some at once
    for (Session* each : sessions) each->finish();
  }
  if (common->sessions.empty()) return all_ended();
  asio::co_spawn(sockets, cut_later(this, graceful), asio::detached);
}

Task<void> Server::Inside::cut_later(Inside* inside, std::chrono::milliseconds graceful) {
  inside->patience.expires_after(graceful);  // ends the waiting of an earlier stop()
  Fault woken;
  co_await inside->patience.async_wait(quietly(woken));
  if (woken || inside->common->sessions.empty()) co_return;
  {
    const std::lock_guard lock(inside->mutex);
    inside->clean = false;
  }
  const auto sessions = inside->common->sessions;
  for (Session* each : sessions) each->cut();
}

/// On the socket thread: nothing is left to do there.
void Server::Inside::all_ended() {
  patience.cancel();
  at_work.reset();
}

Server::Server(ServerOptions options, Router router, LogSink log)
    : inside_(std::make_unique<Inside>(std::move(options), std::move(router), std::move(log))) {}

Server::~Server() { stop(std::chrono::milliseconds(0)); }

base::Result<int> Server::start() {
  const std::lock_guard lock(inside_->mutex);
  if (inside_->state != Inside::State::kNew) throw std::logic_error("a server starts once");
  raise_file_limit();
  auto port = inside_->open();
  if (!port) return port;
  asio::co_spawn(inside_->sockets, Inside::accept(inside_.get()), asio::detached);
  inside_->thread = std::thread([inside = inside_.get()] { inside->sockets.run(); });
  inside_->state = Inside::State::kRunning;
  return port;
}

bool Server::stop(std::chrono::milliseconds graceful) {
  Inside& inside = *inside_;
  std::unique_lock lock(inside.mutex);
  if (inside.state == Inside::State::kNew) inside.state = Inside::State::kStopped;
  if (inside.state == Inside::State::kStopped) return inside.clean;
  asio::post(inside.sockets, [&inside, graceful] { inside.begin_stop(graceful); });
  if (inside.state == Inside::State::kStopping) {  // somebody else waits already; wait with them
    inside.changed.wait(lock, [&] { return inside.state == Inside::State::kStopped; });
    return inside.clean;
  }
  inside.state = Inside::State::kStopping;
  lock.unlock();
  inside.thread.join();
  inside.workers.reset();  // a handler that still runs is waited for: what it uses may end after
                           // this
  lock.lock();
  inside.state = Inside::State::kStopped;
  inside.changed.notify_all();
  return inside.clean;
}

void Server::wait() {
  std::unique_lock lock(inside_->mutex);
  inside_->changed.wait(lock, [this] {
    return inside_->state == Inside::State::kStopped || inside_->state == Inside::State::kNew;
  });
}

std::size_t Server::connections() const {
  return inside_->common ? inside_->common->open.load() : 0;
}

}  // namespace serve::http
