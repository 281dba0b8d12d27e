// The terminal: one line that says what is going on while it takes longer than a second, and Ctrl-C
// as "give me the best you have". Quiet when the error stream is not a terminal.
#pragma once

#include <chrono>
#include <string>

namespace app {

class Console {
 public:
  /// `title` is said before what is going on: "9K, lentil dhal".
  explicit Console(std::string title);
  Console(const Console&) = delete;
  Console& operator=(const Console&) = delete;
  ~Console();  ///< wipes the line

  void doing(const std::string& what) { doing_ = what; }
  /// True once Ctrl-C was pressed. Asked often, so it also keeps the line fresh. A second Ctrl-C
  /// ends the program.
  bool stop();

 private:
  std::string title_;
  std::string doing_;
  bool terminal_ = false;
  bool shown_ = false;
  std::chrono::steady_clock::time_point start_, drawn_;
};

}  // namespace app
