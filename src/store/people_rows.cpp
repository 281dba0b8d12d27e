#include "store/people_rows.h"

#include <algorithm>
#include <stdexcept>

#include "base/folding.h"
#include "base/text.h"
#include "store/stamp.h"

namespace store {

using base::Problem;
using base::Result;
using base::say;

namespace {

constexpr std::size_t kSecretBytes = 32;
constexpr std::size_t kLongestName = 80;        // letters
constexpr std::size_t kLargestSetting = 65536;  // bytes

constexpr const char*
    kUserColumns = "u.id, u.name, u.role, u.password_hash, u.failed, u.failed_at, u.created_at";

User user_in(const Statement& row) {
  User user;
  user.id = row.column<std::string>(0);
  user.name = row.column<std::string>(1);
  const auto role = role_named(row.column<std::string>(2));
  if (!role) throw std::logic_error("the database holds an unknown role");
  user.role = *role;
  user.password_hash = row.column<std::string>(3);
  user.failed = row.column<int>(4);
  user.failed_at = row.column<std::string>(5);
  user.created_at = row.column<std::string>(6);
  return user;
}

std::optional<User> user_where(Database& database, const char* condition,
                               const std::string& value) {
  Statement statement(database,
                      say("select ", kUserColumns, " from users u where ", condition, " = $1"));
  statement.bind("$1", value);
  if (!statement.step()) return std::nullopt;
  return user_in(statement);
}

Problem no_user() {
  return {"store.not_found", "", "", "That person is not in the list any more.",
          "Load the list of people again."};
}

/// The name as it is kept, or why it cannot be.
Result<std::string> usable_name(Database& database, const std::string& name,
                                const std::string& own_id) {
  const bool is_text = !base::not_utf8(name);
  std::string kept = is_text ? base::trimmed(name) : "";
  const bool plain = std::none_of(kept.begin(), kept.end(),
                                  [](char c) { return static_cast<unsigned char>(c) < 0x20; });
  if (base::folded(kept).empty() || !plain || base::letters(kept) > kLongestName) {
    return Problem{"store.no_name", "", "/name",
                   say("A person needs a name of one line, up to ", kLongestName, " letters."),
                   "Type the name as it should be shown, like Ms Hart."};
  }
  const auto other = find_user_named(database, kept);
  if (other && other->id != own_id) {
    return Problem{"store.name_taken", "", "/name",
                   say("There is somebody called ", base::in_quotes(other->name), " already."),
                   "Add a first name or a letter, so that the two can be told apart."};
  }
  return kept;
}

}  // namespace

std::vector<User> all_users(Database& database) {
  Statement statement(database, say("select ", kUserColumns, " from users u order by u.name_key"));
  std::vector<User> users;
  while (statement.step()) users.push_back(user_in(statement));
  return users;
}

std::optional<User> find_user(Database& database, const std::string& id) {
  return user_where(database, "u.id", id);
}

std::optional<User> find_user_named(Database& database, const std::string& name) {
  return user_where(database, "u.name_key", base::folded(name));
}

std::optional<Session> find_session(Database& database, const std::string& token,
                                    std::int64_t now) {
  Statement statement(database, say("select ", kUserColumns,
                                    ", s.csrf, s.created_at, s.seen_at, s.expires_at"
                                    " from sessions s join users u on u.id = s.user_id"
                                    " where s.token_hash = $1 and s.expires_at > $2"));
  statement.bind("$1", fingerprint(token)).bind("$2", stamp_of(now));
  if (!statement.step()) return std::nullopt;
  return Session{user_in(statement), statement.column<std::string>(7),
                 statement.column<std::string>(8), statement.column<std::string>(9),
                 statement.column<std::string>(10)};
}

std::optional<std::string> find_setting(Database& database, const std::string& key) {
  Statement statement(database, "select value from settings where key = $1");
  statement.bind("$1", key);
  if (!statement.step()) return std::nullopt;
  return statement.column<std::string>(0);
}

std::vector<std::pair<std::string, std::string>> all_settings(Database& database) {
  Statement statement(database, "select key, value from settings order by key");
  std::vector<std::pair<std::string, std::string>> found;
  while (statement.step()) {
    found.emplace_back(statement.column<std::string>(0), statement.column<std::string>(1));
  }
  return found;
}

Result<User> insert_user(Database& database, const std::string& name, Role role,
                         const std::string& hash, std::int64_t now) {
  auto kept = usable_name(database, name, "");
  if (!kept) return kept.problems();
  User user;
  user.id = random_letters(8);
  user.name = kept.value();
  user.role = role;
  user.password_hash = hash;
  user.created_at = stamp_of(now);
  Statement(database,
            "insert into users (id, name, name_key, role, password_hash, created_at)"
            " values ($1, $2, $3, $4, $5, $6)")
      .bind("$1", user.id)
      .bind("$2", user.name)
      .bind("$3", base::folded(user.name))
      .bind("$4", name_of(role))
      .bind("$5", hash)
      .bind("$6", user.created_at)
      .run();
  return user;
}

Result<User> update_user(Database& database, const User& user) {
  const auto before = find_user(database, user.id);
  if (!before) return no_user();
  auto kept = usable_name(database, user.name, user.id);
  if (!kept) return kept.problems();
  Statement(database,
            "update users set name = $2, name_key = $3, role = $4, password_hash = $5"
            " where id = $1")
      .bind("$1", user.id)
      .bind("$2", kept.value())
      .bind("$3", base::folded(kept.value()))
      .bind("$4", name_of(user.role))
      .bind("$5", user.password_hash)
      .run();
  // Whoever changes a password because somebody else knows it must be rid of them at once.
  if (before->password_hash != user.password_hash) delete_sessions_of(database, user.id);
  return *find_user(database, user.id);
}

bool delete_user(Database& database, const std::string& id) {
  Statement(database, "delete from users where id = $1").bind("$1", id).run();
  return database.changed_rows() > 0;
}

Result<User> count_sign_in(Database& database, const std::string& id, bool right,
                           std::int64_t now) {
  if (right) {
    Statement(database, "update users set failed = 0 where id = $1").bind("$1", id).run();
  } else {
    Statement(database, "update users set failed = failed + 1, failed_at = $2 where id = $1")
        .bind("$1", id)
        .bind("$2", stamp_of(now))
        .run();
  }
  auto user = find_user(database, id);
  if (!user) return no_user();
  return *user;
}

Result<NewSession> insert_session(Database& database, const std::string& user_id,
                                  std::int64_t lasts, std::int64_t now) {
  if (!find_user(database, user_id)) return no_user();
  NewSession made{random_letters(kSecretBytes), random_letters(kSecretBytes),
                  stamp_of(now + lasts)};
  Statement(database,
            "insert into sessions (token_hash, user_id, csrf, created_at, seen_at, expires_at)"
            " values ($1, $2, $3, $4, $4, $5)")
      .bind("$1", fingerprint(made.token))
      .bind("$2", user_id)
      .bind("$3", made.csrf)
      .bind("$4", stamp_of(now))
      .bind("$5", made.expires_at)
      .run();
  return made;
}

void mark_seen(Database& database, const std::string& token, std::int64_t now) {
  Statement(database, "update sessions set seen_at = $2 where token_hash = $1")
      .bind("$1", fingerprint(token))
      .bind("$2", stamp_of(now))
      .run();
}

bool delete_session(Database& database, const std::string& token) {
  Statement(database, "delete from sessions where token_hash = $1")
      .bind("$1", fingerprint(token))
      .run();
  return database.changed_rows() > 0;
}

int delete_sessions_of(Database& database, const std::string& user_id) {
  Statement(database, "delete from sessions where user_id = $1").bind("$1", user_id).run();
  return database.changed_rows();
}

int delete_expired_sessions(Database& database, std::int64_t now) {
  Statement(database, "delete from sessions where expires_at <= $1")
      .bind("$1", stamp_of(now))
      .run();
  return database.changed_rows();
}

Result<bool> put_setting(Database& database, const std::string& key, const std::string& value) {
  const bool good = !key.empty() && key.size() <= 80 &&
                    key.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789._-") ==
                        std::string::npos;
  if (!good) {
    return Problem{"store.bad_key", "", "",
                   say(base::in_quotes(key), " cannot be the name of a setting."),
                   "Use up to 80 small letters, digits, dots, underscores and hyphens."};
  }
  if (value.size() > kLargestSetting || base::not_utf8(value)) {
    return Problem{"store.setting_too_big", "", "",
                   say("The setting ", base::in_quotes(key), " is too long or not text."),
                   "Settings are short texts, up to 64 KB."};
  }
  Statement(database,
            "insert into settings (key, value) values ($1, $2)"
            " on conflict (key) do update set value = excluded.value")
      .bind("$1", key)
      .bind("$2", value)
      .run();
  return true;
}

bool delete_setting(Database& database, const std::string& key) {
  Statement(database, "delete from settings where key = $1").bind("$1", key).run();
  return database.changed_rows() > 0;
}

}  // namespace store
