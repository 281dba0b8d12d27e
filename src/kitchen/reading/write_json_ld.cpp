// A Dish as schema.org Recipe in JSON-LD.
#include <algorithm>
#include <set>

#include "base/folding.h"
#include "base/text.h"
#include "kitchen/json_tree.h"
#include "kitchen/quantity.h"
#include "kitchen/reading/json_ld.h"
#include "kitchen/weigh.h"

namespace kitchen {
namespace {

using base::say;

bool counts_itself(const Quantity& q, const std::string& name) {
  for (const std::string& word : base::words_of(base::folded(name))) {
    if (singular(word) == singular(base::folded(q.piece))) return true;
  }
  return false;
}

// "150 g red lentils, rinsed (optional)"
std::string ingredient_line(const Ingredient& ingredient) {
  Quantity q = quantity_of(ingredient);
  std::string line;
  if (q.stated()) {
    if (q.unit == Unit::kPiece && counts_itself(q, ingredient.name)) q.piece.clear();
    line = say(quantity_text(q), " ", ingredient.name);
  } else {
    line = ingredient.name;
  }
  if (!ingredient.preparation.empty()) line += say(", ", ingredient.preparation);
  if (ingredient.optional) line += " (optional)";
  return line;
}

Node typed(std::string_view type) {
  Node node = Node::object();
  node.set("@type", Node::of(type));
  return node;
}

std::set<std::string> tools(const Dish& dish) {
  std::set<std::string> out;
  for (const Step& step : dish.method) {
    for (const KitNeed& need : step.kit) out.insert(need.item);
    if (step.heat) out.insert(step.heat->vessel);
  }
  return out;
}

}  // namespace

std::string iso_duration(Seconds seconds) {
  const long long whole = seconds.count();
  const long long hours = whole / 3600, minutes = whole % 3600 / 60, rest = whole % 60;
  std::string out = "PT";
  if (hours > 0) out += say(hours, "H");
  if (minutes > 0 || (hours == 0 && rest == 0)) out += say(minutes, "M");
  if (rest > 0) out += say(rest, "S");
  return out;
}

std::string write_json_ld(const Dish& dish) {
  Node recipe = Node::object();
  recipe.set("@context", Node::of("https://schema.org"));
  recipe.set("@type", Node::of("Recipe"));
  recipe.set("name",
             Node::of(dish.variant.empty() ? dish.name : say(dish.name, ", ", dish.variant)));
  recipe.set("recipeYield",
             Node::of(say(dish.portions, dish.portions == 1 ? " portion" : " portions")));
  // Times as if one person did everything in turn: the standard has no words for what overlaps.
  Seconds warm{0}, cold{0};
  for (const Step& step : dish.method) (step.heat ? warm : cold) += step.least;
  recipe.set("prepTime", Node::of(iso_duration(cold)));
  recipe.set("cookTime", Node::of(iso_duration(warm)));
  recipe.set("totalTime", Node::of(iso_duration(cold + warm)));
  Node lines = Node::list(), supply = Node::list();
  for (const Ingredient& ingredient : dish.ingredients) {
    lines.add(Node::of(ingredient_line(ingredient)));
    Node each = typed("HowToSupply");
    each.set("name", Node::of(ingredient.name));
    const Quantity q = quantity_of(ingredient);
    if (q.stated()) each.set("requiredQuantity", Node::of(quantity_text(q)));
    supply.add(std::move(each));
  }
  recipe.set("recipeIngredient", std::move(lines));
  recipe.set("supply", std::move(supply));
  Node steps = Node::list();
  for (const Step& step : dish.method) {
    Node each = typed("HowToStep");
    each.set("name", Node::of(step.brief));
    each.set("text", Node::of(step.says));
    each.set("timeRequired", Node::of(iso_duration(step.least)));
    steps.add(std::move(each));
  }
  recipe.set("recipeInstructions", std::move(steps));
  Node kit = Node::list();
  for (const std::string& tool : tools(dish)) {
    Node each = typed("HowToTool");
    each.set("name", Node::of(tool));
    kit.add(std::move(each));
  }
  if (!kit.items.empty()) recipe.set("tool", std::move(kit));
  return json_text(recipe);
}

}  // namespace kitchen
