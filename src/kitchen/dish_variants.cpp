#include "kitchen/dish_variants.h"

#include <algorithm>

#include "kitchen/field_lists.h"

namespace kitchen {

using base::in_quotes;
using base::say;

namespace {

class VariantMaker {
 public:
  VariantMaker(Reader& reader, const Node& dish, const std::string& dish_where, const Node& variant,
               const std::string& where)
      : reader_(reader),
        dish_(dish),
        fields_(reader, variant, where, what_of(variant), kVariantFields) {
    mark_places(dish_where, "method");
    mark_places(dish_where, "ingredients");
  }

  Node make() {
    dish_.erase("variants");
    dish_.set("variant", Node::of(fields_.text("name", 60)));
    if (const Node* swaps = object("swap")) {
      for (std::size_t i = 0; i < swaps->keys.size(); ++i)
        swap(swaps->keys[i], swaps->items[i], below(fields_.where("swap"), swaps->keys[i]));
    }
    for (const Entry& entry : fields_.list("drop_steps")) {
      if (fields_.is_text(entry)) drop(entry.node->text, entry.where);
    }
    if (const Node* changes = object("steps")) {
      for (std::size_t i = 0; i < changes->keys.size(); ++i)
        change(changes->keys[i], changes->items[i],
               below(fields_.where("steps"), changes->keys[i]));
    }
    return std::move(dish_);
  }

 private:
  Reader& reader_;
  Node dish_;
  Fields fields_;

  static std::string what_of(const Node& variant) {
    const Node* name = variant.find("name");
    return name != nullptr && name->kind == Node::Kind::kText
               ? say("The variant ", in_quotes(name->text))
               : "A variant";
  }

  void mark_places(const std::string& dish_where, std::string_view key) {
    Node* list = dish_.find(key);
    if (list == nullptr) return;
    for (std::size_t i = 0; i < list->items.size(); ++i)
      list->items[i].origin = below(below(dish_where, key), i);
  }

  const Node* object(std::string_view key) const {
    const Node* node = fields_.find(key);
    if (node == nullptr || node->kind == Node::Kind::kObject) return node;
    fields_.wrong_kind(key, fields_.where(key), "an object { ... }");
    return nullptr;
  }

  std::vector<Node>* items(std::string_view key) {
    Node* list = dish_.find(key);
    return list == nullptr ? nullptr : &list->items;
  }

  std::vector<std::string> names(std::string_view list, std::string_view key) const {
    std::vector<std::string> out;
    if (const Node* node = dish_.find(list)) {
      for (const Node& item : node->items) {
        const Node* name = item.find(key);  // an ingredient swapped in may lack one; that is told
                                            // when it is read
        out.push_back(name == nullptr ? "" : name->text);
      }
    }
    return out;
  }

  /// The place in the list of the thing so called, or nothing after a Problem.
  std::optional<std::size_t> position(std::string_view list, std::string_view key,
                                      const std::string& name, const char* code,
                                      std::string_view noun, const std::string& where) const {
    const std::vector<std::string> known = names(list, key);
    const auto at = std::find(known.begin(), known.end(), name);
    if (at != known.end()) return static_cast<std::size_t>(at - known.begin());
    const std::string near = did_you_mean(name, known);
    reader_.add(code, where,
                say(fields_.what(), " changes the ", noun, " ", in_quotes(name),
                    ", which the dish does not have", near.empty() ? "." : near),
                say("Write the ", key, " of one of the dish's ", noun, "s."));
    return std::nullopt;
  }

  void swap(const std::string& old_name, const Node& ingredient, const std::string& where) {
    const auto at = position("ingredients", "name", old_name, "dish.variant.unknown_ingredient",
                             "ingredient", where);
    if (!at) return;
    Node& place = (*items("ingredients"))[*at];
    place = ingredient;
    place.origin = where;
    const Node* name = ingredient.find("name");
    if (name == nullptr || name->kind != Node::Kind::kText)
      return;  // told when the ingredient is read
    for (Node& step : *items("method")) {
      Node* uses = step.find("uses");
      if (uses == nullptr) continue;
      for (Node& use : uses->items) {
        if (use.text == old_name) use.text = name->text;
      }
    }
  }

  static bool names_step(const Node& follows, const std::string& id) {
    const Node* step = follows.kind == Node::Kind::kObject ? follows.find("step") : &follows;
    return step != nullptr && step->text == id;
  }

  void drop(const std::string& id, const std::string& where) {
    const auto at = position("method", "id", id, "dish.variant.unknown_step", "step", where);
    if (!at) return;
    std::vector<Node>& method = *items("method");
    std::vector<Node> instead;  // what the dropped step followed
    if (const Node* own = method[*at].find("follows"))
      instead = own->items;
    else if (*at > 0)
      instead = {Node::of(method[*at - 1].find("id")->text)};
    if (*at + 1 < method.size() && method[*at + 1].find("follows") == nullptr) {
      Node follows = Node::list();
      follows.items = instead;
      method[*at + 1].set("follows", std::move(follows));
      if (instead.empty()) method[*at + 1].erase("when");
    }
    for (Node& step : method) {
      Node* follows = step.find("follows");
      if (follows == nullptr) continue;
      const auto gone = std::stable_partition(follows->items.begin(), follows->items.end(),
                                              [&](const Node& f) { return !names_step(f, id); });
      if (gone == follows->items.end()) continue;
      follows->items.erase(gone, follows->items.end());
      follows->items.insert(follows->items.end(), instead.begin(), instead.end());
      const bool plain = std::any_of(follows->items.begin(), follows->items.end(),
                                     [](const Node& f) { return f.kind == Node::Kind::kText; });
      if (!plain) step.erase("when");
    }
    method.erase(method.begin() + static_cast<std::ptrdiff_t>(*at));
  }

  void change(const std::string& id, const Node& fields, const std::string& where) {
    const auto at = position("method", "id", id, "dish.variant.unknown_step", "step", where);
    if (!at) return;
    if (fields.kind != Node::Kind::kObject) {
      fields_.wrong_kind("steps", where, "an object { ... } with the fields that change");
      return;
    }
    Node& step = (*items("method"))[*at];
    for (std::size_t i = 0; i < fields.keys.size(); ++i) {
      const std::string& key = fields.keys[i];
      if (key == "id") {
        reader_.add("dish.variant.renames_step", below(where, key),
                    say(fields_.what(), " gives the step ", in_quotes(id), " another id."),
                    "Leave the id as it is; change the short name instead.");
        continue;
      }
      Node value = fields.items[i];
      value.origin = below(where, key);
      step.set(key, std::move(value));
    }
  }
};

}  // namespace

Node with_variant(Reader& reader, const Node& dish, const std::string& dish_where,
                  const Node& variant, const std::string& where) {
  return VariantMaker(reader, dish, dish_where, variant, where).make();
}

}  // namespace kitchen
