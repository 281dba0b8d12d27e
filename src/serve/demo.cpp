#include "serve/demo.h"

#include <map>
#include <string>
#include <string_view>

#include "base/text.h"
#include "demo_school.h"
#include "kitchen/json_tree.h"
#include "serve/kept.h"
#include "serve/week_days.h"
#include "shipped/dishes.h"

namespace serve {
namespace {

using kitchen::Node;
using store::Kind;

std::string stem(std::string_view path) {
  const auto slash = path.rfind('/');
  std::string name(slash == std::string_view::npos ? path : path.substr(slash + 1));
  return name.substr(0, name.rfind('.'));
}

base::Result<Node> tree(std::string_view text, std::string_view path) {
  base::Problems broken;
  auto node = kitchen::parse_json(text, std::string(path), broken);
  if (!node) return broken;
  return std::move(*node);
}

/// "../dishes/lentil-dhal.json" of a demo file is "../dish/lentil-dhal.json" in the store.
void refer(Node* node) {
  if (node == nullptr || node->kind != Node::Kind::kText) return;
  const std::map<std::string, std::string> folders{{"../dishes/", "../dish/"},
                                                   {"../rooms/", "../room/"}};
  for (const auto& [from, to] : folders) {
    if (node->text.starts_with(from)) node->text = to + node->text.substr(from.size());
  }
  if (node->text == "../house-rules.json") node->text = "../house_rules/house-rules.json";
}

class Filler {
 public:
  Filler(store::Writer& writer, base::Date today) : writer_(writer), today_(today) {}

  base::Result<bool> fill() {
    for (const demo_files::File& file : demo_files::files()) {
      const std::string path(file.path);
      base::Result<bool> done = true;
      if (path == "house-rules.json") done = add(Kind::kHouseRules, "house-rules", file);
      if (path == "school.json") done = add_school(file);
      if (path.starts_with("rooms/")) done = add(Kind::kRoom, stem(path), file);
      if (path.starts_with("classes/")) done = add(Kind::kClass, stem(path), file);
      if (path.starts_with("stores/")) done = add_table(file);
      if (!done) return done;
    }
    for (const demo_files::File& file : demo_files::files()) {
      if (!file.path.starts_with("lessons/")) continue;
      const auto done = add_lesson(file);
      if (!done) return done;
    }
    return true;
  }

 private:
  store::Writer& writer_;
  base::Date today_;

  base::Result<bool> create(Kind kind, const std::string& id, store::Draft draft) {
    const auto made = writer_.create(kind, id, draft, {"", "The demo school"});
    if (!made) return made.problems();
    return true;
  }
  base::Result<bool> add(Kind kind, const std::string& id, const demo_files::File& file) {
    store::Draft draft;
    draft.body = std::string(file.text);
    if (kind == Kind::kHouseRules) draft.title = "House rules";
    return create(kind, id, std::move(draft));
  }
  // The vans of the demo come in the week that is shown, which is week 1 of the timetable.
  base::Result<bool> add_school(const demo_files::File& file) {
    auto node = tree(file.text, file.path);
    if (!node) return node.problems();
    Node school = std::move(node).value();
    shift(school, "week_one");
    if (Node* suppliers = school.find("suppliers")) {
      for (Node& supplier : suppliers->items) {
        Node* vans = supplier.find("vans");
        if (vans == nullptr) continue;
        for (Node& van : vans->items) {
          shift(van, "order_by");
          shift(van, "arrives");
        }
      }
    }
    store::Draft draft;
    draft.body = kitchen::json_text(school);
    return create(Kind::kSchool, "school", std::move(draft));
  }
  base::Result<bool> add_table(const demo_files::File& file) {
    const std::string id = stem(file.path);
    Node node = Node::object();
    node.set("kind", Node::of("table"));
    node.set("version", Node::of(1));
    node.set("name", Node::of(id == "prices" ? "Prices" : id == "stock" ? "Stock" : id));
    node.set("text", Node::of(std::string(file.text)));
    store::Draft draft;
    draft.body = kitchen::json_text(node);
    return create(Kind::kTable, id, std::move(draft));
  }
  void shift(Node& object, std::string_view key) {
    Node* node = object.find(key);
    if (node == nullptr) return;
    if (const auto date = base::date_in(node->text))
      node->text = base::date_text(in_this_week(*date));
  }
  /// Dates of the demo lie around the week of Monday 16 November 2026 and keep their distance.
  base::Date in_this_week(base::Date date) const {
    const base::Date demo = *base::date_in("2026-11-16");
    return base::Date{date.days - demo.days + shown_week(today_).days};
  }
  base::Result<bool> add_lesson(const demo_files::File& file) {
    auto node = tree(file.text, file.path);
    if (!node) return node.problems();
    Node lesson = std::move(node).value();
    refer(lesson.find("room"));
    refer(lesson.find("house_rules"));
    if (Node* dishes = lesson.find("dishes")) {
      for (Node& dish : dishes->items) refer(&dish);
    }
    // One lesson of each sort a day of the week that is shown; the others in the weeks around it.
    static const std::map<std::string, int> kDays{{"a-first-hob", 0},
                                                  {"b-two-dishes", 1},
                                                  {"c-frying-in-turns", 2},
                                                  {"e-does-not-fit", 3},
                                                  {"h-stop-gate-demonstration", 4},
                                                  {"d-half-groups", -6},
                                                  {"i-freeze-ahead", -4},
                                                  {"g1-overnight-rolls-shape", 8},
                                                  {"g2-overnight-rolls-bake", 9},
                                                  {"f-three-dish-practical", 10}};
    const auto place = kDays.find(stem(file.path));
    const int day = place == kDays.end() ? -14 : place->second;
    lesson.set("date", Node::of(base::date_text(base::Date{shown_week(today_).days + day})));
    store::Draft draft;
    draft.body = kitchen::json_text(lesson);
    draft.links = links_of(Kind::kLesson, lesson);
    return create(Kind::kLesson, stem(file.path), std::move(draft));
  }
};

}  // namespace

base::Result<bool> add_shipped_dishes(store::Repository& store) {
  base::Problems problems;
  const auto done = store.transact([](store::Writer& writer) -> base::Result<store::Outcome> {
    for (const shipped::Dish& dish : shipped::dishes()) {
      store::Draft draft;
      draft.body = dish.text;
      const auto made = writer.create(Kind::kDish, dish.key, draft, {"", "Came with the program"});
      if (!made) return made.problems();
    }
    return store::Outcome::kKeep;
  });
  if (!done) return done.problems();
  return true;
}

base::Result<bool> add_demo_school(store::Repository& store, base::Date today) {
  const auto done = store.transact([&](store::Writer& writer) -> base::Result<store::Outcome> {
    const auto filled = Filler(writer, today).fill();
    if (!filled) return filled.problems();
    return store::Outcome::kKeep;
  });
  if (!done) return done.problems();
  return true;
}

}  // namespace serve
