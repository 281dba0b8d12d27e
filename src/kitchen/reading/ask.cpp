// What only a person can know of a draft: at most three questions, what matters most first.
#include "base/text.h"
#include "kitchen/reading/make_dish.h"

namespace kitchen {

using base::in_quotes;
using base::say;

void ask(DishDraft& draft, const Foods& foods) {
  constexpr std::size_t kMost = 3;
  draft.questions.clear();
  const auto add = [&](std::string asks, std::vector<std::string> answers, std::string about) {
    if (draft.questions.size() < kMost)
      draft.questions.push_back({std::move(asks), std::move(answers), std::move(about)});
  };
  if (draft.portions.value < 1) add("How many does it serve?", {"4", "2", "6"}, "portions");
  for (std::size_t i = 0; i < draft.method.size(); ++i) {
    const StepDraft& s = draft.method[i];
    const bool oven = s.heat && s.heat->value.where == Where::kOven && !s.preheat;
    if (!oven || s.heat->value.celsius) continue;
    add(say("How hot is the oven for ", in_quotes(s.brief), "?"), {"180 °C", "200 °C", "220 °C"},
        say("step ", i + 1, " heat"));
    break;
  }
  for (std::size_t i = 0; i < draft.ingredients.size(); ++i) {
    const IngredientDraft& d = draft.ingredients[i];
    const bool much = d.quantity.value.stated() && d.quantity.value.unit != Unit::kTeaspoon;
    if (!d.food.value.empty() || !much) continue;
    std::vector<std::string> answers;
    for (const std::string& key : d.other_foods) {
      const Food* food = foods.find(key);
      if (food != nullptr && answers.size() < 3) answers.push_back(food->name);
    }
    answers.emplace_back("none of these");
    add(say("Which food is ", in_quotes(d.name.empty() ? d.line : d.name), "?"), answers,
        say("ingredient ", i + 1));
  }
  for (std::size_t i = 0; i < draft.ingredients.size(); ++i) {
    const IngredientDraft& d = draft.ingredients[i];
    // "200 g/2 lb": the two amounts of a line speak of different weights.
    if (d.quantity.confidence > 0.45 || d.also.empty()) continue;
    add(say("Which amount is right in ", in_quotes(d.line), "?"),
        {quantity_text(d.quantity.value), d.also}, say("ingredient ", i + 1));
  }
  for (std::size_t i = 0; i < draft.method.size(); ++i) {
    const StepDraft& s = draft.method[i];
    const bool guessed = s.least.confidence < 0.5 && s.attention.value == Attention::kLeave;
    if (!guessed || s.preheat) continue;
    add(say("How long does ", in_quotes(s.brief), " take?"),
        {base::minutes_text(s.least.value), base::minutes_text(s.least.value * 2)},
        say("step ", i + 1, " minutes"));
  }
}

}  // namespace kitchen
