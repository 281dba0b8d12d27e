// Documents: made, changed, removed, brought back, found, and linked.
#include <gtest/gtest.h>

#include <fstream>
#include <iterator>
#include <thread>

#include "school.h"

namespace {

using namespace store_test;
using testing::Test;

class Documents : public SchoolTest {};

TEST_F(Documents, ADishIsKeptUnderAWordMadeFromItsName) {
  const Document made = kept(Kind::kDish, dish("Crème brûlée, for 7B"));
  EXPECT_EQ(made.id, "creme-brulee-for-7b");
  EXPECT_EQ(made.version, 1);
  EXPECT_EQ(made.title, "Crème brûlée, for 7B");
  EXPECT_EQ(made.changed_at, "2026-11-17T09:05:00Z");
  EXPECT_EQ(made.changed_by, "hart");
  EXPECT_EQ(school->get(Kind::kDish, made.id).value(), made);
}

TEST_F(Documents, TwoDishesOfOneNameGetTwoWords) {
  EXPECT_EQ(kept(Kind::kDish, dish("Scones")).id, "scones");
  EXPECT_EQ(kept(Kind::kDish, dish("Scones")).id, "scones-2");
  EXPECT_EQ(kept(Kind::kRoom, {R"({"name":"Scones"})", {}, "", {}}).id, "scones");
  for (int i = 3; i <= 40; ++i) {
    const auto id = kept(Kind::kDish, dish("Scones")).id;
    if (i < 20) {
      EXPECT_EQ(id, "scones-" + std::to_string(i));
    }
  }
  EXPECT_EQ(school->list(Kind::kDish).value().size(), 40U);
}

TEST_F(Documents, AWordStaysTakenWhileItsDishIsRemovedAndIsGivenBackOnlyByName) {
  const Document scones = kept(Kind::kDish, dish("Scones"));
  done(school->remove(Kind::kDish, "scones", 1, by_hart("Took it out")));
  EXPECT_EQ(kept(Kind::kDish, dish("Scones")).id, "scones-2");
  const auto back = school->create(Kind::kDish, "scones", dish("Scones", 9), by_hart());
  ASSERT_TRUE(back);
  EXPECT_EQ(back.value().version, 3);  // made, removed, made again: one history
  EXPECT_EQ(school->history(Kind::kDish, "scones").value().size(), 3U);
}

TEST_F(Documents, AWordInUseIsRefused) {
  kept(Kind::kDish, dish("Scones"));
  const auto again = school->create(Kind::kDish, "scones", dish("Others"), by_hart());
  EXPECT_EQ(code(again), "store.id_taken");
}

TEST_F(Documents, EveryVersionCanStillBeRead) {
  const Document first = kept(Kind::kDish, dish("Soup", 10));
  now += 60;
  const Document second = done(
      school->replace(Kind::kDish, "soup", 1, dish("Soup", 15), {"doyle", "Simmers longer"}));
  EXPECT_EQ(second.version, 2);
  EXPECT_EQ(school->get(Kind::kDish, "soup", 1).value(), first);
  EXPECT_EQ(school->get(Kind::kDish, "soup").value(), second);
  EXPECT_FALSE(school->get(Kind::kDish, "soup", 3).value());
  const auto history = school->history(Kind::kDish, "soup").value();
  ASSERT_EQ(history.size(), 2U);
  EXPECT_EQ(history[0],
            (Change{2, "2026-11-17T09:06:00Z", "doyle", "Simmers longer", "Soup", false}));
  EXPECT_EQ(history[1].who, "hart");
}

TEST_F(Documents, WhoeverSavesSecondSeesTheOthersVersionAndLosesNothing) {
  kept(Kind::kDish, dish("Soup", 10));
  const Document theirs = done(
      school->replace(Kind::kDish, "soup", 1, dish("Soup", 12), by_hart()));
  const auto late = school->replace(Kind::kDish, "soup", 1, dish("Soup", 20), by_hart());
  ASSERT_TRUE(late);
  const auto* clash = std::get_if<Clash>(&late.value());
  ASSERT_NE(clash, nullptr);
  EXPECT_EQ(clash->current, theirs);
  EXPECT_EQ(school->get(Kind::kDish, "soup").value(), theirs);
}

TEST_F(Documents, ARemovedDishIsOutOfTheListButNotOutOfTheWorld) {
  const Document soup = kept(Kind::kDish, dish("Soup", 10));
  const Document removed = done(school->remove(Kind::kDish, "soup", 1, by_hart("Nobody liked it")));
  EXPECT_TRUE(removed.deleted);
  EXPECT_TRUE(school->list(Kind::kDish).value().empty());
  Filter bin;
  bin.removed = true;
  EXPECT_EQ(school->list(Kind::kDish, bin).value().size(), 1U);
  // Changing what somebody removed is a clash: the caller asks before bringing it back.
  const auto late = school->replace(Kind::kDish, "soup", 2, dish("Soup", 20), by_hart());
  EXPECT_TRUE(std::holds_alternative<Clash>(late.value()));
  const Document back = done(school->restore(Kind::kDish, "soup", 1, 2, by_hart("Back again")));
  EXPECT_EQ(back.version, 3);
  EXPECT_EQ(back.body, soup.body);
  EXPECT_FALSE(back.deleted);
}

TEST_F(Documents, UndoWritesANewVersionAndCanBeUndone) {
  kept(Kind::kDish, dish("Soup", 10));
  done(school->replace(Kind::kDish, "soup", 1, dish("Fish soup", 15), by_hart()));
  const Document undone = done(school->restore(Kind::kDish, "soup", 1, 2, by_hart("Undone")));
  EXPECT_EQ(undone.title, "Soup");
  EXPECT_EQ(undone.version, 3);
  EXPECT_EQ(done(school->restore(Kind::kDish, "soup", 2, 3, by_hart())).title, "Fish soup");
}

TEST_F(Documents, NothingIsInAVersionOfARemoval) {
  kept(Kind::kDish, dish("Soup"));
  done(school->remove(Kind::kDish, "soup", 1, by_hart()));
  EXPECT_EQ(code(school->restore(Kind::kDish, "soup", 2, 2, by_hart())), "store.no_version");
  EXPECT_EQ(code(school->restore(Kind::kDish, "soup", 7, 2, by_hart())), "store.no_version");
  EXPECT_EQ(code(school->restore(Kind::kDish, "stew", 1, 1, by_hart())), "store.not_found");
}

TEST_F(Documents, ADishThatALessonUsesIsNotRemovedAndTheLessonIsNamed) {
  kept(Kind::kDish, dish("Soup"));
  kept(Kind::kLesson, lesson("7B, first time at the hob", "2026-11-17", {{Kind::kDish, "soup"}}));
  const auto refused = school->remove(Kind::kDish, "soup", 1, by_hart());
  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.problems()[0].code, "store.in_use");
  EXPECT_EQ(refused.problems()[0].message,
            "The dish 'Soup' is used by the lesson '7B, first time at the hob' (2026-11-17).");
  EXPECT_EQ(code(school->erase(Kind::kDish, "soup")), "store.in_use");
  EXPECT_EQ(school->used_by(Kind::kDish, "soup").value().size(), 1U);
  Filter uses_soup;
  uses_soup.uses = Ref{Kind::kDish, "soup"};
  EXPECT_EQ(school->list(Kind::kLesson, uses_soup).value().size(), 1U);
  // The lesson gone, the dish may go.
  done(school->remove(Kind::kLesson, "7b-first-time-at-the-hob", 1, by_hart()));
  EXPECT_TRUE(done(school->remove(Kind::kDish, "soup", 1, by_hart())).deleted);
  // Then the lesson cannot come back before its dish.
  const auto early = school->restore(Kind::kLesson, "7b-first-time-at-the-hob", 1, 2, by_hart());
  EXPECT_EQ(code(early), "store.link_missing");
  EXPECT_EQ(early.problems()[0].message, "The dish 'Soup' that is used here was removed.");
  done(school->restore(Kind::kDish, "soup", 1, 2, by_hart()));
  const Document back = done(
      school->restore(Kind::kLesson, "7b-first-time-at-the-hob", 1, 2, by_hart()));
  EXPECT_EQ(back.links, (std::vector<Ref>{{Kind::kDish, "soup"}}));
}

TEST_F(Documents, ALinkToNothingIsRefusedAndNothingIsWritten) {
  const auto refused = school->create(
      Kind::kLesson, {}, lesson("7B", "2026-11-17", {{Kind::kDish, "stew"}}), by_hart());
  EXPECT_EQ(code(refused), "store.link_missing");
  EXPECT_TRUE(school->list(Kind::kLesson).value().empty());
}

TEST_F(Documents, AChangedLessonLetsGoOfTheDishItNoLongerUses) {
  kept(Kind::kDish, dish("Soup"));
  kept(Kind::kDish, dish("Stew"));
  kept(Kind::kLesson, lesson("7B", "2026-11-17", {{Kind::kDish, "soup"}}));
  done(school->replace(Kind::kLesson, "7b", 1, lesson("7B", "2026-11-17", {{Kind::kDish, "stew"}}),
                       by_hart()));
  EXPECT_TRUE(done(school->remove(Kind::kDish, "soup", 1, by_hart())).deleted);
}

TEST_F(Documents, ALinkToItselfDoesNotHoldADocument) {
  kept(Kind::kScheme, {R"({"title":"Year 8"})", {{Kind::kScheme, "year-8"}}, "", {}});
  EXPECT_TRUE(done(school->remove(Kind::kScheme, "year-8", 1, by_hart())).deleted);
}

TEST_F(Documents, LessonsAreListedByDay) {
  kept(Kind::kLesson, lesson("8C", "2026-11-18"));
  kept(Kind::kLesson, lesson("7B", "2026-11-16"));
  kept(Kind::kLesson, lesson("9A", "2026-11-20"));
  kept(Kind::kLesson, lesson("7A", "2026-11-16"));
  Filter week;
  week.from = "2026-11-16";
  week.to = "2026-11-18";
  std::vector<std::string> titles;
  const auto found = school->list(Kind::kLesson, week).value();
  for (const Summary& each : found) titles.push_back(each.title);
  EXPECT_EQ(titles, (std::vector<std::string>{"7A", "7B", "8C"}));
}

TEST_F(Documents, DaysAreGivenOnceAndVersionsOnlyOfWhatStands) {
  using Strings = std::vector<std::string>;
  for (const char* day : {"2026-11-18", "2026-11-16", "2026-11-18"})
    kept(Kind::kLesson, {R"({"title":"Scones"})", {}, "", day});
  kept(Kind::kLesson, {R"({"title":"Some day"})", {}, "", {}});
  EXPECT_EQ(school->days(Kind::kLesson).value(), (Strings{"2026-11-16", "2026-11-18"}));
  store::Filter from;
  from.from = "2026-11-17";
  EXPECT_EQ(school->days(Kind::kLesson, from).value(), Strings{"2026-11-18"});
  kept(Kind::kDish, dish("Soup"));
  kept(Kind::kDish, dish("Stew"));
  done(school->replace(Kind::kDish, "soup", 1, dish("Soup", 15), by_hart()));
  done(school->remove(Kind::kDish, "stew", 1, by_hart("Took it out")));
  EXPECT_EQ(school->versions(Kind::kDish).value(),
            (std::vector<std::pair<std::string, std::int64_t>>{{"soup", 2}}));
}

TEST_F(Documents, ATitleIsFoundByTheBeginningsOfItsWordsWithoutAccents) {
  kept(Kind::kDish, dish("Crème brûlée"));
  kept(Kind::kDish, dish("Fruit scones"));
  const auto found = [&](const std::string& text) {
    Filter filter;
    filter.text = text;
    return school->list(Kind::kDish, filter).value().size();
  };
  EXPECT_EQ(found("BRULEE creme"), 1U);
  EXPECT_EQ(found("sco fru"), 1U);
  EXPECT_EQ(found("cones"), 0U);  // the middle of a word
  EXPECT_EQ(found("%"), 2U);      // no word in it: no wish
  EXPECT_EQ(found("' or 1=1 --"), 0U);
}

TEST_F(Documents, OneDishTypedInTwiceIsSeenWhateverItsLayout) {
  kept(Kind::kDish, dish("Soup", 10));
  const auto same = school->same_as(
      Kind::kDish,
      "{ \"minutes\": 1e1, \"name\": \"Soup\",\n \"version\": 1, \"kind\": \"dish\" }");
  ASSERT_EQ(same.value().size(), 1U);
  EXPECT_EQ(same.value()[0].id, "soup");
  EXPECT_TRUE(school->same_as(Kind::kDish, dish("Soup", 11).body).value().empty());
}

TEST_F(Documents, AllFaultsOfADraftAreToldAtOnce) {
  const auto refused = school->create(
      Kind::kDish, "Not Good!", {R"({"kind":"room","date":"2026-02-30"})", {}, "", {}}, by_hart());
  ASSERT_FALSE(refused);
  std::vector<std::string> codes;
  for (const auto& each : refused.problems()) {
    codes.push_back(each.code);
    EXPECT_FALSE(each.remedy.empty());
  }
  EXPECT_EQ(codes, (std::vector<std::string>{"store.kind_differs", "store.no_title", "store.day",
                                             "store.bad_id"}));
}

TEST_F(Documents, TextThatIsNotJsonIsRefused) {
  EXPECT_EQ(code(school->create(Kind::kDish, {}, {"{\"name\": ", {}, "", {}}, by_hart())),
            "store.body");
  EXPECT_EQ(code(school->create(Kind::kDish, {}, {"[1]", {}, "", {}}, by_hart())), "store.body");
  EXPECT_EQ(code(school->create(Kind::kDish, {}, {"\xFF", {}, "", {}}, by_hart())), "store.body");
}

TEST_F(Documents, WhatIsErasedLeavesNoTraceInTheFile) {
  kept(Kind::kClass, {R"({"title":"7B","pupils":["Zebedee Quillfeather"]})", {}, "", {}});
  done(school->remove(Kind::kClass, "7b", 1, by_hart()));
  EXPECT_TRUE(school->erase(Kind::kClass, "7b").value());
  EXPECT_FALSE(school->erase(Kind::kClass, "7b").value());
  EXPECT_TRUE(school->history(Kind::kClass, "7b").value().empty());
  school.reset();  // the log goes into the file
  std::ifstream file(folder.file(), std::ios::binary);
  const std::string bytes((std::istreambuf_iterator<char>(file)), {});
  EXPECT_GT(bytes.size(), 1000U);
  EXPECT_EQ(bytes.find("Quillfeather"), std::string::npos);
}

TEST_F(Documents, SeveralWritesAreAllOrNothing) {
  kept(Kind::kDish, dish("Soup"));
  const auto failed = school->transact([&](Writer& writer) -> base::Result<Outcome> {
    EXPECT_TRUE(writer.create(Kind::kDish, {}, dish("Stew"), by_hart()));
    EXPECT_EQ(writer.list(Kind::kDish).value().size(), 2U);  // it sees what it wrote
    const auto refused = writer.create(Kind::kDish, "soup", dish("Other"), by_hart());
    if (!refused) return refused.problems();
    return Outcome::kKeep;
  });
  EXPECT_EQ(code(failed), "store.id_taken");
  EXPECT_EQ(school->list(Kind::kDish).value().size(), 1U);

  const auto undone = school->transact([&](Writer& writer) -> base::Result<Outcome> {
    EXPECT_TRUE(writer.create(Kind::kDish, {}, dish("Stew"), by_hart()));
    return Outcome::kUndo;
  });
  EXPECT_TRUE(undone);
  EXPECT_EQ(school->list(Kind::kDish).value().size(), 1U);

  const auto whole = school->transact([&](Writer& writer) -> base::Result<Outcome> {
    const auto stew = writer.create(Kind::kDish, {}, dish("Stew"), by_hart());
    if (!stew) return stew.problems();
    const auto used = writer.create(
        Kind::kLesson, {}, lesson("7B", "2026-11-17", {{Kind::kDish, stew.value().id}}), by_hart());
    if (!used) return used.problems();
    return Outcome::kKeep;
  });
  EXPECT_TRUE(whole);
  EXPECT_EQ(school->list(Kind::kLesson).value().size(), 1U);
}

TEST_F(Documents, WorkThatThrowsLeavesNothingBehind) {
  const auto thrower = [](Writer& writer) -> base::Result<Outcome> {
    EXPECT_TRUE(writer.create(Kind::kDish, {}, dish("Stew"), by_hart()));
    throw std::runtime_error("a fault of the program");
  };
  EXPECT_THROW(static_cast<void>(school->transact(thrower)), std::runtime_error);
  EXPECT_TRUE(school->list(Kind::kDish).value().empty());
  kept(Kind::kDish, dish("Soup"));  // and the next one can write
}

TEST_F(Documents, ALookSeesOneStateWhateverOthersWrite) {
  kept(Kind::kDish, dish("Soup"));
  const auto looked = school->look([&](Reader& reader) -> base::Result<bool> {
    EXPECT_EQ(reader.list(Kind::kDish).value().size(), 1U);
    std::thread([&] { kept(Kind::kDish, dish("Stew")); }).join();
    EXPECT_EQ(reader.list(Kind::kDish).value().size(), 1U);
    return true;
  });
  EXPECT_TRUE(looked);
  EXPECT_EQ(school->list(Kind::kDish).value().size(), 2U);
}

TEST_F(Documents, AllIsThereAfterClosingAndOpening) {
  const Document soup = kept(Kind::kDish, dish("Soup"));
  school.reset();
  school = again();
  EXPECT_EQ(school->get(Kind::kDish, "soup").value(), soup);
}

// Two people add one to the same figure again and again; each tries again after a clash. Whatever
// order it comes to, no addition is lost.
TEST_F(Documents, TwoWritersOnOneDocumentLoseNothing) {
  constexpr int kEach = 60;
  kept(Kind::kDish, dish("Soup", 0));
  const auto add = [&] {
    for (int done_so_far = 0; done_so_far < kEach;) {
      const Document seen = *school->get(Kind::kDish, "soup").value();
      const auto at = seen.body.find("\"minutes\":") + 10;
      const int minutes = std::stoi(seen.body.substr(at));
      const auto changed = school->replace(Kind::kDish, "soup", seen.version,
                                           dish("Soup", minutes + 1), by_hart());
      ASSERT_TRUE(changed);
      if (std::holds_alternative<Document>(changed.value())) ++done_so_far;
    }
  };
  std::thread other(add);
  add();
  other.join();
  const Document last = *school->get(Kind::kDish, "soup").value();
  EXPECT_EQ(last.body, dish("Soup", 2 * kEach).body);
  EXPECT_EQ(last.version, 1 + 2 * kEach);
}

TEST(Ids, OnlyPlainWordsWithHyphensAreIds) {
  EXPECT_TRUE(good_id("fruit-scones"));
  EXPECT_TRUE(good_id("7b"));
  for (const char* bad : {"", "-a", "a-", "a--b", "A", "a b", "a/b", "..", "a.json", "é"}) {
    EXPECT_FALSE(good_id(bad)) << bad;
  }
  EXPECT_TRUE(good_id(std::string(80, 'a')));
  EXPECT_FALSE(good_id(std::string(81, 'a')));
}

TEST(Ids, AnyTitleGivesAnId) {
  EXPECT_EQ(id_from("Mac 'n' cheese"), "mac-n-cheese");
  EXPECT_EQ(id_from("Cook's choice!"), "cooks-choice");
  EXPECT_EQ(id_from("  "), "untitled");
  EXPECT_EQ(id_from("日本"), "untitled");
  EXPECT_TRUE(good_id(id_from(std::string(300, 'x'))));
  EXPECT_TRUE(good_id(id_from("a " + std::string(300, 'x'))));
}

TEST(Kinds, EveryKindHasANameThatLeadsBackToIt) {
  for (const KindName& each : kKinds) {
    EXPECT_EQ(name_of(each.kind), each.name);
    EXPECT_EQ(kind_named(each.name), each.kind);
    EXPECT_FALSE(words_of(each.kind).empty());
  }
  EXPECT_FALSE(kind_named("menu"));
}

}  // namespace
