// Files that cannot be opened say why and what to do, and backups are whole.
#include <gtest/gtest.h>
#include <sys/stat.h>
#include <unistd.h>

#include <atomic>
#include <fstream>
#include <iterator>
#include <thread>

#include "base/text.h"
#include "school.h"
#include "store/database.h"

namespace {

using namespace store_test;
namespace fs = std::filesystem;

class Opening : public SchoolTest {
 protected:
  /// The problem of a file that must not open.
  base::Problem refused(const std::string& path) {
    SqliteOptions hasty = options();
    hasty.wait = std::chrono::milliseconds(50);
    const auto opened = open_sqlite(path, hasty);
    if (opened) {
      ADD_FAILURE() << "it opened";
      return {};
    }
    EXPECT_FALSE(opened.problems()[0].remedy.empty());
    EXPECT_EQ(opened.problems()[0].file, path);
    return opened.problems()[0];
  }
  /// A file of many pages, closed.
  void fill() {
    for (int i = 0; i < 60; ++i)
      kept(Kind::kDish, {R"({"name":"Dish )" + std::to_string(i) + R"(","text":")" +
                             std::string(3000, 'x') + "\"}",
                         {},
                         "",
                         {}});
    school.reset();
  }
  void overwrite(std::streamoff at, const std::string& bytes) {
    std::fstream file(folder.file(), std::ios::binary | std::ios::in | std::ios::out);
    file.seekp(at);
    file << bytes;
  }
};

TEST_F(Opening, ANewFileIsReadableByItsOwnerOnly) {
  struct stat state {};
  ASSERT_EQ(::stat(folder.file().c_str(), &state), 0);
  EXPECT_EQ(state.st_mode & 0777U, 0600U);
}

TEST_F(Opening, AMissingFolderIsNamed) {
  const auto problem = refused(folder.file("no/school.benchbell"));
  EXPECT_EQ(problem.code, "store.no_folder");
  EXPECT_FALSE(fs::exists(folder.file("no")));
}

TEST_F(Opening, AFolderIsNoFile) {
  EXPECT_EQ(refused(folder.path().string()).code, "store.cannot_open");
}

TEST_F(Opening, AnotherKindOfFileIsLeftAsItIs) {
  const std::string text = "name,price\nflour,1.20\n" + std::string(2000, '\n');
  std::ofstream(folder.file("prices.csv")) << text;
  const auto problem = refused(folder.file("prices.csv"));
  EXPECT_EQ(problem.code, "store.not_a_database");
  EXPECT_EQ(problem.message,
            "The file 'prices.csv' is something else, not what Benchbell keeps a school in.");
  std::ifstream file(folder.file("prices.csv"));
  EXPECT_EQ(std::string((std::istreambuf_iterator<char>(file)), {}), text);
}

TEST_F(Opening, ADatabaseOfAnotherProgramIsLeftAsItIs) {
  {
    Database other(folder.file("other.db"), Access::kWriteOrMake, 0);
    other.run("create table birds (name text)");
  }
  EXPECT_EQ(refused(folder.file("other.db")).code, "store.other_program");
  Database other(folder.file("other.db"), Access::kRead, 0);
  EXPECT_EQ(other.number("select count(*) from sqlite_schema"), 1);
}

TEST_F(Opening, AFileOfANewerProgramIsLeftAsItIsAndTheBackupNamed) {
  ASSERT_TRUE(school->back_up(3));
  school.reset();
  {
    Database database(folder.file(), Access::kWrite, 0);
    database.run("pragma user_version = 99");
  }
  const auto problem = refused(folder.file());
  EXPECT_EQ(problem.code, "store.newer");
  EXPECT_NE(problem.remedy.find("school.benchbell.2026-11-17T090500Z.backup"), std::string::npos)
      << problem.remedy;
}

TEST_F(Opening, ADamagedFileNamesTheBackupAndTheBackupOpens) {
  kept(Kind::kDish, dish("Soup"));
  ASSERT_TRUE(school->back_up(3));
  fill();
  const auto size = static_cast<std::streamoff>(fs::file_size(folder.file()));
  ASSERT_GT(size, 100'000);
  for (std::streamoff at = 4096; at < size; at += 4096) overwrite(at, std::string(600, 'Z'));
  const auto problem = refused(folder.file());
  EXPECT_EQ(problem.code, "store.damaged");
  EXPECT_NE(problem.remedy.find("2026-11-17T090500Z.backup"), std::string::npos) << problem.remedy;
  // What the remedy says, done.
  const auto backup = folder.file("school.benchbell.2026-11-17T090500Z.backup");
  fs::rename(folder.file(), folder.file("broken"));
  fs::copy_file(backup, folder.file());
  EXPECT_EQ(again()->list(Kind::kDish).value().size(), 1U);
}

TEST_F(Opening, AFileCutOffInTheMiddleIsDamaged) {
  fill();
  fs::resize_file(folder.file(), fs::file_size(folder.file()) / 2);
  const auto problem = refused(folder.file());
  EXPECT_EQ(problem.code, "store.damaged");
  EXPECT_NE(problem.remedy.find("There is no backup"), std::string::npos);
}

TEST_F(Opening, AHeadFullOfRubbishIsNoDatabase) {
  ASSERT_TRUE(school->back_up(3));
  fill();
  overwrite(0, std::string(100, 'Z'));
  const auto problem = refused(folder.file());
  EXPECT_EQ(problem.code, "store.not_a_database");
  EXPECT_NE(problem.remedy.find("2026-11-17T090500Z.backup"), std::string::npos) << problem.remedy;
}

TEST_F(Opening, AnEmptyFileIsNewUnlessThereAreBackups) {
  std::ofstream(folder.file("new.benchbell")).close();
  EXPECT_TRUE(open_sqlite(folder.file("new.benchbell")));
  ASSERT_TRUE(school->back_up(3));
  school.reset();
  fs::remove(folder.file() + "-wal");
  fs::resize_file(folder.file(), 0);
  EXPECT_EQ(refused(folder.file()).code, "store.damaged");
}

TEST_F(Opening, AFileAnotherProgramHoldsSaysSoAndIsFreeAfterwards) {
  school.reset();
  {
    Database other(folder.file(), Access::kWrite, 0);
    other.run(
        "pragma locking_mode = exclusive; begin immediate; update kinds set kind = kind; commit");
    const auto problem = refused(folder.file());
    EXPECT_EQ(problem.code, "store.locked");
  }
  EXPECT_TRUE(open_sqlite(folder.file()));
}

TEST_F(Opening, AWriterElsewhereDelaysOnlyWriters) {
  Database other(folder.file(), Access::kWrite, 0);
  SqliteOptions hasty = options();
  hasty.wait = std::chrono::milliseconds(50);
  const auto second = open(folder.file(), hasty);
  const Transaction held(other, Transaction::For::kWriting);
  EXPECT_TRUE(second->list(Kind::kDish));
  EXPECT_EQ(code(second->create(Kind::kDish, {}, dish("Soup"), by_hart())), "store.locked");
}

TEST_F(Opening, AFileThatMayNotBeChangedSaysSo) {
  if (geteuid() == 0) GTEST_SKIP() << "root may change every file";
  school.reset();
  ASSERT_EQ(::chmod(folder.file().c_str(), 0400), 0);
  EXPECT_EQ(refused(folder.file()).code, "store.read_only");
}

class Backups : public Opening {};

TEST_F(Backups, TheNewestAreKeptAndOthersFilesLeftAlone) {
  std::ofstream(folder.file("school.benchbell.mine.backup")) << "my own copy";
  std::ofstream(folder.file("other.2026-11-17T090500Z.backup")) << "another school's";
  for (int i = 0; i < 5; ++i) {
    now += 60;
    ASSERT_TRUE(school->back_up(3));
  }
  const auto backups = school->backups().value();
  ASSERT_EQ(backups.size(), 3U);
  EXPECT_EQ(backups[0].made_at, "2026-11-17T09:10:00Z");
  EXPECT_EQ(backups[2].made_at, "2026-11-17T09:08:00Z");
  EXPECT_EQ(backups[0].bytes, fs::file_size(backups[0].path));
  EXPECT_TRUE(fs::exists(folder.file("school.benchbell.mine.backup")));
  EXPECT_TRUE(fs::exists(folder.file("other.2026-11-17T090500Z.backup")));
  EXPECT_FALSE(fs::exists(folder.file() + ".backup-being-made"));
}

TEST_F(Backups, TwoInOneSecondAreTwo) {
  ASSERT_TRUE(school->back_up(3));
  ASSERT_TRUE(school->back_up(3));
  EXPECT_EQ(school->backups().value().size(), 2U);
}

TEST_F(Backups, HoldPeopleButNobodySignedIn) {
  const User hart = school->add_user("Ms Hart", Role::kHead, "hash").value();
  const NewSession session = school->start_session(hart.id, std::chrono::hours(8)).value();
  const Backup backup = school->back_up(3).value();
  struct stat state {};
  ASSERT_EQ(::stat(backup.path.c_str(), &state), 0);
  EXPECT_EQ(state.st_mode & 0777U, 0600U);
  {
    std::ifstream file(backup.path, std::ios::binary);
    const std::string bytes((std::istreambuf_iterator<char>(file)), {});
    EXPECT_NE(bytes.find("Ms Hart"), std::string::npos);
    EXPECT_EQ(bytes.find(session.csrf), std::string::npos);
  }
  const auto copy = open(backup.path, options());
  EXPECT_EQ(copy->users().value().size(), 1U);
  EXPECT_TRUE(school->session(session.token).value());  // at home they are still signed in
}

TEST_F(Backups, MadeWhileOthersWriteAreOneState) {
  // A writer adds a dish and a lesson that uses it, always both; a backup has both or neither.
  std::atomic<bool> stop{false};
  std::thread writer([&] {
    for (int i = 0; !stop; ++i) {
      const std::string name = "Dish " + std::to_string(i);
      const auto outcome = school->transact([&](Writer& w) -> base::Result<Outcome> {
        const auto made = w.create(Kind::kDish, {}, dish(name), by_hart());
        if (!made) return made.problems();
        const auto used = w.create(Kind::kLesson, {},
                                   lesson(name, "2026-11-17", {{Kind::kDish, made.value().id}}),
                                   by_hart());
        if (!used) return used.problems();
        return Outcome::kKeep;
      });
      EXPECT_TRUE(outcome);
    }
  });
  for (int i = 0; i < 5; ++i) {
    const auto backup = school->back_up(1);
    ASSERT_TRUE(backup);
    const auto copy = open(backup.value().path, options());
    EXPECT_EQ(copy->list(Kind::kDish).value().size(), copy->list(Kind::kLesson).value().size());
  }
  stop = true;
  writer.join();
}

}  // namespace
