// How an allergen gets about in the air of a room: flour when it is sifted or kneaded, steam of
// fish and shellfish, dust of nuts and seeds. Common practice, no source.
#include <algorithm>
#include <initializer_list>

#include "base/folding.h"
#include "safety/conflict_parts.h"

namespace safety {
namespace {

bool says_one(const std::string& text, std::initializer_list<std::string_view> words) {
  return std::any_of(words.begin(), words.end(),
                     [&](std::string_view word) { return text.find(word) != std::string::npos; });
}

bool heats(const kitchen::Step& step) {
  return step.heat && step.heat->with != kitchen::HeatKind::kOven;
}

}  // namespace

std::string flies(const kitchen::Dish& dish, int step, const Need& need, const Evidence& evidence) {
  if (!of_health(need)) return {};
  const kitchen::Step& s = dish.method[static_cast<std::size_t>(step)];
  if (s.uses.empty()) return {};  // says nothing of what is in the air now
  const Diet* diet = std::get_if<Diet>(&need.what);
  const Allergen allergen = diet != nullptr ? Allergen::kGluten : std::get<Allergen>(need.what);
  const std::string text = base::folded(s.says);
  for (const Finding& f : findings_of_step(dish, step, need, evidence)) {
    if (f.statement.stated < Stated::kCheckLabel || f.ingredient < 0) continue;
    const std::string name = base::folded(
        dish.ingredients[static_cast<std::size_t>(f.ingredient)].name);
    switch (allergen) {
      case Allergen::kGluten:
      case Allergen::kLupin:
      case Allergen::kSoya:
        if (name.find("flour") != std::string::npos &&
            says_one(text, {"sift", "siev", "dust", "knead", "roll", "rub", "mix", "tip", "flour"}))
          return "flour dust";
        break;
      case Allergen::kFish:
      case Allergen::kCrustaceans:
      case Allergen::kMolluscs:
        if (heats(s)) return "steam";
        break;
      case Allergen::kNuts:
      case Allergen::kPeanuts:
      case Allergen::kSesame:
        if (says_one(text, {"grind", "chop", "crush", "blitz", "toast", "process", "pound"}))
          return "dust";
        break;
      case Allergen::kMilk:
      case Allergen::kEggs:
        if (heats(s) && says_one(text, {"boil", "steam", "fry"})) return "steam";
        break;
      case Allergen::kCelery:
      case Allergen::kMustard:
      case Allergen::kSulphites:
        break;
    }
  }
  return {};
}

}  // namespace safety
