#include "serve/order_desk.h"

#include "base/text.h"
#include "print/larder_view.h"
#include "serve/routes.h"
#include "serve/week_days.h"

namespace serve {
namespace {

using base::say;
using store::Kind;

/// Suppliers and budget as the school's own document says them, in the words of a week's file.
base::Result<larder::Week> frame(Context& context, base::Date monday) {
  const Node school = context.kept.school();
  Node week = Node::object();
  week.set("kind", Node::of("week"));
  week.set("version", Node::of(1));
  week.set("title", Node::of("Week of " + larder::day_text(monday)));
  for (const char* key : {"suppliers", "budget"}) {
    if (const Node* there = school.find(key)) week.set(key, *there);
  }
  week.set("lessons", Node::list());
  return larder::read_week(kitchen::json_text(week), "", context.kept.loader());
}

/// Everything an order depends on, as one text.
std::string mark_of(Context& context, base::Date monday,
                    const std::vector<store::Summary>& lessons) {
  std::string mark = say(monday.days, "/", context.today().days);
  for (const store::Summary& lesson : lessons) mark += say("/", lesson.id, ":", lesson.version);
  for (const char* table : {"prices", "stock", "foods"})
    mark += say("/", context.kept.table_version(table));
  // Dishes and the school are few; any change to one makes the order anew.
  for (const Kind kind : {Kind::kDish, Kind::kSchool}) {
    const auto all = context.store.versions(kind);
    std::int64_t sum = 0;
    if (all) {
      for (const auto& [id, version] : all.value()) sum += version;
    }
    mark += say("/", sum);
  }
  return mark;
}

base::Result<std::vector<store::Summary>> lessons_of(Context& context, base::Date monday) {
  return context.store.list(Kind::kLesson, days_of_week(monday));
}

}  // namespace

base::Result<std::shared_ptr<const WeekOrder>> order_for(Context& context, base::Date monday) {
  const auto lessons = lessons_of(context, monday);
  if (!lessons) return lessons.problems();
  const std::string mark = mark_of(context, monday, lessons.value());
  const std::string name = say(monday.days);
  if (auto there = context.workings.orders.get(name, mark)) return there;
  auto week = frame(context, monday);
  if (!week) return week.problems();
  auto out = std::make_shared<WeekOrder>();
  out->week = std::move(week).value();
  for (const store::Summary& summary : lessons.value()) {
    const auto kept = context.kept.lesson(summary.id);
    if (!kept) {
      out->unread.push_back(summary.title);
      continue;
    }
    larder::WeekLesson lesson = larder::week_lesson(kept.value().lesson);
    if (lesson.class_name.empty())
      lesson.class_name = summary.title.substr(0, summary.title.find(','));
    out->week.lessons.push_back(std::move(lesson));
  }
  out->foods = context.kept.foods();
  out->prices = context.kept.prices();
  out->stock = context.kept.stock();
  out->needs = larder::needs_of(out->week, *out->foods);
  out->worked = larder::worked_order(out->input(), context.today());
  auto kept = context.workings.orders.put(name, mark, std::shared_ptr<const WeekOrder>(out));
  ++context.changes;  // the week's page shows it from now on
  return kept;
}

namespace {

/// Beside the request: a week of many lessons takes longer than a page should wait. What is written
/// meanwhile is seen by whoever asks once the pages have been told.
void work_out(Context& context, base::Date monday) {
  if (!context.orders_underway.begin(monday.days)) return;
  const auto begun = context.errands.start(
      "", "", [&context, monday](JobDesk&) -> base::Result<std::string> {
        const auto made = order_for(context, monday);
        context.orders_underway.end(monday.days);
        if (!made) return made.problems();
        tell_changed(context, "order", "", 0, "");
        return std::string("null");
      });
  if (!begun) context.orders_underway.end(monday.days);
}

Node being_worked_out() {
  Node node = Node::object();
  node.set("says", Node::of("The order is being worked out."));
  node.set("order_by", Node());
  node.set("days_left", Node());
  node.set("total", Node::of(""));
  node.set("lines", Node::list());
  node.set("not_settled", Node::list());
  return node;
}

}  // namespace

Node week_order(Context& context, base::Date monday) {
  const auto lessons = lessons_of(context, monday);
  if (!lessons || lessons.value().empty()) return Node();
  if (context.kept.prices()->packs.empty()) return Node();
  const std::string name = say(monday.days), mark = mark_of(context, monday, lessons.value());
  const auto there = context.workings.orders.get(name, mark);
  if (!there) {
    work_out(context, monday);
    return being_worked_out();
  }
  const WeekOrder& made = *there;
  const auto input = made.input();
  const print::OrderView view = made.view(input);
  Node node = Node::object();
  if (made.worked.days.ahead.empty()) {
    node.set("says", Node::of("No order day is left this week."));
    node.set("order_by", Node());
    node.set("days_left", Node());
  } else {
    const larder::OrderDay& next = made.worked.days.ahead.front();
    node.set("says", Node::of(larder::order_day_text(next, made.week)));
    node.set("order_by", Node::of(base::date_text(next.order_by)));
    node.set("days_left", Node::of(next.days_left));
  }
  node.set("total", Node::of(larder::pounds_text(made.worked.costs.paid)));
  Node& lines = node.set("lines", Node::list());
  for (const larder::OrderLine& line : made.worked.order.lines) {
    Node& one = lines.add(Node::object());
    one.set("food", Node::of(print::food_name(view, line.food)));
    one.set("buy", Node::of(say(line.count, " x ", print::pack_words(print::pack_of(view, line)))));
    Node& titles = one.set("lessons", Node::list());
    for (const larder::LessonUse& use : line.uses)
      titles.add(Node::of(print::lesson_name(view, use.lesson)));
  }
  Node& open = node.set("not_settled", Node::list());
  for (const base::Problem& problem : made.worked.days.unsettled)
    open.add(Node::of(problem.message));
  return node;
}

}  // namespace serve
