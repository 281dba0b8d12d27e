#include "serve/http/rate_limit.h"

#include <gtest/gtest.h>

#include <stdexcept>

namespace serve::http {
namespace {

using namespace std::chrono_literals;

struct Watch {
  RateLimit::Time now{};
  RateLimit::Clock clock() {
    return [this] { return now; };
  }
};

TEST(RateLimit, AsManyAsTheBucketHoldsThenAsFastAsItFills) {
  Watch watch;
  RateLimit limit({3, 0.5, 100}, watch.clock());  // three at once, one more every two seconds
  for (int i = 0; i < 3; ++i) EXPECT_FALSE(limit.take("a"));
  EXPECT_DOUBLE_EQ(limit.take("a").value_or(-1), 2);
  watch.now += 1500ms;  // three quarters of a token
  EXPECT_DOUBLE_EQ(limit.take("a").value_or(-1), 0.5);
  watch.now += 500ms;
  EXPECT_FALSE(limit.take("a"));
  EXPECT_TRUE(limit.take("a"));
  watch.now += 1h;  // never more than the bucket holds
  for (int i = 0; i < 3; ++i) EXPECT_FALSE(limit.take("a"));
  EXPECT_TRUE(limit.take("a"));
}

TEST(RateLimit, OneKeyDoesNotTouchAnother) {
  Watch watch;
  RateLimit limit({1, 1, 100}, watch.clock());
  EXPECT_FALSE(limit.take("a"));
  EXPECT_TRUE(limit.take("a"));
  EXPECT_FALSE(limit.take("b"));
  limit.forget("a");
  limit.forget("never seen");
  EXPECT_FALSE(limit.take("a"));
}

TEST(RateLimit, AClockThatGoesBackGivesNothing) {
  Watch watch;
  watch.now += 1h;
  RateLimit limit({1, 1, 100}, watch.clock());
  EXPECT_FALSE(limit.take("a"));
  watch.now -= 30min;
  EXPECT_TRUE(limit.take("a"));
}

TEST(RateLimit, MemoryIsBoundedAndTheLongestUntouchedGoesFirst) {
  Watch watch;
  RateLimit limit({1, 0.001, 3}, watch.clock());
  for (const char* key : {"a", "b", "c"}) EXPECT_FALSE(limit.take(key));
  EXPECT_TRUE(limit.take("a"));   // touched again, so b is the oldest
  EXPECT_FALSE(limit.take("d"));  // takes b's place
  EXPECT_EQ(limit.keys(), 3U);
  EXPECT_TRUE(limit.take("a"));
  EXPECT_TRUE(limit.take("c"));
  EXPECT_FALSE(limit.take("b"));
}

TEST(RateLimit, ARuleThatLetsNobodyThroughIsRefused) {
  EXPECT_THROW(RateLimit({0, 1, 1}), std::invalid_argument);
  EXPECT_THROW(RateLimit({1, 0, 1}), std::invalid_argument);
  EXPECT_THROW(RateLimit({1, 1, 0}), std::invalid_argument);
}

TEST(RateLimit, OneMachinesIpv6AddressesAreOneKey) {
  EXPECT_EQ(address_key("192.0.2.7"), "192.0.2.7");
  EXPECT_EQ(address_key("2001:db8:1:2:3:4:5:6"), "2001:db8:1:2::/64");
  EXPECT_EQ(address_key("2001:db8:1:2::9"), address_key("2001:db8:1:2:ffff::1"));
  EXPECT_NE(address_key("2001:db8:1:2::9"), address_key("2001:db8:1:3::9"));
}

}  // namespace
}  // namespace serve::http
