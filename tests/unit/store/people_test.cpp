// People who may sign in, their passwords, their sessions, and the settings.
#include <gtest/gtest.h>

#include <atomic>
#include <fstream>
#include <iterator>
#include <thread>
#include <vector>

#include "school.h"
#include "store/password.h"

namespace {

using namespace store_test;

class People : public SchoolTest {
 protected:
  User hart = school->add_user("Ms Hart", Role::kHead, "hash").value();
};

TEST_F(People, APersonIsFoundHoweverTheNameIsTyped) {
  EXPECT_EQ(school->user_named("  ms  HART ").value(), hart);
  EXPECT_EQ(school->user(hart.id).value(), hart);
  EXPECT_FALSE(school->user_named("Mr Hart").value());
  EXPECT_EQ(hart.role, Role::kHead);
  EXPECT_EQ(hart.created_at, "2026-11-17T09:05:00Z");
}

TEST_F(People, NoTwoPeopleHaveOneName) {
  EXPECT_EQ(code(school->add_user("MS HART", Role::kTeacher, "x")), "store.name_taken");
  EXPECT_EQ(code(school->add_user("  ", Role::kTeacher, "x")), "store.no_name");
  EXPECT_EQ(code(school->add_user("a\nb", Role::kTeacher, "x")), "store.no_name");
  User doyle = school->add_user("Mrs Doyle", Role::kTechnician, "x").value();
  doyle.name = "Ms Hart";
  EXPECT_EQ(code(school->change_user(doyle)), "store.name_taken");
  doyle.name = "Mrs Doyle-Penn";
  EXPECT_EQ(school->change_user(doyle).value().name, "Mrs Doyle-Penn");
  EXPECT_EQ(school->users().value().size(), 2U);
}

TEST_F(People, WrongPasswordsAreCountedUntilARightOne) {
  EXPECT_EQ(school->note_sign_in(hart.id, false).value().failed, 1);
  now += 10;
  const User twice = school->note_sign_in(hart.id, false).value();
  EXPECT_EQ(twice.failed, 2);
  EXPECT_EQ(twice.failed_at, "2026-11-17T09:05:10Z");
  EXPECT_EQ(school->note_sign_in(hart.id, true).value().failed, 0);
  EXPECT_EQ(code(school->note_sign_in("nobody", false)), "store.not_found");
}

TEST_F(People, ASessionIsKnownByItsTokenUntilItEnds) {
  const NewSession made = school->start_session(hart.id, std::chrono::hours(8)).value();
  EXPECT_EQ(made.token.size(), 64U);
  EXPECT_EQ(made.csrf.size(), 64U);
  EXPECT_NE(made.token, made.csrf);
  const Session session = *school->session(made.token).value();
  EXPECT_EQ(session.user, hart);
  EXPECT_EQ(session.csrf, made.csrf);
  EXPECT_FALSE(school->session(made.token.substr(1)).value());
  EXPECT_FALSE(school->session("").value());
  now += 8 * 3600 - 1;
  EXPECT_TRUE(school->session(made.token).value());
  now += 1;
  EXPECT_FALSE(school->session(made.token).value());
  EXPECT_EQ(school->clear_expired_sessions().value(), 1);
}

TEST_F(People, LookingAtASessionMovesItsTimeOnlyEveryFiveMinutes) {
  const NewSession made = school->start_session(hart.id, std::chrono::hours(8)).value();
  now += 299;
  EXPECT_EQ(school->see_session(made.token).value()->seen_at, "2026-11-17T09:05:00Z");
  now += 1;
  EXPECT_EQ(school->see_session(made.token).value()->seen_at, "2026-11-17T09:10:00Z");
  EXPECT_EQ(school->session(made.token).value()->seen_at, "2026-11-17T09:10:00Z");
}

TEST_F(People, SigningOutEndsOneSessionANewPasswordAllOfThem) {
  const auto start = [&] { return school->start_session(hart.id, std::chrono::hours(8)).value(); };
  const NewSession first = start();
  const NewSession second = start();
  EXPECT_TRUE(school->end_session(first.token).value());
  EXPECT_FALSE(school->session(first.token).value());
  EXPECT_TRUE(school->session(second.token).value());
  hart.role = Role::kTeacher;
  ASSERT_TRUE(school->change_user(hart));
  EXPECT_TRUE(school->session(second.token).value());  // another role does not sign anybody out
  hart.password_hash = "another";
  ASSERT_TRUE(school->change_user(hart));
  EXPECT_FALSE(school->session(second.token).value());
  const NewSession third = start();
  EXPECT_EQ(school->end_sessions_of(hart.id).value(), 1);
  const NewSession fourth = start();
  EXPECT_TRUE(school->remove_user(hart.id).value());
  EXPECT_FALSE(school->session(third.token).value());
  EXPECT_FALSE(school->session(fourth.token).value());
  EXPECT_EQ(code(school->start_session(hart.id, std::chrono::hours(1))), "store.not_found");
}

TEST_F(People, AStolenFileHoldsNoToken) {
  const NewSession made = school->start_session(hart.id, std::chrono::hours(8)).value();
  school.reset();
  std::ifstream file(folder.file(), std::ios::binary);
  const std::string bytes((std::istreambuf_iterator<char>(file)), {});
  EXPECT_NE(bytes.find(made.csrf), std::string::npos);  // the file was really read
  EXPECT_EQ(bytes.find(made.token), std::string::npos);
}

TEST_F(People, SettingsAreKeptByName) {
  EXPECT_FALSE(school->setting("school.zone").value());
  EXPECT_TRUE(school->set_setting("school.zone", "Europe/London"));
  EXPECT_TRUE(school->set_setting("school.zone", "Europe/Dublin"));
  EXPECT_TRUE(school->set_setting("clock", ""));
  EXPECT_EQ(school->setting("school.zone").value(), "Europe/Dublin");
  EXPECT_EQ(school->setting("clock").value(), "");
  EXPECT_EQ(school->settings().value().size(), 2U);
  EXPECT_TRUE(school->drop_setting("clock").value());
  EXPECT_FALSE(school->drop_setting("clock").value());
  EXPECT_EQ(code(school->set_setting("No Good", "x")), "store.bad_key");
  EXPECT_EQ(code(school->set_setting("a", std::string(70'000, 'x'))), "store.setting_too_big");
}

TEST(Passwords, TheRightOneFitsAndNoOther) {
  const auto hash = hash_password("beetroot on a Tuesday").value();
  EXPECT_TRUE(password_fits(hash, "beetroot on a Tuesday"));
  EXPECT_FALSE(password_fits(hash, "beetroot on a tuesday"));
  EXPECT_FALSE(password_fits(hash, ""));
  EXPECT_FALSE(password_is_outdated(hash));
  EXPECT_NE(hash, hash_password("beetroot on a Tuesday").value());  // salted
  // 19 MiB is 19,456 KiB; the text of a hash is libsodium's (crypto_pwhash_str).
  EXPECT_TRUE(hash.starts_with("$argon2id$v=19$m=19456,t=3,p=1$")) << hash;
}

TEST(Passwords, ATextThatIsNoHashNeverFits) {
  const auto hash = hash_password("beetroot on a Tuesday").value();
  std::vector<std::string> wrong{"",
                                 "beetroot on a Tuesday",
                                 "$argon2id$",
                                 hash.substr(1),
                                 hash.substr(0, hash.size() - 1),
                                 hash + "A",
                                 "$argon2id$v=19$m=19456,t=3,p=1$$",
                                 std::string(500, '$'),
                                 "$argon2i$v=19$m=19456,t=3,p=1$" + hash.substr(31)};
  // Four gigabytes of memory, or a day of work, for one sign-in: not ours.
  wrong.push_back("$argon2id$v=19$m=4194304,t=3,p=1$" + hash.substr(31));
  wrong.push_back("$argon2id$v=19$m=19456,t=99999999,p=1$" + hash.substr(31));
  wrong.push_back("$argon2id$v=19$m=99999999999999999999,t=3,p=1$" + hash.substr(31));
  for (const auto& each : wrong) {
    EXPECT_FALSE(password_fits(each, "beetroot on a Tuesday")) << each;
    EXPECT_TRUE(password_is_outdated(each) || each.starts_with(hash.substr(0, 31))) << each;
  }
  std::string changed = hash;
  changed.back() = changed.back() == 'A' ? 'B' : 'A';
  EXPECT_FALSE(password_fits(changed, "beetroot on a Tuesday"));
  EXPECT_FALSE(password_of_nobody("beetroot on a Tuesday"));
}

TEST(Passwords, ShortOnesAndWholeBooksAreRefused) {
  EXPECT_EQ(code(hash_password("seven77")), "password.too_short");
  EXPECT_EQ(code(hash_password("ééééééé")), "password.too_short");  // letters, not bytes
  EXPECT_EQ(code(hash_password(std::string(2000, 'x'))), "password.too_long");
  EXPECT_EQ(code(hash_password("beetroot \xFF\xFE")), "password.not_text");
}

TEST(Passwords, ACrowdAtTheDoorIsLetInTwoAtATime) {
  const auto hash = hash_password("beetroot on a Tuesday").value();
  std::atomic<int> fitted{0};
  std::vector<std::thread> crowd;
  for (int i = 0; i < 6; ++i) {
    crowd.emplace_back([&] { fitted += password_fits(hash, "beetroot on a Tuesday") ? 1 : 0; });
  }
  for (auto& each : crowd) each.join();
  EXPECT_EQ(fitted, 6);
}

}  // namespace
