// Whole texts, invented and judged by persons who did not look at what the reader made of them: how
// many of their ingredients and of their steps' attributes are read right. The floors are what was
// reached. BENCHBELL_READING_ERRORS=1 in the environment tells every error.
#include <gtest/gtest.h>

#include <array>
#include <cstdlib>
#include <fstream>
#include <iostream>
#include <sstream>
#include <tuple>

#include "../../support/shipped_foods.h"
#include "../../support/shipped_task_times.h"
#include "kitchen/reading/make_dish.h"
#include "kitchen/reading/read_dish_text.h"
#include "text_score.h"

namespace {

constexpr const char* kData = BENCHBELL_SOURCE_DIR "/tests/data/";

constexpr std::array kFolders = {"whole_texts", "held_out_2",  "held_out_3",  "held_out_4",
                                 "held_out_5",  "held_out_6",  "held_out_7",  "held_out_8",
                                 "held_out_9",  "held_out_10", "held_out_11", "held_out_12",
                                 "held_out_13"};

tests::TextScore told(const std::string& folder) {
  std::ostream* errors = std::getenv("BENCHBELL_READING_ERRORS") != nullptr ? &std::cout : nullptr;
  const tests::TextScore score = tests::score_of(kData + folder, errors);
  tests::print_score(std::cout, folder, score);
  return score;
}

TEST(WholeTexts, MostIngredientsAndAttributesAreReadAsAPersonReadsThem) {
  const tests::TextScore score = told("whole_texts");
  EXPECT_EQ(score.texts, 30);
  EXPECT_GE(score.ingredients.percent(), 96);
  EXPECT_GE(score.firm().percent(), 95);
  EXPECT_GE(score.all().percent(), 91);
}

// Written before the reader was run over them. Their errors came into view once (see
// docs/methods/reading-methods.md), so they are no longer wholly blind.
TEST(WholeTexts, TextsKeptBackAreReadNearlyAsWell) {
  const tests::TextScore score = told("held_out_2");
  EXPECT_EQ(score.texts, 12);
  EXPECT_GE(score.ingredients.percent(), 97);
  EXPECT_GE(score.firm().percent(), 95);
  EXPECT_GE(score.all().percent(), 91);
}

// A smaller set, written and first read after the rules for steps were mended; two layouts it
// showed were mended afterwards.
TEST(WholeTexts, TextsNobodyHasSeenAreReadNearlyAsWell) {
  const tests::TextScore score = told("held_out_3");
  EXPECT_EQ(score.texts, 6);
  EXPECT_GE(score.ingredients.percent(), 98);
  EXPECT_GE(score.firm().percent(), 95);
  EXPECT_GE(score.all().percent(), 93);
}

// Sixteen layouts by somebody who never saw the reader. First read 64.3 % of the ingredients and
// 82.9 % of the attributes right; the floors are what was reached with their errors in view.
TEST(WholeTexts, TextsInManyLayoutsAreReadAsWell) {
  const tests::TextScore score = told("held_out_4");
  EXPECT_EQ(score.texts, 16);
  EXPECT_GE(score.ingredients.percent(), 98);
  EXPECT_LE(score.extra, 4);
  EXPECT_GE(score.firm().percent(), 95);
  EXPECT_GE(score.all().percent(), 93);
}

// By another person who never saw the reader. Its errors have not been looked at, but its totals
// said which rules for the order of steps to keep, and the order has been learnt from it.
TEST(WholeTexts, TextsWhoseErrorsNobodyLookedAtAreReadAsWell) {
  const tests::TextScore score = told("held_out_5");
  EXPECT_EQ(score.texts, 14);
  EXPECT_GE(score.ingredients.percent(), 98);
  EXPECT_GE(score.firm().percent(), 93);
  EXPECT_GE(score.all().percent(), 89);
}

// Three more persons' texts, each measured untouched and then worked with: 95.7, 97.2 and 87.6 % of
// the ingredients, 86.9, 86.8 and 83.7 % of the attributes at first.
TEST(WholeTexts, TextsOfThreeMorePersonsAreReadAsWell) {
  for (const auto& [folder, ingredients, attributes] :
       {std::tuple{"held_out_6", 97, 93}, std::tuple{"held_out_7", 97, 89},
        std::tuple{"held_out_8", 98, 86}}) {
    const tests::TextScore score = told(folder);
    EXPECT_EQ(score.texts, 14);
    EXPECT_GE(score.ingredients.percent(), ingredients) << folder;
    EXPECT_GE(score.all().percent(), attributes) << folder;
  }
}

// Only read: their errors have not served for anything. The second person was asked for what school
// teachers really paste.
TEST(WholeTexts, TextsNobodyLookedAtAreReadNearlyAsWell) {
  for (const auto& [folder, texts, ingredients, attributes] :
       {std::tuple{"held_out_9", 14, 97, 88}, std::tuple{"held_out_13", 18, 99, 90}}) {
    const tests::TextScore score = told(folder);
    EXPECT_EQ(score.texts, texts);
    EXPECT_GE(score.ingredients.percent(), ingredients) << folder;
    EXPECT_GE(score.firm().percent(), 93) << folder;
    EXPECT_GE(score.all().percent(), attributes) << folder;
  }
}

// Two persons' texts of dishes with parts that run side by side and one's plain worksheets: first
// read 96.0, 99.3 and 99.0 % of the ingredients right, 83.0, 84.8 and 85.3 % of the attributes. The
// order of steps has been learnt from them since.
TEST(WholeTexts, TextsWithPartsSideBySideAreReadAsWell) {
  for (const auto& [folder, texts, ingredients, attributes] :
       {std::tuple{"held_out_10", 24, 96, 83}, std::tuple{"held_out_11", 24, 99, 85},
        std::tuple{"held_out_12", 16, 98, 87}}) {
    const tests::TextScore score = told(folder);
    EXPECT_EQ(score.texts, texts);
    EXPECT_GE(score.ingredients.percent(), ingredients) << folder;
    EXPECT_GE(score.all().percent(), attributes) << folder;
  }
}

// Six hundred lines of two persons, every way of writing one they could think of: first read 83.5
// and 75.6 % right. Half of the second person's were looked at only when the rest stood at 94.
TEST(WholeTexts, LinesInEveryMannerAreRead) {
  std::ostream* errors = std::getenv("BENCHBELL_READING_ERRORS") != nullptr ? &std::cout : nullptr;
  for (const auto& [file, least] : {std::tuple{"a.json", 95}, std::tuple{"b.json", 92}}) {
    const tests::Share share = tests::score_of_lines(
        std::string(kData) + "ingredient_lines/" + file, errors);
    std::cout << file << ": " << share.right << " of " << share.all << "\n";
    EXPECT_GE(share.percent(), least) << file;
  }
}

std::vector<std::filesystem::path> all_texts() {
  std::vector<std::filesystem::path> out;
  for (const std::string folder : kFolders) {
    for (const auto& entry : std::filesystem::directory_iterator(kData + folder))
      if (entry.path().extension() == ".txt") out.push_back(entry.path());
  }
  return out;
}

kitchen::DishDraft draft_of(const std::filesystem::path& path) {
  std::ifstream file(path, std::ios::binary);
  std::stringstream text;
  text << file.rdbuf();
  return kitchen::read_dish_text(text.str(), tests::shipped_foods(), tests::shipped_task_times());
}

TEST(WholeTexts, EveryTextBecomesADishThatCanBePlanned) {
  for (const auto& path : all_texts())
    EXPECT_TRUE(kitchen::dish_from(draft_of(path), tests::shipped_foods())) << path;
}

// 28 of a hundred names and as many portions were wrong before anybody counted them.
TEST(WholeTexts, MostTextsTellTheirNameAndHowManyTheyServe) {
  tests::Share names, portions;
  for (const std::string folder : kFolders) {
    const tests::TextScore score = tests::score_of(kData + folder);
    names.right += score.names.right, names.all += score.names.all;
    portions.right += score.portions.right, portions.all += score.portions.all;
  }
  std::cout << "names " << names.percent() << " %, portions " << portions.percent() << " %\n";
  EXPECT_GE(names.percent(), 90);
  EXPECT_GE(portions.percent(), 92);
}

// A pupil's safety hangs on this: where the reader adds the probe, the last step waits for it.
TEST(WholeTexts, TheProbeThatIsAddedComesBeforeTheDishIsServed) {
  int probed = 0;
  for (const auto& path : all_texts()) {
    const auto made = kitchen::dish_from(draft_of(path), tests::shipped_foods());
    const auto& method = made.value().dish.method;
    const auto probe = std::find_if(method.begin(), method.end(),
                                    [](const kitchen::Step& s) { return s.id == "probe-it"; });
    if (probe == method.end()) continue;
    ++probed;
    const auto at = static_cast<int>(probe - method.begin());
    std::vector<bool> before(method.size(), false);
    std::vector<int> open{static_cast<int>(method.size()) - 1};
    while (!open.empty()) {
      const auto s = static_cast<std::size_t>(open.back());
      open.pop_back();
      if (before[s]) continue;
      before[s] = true;
      for (const kitchen::Follows& f : method[s].follows) open.push_back(f.step);
    }
    EXPECT_TRUE(before[static_cast<std::size_t>(at)]) << path;
  }
  EXPECT_GT(probed, 30);
}

}  // namespace
