// How often somebody may try: a bucket of tokens for each key, refilled at a steady rate.
//
// Sign-in with five tokens and one more every minute: five quick tries, then one a minute. The key
// is what is being limited: address_key(request.remote), a name, or both.
#pragma once

#include <chrono>
#include <cstddef>
#include <functional>
#include <list>
#include <mutex>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>

namespace serve::http {

struct RateRule {
  double most = 5;               ///< tokens in a full bucket, > 0
  double per_second = 1.0 / 60;  ///< tokens that come back, > 0
  std::size_t keys = 20'000;     ///< buckets kept; the longest untouched goes first
};

/// Safe to use from any thread.
class RateLimit {
 public:
  using Time = std::chrono::steady_clock::time_point;
  using Clock = std::function<Time()>;

  /// Throws std::invalid_argument for a rule that lets nobody through.
  explicit RateLimit(RateRule, Clock = std::chrono::steady_clock::now);

  /// Takes `tokens` and returns nothing, or takes none and returns the seconds until there are
  /// enough.
  std::optional<double> take(std::string_view key, double tokens = 1);
  /// A full bucket again: the person got it right.
  void forget(std::string_view key);
  std::size_t keys() const;

 private:
  struct Bucket {
    std::string key;
    double tokens = 0;
    Time seen;
  };
  RateRule rule_;
  Clock clock_;
  mutable std::mutex mutex_;
  std::list<Bucket> buckets_;                                                ///< last touched first
  std::unordered_map<std::string_view, std::list<Bucket>::iterator> index_;  ///< views into
                                                                             ///< buckets_
};

/// The address, and of an IPv6 address only its first 64 bits: one machine has all the others.
std::string address_key(std::string_view remote);

}  // namespace serve::http
