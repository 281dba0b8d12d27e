// What a stream has still to be told: filled from any thread, emptied by its session.
#pragma once

#include <boost/asio/any_io_executor.hpp>
#include <cstddef>
#include <memory>
#include <mutex>
#include <string>
#include <vector>

#include "serve/http/events.h"

namespace serve::http {

class Session;

class Listening : public Listener {
 public:
  using Frames = std::vector<std::shared_ptr<const std::string>>;

  Listening(boost::asio::any_io_executor, std::weak_ptr<Session>, std::size_t most_waiting);

  /// A reader who lags behind by more than may wait is given up: over().
  void hear(std::shared_ptr<const std::string> frame) override;
  void end() override;
  void lost();  ///< the other side has gone

  /// What has come since, at most once each. When it is empty, over() says whether to wait for
  /// more.
  Frames take();
  bool over() const;
  bool given_up() const;  ///< over, and not even what is in hand need be said

 private:
  void give_up();  ///< these two under the lock
  void wake();

  boost::asio::any_io_executor executor_;
  std::weak_ptr<Session> session_;
  std::size_t most_;
  mutable std::mutex mutex_;
  Frames waiting_;
  bool over_ = false;
  bool given_up_ = false;
  bool woken_ = false;  ///< the session will look; no need to say it again
};

}  // namespace serve::http
