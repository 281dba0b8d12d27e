#include "desk/change_parts.h"

#include <algorithm>

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

Sentence set_pace(LessonDocument& doc, const Lesson& lesson, const LessonChange& c) {
  const auto cook = doc.cook(c.cook, lesson);
  if (!cook) return cook.problems();
  cook.value()->set("pace", Node::of(c.pace));
  return say(c.cook,
             c.pace > 1   ? " is slower: "
             : c.pace < 1 ? " is quicker: "
                          : " has the usual pace: ",
             base::number_text(c.pace), " times the minutes.");
}

Sentence set_away(LessonDocument& doc, const Lesson& lesson, const LessonChange& c) {
  const auto cook = doc.cook(c.cook, lesson);
  if (!cook) return cook.problems();
  Node* list = cook.value()->find("away");
  if (list == nullptr) list = &cook.value()->set("away", Node::list());
  Node& span = list->add(Node::object());
  span.set("from", Node::of(c.from));
  span.set("to", Node::of(c.to));
  return say(c.cook, ": one is away from ", c.from, " to ", c.to, ".");
}

Sentence not_here(LessonDocument& doc, const Lesson& lesson, const LessonChange& c) {
  const auto cook = doc.cook(c.cook, lesson);
  if (!cook) return cook.problems();
  const Node* people = cook.value()->find("people");
  const int n = people == nullptr ? 1 : static_cast<int>(people->number);
  if (n > 1) {
    cook.value()->set("people", Node::of(n - 1));
    return say(c.cook, ": one is not here today.");
  }
  Node& list = *doc.tree().find("cooks");
  if (list.items.size() == 1)
    return Problem{"change.nobody_left", "", "/cook",
                   say("Without ", c.cook, " nobody is left to cook."),
                   "Keep one cook, or move the lesson to another day."};
  list.items.erase(list.items.begin() + (cook.value() - list.items.data()));
  doc.leave_windows(c.cook);
  return say(c.cook, " is not here today.");
}

Sentence swap(LessonDocument& doc, const Lesson& lesson, const LessonChange& c) {
  const auto one = doc.cook(c.cook, lesson);
  if (!one) return one.problems();
  if (c.cook == c.other)
    return Problem{"change.same_cook", "", "/other", say(c.cook, " cannot swap with themselves."),
                   "Choose two cooks."};
  const auto two = doc.cook(c.other, lesson, "/other");
  if (!two) return two.problems();
  const auto place_of = [&](const std::string& name) {
    for (const kitchen::Cook& cook : lesson.cooks) {
      if (cook.name == name) return lesson.room.places[static_cast<std::size_t>(cook.place)].name;
    }
    return std::string();
  };
  one.value()->set("place", Node::of(place_of(c.other)));
  two.value()->set("place", Node::of(place_of(c.cook)));
  return say(c.cook, " and ", c.other, " change places.");
}

Sentence pin(LessonDocument& doc, const Lesson& lesson, const LessonChange& c) {
  const auto cook = doc.cook(c.cook, lesson);
  if (!cook) return cook.problems();
  const auto sits = std::find_if(
      lesson.cooks.begin(), lesson.cooks.end(), [&](const kitchen::Cook& each) {
        return lesson.room.places[static_cast<std::size_t>(each.place)].name == c.place;
      });
  if (sits != lesson.cooks.end() && sits->name != c.cook) {
    LessonChange exchange = c;
    exchange.other = sits->name;
    const auto done = swap(doc, lesson, exchange);
    if (!done) return done;
  } else {
    cook.value()->set("place", Node::of(c.place));
  }
  Node* pinned = doc.about().find("pinned");
  if (pinned == nullptr) pinned = &doc.about().set("pinned", Node::list());
  const bool there = std::any_of(pinned->items.begin(), pinned->items.end(),
                                 [&](const Node& each) { return each.text == c.cook; });
  if (!there) pinned->add(Node::of(c.cook));
  return say(c.cook, " stays at ", c.place, ".");
}

Sentence set_dish(LessonDocument& doc, const Lesson& lesson, const LessonChange& c) {
  const auto cook = doc.cook(c.cook, lesson);
  if (!cook) return cook.problems();
  const Node* dishes = doc.tree().find("dishes");
  if (dishes == nullptr || dishes->find(key_in(c.dish)) == nullptr)
    return not_in_lesson("change.unknown_dish", "dish", "/dish", c.dish,
                         dishes == nullptr ? std::vector<std::string>{} : dishes->keys);
  Node* own = cook.value()->find("dishes");
  if (own == nullptr) own = &cook.value()->set("dishes", Node::list());
  const auto same = std::find_if(own->items.begin(), own->items.end(), [&](const Node& each) {
    return key_in(each.text) == key_in(c.dish);
  });
  if (same != own->items.end())
    *same = Node::of(c.dish);
  else if (own->items.size() == 1)
    own->items.front() = Node::of(c.dish);
  else
    return Problem{"change.which_dish", "", "/dish",
                   say(c.cook, " makes ",
                       base::counted(static_cast<long long>(own->items.size()), "dish", "dishes"),
                       ", and ", in_quotes(c.dish), " is none of them."),
                   "Choose another version of a dish they make."};
  return say(c.cook, " makes ", c.dish, ".");
}

}  // namespace desk
