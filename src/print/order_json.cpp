// The order for machines: schemas/order.schema.json. Money in pence, dates as ISO 8601.
#include "base/text.h"
#include "kitchen/json_tree.h"
#include "print/say_order.h"

namespace print {

using kitchen::Node;
using larder::Order;

namespace {

Node pence(larder::Pence p) { return Node::of(static_cast<double>(p)); }
Node date(base::Date d) { return Node::of(base::date_text(d)); }

std::string unit_of(const larder::Measure& m) {
  switch (m.kind) {
    case larder::MeasureKind::kGrams:
      return "g";
    case larder::MeasureKind::kMillilitres:
      return "ml";
    case larder::MeasureKind::kPieces:
      break;
  }
  return m.piece.empty() ? "each" : m.piece;
}

Node uses(const OrderView& v, const std::vector<larder::LessonUse>& all) {
  Node out = Node::list();
  for (const larder::LessonUse& use : all) {
    const larder::WeekLesson& lesson = v.in.week.lessons[static_cast<std::size_t>(use.lesson)];
    Node one = Node::object();
    one.set("lesson", Node::of(lesson.title));
    one.set("date", date(lesson.date));
    one.set("amount", Node::of(use.amount.value()));
    out.add(std::move(one));
  }
  return out;
}

Node lines(const OrderView& v) {
  Node out = Node::list();
  for (const larder::OrderLine& line : v.order.lines) {
    const larder::Pack& pack = pack_of(v, line);
    Node one = Node::object();
    one.set("supplier", Node::of(pack.supplier));
    one.set("order_by", date(line.order_by));
    one.set("arrives", date(line.arrives));
    one.set("food", Node::of(pack.food));
    one.set("name", Node::of(food_name(v, line.food)));
    one.set("pack", Node::of(pack_words(pack)));
    one.set("count", Node::of(line.count));
    one.set("pence", pence(line.pence));
    one.set("unit", Node::of(unit_of(measure_of(v, line.food))));
    one.set("holds", Node::of(line.holds.value()));
    one.set("uses", uses(v, line.uses));
    one.set("left", Node::of(line.left.value()));
    one.set("good_until", date(line.good_until));
    one.set("keeping_assumed", Node::of(line.keeping_assumed));
    out.add(std::move(one));
  }
  return out;
}

Node stores(const OrderView& v) {
  Node out = Node::list();
  for (const larder::StockUse& use : v.order.from_stock) {
    Node one = Node::object();
    one.set("name", Node::of(food_name(v, use.food)));
    one.set("unit", Node::of(unit_of(measure_of(v, use.food))));
    one.set("uses", uses(v, use.uses));
    out.add(std::move(one));
  }
  return out;
}

Node shortfalls(const OrderView& v) {
  Node out = Node::list();
  for (const larder::Shortfall& s : v.order.shortfalls) {
    Node one = Node::object();
    one.set("name", Node::of(food_name(v, s.food)));
    one.set("lesson", Node::of(v.in.week.lessons[static_cast<std::size_t>(s.lesson)].title));
    one.set("amount", Node::of(s.amount.value()));
    one.set("unit", Node::of(unit_of(measure_of(v, s.food))));
    one.set("why", Node::of(s.why));
    out.add(std::move(one));
  }
  return out;
}

Node classes(const OrderView& v) {
  Node out = Node::list();
  for (const larder::ClassCost& c : v.costs.classes) {
    Node one = Node::object();
    one.set("class", Node::of(c.name));
    one.set("pupils", Node::of(c.pupils));
    one.set("pence", pence(c.total));
    one.set("pence_per_pupil", Node::of(c.per_pupil.value()));
    out.add(std::move(one));
  }
  return out;
}

Node unsettled(const OrderView& v) {
  Node out = Node::list();
  for (const base::Problem& p : v.count_down.unsettled) {
    Node one = Node::object();
    one.set("code", Node::of(p.code));
    one.set("message", Node::of(p.message));
    one.set("remedy", Node::of(p.remedy));
    out.add(std::move(one));
  }
  return out;
}

}  // namespace

std::string order_json(const OrderView& v) {
  Node out = Node::object();
  out.set("kind", Node::of("order"));
  out.set("version", Node::of(1));
  out.set("title", Node::of(v.in.week.title));
  out.set("lines", lines(v));
  out.set("from_stores", stores(v));
  out.set("shortfalls", shortfalls(v));
  out.set("goods_pence", pence(v.order.goods));
  out.set("delivery_pence", pence(v.order.delivery));
  out.set("below_minimum_pence", pence(v.order.below_minimum));
  out.set("total_pence", pence(v.order.total()));
  out.set("lesson_by_lesson_pence", pence(v.order.naive.total()));
  out.set("left_over_pence", pence(v.costs.left_over));
  out.set("cost_pence", Node::of(v.order.cost));
  out.set("bound_pence", Node::of(v.order.bound));
  out.set("classes", classes(v));
  out.set("unsettled", unsettled(v));
  return kitchen::json_text(out);
}

}  // namespace print
