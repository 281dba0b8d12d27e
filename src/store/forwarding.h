// The functions of Reader and Writer, written once for everything that can reach a database: the
// repository (each call a transaction of its own) and what `transact` and `look` hand out. Inside
// the store only.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "store/database.h"
#include "store/document_changes.h"
#include "store/document_rows.h"
#include "store/json_text.h"
#include "store/people_rows.h"
#include "store/repository.h"
#include "store/stamp.h"

namespace store {

/// Base is Reader, Writer or Repository.
template <class Base>
class Reads : public Base {
 public:
  base::Result<std::vector<Summary>> list(Kind kind, const Filter& filter) override {
    return read<std::vector<Summary>>(
        [&](Database& database) { return list_documents(database, kind, filter); });
  }
  base::Result<std::vector<std::string>> days(Kind kind, const Filter& filter) override {
    return read<std::vector<std::string>>(
        [&](Database& database) { return days_of(database, kind, filter); });
  }
  base::Result<std::vector<std::pair<std::string, std::int64_t>>> versions(Kind kind) override {
    return read<std::vector<std::pair<std::string, std::int64_t>>>(
        [&](Database& database) { return versions_of(database, kind); });
  }
  base::Result<std::optional<Document>> get(Kind kind, const std::string& id) override {
    return read<std::optional<Document>>(
        [&](Database& database) { return find_document(database, kind, id); });
  }
  base::Result<std::optional<Document>> get(Kind kind, const std::string& id,
                                            std::int64_t version) override {
    return read<std::optional<Document>>(
        [&](Database& database) { return find_version(database, kind, id, version); });
  }
  base::Result<std::vector<Change>> history(Kind kind, const std::string& id) override {
    return read<std::vector<Change>>(
        [&](Database& database) { return history_of(database, kind, id); });
  }
  base::Result<std::vector<Summary>> used_by(Kind kind, const std::string& id) override {
    return read<std::vector<Summary>>(
        [&](Database& database) { return users_of(database, kind, id); });
  }
  base::Result<std::vector<Summary>> same_as(Kind kind, const std::string& body) override {
    const auto canonical = canonical_json(body);
    if (!canonical) return canonical.problems();
    return read<std::vector<Summary>>(
        [&](Database& database) { return marked(database, kind, fingerprint(canonical.value())); });
  }
  base::Result<std::vector<User>> users() override {
    return read<std::vector<User>>([](Database& database) { return all_users(database); });
  }
  base::Result<std::optional<User>> user(const std::string& id) override {
    return read<std::optional<User>>([&](Database& database) { return find_user(database, id); });
  }
  base::Result<std::optional<User>> user_named(const std::string& name) override {
    return read<std::optional<User>>(
        [&](Database& database) { return find_user_named(database, name); });
  }
  base::Result<std::optional<Session>> session(const std::string& token) override {
    return read<std::optional<Session>>(
        [&](Database& database) { return find_session(database, token, seconds()); });
  }
  base::Result<std::optional<std::string>> setting(const std::string& key) override {
    return read<std::optional<std::string>>(
        [&](Database& database) { return find_setting(database, key); });
  }
  base::Result<std::vector<std::pair<std::string, std::string>>> settings() override {
    return read<std::vector<std::pair<std::string, std::string>>>(
        [](Database& database) { return all_settings(database); });
  }

 protected:
  /// Does the work with a database in one state, or says why it could not.
  virtual std::optional<base::Problem> reading(const std::function<void(Database&)>& work) = 0;
  /// The clock, seconds since 1970.
  virtual std::int64_t seconds() const = 0;

 private:
  template <class T, class Work>
  base::Result<T> read(const Work& work) {
    std::optional<T> found;
    if (auto problem = reading([&](Database& database) { found.emplace(work(database)); })) {
      return *std::move(problem);
    }
    return *std::move(found);
  }
};

/// Base is Writer or Repository.
template <class Base>
class Writes : public Reads<Base> {
 public:
  base::Result<Document> create(Kind kind, const std::optional<std::string>& id, const Draft& draft,
                                const Act& act) override {
    return write<Document>(
        [&](Database& database) { return create_document(database, kind, id, draft, act, now()); });
  }
  base::Result<Changed> replace(Kind kind, const std::string& id, std::int64_t expected,
                                const Draft& draft, const Act& act) override {
    return write<Changed>([&](Database& database) {
      return replace_document(database, {kind, id}, expected, draft, act, now());
    });
  }
  base::Result<Changed> remove(Kind kind, const std::string& id, std::int64_t expected,
                               const Act& act) override {
    return write<Changed>([&](Database& database) {
      return remove_document(database, {kind, id}, expected, act, now());
    });
  }
  base::Result<Changed> restore(Kind kind, const std::string& id, std::int64_t version,
                                std::int64_t expected, const Act& act) override {
    return write<Changed>([&](Database& database) {
      return restore_document(database, {kind, id}, version, expected, act, now());
    });
  }
  base::Result<bool> erase(Kind kind, const std::string& id) override {
    return write<bool>([&](Database& database) { return erase_document(database, {kind, id}); });
  }
  base::Result<User> add_user(const std::string& name, Role role,
                              const std::string& password_hash) override {
    return write<User>([&](Database& database) {
      return insert_user(database, name, role, password_hash, this->seconds());
    });
  }
  base::Result<User> change_user(const User& user) override {
    return write<User>([&](Database& database) { return update_user(database, user); });
  }
  base::Result<bool> remove_user(const std::string& id) override {
    return write<bool>([&](Database& database) { return delete_user(database, id); });
  }
  base::Result<User> note_sign_in(const std::string& user_id, bool right) override {
    return write<User>([&](Database& database) {
      return count_sign_in(database, user_id, right, this->seconds());
    });
  }
  base::Result<NewSession> start_session(const std::string& user_id,
                                         std::chrono::seconds lasts) override {
    return write<NewSession>([&](Database& database) {
      return insert_session(database, user_id, lasts.count(), this->seconds());
    });
  }
  base::Result<std::optional<Session>> see_session(const std::string& token) override {
    auto found = this->session(token);
    if (!found || !found.value()) return found;
    if (found.value()->seen_at > stamp_of(this->seconds() - kSeenGrid)) return found;
    auto seen = write<std::optional<Session>>(
        [&](Database& database) -> base::Result<std::optional<Session>> {
          mark_seen(database, token, this->seconds());
          return find_session(database, token, this->seconds());
        });
    return seen ? seen : found;  // a full disk must not sign anybody out
  }
  base::Result<bool> end_session(const std::string& token) override {
    return write<bool>([&](Database& database) { return delete_session(database, token); });
  }
  base::Result<int> end_sessions_of(const std::string& user_id) override {
    return write<int>([&](Database& database) { return delete_sessions_of(database, user_id); });
  }
  base::Result<int> clear_expired_sessions() override {
    return write<int>(
        [&](Database& database) { return delete_expired_sessions(database, this->seconds()); });
  }
  base::Result<bool> set_setting(const std::string& key, const std::string& value) override {
    return write<bool>([&](Database& database) { return put_setting(database, key, value); });
  }
  base::Result<bool> drop_setting(const std::string& key) override {
    return write<bool>([&](Database& database) { return delete_setting(database, key); });
  }

 protected:
  /// Does the work in a transaction and keeps what it wrote if it returns true; or says why it
  /// could not.
  virtual std::optional<base::Problem> writing(const std::function<bool(Database&)>& work) = 0;

 private:
  std::string now() const { return stamp_of(this->seconds()); }

  template <class T, class Work>
  base::Result<T> write(const Work& work) {
    std::optional<base::Result<T>> done;
    const auto keep = [&](Database& database) {
      done.emplace(work(database));
      return static_cast<bool>(*done);
    };
    if (auto problem = writing(keep)) return *std::move(problem);
    return *std::move(done);
  }
};

}  // namespace store
