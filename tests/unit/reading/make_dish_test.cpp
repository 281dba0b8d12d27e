#include "kitchen/reading/make_dish.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <functional>

#include "../../support/shipped_foods.h"
#include "../../support/shipped_task_times.h"
#include "kitchen/read.h"
#include "kitchen/reading/read_method.h"

namespace {

using namespace kitchen;
using testing::HasSubstr;

DishDraft curry() {
  DishDraft draft;
  draft.name.value = "Chicken curry";
  draft.portions.value = 2;
  for (const auto& [name, food] :
       {std::pair{"onion", "onion"}, std::pair{"chicken breast", "chicken_breast"},
        std::pair{"curry powder", "curry_powder"}, std::pair{"moon dust", ""}}) {
    IngredientDraft d;
    d.name = name;
    d.food.value = food;
    d.quantity.value = Quantity::pieces(Ratio(1), "");
    draft.ingredients.push_back(d);
  }
  read_method(draft,
              {{1, "", "Chop the onion."},
               {2, "", "Cut the chicken into cubes."},
               {3, "", "Fry the onion and chicken in a frying pan for 8 minutes."},
               {4, "", "Stir in the curry powder and simmer for 15 minutes."},
               {5, "", "Bake for 10 minutes."},
               {6, "", "Serve."}},
              tests::shipped_foods(), tests::shipped_task_times());
  return draft;
}

TEST(MakeDish, TheDishOfADraftIsWholeAndItsFileReadsBack) {
  const auto made = dish_from(curry(), tests::shipped_foods());
  ASSERT_TRUE(made) << made.problems()[0].message;
  EXPECT_EQ(made.value().dish.portions, 2);
  const auto again = read_dish(made.value().file, "again.json");
  ASSERT_TRUE(again);
  EXPECT_EQ(again.value(), made.value().dish);
}

TEST(MakeDish, WhatIsUnknownCountsAsAllFourteen) {
  const auto made = dish_from(curry(), tests::shipped_foods());
  EXPECT_EQ(made.value().dish.ingredients[3].contains.size(), 14U);
  EXPECT_THAT(made.value().assumed, testing::Contains(HasSubstr("'moon dust'")));
}

TEST(MakeDish, CheckTheLabelNeverCountsAsSafe) {
  const auto made = dish_from(curry(), tests::shipped_foods());
  const Food& powder = *tests::shipped_foods().find("curry_powder");
  for (const Allergen a : powder.check_for)
    EXPECT_TRUE(made.value().dish.ingredients[2].contains.count(a));
}

TEST(MakeDish, RawMeatWithoutACheckGetsTheProbe) {
  const auto made = dish_from(curry(), tests::shipped_foods());
  const auto& method = made.value().dish.method;
  EXPECT_TRUE(std::any_of(method.begin(), method.end(),
                          [](const Step& s) { return s.hazard == Hazard::kProbing; }));
}

// Whether a step waits for another, through others as well.
bool waits_for(const std::vector<Step>& method, std::size_t step, std::size_t other) {
  std::vector<std::size_t> open{step};
  std::vector<bool> seen(method.size(), false);
  while (!open.empty()) {
    const std::size_t s = open.back();
    open.pop_back();
    if (s == other) return true;
    if (seen[s]) continue;
    seen[s] = true;
    for (const Follows& f : method[s].follows) open.push_back(static_cast<std::size_t>(f.step));
  }
  return false;
}

std::size_t found(const std::vector<Step>& method, const std::function<bool(const Step&)>& is) {
  return static_cast<std::size_t>(std::find_if(method.begin(), method.end(), is) - method.begin());
}

TEST(MakeDish, NobodyWrapsMeatThatHasNotBeenProbed) {
  DishDraft draft = curry();
  draft.ingredients[3].name = "tortillas";
  draft.ingredients[3].food.value = "tortilla_wrap";
  read_method(draft,
              {{1, "", "Cut the chicken into strips."},
               {2, "", "Fry the chicken in a frying pan for 8 minutes."},
               {3, "", "Warm the tortillas in the microwave for 1 minute."},
               {4, "", "Divide the chicken between the tortillas, fold and roll up."},
               {5, "", "Serve."}},
              tests::shipped_foods(), tests::shipped_task_times());
  const auto made = dish_from(draft, tests::shipped_foods());
  ASSERT_TRUE(made) << made.problems()[0].message;
  const auto& method = made.value().dish.method;
  const std::size_t probe = found(method,
                                  [](const Step& s) { return s.hazard == Hazard::kProbing; });
  const std::size_t fry = found(method, [](const Step& s) { return s.says.starts_with("Fry"); });
  const std::size_t warm = found(method, [](const Step& s) { return s.says.starts_with("Warm"); });
  const std::size_t wrap = found(method,
                                 [](const Step& s) { return s.says.starts_with("Divide"); });
  ASSERT_LT(std::max({probe, fry, warm, wrap}), method.size());
  EXPECT_TRUE(waits_for(method, probe, fry));
  EXPECT_FALSE(waits_for(method, probe, warm));
  EXPECT_TRUE(waits_for(method, wrap, probe));
  EXPECT_LE(method[wrap].least, base::minutes(6));
}

TEST(MakeDish, AnOvenWithoutATemperatureIsAskedAboutAndTheAnswerAssumedIsSaid) {
  DishDraft draft = curry();
  ask(draft, tests::shipped_foods());
  EXPECT_LE(draft.questions.size(), 3U);
  EXPECT_THAT(draft.questions.front().asks, HasSubstr("How hot"));
  const auto made = dish_from(draft, tests::shipped_foods());
  EXPECT_THAT(made.value().assumed, testing::Contains(HasSubstr("180 °C was assumed")));
}

// A limit on the wait from "simmer" to "cook" could not be kept: shredding takes longer.
TEST(MakeDish, APanWaitsAsLongAsWhatIsDoneWithItsFoodMeanwhile) {
  DishDraft draft;
  draft.name.value = "Chicken soup";
  draft.portions.value = 2;
  IngredientDraft chicken;
  chicken.name = "chicken breast";
  chicken.food.value = "chicken_breast";
  chicken.quantity.value = Quantity::pieces(Ratio(2), "");
  draft.ingredients.push_back(chicken);
  read_method(draft,
              {{1, "", "Simmer the chicken in a large pan of stock for 20 minutes."},
               {2, "", "Lift out the chicken and shred it on a board."},
               {3, "", "Put the chicken back in the pan and simmer for 5 minutes."}},
              tests::shipped_foods(), tests::shipped_task_times());
  const auto made = dish_from(draft, tests::shipped_foods());
  ASSERT_TRUE(made) << made.problems()[0].message;
}

TEST(MakeDish, ATextWithoutAnActionIsRefused) {
  const auto made = dish_from(DishDraft{}, tests::shipped_foods());
  ASSERT_FALSE(made);
  EXPECT_EQ(made.problems()[0].code, "draft.no_steps");
}

}  // namespace
