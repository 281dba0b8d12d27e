// Users, sessions and settings in their tables. Inside the store only; what writes is called inside
// a write transaction and looks before it writes.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "base/problem.h"
#include "store/database.h"
#include "store/people.h"

namespace store {

inline constexpr std::int64_t kSeenGrid = 5 * 60;  ///< seconds between two notes of "was here"

std::vector<User> all_users(Database&);
std::optional<User> find_user(Database&, const std::string& id);
std::optional<User> find_user_named(Database&, const std::string& name);
/// now: seconds since 1970, here and below.
std::optional<Session> find_session(Database&, const std::string& token, std::int64_t now);
std::optional<std::string> find_setting(Database&, const std::string& key);
std::vector<std::pair<std::string, std::string>> all_settings(Database&);

base::Result<User> insert_user(Database&, const std::string& name, Role, const std::string& hash,
                               std::int64_t now);
base::Result<User> update_user(Database&, const User&);
bool delete_user(Database&, const std::string& id);
base::Result<User> count_sign_in(Database&, const std::string& id, bool right, std::int64_t now);

base::Result<NewSession> insert_session(Database&, const std::string& user_id, std::int64_t lasts,
                                        std::int64_t now);
void mark_seen(Database&, const std::string& token, std::int64_t now);
bool delete_session(Database&, const std::string& token);
int delete_sessions_of(Database&, const std::string& user_id);
int delete_expired_sessions(Database&, std::int64_t now);

base::Result<bool> put_setting(Database&, const std::string& key, const std::string& value);
bool delete_setting(Database&, const std::string& key);

}  // namespace store
