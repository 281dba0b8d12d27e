// Allergens and diets for machines.
#include "base/text.h"
#include "kitchen/json_tree.h"
#include "kitchen/words.h"
#include "print/say_allergens.h"

namespace print {
namespace {

using kitchen::Dish;
using kitchen::Lesson;
using kitchen::Node;

Node texts(const std::vector<std::string>& all) {
  Node out = Node::list();
  for (const std::string& each : all) out.add(Node::of(each));
  return out;
}

Node cooks_of(const Lesson& lesson, const std::vector<int>& cooks) {
  Node out = Node::list();
  for (const int c : cooks) out.add(Node::of(lesson.cooks[static_cast<std::size_t>(c)].name));
  return out;
}

Node named(const Dish& dish) {
  Node out = Node::object();
  out.set("dish", Node::of(dish.name));
  if (!dish.variant.empty()) out.set("variant", Node::of(dish.variant));
  return out;
}

Node dishes_of(const Lesson& lesson, const std::vector<int>& dishes) {
  Node out = Node::list();
  for (const int d : dishes) out.add(named(lesson.dishes[static_cast<std::size_t>(d)]));
  return out;
}

Node dish_node(const Dish& dish, const safety::Evidence& evidence) {
  Node out = named(dish);
  const safety::Summary summary = safety::summary(dish, evidence.foods, evidence.labels);
  Node& allergens = out.set("allergens", Node::object());
  for (const safety::Allergen a : safety::kFourteen)
    allergens.set(kitchen::word(a), Node::of(word(summary[safety::at(a)])));
  Node& diets = out.set("diets", Node::object());
  for (const auto& diet : safety::kDietWords)
    diets.set(diet.word, Node::of(word(safety::strongest(safety::findings(
                             dish, {diet.value, safety::Reach::kEat}, evidence)))));
  Node& ingredients = out.set("ingredients", Node::list());
  for (const kitchen::Ingredient& each : dish.ingredients) {
    const safety::Statements said = safety::statements(each, evidence.foods, evidence.labels);
    Node& node = ingredients.add(Node::object());
    node.set("name", Node::of(each.name));
    const kitchen::Food* food = safety::food_of(each, evidence.foods);
    if (food != nullptr) node.set("food", Node::of(food->key));
    Node& statements = node.set("statements", Node::list());
    for (const safety::Allergen a : safety::kFourteen) {
      const safety::Statement& s = said[safety::at(a)];
      if (!safety::may_be_there(s.stated)) continue;
      Node& one = statements.add(Node::object());
      one.set("allergen", Node::of(kitchen::word(a)));
      one.set("stated", Node::of(word(s.stated)));
      one.set("from", Node::of(s.from));
    }
  }
  return out;
}

Node conflict_node(const Lesson& lesson, const safety::Conflict& c) {
  Node out = Node::object();
  out.set("cook", Node::of(lesson.cooks[static_cast<std::size_t>(c.cook)].name));
  out.set("need", Node::of(word(c.need)));
  out.set("seriousness", Node::of(word(c.seriousness)));
  out.set("stated", Node::of(word(c.stated)));
  out.set("says", Node::of(sentence(lesson, c)));
  Node& dishes = out.set("dishes", dishes_of(lesson, c.dishes));
  for (std::size_t i = 0; i < dishes.items.size(); ++i)
    dishes.items[i].set("stated", Node::of(word(c.of_dishes[i])));
  if (!c.others.empty()) out.set("brought_by", cooks_of(lesson, c.others));
  Node& remedies = out.set("settled_by", Node::list());
  for (const safety::Remedy& remedy : c.settled_by) remedies.add(Node::of(remedy.says));
  return out;
}

Node lesson_node(const AllergenLesson& one, const safety::Evidence& evidence) {
  const Lesson& lesson = one.lesson;
  Node out = Node::object();
  out.set("title", Node::of(lesson.title));
  out.set("date", Node::of(lesson.date));
  Node& dishes = out.set("dishes", Node::list());
  for (const int d : dishes_made(lesson))
    dishes.add(dish_node(lesson.dishes[static_cast<std::size_t>(d)], evidence));
  Node& needs = out.set("needs", Node::list());
  for (const safety::CookNeeds& cook : one.needs) {
    for (const safety::Need& need : cook.needs) {
      Node& node = needs.add(Node::object());
      node.set("cook", Node::of(lesson.cooks[static_cast<std::size_t>(cook.cook)].name));
      node.set("need", Node::of(word(need)));
      node.set("reach", Node::of(kitchen::word_for(safety::kReachWords, need.reach)));
    }
  }
  Node& conflicts = out.set("conflicts", Node::list());
  for (const safety::Conflict& c : one.conflicts) conflicts.add(conflict_node(lesson, c));
  Node& order = out.set("order", Node::list());
  for (const safety::ThingOrder& thing : one.order) {
    Node& node = order.add(Node::object());
    node.set("thing", Node::of(thing.thing));
    Node& turns = node.set("turns", Node::list());
    for (const safety::Turn& turn : thing.turns) {
      Node& t = turns.add(Node::object());
      t.set("full_clean_before", Node::of(turn.clean_before));
      t.set("cooks", cooks_of(lesson, turn.cooks));
    }
  }
  return out;
}

Node leftover_node(const AllergenSheet& sheet, const safety::Leftover& left) {
  const Lesson& lesson = sheet.lessons[static_cast<std::size_t>(left.lesson)].lesson;
  const Lesson& before = sheet.lessons[static_cast<std::size_t>(left.before)].lesson;
  Node out = Node::object();
  out.set("lesson", Node::of(lesson.title));
  out.set("cook", Node::of(lesson.cooks[static_cast<std::size_t>(left.cook)].name));
  out.set("need", Node::of(word(left.need)));
  out.set("brought_by_lesson", Node::of(before.title));
  out.set("stated", Node::of(word(left.stated)));
  out.set("until", Node::of(left.since));
  out.set("dishes", dishes_of(before, left.dishes));
  out.set("replace", texts(left.replace));
  out.set("clean", texts(left.clean));
  return out;
}

}  // namespace

std::string allergens_json(const AllergenSheet& sheet) {
  Node out = Node::object();
  out.set("kind", Node::of("allergens"));
  out.set("version", Node::of(1));
  out.set("caution", Node::of(kLabelsDecide));
  Node& dishes = out.set("dishes", Node::list());
  for (const Dish& dish : sheet.dishes) dishes.add(dish_node(dish, sheet.evidence));
  Node& lessons = out.set("lessons", Node::list());
  for (const AllergenLesson& lesson : sheet.lessons)
    lessons.add(lesson_node(lesson, sheet.evidence));
  Node& left = out.set("left_over", Node::list());
  for (const safety::Leftover& each : sheet.leftovers) left.add(leftover_node(sheet, each));
  return kitchen::json_text(out);
}

}  // namespace print
