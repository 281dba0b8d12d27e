// The disk fills up under a desk at work. A page that writes is told what is wrong, where, and how
// to mend it; nothing that was acknowledged is lost; reading goes on; and with room again so does
// writing, without a new start. Once by files that may not grow, as when a share of the disk is
// used up, once on a real small disk where the test may make one. (store_test does the same to the
// store alone.)
#include <gtest/gtest.h>
#include <sys/mount.h>
#include <sys/resource.h>

#include <algorithm>
#include <cerrno>
#include <filesystem>
#include <fstream>
#include <functional>

#include "../http/client.h"
#include "served.h"

namespace {

using app_test::Desk;
using app_test::room;
using http_test::Answer;
using http_test::Client;
using nlohmann::json;
namespace fs = std::filesystem;

class FullDesk : public testing::Test {
 protected:
  FullDesk() { fs::create_directories(folder_); }
  ~FullDesk() override {
    if (mounted_) ::umount2(folder_.c_str(), MNT_DETACH);
    std::error_code ignored;
    fs::remove_all(folder_, ignored);
  }

  const fs::path folder_ = fs::path(testing::TempDir()) /
                           ("benchbell_full" + std::to_string(::getpid()));
  const std::string file_ = (folder_ / "school.benchbell").string();
  bool mounted_ = false;

  /// Once the day's copy is made nothing but a page writes.
  bool quiet() const {
    return http_test::eventually([this] {
      return std::any_of(fs::directory_iterator(folder_), fs::directory_iterator(),
                         [](const auto& each) { return each.path().extension() == ".backup"; });
    });
  }

  std::uintmax_t largest_file() const {
    std::uintmax_t most = 0;
    for (const auto& each : fs::directory_iterator(folder_))
      most = std::max(most, each.file_size());
    return most;
  }

  static std::string headers(Client& page) {
    const std::string token = json::parse(page.get("/api/me").body).at("token");
    return "Content-Type: application/json\r\nX-Benchbell-Token: " + token + "\r\n";
  }

  /// What a page sees from the moment the disk is `full` until there is `room_again`.
  void tell(Desk& desk, const std::function<void()>& full,
            const std::function<void()>& room_again) {
    Client page(desk.port());
    const std::string sent = headers(page);
    ASSERT_EQ(page.post("/api/documents/room", room(0), sent).status, 201);
    full();
    int kept = 1;
    Answer refused;
    for (; kept < 5000; ++kept) {
      refused = page.post("/api/documents/room", room(kept), sent);
      if (refused.status != 201) break;
    }
    ASSERT_EQ(refused.status, 503) << refused.body;
    const json problem = json::parse(refused.body).at("problems").at(0);
    EXPECT_EQ(problem.at("code"), "store.disk_full");
    EXPECT_EQ(problem.at("message"),
              "There is no room left for 'school.benchbell', so this was not saved. Everything "
              "saved before is still there.");
    EXPECT_EQ(problem.at("remedy"), "Make room on the disk that holds the folder '" +
                                        folder_.string() +
                                        "', or ask whoever looks after that machine to; then save "
                                        "again.");
    // It stays so, and changes nothing.
    EXPECT_EQ(page.post("/api/documents/room", room(kept), sent).status, 503);
    EXPECT_EQ(page.get("/api/week").status, 200);
    EXPECT_EQ(page.get("/").status, 200);
    expect_rooms(page, kept);

    room_again();
    EXPECT_EQ(page.post("/api/documents/room", room(kept), sent).status, 201);
    expect_rooms(page, kept + 1);
    desk.kill();
    Desk again(file_);
    Client next(again.port());
    expect_rooms(next, kept + 1);
  }

  /// So many, each whole.
  static void expect_rooms(Client& page, int count) {
    const json all = json::parse(page.get("/api/documents/room").body).at("documents");
    EXPECT_EQ(static_cast<int>(all.size()), count);
    for (int number = 0; number < count; ++number) {
      const Answer found = page.get("/api/documents/room/room-" + std::to_string(number));
      ASSERT_EQ(found.status, 200) << number;
      ASSERT_EQ(json::parse(found.body).at("body").at("name"), "Room " + std::to_string(number));
    }
  }
};

TEST_F(FullDesk, WithAShareOfTheDiskUsedUpSaysSoReadsOnAndWritesAgainWithRoom) {
  // The system would end the program for it; a used-up share ends nobody.
  Desk desk(file_, [] { std::signal(SIGXFSZ, SIG_IGN); });
  ASSERT_TRUE(quiet());
  rlimit before{};
  ASSERT_EQ(::prlimit(desk.process(), RLIMIT_FSIZE, nullptr, &before), 0);
  tell(
      desk,
      [&] {
        const rlimit less{largest_file() + 100'000, before.rlim_max};
        ASSERT_EQ(::prlimit(desk.process(), RLIMIT_FSIZE, &less, nullptr), 0);
      },
      [&] { ASSERT_EQ(::prlimit(desk.process(), RLIMIT_FSIZE, &before, nullptr), 0); });
}

TEST_F(FullDesk, OnARealSmallDiskSaysSoReadsOnAndWritesAgainWithRoom) {
  if (::mount("tmpfs", folder_.c_str(), "tmpfs", 0, "size=16m") != 0)
    GTEST_SKIP() << "no right to make a small disk here; files that may not grow were tested";
  mounted_ = true;
  Desk desk(file_);
  ASSERT_TRUE(quiet());
  const fs::path rest = folder_ / "rest";
  tell(
      desk,
      [&] {
        std::ofstream out(rest);
        while (out << std::string(4096, 'x') && out.flush()) {
        }
      },
      [&] { fs::remove(rest); });
}

}  // namespace
