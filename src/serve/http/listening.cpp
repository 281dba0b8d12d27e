#include "serve/http/listening.h"

#include <boost/asio/post.hpp>
#include <utility>

#include "serve/http/session.h"

namespace serve::http {

Listening::Listening(boost::asio::any_io_executor executor, std::weak_ptr<Session> session,
                     std::size_t most_waiting)
    : executor_(std::move(executor)), session_(std::move(session)), most_(most_waiting) {}

void Listening::hear(std::shared_ptr<const std::string> frame) {
  const std::lock_guard lock(mutex_);
  if (over_) return;
  if (waiting_.size() < most_) {
    waiting_.push_back(std::move(frame));
    return wake();
  }
  // The page will come back by itself, say what it heard last, and be told what it missed.
  give_up();
}

void Listening::end() {
  const std::lock_guard lock(mutex_);
  over_ = true;
  wake();
}

void Listening::lost() {
  const std::lock_guard lock(mutex_);
  give_up();
}

void Listening::give_up() {
  over_ = given_up_ = true;
  waiting_.clear();
  // Said in any case: the session may be in the middle of a write that nobody takes.
  boost::asio::post(executor_, [weak = session_] {
    if (const auto session = weak.lock()) session->break_off();
  });
}

void Listening::wake() {
  if (woken_) return;
  woken_ = true;
  boost::asio::post(executor_, [weak = session_] {
    if (const auto session = weak.lock()) session->poke();
  });
}

Listening::Frames Listening::take() {
  const std::lock_guard lock(mutex_);
  woken_ = false;
  return std::exchange(waiting_, {});
}

bool Listening::over() const {
  const std::lock_guard lock(mutex_);
  return over_;
}

bool Listening::given_up() const {
  const std::lock_guard lock(mutex_);
  return given_up_;
}

}  // namespace serve::http
