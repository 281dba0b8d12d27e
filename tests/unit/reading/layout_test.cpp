#include "kitchen/reading/layout.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <map>

#include "../../support/shipped_foods.h"
#include "../../support/shipped_task_times.h"
#include "base/text.h"
#include "draft_words.h"
#include "kitchen/reading/line_looks.h"
#include "kitchen/reading/line_tokens.h"
#include "kitchen/reading/read_dish_text.h"
#include "laid_out.h"

namespace {

using namespace kitchen;

std::string without_spaces(const std::string& text) {
  std::string out;
  for (const char c : text) {
    if (c != ' ') out += c;
  }
  return out;
}

std::string of_role(const Layout& layout, LineRole role) {
  std::string out;
  for (const LaidLine& line : layout.lines) {
    if (line.role == role) out += (out.empty() ? "" : " / ") + line.text;
  }
  return out;
}

std::string random_text() {
  static const std::vector<std::string> kLines = {
      "Ingredients",
      "Method",
      "Notes",
      "For the topping:",
      "200 g flour",
      "2 eggs, beaten",
      "Salt",
      "",
      "",
      "  ",
      "Flour\t200 g",
      "200 g",
      "flour",
      "1. Mix it all well together.",
      "Bake at 180 °C for 20 minutes.",
      "Serves 4",
      "Prep time: 10 mins",
      "Ingredients: 200g flour, 2 eggs. Method: Mix them. Bake.",
      "My gran made this, long ago, when it rained.",
      "https://example.org/pie",
      "100 g oats      1. Stir in the oats",
      "🥧",
      "***",
      "עוגת גזר",
      "200 גרם קמח",
      "and cut into cubes",
      "2 carrots, peeled and",
      "TOPPING",
      "Step 2: Leave to cool.",
      "• 1 tsp salt",
      "- stir",
      "Carrot cake: 200g flour, 2 eggs, 1 tsp salt",
      "a",
      "1",
      ")",
      "| 200 g | flour |",
      "Food\tPrep\tQty",
      "Leeks\tsliced\t2",
      "09:10\tWash the leeks and slice them.\tSam",
      "| 1 | Heat the oven to 200 C. | 5 |",
      "Onion;1;chopped",
      "INGREDIENTS              METHOD",
      "200 g flour              1. Rub the butter into the",
      "                            flour with cold hands.",
      "½ onion                  2. Stir it in.",
      "0-10 min: Chop the onion.",
      "1. Bake until golden.                9.15",
      "Milk ..... 300 ml",
      "Equipment",
      "wooden spoon",
      "What goes into it",
      "I peeled 1 carrot and fried it for 4 minutes.",
      "Grill on",
      "Home > Dinners",
      "dressing is 2 tbsp oil, 1 tbsp juice",
      "(a) Stir well."};
  std::string text;
  const int many = *rc::gen::inRange(0, 25);
  for (int i = 0; i < many; ++i) {
    text += *rc::gen::elementOf(kLines);
    text += *rc::gen::elementOf(std::vector<std::string>{"\n", "\r\n", "\r"});
  }
  return text;
}

RC_GTEST_PROP(Layout, EveryLineThatIsNotBlankIsInExactlyOnePlace, ()) {
  const std::string text = random_text();
  std::map<int, std::string> wanted, got;
  int number = 1;
  std::string line;
  for (std::size_t i = 0; i <= text.size(); ++i) {
    const bool end = i == text.size() || text[i] == '\n' || text[i] == '\r';
    if (!end) {
      line += text[i];
      continue;
    }
    if (!base::trimmed(line).empty()) wanted[number] = without_spaces(tidied_line(line));
    if (i < text.size() && text[i] == '\r' && i + 1 < text.size() && text[i + 1] == '\n') ++i;
    line.clear();
    ++number;
  }
  for (const LaidLine& each : tests::laid_out(text).lines)
    got[each.number] += without_spaces(tidied_line(each.text));
  RC_ASSERT(got == wanted);
}

RC_GTEST_PROP(Layout, NoLineIsLostInADraft, ()) {
  const std::string text = random_text();
  const Layout layout = tests::laid_out(text);
  const DishDraft draft = read_dish_text(text, tests::shipped_foods(), tests::shipped_task_times());
  for (std::size_t i = 0; i < layout.lines.size(); ++i) {
    const LaidLine& line = layout.lines[i];
    if (line.continues || line.role == LineRole::kTitle || line.role == LineRole::kHeading ||
        line.role == LineRole::kPortions)
      continue;
    // "(a)" only counts the step.
    const std::string text_of_line(without_number(tidied_line(line.text)));
    RC_ASSERT(tests::lost_words(draft, text_of_line).empty());
  }
}

TEST(Layout, PortionsAreReadInTheUsualWords) {
  const auto portions = [](const char* line) {
    const auto found = portions_in(line);
    return found ? std::to_string(found->least) + "-" + std::to_string(found->most) : "none";
  };
  EXPECT_EQ(portions("Serves 4"), "4-4");
  EXPECT_EQ(portions("Serves: 4-6"), "4-6");
  EXPECT_EQ(portions("Makes about 12 buns"), "12-12");
  EXPECT_EQ(portions("Makes 2 dozen"), "24-24");
  EXPECT_EQ(portions("Serves four to six"), "4-6");
  EXPECT_EQ(portions("Yield: 8 servings"), "8-8");
  EXPECT_EQ(portions("6 servings"), "6-6");
  EXPECT_EQ(portions("For 4 people"), "4-4");
  EXPECT_EQ(portions("Makes 500 g"), "none");
  EXPECT_EQ(portions("Makes a 20 cm cake"), "none");
  EXPECT_EQ(portions("Serve with rice"), "none");
}

TEST(Layout, AContainerAmongTheIngredientsOfALineIsNothingToEat) {
  const Layout layout = tests::laid_out(
      "Chilli\nYou will need to bring: 500 g beef mince; 1 onion; a container with a lid\n"
      "Method\nFry the onion for 5 minutes.");
  EXPECT_EQ(of_role(layout, LineRole::kUnread), "a container with a lid");
}

TEST(Layout, ACupIsAmericanWhereTheWordsAre) {
  EXPECT_TRUE(tests::laid_out("Cake\n1 cup all-purpose flour\nBake at 350°F.").american);
  // Quarters are no quarts.
  EXPECT_FALSE(tests::laid_out("Soup\n1 pint milk\n1 onion, cut into quarters\nSimmer for 10 min.")
                   .american);
  EXPECT_TRUE(tests::laid_out("Cookies\n2 sticks butter\n1 cup sugar").american);
  EXPECT_FALSE(tests::laid_out("Cake\n1 cup plain flour\nBake at 180°C/350°F/gas 4.").american);
  EXPECT_FALSE(tests::laid_out("Cake\n1 cup plain flour").american);
}

TEST(Layout, StoriesBeforeAndNotesAfterAreKeptApart) {
  const Layout layout = tests::laid_out(
      "Oat cakes\nThese remind me of long walks by the sea with my dog.\n\nIngredients\n200 g "
      "oatmeal\nMethod\nMix. Bake.\nNotes\nKeep in a tin.\n");
  EXPECT_EQ(of_role(layout, LineRole::kTitle), "Oat cakes");
  EXPECT_EQ(of_role(layout, LineRole::kIngredient), "200 g oatmeal");
  EXPECT_EQ(of_role(layout, LineRole::kMethod), "Mix. Bake.");
  EXPECT_EQ(of_role(layout, LineRole::kUnread),
            "These remind me of long walks by the sea with my dog. / Keep in a tin.");
}

TEST(Layout, FiveThousandLinesAreReadWhole) {
  std::string text = "Long dish\nIngredients\n";
  for (int i = 0; i < 5000; ++i) text += "200 g flour\n";
  EXPECT_EQ(tests::laid_out(text).lines.size(), 5002U);
}

TEST(Layout, BytesThatAreNoUtf8AreReadAsWindows) {
  const DishDraft draft = read_dish_text(
      "Gratin\n\n200 ml cr\xE8me fra\xEE"
      "che\n",
      tests::shipped_foods(), tests::shipped_task_times());
  ASSERT_EQ(draft.ingredients.size(), 1U);
  EXPECT_EQ(draft.ingredients[0].food.value, "creme_fraiche");
}

}  // namespace
