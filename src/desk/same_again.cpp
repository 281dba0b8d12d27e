#include "desk/same_again.h"

#include <optional>

#include "base/clock.h"
#include "base/text.h"
#include "kitchen/json_tree.h"

namespace desk {
namespace {

using base::say;
using kitchen::Node;

std::string text_at(const Node& tree, std::string_view key) {
  const Node* node = tree.find(key);
  return node != nullptr && node->kind == Node::Kind::kText ? node->text : std::string();
}

/// Moves a clock time if the member is one.
void move(Node& object, std::string_view key, base::Seconds by) {
  Node* node = object.find(key);
  if (node == nullptr || node->kind != Node::Kind::kText) return;
  const auto time = base::local_time_in(node->text);
  if (!time) return;
  constexpr base::Seconds kDay{86400};
  auto at = (time->after_midnight + by) % kDay;
  if (at < base::Seconds{0}) at += kDay;
  *node = Node::of(base::clock_text(at));
}

void move_all(Node& tree, std::string_view list, std::initializer_list<std::string_view> keys,
              base::Seconds by) {
  Node* node = tree.find(list);
  if (node == nullptr) return;
  for (Node& each : node->items) {
    for (const std::string_view key : keys) move(each, key, by);
  }
}

std::optional<base::Seconds> clock_of(const std::string& text) {
  const auto time = base::local_time_in(text);
  return time ? std::optional(time->after_midnight) : std::nullopt;
}

}  // namespace

base::Result<Again> same_again(std::string_view text, const std::string& file,
                               const AgainWish& wish) {
  base::Problems problems;
  auto tree = kitchen::parse_json(text, file, problems);
  if (!tree) return problems;
  if (!base::date_in(wish.date))
    return base::Problem{"again.date", "", "/date",
                         say(base::in_quotes(wish.date), " is not a date."),
                         "Write year, month and day: 2026-11-17."};
  const std::string old_from = text_at(*tree, "from"), old_to = text_at(*tree, "to");
  const std::string from = wish.from.empty() ? old_from : wish.from;
  const auto was = clock_of(old_from), is = clock_of(from), old_bell = clock_of(old_to);
  if (!was || !is || !old_bell)
    return base::Problem{"again.time", "", "/from",
                         say(base::in_quotes(from), " is not a clock time."),
                         "Write it like 09:05."};
  const base::Seconds by = *is - *was;
  const std::string to = wish.to.empty() ? base::clock_text((*old_bell + by) % base::Seconds{86400})
                                         : wish.to;
  const auto bell = clock_of(to);
  if (!bell)
    return base::Problem{"again.time", "", "/to", say(base::in_quotes(to), " is not a clock time."),
                         "Write it like 10:05."};

  Again out;
  const std::string old_date = text_at(*tree, "date");
  out.differs.push_back(say(wish.date, " instead of ", old_date, "."));
  if (by != base::Seconds{0})
    out.differs.push_back(say("Begins at ", from, " instead of ", old_from, "."));
  const auto minutes = (*bell - *is).count() / 60, old_minutes = (*old_bell - *was).count() / 60;
  if (minutes != old_minutes)
    out.differs.push_back(say(minutes, " min to the bell instead of ", old_minutes, "."));

  tree->set("date", Node::of(wish.date));
  tree->set("from", Node::of(base::clock_text(*is)));
  tree->set("to", Node::of(base::clock_text(*bell)));
  if (!wish.title.empty()) tree->set("title", Node::of(wish.title));
  if (!wish.room.empty() && text_at(*tree, "room") != wish.room) {
    tree->set("room", Node::of(wish.room));
    out.differs.push_back("Another room.");
  }
  move_all(*tree, "windows", {"from", "latest"}, by);
  move_all(*tree, "bans", {"after"}, by);
  move_all(*tree, "sittings", {"from", "to"}, by);
  move_all(*tree, "adults", {"from", "to"}, by);
  if (Node* serve = tree->find("serve")) {
    move(*serve, "from", by);
    move(*serve, "to", by);
  }
  if (Node* cooks = tree->find("cooks")) {
    for (Node& cook : cooks->items) {
      // Who was away on that day says nothing about this one.
      if (cook.find("away") != nullptr) {
        cook.erase("away");
        out.differs.push_back(say(text_at(cook, "name"), " is here all the time."));
      }
      cook.erase("arrives");
      cook.erase("leaves");
    }
  }
  if (tree->find("pins") != nullptr) {
    tree->erase("pins");
    out.differs.push_back("No step is pinned to a time.");
  }
  Node about = tree->find("about") == nullptr ? Node::object() : *tree->find("about");
  about.set("same_as", Node::of(wish.same_as));
  if (!wish.class_id.empty()) about.set("class", Node::of(wish.class_id));
  about.erase("pinned");
  tree->set("about", std::move(about));
  out.text = kitchen::json_text(*tree);
  return out;
}

}  // namespace desk
