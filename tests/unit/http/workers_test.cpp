#include "serve/http/workers.h"

#include <gtest/gtest.h>

#include <atomic>
#include <latch>

namespace serve::http {
namespace {

TEST(Workers, EveryJobIsDoneOnce) {
  std::atomic<int> done{0};
  std::latch all(200);
  Workers workers(3, 1000);
  for (int i = 0; i < 200; ++i)
    ASSERT_TRUE(workers.add([&] {
      ++done;
      all.count_down();
    }));
  all.wait();
  EXPECT_EQ(done, 200);
}

TEST(Workers, TheLineHasAnEnd) {
  std::latch begun(1), go(1);
  std::atomic<int> done{0};
  {
    Workers workers(1, 2);
    ASSERT_TRUE(workers.add([&] {
      begun.count_down();
      go.wait();
      ++done;
    }));
    begun.wait();  // it is in hand now, not in line
    EXPECT_TRUE(workers.add([&] { ++done; }));
    EXPECT_TRUE(workers.add([&] { ++done; }));
    EXPECT_FALSE(workers.add([&] { ++done; }));
    go.count_down();
  }
  // The one in hand was finished; those in line may have been dropped.
  EXPECT_GE(done, 1);
  EXPECT_LE(done, 3);
}

}  // namespace
}  // namespace serve::http
