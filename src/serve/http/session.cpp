#include "serve/http/session.h"

#include <boost/asio/co_spawn.hpp>
#include <boost/asio/detached.hpp>
#include <boost/asio/post.hpp>
#include <chrono>
#include <utility>

#include "serve/http/exchange.h"
#include "serve/http/listening.h"
#include "serve/http/log_line.h"
#include "serve/http/respond.h"
#include "serve/http/target.h"
#include "serve/http/task.h"

namespace serve::http {
namespace {

namespace asio = boost::asio;
constexpr std::size_t kPiece = 16U << 10U;
constexpr std::string_view kNothing;
constexpr std::string_view kGoOn = "HTTP/1.1 100 Continue\r\n\r\n";
constexpr std::string_view kStillHere = ":\n\n";  // a comment, which pages do not see

Conn::Deadline in(Patience::Time time) { return std::chrono::steady_clock::now() + time; }

Response busy() {
  Response out = refused(503, "serve.busy", "The server has too much to do at the moment.",
                         "Try again in a few seconds.");
  out.headers.push_back({"Retry-After", "5"});
  return out;
}

Response too_slow() {
  return refused(408, "serve.too_slow", "The request did not arrive in time.",
                 "Load the page again.");
}

/// Keeps the hub from telling a session that is over, whichever way it ended.
struct Leaving {
  Hub& hub;
  const Listener* listener;
  ~Leaving() { hub.leave(listener); }
};

/// Counts the session for as long as it lives.
struct Counted {
  Common& common;
  Session* session;
  Counted(Common& c, Session* s) : common(c), session(s) {
    common.sessions.insert(session);
    ++common.open;
  }
  ~Counted() {
    common.sessions.erase(session);
    --common.open;
    if (common.stopping && common.sessions.empty() && common.last_ended) common.last_ended();
  }
  Counted(const Counted&) = delete;
  Counted& operator=(const Counted&) = delete;
};

}  // namespace

Session::Session(Common& common, std::shared_ptr<Conn> conn, const asio::ip::tcp::endpoint& remote)
    : common_(common), conn_(std::move(conn)), wake_(common.executor) {
  auto address = remote.address();
  if (address.is_v6() && address.to_v6().is_v4_mapped())
    address = asio::ip::make_address_v4(asio::ip::v4_mapped, address.to_v6());
  remote_ = address.to_string();
  remote_is_loopback_ = address.is_loopback();
}

Task<void> Session::run(std::shared_ptr<Session> self) {
  const Counted counted(self->common_, self.get());
  co_await self->live();
}

Task<void> Session::live() {
  const auto& patience = common_.options.patience;
  const bool greeted = co_await conn_->greet(in(patience.greeting));
  bool more = greeted;
  while (more && !ended_) {
    idle_ = true;
    auto exchange = std::make_shared<Exchange>(common_.options.limits);
    more = co_await one_exchange(exchange);
    common_.bodies_in_hand -= exchange->held;
    if (!more && !ended_) co_await goodbye(exchange->unread);
  }
  conn_->cut();
}

void Session::finish() {
  if (listening_) listening_->end();
  if (idle_) conn_->wake();
}

void Session::break_off() {
  if (!listening_) return;
  conn_->wake();
  poke();
}

void Session::cut() {
  ended_ = true;
  conn_->cut();
  poke();
}

Task<bool> Session::one_exchange(Shared exchange) {
  const bool here = co_await read_head(exchange);
  fresh_ = false;
  if (!here) co_return false;
  if (!exchange->judged) {
    judge_head(*exchange);
    const bool whole = exchange->judged || co_await read_body(exchange);
    if (!whole) co_return false;
  }
  if (exchange->judged)
    prepare_answer(*exchange, common_.secure);
  else
    co_await handle(exchange);
  if (ended_) co_return false;
  if (exchange->response.stream && exchange->method != Method::kHead)
    co_return co_await stream(exchange);
  co_return co_await answer(exchange);
}

Task<bool> Session::read_head(Shared exchange) {
  const auto& patience = common_.options.patience;
  RequestReader& reader = exchange->reader;
  // A new connection has come to ask something; only one that has asked may rest.
  auto by = in(fresh_ ? patience.head : patience.idle);
  for (;;) {
    if (!buffer_.empty()) buffer_.erase(0, reader.feed(buffer_));
    if (idle_ && reader.begun()) {
      idle_ = false;
      exchange->begun = std::chrono::steady_clock::now();
      if (!fresh_) by = in(patience.head);
    }
    if (reader.state() != RequestReader::State::kHead) break;
    if (idle_ && common_.stopping) co_return false;
    const auto came = co_await conn_->read(buffer_, kPiece, by);
    if (came > 0) continue;
    if (idle_ || ended_ || !conn_->late()) co_return false;
    exchange->refuse(too_slow());
    exchange->unread = true;
    co_return true;
  }
  exchange->method = reader.request().method;
  exchange->http10 = reader.http10();
  if (reader.state() == RequestReader::State::kRefused) {
    exchange->refuse(reader.refusal());
    exchange->unread = true;
  }
  co_return true;
}

/// All that can be said before the body is here.
void Session::judge_head(Exchange& exchange) const {
  const Request& request = exchange.reader.request();
  exchange.match = common_.router.match(request.method, request.path);
  const bool has_body = exchange.reader.state() == RequestReader::State::kBody;
  const auto host = host_in(request.host);
  if (host && !host_allowed(*host, common_.options.host_names, common_.on_loopback)) {
    exchange.refuse(refused(421, "serve.host", "This server does not go by that name.",
                            "Use the address that was shown when the program started."));
  } else if (request.method != Method::kGet && request.method != Method::kHead &&
             from_another_site(request)) {
    exchange.refuse(refused(403, "serve.another_site", "A page of another site asked for this.",
                            "Open the page of this program and do it there."));
  } else if (has_body && exchange.match.route != nullptr) {
    exchange.reader.allow_body(
        exchange.match.route->body_limit.value_or(common_.options.limits.body_bytes));
    if (exchange.reader.state() == RequestReader::State::kRefused)
      exchange.refuse(exchange.reader.refusal());
  }
  // A body for no route is not worth reading.
  exchange.unread = has_body && (exchange.judged || exchange.match.route == nullptr);
}

/// Counts the bytes against what may be held for all; false: there is no room for them.
bool Session::hold(Exchange& exchange, std::size_t body_bytes) {
  if (body_bytes <= exchange.held) return true;
  const std::size_t more = body_bytes - exchange.held;
  if (common_.bodies_in_hand + more > common_.options.limits.bodies_in_hand) return false;
  common_.bodies_in_hand += more;
  exchange.held = body_bytes;
  return true;
}

Task<bool> Session::read_body(Shared exchange) {
  RequestReader& reader = exchange->reader;
  const auto& patience = common_.options.patience;
  bool room = exchange->unread ||
              hold(*exchange, static_cast<std::size_t>(reader.length().value_or(0)));
  if (room && !exchange->unread && buffer_.empty() && reader.waits_for_continue()) {
    const bool said = co_await conn_->write(kGoOn, kNothing, in(patience.write));
    if (!said) co_return false;
  }
  const auto whole_by = in(patience.whole_body);
  while (room && !exchange->unread && reader.state() == RequestReader::State::kBody) {
    if (!buffer_.empty()) buffer_.erase(0, reader.feed(buffer_));
    room = hold(*exchange, reader.body_bytes());
    if (!room || reader.state() != RequestReader::State::kBody) break;
    const auto came = co_await conn_->read(buffer_, kPiece, std::min(whole_by, in(patience.body)));
    if (came > 0) continue;
    if (ended_ || !conn_->late()) co_return false;
    exchange->refuse(too_slow());
    exchange->unread = true;
  }
  if (!room || reader.state() == RequestReader::State::kRefused) {
    exchange->refuse(room ? reader.refusal() : busy());
    exchange->unread = true;
  }
  exchange->keep = !exchange->unread && reader.keep_alive();
  co_return true;
}

Task<void> Session::handle(Shared exchange) {
  exchange->request = exchange->reader.take();
  exchange->request.remote = remote_;
  exchange->request.loopback = remote_is_loopback_;
  exchange->request.secure = common_.secure;
  Common& common = common_;
  auto job = [&common, exchange, self = shared_from_this()]() mutable {
    handle_exchange(*exchange, common.router, common.options, common.secure);
    // Moved on, so that the last hold of a session is never let go on a worker.
    asio::post(common.executor, [exchange = std::move(exchange), self = std::move(self)] {
      exchange->done = true;
      self->poke();
    });
  };
  if (!common.workers.add(std::move(job))) {
    exchange->refuse(busy());
    prepare_answer(*exchange, common.secure);
    co_return;
  }
  while (!exchange->done && !ended_) {
    wake_.expires_at(Conn::Deadline::max());
    Fault woken;
    co_await wake_.async_wait(quietly(woken));
  }
}

Task<bool> Session::answer(Shared exchange) {
  const bool keep = exchange->keep && !common_.stopping;
  exchange->head += end_of_head(keep, exchange->http10);
  const int status = exchange->response.status;
  std::string_view body = exchange->response.body.view();
  if (exchange->method == Method::kHead || status == 204 || status == 304) body = {};
  const bool sent = co_await conn_->write(exchange->head, body, in(common_.options.patience.write));
  exchange->sent = sent ? body.size() : 0;
  log(*exchange);
  co_return sent&& keep;
}

Task<bool> Session::stream(Shared exchange) {
  const EventStream stream = std::move(*exchange->response.stream);
  exchange->response.stream.reset();
  const auto listening = std::make_shared<Listening>(common_.executor, weak_from_this(),
                                                     common_.options.limits.stream_queue);
  exchange->head += end_of_head(false, exchange->http10);
  const std::string first = stream.hub->join(listening, stream);
  const Leaving leaving{*stream.hub, listening.get()};
  listening_ = listening;
  std::string().swap(buffer_);  // nothing is asked on this connection any more
  buffer_.shrink_to_fit();
  const bool sent = co_await conn_->write(exchange->head, first,
                                          in(common_.options.patience.write));
  exchange->sent = first.size();
  log(*exchange);  // now, not in an hour when the page is closed
  if (sent && !common_.stopping) {
    asio::co_spawn(common_.executor, notice_end(shared_from_this(), listening), asio::detached);
    co_await tell(exchange, listening);
  }
  listening_.reset();
  conn_->wake();  // ends the waiting of notice_end()
  co_return false;
}

Task<void> Session::tell(Shared exchange, std::shared_ptr<Listening> listening) {
  const auto& patience = common_.options.patience;
  while (!ended_) {
    const auto frames = listening->take();
    if (frames.empty()) {
      if (listening->over()) co_return;
      wake_.expires_after(patience.heartbeat);
      Fault woken;
      co_await wake_.async_wait(quietly(woken));
      if (woken) continue;
      const bool alive = co_await conn_->write(kStillHere, kNothing, in(patience.write));
      if (!alive) co_return;
      continue;
    }
    for (const auto& frame : frames) {
      if (listening->given_up()) co_return;
      const bool sent = co_await conn_->write(*frame, kNothing, in(patience.write));
      if (!sent) co_return;
      exchange->sent += frame->size();
    }
  }
}

Task<void> Session::notice_end(std::shared_ptr<Session> self,
                               std::shared_ptr<Listening> listening) {
  // A page has nothing to say on a stream; whoever goes on talking is cut off.
  for (std::size_t dropped = 0; dropped < kPiece;) {
    const auto came = co_await self->conn_->watch();
    if (came == 0) break;
    dropped += came;
  }
  listening->lost();
}

Task<void> Session::goodbye(bool unread) {
  constexpr Patience::Time kLinger{2'000};
  constexpr std::size_t kDropAtMost = 4U << 20U;
  const auto by = in(kLinger);
  idle_ = true;  // stop() need not wait for this
  co_await conn_->end(by);
  // Closing with bytes unread resets the connection, and a reset can overtake the answer that says
  // why (RFC 9112, 9.6). So what still comes is read for a while and dropped.
  for (std::size_t dropped = 0; unread && !common_.stopping && dropped < kDropAtMost;) {
    buffer_.clear();
    const auto came = co_await conn_->read(buffer_, kPiece, by);
    if (came == 0) co_return;
    dropped += came;
  }
}

void Session::log(const Exchange& exchange) const {
  if (!common_.log) return;
  const auto now = std::chrono::system_clock::now().time_since_epoch();
  const std::chrono::duration<double, std::milli> taken = std::chrono::steady_clock::now() -
                                                          exchange.begun;
  LogEntry entry;
  entry.time_ms = std::chrono::duration_cast<std::chrono::milliseconds>(now).count();
  entry.method = method_text(exchange.method);
  if (exchange.match.route != nullptr) entry.route = exchange.match.route->pattern;
  entry.status = exchange.response.status;
  entry.ms = taken.count();
  entry.bytes = exchange.sent;
  entry.incident = exchange.incident;
  common_.log(log_line(entry));
}

}  // namespace serve::http
