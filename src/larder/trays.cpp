#include "larder/trays.h"

#include <algorithm>
#include <map>
#include <tuple>

#include "base/folding.h"
#include "base/text.h"
#include "kitchen/weigh.h"
#include "larder/needs.h"

namespace larder {

using base::in_quotes;
using base::say;
using kitchen::Allergen;
using kitchen::Allergens;
using kitchen::Food;
using kitchen::Ingredient;
using kitchen::Quantity;

namespace {

bool meet(const Allergens& a, const Allergens& b) {
  return std::any_of(a.begin(), a.end(), [&](Allergen x) { return b.contains(x); });
}

class Setting {
 public:
  Setting(const kitchen::Lesson& lesson, const kitchen::Foods& foods)
      : lesson_(lesson), foods_(foods) {}

  Trays run() {
    measures();
    for (std::size_t c = 0; c < lesson_.cooks.size(); ++c) tray(static_cast<int>(c));
    std::stable_sort(out_.trays.begin(), out_.trays.end(), [](const Tray& a, const Tray& b) {
      return std::tuple(!a.apart, a.bay, a.place) < std::tuple(!b.apart, b.bay, b.place);
    });
    weighings();
    return std::move(out_);
  }

 private:
  // What the table knows, or what the ingredient itself says.
  Food food_for(const Ingredient& ingredient) const {
    if (const Food* known = kitchen::food_of(ingredient, foods_)) return *known;
    Food own;
    own.key = own.name = base::folded(ingredient.name);
    return own;
  }

  void measures() {
    std::map<std::string, std::pair<Food, std::vector<Quantity>>> all;
    for (const kitchen::Cook& cook : lesson_.cooks) {
      for (const int d : cook.dishes) {
        for (const Ingredient& i : lesson_.dishes[static_cast<std::size_t>(d)].ingredients) {
          const Quantity q = kitchen::quantity_of(i);
          const Food food = food_for(i);
          auto& [known, quantities] = all.try_emplace(food.key, food, std::vector<Quantity>())
                                          .first->second;
          if (q.stated()) quantities.push_back(q);
        }
      }
    }
    for (const auto& [key, each] : all) measures_[key] = measure_for(each.second, each.first);
  }

  Pot pot(const Ingredient& ingredient) const {
    const Food food = food_for(ingredient);
    Pot out;
    out.food = food.key;
    out.name = ingredient.name;
    out.preparation = ingredient.preparation;
    out.contains = ingredient.contains;
    out.measure = measures_.at(food.key);
    out.cold = food.storage == kitchen::Storage::kChilled ||
               food.storage == kitchen::Storage::kFrozen;
    const Quantity q = kitchen::quantity_of(ingredient);
    if (!q.stated()) {
      out.amount = "to taste";
      return out;
    }
    out.amount = kitchen::dimension(q.unit) == kitchen::Dimension::kCount
                     ? say(base::fraction_text(q.middle()), ingredient.unit.empty() ? "" : " ",
                           ingredient.unit)
                     : kitchen::quantity_text(q);
    const auto size = in_measure(q, food, out.measure);
    out.summed = static_cast<bool>(size);
    if (size) out.size = size.value();
    return out;
  }

  void tray(int index) {
    const kitchen::Cook& cook = lesson_.cooks[static_cast<std::size_t>(index)];
    const kitchen::Place& place = lesson_.room.places[static_cast<std::size_t>(cook.place)];
    Tray out;
    out.bay = place.bay;
    out.place = cook.place;
    out.cook = index;
    out.where = say("Bay ", lesson_.room.bays[static_cast<std::size_t>(place.bay)].name, ", ",
                    place.name);
    out.apart = !cook.avoids.empty();
    avoided_.insert(cook.avoids.begin(), cook.avoids.end());
    for (const int d : cook.dishes) {
      const kitchen::Dish& dish = lesson_.dishes[static_cast<std::size_t>(d)];
      out.dishes.push_back(dish.variant.empty() ? dish.name : dish.name + ", " + dish.variant);
      for (const Ingredient& i : dish.ingredients) {
        const Food* food = kitchen::food_of(i, foods_);
        if (food != nullptr && from_the_tap(*food)) continue;
        out.pots.push_back(pot(i));
        if (meet(i.contains, cook.avoids)) warn(out.where, i, dish.name);
      }
    }
    out_.trays.push_back(std::move(out));
  }

  void warn(const std::string& where, const Ingredient& ingredient, const std::string& dish) {
    out_.warnings.push_back(
        say(where, ": ", in_quotes(ingredient.name), " of ", in_quotes(dish),
            " counts as something this cook avoids, by its label or because the label is unread. "
            "Do not set the tray out before the school's own record and the label are checked."));
  }

  struct Rank {
    bool apart = false, avoided = false;
  };

  void weighings() {
    std::map<std::string, Weighing> all;
    std::map<std::string, Rank> ranks;
    for (const Tray& tray : out_.trays) {
      const std::string& place = lesson_.room.places[static_cast<std::size_t>(tray.place)].name;
      for (const Pot& pot : tray.pots) {
        Weighing& w = all[pot.food];
        if (w.food.empty()) {
          const Food* food = foods_.find(pot.food);
          w.food = pot.food;
          w.name = food == nullptr ? pot.name : food->name;
          w.measure = pot.measure;
          w.cold = pot.cold;
        }
        w.summed = w.summed && pot.summed;
        w.total += pot.size;
        portion(w, pot, place, tray.apart);
        Rank& rank = ranks[pot.food];
        rank.apart = rank.apart || tray.apart;
        rank.avoided = rank.avoided || meet(pot.contains, avoided_);
      }
    }
    for (auto& [food, w] : all) {
      std::stable_sort(w.portions.begin(), w.portions.end(),
                       [](const auto& a, const auto& b) { return a.size > b.size; });
      out_.weighings.push_back(std::move(w));
    }
    std::stable_sort(out_.weighings.begin(), out_.weighings.end(),
                     [&](const Weighing& a, const Weighing& b) {
                       const Rank& x = ranks[a.food];
                       const Rank& y = ranks[b.food];
                       return std::tuple(!x.apart, x.avoided, a.cold, a.name) <
                              std::tuple(!y.apart, y.avoided, b.cold, b.name);
                     });
    bool dirty = false;
    for (Weighing& w : out_.weighings) {
      w.clean_first = dirty && ranks[w.food].apart;
      dirty = dirty || ranks[w.food].avoided;
    }
  }

  static void portion(Weighing& w, const Pot& pot, const std::string& place, bool apart) {
    auto at = std::find_if(w.portions.begin(), w.portions.end(), [&](const auto& p) {
      return p.amount == pot.amount && p.size == pot.size;
    });
    if (at == w.portions.end())
      at = w.portions.insert(at, Weighing::Portion{pot.amount, pot.size, 0, {}, {}});
    ++at->times;
    (apart ? at->places_apart : at->places).push_back(place);
  }

  const kitchen::Lesson& lesson_;
  const kitchen::Foods& foods_;
  std::map<std::string, Measure> measures_;
  Allergens avoided_;
  Trays out_;
};

}  // namespace

Trays trays_of(const kitchen::Lesson& lesson, const kitchen::Foods& foods) {
  return Setting(lesson, foods).run();
}

}  // namespace larder
