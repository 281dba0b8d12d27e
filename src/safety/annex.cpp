#include "safety/annex.h"

#include <algorithm>
#include <initializer_list>
#include <set>
#include <stdexcept>

#include "base/folding.h"

namespace safety {

const std::array<AnnexPoint, kAllergenCount> kAnnexII = {{
    {1, Allergen::kGluten, "cereals containing gluten",
     "wheat (spelt and khorasan wheat too), rye, barley, oats and their crosses",
     "glucose syrup of wheat or barley, maltodextrin of wheat, cereals for distilled alcohol"},
    {2, Allergen::kCrustaceans, "crustaceans", "", ""},
    {3, Allergen::kEggs, "eggs", "", ""},
    {4, Allergen::kFish, "fish", "",
     "fish gelatine as a carrier for vitamins or carotenoids, fish gelatine or isinglass that "
     "clears "
     "beer and wine"},
    {5, Allergen::kPeanuts, "peanuts", "", ""},
    {6, Allergen::kSoya, "soybeans", "",
     "fully refined soya oil and fat, natural tocopherols, and phytosterols and stanol esters from "
     "soya"},
    {7, Allergen::kMilk, "milk, lactose too", "", "whey for distilled alcohol, lactitol"},
    {8, Allergen::kNuts, "nuts",
     "almonds, hazelnuts, walnuts, cashews, pecans, Brazil nuts, pistachios, macadamias",
     "nuts for distilled alcohol"},
    {9, Allergen::kCelery, "celery", "", ""},
    {10, Allergen::kMustard, "mustard", "", ""},
    {11, Allergen::kSesame, "sesame seeds", "", ""},
    {12, Allergen::kSulphites, "sulphur dioxide and sulphites",
     "above 10 mg in a kilogram or litre", ""},
    {13, Allergen::kLupin, "lupin", "", ""},
    {14, Allergen::kMolluscs, "molluscs", "", ""},
}};

const AnnexPoint& annex_point(Allergen allergen) {
  for (const AnnexPoint& point : kAnnexII) {
    if (point.allergen == allergen) return point;
  }
  throw std::logic_error("an allergen that is not in the Annex");
}

namespace {

struct KindWords {
  std::string_view kind;
  std::initializer_list<std::string_view> words;
};

const KindWords kCereals[] = {
    {"wheat", {"wheat", "semolina", "couscous", "bulgur", "durum", "wholewheat"}},
    {"wheat (spelt)", {"spelt"}},
    {"rye", {"rye"}},
    {"barley", {"barley", "malt", "malted"}},
    {"oats", {"oat", "oats", "oatmeal", "oatcake", "oatcakes"}}};

// Whole words only: buckwheat is not wheat.
bool has_word(const std::vector<std::string>& all, std::string_view word) {
  return std::any_of(all.begin(), all.end(), [&](const std::string& each) {
    return each == word || kitchen::singular(each) == word;
  });
}

}  // namespace

std::vector<std::string> kinds_in(const kitchen::Food& food, Allergen allergen) {
  if (!food.contains.contains(allergen)) return {};
  std::string text = food.name;
  const bool close = food.match == kitchen::Match::kExact || food.match == kitchen::Match::kNear;
  if (close) text += " " + food.source;
  const std::vector<std::string> words = base::words_of(base::folded(text));
  std::vector<std::string> out;
  if (allergen == Allergen::kGluten) {
    for (const KindWords& cereal : kCereals) {
      if (std::any_of(cereal.words.begin(), cereal.words.end(),
                      [&](std::string_view word) { return has_word(words, word); }))
        out.emplace_back(cereal.kind);
    }
  }
  if (allergen == Allergen::kNuts) {
    for (const std::string_view nut : kTreeNuts) {
      if (has_word(words, nut)) out.emplace_back(nut);
    }
  }
  return out;
}

}  // namespace safety
