// Class lists as schools' programs give them out: any order, any headings, three encodings.
// Headings and words are common practice, no source; the encodings are those of RFC 3629, RFC 2781
// and Windows-1252.
#include "desk/class_csv.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace {

using desk::ClassPreview;
using desk::Limit;
using kitchen::Allergen;
using safety::Diet;

ClassPreview read(const std::string& bytes, const std::map<std::string, std::string>& said = {}) {
  const auto preview = desk::class_from_csv(bytes, "list.csv", said);
  if (preview) return preview.value();
  ADD_FAILURE() << preview.problems().front().message;
  return {};
}

std::vector<std::string> names(const ClassPreview& preview) {
  std::vector<std::string> out;
  for (const desk::Pupil& pupil : preview.group.pupils) out.push_back(pupil.name);
  return out;
}

std::string meaning(const ClassPreview& preview, const std::string& heading) {
  for (const desk::ColumnMeaning& column : preview.columns) {
    if (column.heading == heading) return column.meaning;
  }
  return "no such column";
}

bool told(const ClassPreview& preview, const std::string& words) {
  return std::any_of(preview.notes.begin(), preview.notes.end(), [&](const std::string& note) {
    return note.find(words) != std::string::npos;
  });
}

/// What one pupil is taken to need when their family wrote this.
struct Needs {
  std::vector<std::string> words;
  std::vector<std::string> notes;
};
Needs needs(const std::string& written) {
  const ClassPreview preview = read("Name,Allergies\nAisha K.,\"" + written + "\"\n");
  Needs out;
  out.notes = preview.notes;
  for (const desk::Pupil& pupil : preview.group.pupils)
    for (const safety::Need& need : pupil.needs) out.words.emplace_back(safety::word(need));
  std::sort(out.words.begin(), out.words.end());
  return out;
}
using Words = std::vector<std::string>;

TEST(ClassCsv, ColumnsMayStandInAnyOrder) {
  const char* const orders[] = {
      "Surname,Forename,Class,Year,Allergies\nKhan,Aisha,7B,7,milk\n",
      "Allergies,Year,Class,Forename,Surname\nmilk,7,7B,Aisha,Khan\n",
      "Year;Forename;Allergies;Surname;Class\n7;Aisha;milk;Khan;7B\n",
      "Class\tSurname\tYear\tForename\tAllergies\n7B\tKhan\t7\tAisha\tmilk\n"};
  const ClassPreview first = read(orders[0]);
  EXPECT_EQ(names(first), Words{"Aisha Khan"});
  EXPECT_EQ(first.group.name, "7B");
  EXPECT_EQ(first.group.year, 7);
  ASSERT_EQ(first.group.pupils.front().needs.size(), 1U);
  for (const char* text : orders) EXPECT_EQ(read(text).group, first.group) << text;
}

TEST(ClassCsv, ColumnsAreGivenBackInTheOrderOfTheFileWithTheirMeaning) {
  const ClassPreview preview = read(
      "UPN,Pupil name,Reg group,Year group,Dietary information,Medical notes\n"
      "x,Aisha K.,7B,Year 7,,\n");
  EXPECT_EQ(preview.columns, (std::vector<desk::ColumnMeaning>{{"UPN", "leave out"},
                                                               {"Pupil name", "name"},
                                                               {"Reg group", "leave out"},
                                                               {"Year group", "year"},
                                                               {"Dietary information", "needs"},
                                                               {"Medical notes", "allergies"}}));
}

TEST(ClassCsv, AColumnThatNumbersPupilsIsNotTakenForTheirNames) {
  const ClassPreview preview = read(
      "Student ID,Student name,Pupil premium,User name\n123,Aisha K.,yes,ak01\n");
  EXPECT_EQ(names(preview), Words{"Aisha K."});
  EXPECT_EQ(meaning(preview, "Student ID"), "leave out");
  EXPECT_EQ(meaning(preview, "Pupil premium"), "leave out");
}

TEST(ClassCsv, PreferredNamesAreFirstNamesAndPreferredSurnamesSurnames) {
  EXPECT_EQ(names(read("Preferred forename,Preferred surname\nAisha,Khan\n")), Words{"Aisha Khan"});
  EXPECT_EQ(names(read("FirstName,LastName\nAisha,Khan\n")), Words{"Aisha Khan"});
  EXPECT_EQ(names(read("first_name,last_name\nAisha,Khan\n")), Words{"Aisha Khan"});
}

TEST(ClassCsv, ARegisterPrintsTheSurnameFirst) {
  EXPECT_EQ(names(read("Name\n\"Khan, Aisha\"\n\"O'Brien, Seán\"\n")),
            (Words{"Aisha Khan", "Seán O'Brien"}));
}

TEST(ClassCsv, APersonCanSayWhatAColumnMeans) {
  const std::string text = "Kind,Wer\nmilk,Aisha K.\n";
  EXPECT_FALSE(desk::class_from_csv(text, "", {}));
  const ClassPreview preview = read(text, {{"Wer", "name"}, {"Kind", "allergies"}});
  EXPECT_EQ(names(preview), Words{"Aisha K."});
  EXPECT_EQ(preview.group.pupils.front().needs.size(), 1U);
  EXPECT_EQ(
      meaning(read("Name,Allergies\nAisha K.,milk\n", {{"Allergies", "leave out"}}), "Allergies"),
      "leave out");
}

TEST(ClassCsv, FilesInWindows1252AndUtf16AreRead) {
  // 0xEB is "ë" in Windows-1252 and no UTF-8.
  EXPECT_EQ(names(read("Name\nZo\xEB M.\n")), Words{"Zoë M."});
  const std::string plain = "Name\nZoe M.\n";
  std::string little = "\xFF\xFE", big = "\xFE\xFF";
  for (const char c : plain) {
    little += c;
    little += '\0';
    big += '\0';
    big += c;
  }
  // U+00EB, in both orders of bytes.
  const auto with_e = [](std::string text, const std::string& from, const std::string& to) {
    return text.replace(text.find(from), from.size(), to);
  };
  EXPECT_EQ(names(read(with_e(little, std::string("e\0 ", 3), std::string("\xEB\0 ", 3)))),
            Words{"Zoë M."});
  EXPECT_EQ(names(read(with_e(big, std::string("\0e\0 ", 4), std::string("\0\xEB\0 ", 4)))),
            Words{"Zoë M."});
  EXPECT_EQ(names(read("\xEF\xBB\xBFName\r\nZoë M.\r\n")), Words{"Zoë M."});
}

TEST(ClassCsv, ASecondPupilOfTheSameNameIsLeftOutAndSaid) {
  const ClassPreview preview = read("Name\nAisha K.\nBen T.\nAisha K.\n");
  EXPECT_EQ(names(preview), (Words{"Aisha K.", "Ben T."}));
  EXPECT_TRUE(told(preview, "Line 4: 'Aisha K.' stands there twice"));
}

TEST(ClassCsv, LinesWithoutANameAreLeftOutAndSaid) {
  const ClassPreview preview = read("Name,Allergies\n,milk\nBen T.,\n");
  EXPECT_EQ(names(preview), Words{"Ben T."});
  EXPECT_TRUE(told(preview, "Line 2 has no name"));
}

TEST(ClassCsv, AClassHasSixtyPupilsAndTheOthersAreSaid) {
  std::string text = "Name\n";
  for (int i = 0; i < 62; ++i) text += "Pupil " + std::to_string(i) + "\n";
  const ClassPreview preview = read(text);
  EXPECT_EQ(preview.group.pupils.size(), 60U);
  EXPECT_EQ(preview.notes.size(), 2U);
}

TEST(ClassCsv, WhatFamiliesWriteIsUnderstood) {
  EXPECT_EQ(needs("milk").words, Words{"milk"});
  EXPECT_EQ(needs("Dairy; EGGS / sesame").words, (Words{"eggs", "milk", "sesame"}));
  EXPECT_EQ(needs("severe nut allergy").words, Words{"nuts"});
  EXPECT_EQ(needs("tree nuts").words, Words{"nuts"});
  EXPECT_EQ(needs("lactose intolerant").words, Words{"milk"});
  EXPECT_EQ(needs("gluten-free").words, Words{"gluten"});
  EXPECT_EQ(needs("vegetarian, no pork").words, (Words{"no pork", "vegetarian"}));
  for (const char* plain :
       {"severe nut allergy", "tree nuts", "lactose intolerant", "gluten-free", "eggs and milk"})
    EXPECT_TRUE(needs(plain).notes.empty()) << plain << ": " << needs(plain).notes.front();
}

TEST(ClassCsv, ACoconutIsNoNutAndIsSaid) {
  const Needs coconut = needs("coconut");
  EXPECT_TRUE(coconut.words.empty());
  ASSERT_EQ(coconut.notes.size(), 1U);
  EXPECT_NE(coconut.notes.front().find("'coconut' is not understood"), std::string::npos);
}

TEST(ClassCsv, APeanutIsNoTreeNut) {
  EXPECT_EQ(needs("peanuts").words, Words{"peanuts"});
  EXPECT_EQ(needs("groundnuts").words, Words{"peanuts"});
  EXPECT_EQ(needs("peanuts and hazelnuts").words, (Words{"nuts", "peanuts"}));
}

// Food Standards Agency, "Food allergen labelling": crustaceans and molluscs are two of the
// fourteen; families say shellfish for both (from memory, to verify).
TEST(ClassCsv, ShellfishIsNoFishAndMeansBothKinds) {
  EXPECT_EQ(needs("shellfish").words, (Words{"crustaceans", "molluscs"}));
  EXPECT_EQ(needs("shell fish").words, (Words{"crustaceans", "molluscs"}));
}

TEST(ClassCsv, AWordInsideAnotherDoesNotHideTheSameWordStandingAlone) {
  EXPECT_EQ(needs("shellfish and fish").words, (Words{"crustaceans", "fish", "molluscs"}));
  EXPECT_EQ(needs("coconut and nuts").words, Words{"nuts"});
  EXPECT_EQ(needs("allergies (eggs)").words, Words{"eggs"});
}

TEST(ClassCsv, NothingIsDroppedSilently) {
  EXPECT_NE(needs("kiwi").notes.size(), 0U);
  const Needs both = needs("eggs and kiwi");
  EXPECT_EQ(both.words, Words{"eggs"});
  ASSERT_EQ(both.notes.size(), 1U);
  EXPECT_NE(both.notes.front().find("is taken for eggs. Look whether it says more"),
            std::string::npos);
  EXPECT_TRUE(told(read("Name,Pace\nAisha K.,fast\n"), "the pace 'fast' is not a number"));
  EXPECT_TRUE(told(read("Name,Pace\nAisha K.,3\n"), "the pace '3' is not a number from 0.5 to 2"));
  EXPECT_TRUE(
      told(read("Name,Notes\nAisha K.,sits with Ben\n"), "the note 'sits with Ben' is not kept"));
}

TEST(ClassCsv, NoneIsNone) {
  for (const char* nothing : {"", "-", "none", "No", "n/a", "N/A", "nil", "None known"}) {
    EXPECT_TRUE(needs(nothing).words.empty()) << nothing;
    EXPECT_TRUE(needs(nothing).notes.empty()) << nothing;
  }
}

TEST(ClassCsv, NotesGiveLimits) {
  const ClassPreview preview = read(
      "Name,Notes\nAisha K.,\"left-handed, near the teacher\"\nBen T.,wheelchair\n"
      "Cara D.,not at the hob alone\n");
  EXPECT_EQ(preview.group.pupils[0].limits, (std::vector{Limit::kLeftHanded, Limit::kNearTeacher}));
  EXPECT_EQ(preview.group.pupils[1].limits, std::vector{Limit::kLowBench});
  EXPECT_EQ(preview.group.pupils[2].limits, std::vector{Limit::kNotAtHobAlone});
  EXPECT_TRUE(preview.notes.empty());
}

TEST(ClassCsv, TheYearIsReadFromItsColumnElseFromTheClass) {
  EXPECT_EQ(read("Name,Class\nAisha K.,10C/Fd1\n").group.year, 10);
  EXPECT_EQ(read("Name,Year,Class\nAisha K.,Year 9,Blue\n").group.year, 9);
}

TEST(ClassCsv, WhatCanNotBeAListIsRefusedWithAWayOut) {
  for (const auto& [text, code] :
       std::map<std::string, std::string>{{"", "table.empty"},
                                          {"Colour,Size\nred,3\n", "class.csv.no_name"},
                                          {"Name\n", "class.csv.no_pupils"}}) {
    const auto refused = desk::class_from_csv(text, "list.csv", {});
    ASSERT_FALSE(refused) << text;
    EXPECT_EQ(refused.problems().front().code, code);
    EXPECT_FALSE(refused.problems().front().remedy.empty());
  }
}

TEST(ClassCsv, WhatWasReadIsAClassThatCanBeKept) {
  const ClassPreview preview = read(
      "Name,Class,Allergies,Notes,Pace\nنور K.,7B,\"nuts, halal\",low bench,1.25\n"
      "Zoë 🥕,7B,,,\n");
  const auto kept = desk::read_class(desk::write_class(preview.group), "");
  ASSERT_TRUE(kept) << kept.problems().front().message;
  EXPECT_EQ(kept.value(), preview.group);
}

}  // namespace
