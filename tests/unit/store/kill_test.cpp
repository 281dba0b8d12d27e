// A program that writes is killed in the middle, 200 times. Whatever it was told is kept is there
// afterwards, and nothing is half there. (This tests the program and its database; that the disk
// itself keeps what it was told is what "synchronous = full" asks of it, and only pulling the plug
// could test that.)
#include <gtest/gtest.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <csignal>
#include <iostream>
#include <random>

#include "school.h"

namespace {

using namespace store_test;

/// The child: writes for ever, and says after each write which one is kept.
[[noreturn]] void write_for_ever(const std::string& path, int first, int say) {
  auto opened = open_sqlite(path);
  if (!opened) _exit(2);
  Repository& school = *opened.value();
  for (int number = first;; ++number) {
    const std::string name = "Dish " + std::to_string(number);
    const auto outcome = school.transact([&](Writer& writer) -> base::Result<Outcome> {
      const auto made = writer.create(Kind::kDish, {}, dish(name, number), by_hart());
      if (!made) return made.problems();
      const auto used = writer.create(Kind::kLesson, {},
                                      lesson(name, "2026-11-17", {{Kind::kDish, made.value().id}}),
                                      by_hart());
      if (!used) return used.problems();
      return Outcome::kKeep;
    });
    if (!outcome) _exit(3);
    if (::write(say, &number, sizeof number) != sizeof number) _exit(4);
  }
}

/// Starts the child, lets it say something, kills it at a random moment, returns the last number it
/// said, or `first - 1`.
int run_and_kill(const std::string& path, int first, std::mt19937& random) {
  std::array<int, 2> ends{};
  if (::pipe(ends.data()) != 0) throw std::runtime_error("no pipe");
  const pid_t child = ::fork();
  if (child < 0) throw std::runtime_error("no second process");
  if (child == 0) {
    ::close(ends[0]);
    write_for_ever(path, first, ends[1]);
  }
  ::close(ends[1]);
  int last = first - 1;
  int number = 0;
  // One in four is killed at any moment, also while opening; the others once they have said
  // something, however slow the machine is today.
  const bool early = random() % 4 == 0;
  if (!early && ::read(ends[0], &number, sizeof number) == sizeof number) last = number;
  ::usleep(std::uniform_int_distribution<unsigned>(0, 50'000)(random));
  ::kill(child, SIGKILL);
  while (::read(ends[0], &number, sizeof number) == sizeof number) last = number;
  ::close(ends[0]);
  int state = 0;
  ::waitpid(child, &state, 0);
  EXPECT_TRUE(WIFSIGNALED(state)) << "the child ended by itself with " << WEXITSTATUS(state);
  return last;
}

TEST(Killed, WhatWasAcknowledgedIsThereAfterwards) {
  constexpr int kTimes = 200;
  constexpr int kTimesAFile = 20;  // then a new file, so that files of all sizes are killed
  std::mt19937 random(7);          // NOLINT: the same moments every time, as far as a machine can
  int acknowledged = 0;
  int next = 0;
  std::unique_ptr<Folder> folder;
  for (int round = 0; round < kTimes; ++round) {
    if (round % kTimesAFile == 0) {
      folder = std::make_unique<Folder>();
      next = 0;
    }
    const int last = run_and_kill(folder->file(), next, random);
    acknowledged += last - next + 1;
    const auto school = open(folder->file());
    const auto dishes = school->list(Kind::kDish).value().size();
    // One more may have been kept than was said: killed between the two.
    ASSERT_GE(dishes, static_cast<std::size_t>(last) + 1);
    ASSERT_LE(dishes, static_cast<std::size_t>(last) + 2);
    ASSERT_EQ(school->list(Kind::kLesson).value().size(), dishes);  // both or neither
    for (int number = next; number <= last; ++number) {
      const auto found = school->get(Kind::kDish, "dish-" + std::to_string(number)).value();
      ASSERT_TRUE(found) << number;
      ASSERT_EQ(found->body, dish("Dish " + std::to_string(number), number).body);
    }
    next = static_cast<int>(dishes);
  }
  EXPECT_GT(acknowledged, kTimes / 2);  // the child did write
  RecordProperty("acknowledged", acknowledged);
  std::cout << acknowledged << " acknowledged writes, none lost\n";
}

}  // namespace
