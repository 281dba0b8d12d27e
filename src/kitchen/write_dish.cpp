#include "kitchen/document.h"

namespace kitchen {
namespace {

Node texts(const std::vector<std::string>& all) {
  Node list = Node::list();
  for (const std::string& text : all) list.add(Node::of(text));
  return list;
}

Node ingredient_node(const Ingredient& ingredient) {
  Node node = Node::object();
  node.set("name", Node::of(ingredient.name));
  if (ingredient.amount != 0) node.set("amount", Node::of(ingredient.amount));
  if (!ingredient.unit.empty()) node.set("unit", Node::of(ingredient.unit));
  if (!ingredient.label_read) {
    node.set("label_read", Node::of(false));  // stands for all fourteen allergens
  } else if (!ingredient.contains.empty()) {
    Node& contains = node.set("contains", Node::list());
    for (const Allergen allergen : ingredient.contains) contains.add(Node::of(word(allergen)));
  }
  if (!ingredient.food.empty()) node.set("food", Node::of(ingredient.food));
  if (!ingredient.preparation.empty()) node.set("preparation", Node::of(ingredient.preparation));
  if (ingredient.optional) node.set("optional", Node::of(true));
  return node;
}

class StepWriter {
 public:
  StepWriter(const Dish& dish, int index)
      : dish_(dish), index_(index), step_(dish.method[static_cast<std::size_t>(index)]) {}

  Node write() {
    node_.set("id", Node::of(step_.id));
    node_.set("do", Node::of(step_.says));
    node_.set("short", Node::of(step_.brief));
    minutes();
    const double usual_spread = tenths(step_.attention) <= 2 ? 0.1 : 0.3;
    if (step_.spread != usual_spread) node_.set("spread", Node::of(step_.spread));
    node_.set("attention", Node::of(word_for(kAttentionWords, step_.attention)));
    if (step_.people != 1) node_.set("people", Node::of(step_.people));
    follows();
    if (step_.hygiene) node_.set("hygiene", Node::of(word_for(kHygieneWords, *step_.hygiene)));
    if (step_.heat) node_.set("heat", heat(*step_.heat));
    if (step_.closes) node_.set("closes", Node::of(id(*step_.closes)));
    needs();
    if (step_.hazard) node_.set("hazard", Node::of(word(*step_.hazard)));
    if (step_.can_put_down) node_.set("can_put_down", Node::of(true));
    if (step_.gate) gate(*step_.gate);
    if (!step_.skills.empty()) node_.set("skills", texts(step_.skills));
    if (step_.elastic_loss != 0) node_.set("elastic_loss", Node::of(step_.elastic_loss));
    if (step_.added) node_.set("added", Node::of(true));
    return std::move(node_);
  }

 private:
  const Dish& dish_;
  int index_;
  const Step& step_;
  Node node_ = Node::object();

  const std::string& id(int step) const { return dish_.method[static_cast<std::size_t>(step)].id; }

  void minutes() {
    if (step_.least == step_.most) {
      node_.set("minutes", minutes_node(step_.least));
      return;
    }
    Node& range = node_.set("minutes", Node::object());
    range.set("least", minutes_node(step_.least));
    range.set("most", minutes_node(step_.most));
  }

  /// The wait a plain id means.
  static bool plain(const Follows& wait) { return wait == Follows{.step = wait.step, .most = {}}; }

  void follows() {
    const bool usual = index_ == 0
                           ? step_.follows.empty()
                           : step_.follows.size() == 1 &&
                                 step_.follows[0] == Follows{.step = index_ - 1, .most = {}};
    if (usual) return;
    Node& list = node_.set("follows", Node::list());
    for (const Follows& wait : step_.follows) {
      if (plain(wait)) {
        list.add(Node::of(id(wait.step)));
        continue;
      }
      Node& entry = list.add(Node::object());
      entry.set("step", Node::of(id(wait.step)));
      if (wait.of != Moment::kEnd) entry.set("from", Node::of(word_for(kMomentWords, wait.of)));
      if (wait.moment != Moment::kStart)
        entry.set("moment", Node::of(word_for(kMomentWords, wait.moment)));
      if (wait.least != Seconds{0}) entry.set("least_minutes", minutes_node(wait.least));
      if (wait.most) entry.set("most_minutes", minutes_node(*wait.most));
      if (wait.safety) entry.set("safety", Node::of(true));
    }
  }

  static Node heat(const Heat& heat) {
    Node node = Node::object();
    if (heat.with == HeatKind::kRing) {
      node.set("ring", Node::of(heat.vessel));
      if (heat.rings != 1) node.set("rings", Node::of(heat.rings));
      return node;
    }
    const bool oven = heat.with == HeatKind::kOven;
    node.set(oven ? "oven" : "grill", Node::of(heat.vessel));
    node.set("celsius", Node::of(heat.setting.celsius));
    if (oven && heat.setting.kind != OvenKind::kConventional)
      node.set("kind", Node::of(word_for(kOvenKindWords, heat.setting.kind)));
    if (heat.tolerance != 0) node.set("tolerance", Node::of(heat.tolerance));
    if (!oven) return node;
    if (heat.shelf_twelfths != 12) node.set("shelf_twelfths", Node::of(heat.shelf_twelfths));
    if (heat.shared_tray) node.set("shared_tray", Node::of(true));
    if (heat.door_shut != Seconds{0}) node.set("door_shut_minutes", minutes_node(heat.door_shut));
    return node;
  }

  void needs() {
    if (!step_.kit.empty()) {
      Node& kit = node_.set("kit", Node::list());
      for (const KitNeed& need : step_.kit) {
        if (need.count == 1) {
          kit.add(Node::of(need.item));
          continue;
        }
        Node& entry = kit.add(Node::object());
        entry.set("item", Node::of(need.item));
        entry.set("count", Node::of(need.count));
      }
    }
    if (!step_.uses.empty()) {
      Node& uses = node_.set("uses", Node::list());
      for (const int i : step_.uses)
        uses.add(Node::of(dish_.ingredients[static_cast<std::size_t>(i)].name));
    }
    if (step_.sink > 0 || step_.at_table) {
      Node& at = node_.set("at", Node::list());
      if (step_.sink > 0) at.add(Node::of(word_for(kSpotWords, Spot::kSink)));
      if (step_.at_table) at.add(Node::of(word_for(kSpotWords, Spot::kTable)));
    }
    if (step_.fridge_tenths != 0) node_.set("fridge_tenths", Node::of(step_.fridge_tenths));
    if (step_.freezer_tenths != 0) node_.set("freezer_tenths", Node::of(step_.freezer_tenths));
  }

  void gate(const Gate& gate) {
    Node& node = node_.set("gate", Node::object());
    node.set("look_for", Node::of(gate.look_for));
    node.set("minutes", minutes_node(gate.length));
    node.set("within_minutes", minutes_node(gate.within));
  }
};

Node split_node(const Dish& dish, const Split& split) {
  Node node = Node::object();
  node.set("name", Node::of(split.name));
  node.set("after", Node::of(dish.method[static_cast<std::size_t>(split.after_step)].id));
  node.set("kept", Node::of(word_for(kKeptInWords, split.kept)));
  node.set("longest_hours", Node::of(static_cast<double>(split.longest.count()) / 3600.0));
  if (split.cooling != Seconds{0}) node.set("cooling_minutes", minutes_node(split.cooling));
  if (split.fridge_tenths != 2) node.set("fridge_tenths", Node::of(split.fridge_tenths));
  return node;
}

}  // namespace

Node node_of(const Dish& dish) {
  Node node = Node::object();
  node.set("kind", Node::of("dish"));
  node.set("version", Node::of(1));
  node.set("name", Node::of(dish.name));
  if (!dish.variant.empty()) node.set("variant", Node::of(dish.variant));
  node.set("tag", Node::of(dish.tag));
  node.set("portions", Node::of(dish.portions));
  Node& ingredients = node.set("ingredients", Node::list());
  for (const Ingredient& each : dish.ingredients) ingredients.add(ingredient_node(each));
  Node& method = node.set("method", Node::list());
  for (std::size_t i = 0; i < dish.method.size(); ++i)
    method.add(StepWriter(dish, static_cast<int>(i)).write());
  Node& hold = node.set("hold", Node::object());
  hold.set("kind", Node::of(word_for(kHoldKindWords, dish.hold.kind)));
  hold.set("most_minutes", minutes_node(dish.hold.most));
  hold.set("in", Node::of(word_for(kHoldInWords, dish.hold.in)));
  node.set("cooling_minutes", minutes_node(dish.cooling));
  if (dish.keep_chilled) node.set("keep_chilled", Node::of(*dish.keep_chilled));
  node.set("wash_after", Node::of(dish.method[static_cast<std::size_t>(dish.wash_after)].id));
  if (!dish.splits.empty()) {
    Node& splits = node.set("splits", Node::list());
    for (const Split& split : dish.splits) splits.add(split_node(dish, split));
  }
  if (!dish.aim.empty()) node.set("aim", Node::of(dish.aim));
  if (!dish.key_words.empty()) node.set("key_words", texts(dish.key_words));
  if (!dish.questions.empty()) node.set("questions", texts(dish.questions));
  return node;
}

std::string write_dish(const Dish& dish) { return json_text(node_of(dish)); }

}  // namespace kitchen
