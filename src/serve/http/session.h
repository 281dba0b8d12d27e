// One connection's life: request, answer, request, answer, perhaps a stream, the end.
//
// Everything here happens on the server's socket thread, so nothing is locked; handlers run
// elsewhere and touch only their Exchange.
#pragma once

#include <atomic>
#include <boost/asio/any_io_executor.hpp>
#include <boost/asio/steady_timer.hpp>
#include <cstddef>
#include <functional>
#include <memory>
#include <string>
#include <unordered_set>
#include <utility>

#include "serve/http/conn.h"
#include "serve/http/server.h"
#include "serve/http/task.h"
#include "serve/http/workers.h"

namespace serve::http {

struct Exchange;
class Listening;
class Session;

/// What all sessions of a server share; `open` may be read from any thread.
struct Common {
  Common(const ServerOptions& o, const Router& r, const LogSink& l, Workers& w,
         boost::asio::any_io_executor e)
      : options(o), router(r), log(l), workers(w), executor(std::move(e)) {}

  const ServerOptions& options;
  const Router& router;
  const LogSink& log;
  Workers& workers;
  boost::asio::any_io_executor executor;
  bool secure = false;
  bool on_loopback = false;  ///< listens on a loopback address
  bool stopping = false;
  std::size_t bodies_in_hand = 0;  ///< bytes
  std::unordered_set<Session*> sessions;
  std::atomic<std::size_t> open{0};  ///< how many sessions
  std::function<void()> last_ended;  ///< called when stopping and the last session has ended
};

class Session : public std::enable_shared_from_this<Session> {
 public:
  Session(Common&, std::shared_ptr<Conn>, const boost::asio::ip::tcp::endpoint& remote);
  Session(const Session&) = delete;
  Session& operator=(const Session&) = delete;

  /// The whole life; holds the session until it is over.
  static Task<void> run(std::shared_ptr<Session>);

  void finish();                   ///< the server stops: end when what is in hand is done
  void cut();                      ///< end now
  void break_off();                ///< end the stream, also in the middle of a write
  void poke() { wake_.cancel(); }  ///< look again: an answer or an event has come

 private:
  using Shared = std::shared_ptr<Exchange>;

  Task<void> live();
  /// False: the connection has ended or must end.
  Task<bool> one_exchange(Shared);
  /// False: nothing can be answered, the other side is gone.
  Task<bool> read_head(Shared);
  Task<bool> read_body(Shared);
  Task<void> handle(Shared);
  Task<bool> answer(Shared);
  Task<bool> stream(Shared);
  Task<void> tell(Shared, std::shared_ptr<Listening>);
  Task<void> goodbye(bool unread);
  static Task<void> notice_end(std::shared_ptr<Session>, std::shared_ptr<Listening>);

  void judge_head(Exchange&) const;
  bool hold(Exchange&, std::size_t body_bytes);
  void log(const Exchange&) const;

  Common& common_;
  std::shared_ptr<Conn> conn_;
  boost::asio::steady_timer wake_;
  std::string remote_;
  bool remote_is_loopback_ = false;
  std::string buffer_;  ///< read and not used: the next requests of a pipeline
  bool idle_ = true;    ///< between two requests
  bool ended_ = false;  ///< cut() was called
  bool fresh_ = true;   ///< nothing was answered yet
  std::shared_ptr<Listening> listening_;
};

}  // namespace serve::http
