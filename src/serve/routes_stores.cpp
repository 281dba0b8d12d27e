// Stores: the week's order, as a page and as files, and who must not have what in a lesson.
#include <deque>

#include "base/text.h"
#include "kitchen/check_lesson.h"
#include "print/say_allergens.h"
#include "print/say_order.h"
#include "print/workbook.h"
#include "serve/api_json.h"
#include "serve/order_desk.h"
#include "serve/routes.h"
#include "serve/week_days.h"
#include "shipped/safety.h"

namespace serve {
namespace {

using base::say;

Response order(Context& context, const Request& request) {
  const auto monday = week_asked(context, request);
  if (!monday) return refuse(monday.problems());
  const auto made = order_for(context, monday.value());
  if (!made) return refuse(made.problems());
  const WeekOrder& o = *made.value();
  const auto input = o.input();
  const print::OrderView view = o.view(input);
  Node stock = Node::list();
  for (const larder::StockLot& lot : o.stock->lots) {
    Node& one = stock.add(Node::object());
    const kitchen::Food* food = o.foods->find(lot.food);
    one.set("food", Node::of(food == nullptr ? lot.food : food->name));
    one.set("key", Node::of(lot.food));
    one.set("amount", Node::of(kitchen::quantity_text(lot.amount)));
    one.set("use_by", lot.use_by ? Node::of(base::date_text(*lot.use_by)) : Node());
    one.set("opened", Node::of(lot.opened));
    one.set("where", Node::of(lot.where));
  }
  Node look = Node::list();
  for (const larder::StockLot& lot : larder::to_look_at(o.stock->lots, context.today()))
    look.add(Node::of(lot.food));
  std::vector<std::string> unknown = o.unread;
  for (const base::Problem& problem : o.needs.unsettled) unknown.push_back(problem.message);
  return answer_raw(
      {{"from", http::json_quoted(base::date_text(monday.value()))},
       {"to", http::json_quoted(base::date_text(base::Date{monday.value().days + 6}))},
       {"order", print::order_json(view)},
       {"summary", kitchen::json_text(week_order(context, monday.value()))},
       {"stock", kitchen::json_text(stock)},
       {"look_at", kitchen::json_text(look)},
       {"unknown", kitchen::json_text(texts(unknown))}});
}

Response order_file(Context& context, const Request& request) {
  const std::string& format = request.parameter("format");
  const auto monday = week_asked(context, request);
  if (!monday) return refuse(monday.problems());
  const auto made = order_for(context, monday.value());
  if (!made) return refuse(made.problems());
  const WeekOrder& o = *made.value();
  const auto input = o.input();
  const print::OrderView view = o.view(input);
  const std::string name = "order-" + base::date_text(monday.value()) + "." + format;
  if (format == "csv")
    return http::download("text/csv; charset=utf-8", name, print::order_csv(view));
  if (format != "xlsx") return http::not_found();
  auto bytes = print::workbook({{"Order", print::order_rows(view), {5, 6}}});
  if (!bytes) return refuse(bytes.problems());
  return http::download("application/vnd.openxmlformats-officedocument.spreadsheetml.sheet", name,
                        std::move(bytes).value());
}

Response allergens(Context& context, const Request& request) {
  const auto kept = context.kept.lesson(request.parameter("id"));
  if (!kept) return refuse(kept.problems());
  const kitchen::Lesson& lesson = kept.value().lesson;
  const auto foods = context.kept.foods();
  const auto labels = context.kept.labels();
  const safety::Evidence evidence{*foods, *labels, shipped::hidden()};
  const safety::LessonNeeds needs = safety::needs_in(lesson);
  std::vector<kitchen::Dish> known = lesson.dishes;
  print::AllergenSheet sheet{{}, {}, {}, evidence};
  sheet.lessons.push_back(
      {lesson, needs, safety::conflicts({lesson, needs, evidence, shipped::substitutes(), known}),
       safety::order_at_things(lesson, needs, evidence)});
  return http::json(200, print::allergens_json(sheet));
}

}  // namespace

void add_store_routes(http::Router& router, Context& context) {
  add_route(router, context, Method::kGet, "/api/stores/order", "read", order);
  add_route(router, context, Method::kGet, "/api/stores/order-file/{format}", "read", order_file);
  add_route(router, context, Method::kGet, "/api/lessons/{id}/allergens", "read", allergens);
}

}  // namespace serve
