// A lesson changed by a click, with the plan that follows; and the same lesson again on another
// day.
#include <algorithm>

#include "base/text.h"
#include "desk/cooks.h"
#include "desk/lesson_allergens.h"
#include "desk/lesson_change.h"
#include "desk/same_again.h"
#include "desk/written_lesson.h"
#include "kitchen/words.h"
#include "serve/api_json.h"
#include "serve/planning.h"
#include "serve/routes.h"

namespace serve {
namespace {

using base::say;

base::Result<desk::LessonChange> change_in(const Node& body) {
  const auto odd = misshapen(body, {{"change", Shape::kText, true},
                                    {"code"},
                                    {"cook"},
                                    {"other"},
                                    {"pace", Shape::kNumber},
                                    {"from"},
                                    {"to"},
                                    {"cooker"},
                                    {"window"},
                                    {"dish"},
                                    {"step"},
                                    {"look_for"},
                                    {"minutes", Shape::kNumber},
                                    {"place"},
                                    {"purpose"},
                                    {"cooks", Shape::kTexts}});
  if (!odd.empty()) return odd;
  const auto kind = desk::change_kind(text_in(body, "change"));
  if (!kind)
    return base::Problem{
        "change.unknown", "", "/change",
        say("The change ", base::in_quotes(text_in(body, "change")), " is not known."),
        "Choose one that is offered."};
  desk::LessonChange out;
  out.kind = *kind;
  out.code = text_in(body, "code");
  out.cook = text_in(body, "cook");
  out.other = text_in(body, "other");
  out.from = text_in(body, "from");
  out.to = text_in(body, "to");
  out.cooker = text_in(body, "cooker");
  out.window = text_in(body, "window");
  out.dish = text_in(body, "dish");
  out.step = text_in(body, "step");
  out.look_for = text_in(body, "look_for");
  out.place = text_in(body, "place");
  out.purpose = text_in(body, "purpose");
  out.cooks = texts_in(body, "cooks");
  out.pace = number_in(body, "pace").value_or(1);
  out.minutes = number_in(body, "minutes").value_or(0);
  return out;
}

Response change_clash(Context& context, const Node& asked, const store::Document& current) {
  return clash_answer(
      context, current, &asked,
      {"document.clash", "", "", "Somebody changed this lesson while you were at it.",
       "Look at it again, then make your change."});
}

Response change(Context& context, const Request& request) {
  const auto body = body_of(request);
  if (!body) return refuse(body.problems());
  const auto asked = change_in(body.value());
  if (!asked) return refuse(asked.problems());
  const auto seen = version_seen(request);
  if (!seen) return refuse(seen.problems());
  const std::string& id = request.parameter("id");
  const auto kept = context.kept.document(Kind::kLesson, id);
  if (!kept) return refuse(kept.problems());
  if (kept.value().version != seen.value())
    return change_clash(context, body.value(), kept.value());
  auto made = desk::changed(kept.value().body, "lesson/" + id + ".json", context.kept.loader(),
                            asked.value());
  if (!made) return http::refused(400, made.problems());
  desk::Changed changed = std::move(made).value();
  // A lesson that could not be planned for its allergens must not be written first and refused
  // then.
  const auto allowed = desk::add_allergens(changed.lesson, *context.kept.foods(),
                                           *context.kept.labels());
  if (!allowed) return http::refused(400, allowed.problems());
  PlanWish wish;
  wish.seconds = 0.6;  // the plan must follow the click
  wish.runs = 250;     // a chance within three in a hundred will do until it is planned at leisure
  wish.keep_lines = true;
  wish.what = changed.says;
  wish.standing = standing_plan(context, id, seen.value(), changed.text);
  base::Problems broken;
  const auto node = kitchen::parse_json(changed.text, "", broken);
  store::Draft draft;
  draft.body = changed.text;
  if (node) draft.links = links_of(Kind::kLesson, *node);
  const auto written = context.store.replace(Kind::kLesson, id, seen.value(), draft,
                                             {who(request).id, changed.says});
  if (!written) return refuse(written.problems());
  if (const auto* clash = std::get_if<store::Clash>(&written.value()))
    return change_clash(context, body.value(), clash->current);
  tell_changed(context, std::get<store::Document>(written.value()));
  const auto plan = plan_kept(context, id, wish, nullptr, who(request).id);
  return plan ? http::json(200, plan.value()) : refuse(plan.problems());
}

/// The lesson's dishes under their keys, with what the table of foods says of their allergens.
std::vector<desk::KeyedDish> dishes_of(Context& context, const Node& lesson) {
  std::vector<desk::KeyedDish> out;
  const Node* dishes = lesson.find("dishes");
  if (dishes == nullptr) return out;
  for (std::size_t i = 0; i < dishes->items.size(); ++i) {
    const Node& dish = dishes->items[i];
    const auto text = context.kept.text_of(dish);
    if (!text) continue;  // told when the lesson is read
    if (auto versions = kitchen::read_dish_variants(text.value(), dishes->keys[i]))
      out.push_back(
          {dishes->keys[i], context.kept.with_food_allergens(std::move(versions).value())});
  }
  return out;
}

/// What each cook of the old lesson makes, by the dishes' keys, in their order: a class of which
/// one half made soup and the other macaroni stays so.
std::vector<std::vector<std::string>> menus_of(const Node& lesson) {
  std::vector<std::vector<std::string>> out;
  const auto add = [&](const Node* cook) {
    std::vector<std::string> keys;
    if (cook != nullptr) {
      for (const std::string& dish : texts_in(*cook, "dishes")) keys.push_back(desk::key_in(dish));
    }
    out.push_back(std::move(keys));
  };
  if (const Node* cooks = lesson.find("cooks")) {
    for (const Node& cook : cooks->items) add(&cook);
  } else {
    add(lesson.find("class"));
  }
  return out;
}

/// The room of a lesson's document. The lesson itself cannot be read yet: its cooks sit in the old
/// room.
base::Result<kitchen::Room> room_of(Context& context, const Node& lesson) {
  const Node* room = lesson.find("room");
  if (room == nullptr) return kitchen::read_room("", "");
  const auto text = context.kept.text_of(*room);
  if (!text) return text.problems();
  return kitchen::read_room(text.value(), room->text);
}

/// The seats of a new class with the menus of the old lesson dealt out along them.
desk::Cooks cooks_with_menus(Context& context, const Node& old_lesson, const desk::Class& group,
                             const kitchen::Room& room, const desk::Seating& seating) {
  const auto dishes = dishes_of(context, old_lesson);
  const auto menus = menus_of(old_lesson);
  desk::Cooks out{Node::list(), Node::object(), seating.notes};
  if (menus.empty()) return out;
  for (std::size_t i = 0; i < seating.seats.size(); ++i) {
    const auto& menu = menus[i * menus.size() / seating.seats.size()];
    std::vector<desk::KeyedDish> own;
    for (const std::string& key : menu) {
      const auto dish = std::find_if(dishes.begin(), dishes.end(),
                                     [&](const desk::KeyedDish& each) { return each.key == key; });
      if (dish != dishes.end()) own.push_back(*dish);
    }
    desk::Seating one;
    one.seats = {seating.seats[i]};
    desk::Cooks cook = desk::cooks_of(group, room, one, own);
    std::string name = cook.seats.keys.front();
    for (int n = 2; out.seats.find(name) != nullptr; ++n)
      name = say(cook.seats.keys.front(), " (", n, ")");
    cook.list.items.front().set("name", Node::of(name));
    out.list.add(std::move(cook.list.items.front()));
    out.seats.set(name, std::move(cook.seats.items.front()));
    out.notes.insert(out.notes.end(), cook.notes.begin(), cook.notes.end());
  }
  return out;
}

Response again(Context& context, const Request& request) {
  const auto body = body_of(request);
  if (!body) return refuse(body.problems());
  const auto odd = misshapen(body.value(), {{"lesson", Shape::kText, true},
                                            {"date", Shape::kText, true},
                                            {"from"},
                                            {"to"},
                                            {"class"},
                                            {"room"}});
  if (!odd.empty()) return refuse(odd);
  const std::string id = text_in(body.value(), "lesson");
  const auto old = context.kept.document(Kind::kLesson, id);
  if (!old) return refuse(old.problems());
  desk::AgainWish wish;
  wish.date = text_in(body.value(), "date");
  wish.from = text_in(body.value(), "from");
  wish.to = text_in(body.value(), "to");
  wish.same_as = id;
  wish.class_id = text_in(body.value(), "class");
  if (const std::string room = text_in(body.value(), "room"); !room.empty())
    wish.room = "../room/" + room + ".json";
  auto made = desk::same_again(old.value().body, "lesson/" + id + ".json", wish);
  if (!made) return refuse(made.problems());
  base::Problems broken;
  auto node = kitchen::parse_json(made.value().text, "", broken);
  if (!node) return refuse(broken);
  std::vector<std::string> differs = made.value().differs;
  if (!wish.class_id.empty()) {
    const auto group = context.kept.group(wish.class_id);
    if (!group) return refuse(group.problems());
    const auto room = room_of(context, *node);
    if (!room) return refuse(room.problems());
    const auto seats = desk::seat(group.value(), room.value(), {group.value().together, {}, {}});
    auto cooks = cooks_with_menus(context, *node, group.value(), room.value(), seats);
    differs.push_back(say(group.value().name, " with ", group.value().pupils.size(), " pupils."));
    differs.insert(differs.end(), cooks.notes.begin(), cooks.notes.end());
    node->erase("class");
    node->set("cooks", std::move(cooks.list));
    if (seats.shares_places) node->set("share_places", Node::of(true));
    node->set("year", Node::of(group.value().year));
    Node about = *node->find("about");
    about.set("seats", std::move(cooks.seats));
    node->set("about", std::move(about));
  }
  store::Draft draft;
  draft.body = kitchen::json_text(*node);
  draft.links = links_of(Kind::kLesson, *node);
  const base::Problems wrong = look_at(Kind::kLesson, draft.body, context.kept).wrong;
  if (!wrong.empty()) return http::refused(400, wrong);
  const auto created = context.store.create(
      Kind::kLesson, {}, draft, {who(request).id, "Same again as " + old.value().title});
  if (!created) return refuse(created.problems());
  tell_changed(context, created.value());
  Node out = Node::object();
  out.set("lesson", document_node(created.value(), who(request).name));
  out.set("differs", texts(differs));
  return answer(out, 201);
}

}  // namespace

void add_change_routes(http::Router& router, Context& context) {
  add_route(router, context, Method::kPost, "/api/lessons/{id}/change", "write", change);
  add_route(router, context, Method::kPost, "/api/lessons/same-again", "write", again);
}

}  // namespace serve
