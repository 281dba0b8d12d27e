#include "kitchen/reading/read_method.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <set>

#include "../../support/shipped_foods.h"
#include "../../support/shipped_task_times.h"
#include "base/folding.h"
#include "base/text.h"
#include "kitchen/reading/order_signs.h"
#include "kitchen/reading/order_weights.h"

namespace {

using namespace kitchen;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

IngredientDraft ingredient(const std::string& name, const std::string& food) {
  IngredientDraft d;
  d.name = name;
  d.food.value = food;
  return d;
}

DishDraft read(std::vector<IngredientDraft> ingredients, const std::vector<std::string>& lines) {
  DishDraft draft;
  draft.ingredients = std::move(ingredients);
  std::vector<MethodLine> method;
  for (const std::string& line : lines)
    method.push_back({static_cast<int>(method.size()) + 1, "", line});
  read_method(draft, method, tests::shipped_foods(), tests::shipped_task_times());
  return draft;
}

DishDraft pasta() {
  return read({ingredient("onion", "onion"), ingredient("oil", "rapeseed_oil"),
               ingredient("pasta", "pasta_shapes"), ingredient("cheddar cheese", "cheddar")},
              {"1. Peel and chop the onion.",
               "2. Heat the oil in a frying pan and fry the onion for 5-7 minutes until soft.",
               "3. Meanwhile, boil the pasta for 11 minutes, then drain.",
               "4. Stir the pasta into the onion, grate the cheese over and serve."});
}

TEST(ReadMethod, AStepIsWhatIsDoneBeforeTheNextWaitOrChangeOfPlace) {
  std::vector<std::string> says;
  for (const StepDraft& s : pasta().method) says.push_back(s.brief);
  EXPECT_THAT(says.front(), "Peel onion");
  EXPECT_THAT(says, testing::SizeIs(testing::Ge(5U)));
}

TEST(ReadMethod, MinutesStatedAreTakenAndTheirWordsKept) {
  const DishDraft draft = pasta();
  EXPECT_EQ(draft.method[1].least.value, base::minutes(5));
  EXPECT_EQ(draft.method[1].most.value, base::minutes(7));
  EXPECT_EQ(draft.method[1].least.confidence, 1);
}

TEST(ReadMethod, MinutesNotStatedComeFromTheTableOfTasks) {
  // f_durations of the reference tables: peel and dice one onion, novice median 6 min (common
  // practice, no source).
  const DishDraft draft = pasta();
  EXPECT_EQ(draft.method[0].least.value, base::minutes(6));
  EXPECT_LT(draft.method[0].least.confidence, 0.5);
}

TEST(ReadMethod, AttentionAndPlaceFollowTheWork) {
  const DishDraft draft = pasta();
  EXPECT_EQ(draft.method[0].attention.value, Attention::kHands);
  EXPECT_EQ(draft.method[1].attention.value, Attention::kStandBy);
  ASSERT_TRUE(draft.method[1].heat);
  EXPECT_EQ(draft.method[1].heat->value.vessel, "frying pan");
  EXPECT_EQ(draft.method[2].attention.value, Attention::kGlance);
}

TEST(ReadMethod, WhatIsDoneMeanwhileWaitsForNothing) {
  const DishDraft draft = pasta();
  EXPECT_THAT(draft.method[1].follows, ElementsAre(0));
  EXPECT_THAT(draft.method[2].follows, IsEmpty());
}

TEST(ReadMethod, DrainingABoilingPanIsALargePan) {
  const DishDraft draft = pasta();
  ASSERT_FALSE(draft.method[3].hazards.empty());
  EXPECT_EQ(draft.method[3].hazards.front().value, Hazard::kLargePan);
}

TEST(ReadMethod, AnOvenSetInAdvanceGivesTheBakeItsHeat) {
  const DishDraft draft = read(
      {ingredient("flour", "self_raising_flour")},
      {"Preheat the oven to gas mark 7. Grease a baking tray.",
       "Roll out the dough and cut into rounds.", "Bake for 12 minutes until golden."});
  EXPECT_TRUE(draft.method.front().preheat);
  const StepDraft& bake = draft.method.back();
  EXPECT_EQ(bake.attention.value, Attention::kLeave);
  EXPECT_EQ(bake.heat->value.celsius, 220);
}

TEST(ReadMethod, RawChickenOnABoardIsRawAndDeepOilNeedsEyes) {
  const DishDraft draft = read(
      {ingredient("chicken breasts", "chicken_breast"), ingredient("oil", "sunflower_oil")},
      {"Cut the chicken into strips.", "Deep-fry the chicken in the hot oil for 6 minutes."});
  EXPECT_EQ(draft.method[0].hygiene->value, Hygiene::kRaw);
  EXPECT_EQ(draft.method[1].attention.value, Attention::kNothingElse);
  EXPECT_EQ(draft.method[1].hazards.front().value, Hazard::kHotOil);
}

TEST(ReadMethod, WhatIsNotCookedAnyMoreIsReadyToEatAndRawMeatStaysRaw) {
  const DishDraft cold = read(
      {ingredient("soft cheese", "soft_cheese_full_fat"), ingredient("icing sugar", "icing_sugar"),
       ingredient("whipping cream", "whipping_cream")},
      {"Beat the soft cheese and icing sugar in a large bowl.",
       "Fold the cream into the cheese mixture.", "Chill for 2 hours."});
  for (const std::size_t i : {0U, 1U}) {
    ASSERT_TRUE(cold.method[i].hygiene) << i;
    EXPECT_EQ(cold.method[i].hygiene->value, Hygiene::kReadyToEat);
  }
  const DishDraft burgers = read(
      {ingredient("beef mince", "beef_mince_5"), ingredient("oil", "rapeseed_oil")},
      {"Put the mince in a bowl and mix it with your hands.", "Shape into 4 burgers.",
       "Fry the burgers in the oil for 6 minutes on each side."});
  ASSERT_TRUE(burgers.method[1].hygiene);
  EXPECT_EQ(burgers.method[1].hygiene->value, Hygiene::kRaw);
}

TEST(ReadMethod, WhatIsToldOfTheTimeOrTheLooksIsNotHandled) {
  const DishDraft draft = read(
      {ingredient("potatoes", "potato"), ingredient("beetroot", "beetroot_cooked"),
       ingredient("green chilli", "chilli_green"), ingredient("chilli powder", "chilli_powder")},
      {"Boil the potatoes in a large pan for 15 minutes.",
       "While the potatoes are cooking, cut the beetroot into wedges.",
       "Sprinkle with the chilli powder."});
  EXPECT_THAT(draft.method[1].uses, ElementsAre(1));
  EXPECT_THAT(draft.method[2].uses, ElementsAre(3));
}

TEST(ReadMethod, APanOfWaterWaitsForWhatIsBoiledInIt) {
  const DishDraft draft = read(
      {ingredient("noodles", "egg_noodles_dry"), ingredient("soy sauce", "soy_sauce"),
       ingredient("cornflour", "cornflour")},
      {"Put a large pan of water on to boil.", "Mix the cornflour and soy sauce in a small bowl.",
       "Cook the noodles in the boiling water for 4 minutes.",
       "Drain, pour over the sauce and "
       "serve."});
  EXPECT_EQ(draft.method[0].attention.value, Attention::kGlance);
  EXPECT_THAT(draft.method[1].follows, IsEmpty());
  EXPECT_THAT(draft.method[2].follows, ElementsAre(0));
}

TEST(ReadMethod, AMixtureIsFoundAgainByTheNameOfAFoodInIt) {
  const DishDraft draft = read({ingredient("soy sauce", "soy_sauce"), ingredient("honey", "honey"),
                                ingredient("carrot", "carrot")},
                               {"Mix the soy sauce and honey in a small bowl.",
                                "Stir-fry the carrot in a wok for 3 minutes.",
                                "Add the soy mixture and toss for 1 minute."});
  EXPECT_THAT(draft.method[1].follows, IsEmpty());
  EXPECT_THAT(draft.method[2].follows, ElementsAre(0, 1));
}

TEST(ReadMethod, EveryShortNameFitsTheWall) {
  for (const StepDraft& s : pasta().method) EXPECT_LE(base::letters(s.brief), 12U) << s.brief;
}

TEST(ReadMethod, AStoryBeforeTheFirstActionIsKeptAsUnread) {
  const DishDraft draft = read({}, {"This is lovely on a cold day.", "Chop the onion."});
  ASSERT_EQ(draft.unread.size(), 1U);
  EXPECT_THAT(draft.unread[0].line, HasSubstr("lovely"));
}

RC_GTEST_PROP(ReadMethod, NoWordOfTheTextIsLost, ()) {
  const std::vector<std::string> bits = {"Chop the onion",
                                         "fry for 5 minutes",
                                         "and",
                                         "then",
                                         "Meanwhile,",
                                         ".",
                                         "Bake at 180C.",
                                         "until golden",
                                         "Serve with rice.",
                                         "the sauce",
                                         ",",
                                         "Stir well",
                                         "2 eggs",
                                         "; drain",
                                         "Lovely!"};
  std::string text;
  const int length = *rc::gen::inRange(1, 14);
  for (int i = 0; i < length; ++i) text += *rc::gen::elementOf(bits) + " ";
  const DishDraft draft = read({}, {text});
  std::string kept;
  for (const auto& u : draft.unread) kept += " " + u.line;
  for (const auto& s : draft.method) kept += " " + s.says;
  // Joints at the end of a step ("and", "then") may go; every other word stays, each once.
  const auto words = [](const std::string& t) {
    std::vector<std::string> out;
    for (const std::string& w : base::words_of(base::folded(t))) {
      if (w != "and" && w != "then") out.push_back(w);
    }
    std::sort(out.begin(), out.end());
    return out;
  };
  RC_ASSERT(words(kept) == words(text));
}

// The table of weights is read by these names.
TEST(ReadMethod, EverySignOfTheOrderHasANameOfItsOwn) {
  std::set<std::string> names;
  for (int sign = 0; sign < sign_count(); ++sign) names.insert(sign_name(sign));
  EXPECT_EQ(std::ssize(names), sign_count());
  EXPECT_EQ(std::ssize(order_weights()), sign_count());
}

}  // namespace
