#include "serve/order_desk.h"

#include <list>
#include <mutex>

#include "base/text.h"
#include "print/larder_view.h"

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
  for (const char* table : {"prices", "stock", "foods"}) {
    const auto found = context.store.get(Kind::kTable, table);
    mark += say("/", found && found.value() ? found.value()->version : 0);
  }
  // Dishes and the school are few; any change to one makes the order anew.
  for (const Kind kind : {Kind::kDish, Kind::kSchool}) {
    const auto all = context.store.list(kind);
    std::int64_t sum = 0;
    if (all) {
      for (const store::Summary& each : all.value()) sum += each.version;
    }
    mark += say("/", sum);
  }
  return mark;
}

class Orders {
 public:
  std::shared_ptr<const WeekOrder> get(const std::string& mark) {
    const std::lock_guard lock(mutex_);
    for (const auto& [own, order] : list_) {
      if (own == mark) return order;
    }
    return nullptr;
  }
  void put(const std::string& mark, std::shared_ptr<const WeekOrder> order) {
    const std::lock_guard lock(mutex_);
    list_.emplace_front(mark, std::move(order));
    if (list_.size() > 12) list_.pop_back();
  }
  bool first_to_ask(const std::string& mark) {
    const std::lock_guard lock(mutex_);
    if (asked_ == mark) return false;
    asked_ = mark;
    return true;
  }

 private:
  std::mutex mutex_;
  std::list<std::pair<std::string, std::shared_ptr<const WeekOrder>>> list_;
  std::string asked_;  ///< the last one being worked out
};

Orders& orders() {
  static Orders all;
  return all;
}

base::Result<std::vector<store::Summary>> lessons_of(Context& context, base::Date monday) {
  store::Filter filter;
  filter.from = base::date_text(monday);
  filter.to = base::date_text(base::Date{monday.days + 6});
  return context.store.list(Kind::kLesson, filter);
}

}  // namespace

base::Date monday_of(base::Date day) { return base::Date{day.days - ((day.days + 3) % 7 + 7) % 7}; }

base::Date shown_week(base::Date today) { return monday_of(base::Date{today.days + 2}); }

base::Result<std::shared_ptr<const WeekOrder>> order_for(Context& context, base::Date monday) {
  const auto lessons = lessons_of(context, monday);
  if (!lessons) return lessons.problems();
  const std::string mark = mark_of(context, monday, lessons.value());
  if (auto there = orders().get(mark)) return there;
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
  larder::OrderWish wish;
  wish.today = context.today();
  out->order = larder::plan_order(out->input(), wish);
  out->costs = larder::costs_of(out->input(), out->order);
  out->days = larder::count_down(out->week, out->order.unsettled, wish.today);
  orders().put(mark, out);
  return std::shared_ptr<const WeekOrder>(out);
}

namespace {

/// Beside the request: a week of many lessons takes longer than a page should wait.
void work_out(Context& context, base::Date monday) {
  context.errands.start("", "", [&context, monday](JobDesk&) -> base::Result<std::string> {
    const auto made = order_for(context, monday);
    if (!made) return made.problems();
    context.hub.publish("desk", "document",
                        "{\"kind\": \"order\", \"id\": \"\", \"version\": 0, \"title\": \"\"}");
    return std::string("null");
  });
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
  const std::string mark = mark_of(context, monday, lessons.value());
  const auto there = orders().get(mark);
  if (!there) {
    if (orders().first_to_ask(mark)) work_out(context, monday);
    return being_worked_out();
  }
  const WeekOrder& made = *there;
  const auto input = made.input();
  const print::OrderView view{input, made.order, made.costs, made.days};
  Node node = Node::object();
  if (made.days.ahead.empty()) {
    node.set("says", Node::of("No order day is left this week."));
    node.set("order_by", Node());
    node.set("days_left", Node());
  } else {
    const larder::OrderDay& next = made.days.ahead.front();
    node.set("says", Node::of(larder::order_day_text(next, made.week)));
    node.set("order_by", Node::of(base::date_text(next.order_by)));
    node.set("days_left", Node::of(next.days_left));
  }
  node.set("total", Node::of(larder::pounds_text(made.costs.paid)));
  Node& lines = node.set("lines", Node::list());
  for (const larder::OrderLine& line : made.order.lines) {
    Node& one = lines.add(Node::object());
    one.set("food", Node::of(print::food_name(view, line.food)));
    one.set("buy", Node::of(say(line.count, " x ", print::pack_words(print::pack_of(view, line)))));
    Node& titles = one.set("lessons", Node::list());
    for (const larder::LessonUse& use : line.uses)
      titles.add(Node::of(print::lesson_name(view, use.lesson)));
  }
  Node& open = node.set("not_settled", Node::list());
  for (const base::Problem& problem : made.days.unsettled) open.add(Node::of(problem.message));
  return node;
}

}  // namespace serve
