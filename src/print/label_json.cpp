// The label for machines.
#include "kitchen/json_tree.h"
#include "nutrition/five_a_day.h"
#include "nutrition/front_of_pack.h"
#include "nutrition/label.h"
#include "nutrition/profile.h"
#include "print/label_details.h"
#include "print/say_label.h"

namespace print {
namespace {

using namespace nutrition;
using kitchen::Node;

Node number_or_null(std::optional<double> value) { return value ? Node::of(*value) : Node(); }

std::string_view word_for(Sureness sure) {
  return sure == Sureness::kWhole ? "whole" : sure == Sureness::kAtLeast ? "at least" : "unsure";
}

Node figure(const Figure& of) {
  Node node = Node::object();
  node.set("amount", Node::of(of.amount));
  node.set("most", number_or_null(of.most));
  node.set("known", Node::of(word_for(of.sure)));
  return node;
}

Node label_lines(const std::vector<LabelLine>& lines) {
  Node out = Node::list();
  for (const LabelLine& line : lines) {
    Node& node = out.add(Node::object());
    node.set("name", Node::of(line.name));
    node.set("unit", Node::of(line.unit));
    node.set("portion", figure(line.portion));
    node.set("per_100_g", figure(line.per_100_g));
    node.set("reference", number_or_null(line.reference));
    node.set("says", Node::of(label_number(line.per_100_g, line.rounding)));
  }
  return out;
}

Node ingredients(const DishNutrients& dish) {
  Node out = Node::list();
  for (const Line& line : dish.lines) {
    Node& node = out.add(Node::object());
    node.set("name", Node::of(line.name));
    node.set("food", line.food != nullptr ? Node::of(line.food->key) : Node());
    node.set("source", line.food != nullptr ? Node::of(line.food->source) : Node());
    node.set("grams", line.to_taste ? Node() : number_or_null(line.grams));
    node.set("how", Node::of(line.how));
    node.set("cooking", Node::of(line.cooked.why));
    node.set("weight_left", Node::of(line.cooked.weight));
    node.set("yield", Node::of(line.cooked.yield_id));
    node.set("problem", Node::of(line.problem));
  }
  return out;
}

Node totals(const DishNutrients& dish) {
  Node out = Node::list();
  for (std::size_t w = 0; w < kWhats; ++w) {
    const What what = What::at(w);
    const Total& total = dish.total(what);
    Node& node = out.add(Node::object());
    node.set("name", Node::of(name_of(what)));
    node.set("unit", Node::of(unit_of(what)));
    node.set("whole", figure(total.whole));
    node.set("coverage", Node::of(total.coverage));
    Node parts = Node::list();
    for (const Contribution& part : total.parts) parts.add(number_or_null(part.amount));
    node.set("by_ingredient", std::move(parts));
  }
  return out;
}

Node colours_node(const DishNutrients& dish, bool drink) {
  Node out = Node::list();
  for (const ColourLine& line : colours(dish, drink)) {
    Node& node = out.add(Node::object());
    node.set("name", Node::of(name_of(line.what)));
    node.set("colour", line.colour ? Node::of(nutrition::word_for(*line.colour)) : Node());
    node.set("level", line.colour ? Node::of(level_of(*line.colour)) : Node());
    node.set("at_least", line.at_least ? Node::of(nutrition::word_for(*line.at_least)) : Node());
    node.set("by_portion", Node::of(line.by_portion));
  }
  return out;
}

}  // namespace

std::string label_json(const DishNutrients& dish, const CookingTables& tables,
                       const LabelPage& page) {
  Node out = Node::object();
  const Label label = label_of(dish, page.drink);
  out.set("kind", Node::of("label"));
  out.set("version", Node::of(1));
  out.set("dish", Node::of(dish.dish));
  out.set("portions", Node::of(dish.portions));
  out.set("portion_grams", Node::of(dish.portion_grams()));
  out.set("weight_known", Node::of(dish.weight_known));
  out.set("coverage", Node::of(dish.coverage));
  out.set("lines", label_lines(label.lines));
  out.set("vitamins", label_lines(label.vitamins));
  out.set("colours", colours_node(dish, page.drink));
  out.set("five_a_day", Node::of(five_a_day(dish, tables).portions()));
  const DishProfile scored = profile_of(dish, page.drink);
  out.set("profile_2004", scored.profile ? Node::of(scored.profile->score()) : Node());
  out.set("profile_sure", Node::of(scored.sure));
  Node missing = Node::list();
  for (const std::string& sentence : missing_words(dish)) missing.add(Node::of(sentence));
  out.set("missing", std::move(missing));
  out.set("ingredients", ingredients(dish));
  out.set("totals", totals(dish));
  out.set("caution", Node::of(nutrition_cautions()));
  return kitchen::json_text(out);
}

}  // namespace print
