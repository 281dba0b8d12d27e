#include "desk/written_lesson.h"

#include <algorithm>
#include <map>
#include <set>
#include <vector>

#include "base/text.h"
#include "kitchen/fields.h"
#include "kitchen/read.h"

namespace desk {

using kitchen::Node;

namespace {

using Names = std::map<std::string, std::string>;

/// "scones:no dairy" as "scones: no dairy".
std::string plain_name(const std::string& name) {
  const auto colon = name.find(':');
  if (colon == std::string::npos) return name;
  return name.substr(0, colon) + ": " + base::trimmed(name.substr(colon + 1));
}

/// The names under which the cooks know their dishes: "scones", "scones: no dairy".
std::set<std::string> cooked_names(const Node& tree) {
  std::set<std::string> out;
  const auto note = [&](const Node* cook) {
    const Node* dishes = cook == nullptr ? nullptr : cook->find("dishes");
    if (dishes == nullptr) return;
    for (const Node& dish : dishes->items) out.insert(plain_name(dish.text));
  };
  note(tree.find("class"));
  if (const Node* cooks = tree.find("cooks")) {
    for (const Node& cook : cooks->items) note(&cook);
  }
  return out;
}

/// A key alone means the dish and all its versions, so they need not be named beside it.
void drop_named_twice(Node& list) {
  const auto dish_of = [](Node& each) {
    return each.kind == Node::Kind::kText ? &each : each.find("dish");
  };
  std::set<std::string> whole;  // what stands there with a key alone
  const auto with_key = [&](Node each) {
    if (Node* dish = dish_of(each)) *dish = Node::of(key_in(dish->text));
    return kitchen::json_text(each);
  };
  for (Node& each : list.items) {
    const Node* dish = dish_of(each);
    if (dish != nullptr && dish->text == key_in(dish->text)) whole.insert(kitchen::json_text(each));
  }
  std::erase_if(list.items, [&](Node& each) {
    const Node* dish = dish_of(each);
    return dish != nullptr && dish->text != key_in(dish->text) && whole.count(with_key(each)) > 0;
  });
}

/// Every place of a lesson's document that names a dish.
void rename_dishes(Node& lesson, const Names& names) {
  const auto rename = [&](Node& node) {
    const auto found = names.find(node.text);
    if (found != names.end()) node = Node::of(found->second);
  };
  const auto each_of = [](Node& from, std::string_view key, const auto& work) {
    Node* list = from.find(key);
    if (list == nullptr) return;
    for (Node& each : list->items) work(each);
  };
  const auto named = [&](Node& from, std::string_view key) {
    each_of(from, key, [&](Node& each) {
      if (Node* dish = each.find("dish")) rename(*dish);
    });
    if (Node* list = from.find(key)) drop_named_twice(*list);
  };
  each_of(lesson, "cooks", [&](Node& cook) { each_of(cook, "dishes", rename); });
  each_of(lesson, "sittings", [&](Node& sitting) {
    each_of(sitting, "dishes", rename);
    if (Node* list = sitting.find("dishes")) drop_named_twice(*list);
  });
  named(lesson, "carry");
  named(lesson, "pins");
  each_of(lesson, "windows", [&](Node& window) {
    named(window, "before");
    named(window, "after");
  });
}

/// The dishes of a written lesson with those that are as they were called for as before.
void keep_references(Node& out, const Node& tree, const kitchen::Lesson& before,
                     const kitchen::Lesson& after) {
  const Node* old_dishes = tree.find("dishes");
  const Node* written = out.find("dishes");
  const std::vector<std::string> names = names_in(tree, before);
  if (old_dishes == nullptr || written == nullptr || names.size() != before.dishes.size()) return;
  Node dishes = Node::object();
  Names renamed;
  for (std::size_t d = 0; d < after.dishes.size() && d < written->keys.size(); ++d) {
    const std::string& now = written->keys[d];
    const bool same_place = d < before.dishes.size() && before.dishes[d] == after.dishes[d];
    const auto same = same_place
                          ? before.dishes.begin() + static_cast<std::ptrdiff_t>(d)
                          : std::find(before.dishes.begin(), before.dishes.end(), after.dishes[d]);
    if (same != before.dishes.end()) {
      renamed[now] = names[static_cast<std::size_t>(same - before.dishes.begin())];
      const std::string key = key_in(renamed[now]);
      if (dishes.find(key) == nullptr) dishes.set(key, *old_dishes->find(key));
      continue;
    }
    std::string key = now;
    while (dishes.find(key) != nullptr || old_dishes->find(key) != nullptr) key += "-2";
    renamed[now] = key;
    dishes.set(key, written->items[d]);
  }
  rename_dishes(out, renamed);
  out.set("dishes", std::move(dishes));
}

}  // namespace

std::string key_in(const std::string& name) { return name.substr(0, name.find(':')); }

std::vector<std::string> names_in(const Node& tree, const kitchen::Lesson& lesson) {
  std::vector<std::string> out;
  const Node* dishes = tree.find("dishes");
  if (dishes == nullptr) return out;
  const std::set<std::string> cooked = cooked_names(tree);
  for (const std::string& key : dishes->keys) {
    const auto versions = std::count_if(
        cooked.begin(), cooked.end(), [&](const std::string& name) { return key_in(name) == key; });
    for (std::ptrdiff_t v = 0; v < std::max<std::ptrdiff_t>(1, versions); ++v) {
      if (out.size() == lesson.dishes.size()) return out;
      const std::string& variant = lesson.dishes[out.size()].variant;
      out.push_back(variant.empty() ? key : key + ": " + variant);
    }
  }
  return out;
}

base::Result<std::string> written_again(const Node& tree, const std::string& file,
                                        const kitchen::Lesson& before,
                                        const kitchen::Lesson& after) {
  base::Problems problems;
  auto out = kitchen::parse_json(kitchen::write_lesson(after), file, problems);
  if (!out) return problems;
  const Node* room = tree.find("room");
  if (room != nullptr && after.room == before.room) out->set("room", *room);
  const Node* rules = tree.find("house_rules");
  if (after.rules == before.rules) {
    if (rules != nullptr)
      out->set("house_rules", *rules);
    else
      out->erase("house_rules");
  }
  if (const Node* about = tree.find("about")) out->set("about", *about);
  keep_references(*out, tree, before, after);
  return kitchen::json_text(*out);
}

base::Result<kitchen::Room> without_cooker(const kitchen::Room& room, const std::string& name) {
  std::vector<std::string> names;
  for (const kitchen::Cooker& cooker : room.cookers) names.push_back(cooker.name);
  const auto at = std::find(names.begin(), names.end(), name);
  if (at == names.end())
    return base::Problem{"room.unknown_cooker", "", "",
                         base::say("The room has no cooker ", base::in_quotes(name),
                                   kitchen::or_did_you_mean(name, names)),
                         base::say("Choose one of ", base::joined(names, "or"), ".")};
  if (names.size() == 1)
    return base::Problem{"room.last_cooker", "", "", "It is the only cooker of the room.",
                         "Choose another room."};
  const int gone = static_cast<int>(at - names.begin());
  kitchen::Room out = room;
  out.cookers.erase(out.cookers.begin() + gone);
  for (kitchen::Place& place : out.places) {
    std::erase(place.cookers, gone);
    for (int& cooker : place.cookers) cooker -= cooker > gone ? 1 : 0;
    if (!place.cookers.empty()) continue;
    const auto near = std::find_if(out.cookers.begin(), out.cookers.end(),
                                   [&](const kitchen::Cooker& c) { return c.bay == place.bay; });
    const auto use = near == out.cookers.end() ? out.cookers.begin() : near;
    place.cookers.push_back(static_cast<int>(use - out.cookers.begin()));
  }
  return out;
}

}  // namespace desk
