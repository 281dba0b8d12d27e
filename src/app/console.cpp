#include "app/console.h"

#include <unistd.h>

#include <atomic>
#include <csignal>
#include <cstdio>
#include <utility>

#include "base/text.h"

namespace app {
namespace {

using std::chrono::steady_clock;

std::atomic<bool> interrupted{false};

extern "C" void on_interrupt(int) {
  interrupted.store(true);
  // The next one takes the usual way out.
  std::signal(SIGINT, SIG_DFL);
}

constexpr std::chrono::milliseconds kPatience{1000}, kRedraw{200};

}  // namespace

Console::Console(std::string title)
    : title_(std::move(title)),
      terminal_(::isatty(STDERR_FILENO) == 1),
      start_(steady_clock::now()),
      drawn_(start_) {
  std::signal(SIGINT, on_interrupt);
}

Console::~Console() {
  if (shown_) std::fputs("\r\033[K", stderr);
  std::signal(SIGINT, SIG_DFL);
}

bool Console::stop() {
  if (terminal_) {
    const auto now = steady_clock::now();
    if (now - start_ > kPatience && now - drawn_ > kRedraw) {
      drawn_ = now;
      shown_ = true;
      const auto seconds = std::chrono::duration_cast<std::chrono::seconds>(now - start_).count();
      const std::string line = base::first_letters(
          base::say(title_, ": ", doing_, ", ", seconds, " s (Ctrl-C for the best so far)"), 78);
      std::fprintf(stderr, "\r\033[K%s", line.c_str());
    }
  }
  return interrupted.load();
}

}  // namespace app
