#include "desk/change_parts.h"

#include <algorithm>
#include <set>

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

Problem nothing_said(const char* where, const char* remedy) {
  return {"change.nothing", "", where, "The change does not say what is to be different.", remedy};
}

namespace {

/// Pins of that step of that dish, whichever version of it they name.
auto pins_of(const std::string& key, const std::string& step) {
  return [key = key_in(key), step](const Node& pin) {
    const Node* dish = pin.find("dish");
    const Node* id = pin.find("step");
    return dish != nullptr && id != nullptr && id->text == step && key_in(dish->text) == key;
  };
}

/// "for Ada and Ben"; nothing when it is for everybody.
std::string for_whom(const LessonChange& c) {
  return c.cooks.empty() ? "" : say(" for ", base::joined(c.cooks));
}

}  // namespace

Sentence close_cooker(LessonDocument& doc, const Lesson& lesson, const LessonChange& c) {
  const auto room = without_cooker(lesson.room, c.cooker);
  if (!room) {
    base::Problems wrong = room.problems();
    for (Problem& each : wrong) each.where = "/cooker";
    return wrong;
  }
  base::Problems problems;
  auto node = kitchen::parse_json(kitchen::write_room(room.value()), "", problems);
  if (!node) return problems;
  doc.tree().set("room", std::move(*node));
  if (Node* ovens = doc.tree().find("ovens_set")) {
    std::erase_if(ovens->items, [&](const Node& each) {
      const Node* name = each.find("cooker");
      return name != nullptr && name->text == c.cooker;
    });
  }
  return say("Cooker ", c.cooker, " is closed.");
}

Sentence move_window(LessonDocument& doc, const Lesson&, const LessonChange& c) {
  const auto window = doc.window(c.window);
  if (!window) return window.problems();
  if (c.from.empty() && c.minutes <= 0) return nothing_said("/from", "Say when it begins.");
  if (!c.from.empty()) {
    window.value()->set("from", Node::of(c.from));
    window.value()->erase("latest");
  }
  if (c.minutes > 0) window.value()->set("minutes", Node::of(c.minutes));
  return say(c.window, c.from.empty() ? "" : " begins at " + c.from,
             c.minutes <= 0 ? ""
                            : (c.from.empty() ? " takes " : " and takes ") +
                                  base::number_text(c.minutes) + " min",
             ".");
}

Sentence add_stop(LessonDocument& doc, const Lesson& lesson, const LessonChange& c) {
  const auto key = doc.dish_key(lesson, c.dish);
  if (!key) return key.problems();
  Node& window = doc.list("windows").add(Node::object());
  const std::string name = c.look_for.empty() ? "Stop and look" : c.look_for;
  window.set("name", Node::of(name));
  window.set("kind", Node::of("stop"));
  window.set("minutes", Node::of(c.minutes > 0 ? c.minutes : 3));
  Node& step = window.set("before", Node::list()).add(Node::object());
  step.set("dish", Node::of(key.value()));
  step.set("step", Node::of(c.step));
  return say("Everybody stops: ", name, ".");
}

Sentence add_gate(LessonDocument& doc, const Lesson& lesson, const LessonChange& c) {
  const auto key = doc.dish_key(lesson, c.dish);
  if (!key) return key.problems();
  const auto dish = doc.own_dish(key_in(key.value()));
  if (!dish) return dish.problems();
  Node* method = dish.value()->find("method");
  std::vector<std::string> ids;
  if (method != nullptr) {
    for (Node& step : method->items) {
      const Node* id = step.find("id");
      if (id == nullptr) continue;
      ids.push_back(id->text);
      if (id->text != c.step) continue;
      Node& gate = step.set("gate", Node::object());
      gate.set("look_for", Node::of(c.look_for.empty() ? "Looks right" : c.look_for));
      if (c.minutes > 0) gate.set("minutes", Node::of(c.minutes));
      return say("The adult looks at each result after ", in_quotes(c.step), ".");
    }
  }
  return not_in_lesson("change.unknown_step", "step", "/step", c.step, ids);
}

Sentence pin_step(LessonDocument& doc, const Lesson& lesson, const LessonChange& c) {
  if (c.from.empty()) return nothing_said("/from", "Say when the step starts.");
  const auto key = doc.dish_key(lesson, c.dish);
  if (!key) return key.problems();
  for (const std::string& name : c.cooks) {
    const auto cook = doc.cook(name, lesson, "/cooks");
    if (!cook) return cook.problems();
  }
  // A pin for everybody ends when somebody gets one of their own; a pin by names loses those names.
  const auto same = pins_of(key.value(), c.step);
  const auto everybody = [&](const Node& pin) { return same(pin) && pin.find("cooks") == nullptr; };
  doc.leave_pins(everybody, {});
  doc.leave_pins(same, std::set<std::string>(c.cooks.begin(), c.cooks.end()));
  Node& pin = doc.list("pins").add(Node::object());
  pin.set("dish", Node::of(key.value()));
  pin.set("step", Node::of(c.step));
  pin.set("at", Node::of(c.from));
  if (!c.cooks.empty()) {
    Node& cooks = pin.set("cooks", Node::list());
    for (const std::string& name : c.cooks) cooks.add(Node::of(name));
  }
  return say(in_quotes(c.step), " starts at ", c.from, for_whom(c), ".");
}

Sentence unpin_step(LessonDocument& doc, const Lesson& lesson, const LessonChange& c) {
  const auto key = doc.dish_key(lesson, c.dish);
  if (!key) return key.problems();
  const auto same = pins_of(key.value(), c.step);
  const auto theirs = [&](const Node& pin) {
    const Node* cooks = pin.find("cooks");
    return same(pin) && (c.cooks.empty() || cooks == nullptr);
  };
  const int whole = doc.leave_pins(theirs, {});
  const int part = doc.leave_pins(same, std::set<std::string>(c.cooks.begin(), c.cooks.end()));
  if (whole + part == 0)
    return Problem{"change.not_pinned", "", "/step",
                   say("The step ", in_quotes(c.step), " is not pinned", for_whom(c), "."),
                   "Look at the lesson again."};
  return say(in_quotes(c.step), " starts when it can", for_whom(c), ".");
}

Sentence set_bell(LessonDocument& doc, const Lesson&, const LessonChange& c) {
  if (c.from.empty() && c.to.empty())
    return nothing_said("/to", "Say when the lesson begins, or when the bell rings.");
  if (!c.from.empty()) doc.tree().set("from", Node::of(c.from));
  if (!c.to.empty()) doc.tree().set("to", Node::of(c.to));
  return say("The lesson runs", c.from.empty() ? "" : " from " + c.from,
             c.to.empty() ? "" : " to the bell at " + c.to, ".");
}

Sentence set_purpose(LessonDocument& doc, const Lesson&, const LessonChange& c) {
  doc.tree().set("purpose", Node::of(c.purpose));
  if (c.purpose == "take home") {
    doc.tree().erase("serve");
    doc.tree().erase("sittings");
  }
  return say("It is for ", c.purpose, " now.");
}

}  // namespace desk
