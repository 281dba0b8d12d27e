// Who may sign in, and who is signed in. Pupils are not users; they never sign in.
//
// A session is known by a random token that only the browser has: the store keeps its hash, so a
// stolen copy of the file opens no door. Passwords: store/password.h.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace store {

enum class Role : std::uint8_t { kTeacher, kTechnician, kHead };
std::string_view name_of(Role);  ///< "teacher", "technician", "head"
std::optional<Role> role_named(std::string_view);

struct User {
  std::string id;    ///< random, never used again
  std::string name;  ///< "Ms Hart": shown, and typed to sign in; no two alike
  Role role = Role::kTeacher;
  std::string password_hash;  ///< from store::hash_password
  int failed = 0;             ///< wrong passwords since the last right one
  std::string failed_at;      ///< when the last of them was, universal time; empty: never
  std::string created_at;

  friend bool operator==(const User&, const User&) = default;
};

struct Session {
  User user;
  std::string csrf;        ///< 32 random bytes as letters; forms send it back
  std::string created_at;  ///< universal time, as the next two
  std::string seen_at;     ///< to five minutes, so that looking does not write each time
  std::string expires_at;
};

/// What the browser is given, once.
struct NewSession {
  std::string token;  ///< 32 random bytes as letters; only its hash is kept
  std::string csrf;
  std::string expires_at;
};

}  // namespace store
