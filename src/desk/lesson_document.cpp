#include "desk/lesson_document.h"

#include "base/text.h"
#include "desk/written_lesson.h"
#include "kitchen/fields.h"

namespace desk {

using base::in_quotes;
using base::Problem;
using base::Result;
using base::say;
using kitchen::Lesson;
using kitchen::Node;

Problem not_in_lesson(const char* code, std::string_view noun, const char* where,
                      const std::string& name, const std::vector<std::string>& known) {
  return {
      code, "", where,
      say("The lesson has no ", noun, " ", in_quotes(name), kitchen::or_did_you_mean(name, known)),
      known.empty() ? say("There is none to choose.")
                    : say("Choose one of ", base::joined(known, "or"), ".")};
}

Result<Node*> LessonDocument::cook(const std::string& name, const Lesson& lesson,
                                   const char* where) {
  if (tree_.find("cooks") == nullptr) write_cooks(lesson);
  std::vector<std::string> names;
  for (Node& each : tree_.find("cooks")->items) {
    const Node* own = each.find("name");
    if (own == nullptr) continue;
    if (own->text == name) return &each;
    names.push_back(own->text);
  }
  return not_in_lesson("change.unknown_cook", "cook", where, name, names);
}

Result<Node*> LessonDocument::window(const std::string& name) {
  std::vector<std::string> names;
  if (Node* list = tree_.find("windows")) {
    for (Node& each : list->items) {
      const Node* own = each.find("name");
      if (own != nullptr && own->text == name) return &each;
      if (own != nullptr) names.push_back(own->text);
    }
  }
  return not_in_lesson("change.unknown_window", "window", "/window", name, names);
}

Result<Node*> LessonDocument::own_dish(const std::string& key) {
  Node* dishes = tree_.find("dishes");
  Node* dish = dishes == nullptr ? nullptr : dishes->find(key);
  if (dish == nullptr)
    return not_in_lesson("change.unknown_dish", "dish", "/dish", key,
                         dishes == nullptr ? std::vector<std::string>{} : dishes->keys);
  if (dish->kind != Node::Kind::kText) return dish;
  const auto text = loader_(kitchen::path_from(file_, dish->text));
  if (!text) return text.problems();
  base::Problems problems;
  auto own = kitchen::parse_json(text.value(), dish->text, problems);
  if (!own) return problems;
  *dish = std::move(*own);
  return dish;
}

Result<std::string> LessonDocument::dish_key(const Lesson& lesson, const std::string& dish) {
  const Node* dishes = tree_.find("dishes");
  if (dishes != nullptr && dishes->find(key_in(dish)) != nullptr) return dish;
  const std::vector<std::string> names = names_in(tree_, lesson);
  for (std::size_t d = 0; d < names.size(); ++d) {
    if (lesson.dishes[d].name == dish) return key_in(names[d]);
  }
  return not_in_lesson("change.unknown_dish", "dish", "/dish", dish,
                       dishes == nullptr ? std::vector<std::string>{} : dishes->keys);
}

void LessonDocument::leave_windows(const std::string& name) {
  const auto called = [&](const Node& each) { return each.text == name; };
  if (Node* windows = tree_.find("windows")) {
    std::erase_if(windows->items, [&](Node& window) {
      Node* audience = window.find("audience");
      return audience != nullptr && std::erase_if(audience->items, called) > 0 &&
             audience->items.empty();
    });
  }
  std::set<std::string> gone{name};
  leave_pins([&](const Node&) { return true; }, gone);
  if (Node* kept_about = tree_.find("about")) {
    if (Node* seats = kept_about->find("seats")) seats->erase(name);
    if (Node* pinned = kept_about->find("pinned")) std::erase_if(pinned->items, called);
  }
}

Node& LessonDocument::list(std::string_view key) {
  if (Node* there = tree_.find(key)) return *there;
  return tree_.set(key, Node::list());
}

Node& LessonDocument::about() {
  if (Node* there = tree_.find("about")) return *there;
  return tree_.set("about", Node::object());
}

// The class fills the places in order; from here on each cook is named.
void LessonDocument::write_cooks(const Lesson& lesson) {
  const Node* group = tree_.find("class");
  const Node* dishes = group == nullptr ? nullptr : group->find("dishes");
  const Node all = dishes == nullptr ? Node::list() : *dishes;
  Node list = Node::list();
  for (const kitchen::Cook& cook : lesson.cooks) {
    Node& entry = list.add(Node::object());
    entry.set("name", Node::of(cook.name));
    entry.set("people", Node::of(cook.people));
    entry.set("place", Node::of(lesson.room.places[static_cast<std::size_t>(cook.place)].name));
    entry.set("dishes", all);
  }
  tree_.erase("class");
  tree_.set("cooks", std::move(list));
}

}  // namespace desk
