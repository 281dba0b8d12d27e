// The one door to libsodium: its random numbers are seeded before anything is asked of it.
#pragma once

#include <sodium.h>

#include <stdexcept>

namespace store {

/// Throws std::runtime_error when the system gives no random numbers.
inline void need_sodium() {
  static const bool kReady = sodium_init() >= 0;  // 1 means it was done before
  if (!kReady) throw std::runtime_error("the system gives no random numbers");
}

}  // namespace store
