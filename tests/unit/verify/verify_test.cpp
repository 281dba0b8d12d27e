// Plans made by hand keep every rule; what the page of rules allows is allowed.
#include <gtest/gtest.h>

#include "sample.h"

namespace timeplan {
namespace {

std::string told(const std::vector<Violation>& found) {
  std::string text;
  for (const auto& v : found) text += v.rule + ": " + v.message + "\n";
  return text;
}

TEST(Verify, FindsNothingWrongWithTheSupper) {
  const auto s = sample::supper();
  EXPECT_EQ(told(verify(s.lesson, s.plan)), "");
}

TEST(Verify, FindsNothingWrongWithTheBakery) {
  const auto s = sample::bakery();
  EXPECT_EQ(told(verify(s.lesson, s.plan)), "");
}

TEST(Verify, FindsNothingWrongWithTwoPansOnOneRing) {
  const auto s = sample::two_pans();
  EXPECT_EQ(told(verify(s.lesson, s.plan)), "");
}

TEST(Verify, FindsNothingWrongWithDishesCarriedOver) {
  const auto s = sample::take_home();
  EXPECT_EQ(told(verify(s.lesson, s.plan)), "");
}

}  // namespace
}  // namespace timeplan
