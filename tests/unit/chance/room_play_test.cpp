// The player against the slow and obvious one, and against its own promise never to stall.
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "minute_room.h"
#include "random_room.h"
#include "timeplan/chance/play_tables.h"
#include "timeplan/chance/room_play.h"

namespace {

using namespace timeplan;

RC_GTEST_PROP(RoomPlay, agrees_with_the_room_played_minute_by_minute, (std::uint64_t seed)) {
  random_room::Random random{seed};
  const PlayModel model = random_room::simple(random);
  RoomPlayer player(model);
  for (int run = 0; run < 5; ++run) {
    const std::vector<int> length = random_room::lengths(model, random);
    const minute_room::Result slow = minute_room::play(model, length, 2000);
    RC_ASSERT(!slow.stalled);
    const Run& fast = player.play({length, {}, 0});
    RC_ASSERT(fast.start == slow.start);
    RC_ASSERT(fast.end == slow.end);
    RC_ASSERT(fast.quality_seconds == slow.fault_minutes);
  }
}

RC_GTEST_PROP(RoomPlay, never_stalls_whatever_takes_how_long, (std::uint64_t seed)) {
  random_room::Random random{seed};
  const PlayModel model = random_room::full(random);
  RoomPlayer player(model);
  std::vector<HandsUp> calls(model.activities.size() * kCallsEach);
  for (int run = 0; run < 20; ++run) {
    const std::vector<int> length = random_room::lengths(model, random);
    for (std::size_t i = 0; i < calls.size(); i += kCallsEach) {
      calls[i] = random.one_in(2) ? HandsUp{random.number(0, 200), random.number(30, 300)}
                                  : HandsUp{};
      calls[i + 1] = calls[i].after >= 0 ? HandsUp{calls[i].after + random.number(0, 200), 60}
                                         : HandsUp{};
    }
    const Run& result = player.play({length, calls, 60 * random.number(0, 10)});
    for (std::size_t i = 0; i < length.size(); ++i) {
      RC_ASSERT(result.start[i] == -1 || result.end[i] >= result.start[i]);
      RC_ASSERT(result.start[i] == -1 || result.end[i] != kNever);
    }
  }
}

}  // namespace
