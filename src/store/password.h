// Passwords: kept as Argon2id (RFC 9106), 19 MiB, 3 passes, by libsodium.
//
// At most two are worked at once in the whole program, whoever asks: a crowd at the door at ten to
// nine must not fill the memory. Each takes a quarter of a second: call from a worker thread only.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

#include "base/problem.h"

namespace store {

inline constexpr unsigned kPasswordPasses = 3;
inline constexpr std::size_t kPasswordMemory = 19U << 20U;  ///< bytes
inline constexpr std::size_t kShortestPassword = 8;         ///< letters
inline constexpr std::size_t kLongestPassword = 1024;       ///< bytes
inline constexpr int kPasswordsAtOnce = 2;

/// The text to keep: "$argon2id$v=19$m=19456,t=3,p=1$salt$hash".
/// Errors: password.too_short, password.too_long, password.not_text, password.no_memory.
base::Result<std::string> hash_password(std::string_view password);

/// Is it the password? False for every text that is not such a hash, and for one that asks for more
/// work than we ever do.
bool password_fits(const std::string& kept_hash, std::string_view password);

/// As long as password_fits takes, for a name nobody has: so that the time does not tell which
/// names exist. Always false.
bool password_of_nobody(std::string_view password);

/// True if the hash was made with other settings than today's: make it anew at the next sign-in.
bool password_is_outdated(const std::string& kept_hash);

}  // namespace store
