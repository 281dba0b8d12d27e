// Dishes: the list with what they can be chosen by, one with everything worked out, a text read.
#include "base/text.h"
#include "kitchen/quantity.h"
#include "kitchen/reading/json_ld.h"
#include "kitchen/reading/make_dish.h"
#include "kitchen/reading/read_dish_text.h"
#include "print/say_draft.h"
#include "serve/api_json.h"
#include "serve/dish_views.h"
#include "serve/routes.h"
#include "shipped/task_times.h"

namespace serve {
namespace {

using base::say;

constexpr std::size_t kLongestPaste = 400'000;  // bytes: some five thousand lines

/// What figures of a dish depend on besides the dish.
std::string tables_mark(Context& context) {
  return say("/", context.kept.table_version("prices"), "/", context.kept.table_version("foods"),
             "/", context.kept.table_version("labels"));
}

/// The row as JSON; empty for a dish that cannot be read.
std::string row(Context& context, const store::Summary& summary, const std::string& tables) {
  const std::string mark = say(summary.version, tables);
  if (const auto there = context.workings.dish_rows.get(summary.id, mark)) return *there;
  const auto versions = context.kept.dish(summary.id);
  if (!versions) return "";
  return *context.workings.dish_rows.put(
      summary.id, mark,
      json_line(dish_row(context, summary.id, summary.version, versions.value())));
}

Response list(Context& context) {
  const auto found = context.store.list(Kind::kDish);
  if (!found) return refuse(found.problems());
  const std::string tables = tables_mark(context);
  std::string out;
  for (const store::Summary& summary : found.value()) {
    const std::string one = row(context, summary, tables);
    if (one.empty()) continue;
    out += (out.empty() ? "" : ",\n") + one;
  }
  return http::json(200, "{\"dishes\": [" + out + "]}");
}

Response view_of(Context& context, const std::string& id, std::int64_t version,
                 const std::string& text, const std::string& variant) {
  base::Problems broken;
  const auto body = kitchen::parse_json(text, "", broken);
  if (!body) return refuse(broken);
  const auto versions = kitchen::read_dish_variants(text, "");
  if (!versions) return refuse(versions.problems());
  for (const kitchen::Dish& dish : versions.value()) {
    if (dish.variant == variant)
      return http::json(200, dish_view(context, id, version, *body, versions.value(), dish));
  }
  return http::refused(404, "dish.no_variant",
                       say("There is no variant ", base::in_quotes(variant), "."),
                       "Choose one of those listed with the dish.");
}

Response view(Context& context, const Request& request) {
  const std::string& id = request.parameter("id");
  const auto found = context.kept.document(Kind::kDish, id);
  if (!found) return refuse(found.problems());
  const std::string* asked = request.asked("variant");
  const std::string variant = asked == nullptr ? std::string() : *asked;
  const std::string name = id + "/" + variant;
  const std::string mark = say(found.value().version, tables_mark(context));
  if (const auto there = context.workings.dish_views.get(name, mark))
    return http::json(200, *there);
  Response made = view_of(context, id, found.value().version, found.value().body, variant);
  if (made.status == 200)
    context.workings.dish_views.put(name, mark, std::string(made.body.view()));
  return made;
}

Response draft_view(Context& context, const Request& request) {
  const auto body = body_of(request);
  if (!body) return refuse(body.problems());
  const auto odd = misshapen(body.value(), {{"body", Shape::kObject, true}});
  if (!odd.empty()) return refuse(odd);
  return view_of(context, "new", 0, kitchen::json_text(*body.value().find("body")), "");
}

void add_line(Node& list, const std::string& text, const std::string& understood,
              std::string_view sure) {
  Node& line = list.add(Node::object());
  line.set("text", Node::of(text));
  line.set("understood", Node::of(understood));
  line.set("sure", Node::of(sure));
}

Node lines_of(const kitchen::DishDraft& draft, const kitchen::Foods& foods) {
  Node list = Node::list();
  for (const kitchen::IngredientDraft& each : draft.ingredients) {
    const kitchen::Food* food = foods.find(each.food.value);
    std::string understood = kitchen::quantity_text(each.quantity.value);
    understood += say(understood.empty() ? "" : " of ", food != nullptr ? food->name : each.name);
    if (!each.preparation.empty()) understood += ", " + each.preparation;
    add_line(list, each.line, understood, print::sureness(each.confidence));
  }
  for (std::size_t i = 0; i < draft.method.size(); ++i)
    add_line(list, draft.method[i].says, print::step_understood(draft, i),
             print::sureness(print::step_confidence(draft.method[i])));
  for (const kitchen::DishDraft::Unread& each : draft.unread)
    add_line(list, each.line, "", "not understood");
  return list;
}

Response read_text(Context& context, const Request& request) {
  const auto body = body_of(request);
  if (!body) return refuse(body.problems());
  const auto odd = misshapen(body.value(), {{"text", Shape::kText, true}});
  if (!odd.empty()) return refuse(odd);
  const std::string text = text_in(body.value(), "text");
  if (base::blank(text))
    return http::refused(400, "read.nothing", "There is nothing to read.",
                         "Paste the ingredients and the method.");
  if (text.size() > kLongestPaste)
    return http::refused(400, "read.too_long", "That is longer than a dish.",
                         "Paste one dish at a time.");
  const auto foods = context.kept.foods();
  const auto draft = kitchen::looks_like_json_ld(text)
                         ? kitchen::read_json_ld(text, "", *foods, shipped::task_times())
                         : kitchen::read_dish_text(text, *context.kept.food_names(),
                                                   shipped::task_times());
  if (!draft) return refuse(draft.problems());
  Node node = Node::object();
  const auto made = kitchen::dish_from(draft.value(), *foods);
  std::vector<std::string> assumed = draft.value().assumed;
  base::Problems broken;
  if (made) {
    assumed = made.value().assumed;
    auto dish = kitchen::parse_json(made.value().file, "", broken);
    node.set("body", dish ? std::move(*dish) : Node());
  } else {
    node.set("body", Node());
    broken = made.problems();
  }
  node.set("lines", lines_of(draft.value(), *foods));
  Node& questions = node.set("questions", Node::list());
  for (const kitchen::Question& question : draft.value().questions) {
    Node& one = questions.add(Node::object());
    one.set("says", Node::of(question.asks));
    one.set("about", Node::of(question.about));
    one.set("choices", texts(question.answers));
  }
  node.set("assumed", texts(assumed));
  node.set("problems", problems_node(broken));
  return answer(node);
}

Response foods(Context& context, const Request& request) {
  const std::string* words = request.asked("q");
  if (words == nullptr || base::blank(*words))
    return http::refused(400, "foods.nothing", "There is nothing to look for.", "Say a food.");
  Node node = Node::object();
  Node& list = node.set("foods", Node::list());
  const auto table = context.kept.foods();
  for (const auto& hit : table->search(*words, 8)) {
    Node& one = list.add(Node::object());
    one.set("key", Node::of(hit.food->key));
    one.set("name", Node::of(hit.food->name));
  }
  return answer(node);
}

}  // namespace

void add_dish_routes(http::Router& router, Context& context) {
  router.add({.method = Method::kGet,
              .pattern = "/api/dishes",
              .needs = "read",
              .handler = [&context](const Request&) { return list(context); }});
  add_route(router, context, Method::kGet, "/api/dishes/{id}/view", "read", view);
  add_route(router, context, Method::kPost, "/api/dish-view", "read", draft_view);
  add_route(router, context, Method::kPost, "/api/read", "read", read_text);
  add_route(router, context, Method::kGet, "/api/foods", "read", foods);
}

}  // namespace serve
