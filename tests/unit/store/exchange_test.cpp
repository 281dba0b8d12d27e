// Everything out as one zip, and in again: the same bytes each time, nothing secret, nothing by
// halves, and no trick.
#include "store/exchange.h"

#include <gtest/gtest.h>
#include <zip.h>

#include <algorithm>
#include <map>

#include "school.h"
#include "store/stamp.h"

namespace {

using namespace store_test;

/// A zip as somebody else's program would write it.
std::string zipped(const std::vector<std::pair<std::string, std::string>>& files,
                   const char* password = nullptr) {
  zip_error_t error;
  zip_error_init(&error);
  zip_source_t* memory = zip_source_buffer_create(nullptr, 0, 0, &error);
  zip_source_keep(memory);
  zip_t* archive = zip_open_from_source(memory, ZIP_TRUNCATE, &error);
  for (const auto& [name, text] : files) {
    zip_source_t* bytes = zip_source_buffer(archive, text.data(), text.size(), 0);
    const auto index = zip_file_add(archive, name.c_str(), bytes, ZIP_FL_ENC_GUESS);
    EXPECT_GE(index, 0) << name;
    if (password != nullptr) {
      zip_file_set_encryption(archive, static_cast<zip_uint64_t>(index), ZIP_EM_AES_256, password);
    }
  }
  EXPECT_EQ(zip_close(archive), 0);
  zip_stat_t stat;
  zip_source_stat(memory, &stat);
  std::string out(stat.size, '\0');
  zip_source_open(memory);
  zip_source_read(memory, out.data(), out.size());
  zip_source_close(memory);
  zip_source_free(memory);
  return out;
}

std::string replaced_bytes(std::string text, const std::string& from, const std::string& to) {
  for (auto at = text.find(from); at != std::string::npos; at = text.find(from, at + to.size())) {
    text.replace(at, from.size(), to);
  }
  return text;
}

class Exchange : public SchoolTest {
 protected:
  std::unique_ptr<Repository> other = open(folder.file("other.benchbell"), options());

  void furnish(Repository& into) {
    const auto make = [&](Kind kind, const Draft& draft) {
      const auto made = into.create(kind, {}, draft, by_hart());
      ASSERT_TRUE(made) << made.problems()[0].message;
    };
    make(Kind::kRoom, {R"({"kind":"room","name":"Food Room 1"})", {}, "", {}});
    make(Kind::kDish, dish("Soup", 10));
    make(Kind::kDish, dish("Crème brûlée", 40));
    make(Kind::kLesson, lesson("7B, first time at the hob", "2026-11-17",
                               {{Kind::kDish, "soup"}, {Kind::kRoom, "food-room-1"}}));
    make(Kind::kPlan, {R"({"answer":1.50})",
                       {{Kind::kLesson, "7b-first-time-at-the-hob"}},
                       "Plan of 7B",
                       "2026-11-17"});
  }
  std::vector<std::string> codes(const std::string& zip) {
    std::vector<std::string> out;
    const auto seen = preview_import(*other, zip);
    if (seen) return out;
    for (const auto& each : seen.problems()) {
      out.push_back(each.code);
      EXPECT_FALSE(each.message.empty());
      EXPECT_FALSE(each.remedy.empty());
    }
    // What cannot be looked at cannot be taken in either, and nothing of it is.
    EXPECT_EQ(code(import_zip(*other, zip, {}, by_hart())), out.front());
    EXPECT_TRUE(other->list(Kind::kDish).value().empty());
    return out;
  }
};

TEST_F(Exchange, AWholeSchoolMovesHouse) {
  furnish(*school);
  const std::string zip = export_zip(*school).value();
  const auto seen = preview_import(*other, zip).value();
  EXPECT_EQ(seen.fresh, 5U);
  EXPECT_TRUE(other->list(Kind::kDish).value().empty());  // looking writes nothing
  const auto done = import_zip(*other, zip, {}, by_hart("Moved house")).value();
  EXPECT_EQ(done.created, 5U);
  const Document plan = *other->get(Kind::kPlan, "plan-of-7b").value();
  EXPECT_EQ(plan.title, "Plan of 7B");
  EXPECT_EQ(plan.day, "2026-11-17");
  EXPECT_EQ(plan.links, (std::vector<Ref>{{Kind::kLesson, "7b-first-time-at-the-hob"}}));
  EXPECT_EQ(other->history(Kind::kPlan, "plan-of-7b").value()[0].what, "Moved house");
  EXPECT_EQ(code(other->remove(Kind::kDish, "soup", 1, by_hart())), "store.in_use");
  // And out of there come the same bytes.
  EXPECT_EQ(export_zip(*other).value(), zip);
}

TEST_F(Exchange, TheSameDocumentsGiveTheSameBytesWheneverAndHoweverTheyCame) {
  furnish(*school);
  now += 86'400 * 30;
  furnish(*other);
  // Another way to the same: changed and changed back, and one that came and went.
  ASSERT_TRUE(other->replace(Kind::kDish, "soup", 1, dish("Soup", 11), by_hart()));
  ASSERT_TRUE(other->replace(
      Kind::kDish, "soup", 2,
      {"{ \"kind\": \"dish\",\n \"version\": 1, \"name\": \"Soup\", \"minutes\": 10 }", {}, "", {}},
      by_hart()));
  ASSERT_TRUE(other->create(Kind::kDish, {}, dish("Stew"), by_hart()));
  ASSERT_TRUE(other->remove(Kind::kDish, "stew", 1, by_hart()));
  const std::string zip = export_zip(*school).value();
  EXPECT_EQ(export_zip(*other).value(), zip);
  EXPECT_EQ(export_zip(*school).value(), zip);
}

TEST_F(Exchange, PeoplePasswordsSessionsAndSettingsAreNeverInIt) {
  furnish(*school);
  const std::string before = export_zip(*school).value();
  const User user = school->add_user("Quentin Quillfeather", Role::kHead, "secret-hash").value();
  ASSERT_TRUE(school->start_session(user.id, std::chrono::hours(8)));
  ASSERT_TRUE(school->set_setting("mail.password", "secret-setting"));
  EXPECT_EQ(export_zip(*school).value(), before);
}

TEST_F(Exchange, WhatCanBeKeptCanMoveHouseHoweverLongItIsLaidOut) {
  // Sixty brackets deep every figure gets a line of 120 spaces: two megabytes become sixty.
  std::string text = R"({"name":"Deep","list":)" + std::string(60, '[') + "1";
  for (int i = 0; i < 500'000; ++i) text += ",12";
  text += std::string(60, ']') + "}";
  ASSERT_TRUE(school->create(Kind::kRecord, {}, {text, {}, "", {}}, by_hart()));
  const std::string zip = export_zip(*school).value();
  ASSERT_TRUE(import_zip(*other, zip, {}, by_hart()));
  EXPECT_EQ(other->get(Kind::kRecord, "deep").value()->body, text);
}

TEST_F(Exchange, OnlySomeKindsAndTheirLinksAmongThemselves) {
  furnish(*school);
  const std::string zip = export_zip(*school, {Kind::kDish, Kind::kLesson}).value();
  EXPECT_EQ(import_zip(*other, zip, {}, by_hart()).value().created, 3U);
  EXPECT_EQ(other->get(Kind::kLesson, "7b-first-time-at-the-hob").value()->links,
            (std::vector<Ref>{{Kind::kDish, "soup"}}));
}

TEST_F(Exchange, WhatIsNewTheSameTwinOrDifferentIsToldBefore) {
  furnish(*school);
  furnish(*other);
  const std::string zip = export_zip(*school).value();
  ASSERT_TRUE(other->replace(Kind::kDish, "creme-brulee", 1, dish("Crème brûlée", 45), by_hart()));
  ASSERT_TRUE(school->create(Kind::kDish, {}, dish("Scones", 12), by_hart()));
  ASSERT_TRUE(other->create(Kind::kDish, "our-scones", dish("Scones", 12), by_hart()));
  const auto seen = preview_import(*other, export_zip(*school).value()).value();
  std::map<std::string, Arriving> by_id;
  for (const auto& each : seen.documents) by_id[each.id] = each;
  EXPECT_EQ(by_id["soup"].arrival, Arrival::kSame);
  EXPECT_EQ(by_id["creme-brulee"].arrival, Arrival::kDiffers);
  EXPECT_EQ(by_id["creme-brulee"].our_version, 2);
  EXPECT_EQ(by_id["scones"].arrival, Arrival::kTwin);
  EXPECT_EQ(by_id["scones"].like, "our-scones");
  EXPECT_EQ(seen.same, 4U);
  EXPECT_EQ(seen.differing, 1U);
  EXPECT_EQ(seen.twins, 1U);
}

TEST_F(Exchange, OursStayUnlessTheirsAreWanted) {
  furnish(*school);
  furnish(*other);
  ASSERT_TRUE(other->replace(Kind::kDish, "soup", 1, dish("Soup", 99), by_hart()));
  ASSERT_TRUE(other->replace(Kind::kDish, "creme-brulee", 1, dish("Crème brûlée", 99), by_hart()));
  const std::string zip = export_zip(*school).value();
  EXPECT_EQ(import_zip(*other, zip, {}, by_hart()).value().left, 5U);
  EXPECT_EQ(other->get(Kind::kDish, "soup").value()->version, 2);
  ImportChoice choice;
  choice.except = {{Kind::kDish, "soup"}};
  EXPECT_EQ(import_zip(*other, zip, choice, by_hart()).value().replaced, 1U);
  EXPECT_EQ(other->get(Kind::kDish, "soup").value()->body, dish("Soup", 10).body);
  EXPECT_EQ(other->get(Kind::kDish, "soup").value()->version, 3);  // undo is one step away
  choice.take_theirs = true;
  choice.except.clear();
  EXPECT_EQ(import_zip(*other, zip, choice, by_hart()).value().replaced, 1U);
  EXPECT_EQ(export_zip(*other).value(), zip);
}

TEST_F(Exchange, ADishTypedInTwiceIsNotTakenTwiceUnlessALessonNamesIt) {
  ASSERT_TRUE(school->create(Kind::kDish, {}, dish("Soup", 10), by_hart()));
  ASSERT_TRUE(other->create(Kind::kDish, "our-soup", dish("Soup", 10), by_hart()));
  EXPECT_EQ(import_zip(*other, export_zip(*school).value(), {}, by_hart()).value().left, 1U);
  ImportChoice both;
  both.except = {{Kind::kDish, "soup"}};
  ASSERT_TRUE(school->create(Kind::kLesson, {}, lesson("7B", "2026-11-17", {{Kind::kDish, "soup"}}),
                             by_hart()));
  EXPECT_EQ(import_zip(*other, export_zip(*school).value(), {}, by_hart()).value().created, 2U);
  EXPECT_TRUE(other->get(Kind::kDish, "soup").value());
}

TEST_F(Exchange, WhatWasRemovedHereComesBackWithItsHistory) {
  furnish(*school);
  const std::string zip = export_zip(*school).value();
  const auto id = std::string("creme-brulee");
  ASSERT_TRUE(school->remove(Kind::kDish, id, 1, by_hart()));
  EXPECT_EQ(preview_import(*school, zip).value().fresh, 1U);
  EXPECT_EQ(import_zip(*school, zip, {}, by_hart()).value().created, 1U);
  EXPECT_EQ(school->history(Kind::kDish, id).value().size(), 3U);
}

TEST_F(Exchange, DocumentsThatUseEachOtherInACircleArriveWhole) {
  ASSERT_TRUE(school->create(Kind::kScheme, {}, {R"({"title":"A"})", {}, "", {}}, by_hart()));
  ASSERT_TRUE(school->create(Kind::kScheme, {},
                             {R"({"title":"B"})", {{Kind::kScheme, "a"}}, "", {}}, by_hart()));
  ASSERT_TRUE(school->create(Kind::kScheme, {},
                             {R"({"title":"C"})", {{Kind::kScheme, "b"}}, "", {}}, by_hart()));
  ASSERT_TRUE(school->replace(
      Kind::kScheme, "a", 1,
      {R"({"title":"A"})", {{Kind::kScheme, "c"}, {Kind::kScheme, "a"}}, "", {}}, by_hart()));
  const std::string zip = export_zip(*school).value();
  ASSERT_TRUE(import_zip(*other, zip, {}, by_hart()));
  EXPECT_EQ(export_zip(*other).value(), zip);
}

TEST_F(Exchange, WhatChangedSinceThePreviewIsNoticed) {
  furnish(*school);
  const std::string zip = export_zip(*school).value();
  ImportChoice choice;
  choice.mark = preview_import(*other, zip).value().mark;
  ASSERT_TRUE(other->create(Kind::kDish, {}, dish("Soup", 77), by_hart()));
  EXPECT_EQ(code(import_zip(*other, zip, choice, by_hart())), "store.import_stale");
  EXPECT_EQ(other->list(Kind::kDish).value().size(), 1U);
  choice.mark = preview_import(*other, zip).value().mark;
  EXPECT_TRUE(import_zip(*other, zip, choice, by_hart()));
}

TEST_F(Exchange, AZipMadeByHandIsTakenIn) {
  const std::string zip = zipped({{"dish/", ""},
                                  {"dish/my-soup.json", dish("My soup").body},
                                  {"__MACOSX/dish/._my-soup.json", "rubbish"},
                                  {"dish/.DS_Store", "rubbish"},
                                  {"lesson/7b.json", lesson("7B", "2026-11-17").body}});
  EXPECT_EQ(import_zip(*other, zip, {}, by_hart()).value().created, 2U);
  EXPECT_EQ(other->get(Kind::kLesson, "7b").value()->day, "2026-11-17");
}

TEST_F(Exchange, AZipMadeByHandLeavesLinksAsTheyAre) {
  furnish(*other);
  const std::string zip = zipped(
      {{"lesson/7b-first-time-at-the-hob.json", lesson("7B again", "2026-11-24").body}});
  ImportChoice choice;
  choice.take_theirs = true;
  ASSERT_TRUE(import_zip(*other, zip, choice, by_hart()));
  const Document after = *other->get(Kind::kLesson, "7b-first-time-at-the-hob").value();
  EXPECT_EQ(after.title, "7B again");
  EXPECT_EQ(after.links.size(), 2U);
}

using Codes = std::vector<std::string>;

TEST_F(Exchange, RubbishIsNoZip) {
  EXPECT_EQ(codes("hello"), (Codes{"zip.not_a_zip"}));
  EXPECT_EQ(codes(""), (Codes{"zip.not_a_zip"}));
  furnish(*school);
  const std::string zip = export_zip(*school).value();
  EXPECT_EQ(codes(zip.substr(0, zip.size() / 2)), (Codes{"zip.not_a_zip"}));
}

TEST_F(Exchange, ADamagedPartIsNamed) {
  std::string zip = zipped({{"dish/soup.json", R"({"name":"Soup","text":"abcdefgh"})"}});
  const auto at = zip.find("abcdefgh");
  if (at == std::string::npos) {  // packed: spoil a byte of what is packed
    zip[40 + 14] = static_cast<char>(zip[40 + 14] ^ 0x55);
  } else {
    zip[at] = 'z';
  }
  EXPECT_EQ(codes(zip), (Codes{"zip.unreadable"}));
}

TEST_F(Exchange, NamesThatPointOutOfTheZipAreRefused) {
  const std::string text = dish("Soup").body;
  for (const char* name : {"../dish/soup.json", "dish/../soup.json", "/dish/soup.json",
                           "dish\\soup.json", "c:/dish/soup.json", "dish/..json"}) {
    EXPECT_EQ(codes(zipped({{name, text}})), (Codes{"zip.path"})) << name;
  }
}

TEST_F(Exchange, WrongFoldersNamesAndKindsAreAllToldAtOnce) {
  const std::string zip = zipped({{"menu/soup.json", dish("Soup").body},
                                  {"readme.txt", "hello"},
                                  {"dish/Not Good.json", dish("Soup").body},
                                  {"dish/soup.txt", dish("Soup").body},
                                  {"dish/a/b.json", dish("Soup").body},
                                  {"dish/room.json", R"({"kind":"room","name":"Food Room 1"})"},
                                  {"dish/no-name.json", "{}"},
                                  {"dish/no-json.json", "{"}});
  Codes found = codes(zip);
  std::sort(found.begin(), found.end());
  EXPECT_EQ(found, (Codes{"store.body", "store.kind_differs", "store.no_title", "zip.kind",
                          "zip.kind", "zip.name", "zip.name", "zip.name"}));
  EXPECT_EQ(codes(zipped({{"dish/", ""}})), (Codes{"zip.empty"}));
}

TEST_F(Exchange, ABombIsNotUnpacked) {
  // Nine megabytes of one letter pack into nine kilobytes; one document may have eight.
  const std::string zip = zipped({{"dish/soup.json", std::string(9U << 20U, ' ')}});
  EXPECT_LT(zip.size(), 20'000U);
  EXPECT_EQ(codes(zip), (Codes{"zip.bomb"}));
  // Forty of seven megabytes: each may be, all together may not.
  std::vector<std::pair<std::string, std::string>> many;
  for (int i = 0; i < 40; ++i)
    many.emplace_back("dish/d" + std::to_string(i) + ".json", std::string(7U << 20U, ' '));
  EXPECT_EQ(codes(zipped(many)), (Codes{"zip.bomb"}));
  EXPECT_EQ(codes(std::string(kLargestZip + 1, 'x')), (Codes{"zip.too_big"}));
}

TEST_F(Exchange, ABombThatUnderstatesItselfIsNotUnpackedEither) {
  // The size stands in the local head and in the list at the end, each time little-endian; both say
  // 100 bytes instead of nine megabytes. Refused as a bomb or as damaged, but never unpacked.
  const std::string honest = zipped({{"dish/soup.json", std::string(9U << 20U, ' ')}});
  const std::string size("\x00\x00\x90\x00", 4);
  const std::string lie = replaced_bytes(honest, size, std::string("\x64\x00\x00\x00", 4));
  ASSERT_NE(lie, honest);
  const Codes found = codes(lie);
  ASSERT_EQ(found.size(), 1U);
  EXPECT_TRUE(found[0] == "zip.bomb" || found[0] == "zip.unreadable" || found[0] == "zip.not_a_zip")
      << found[0];
}

TEST_F(Exchange, TooManyFilesAreRefused) {
  std::vector<std::pair<std::string, std::string>> many;
  for (std::size_t i = 0; i <= kMostEntries; ++i)
    many.emplace_back("dish/d" + std::to_string(i) + ".json", "");
  EXPECT_EQ(codes(zipped(many)), (Codes{"zip.too_many"}));
}

TEST_F(Exchange, OneNameTwiceIsRefused) {
  const std::string zip = replaced_bytes(
      zipped({{"dish/soup.json", dish("Soup").body}, {"dish/soap.json", dish("Soap").body}}),
      "dish/soap", "dish/soup");
  EXPECT_EQ(codes(zip), (Codes{"zip.twice"}));
}

TEST_F(Exchange, ALockedZipIsRefused) {
  EXPECT_EQ(codes(zipped({{"dish/soup.json", dish("Soup").body}}, "beetroot")),
            (Codes{"zip.encrypted"}));
}

TEST_F(Exchange, AListThatDoesNotFitIsRefused) {
  const auto with = [&](const std::string& contents) {
    return codes(zipped({{"contents.json", contents}, {"dish/soup.json", dish("Soup").body}}));
  };
  EXPECT_EQ(with("["), (Codes{"zip.contents"}));
  EXPECT_EQ(with(R"({"kind":"contents","version":2,"documents":[]})"), (Codes{"zip.contents"}));
  EXPECT_EQ(with(R"({"kind":"contents","version":1,"documents":[7]})"), (Codes{"zip.contents"}));
  EXPECT_EQ(
      with(
          R"({"kind":"contents","version":1,"documents":[{"document":"dish/stew","title":"Stew"}]})"),
      (Codes{"zip.contents"}));
  EXPECT_EQ(
      with(
          R"({"kind":"contents","version":1,"documents":[{"document":"dish/soup","title":"Soup","uses":["room/none"]}]})"),
      (Codes{"zip.link"}));
  EXPECT_EQ(
      with(
          R"({"kind":"contents","version":1,"documents":[{"document":"dish/soup","title":"Soup","uses":["../x"]}]})"),
      (Codes{"zip.contents"}));
}

TEST(Stamps, AreThoseOfTheCalendar) {
  // 1e9 seconds: 9 September 2001, 01:46:40 UTC (as `date -u -d @1000000000` says).
  EXPECT_EQ(stamp_of(1'000'000'000), "2001-09-09T01:46:40Z");
  EXPECT_EQ(stamp_of(1'709'164'799), "2024-02-28T23:59:59Z");
  EXPECT_EQ(stamp_of(1'709'164'800), "2024-02-29T00:00:00Z");
}

TEST(Fingerprints, AreBlake2b) {
  // As `printf abc | b2sum -l 256` (GNU coreutils) says.
  EXPECT_EQ(fingerprint("abc"), "bddd813c634239723171ef3fee98579b94964e3bb1cb3e427262c8c068d52319");
  EXPECT_NE(random_letters(16), random_letters(16));
  EXPECT_EQ(random_letters(16).size(), 32U);
}

}  // namespace
