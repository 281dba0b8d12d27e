// The desk is killed while pages write to it, 200 times. Whatever a page was told is kept is there
// after the next start, whole, and the next start needs nobody's help. (store_kill_test does the
// same to the store alone.)
#include <gtest/gtest.h>
#include <unistd.h>

#include <atomic>
#include <filesystem>
#include <iostream>
#include <nlohmann/json.hpp>
#include <random>
#include <string>
#include <thread>

#include "../http/client.h"
#include "served.h"

namespace {

using app_test::Desk;
using app_test::room;
using http_test::Client;
using nlohmann::json;

/// Writes rooms until the connection is gone; gives the number of the last one that was
/// acknowledged.
int write_until_cut(int port, int first, std::atomic<int>& last) {
  try {
    Client page(port);
    const std::string token = json::parse(page.get("/api/me").body).at("token");
    for (int number = first;; ++number) {
      const auto answer = page.post(
          "/api/documents/room", room(number),
          "Content-Type: application/json\r\nX-Benchbell-Token: " + token + "\r\n");
      if (answer.status != 201) return -2 - answer.status;
      last = number;
    }
  } catch (const std::exception&) {
    return last;  // cut off: that is what this is about
  }
}

TEST(KilledDesk, KeepsWhatItAcknowledged) {
  constexpr int kTimes = 200, kTimesAFile = 25;
  std::mt19937 random(11);  // NOLINT: the same moments every time, as far as a machine can
  const std::filesystem::path folder = std::filesystem::path(testing::TempDir()) /
                                       ("benchbell_killed" + std::to_string(::getpid()));
  int acknowledged = 0, next = 0;
  std::string file;
  for (int round = 0; round < kTimes; ++round) {
    if (round % kTimesAFile == 0) {
      std::filesystem::remove_all(folder);
      std::filesystem::create_directories(folder);
      file = (folder / "school.benchbell").string();
      next = 0;
    }
    std::atomic<int> last{next - 1};
    {
      Desk desk(file);
      // What was kept before the desk was killed the last time is there, and nothing half.
      Client page(desk.port());
      for (int number = std::max(0, next - 3); number < next; ++number) {
        const auto found = page.get("/api/documents/room/room-" + std::to_string(number));
        ASSERT_EQ(found.status, 200) << "round " << round << ", room " << number;
        ASSERT_EQ(json::parse(found.body).at("body").at("name"), "Room " + std::to_string(number));
      }
      int end = 0;
      std::thread writer([&] { end = write_until_cut(desk.port(), next, last); });
      // One in four is killed at any moment; the others once something was acknowledged.
      if (random() % 4 != 0) http_test::eventually([&] { return last >= next; });
      ::usleep(std::uniform_int_distribution<unsigned>(0, 30'000)(random));
      desk.kill();
      writer.join();
      ASSERT_GE(end, -1) << "a room was refused with " << -2 - end;
    }
    acknowledged += last - next + 1;
    // One more may have been kept than was said: killed between the two.
    Desk again(file);
    Client page(again.port());
    const json all = json::parse(page.get("/api/documents/room").body).at("documents");
    ASSERT_GE(static_cast<int>(all.size()), last + 1) << "round " << round;
    ASSERT_LE(static_cast<int>(all.size()), last + 2) << "round " << round;
    next = static_cast<int>(all.size());
  }
  std::filesystem::remove_all(folder);
  EXPECT_GT(acknowledged, kTimes / 2);  // the pages did write
  std::cout << acknowledged << " acknowledged writes, none lost\n";
}

}  // namespace
