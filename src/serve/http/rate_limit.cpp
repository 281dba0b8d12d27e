#include "serve/http/rate_limit.h"

#include <arpa/inet.h>

#include <algorithm>
#include <stdexcept>
#include <utility>

namespace serve::http {

RateLimit::RateLimit(RateRule rule, Clock clock) : rule_(rule), clock_(std::move(clock)) {
  if (!(rule.most > 0) || !(rule.per_second > 0) || rule.keys == 0)
    throw std::invalid_argument("a rate limit that lets nobody through");
}

std::optional<double> RateLimit::take(std::string_view key, double tokens) {
  const std::lock_guard lock(mutex_);
  const Time now = clock_();
  if (const auto found = index_.find(key); found != index_.end()) {
    buckets_.splice(buckets_.begin(), buckets_, found->second);
  } else {
    buckets_.push_front({std::string(key), rule_.most, now});
    index_.emplace(buckets_.front().key, buckets_.begin());
    if (buckets_.size() > rule_.keys) {
      index_.erase(buckets_.back().key);
      buckets_.pop_back();
    }
  }
  Bucket& bucket = buckets_.front();
  const std::chrono::duration<double> since = std::max(now - bucket.seen, Time::duration::zero());
  bucket.tokens = std::min(rule_.most, bucket.tokens + since.count() * rule_.per_second);
  bucket.seen = now;
  if (bucket.tokens >= tokens) {
    bucket.tokens -= tokens;
    return std::nullopt;
  }
  return (tokens - bucket.tokens) / rule_.per_second;
}

void RateLimit::forget(std::string_view key) {
  const std::lock_guard lock(mutex_);
  const auto found = index_.find(key);
  if (found == index_.end()) return;
  const auto bucket = found->second;
  index_.erase(found);  // before its key, which lives in the bucket
  buckets_.erase(bucket);
}

std::size_t RateLimit::keys() const {
  const std::lock_guard lock(mutex_);
  return buckets_.size();
}

std::string address_key(std::string_view remote) {
  in6_addr six{};
  std::string text(remote.substr(0, remote.find('%')));
  if (inet_pton(AF_INET6, text.c_str(), &six) != 1) return std::string(remote);
  if (IN6_IS_ADDR_V4MAPPED(&six)) return text;
  std::fill(six.s6_addr + 8, six.s6_addr + 16, std::uint8_t{0});
  char out[INET6_ADDRSTRLEN] = {};
  inet_ntop(AF_INET6, &six, out, sizeof out);
  return std::string(out) + "/64";
}

}  // namespace serve::http
