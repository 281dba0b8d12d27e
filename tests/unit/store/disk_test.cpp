// A full disk: the write says so, nothing is half-written, reading goes on, and with room again so
// does writing. By a ceiling on the file, by files that may not grow, and on a real small disk
// where the test may make one.
#include <gtest/gtest.h>
#include <sys/mount.h>
#include <sys/resource.h>
#include <unistd.h>

#include <csignal>
#include <fstream>

#include "school.h"

namespace {

using namespace store_test;
namespace fs = std::filesystem;

Draft big(int number) {
  return {R"({"name":"Dish )" + std::to_string(number) + R"(","text":")" +
              std::string(20'000, 'x') + "\"}",
          {},
          "",
          {}};
}

/// Writes dishes until one is refused; returns how many were kept.
int fill_up(Repository& school, std::string& why) {
  for (int i = 0; i < 2000; ++i) {
    const auto made = school.create(Kind::kDish, {}, big(i), by_hart());
    if (made) continue;
    why = code(made);
    return i;
  }
  return 2000;
}

/// No file of this program may grow beyond so many bytes, as when a person's share of the disk is
/// used up: the system refuses the write, and not with the error of a full disk.
class NoRoomBeyond {
 public:
  explicit NoRoomBeyond(rlim_t bytes) : signal_(std::signal(SIGXFSZ, SIG_IGN)) {
    ::getrlimit(RLIMIT_FSIZE, &before_);
    const rlimit less{bytes, before_.rlim_max};
    ::setrlimit(RLIMIT_FSIZE, &less);
  }
  ~NoRoomBeyond() {
    ::setrlimit(RLIMIT_FSIZE, &before_);
    std::signal(SIGXFSZ, signal_);
  }
  NoRoomBeyond(const NoRoomBeyond&) = delete;
  NoRoomBeyond& operator=(const NoRoomBeyond&) = delete;

 private:
  void (*signal_)(int);
  rlimit before_{};
};

void expect_whole(Repository& school, int kept) {
  const auto list = school.list(Kind::kDish).value();
  EXPECT_EQ(list.size(), static_cast<std::size_t>(kept));
  for (int i = 0; i < kept; ++i) {
    const auto found = school.get(Kind::kDish, "dish-" + std::to_string(i)).value();
    ASSERT_TRUE(found) << i;
    EXPECT_EQ(found->body, big(i).body);
    EXPECT_EQ(found->version, 1);
  }
}

TEST_F(SchoolTest, AFullFileRefusesTheWriteAndReadsOn) {
  SqliteOptions small = options();
  small.largest_bytes = 1U << 20U;
  school = open(folder.file("small.benchbell"), small);
  std::string why;
  const int kept = fill_up(*school, why);
  EXPECT_EQ(why, "store.disk_full");
  EXPECT_GT(kept, 20);
  expect_whole(*school, kept);
  // Several at once: none of them.
  const auto several = school->transact([&](Writer& writer) -> base::Result<Outcome> {
    for (int i = 0; i < 50; ++i) {
      const auto made = writer.create(Kind::kRoom, {}, big(i), by_hart());
      if (!made) continue;  // even a caller that looks away cannot keep half of it
    }
    return Outcome::kKeep;
  });
  EXPECT_EQ(code(several), "store.disk_full");
  EXPECT_TRUE(school->list(Kind::kRoom).value().empty());
  EXPECT_TRUE(school->history(Kind::kDish, "dish-0"));
  school = open(folder.file("small.benchbell"), options());  // with room again
  expect_whole(*school, kept);
  EXPECT_TRUE(school->create(Kind::kDish, {}, big(kept), by_hart()));
}

TEST_F(SchoolTest, AFileThatMayNotGrowIsAFullDisk) {
  std::string why;
  int kept = 0;
  base::Result<Backup> backup = base::Problem{};
  {
    const NoRoomBeyond here(2U << 20U);
    kept = fill_up(*school, why);
    expect_whole(*school, kept);
  }
  EXPECT_EQ(why, "store.disk_full");
  EXPECT_GT(kept, 20);
  {
    const NoRoomBeyond here(1U << 16U);
    backup = school->back_up(2);
  }
  EXPECT_EQ(code(backup), "store.disk_full");
  EXPECT_TRUE(school->backups().value().empty());
  EXPECT_TRUE(school->create(Kind::kDish, {}, big(kept), by_hart()));  // with room again
  expect_whole(*school, kept + 1);
}

TEST_F(SchoolTest, AFullDiskSaysWhatIsWrongWhereAndHowToMendIt) {
  base::Result<Document> made = base::Problem{};
  {
    const NoRoomBeyond here(0);
    made = school->create(Kind::kDish, {}, big(0), by_hart());
  }
  ASSERT_FALSE(made);
  const base::Problem& problem = made.problems().front();
  EXPECT_EQ(problem.message,
            "There is no room left for 'school.benchbell', so this was not saved. Everything saved "
            "before is still there.");
  EXPECT_EQ(problem.remedy, "Make room on the disk that holds the folder '" +
                                folder.path().string() +
                                "', or ask whoever looks after that machine to; then save again.");
}

TEST_F(SchoolTest, AFullDiskSignsNobodyOut) {
  const auto hart = school->add_user("Ms Hart", Role::kHead, "a hash");
  ASSERT_TRUE(hart);
  const auto session = school->start_session(hart.value().id, std::chrono::hours(9));
  ASSERT_TRUE(session);
  now += 3600;  // so long that being here would be noted
  base::Result<std::optional<Session>> seen = base::Problem{};
  {
    const NoRoomBeyond here(0);
    seen = school->see_session(session.value().token);
  }
  ASSERT_TRUE(seen);
  ASSERT_TRUE(seen.value());
  EXPECT_EQ(seen.value()->user.name, "Ms Hart");
  EXPECT_EQ(seen.value()->seen_at, "2026-11-17T09:05:00Z");
  EXPECT_EQ(school->see_session(session.value().token).value()->seen_at, "2026-11-17T10:05:00Z");
}

TEST_F(SchoolTest, AFullDiskRefusesTheWriteAndReadsOn) {
  const std::string disk = folder.file("disk");
  fs::create_directory(disk);
  if (::mount("tmpfs", disk.c_str(), "tmpfs", 0, "size=3m") != 0) {
    GTEST_SKIP() << "no right to make a small disk here; the ceiling on the file was tested";
  }
  {
    const std::string path = disk + "/school.benchbell";
    auto small = open(path, options());
    std::string why;
    const int kept = fill_up(*small, why);
    EXPECT_EQ(why, "store.disk_full");
    EXPECT_GT(kept, 20);
    expect_whole(*small, kept);
    EXPECT_EQ(code(small->back_up(2)), "store.disk_full");
    EXPECT_TRUE(small->backups().value().empty());
    expect_whole(*small, kept);
    small.reset();
    // A disk still full when the program starts again.
    {
      std::ofstream rest(disk + "/rest");
      while (rest << std::string(4096, 'x') && rest.flush()) {
      }
    }
    auto tight = open_sqlite(path, options());
    if (tight) {
      expect_whole(*tight.value(), kept);
    } else {
      EXPECT_EQ(code(tight), "store.disk_full");
    }
    tight = base::Problem{};  // closed
    fs::remove(disk + "/rest");
    small = open(path, options());
    expect_whole(*small, kept);
  }
  EXPECT_EQ(::umount(disk.c_str()), 0);
}

TEST_F(SchoolTest, ADiskThatMayNotBeWrittenSaysSo) {
  const std::string disk = folder.file("disk");
  fs::create_directory(disk);
  if (::mount("tmpfs", disk.c_str(), "tmpfs", 0, "size=3m") != 0) {
    GTEST_SKIP() << "no right to make a small disk here";
  }
  const std::string path = disk + "/school.benchbell";
  open(path, options()).reset();
  EXPECT_EQ(::mount("tmpfs", disk.c_str(), "tmpfs", MS_REMOUNT | MS_RDONLY, "size=3m"), 0);
  EXPECT_EQ(code(open_sqlite(path, options())), "store.read_only");
  EXPECT_EQ(::umount(disk.c_str()), 0);
}

}  // namespace
