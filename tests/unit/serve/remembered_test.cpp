// Values remembered by what they were made from.
#include "serve/remembered.h"

#include <gtest/gtest.h>

namespace {

using serve::Remembered;

TEST(Remembered, AValueIsGivenForItsMarkOnly) {
  Remembered<int> values(3);
  values.put("dhal", "1", 7);
  ASSERT_TRUE(values.get("dhal", "1"));
  EXPECT_EQ(*values.get("dhal", "1"), 7);
  EXPECT_FALSE(values.get("dhal", "2"));
  EXPECT_FALSE(values.get("soup", "1"));
  values.put("dhal", "2", 8);
  EXPECT_FALSE(values.get("dhal", "1"));
  EXPECT_EQ(*values.get("dhal", "2"), 8);
}

TEST(Remembered, TheOneAskedForLongestAgoGoesFirst) {
  Remembered<int> values(2);
  values.put("a", "", 1);
  values.put("b", "", 2);
  EXPECT_TRUE(values.get("a", ""));
  values.put("c", "", 3);
  EXPECT_TRUE(values.get("a", ""));
  EXPECT_FALSE(values.get("b", ""));
}

TEST(Remembered, AValueInUseOutlivesItsPlace) {
  Remembered<int> values(1);
  const auto held = values.put("a", "", 1);
  values.put("b", "", 2);
  EXPECT_EQ(*held, 1);
}

}  // namespace
