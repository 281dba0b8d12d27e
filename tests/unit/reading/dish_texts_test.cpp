// How many ingredient lines are read right, over invented texts in the usual layouts.
//
// Beside each tests/data/dishes/NAME.txt stands NAME.expected.txt, written by hand before the text
// was read: title, portions, number of method lines, then "amount | food | preparation" a line,
// with
// "?" where the table has no such food.
#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <sstream>

#include "../../support/shipped_foods.h"
#include "../../support/shipped_task_times.h"
#include "base/text.h"
#include "kitchen/reading/layout.h"
#include "kitchen/reading/read_dish_text.h"
#include "laid_out.h"

namespace {

using namespace kitchen;

std::string text_of(const std::filesystem::path& path) {
  std::ifstream file(path, std::ios::binary);
  std::stringstream text;
  text << file.rdbuf();
  return text.str();
}

std::string said(const IngredientDraft& draft) {
  return base::say(quantity_text(draft.quantity.value), " | ",
                   draft.food.value.empty() ? "?" : draft.food.value, " | ", draft.preparation);
}

struct Score {
  int lines = 0, right = 0, frames = 0, frames_right = 0;  // frames: title, portions, method
};

// How many lines stand in both lists in the same order: one line too many must not make all that
// follow wrong.
std::size_t in_common(const std::vector<std::string>& got, const std::vector<std::string>& wanted) {
  std::vector<std::vector<std::size_t>> best(got.size() + 1,
                                             std::vector<std::size_t>(wanted.size() + 1, 0));
  for (std::size_t i = 0; i < got.size(); ++i) {
    for (std::size_t j = 0; j < wanted.size(); ++j)
      best[i + 1][j + 1] = got[i] == wanted[j] ? best[i][j] + 1
                                               : std::max(best[i][j + 1], best[i + 1][j]);
  }
  return best[got.size()][wanted.size()];
}

void judge(const std::filesystem::path& path, Score& score) {
  const std::string text = text_of(path);
  std::filesystem::path beside = path;
  beside.replace_extension("expected.txt");
  const DishDraft draft = read_dish_text(text, tests::shipped_foods(), tests::shipped_task_times());
  const Layout layout = tests::laid_out(text);
  const auto method = std::count_if(
      layout.lines.begin(), layout.lines.end(),
      [](const LaidLine& l) { return l.role == LineRole::kMethod && !l.continues; });
  const std::string file = path.filename().string();
  const auto frame = [&](const std::string& got, const std::string& wanted) {
    ++score.frames;
    if (got == wanted)
      ++score.frames_right;
    else
      std::cout << file << ": read [" << got << "], wanted [" << wanted << "]\n";
  };
  std::vector<std::string> got, wanted;
  for (const IngredientDraft& each : draft.ingredients) got.push_back(base::trimmed(said(each)));
  std::istringstream expected(text_of(beside));
  std::string line;
  while (std::getline(expected, line)) {
    line = base::trimmed(line);
    if (line.starts_with("title: "))
      frame(draft.name.value, line.substr(7));
    else if (line.starts_with("portions: "))
      frame(std::to_string(draft.portions.value), line.substr(10));
    else if (line.starts_with("method: "))
      frame(std::to_string(method), line.substr(8));
    else if (!line.empty())
      wanted.push_back(line);
  }
  score.lines += static_cast<int>(std::max(got.size(), wanted.size()));
  score.right += static_cast<int>(in_common(got, wanted));
  for (const std::string& each : got) {
    if (std::find(wanted.begin(), wanted.end(), each) == wanted.end())
      std::cout << file << ": read   [" << each << "]\n";
  }
  for (const std::string& each : wanted) {
    if (std::find(got.begin(), got.end(), each) == got.end())
      std::cout << file << ": wanted [" << each << "]\n";
  }
}

Score score_of(const std::string& folder) {
  Score score;
  std::vector<std::filesystem::path> paths;
  for (const auto& entry : std::filesystem::directory_iterator(std::string(BENCHBELL_SOURCE_DIR) +
                                                               "/tests/data/" + folder)) {
    const std::string name = entry.path().filename().string();
    if (name.ends_with(".txt") && !name.ends_with(".expected.txt")) paths.push_back(entry.path());
  }
  std::sort(paths.begin(), paths.end());
  for (const auto& path : paths) judge(path, score);
  std::cout << folder << ": " << score.right << " of " << score.lines << " ingredient lines right, "
            << score.frames_right << " of " << score.frames << " titles, portions and methods, in "
            << paths.size() << " texts\n";
  return score;
}

TEST(DishTexts, NinetyEightOfAHundredIngredientLinesAreReadRight) {
  const Score score = score_of("dishes");
  EXPECT_GE(score.lines, 200);
  EXPECT_GE(score.right * 100, score.lines * 98);
  EXPECT_GE(score.frames_right * 100, score.frames * 95);
}

// Texts that were kept back while the reader was made.
TEST(DishTexts, TextsKeptBackAreReadAsWell) {
  const Score score = score_of("dishes/held_out");
  EXPECT_GE(score.lines, 100);
  EXPECT_GE(score.right * 100, score.lines * 95);
}

TEST(DishTexts, AConversationIsReadWithoutItsSenders) {
  const DishDraft draft = read_dish_text(
      "[Sun 11:42] Aunty Bev: Egg on toast\n[Sun 11:43] Aunty Bev: 2 eggs\n"
      "[Sun 11:43] Aunty Bev: 2 slices of bread\n[Sun 11:44] Aunty Bev: Boil the eggs for 8 "
      "minutes.\n"
      "[Sun 11:45] Aunty Bev: Toast the bread. Slice the eggs over it.\n",
      tests::shipped_foods(), tests::shipped_task_times());
  EXPECT_EQ(draft.ingredients.size(), 2U);
  EXPECT_EQ(draft.method.front().says, "Boil the eggs for 8 minutes.");
}

DishDraft under(const std::string& head) {
  return read_dish_text(head +
                            "\n\nIngredients\n200 g flour\n100 g butter\n\nMethod\nRub in the "
                            "butter.\nBake for 20 minutes.\n",
                        tests::shipped_foods(), tests::shipped_task_times());
}

TEST(DishTexts, TheDishIsNamedByTheLineThatSoundsLikeOne) {
  EXPECT_EQ(
      under("FOOD & NUTRITION DEPARTMENT\nChocolate Yule Log (cuts into 8 slices)").name.value,
      "Chocolate Yule Log");
  EXPECT_EQ(under("Thursday session - Grilled Mackerel with Beetroot Salad").name.value,
            "Grilled Mackerel with Beetroot Salad");
  EXPECT_EQ(
      under("Hi Gill,\n\nHere is the leek and potato soup I did last year, it went down well.")
          .name.value,
      "Leek and potato soup");
  EXPECT_EQ(under("Fruit scones").name.value, "Fruit scones");
}

TEST(DishTexts, HowManyItServesMayBeSaidInPassing) {
  EXPECT_EQ(under("Plum Crumble   (does 6)").portions.value, 6);
  EXPECT_EQ(under("Leek soup\n6 covers").portions.value, 6);
  EXPECT_EQ(under("Camp stew\nFeeds a dozen off a two-ring stove.").portions.value, 12);
  EXPECT_EQ(under("Profiteroles\nMakes about 16 - serves 4").portions.value, 4);
  EXPECT_EQ(under("Leek soup").portions.confidence, 0.2);
}

// Somebody pastes a whole book.
TEST(DishTexts, ThousandsOfStepsAreReadAndOrdered) {
  constexpr int kSteps = 5000;
  std::string text = "Book\n\nIngredients\n1 onion\n\nMethod\n";
  for (int i = 1; i <= kSteps; ++i)
    text += std::to_string(i) + ". Chop the onion and fry it in a pan for 2 minutes.\n";
  const DishDraft draft = read_dish_text(text, tests::shipped_foods(), tests::shipped_task_times());
  EXPECT_GE(draft.method.size(), static_cast<std::size_t>(kSteps));
  EXPECT_FALSE(draft.method.back().follows.empty());
}

}  // namespace
