// The desk as its users meet it: the program started, its address read, its process ended.
#pragma once

#include <fcntl.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <cctype>
#include <csignal>
#include <nlohmann/json.hpp>
#include <stdexcept>
#include <string>

namespace app_test {

using nlohmann::json;

/// The program on a file, in a process of its own.
class Desk {
 public:
  /// `ready` is run in that process before the program is.
  explicit Desk(const std::string& file, void (*ready)() = nullptr) {
    std::array<int, 2> ends{};
    if (::pipe(ends.data()) != 0) throw std::runtime_error("no pipe");
    process_ = ::fork();
    if (process_ < 0) throw std::runtime_error("no second process");
    if (process_ == 0) {
      ::dup2(ends[1], STDOUT_FILENO);
      ::dup2(::open("/dev/null", O_WRONLY), STDERR_FILENO);
      ::close(ends[0]);
      if (ready != nullptr) ready();
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
  pid_t process() const { return process_; }
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

/// A room with that number in its name and id, as a page sends it.
inline std::string room(int number) {
  return json{{"body",
               {{"kind", "room"},
                {"version", 1},
                {"name", "Room " + std::to_string(number)},
                {"bays", {{{"name", "A"}, {"cookers", {{{"name", "A1"}}}}, {"places", {"A1"}}}}}}},
              {"id", "room-" + std::to_string(number)}}
      .dump();
}

}  // namespace app_test
