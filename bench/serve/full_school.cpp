#include "full_school.h"

#include <stdexcept>

#include "base/text.h"
#include "kitchen/json_tree.h"
#include "serve/demo.h"
#include "serve/kept.h"
#include "serve/week_days.h"

namespace serve_bench {

kitchen::Node tree(const std::string& text) {
  base::Problems broken;
  auto node = kitchen::parse_json(text, "", broken);
  if (!node) throw std::runtime_error(broken.front().message);
  return std::move(*node);
}

namespace {

using base::say;
using kitchen::Node;
using store::Kind;

constexpr int kClasses = 50, kPupils = 24, kDishes = 500, kLessons = 3000, kWeeks = 78;

template <class T>
const T& must(const base::Result<T>& result) {
  if (!result) throw std::runtime_error(result.problems().front().message);
  return result.value();
}

std::string class_text(int number) {
  Node group = Node::object();
  group.set("kind", Node::of("class"));
  group.set("version", Node::of(1));
  group.set("name", Node::of(say("Class ", number)));
  group.set("year", Node::of(7 + number % 5));
  Node& pupils = group.set("pupils", Node::list());
  for (int i = 0; i < kPupils; ++i) {
    Node& pupil = pupils.add(Node::object());
    pupil.set("name", Node::of(say("Pupil ", number, "-", i)));
    if (i % 8 != 0) continue;
    Node& need = pupil.set("needs", Node::list()).add(Node::object());
    need.set("need", Node::of(i % 16 == 0 ? "milk" : "eggs"));
  }
  return kitchen::json_text(group);
}

/// "../dish/fruit-scones.json" with a number: one of the copies of that dish.
void use_copies(Node& lesson, int copy) {
  Node* dishes = lesson.find("dishes");
  if (dishes == nullptr) return;
  for (Node& dish : dishes->items) {
    if (dish.kind != Node::Kind::kText || copy == 0) continue;
    dish.text.insert(dish.text.size() - 5, say("-", copy));
  }
}

}  // namespace

FullSchool full_school(const std::string& path, base::Date today) {
  FullSchool out;
  auto opened = store::open_sqlite(path);
  must(opened);
  out.store = std::move(opened).value();
  must(serve::add_shipped_dishes(*out.store));
  must(serve::add_demo_school(*out.store, today));
  const auto shipped = must(out.store->list(Kind::kDish));
  const auto models = must(out.store->list(Kind::kLesson));
  std::vector<std::string> dish_texts, lesson_texts;
  for (const auto& each : shipped)
    dish_texts.push_back(must(out.store->get(Kind::kDish, each.id))->body);
  for (const auto& each : models)
    lesson_texts.push_back(must(out.store->get(Kind::kLesson, each.id))->body);
  const base::Date monday = serve::shown_week(today);
  const int copies = kDishes / static_cast<int>(shipped.size());
  const auto filled = out.store->transact(
      [&](store::Writer& writer) -> base::Result<store::Outcome> {
        for (int c = 0; c < kClasses; ++c)
          must(writer.create(Kind::kClass, say("class-", c), {class_text(c), {}, "", {}}, {}));
        for (int copy = 1; copy <= copies; ++copy) {
          for (std::size_t d = 0; d < shipped.size(); ++d) {
            Node dish = tree(dish_texts[d]);
            dish.set("name", Node::of(say(dish.find("name")->text, " ", copy)));
            const std::string id = say(shipped[d].id, "-", copy);
            must(writer.create(Kind::kDish, id, {kitchen::json_text(dish), {}, "", {}}, {}));
            out.dishes.push_back(id);
          }
        }
        for (int i = 0; i < kLessons; ++i) {
          Node lesson = tree(lesson_texts[static_cast<std::size_t>(i) % lesson_texts.size()]);
          const int week = i % kWeeks - kWeeks / 2, day = i / kWeeks % 5;
          lesson.set("date", Node::of(base::date_text(base::Date{monday.days + 7 * week + day})));
          lesson.set("title", Node::of(say(lesson.find("title")->text, " ", i)));
          use_copies(lesson, i % copies);
          Node& about = lesson.set("about", Node::object());
          about.set("class", Node::of(say("class-", i % kClasses)));
          store::Draft draft{
              kitchen::json_text(lesson), serve::links_of(Kind::kLesson, lesson), "", {}};
          const std::string id = say("lesson-", i);
          must(writer.create(Kind::kLesson, id, draft, {}));
          if (week == 0) out.lessons.push_back(id);
        }
        return store::Outcome::kKeep;
      });
  must(filled);
  return out;
}

}  // namespace serve_bench
