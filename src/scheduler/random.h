// A small repeatable random generator (xorshift64*, S. Vigna 2016, constants from memory). The
// library's distributions differ between libraries, so a run would not repeat with them.
#pragma once

#include <cstdint>
#include <utility>
#include <vector>

namespace scheduler {

class Random {
 public:
  explicit Random(std::uint64_t seed) : state_(seed * 0x9E3779B97F4A7C15ULL + 0x1234567ULL) {
    if (state_ == 0) state_ = 1;  // zero is the one state the generator cannot leave
  }

  std::uint64_t next() {
    state_ ^= state_ >> 12;
    state_ ^= state_ << 25;
    state_ ^= state_ >> 27;
    return state_ * 0x2545F4914F6CDD1DULL;
  }

  /// A number in [0, count); the tiny bias of the remainder does not matter here.
  int below(int count) {
    return static_cast<int>((next() >> 11) % static_cast<std::uint64_t>(count));
  }

  template <class T>
  void shuffle(std::vector<T>& items) {
    for (int i = static_cast<int>(items.size()) - 1; i > 0; --i) {
      std::swap(items[static_cast<std::size_t>(i)], items[static_cast<std::size_t>(below(i + 1))]);
    }
  }

 private:
  std::uint64_t state_;
};

}  // namespace scheduler
