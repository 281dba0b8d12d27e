// Layouts a list of ingredients may come in, one invented text for each class of them. What is
// expected is what a person reads; amounts and foods, in their order.
#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "../../support/shipped_foods.h"
#include "../../support/shipped_task_times.h"
#include "base/text.h"
#include "kitchen/reading/read_dish_text.h"
#include "laid_out.h"

namespace {

using namespace kitchen;
using Lines = std::vector<std::string>;

Lines foods_of(const std::string& text) {
  const DishDraft draft = read_dish_text(text, tests::shipped_foods(), tests::shipped_task_times());
  Lines out;
  for (const IngredientDraft& each : draft.ingredients) {
    const bool stated = each.quantity.value.stated();
    out.push_back(base::say(stated ? quantity_text(each.quantity.value) + " " : "",
                            each.food.value.empty() ? "?" + each.name : each.food.value));
  }
  return out;
}

// The steps' lines, wrapped ones put together.
Lines steps_of(const std::string& text) {
  Lines out;
  for (const LaidLine& line : tests::laid_out(text).lines) {
    if (line.role != LineRole::kMethod) continue;
    if (line.continues && !out.empty())
      out.back() += " " + line.text;
    else
      out.push_back(line.text);
  }
  return out;
}

TEST(ManyLayouts, TablesWithTabsInAnyOrderOfColumns) {
  const std::string text =
      "Leek and Potato Soup\nFood\tPrep\tQty\nLeeks\tsliced\t2\nPotatoes\tpeeled and diced\t300 g\n"
      "Butter\t\t25 g\nVegetable stock\thot\t600 ml\n\nTime\tTask\tWho\n09:10\tWash the leeks and "
      "slice them.\tA\n09:15\tMelt the butter in a large pan.\tB\n";
  EXPECT_EQ(foods_of(text),
            (Lines{"2 leek", "300 g potato", "25 g butter_salted", "600 ml vegetable_stock"}));
  EXPECT_EQ(steps_of(text),
            (Lines{"Wash the leeks and slice them.", "Melt the butter in a large pan."}));
}

TEST(ManyLayouts, TablesWithBarsAndTheUnitInAColumnOfItsOwn) {
  const std::string text =
      "Cheese scones\n| Amount | Unit | Food |\n|---|---|---|\n| 225 | g | self-raising flour |\n"
      "| 50 | g | butter |\n| 75 | g | Cheddar |\n| 150 | ml | milk |\n\n| Step | What to do | "
      "Minutes |\n|---|---|---|\n| 1 | Heat the oven to 220 C. | 2 |\n| 2 | Rub the butter into "
      "the "
      "flour. | 5 |\n";
  EXPECT_EQ(foods_of(text), (Lines{"225 g self_raising_flour", "50 g butter_salted", "75 g cheddar",
                                   "150 ml semi_skimmed_milk"}));
  EXPECT_EQ(steps_of(text).size(), 2U);
}

TEST(ManyLayouts, AmountsInBracketsAndBehindDotsAndSigns) {
  EXPECT_EQ(
      foods_of(
          "Tuna Pasta Bake\n\nPasta shapes (200 g)\nSweetcorn (half a tin)\nCheddar cheese "
          "[75 g]\nButter = 25 g\nPlain flour: 25 g\nMilk ..... 300 ml\nSalt (a good "
          "pinch)\n\nBoil the pasta for 10 minutes.\nMelt the butter and stir in the flour.\n"),
      (Lines{"200 g pasta_shapes_dry", "1/2 tin sweetcorn_tinned", "75 g cheddar",
             "25 g butter_salted", "25 g plain_flour", "300 ml semi_skimmed_milk",
             "1 pinch salt"}));
}

TEST(ManyLayouts, AListInsideASentence) {
  EXPECT_EQ(
      foods_of("Fruit salad note\n\nTomorrow 7B are making fruit salad. Each pupil should have "
               "brought two apples, 100g of grapes and a banana. In the fridge I have left a "
               "small tub (150g) of natural yoghurt for each pair.\n\nThey should wash the "
               "grapes and core and slice the apples. The banana is peeled and sliced last.\n"),
      (Lines{"2 apple_eating", "100 g grapes", "1 banana", "1 tub natural_yogurt"}));
}

TEST(ManyLayouts, TwoColumnsBesideEachOther) {
  const std::string text =
      "INGREDIENTS              METHOD\n\n200 g plain flour        1. Rub the butter into the\n"
      "100 g butter                flour until it looks like\n50 g sugar                  crumbs.\n"
      "1 egg                    2. Stir in the sugar and the\n                            beaten "
      "egg."
      "\n                         3. Bake at 180 C for 15 minutes.\n";
  EXPECT_EQ(foods_of(text).size(), 4U);
  EXPECT_EQ(steps_of(text), (Lines{"1. Rub the butter into the flour until it looks like crumbs.",
                                   "2. Stir in the sugar and the beaten egg.",
                                   "3. Bake at 180 C for 15 minutes."}));
}

TEST(ManyLayouts, StepsBesideEquipment) {
  EXPECT_EQ(
      foods_of("BUNS\n\nINGREDIENTS          EQUIPMENT\n100 G BUTTER         MIXING BOWL\n2 EGGS"
               "               WOODEN SPOON\n\nMETHOD\nBEAT THE EGGS INTO THE BUTTER.\n"),
      (Lines{"100 g butter_salted", "2 egg_whole"}));
}

TEST(ManyLayouts, StepsInAFewWords) {
  const std::string text =
      "Pizza toast\n\nWeigh out\nbread 2 slices\ntomato puree 2 tbsp\ncheese 50g\n\nGet "
      "going\nGrill "
      "on\nToast bread one side\nPuree on other side, cheese over\nUnder grill 3 min\n";
  EXPECT_EQ(foods_of(text).size(), 3U);
  EXPECT_GE(steps_of(text).size(), 4U);
}

TEST(ManyLayouts, WordsOfAPageAreNoPartOfTheDish) {
  const std::string text =
      "Home > Dinners > Meat free\nBean Burgers\nJump to recipe | Print | Share\nServes 4\n\nYou "
      "will "
      "need\n1 onion\n50g breadcrumbs\n1 egg\n\nHow to make it\nStir the onion and egg into the "
      "breadcrumbs.\n\nCOOK'S TIP\nUse 100g of rice instead.\n\nComments (2)   Sort by: "
      "Newest\nUsed "
      "200g lentils, lovely!\n\nYou might also like\n20-minute pasta\n";
  EXPECT_EQ(foods_of(text), (Lines{"1 onion", "50 g breadcrumbs_fresh", "1 egg_whole"}));
  EXPECT_EQ(steps_of(text), Lines{"Stir the onion and egg into the breadcrumbs."});
}

TEST(ManyLayouts, TimesBesideTheSteps) {
  const std::string text =
      "Savoury rice\n\nIngredients\n150 g rice\n1 onion\n\nMethod                                 "
      "Time\n"
      "1. Boil the rice in a large saucepan.  9.15\n2. Chop and fry the onion.             9.20\n";
  EXPECT_EQ(foods_of(text), (Lines{"150 g long_grain_rice", "1 onion"}));
  EXPECT_EQ(steps_of(text),
            (Lines{"1. Boil the rice in a large saucepan.", "2. Chop and fry the onion."}));
  EXPECT_EQ(
      steps_of("Rice\n\nIngredients\n150 g rice\n1 onion\n\nPlan\n1.45 Boil the rice in a pan.\n"
               "0-10 min: Chop the onion and fry it.\n"),
      (Lines{"Boil the rice in a pan.", "Chop the onion and fry it."}));
}

TEST(ManyLayouts, EquipmentFirst) {
  const std::string text =
      "Buns\n\nEquipment\nlarge bowl\nwooden spoon\n12-hole bun tin\n\n100g soft margarine\n2 "
      "eggs\n"
      "100g self-raising flour\n\n1 Cream the margarine in the bowl until pale.\n2 Beat in the "
      "eggs.\n"
      "3 Fold in the flour with the spoon.\n";
  EXPECT_EQ(foods_of(text).size(), 3U);
  EXPECT_EQ(steps_of(text).size(), 3U);
}

TEST(ManyLayouts, TheMethodFirstUnderHeadingsNobodyHasListed) {
  const std::string text =
      "Flapjack\n\nHere is how it goes\n\nMelt the butter, sugar and syrup in a pan.\nStir in the "
      "oats "
      "well.\n\nWhat goes into it\n\nButter (125 g)\nGolden syrup (3 tbsp)\nOats (250 g)\n";
  EXPECT_EQ(foods_of(text),
            (Lines{"125 g butter_salted", "3 tbsp golden_syrup", "250 g porridge_oats"}));
  EXPECT_EQ(steps_of(text).size(), 2U);
}

TEST(ManyLayouts, HeadingsMisspeltAndHeadingsOfParts) {
  const std::string text =
      "Tart\n\ningrediants\n175g flour\n85g butter\n2 eggs\n\nmethd\n\nMaking the pastry\nRub the "
      "butter "
      "into the flour.\n\nMaking the filling\nBeat the eggs well.\n";
  EXPECT_EQ(foods_of(text), (Lines{"175 g plain_flour", "85 g butter_salted", "2 egg_whole"}));
  EXPECT_EQ(steps_of(text), (Lines{"Rub the butter into the flour.", "Beat the eggs well."}));
}

TEST(ManyLayouts, NumberedIngredientsAboveNumberedSteps) {
  const std::string text =
      "Bread\nCollect from the front and tick off:\n\n1. 250g strong flour\n2. 1 sachet yeast\n3. "
      "150ml "
      "warm water\n4. 1 onion\n\nYour jobs:\n\n1. Person A: mix the flour and yeast.\n2. Both: add "
      "the "
      "water and knead for 10 minutes.\n";
  EXPECT_EQ(foods_of(text).size(), 4U);
  EXPECT_EQ(steps_of(text).size(), 2U);
}

TEST(ManyLayouts, APupilTellsWhatWasDone) {
  EXPECT_EQ(
      foods_of(
          "What we made\n\nFirst I washed 1 carrot and 1 red pepper and cut them into "
          "strips. Then my partner sliced 4 mushrooms. We heated 1 tablespoon of sunflower oil "
          "in the wok and fried the carrot for 4 minutes. I added 2 tablespoons of soy sauce "
          "and stirred it for 2 minutes.\n"),
      (Lines{"1 carrot", "1 red_pepper", "4 mushrooms_white", "1 tbsp sunflower_oil",
             "2 tbsp soy_sauce"}));
}

TEST(ManyLayouts, SeveralFoodsOnALine) {
  EXPECT_EQ(
      foods_of("Pancakes\n100g flour, pinch of salt; 2 eggs; 300ml milk / 1 tbsp sunflower oil\n\n"
               "Whisk flour, salt, eggs and milk. Fry in the oil.\n")
          .size(),
      5U);
  EXPECT_EQ(
      foods_of("Shortbread\n\nFlour 200g, butter 100g, sugar 50g\n\nRub the butter into the flour "
               "and add the sugar.\n")
          .size(),
      3U);
  EXPECT_EQ(
      foods_of("pasta salad\n\n150g pasta\n100g feta\ndressing is 2 tbsp olive oil, 1 tbsp lemon "
               "juice n 1 tsp dried oregano\n\nboil the pasta 10 mins and drain it well\n")
          .size(),
      5U);
}

TEST(ManyLayouts, PointsBetweenTheFoodsOfALine) {
  EXPECT_EQ(foods_of("Cheesecake\n200g digestive biscuits • 90g butter • juice of 1 lemon • 250g "
                     "raspberries, plus a few to decorate\n\nMelt the butter.\n"),
            (Lines{"200 g digestive_biscuits", "90 g butter_salted", "1 lemon_juice",
                   "250 g raspberries"}));
}

TEST(ManyLayouts, ShelvesOfTheShopBeforeTheFoods) {
  EXPECT_EQ(foods_of("Koftas\nShopping list\nMeat counter: 500g lamb mince\nCupboard: 2 tsp ground "
                     "cumin, 1 tbsp olive oil\nBakery: 4 pitta breads\nTo garnish - cucumber\n\n"
                     "Method\nMix the lamb and cumin.\n"),
            (Lines{"500 g lamb_mince", "2 tsp cumin_ground", "1 tbsp olive_oil", "4 pitta_white",
                   "cucumber"}));
}

TEST(ManyLayouts, PiecesInAColumnBesideTheirFood) {
  EXPECT_EQ(foods_of("Noodles\nAmount\tIngredient\tNotes\n2 nests\tegg noodles\t\n1 "
                     "clove\tgarlic\tcrushed\n250 g\trump steak\t\n\nMethod\nSlice the steak.\n"),
            (Lines{"2 nests egg_noodles_dry", "1 clove garlic", "250 g rump_steak"}));
}

TEST(ManyLayouts, OldPrintHasSpacesAroundItsMarks) {
  EXPECT_EQ(
      foods_of("Buns\n\n8 oz. (225 g.) self – raising flour\n4 oz. (110 g.) margarine\n1 egg\n\n"
               "Method\n\n1 .  Rub in the margarine.\n2 .  Beat the egg and stir it in.\n"),
      (Lines{"8 oz self_raising_flour", "4 oz soft_spread_60", "1 egg_whole"}));
}

}  // namespace
