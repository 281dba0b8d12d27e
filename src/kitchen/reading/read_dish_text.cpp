#include "kitchen/reading/read_dish_text.h"

#include <algorithm>

#include "base/folding.h"
#include "base/text.h"
#include "kitchen/reading/cut_line.h"
#include "kitchen/reading/headline.h"
#include "kitchen/reading/ingredient_line.h"
#include "kitchen/reading/layout.h"
#include "kitchen/reading/line_looks.h"
#include "kitchen/reading/make_dish.h"
#include "kitchen/reading/method_line.h"
#include "kitchen/reading/read_method.h"
#include "kitchen/reading/told_foods.h"
#include "kitchen/reading/ware_words.h"

namespace kitchen {
namespace {

using base::in_quotes;
using base::say;

constexpr int kAssumedPortions = 4;  // common practice, no source

void set_portions(DishDraft& draft, const std::optional<Portions>& said) {
  if (!said) {
    draft.portions = {kAssumedPortions, 0.2, ""};
    draft.assumed.push_back(
        say("The text does not say how many it serves: ", kAssumedPortions, " is assumed."));
    return;
  }
  draft.portions = {said->least, said->least == said->most ? 0.95 : 0.8, said->words};
  if (said->least != said->most)
    draft.assumed.push_back(say(in_quotes(said->words), ": the smaller number is taken."));
}

// A line of its own first; "makes 16 - serves 4" and what is only said in passing tell it as well.
// How many eat goes before how many pieces there are.
std::optional<Portions> portions_of(const Layout& layout) {
  std::optional<PortionsTold> told;
  for (const LaidLine& line : layout.lines) {
    if (line.role == LineRole::kIngredient || line.role == LineRole::kTime) continue;
    const auto found = portions_told(tidied_line(line.text));
    // A step speaks of its own pieces; who it feeds may stand there when nothing else tells.
    if (!found || (line.role == LineRole::kMethod && (!found->people || told))) continue;
    if (!told || (found->people && !told->people)) told = found;
  }
  if (layout.portions && !(told && told->people)) return layout.portions;
  if (layout.portions && told->portions.least == layout.portions->least) return layout.portions;
  if (told) return told->portions;
  return layout.portions;
}

std::string name_in(const std::string& title, const FoodMatcher& foods) {
  std::string name = heading_text(dish_part(tidied_line(title), foods));
  const std::string folded = base::folded(name);
  for (const std::string_view label :
       {"chosen dish:", "title:", "recipe:", "dish:", "name:", "recipe for ", "how to make "}) {
    if (folded.starts_with(label) && folded.size() == name.size()) {
      name = trimmed_marks(name.substr(label.size()));
      break;
    }
  }
  // "Bean tacos (serves 4)", "Bean tacos - serves 4"
  for (const std::string_view tail :
       {"(serves", "(makes", "(for ", "- serves", "- makes", ", serves", "(feeds"}) {
    const auto at = base::lower(name).find(tail);
    if (at != std::string::npos && at > 2) name = trimmed_marks(name.substr(0, at));
  }
  constexpr std::size_t kLongestName = 120;
  return base::first_letters(trimmed_marks(name_alone(name)), kLongestName);
}

void add_ingredients(DishDraft& draft, const std::string& text, int number,
                     const std::string& group, const FoodMatcher& matcher,
                     const Measures& measures) {
  // "20 cm flan tin" in a list that does not part food and kit.
  if (only_ware(words_in_singular(tidied_line(text))) &&
      matcher.named(trimmed_marks(tidied_line(text))) == nullptr) {
    draft.unread.push_back({number, text});
    return;
  }
  auto read = read_ingredient_line(text, matcher, measures);
  if (read.empty()) draft.unread.push_back({number, text});
  for (IngredientDraft& each : read) {
    each.line_number = number;
    each.group = group;
    draft.ingredients.push_back(std::move(each));
  }
}

void say_measures(DishDraft& draft, const Measures& measures) {
  bool cup = false, american_cup = false, stick = false;
  for (const IngredientDraft& each : draft.ingredients) {
    cup = cup || each.quantity.value.unit == Unit::kCup;
    american_cup = american_cup || each.quantity.value.unit == Unit::kAmericanCup;
    stick = stick ||
            (each.quantity.value.piece == "stick" && each.food.value.starts_with("butter"));
  }
  if (american_cup) {
    draft.assumed.push_back(
        "The words of the text are American: a cup is taken as 236.6 ml (16 US tablespoons), pints "
        "and fluid ounces as American ones.");
  }
  if (cup && !measures.american)
    draft.assumed.push_back("A cup is taken as the metric cup of 250 ml.");
  if (stick) {
    // A quarter of an avoirdupois pound, sold as eight US tablespoons: US trade measure.
    draft.assumed.push_back(
        "A stick of butter is a US measure: half a US cup, a quarter of a pound, 113.4 g.");
  }
}

// A text without a list of ingredients tells them in its sentences.
void tell_foods(DishDraft& draft, const std::vector<MethodLine>& method, const FoodMatcher& matcher,
                const Measures& measures) {
  const bool begun = !draft.ingredients.empty();
  std::vector<std::pair<int, std::string>> lines;
  for (const MethodLine& line : method) lines.emplace_back(line.line_number, line.text);
  for (const auto& line : draft.unread)
    lines.emplace_back(line.line_number, tidied_line(line.line));
  std::stable_sort(lines.begin(), lines.end(),
                   [](const auto& a, const auto& b) { return a.first < b.first; });
  for (const bool named_only : {false, true}) {
    for (const auto& [number, text] : lines) {
      for (IngredientDraft& each :
           told_foods(text, matcher, measures, draft.ingredients, named_only)) {
        each.line_number = number;
        draft.ingredients.push_back(std::move(each));
      }
    }
    if (draft.ingredients.empty()) return;  // a story, not a dish
    if (begun) break;
  }
  if (draft.ingredients.size() > (begun ? 1U : 0U))
    draft.assumed.push_back(
        "The text has no list of ingredients: they are taken from its sentences.");
}

void end_draft(DishDraft& draft, const std::vector<MethodLine>& method, const Foods& foods,
               const TaskTimes& times) {
  if (draft.ingredients.empty())
    draft.assumed.push_back("No line was understood as an ingredient.");
  read_method(draft, method, foods, times);
  ask(draft, foods);
}

}  // namespace

DishDraft read_dish_text(std::string_view bytes, const Foods& foods, const TaskTimes& times) {
  return read_dish_text(bytes, FoodMatcher(foods), times);
}

DishDraft read_dish_text(std::string_view bytes, const FoodMatcher& matcher,
                         const TaskTimes& times) {
  DishDraft draft;
  std::string text(bytes.substr(0, kLongestText));
  if (base::not_utf8(text)) {
    if (const auto decoded = base::decoded(text)) text = decoded->text;
    // A letter cut in two at the limit, or UTF-16 that is broken.
    while (const auto at = base::not_utf8(text)) text[*at] = ' ';
  }
  if (bytes.size() > kLongestText)
    draft.assumed.push_back(say("The text is longer than ",
                                static_cast<long long>(kLongestText >> 20U),
                                " MB: the rest was not read."));
  const Layout layout = lay_out(text, matcher);
  const Measures measures{layout.american};
  set_portions(draft, portions_of(layout));
  std::vector<MethodLine> method;
  for (std::size_t i = 0; i < layout.lines.size(); ++i) {
    const LaidLine& line = layout.lines[i];
    switch (line.role) {
      case LineRole::kTitle:
        draft.name = {name_in(line.text, matcher), 0.9, line.text};
        break;
      case LineRole::kIngredient: {
        std::string whole = line.text;
        while (i + 1 < layout.lines.size() && layout.lines[i + 1].continues &&
               layout.lines[i + 1].role == LineRole::kIngredient)
          whole += " " + layout.lines[++i].text;
        add_ingredients(draft, whole, line.number, line.group, matcher, measures);
        break;
      }
      case LineRole::kMethod: {
        const std::string words(without_number(tidied_line(line.text)));
        if (line.continues && !method.empty()) {
          method.back().text += " " + words;
        } else {
          method.push_back({line.number, line.group, words});
        }
        break;
      }
      case LineRole::kTime:
      case LineRole::kUnread:
        draft.unread.push_back({line.number, line.text});
        break;
      case LineRole::kPortions:
      case LineRole::kHeading:
        break;
    }
  }
  // A greeting or a club above the text names no dish; a sentence may.
  if (draft.name.value.empty() || dish_likeness(draft.name.value, matcher) < 0) {
    for (const LaidLine& line : layout.lines) {
      if (line.role == LineRole::kIngredient) continue;
      const std::string name = dish_mentioned(tidied_line(line.text), matcher);
      if (name.empty()) continue;
      draft.name = {name, 0.6, line.text};
      if (draft.name.value[0] >= 'a' && draft.name.value[0] <= 'z')
        draft.name.value[0] = static_cast<char>(draft.name.value[0] - 'a' + 'A');
      break;
    }
  }
  if (draft.name.value.empty()) {
    draft.name = {"Dish without a name", 0, ""};
    draft.assumed.push_back("The text has no title.");
  }
  if (draft.ingredients.size() < 2) tell_foods(draft, method, matcher, measures);
  say_measures(draft, measures);
  end_draft(draft, method, matcher.foods(), times);
  return draft;
}

DishDraft read_dish_parts(const DishParts& parts, const Foods& foods, const TaskTimes& times) {
  DishDraft draft;
  draft.name = {parts.name.empty() ? "Dish without a name" : parts.name,
                parts.name.empty() ? 0.0 : 1.0, parts.name};
  std::optional<Portions> said;
  if (parts.portions > 0) said = Portions{parts.portions, parts.portions, parts.portions_words};
  set_portions(draft, said);
  std::string all;
  for (const auto& each : parts.ingredients) all += each.text + "\n";
  for (const auto& each : parts.method) all += each.text + "\n";
  const Measures measures{american_text(all)};
  const FoodMatcher matcher(foods);
  for (const auto& each : parts.ingredients)
    add_ingredients(draft, each.text, 0, each.group, matcher, measures);
  std::vector<MethodLine> method;
  for (const auto& each : parts.method) method.push_back({0, each.group, each.text});
  for (const std::string& each : parts.unread) draft.unread.push_back({0, each});
  say_measures(draft, measures);
  end_draft(draft, method, foods, times);
  return draft;
}

}  // namespace kitchen
