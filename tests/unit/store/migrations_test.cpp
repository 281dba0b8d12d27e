// A file of every older shape opens, keeps what it held, and is backed up before it is changed.
#include <gtest/gtest.h>
#include <sqlite3.h>

#include "school.h"
#include "store/database.h"
#include "store/migrate.h"
#include "store_migrations.h"

namespace {

using namespace store_test;

// What a program of that shape would have written: a soup of two versions, used by a lesson.
void fill(Database& database, int shape) {
  database.run(R"(
    begin;
    insert into documents (kind, id, version, title, search, day, changed_at, changed_by, deleted)
      values ('dish', 'soup', 2, 'Soup', ' soup', null, '2026-09-01T08:00:00Z', 'hart', 0);
    insert into document_versions (kind, id, version, title, day, changed_at, changed_by, what, deleted, links, body)
      values ('dish', 'soup', 1, 'Soup', null, '2026-08-31T08:00:00Z', 'hart', 'Typed in', 0, '', '{"name":"Soup"}'),
             ('dish', 'soup', 2, 'Soup', null, '2026-09-01T08:00:00Z', 'hart', 'Longer', 0, '', '{"name":"Soup","minutes":9}');
    insert into documents (kind, id, version, title, search, day, changed_at, changed_by, deleted)
      values ('lesson', '7b', 1, '7B', ' 7b', '2026-09-22', '2026-09-01T08:00:00Z', '', 0);
    insert into document_versions (kind, id, version, title, day, changed_at, changed_by, what, deleted, links, body)
      values ('lesson', '7b', 1, '7B', '2026-09-22', '2026-09-01T08:00:00Z', '', '', 0, 'dish/soup', '{"title":"7B"}');
    insert into document_links values ('lesson', '7b', 'dish', 'soup');
    commit;)");
  if (shape >= 3) {
    database.run(R"(
      update documents set mark = content_mark((select body from document_versions v
        where v.kind = documents.kind and v.id = documents.id and v.version = documents.version)))");
  }
  if (shape >= 2) {
    database.run(R"(
      insert into users (id, name, name_key, role, password_hash, created_at)
        values ('u1', 'Ms Hart', 'ms hart', 'head', 'hash', '2026-08-31T08:00:00Z');
      insert into settings values ('school.zone', 'Europe/London');)");
  }
}

class Migrations : public SchoolTest, public testing::WithParamInterface<int> {};

TEST_P(Migrations, AFileOfAnOlderShapeKeepsWhatItHeld) {
  const std::string path = folder.file("old.benchbell");
  const int shape = GetParam();
  {
    Database database(path, Access::kWriteOrMake, 0);
    bring_to_shape(database, shape);
    fill(database, shape);
    EXPECT_EQ(shape_of(database), shape);
  }
  auto opened = open(path, options());
  const Document soup = *opened->get(Kind::kDish, "soup").value();
  EXPECT_EQ(soup.version, 2);
  EXPECT_EQ(soup.body, R"({"name":"Soup","minutes":9})");
  EXPECT_EQ(opened->history(Kind::kDish, "soup").value().size(), 2U);
  EXPECT_EQ(code(opened->remove(Kind::kDish, "soup", 2, by_hart())), "store.in_use");
  EXPECT_EQ(opened->same_as(Kind::kDish, R"({"minutes":9,"name":"Soup"})").value().size(), 1U);
  EXPECT_TRUE(opened->set_setting("a", "b"));
  if (shape >= 2) {
    EXPECT_EQ(opened->user_named("Ms Hart").value()->id, "u1");
    EXPECT_EQ(opened->setting("school.zone").value(), "Europe/London");
  }
  // A backup was made before the file was changed, and only if it was.
  EXPECT_EQ(opened->backups().value().size(), shape < newest_shape() ? 1U : 0U);
  opened.reset();
  Database database(path, Access::kRead, 0);
  EXPECT_EQ(shape_of(database), newest_shape());
  EXPECT_EQ(database.number("pragma application_id"), kApplicationId);
  EXPECT_EQ(database.text("pragma integrity_check"), "ok");
  Statement strays(database, "pragma foreign_key_check");
  EXPECT_FALSE(strays.step());
}

INSTANTIATE_TEST_SUITE_P(FromEveryShape, Migrations, testing::Range(1, newest_shape() + 1));

// The shape of a new file and of one that came all the way, compared as the database tells it.
TEST_F(SchoolTest, AllWaysLeadToOneShape) {
  const auto shape_text = [](Database& database) {
    std::string all;
    Statement rows(database,
                   "select sql from sqlite_schema where sql is not null order by type, name");
    while (rows.step()) all += rows.column<std::string>(0) + "\n";
    return all;
  };
  const std::string path = folder.file("old.benchbell");
  {
    Database database(path, Access::kWriteOrMake, 0);
    for (int step = 1; step <= newest_shape(); ++step) bring_to_shape(database, step);
  }
  school.reset();
  Database fresh(folder.file(), Access::kRead, 0);
  Database old(path, Access::kRead, 0);
  EXPECT_EQ(shape_text(fresh), shape_text(old));
  EXPECT_NE(shape_text(fresh).find("document_links"), std::string::npos);
}

// The rules that stand in the file itself, whoever writes to it.
TEST_F(SchoolTest, TheFileItselfRefusesWhatCannotBe) {
  kept(Kind::kDish, dish("Soup"));
  kept(Kind::kLesson, lesson("7B", "2026-11-17", {{Kind::kDish, "soup"}}));
  school.reset();
  Database database(folder.file(), Access::kWrite, 0);
  const auto refused = [&](const char* sql) {
    try {
      database.run(sql);
    } catch (const DatabaseError& error) {
      return error.primary() == SQLITE_CONSTRAINT;
    }
    return false;
  };
  EXPECT_TRUE(refused("delete from documents where id = 'soup'"));          // a lesson uses it
  EXPECT_TRUE(refused("delete from document_versions where id = 'soup'"));  // its head names it
  EXPECT_TRUE(refused("update documents set version = 0"));
  EXPECT_TRUE(refused("update documents set version = 'two'"));  // strict: not a number
  EXPECT_TRUE(refused("update documents set day = 'tomorrow'"));
  EXPECT_TRUE(refused("update documents set kind = 'menu'"));
  EXPECT_TRUE(refused("insert into document_links values ('lesson', '7b', 'dish', 'stew')"));
  EXPECT_TRUE(refused("insert into sessions values ('short', 'nobody', '', '', '', '')"));
  EXPECT_FALSE(refused("update documents set day = '2026-11-18' where id = '7b'"));
}

TEST(Database, ParametersAreBoundByNameWhateverTheirOrder) {
  Database database(":memory:", Access::kWriteOrMake, 0);
  Statement statement(database, "select $2 || $1, $3, $4");
  statement.bind("$1", "one")
      .bind("$2", "two")
      .bind("$3", std::optional<std::int64_t>())
      .bind("$4", 7);
  ASSERT_TRUE(statement.step());
  EXPECT_EQ(statement.column<std::string>(0), "twoone");
  EXPECT_FALSE(statement.column<std::optional<std::int64_t>>(1));
  EXPECT_EQ(statement.column<std::optional<int>>(2), 7);
  EXPECT_THROW(static_cast<void>(statement.column<std::string>(1)), std::logic_error);
  EXPECT_THROW(statement.bind("$9", 1), std::logic_error);
  EXPECT_FALSE(statement.step());
}

TEST(Database, ATransactionThatIsNotCommittedIsUndone) {
  Database database(":memory:", Access::kWriteOrMake, 0);
  database.run("create table t (a integer) strict");
  {
    const Transaction transaction(database, Transaction::For::kWriting);
    database.run("insert into t values (1)");
  }
  EXPECT_EQ(database.number("select count(*) from t"), 0);
  {
    Transaction transaction(database, Transaction::For::kWriting);
    database.run("insert into t values (1)");
    transaction.commit();
  }
  EXPECT_EQ(database.number("select count(*) from t"), 1);
}

TEST(Database, TextsWithAnyLettersComeBackAsTheyWere) {
  Database database(":memory:", Access::kWriteOrMake, 0);
  Statement statement(database, "select $1");
  const std::string text("a\0b 😀", 8);
  statement.bind("$1", text);
  ASSERT_TRUE(statement.step());
  EXPECT_EQ(statement.column<std::string>(0), text);
}

}  // namespace
