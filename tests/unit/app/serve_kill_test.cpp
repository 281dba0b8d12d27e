// The desk is killed while pages write to it, 200 times. Whatever a page was told is kept is there
// after the next start, whole, and the next start needs nobody's help. (store_kill_test does the
// same to the store alone.)
#include <fcntl.h>
#include <gtest/gtest.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <atomic>
#include <csignal>
#include <filesystem>
#include <iostream>
#include <nlohmann/json.hpp>
#include <random>
#include <string>
#include <thread>

#include "../http/client.h"

namespace {

using http_test::Client;
using nlohmann::json;

/// The program on a file, in a process of its own.
class Desk {
 public:
  explicit Desk(const std::string& file) {
    std::array<int, 2> ends{};
    if (::pipe(ends.data()) != 0) throw std::runtime_error("no pipe");
    process_ = ::fork();
    if (process_ < 0) throw std::runtime_error("no second process");
    if (process_ == 0) {
      ::dup2(ends[1], STDOUT_FILENO);
      ::dup2(::open("/dev/null", O_WRONLY), STDERR_FILENO);
      ::close(ends[0]);
      ::execl(BENCHBELL_PROGRAM, BENCHBELL_PROGRAM, "serve", "--file", file.c_str(), "--port", "0",
              static_cast<char*>(nullptr));
      _exit(127);
    }
    ::close(ends[1]);
    said_ = ends[0];
    port_ = port_said();
  }
  ~Desk() {
    kill();
    ::close(said_);
  }
  Desk(const Desk&) = delete;
  Desk& operator=(const Desk&) = delete;

  int port() const { return port_; }
  void kill() {
    if (process_ <= 0) return;
    ::kill(process_, SIGKILL);
    ::waitpid(process_, nullptr, 0);
    process_ = -1;
  }

 private:
  pid_t process_ = -1;
  int said_ = -1, port_ = 0;

  int port_said() const {
    std::string said;
    char byte = 0;
    while (::read(said_, &byte, 1) == 1) {
      said += byte;
      const auto colon = said.rfind(':');
      if (said.find("://") == std::string::npos || colon < said.find("://") + 3) continue;
      if (byte == '\n' || byte == '/' || byte == ' ') {
        const std::string digits = said.substr(colon + 1);
        if (!digits.empty() && std::isdigit(static_cast<unsigned char>(digits[0])) != 0)
          return std::stoi(digits);
      }
    }
    throw std::runtime_error("the desk said no address: " + said);
  }
};

std::string room(int number) {
  return json{{"body",
               {{"kind", "room"},
                {"version", 1},
                {"name", "Room " + std::to_string(number)},
                {"bays", {{{"name", "A"}, {"cookers", {{{"name", "A1"}}}}, {"places", {"A1"}}}}}}},
              {"id", "room-" + std::to_string(number)}}
      .dump();
}

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
