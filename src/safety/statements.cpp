#include "safety/statements.h"

#include <algorithm>

#include "base/text.h"

namespace safety {
namespace {

using kitchen::Dish;
using kitchen::Food;
using kitchen::Foods;
using kitchen::Ingredient;

std::string label_words(const LabelRead& label) {
  return base::say("the label of ", label.pack, ", read ", label.read_on);
}

// Notes what one more source says; of sources of equal strength all are named.
void note(Statement& so_far, Stated stated, const std::string& from) {
  if (stated < so_far.stated) return;
  if (stated == so_far.stated && !so_far.from.empty()) {
    so_far.from += " and " + from;
    return;
  }
  so_far = {stated, from};
}

Statement statement(const Ingredient& ingredient, Allergen allergen, const Food* food,
                    const std::vector<const LabelRead*>& read) {
  Statement out{Stated::kNotListed, ""};
  // With the label unread `contains` holds all fourteen and says nothing of any one of them.
  if (ingredient.label_read && ingredient.contains.contains(allergen))
    note(out, Stated::kContains, "the dish");
  if (food != nullptr && food->contains.contains(allergen))
    note(out, Stated::kContains, food->schools_own ? "the school's foods" : "the table of foods");
  for (const LabelRead* label : read) {
    if (label->contains.contains(allergen)) note(out, Stated::kContains, label_words(*label));
    if (label->may_contain.contains(allergen)) note(out, Stated::kMayContain, label_words(*label));
  }
  if (may_be_there(out.stated)) return out;
  if (!read.empty()) return {Stated::kNotListed, label_words(*read.front())};
  if (food != nullptr && food->check_for.contains(allergen))
    return {Stated::kCheckLabel, food->schools_own ? "the school's foods" : "the table of foods"};
  if (!ingredient.label_read) return {Stated::kUnknown, "the dish says the label is unread"};
  if (food == nullptr) return {Stated::kUnknown, "the table of foods does not have it"};
  return {Stated::kNotListed, food->schools_own ? "the school's foods" : "the table of foods"};
}

Stated strongest_of(const Dish& dish, const std::vector<int>& used, Allergen allergen,
                    const std::vector<Statements>& said) {
  if (dish.ingredients.empty()) return Stated::kUnknown;
  Stated out = Stated::kNotListed;
  const auto take = [&](std::size_t i) { out = stronger(out, said[i][at(allergen)].stated); };
  if (used.empty()) {
    for (std::size_t i = 0; i < said.size(); ++i) take(i);
  }
  for (const int i : used) take(static_cast<std::size_t>(i));
  return out;
}

Summary summary_using(const Dish& dish, const std::vector<int>& used, const Foods& foods,
                      const Labels& labels) {
  std::vector<Statements> said;
  for (const Ingredient& ingredient : dish.ingredients)
    said.push_back(statements(ingredient, foods, labels));
  Summary out{};
  for (const Allergen a : kFourteen) out[at(a)] = strongest_of(dish, used, a, said);
  return out;
}

}  // namespace

std::string_view word(Stated stated) {
  switch (stated) {
    case Stated::kNotListed:
      return "not listed";
    case Stated::kUnknown:
      return "not known";
    case Stated::kCheckLabel:
      return "check the label";
    case Stated::kMayContain:
      return "may contain";
    case Stated::kContains:
      return "contains";
  }
  return {};
}

const Food* food_of(const Ingredient& ingredient, const Foods& foods) {
  return ingredient.food.empty() ? foods.named(ingredient.name) : foods.find(ingredient.food);
}

Statements statements(const Ingredient& ingredient, const Foods& foods, const Labels& labels) {
  const Food* food = food_of(ingredient, foods);
  const auto read = readings(labels, food != nullptr ? food->key : ingredient.food);
  Statements out;
  for (const Allergen a : kFourteen) out[at(a)] = statement(ingredient, a, food, read);
  return out;
}

void sort_by_strength(Findings& all) {
  std::stable_sort(all.begin(), all.end(), [](const Finding& a, const Finding& b) {
    return a.statement.stated > b.statement.stated;
  });
}

Stated strongest(const Findings& all) {
  Stated out = Stated::kNotListed;
  for (const Finding& each : all) out = stronger(out, each.statement.stated);
  return out;
}

Summary stronger(const Summary& a, const Summary& b) {
  Summary out{};
  for (std::size_t i = 0; i < kAllergenCount; ++i) out[i] = stronger(a[i], b[i]);
  return out;
}

Summary summary(const Dish& dish, const Foods& foods, const Labels& labels) {
  return summary_using(dish, {}, foods, labels);
}

Summary summary_of_step(const Dish& dish, int step, const Foods& foods, const Labels& labels) {
  return summary_using(dish, dish.method[static_cast<std::size_t>(step)].uses, foods, labels);
}

Summary summary_of_cook(const kitchen::Lesson& lesson, int cook, const Foods& foods,
                        const Labels& labels) {
  Summary out{};
  for (const int d : lesson.cooks[static_cast<std::size_t>(cook)].dishes)
    out = stronger(out, summary(lesson.dishes[static_cast<std::size_t>(d)], foods, labels));
  return out;
}

Summary summary_of_place(const kitchen::Lesson& lesson, int place, const Foods& foods,
                         const Labels& labels) {
  Summary out{};
  for (std::size_t c = 0; c < lesson.cooks.size(); ++c) {
    if (lesson.cooks[c].place == place)
      out = stronger(out, summary_of_cook(lesson, static_cast<int>(c), foods, labels));
  }
  return out;
}

Summary summary_of_lesson(const kitchen::Lesson& lesson, const Foods& foods, const Labels& labels) {
  Summary out{};
  for (std::size_t c = 0; c < lesson.cooks.size(); ++c)
    out = stronger(out, summary_of_cook(lesson, static_cast<int>(c), foods, labels));
  return out;
}

}  // namespace safety
