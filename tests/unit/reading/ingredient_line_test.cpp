#include "kitchen/reading/ingredient_line.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "../../support/shipped_foods.h"
#include "../../support/shipped_task_times.h"
#include "base/text.h"

namespace {

using namespace kitchen;

const FoodMatcher& matcher() {
  static const FoodMatcher kMatcher(tests::shipped_foods());
  return kMatcher;
}

std::vector<IngredientDraft> read(std::string_view line, bool american = false) {
  return read_ingredient_line(line, matcher(), Measures{american});
}

// "amount | food | preparation"
std::string said(std::string_view line, bool american = false) {
  std::string out;
  for (const IngredientDraft& d : read(line, american)) {
    if (!out.empty()) out += " AND ";
    out += base::trimmed(
        base::say(quantity_text(d.quantity.value), " | ", d.food.value, " | ", d.preparation));
  }
  return out;
}

TEST(IngredientLine, AmountsAreExactHoweverTheyAreTyped) {
  for (const char* half : {"1/2 tsp salt", "½ tsp salt", "0.5 tsp salt", "half a tsp salt",
                           "half a teaspoon of salt", "0,5 tsp salt"})
    EXPECT_EQ(said(half), "1/2 tsp | salt |") << half;
  for (const char* more :
       {"1½ tsp salt", "1 1/2 tsp salt", "1-1/2 tsp salt", "one and a half tsp salt",
        "1 ½ tsp salt", "1.5 tsp salt", "1 and a half teaspoons salt"})
    EXPECT_EQ(said(more), "1 1/2 tsp | salt |") << more;
  for (const char* range :
       {"2-3 carrots", "2 to 3 carrots", "2–3 carrots", "2 or 3 carrots", "two to three carrots"})
    EXPECT_EQ(said(range), "2 to 3 | carrot |") << range;
  EXPECT_EQ(read("2/3 cup sugar", true)[0].quantity.value.least, Ratio(2, 3));
  EXPECT_EQ(said("1,000 g potatoes"), "1000 g | potato |");
  EXPECT_EQ(said("1 lb 4 oz carrots"), "20 oz | carrot |");
  EXPECT_EQ(said("2 tbsp + 1 tsp honey"), "7 tsp | honey |");
  EXPECT_EQ(read("1 cup plus 2 tbsp sugar", true)[0].quantity.value.least, Ratio(9, 8));
  EXPECT_EQ(said("1 T honey"), "1 tbsp | honey |");
  EXPECT_EQ(said("1 t honey"), "1 tsp | honey |");
  EXPECT_EQ(said("half a dozen eggs"), "6 | egg_whole |");
}

TEST(IngredientLine, TinsAreCountedAndTheirSizeIsKept) {
  for (const char* line : {"2 x 400g tins chopped tomatoes", "2 400g tins chopped tomatoes",
                           "2 × 400 g tins of chopped tomatoes"}) {
    EXPECT_EQ(said(line), "2 tins | chopped_tomatoes_tinned |") << line;
    EXPECT_EQ(base::replaced(read(line)[0].also, ' ', '_').substr(0, 3), "400") << line;
  }
  EXPECT_EQ(said("400g tin of chopped tomatoes"), "1 tin | chopped_tomatoes_tinned |");
  EXPECT_EQ(said("1 (14 oz) can chickpeas, drained"), "1 can | chickpeas_tinned | drained");
}

TEST(IngredientLine, ABlockIsWhatItWeighs) {
  EXPECT_EQ(said("100g block cheddar, grated"), "100 g | cheddar | grated");
  EXPECT_EQ(said("200 g block of feta"), "200 g | feta |");
  EXPECT_EQ(said("4 oz block margerine, diced"), "4 oz | baking_block | diced");
}

TEST(IngredientLine, ASecondAmountIsKeptAndMustAgree) {
  EXPECT_EQ(read("225g/8oz butter")[0].also, "8oz");
  EXPECT_EQ(read("8 oz (225 g) butter")[0].also, "(225 g)");
  EXPECT_GE(read("225g/8oz butter")[0].confidence, 0.9);
  const IngredientDraft wrong = read("200 g/2 lb sugar")[0];
  EXPECT_EQ(wrong.also, "2 lb");
  EXPECT_LE(wrong.confidence, 0.45);
}

TEST(IngredientLine, AmountsMayStandBehindTheFood) {
  for (const char* line : {"Flour - 200g", "Flour 200g", "flour: 200 g", "Flour (200g)",
                           "Flour ..... 200 g", "Flour, 200g"})
    EXPECT_EQ(said(line), "200 g | plain_flour |") << line;
  EXPECT_EQ(said("Eggs x 2"), "2 | egg_whole |");
  EXPECT_EQ(said("Garlic - 2 cloves"), "2 cloves | garlic |");
}

TEST(IngredientLine, OneLineMayNameSeveralIngredients) {
  EXPECT_EQ(said("salt and pepper"), "to taste | salt | AND to taste | black_pepper |");
  EXPECT_EQ(said("1 tsp each ground cumin and ground coriander"),
            "1 tsp | cumin_ground | AND 1 tsp | coriander_ground |");
  EXPECT_EQ(said("50g macaroni, cooked"), "50 g | macaroni_dry | cooked");
}

TEST(IngredientLine, PartsOfFruitAreToldFromTheFruit) {
  EXPECT_EQ(said("juice of half a lemon"), "1/2 | lemon_juice |");
  EXPECT_EQ(said("finely grated zest of 1 lemon"), "1 | lemon_zest | finely grated");
  EXPECT_EQ(said("zest and juice of 1 lemon"), "1 | lemon | zest and juice");
  EXPECT_EQ(said("1 lemon, zest and juice"), "1 | lemon | zest and juice");
}

TEST(IngredientLine, WhatIsSaidOfTheFoodIsSortedOut) {
  const IngredientDraft eggs = read("2 large free-range eggs, beaten")[0];
  EXPECT_EQ(eggs.quality, "large free-range");
  EXPECT_EQ(eggs.name, "eggs");
  EXPECT_EQ(eggs.preparation, "beaten");
  EXPECT_TRUE(read("50 g nuts (optional)")[0].optional);
  EXPECT_TRUE(read("lemon wedges, to serve")[0].garnish);
  EXPECT_FALSE(read("200g plain flour, plus extra for dusting")[0].garnish);
  EXPECT_EQ(read("100g butter or margarine")[0].or_instead, std::vector<std::string>{"margarine"});
  EXPECT_EQ(said("vegetable or sunflower oil, for frying"), "to taste | rapeseed_oil | for frying");
  EXPECT_EQ(said("4 boneless, skinless chicken thighs, cut into strips"),
            "4 | chicken_thigh_fillet | cut into strips");
  EXPECT_EQ(said("1 onion peeled and diced"), "1 | onion | peeled and diced");
}

TEST(IngredientLine, TheFormOfAFoodIsRespected) {
  EXPECT_EQ(said("1 tsp dried thyme"), "1 tsp | thyme_dried |");
  EXPECT_EQ(said("2 sprigs thyme"), "2 sprigs | thyme_fresh |");
  EXPECT_EQ(said("1 tsp coriander"), "1 tsp | coriander_ground |");
  EXPECT_EQ(said("a bunch of coriander"), "1 bunch | coriander_fresh |");
  EXPECT_EQ(said("1 tsp ground ginger"), "1 tsp | ginger_ground |");
  EXPECT_EQ(said("2cm piece ginger"), "1 piece | ginger_root |");
  EXPECT_EQ(said("200g dried chickpeas"), "200 g | chickpeas_dry |");
  EXPECT_EQ(said("1 tin chickpeas"), "1 tin | chickpeas_tinned |");
  EXPECT_EQ(said("4 chopped tomatoes"), "4 | tomato | chopped");
  EXPECT_EQ(said("2 cups cooked rice"), "2 cups | rice_cooked_white |");
  EXPECT_EQ(said("100 g self-raising flour"), "100 g | self_raising_flour |");
  EXPECT_EQ(said("1 pepper"), "1 | red_pepper |");
}

TEST(IngredientLine, TheAmountMayStandAnywhereBehindTheFood) {
  EXPECT_EQ(said("parmesan, finely grated, 60g plus extra to serve").substr(0, 15),
            "60 g | parmesan");
  EXPECT_EQ(said("oats 250g not the big ones").substr(0, 20), "250 g | porridge_oat");
  EXPECT_EQ(said("cinnamon half a tea spoon"), "1/2 tsp | cinnamon_ground |");
  EXPECT_EQ(said("chedder cheese, 2 handfulls"), "2 handfuls | cheddar |");
  EXPECT_EQ(said("savoiardi biscuits, 24"), "24 | sponge_fingers |");
}

TEST(IngredientLine, MisspeltFoodsAreFoundByTheirSound) {
  EXPECT_EQ(said("4 sossages"), "4 | pork_sausage |");
  EXPECT_EQ(said("2 chiken breats cut in strips"), "2 | chicken_breast | cut in strips");
  EXPECT_EQ(said("2 tabel spoons coco powder"), "2 tbsp | cocoa_powder |");
  EXPECT_EQ(said("200g plain flower"), "200 g | plain_flour |");
}

// What is weighed apart may hold an allergen of its own.
TEST(IngredientLine, WhatIsMixedInByWeightIsAnIngredientOfItsOwn) {
  EXPECT_EQ(said("1 egg beaten with 2 tbsp milk"),
            "1 | egg_whole | beaten with 2 tbsp milk AND 2 tbsp | semi_skimmed_milk |");
  EXPECT_EQ(said("250 g butter plus 1 tbsp for the tin").substr(0, 21), "250 g | butter_salted");
}

TEST(IngredientLine, MeasuresOfOtherKitchensAreKnown) {
  EXPECT_EQ(said("1 gill milk"), "5 fl oz | semi_skimmed_milk |");
  EXPECT_EQ(said("20 dag butter"), "200 g | butter_salted |");
  EXPECT_EQ(said("2 soup spoons oil"), "2 tbsp | rapeseed_oil |");
  EXPECT_EQ(said("1 cup (250 ml) milk", true), "1 cup | semi_skimmed_milk |");
  EXPECT_EQ(said("l tsp. mixed spice"), "1 tsp | mixed_spice |");
}

// Once these figures were read for ever.
TEST(IngredientLine, APointBeforeTooManyFiguresIsReadPast) {
  for (const char* line : {".12345678 g flour", ".12345678", "flour .1234567890123"})
    EXPECT_NO_THROW(static_cast<void>(read(line))) << line;
  EXPECT_EQ(said(".5 kg flour"), "0.5 kg | plain_flour |");
}

TEST(IngredientLine, NoFoodIsForcedOnWhatIsNotInTheTable) {
  for (const char* line : {"2 rashers vegan bacon", "1 tbsp gochujang", "3 xqzv",
                           "1 chocolate orange", "2 dog biscuits"}) {
    const IngredientDraft draft = read(line)[0];
    EXPECT_EQ(draft.food.value, "") << line;
    EXPECT_LE(draft.confidence, 0.5) << line;
  }
  EXPECT_FALSE(read("200 g chocolate orange")[0].other_foods.empty());
}

// A pupil's allergy hangs on this: "dairy-free cheese" must never become cheese.
TEST(IngredientLine, AFreeFromFoodIsNeverTheFoodItIsFreeOf) {
  for (const Food& food : tests::shipped_foods().all()) {
    std::vector<std::string> names = food.other_names;
    names.push_back(food.name);
    for (const std::string& name : names) {
      const auto milk = read("100 g dairy-free " + name);
      const auto gluten = read("100 g gluten-free " + name);
      const auto nuts = read("100 g nut-free " + name);
      const auto contains = [](const std::vector<IngredientDraft>& drafts, Allergen allergen) {
        if (drafts.empty() || drafts[0].food.value.empty()) return false;
        // Gluten-free oats stand among the cereals with gluten of the regulation all the same.
        if (drafts[0].food.value.starts_with("gf_")) return false;
        return tests::shipped_foods().find(drafts[0].food.value)->contains.contains(allergen);
      };
      EXPECT_FALSE(contains(milk, Allergen::kMilk)) << name << " -> " << milk[0].food.value;
      EXPECT_FALSE(contains(gluten, Allergen::kGluten)) << name << " -> " << gluten[0].food.value;
      EXPECT_FALSE(contains(nuts, Allergen::kNuts)) << name << " -> " << nuts[0].food.value;
    }
  }
}

TEST(IngredientLine, WhatIsShunnedIsNotOfferedInstead) {
  for (const char* line : {"2 rashers vegan bacon", "100 g vegan cheddar slices",
                           "1 dairy-free cream cheese", "4 vegan beef burgers"}) {
    const auto drafts = read(line);
    for (const std::string& key : drafts[0].other_foods) {
      const Food& food = *tests::shipped_foods().find(key);
      EXPECT_FALSE(food.contains.contains(Allergen::kMilk)) << line << ": " << key;
      EXPECT_NE(food.vegetarian, Known::kNo) << line << ": " << key;
    }
  }
}

// What the table itself calls a food is read as that food, with an amount before it.
TEST(IngredientLine, EveryNameOfTheTableIsReadAsItsFood) {
  int names = 0, right = 0;
  for (const Food& food : tests::shipped_foods().all()) {
    for (const std::string& name : food.other_names) {
      if (name.find('(') != std::string::npos) continue;
      ++names;
      const auto drafts = read("100 g " + name);
      if (drafts.size() == 1 && drafts[0].food.value == food.key) {
        ++right;
      } else {
        std::cout << name << " is " << food.key << ", read "
                  << (drafts.empty() ? "nothing" : drafts[0].food.value) << "\n";
      }
    }
  }
  std::cout << right << " of " << names << " names\n";
  EXPECT_GE(right * 1000, names * 985);
}

RC_GTEST_PROP(IngredientLine, AnyWordsAreReadWithoutHarm, ()) {
  static const std::vector<std::string> kBits = {
      "1",        "½",           "1/2",      "x",     "(",        ")",   "-",    "–",
      ",",        "or",          "and",      "each",  "tin",      "g",   "400g", "tbsp",
      "juice of", "zest",        "half a",   "a",     "dozen",    "of",  "eggs", "salt",
      "chopped",  "finely",      "fresh",    "large", "/",        "+",   "plus", "0",
      "%",        "to",          "cut into", "🥦",  "\xD7\x92", "cup", ".",    ":",
      "to taste", "99999999999", "1,5",      "[",     "oz",       "lb",  "'",    "\""};
  std::string line;
  const int many = *rc::gen::inRange(0, 12);
  for (int i = 0; i < many; ++i)
    line += *rc::gen::elementOf(kBits) + (*rc::gen::inRange(0, 3) ? " " : "");
  for (const IngredientDraft& draft : read(line, *rc::gen::arbitrary<bool>())) {
    RC_ASSERT(draft.line == line);
    RC_ASSERT(draft.confidence >= 0 && draft.confidence <= 1);
    RC_ASSERT(draft.quantity.value.least <= draft.quantity.value.most);
    RC_ASSERT(draft.food.value.empty() || tests::shipped_foods().find(draft.food.value) != nullptr);
    RC_ASSERT(!base::not_utf8(draft.name) && !base::not_utf8(draft.preparation));
  }
}

}  // namespace
