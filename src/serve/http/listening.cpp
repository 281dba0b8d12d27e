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
  if (waiting_.size() >= most_) {
    // The page will come back by itself, say what it heard last, and be told what it missed.
    waiting_.clear();
    over_ = true;
  } else {
    waiting_.push_back(std::move(frame));
  }
  wake();
}

void Listening::end() { stop(false); }
void Listening::lost() { stop(true); }

void Listening::stop(bool forget) {
  const std::lock_guard lock(mutex_);
  over_ = true;
  if (forget) waiting_.clear();
  wake();
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

}  // namespace serve::http
