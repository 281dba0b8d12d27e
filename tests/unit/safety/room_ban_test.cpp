#include "safety/room_ban.h"

#include <gtest/gtest.h>

#include "sample.h"

namespace {

using namespace safety;

bool has(const std::vector<std::string>& all, const std::string& part) {
  for (const std::string& each : all) {
    if (each.find(part) != std::string::npos) return true;
  }
  return false;
}

class RoomBan : public ::testing::Test {
 protected:
  RoomBan() {
    kitchen::Dish loaf = samples::dish("Nut loaf", {"walnuts", "plain_flour"});
    samples::add_step(loaf, "Chop the walnuts.", {0}, {"food processor"});
    samples::add_step(loaf, "Sift the flour.", {1}, {"scales"});
    before_ = samples::lesson({loaf}, {{0}});
    before_.title = "8A";
    before_.opens_minute = 540;
    now_ = samples::lesson({samples::dish("Salad", {"carrot"})}, {{0}});
    now_.opens_minute = 660;
    needs_ = {{0, {{Allergen::kNuts, Reach::kRoom}}}};
  }

  std::vector<Leftover> found() {
    return leftovers({{now_, needs_}, {before_, none_}}, samples::evidence());
  }

  kitchen::Lesson before_, now_;
  LessonNeeds needs_, none_;
};

TEST_F(RoomBan, ReachesTheLessonBeforeItsClothsTraysAndKit) {
  const auto left = found();
  ASSERT_EQ(left.size(), 1U);
  EXPECT_EQ(left[0].lesson, 0);
  EXPECT_EQ(left[0].before, 1);
  EXPECT_EQ(left[0].since, "10:00");  // 9:00 and an hour
  EXPECT_TRUE(has(left[0].replace, "cloths"));
  EXPECT_TRUE(has(left[0].replace, "aprons"));
  EXPECT_TRUE(has(left[0].clean, "trays"));
  EXPECT_TRUE(has(left[0].clean, "food processor: full clean, 8 min"));
  EXPECT_TRUE(has(left[0].clean, "dust"));
  EXPECT_TRUE(has(left[0].clean, "bay A"));
  EXPECT_FALSE(has(left[0].clean, "bays"));
  EXPECT_FALSE(has(left[0].clean, "scales: full clean"));  // only flour was weighed on them
}

TEST_F(RoomBan, IsNotAskedForByWhoOnlyMayNotEatIt) {
  needs_[0].needs[0].reach = Reach::kTouch;
  EXPECT_TRUE(found().empty());
}

TEST_F(RoomBan, DoesNotReachAnotherRoomDayOrALaterLesson) {
  before_.room.name = "Food Room 2";
  EXPECT_TRUE(found().empty());
  before_.room.name = now_.room.name;
  before_.date = "2026-11-16";
  EXPECT_TRUE(found().empty());
  before_.date = now_.date;
  before_.opens_minute = 800;
  EXPECT_TRUE(found().empty());
}

TEST_F(RoomBan, ADoubtReachesAsFarAsCertainty) {
  before_.dishes[0] = samples::dish("Pasta", {"pesto_green"});  // check the label for nuts
  ASSERT_EQ(found().size(), 1U);
  EXPECT_EQ(found()[0].stated, Stated::kCheckLabel);
}

}  // namespace
