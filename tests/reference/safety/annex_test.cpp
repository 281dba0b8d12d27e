// Annex II of Regulation (EU) No 1169/2011 of 25 October 2011, as amended by Delegated Regulation
// (EU) No 78/2014 (wheat "such as spelt and khorasan wheat"), kept in UK law by the Food
// Information Regulations 2014 (that it is kept: from memory). The facts below were written down
// from the Annex, point by point; its text was seen as quoted in public registers of allergens.
#include "safety/annex.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>
#include <string>

#include "../../support/shipped_foods.h"
#include "kitchen/words.h"

namespace {

using namespace safety;
using tests::shipped_foods;

Stated stated(const std::string& key, Allergen allergen) {
  kitchen::Ingredient i;
  i.food = key;
  if (shipped_foods().find(key) == nullptr) ADD_FAILURE() << "no food " << key;
  return statements(i, shipped_foods(), {})[at(allergen)].stated;
}

// Annex II: fourteen points, in this order.
TEST(AnnexII, HasFourteenPointsInItsOrder) {
  const char* const order[] = {"gluten", "crustaceans", "eggs",  "fish",    "peanuts",
                               "soya",   "milk",        "nuts",  "celery",  "mustard",
                               "sesame", "sulphites",   "lupin", "molluscs"};
  std::set<Allergen> seen;
  for (std::size_t i = 0; i < kAllergenCount; ++i) {
    EXPECT_EQ(kAnnexII[i].number, static_cast<int>(i) + 1);
    EXPECT_EQ(kitchen::word(kAnnexII[i].allergen), order[i]);
    seen.insert(kAnnexII[i].allergen);
  }
  EXPECT_EQ(seen.size(), 14U);
  EXPECT_EQ(std::size(kitchen::kAllergenWords), 14U);
}

// Point 1: wheat (such as spelt and khorasan wheat), rye, barley, oats and their crosses.
TEST(AnnexII, Point1TheCerealsNamedContainGlutenAndOthersDoNot) {
  for (const char* key :
       {"plain_flour", "strong_white_flour", "wholemeal_flour", "semolina", "couscous",
        "bulgur_wheat", "spelt_flour", "rye_flour", "pearl_barley", "porridge_oats", "oatmeal",
        "gf_oats", "malt_vinegar", "beer", "macaroni_dry", "seitan"})
    EXPECT_EQ(stated(key, Allergen::kGluten), Stated::kContains) << key;
  for (const char* key : {"cornflour", "polenta", "rice_flour", "buckwheat_flour", "quinoa",
                          "millet", "basmati_rice", "tapioca_flour", "arrowroot", "potato_flour"})
    EXPECT_EQ(stated(key, Allergen::kGluten), Stated::kNotListed) << key;
}

TEST(AnnexII, Point1TheCerealIsNamed) {
  const auto kinds = [](const char* key) {
    return kinds_in(*shipped_foods().find(key), Allergen::kGluten);
  };
  EXPECT_EQ(kinds("plain_flour"), std::vector<std::string>{"wheat"});
  EXPECT_EQ(kinds("rye_flour"), std::vector<std::string>{"rye"});
  EXPECT_EQ(kinds("pearl_barley"), std::vector<std::string>{"barley"});
  EXPECT_EQ(kinds("porridge_oats"), std::vector<std::string>{"oats"});
  EXPECT_TRUE(kinds("buckwheat_flour").empty());
}

// Point 1 (a), (c): glucose syrup of wheat or barley is exempt; so it is never "contains".
TEST(AnnexII, Point1GlucoseSyrupIsExempt) {
  EXPECT_NE(stated("glucose_syrup", Allergen::kGluten), Stated::kContains);
}

// Point 2 and point 14 are two points: crustaceans, molluscs.
TEST(AnnexII, Points2And14CrustaceansAreNotMolluscs) {
  for (const char* key : {"prawns_raw", "prawns_cooked", "crab_white"}) {
    EXPECT_EQ(stated(key, Allergen::kCrustaceans), Stated::kContains) << key;
    EXPECT_EQ(stated(key, Allergen::kMolluscs), Stated::kNotListed) << key;
  }
  for (const char* key : {"mussels", "squid", "oyster_sauce"}) {
    EXPECT_EQ(stated(key, Allergen::kMolluscs), Stated::kContains) << key;
    EXPECT_EQ(stated(key, Allergen::kCrustaceans), Stated::kNotListed) << key;
  }
}

// Points 3, 4, 7: products thereof too.
TEST(AnnexII, Points3And4And7ProductsCountToo) {
  for (const char* key : {"egg_whole", "egg_white", "egg_yolk", "mayonnaise", "meringue_nests"})
    EXPECT_EQ(stated(key, Allergen::kEggs), Stated::kContains) << key;
  for (const char* key : {"cod_fillet", "anchovies", "fish_sauce", "worcestershire_sauce"})
    EXPECT_EQ(stated(key, Allergen::kFish), Stated::kContains) << key;
  // Milk includes lactose: milk without lactose is still milk, and so are butter, ghee, goat's
  // milk.
  for (const char* key : {"whole_milk", "lactose_free_milk", "goats_milk", "butter_salted", "ghee",
                          "cheddar", "milk_chocolate"})
    EXPECT_EQ(stated(key, Allergen::kMilk), Stated::kContains) << key;
  EXPECT_EQ(stated("coconut_milk", Allergen::kMilk), Stated::kNotListed);
}

// Point 5: peanuts are no nuts of point 8, and groundnut oil is not exempt.
TEST(AnnexII, Point5PeanutsAreAPointOfTheirOwn) {
  for (const char* key : {"peanuts_plain", "peanut_butter", "groundnut_oil"}) {
    EXPECT_EQ(stated(key, Allergen::kPeanuts), Stated::kContains) << key;
    EXPECT_NE(stated(key, Allergen::kNuts), Stated::kContains) << key;
  }
}

// Point 6 (a): fully refined soya oil and fat are exempt, soya itself and its sauces are not.
TEST(AnnexII, Point6SoyaButNotItsFullyRefinedOil) {
  for (const char* key :
       {"tofu_firm", "soy_sauce", "tamari", "edamame", "soya_flour", "miso_paste"})
    EXPECT_EQ(stated(key, Allergen::kSoya), Stated::kContains) << key;
  EXPECT_NE(stated("white_vegetable_fat", Allergen::kSoya), Stated::kContains);
  EXPECT_NE(annex_point(Allergen::kSoya).exempt.find("fully refined"), std::string_view::npos);
}

// Point 8: almonds, hazelnuts, walnuts, cashews, pecans, Brazil nuts, pistachios, macadamias.
TEST(AnnexII, Point8IsEightNutsAndNoOthers) {
  EXPECT_EQ(kTreeNuts.size(), 8U);
  std::set<std::string> found;
  for (const char* key : {"almonds_whole", "hazelnuts", "walnuts", "cashews", "pecans",
                          "brazil_nuts", "pistachios", "macadamias"}) {
    EXPECT_EQ(stated(key, Allergen::kNuts), Stated::kContains) << key;
    const auto kinds = kinds_in(*shipped_foods().find(key), Allergen::kNuts);
    EXPECT_EQ(kinds.size(), 1U) << key;
    found.insert(kinds.begin(), kinds.end());
  }
  EXPECT_EQ(found.size(), 8U);
  for (const char* key : {"pine_nuts", "chestnuts_cooked", "coconut_fresh", "desiccated_coconut",
                          "nutmeg", "peanuts_plain"})
    EXPECT_NE(stated(key, Allergen::kNuts), Stated::kContains) << key;
}

// Points 9, 10, 11, 13.
TEST(AnnexII, Points9To11And13) {
  EXPECT_EQ(stated("celery", Allergen::kCelery), Stated::kContains);
  EXPECT_EQ(stated("celery_seed", Allergen::kCelery), Stated::kContains);
  EXPECT_EQ(stated("mustard_powder", Allergen::kMustard), Stated::kContains);
  EXPECT_EQ(stated("mustard_seed", Allergen::kMustard), Stated::kContains);
  EXPECT_EQ(stated("tahini", Allergen::kSesame), Stated::kContains);
  EXPECT_EQ(stated("hummus", Allergen::kSesame), Stated::kContains);
  EXPECT_EQ(stated("sesame_oil", Allergen::kSesame), Stated::kContains);
  EXPECT_TRUE(may_be_there(stated("gf_plain_flour", Allergen::kLupin)));
}

// Point 12: more than 10 mg/kg or 10 mg/l as total SO2; ten is not more than ten.
TEST(AnnexII, Point12SulphitesAboveTenMilligrams) {
  EXPECT_FALSE(sulphites_declared(10));
  EXPECT_TRUE(sulphites_declared(10.5));
  EXPECT_EQ(stated("dried_apricots", Allergen::kSulphites), Stated::kContains);
}

}  // namespace
