// Class lists from a file, and pupils put at places.
#include <sodium.h>

#include <algorithm>

#include <map>

#include "base/text.h"
#include "desk/class_csv.h"
#include "desk/cooks.h"
#include "kitchen/words.h"
#include "serve/api_json.h"
#include "serve/routes.h"

namespace serve {
namespace {

std::optional<std::string> from_base64(const std::string& text) {
  std::string out(text.size(), '\0');
  std::size_t length = 0;
  if (sodium_base642bin(reinterpret_cast<unsigned char*>(out.data()), out.size(), text.data(),
                        text.size(), " \r\n", &length, nullptr,
                        sodium_base64_VARIANT_ORIGINAL) != 0)
    return std::nullopt;
  out.resize(length);
  return out;
}

Response from_csv(Context&, const Request& request) {
  const auto body = body_of(request);
  if (!body) return refuse(body.problems());
  const auto odd = misshapen(
      body.value(),
      {{"text", Shape::kText, true}, {"base64", Shape::kFlag}, {"columns", Shape::kObject}});
  if (!odd.empty()) return refuse(odd);
  std::string bytes = text_in(body.value(), "text");
  if (flag_in(body.value(), "base64")) {
    auto decoded = from_base64(bytes);
    if (!decoded)
      return http::refused(400, "class.csv.base64", "The file did not arrive whole.",
                           "Choose it once more.");
    bytes = std::move(*decoded);
  }
  std::map<std::string, std::string> said;
  if (const Node* columns = body.value().find("columns")) {
    for (std::size_t i = 0; i < columns->keys.size(); ++i) {
      if (columns->items[i].kind != Node::Kind::kText)
        return http::refused(
            400, {{"request.wrong_kind", "", kitchen::below("/columns", columns->keys[i]),
                   "What a column means is said with a word.", "Send a text."}});
      said[columns->keys[i]] = columns->items[i].text;
    }
  }
  const auto preview = desk::class_from_csv(bytes, "", said);
  if (!preview) return refuse(preview.problems());
  Node node = Node::object();
  base::Problems broken;
  auto group = kitchen::parse_json(desk::write_class(preview.value().group), "", broken);
  node.set("body", group ? std::move(*group) : Node::object());
  Node& columns = node.set("columns", Node::list());
  for (const desk::ColumnMeaning& column : preview.value().columns) {
    Node& one = columns.add(Node::object());
    one.set("heading", Node::of(column.heading));
    one.set("meaning", Node::of(column.meaning));
  }
  node.set("pupils", Node::of(static_cast<int>(preview.value().group.pupils.size())));
  node.set("notes", texts(preview.value().notes));
  return answer(node);
}

int place_named(const kitchen::Room& room, const std::string& name) {
  for (std::size_t i = 0; i < room.places.size(); ++i) {
    if (room.places[i].name == name) return static_cast<int>(i);
  }
  return -1;
}

/// "Aisha and Ben" as two pupils of the class. A pupil whose own name holds an "and" is one.
std::vector<std::string> pupils_named(const desk::Class& group, const std::string& cook) {
  std::map<std::size_t, std::string> found;  // by where they stand in the name
  for (const desk::Pupil& pupil : group.pupils) {
    const auto at = cook.find(pupil.name);
    if (at != std::string::npos && found[at].size() < pupil.name.size()) found[at] = pupil.name;
  }
  std::vector<std::string> out;
  for (const auto& [at, name] : found) out.push_back(name);
  return out;
}

Response seating(Context& context, const Request& request) {
  const auto body = body_of(request);
  if (!body) return refuse(body.problems());
  const auto odd = misshapen(body.value(), {{"class", Shape::kText, true},
                                            {"room", Shape::kText, true},
                                            {"dishes", Shape::kTexts, true},
                                            {"in"},
                                            {"away", Shape::kTexts},
                                            {"keep", Shape::kList}});
  if (!odd.empty()) return refuse(odd);
  const auto group = context.kept.group(text_in(body.value(), "class"));
  if (!group) return refuse(group.problems());
  const auto room = context.kept.room(text_in(body.value(), "room"));
  if (!room) return refuse(room.problems());
  desk::SeatingWish wish;
  wish.together = group.value().together;
  if (const std::string in = text_in(body.value(), "in"); !in.empty()) {
    const auto together = kitchen::value_of(kitchen::kGroupWords, in);
    if (!together)
      return http::refused(
          400, {{"seating.in", "", "/in", base::say(base::in_quotes(in), " is no way to work."),
                 "Say singles, pairs or threes."}});
    wish.together = *together;
  }
  wish.away = texts_in(body.value(), "away");
  if (const Node* keep = body.value().find("keep")) {
    for (const Node& cook : keep->items) {
      desk::Seat seat{texts_in(cook, "pupils"), place_named(room.value(), text_in(cook, "place"))};
      if (seat.pupils.empty()) seat.pupils = pupils_named(group.value(), text_in(cook, "name"));
      wish.keep.push_back(std::move(seat));
    }
  }
  std::vector<desk::KeyedDish> dishes;
  for (const std::string& id : texts_in(body.value(), "dishes")) {
    auto versions = context.kept.dish(id);
    if (!versions) return refuse(versions.problems());
    dishes.push_back({id, context.kept.with_food_allergens(std::move(versions).value())});
  }
  const auto seats = desk::seat(group.value(), room.value(), wish);
  auto cooks = desk::cooks_of(group.value(), room.value(), seats, dishes);
  Node node = Node::object();
  node.set("cooks", std::move(cooks.list));
  node.set("seats", std::move(cooks.seats));
  node.set("share_places", Node::of(seats.shares_places));
  node.set("notes", texts(cooks.notes));
  return answer(node);
}

}  // namespace

void add_class_routes(http::Router& router, Context& context) {
  add_route(router, context, Method::kPost, "/api/classes/from-csv", "write", from_csv);
  add_route(router, context, Method::kPost, "/api/seating", "write", seating);
}

}  // namespace serve
