#include "desk/lesson_change.h"

#include <algorithm>
#include <set>
#include <vector>

#include "base/text.h"
#include "desk/written_lesson.h"
#include "kitchen/check_lesson.h"
#include "kitchen/fields.h"
#include "kitchen/json_tree.h"
#include "kitchen/words.h"
#include "timeplan/changes.h"

namespace desk {
namespace {

using base::in_quotes;
using base::Problem;
using base::Problems;
using base::Result;
using base::say;
using kitchen::Lesson;
using kitchen::Node;

constexpr kitchen::Word<ChangeKind> kChangeWords[] = {{"remedy", ChangeKind::kRemedy},
                                                      {"pace", ChangeKind::kPace},
                                                      {"away", ChangeKind::kAway},
                                                      {"not here", ChangeKind::kNotHere},
                                                      {"swap", ChangeKind::kSwap},
                                                      {"pin", ChangeKind::kPin},
                                                      {"close cooker", ChangeKind::kCloseCooker},
                                                      {"move window", ChangeKind::kMoveWindow},
                                                      {"add stop", ChangeKind::kAddStop},
                                                      {"add gate", ChangeKind::kAddGate},
                                                      {"pin step", ChangeKind::kPinStep},
                                                      {"unpin step", ChangeKind::kUnpinStep},
                                                      {"bell", ChangeKind::kBell},
                                                      {"purpose", ChangeKind::kPurpose},
                                                      {"dish", ChangeKind::kDish}};

/// `where` points into the change that was asked for.
Problem unknown(const char* code, std::string_view noun, const char* where, const std::string& name,
                const std::vector<std::string>& known) {
  return {
      code, "", where,
      say("The lesson has no ", noun, " ", in_quotes(name), kitchen::or_did_you_mean(name, known)),
      known.empty() ? say("There is none to choose.")
                    : say("Choose one of ", base::joined(known, "or"), ".")};
}

/// The lesson's document while it is changed.
class Document {
 public:
  Document(Node tree, const std::string& file, const kitchen::Loader& loader)
      : tree_(std::move(tree)), file_(file), loader_(loader) {}

  Node& tree() { return tree_; }

  /// The cooks one by one; a "class" is written out first.
  Result<Node*> cook(const std::string& name, const Lesson& lesson, const char* where = "/cook") {
    if (tree_.find("cooks") == nullptr) write_cooks(lesson);
    std::vector<std::string> names;
    for (Node& each : tree_.find("cooks")->items) {
      const Node* own = each.find("name");
      if (own == nullptr) continue;
      if (own->text == name) return &each;
      names.push_back(own->text);
    }
    return unknown("change.unknown_cook", "cook", where, name, names);
  }

  Result<Node*> window(const std::string& name) {
    std::vector<std::string> names;
    if (Node* list = tree_.find("windows")) {
      for (Node& each : list->items) {
        const Node* own = each.find("name");
        if (own != nullptr && own->text == name) return &each;
        if (own != nullptr) names.push_back(own->text);
      }
    }
    return unknown("change.unknown_window", "window", "/window", name, names);
  }

  /// The dish of that key as a part of the lesson, so that it can be changed for it alone.
  Result<Node*> own_dish(const std::string& key) {
    Node* dishes = tree_.find("dishes");
    Node* dish = dishes == nullptr ? nullptr : dishes->find(key);
    if (dish == nullptr)
      return unknown("change.unknown_dish", "dish", "/dish", key,
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

  /// A cook who is gone has no window to be in. A window that was theirs alone goes with them: with
  /// nobody named it would be everybody's.
  void leave_windows(const std::string& name) {
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

  /// Takes cooks out of the pins that `which` picks; a pin that was theirs alone goes with them.
  /// Without names every such pin goes.
  template <class Which>
  int leave_pins(Which which, const std::set<std::string>& names) {
    Node* pins = tree_.find("pins");
    if (pins == nullptr) return 0;
    int touched = 0;
    std::erase_if(pins->items, [&](Node& pin) {
      if (!which(pin)) return false;
      Node* cooks = pin.find("cooks");
      if (names.empty()) {
        ++touched;
        return true;
      }
      if (cooks == nullptr || cooks->items.empty()) return false;
      const auto left = std::erase_if(cooks->items,
                                      [&](const Node& each) { return names.count(each.text) > 0; });
      touched += left > 0 ? 1 : 0;
      return left > 0 && cooks->items.empty();
    });
    if (pins->items.empty()) tree_.erase("pins");
    return touched;
  }

  Node& list(std::string_view key) {
    if (Node* there = tree_.find(key)) return *there;
    return tree_.set(key, Node::list());
  }
  Node& about() {
    if (Node* there = tree_.find("about")) return *there;
    return tree_.set("about", Node::object());
  }

 private:
  Node tree_;
  const std::string& file_;
  const kitchen::Loader& loader_;

  // The class fills the places in order; from here on each cook is named.
  void write_cooks(const Lesson& lesson) {
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
};

using Sentence = Result<std::string>;

Problem nothing_said(const char* where, const char* remedy) {
  return {"change.nothing", "", where, "The change does not say what is to be different.", remedy};
}

Sentence set_pace(Document& doc, const Lesson& lesson, const LessonChange& c) {
  const auto cook = doc.cook(c.cook, lesson);
  if (!cook) return cook.problems();
  cook.value()->set("pace", Node::of(c.pace));
  return say(c.cook,
             c.pace > 1   ? " is slower: "
             : c.pace < 1 ? " is quicker: "
                          : " has the usual pace: ",
             base::number_text(c.pace), " times the minutes.");
}

Sentence set_away(Document& doc, const Lesson& lesson, const LessonChange& c) {
  const auto cook = doc.cook(c.cook, lesson);
  if (!cook) return cook.problems();
  Node* list = cook.value()->find("away");
  if (list == nullptr) list = &cook.value()->set("away", Node::list());
  Node& span = list->add(Node::object());
  span.set("from", Node::of(c.from));
  span.set("to", Node::of(c.to));
  return say(c.cook, ": one is away from ", c.from, " to ", c.to, ".");
}

Sentence not_here(Document& doc, const Lesson& lesson, const LessonChange& c) {
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

Sentence swap(Document& doc, const Lesson& lesson, const LessonChange& c) {
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

Sentence pin(Document& doc, const Lesson& lesson, const LessonChange& c) {
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

Sentence close_cooker(Document& doc, const Lesson& lesson, const LessonChange& c) {
  const auto room = without_cooker(lesson.room, c.cooker);
  if (!room) {
    Problems wrong = room.problems();
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

Sentence move_window(Document& doc, const Lesson&, const LessonChange& c) {
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

/// The key under which the lesson has the dish, which a plan calls by its name.
Result<std::string> dish_key(Document& doc, const Lesson& lesson, const std::string& dish) {
  const Node* dishes = doc.tree().find("dishes");
  if (dishes != nullptr && dishes->find(key_in(dish)) != nullptr) return dish;
  const std::vector<std::string> names = names_in(doc.tree(), lesson);
  for (std::size_t d = 0; d < names.size(); ++d) {
    if (lesson.dishes[d].name == dish) return key_in(names[d]);
  }
  return unknown("change.unknown_dish", "dish", "/dish", dish,
                 dishes == nullptr ? std::vector<std::string>{} : dishes->keys);
}

Sentence add_stop(Document& doc, const Lesson& lesson, const LessonChange& c) {
  const auto key = dish_key(doc, lesson, c.dish);
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

Sentence add_gate(Document& doc, const Lesson& lesson, const LessonChange& c) {
  const auto key = dish_key(doc, lesson, c.dish);
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
  return unknown("change.unknown_step", "step", "/step", c.step, ids);
}

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

Sentence pin_step(Document& doc, const Lesson& lesson, const LessonChange& c) {
  if (c.from.empty()) return nothing_said("/from", "Say when the step starts.");
  const auto key = dish_key(doc, lesson, c.dish);
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

Sentence unpin_step(Document& doc, const Lesson& lesson, const LessonChange& c) {
  const auto key = dish_key(doc, lesson, c.dish);
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

Sentence set_bell(Document& doc, const Lesson&, const LessonChange& c) {
  if (c.from.empty() && c.to.empty())
    return nothing_said("/to", "Say when the lesson begins, or when the bell rings.");
  if (!c.from.empty()) doc.tree().set("from", Node::of(c.from));
  if (!c.to.empty()) doc.tree().set("to", Node::of(c.to));
  return say("The lesson runs", c.from.empty() ? "" : " from " + c.from,
             c.to.empty() ? "" : " to the bell at " + c.to, ".");
}

Sentence set_purpose(Document& doc, const Lesson&, const LessonChange& c) {
  doc.tree().set("purpose", Node::of(c.purpose));
  if (c.purpose == "take home") {
    doc.tree().erase("serve");
    doc.tree().erase("sittings");
  }
  return say("It is for ", c.purpose, " now.");
}

Sentence set_dish(Document& doc, const Lesson& lesson, const LessonChange& c) {
  const auto cook = doc.cook(c.cook, lesson);
  if (!cook) return cook.problems();
  const Node* dishes = doc.tree().find("dishes");
  if (dishes == nullptr || dishes->find(key_in(c.dish)) == nullptr)
    return unknown("change.unknown_dish", "dish", "/dish", c.dish,
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

Sentence apply(Document& doc, const Lesson& lesson, const LessonChange& c) {
  switch (c.kind) {
    case ChangeKind::kPace:
      return set_pace(doc, lesson, c);
    case ChangeKind::kAway:
      return set_away(doc, lesson, c);
    case ChangeKind::kNotHere:
      return not_here(doc, lesson, c);
    case ChangeKind::kSwap:
      return swap(doc, lesson, c);
    case ChangeKind::kPin:
      return pin(doc, lesson, c);
    case ChangeKind::kCloseCooker:
      return close_cooker(doc, lesson, c);
    case ChangeKind::kMoveWindow:
      return move_window(doc, lesson, c);
    case ChangeKind::kAddStop:
      return add_stop(doc, lesson, c);
    case ChangeKind::kAddGate:
      return add_gate(doc, lesson, c);
    case ChangeKind::kPinStep:
      return pin_step(doc, lesson, c);
    case ChangeKind::kUnpinStep:
      return unpin_step(doc, lesson, c);
    case ChangeKind::kBell:
      return set_bell(doc, lesson, c);
    case ChangeKind::kPurpose:
      return set_purpose(doc, lesson, c);
    case ChangeKind::kDish:
      return set_dish(doc, lesson, c);
    case ChangeKind::kRemedy:
      break;
  }
  return Problem{"change.unknown", "", "/change", "This change is not known.",
                 "Choose one that is offered."};
}

struct Written {
  std::string text, says;
};

/// "trios + trays set out": one after the other, each by its code.
Result<Written> apply_remedy(const Node& tree, const std::string& file, const Lesson& before,
                             const std::string& code) {
  Lesson lesson = before;
  std::vector<std::string> said;
  for (const std::string& each : base::parts(code, '+')) {
    const auto all = timeplan::changes(lesson);
    const auto known = std::find_if(all.begin(), all.end(), [&](const timeplan::Change& change) {
      return change.code == each;
    });
    auto after = known == all.end() ? std::nullopt : known->apply(lesson);
    if (!after)
      return Problem{
          "change.no_remedy", "", "/code",
          say("The remedy ", in_quotes(each), " does not apply to this lesson any more."),
          "Plan the lesson again and choose one that is offered then."};
    lesson = std::move(*after);
    said.push_back(known->says);
  }
  const base::Problems wrong = kitchen::check(lesson);
  if (!wrong.empty()) return wrong;
  auto text = written_again(tree, file, before, lesson);
  if (!text) return text.problems();
  return Written{std::move(text).value(), base::joined(said)};
}

Result<Written> write_change(std::string_view text, const std::string& file,
                             const kitchen::Loader& loader, const Lesson& lesson,
                             const LessonChange& change) {
  base::Problems problems;
  auto tree = kitchen::parse_json(text, file, problems);
  if (!tree) return problems;
  if (change.kind == ChangeKind::kRemedy) return apply_remedy(*tree, file, lesson, change.code);
  Document document(std::move(*tree), file, loader);
  const auto said = apply(document, lesson, change);
  if (!said) return said.problems();
  return Written{kitchen::json_text(document.tree()), said.value()};
}

}  // namespace

std::optional<ChangeKind> change_kind(std::string_view word) {
  return kitchen::value_of(kChangeWords, word);
}

Result<Changed> changed(std::string_view text, const std::string& file,
                        const kitchen::Loader& loader, const LessonChange& change) {
  const auto lesson = kitchen::read_lesson(text, file, loader);
  if (!lesson) return lesson.problems();
  const auto written = write_change(text, file, loader, lesson.value(), change);
  if (!written) return written.problems();
  auto read = kitchen::read_lesson(written.value().text, file, loader);
  if (!read) return read.problems();
  return Changed{written.value().text, written.value().says, std::move(read).value()};
}

}  // namespace desk
