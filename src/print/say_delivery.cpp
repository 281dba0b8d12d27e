#include "print/say_delivery.h"

#include "base/csv.h"
#include "base/text.h"
#include "kitchen/json_tree.h"
#include "kitchen/weigh.h"
#include "kitchen/words.h"

namespace print {

using base::say;
using kitchen::Node;
using larder::amount_text;
using larder::day_text;
using larder::OrderLine;

namespace {

constexpr std::size_t kAllFourteen = 14;

const larder::Pack& pack_of(const larder::OrderInput& in, const OrderLine& line) {
  return in.prices.packs[static_cast<std::size_t>(line.pack)];
}
std::string name_of(const larder::OrderInput& in, const std::string& key) {
  const kitchen::Food* food = in.foods.find(key);
  return food == nullptr ? key : food->name;
}
std::string name_of(const larder::OrderInput& in, const OrderLine& line) {
  return name_of(in, pack_of(in, line).food);
}
const larder::WeekLesson& lesson(const DeliveryView& v, int i) {
  return v.in.week.lessons[static_cast<std::size_t>(i)];
}
std::string lesson_text(const DeliveryView& v, int i) {
  return say(lesson(v, i).title, " (", day_text(lesson(v, i).date), ")");
}
const larder::Measure& measure(const DeliveryView& v, int food) {
  return v.in.needs.foods[static_cast<std::size_t>(food)].measure;
}
const OrderLine& line_of(const DeliveryView& v, int i) {
  return v.sent.lines[static_cast<std::size_t>(i)];
}
std::string allergens(const kitchen::Allergens& all) {
  std::vector<std::string> words;
  for (const kitchen::Allergen a : all) words.emplace_back(kitchen::word(a));
  return base::joined(words);
}
std::string worries(const larder::Recheck& r) {
  if (!r.label_read) return "nobody has read its label, so it counts as all fourteen allergens";
  return r.more.empty() ? "its label names nothing the dish did not have"
                        : say("its label adds ", allergens(r.more));
}

// One thing to do, in the order a person does them.
struct ToDo {
  std::string what, food, amount, for_lesson, words;
};

class Listing {
 public:
  explicit Listing(const DeliveryView& view) : v_(view) {}

  std::vector<ToDo> run() {
    for (const larder::StockLot& lot : v_.outcome.lots)
      out_.push_back({"put away", name_of(v_.in, lot.food), kitchen::quantity_text(lot.amount), "",
                      lot.use_by ? "use by " + day_text(*lot.use_by) : "no date"});
    for (const base::Problem& fault : v_.outcome.faults)
      out_.push_back({"send back", "", "", "", fault.message + " " + fault.remedy});
    for (const larder::Recheck& r : v_.outcome.rechecks) {
      std::string words = say(r.dish, ": ", r.food, " came as \"", r.product, "\"; ", worries(r),
                              ".");
      if (!r.cooks.empty()) words += say(" Must not have it: ", base::joined(r.cooks), ".");
      out_.push_back({"check again", r.food, "", lesson_text(v_, r.lesson), words});
    }
    for (const larder::Missing& m : v_.outcome.missing) missing(m);
    for (const int i : v_.outcome.not_ticked)
      out_.push_back(
          {"not unpacked", name_of(v_.in, line_of(v_, i)),
           say(line_of(v_, i).count, " x ", larder::pack_text(pack_of(v_.in, line_of(v_, i)))), "",
           say("line ", i + 1, ", comes ", day_text(line_of(v_, i).arrives))});
    top_up();
    return std::move(out_);
  }

 private:
  const DeliveryView& v_;
  std::vector<ToDo> out_;

  void missing(const larder::Missing& m) {
    const OrderLine& line = line_of(v_, m.line);
    const std::string packs = say(m.packs, " x ", larder::pack_text(pack_of(v_.in, line)));
    if (m.hits.empty())
      out_.push_back({"did not come", name_of(v_.in, line), packs, "", "nobody goes short"});
    for (const larder::LessonUse& hit : m.hits)
      out_.push_back({"did not come", name_of(v_.in, line), packs, lesson_text(v_, hit.lesson),
                      say("lacks ", amount_text(hit.amount, measure(v_, line.food)))});
  }

  void top_up() {
    for (const OrderLine& line : v_.top_up.lines) {
      std::vector<std::string> lessons;
      for (const larder::LessonUse& use : line.uses) lessons.push_back(lesson_text(v_, use.lesson));
      const std::string& who = v_.top_up.suppliers[static_cast<std::size_t>(line.supplier)].name;
      out_.push_back({"top up", name_of(v_.in, line),
                      say(line.count, " x ", larder::pack_text(pack_of(v_.in, line))),
                      base::joined(lessons),
                      say(who.empty() ? "the shop" : who, ", order by ", day_text(line.order_by),
                          ", ", larder::pounds_text(line.pence))});
    }
    for (const larder::Shortfall& s : v_.top_up.shortfalls)
      out_.push_back({"short", v_.in.needs.foods[static_cast<std::size_t>(s.food)].name,
                      amount_text(s.amount, measure(v_, s.food)), lesson_text(v_, s.lesson),
                      s.why});
  }
};

struct Heading {
  std::string_view what, says;
};
constexpr Heading kHeadings[] = {
    {"put away", "Put away"},
    {"send back", "Send back"},
    {"check again", "Check the label before anybody cooks it"},
    {"did not come", "Did not come"},
    {"not unpacked", "Not ticked off yet"},
    {"top up", "To top up"},
    {"short", "Still short (the lessons can go on; find another way for these)"}};

}  // namespace

std::string say_tick_list(const larder::OrderInput& in, const larder::Order& sent) {
  std::string out = say("Delivery: ", in.week.title,
                        "\nTick off what came; write the use-by date, and what came instead with "
                        "the allergens of its label.\n");
  for (std::size_t i = 0; i < sent.lines.size(); ++i) {
    const OrderLine& line = sent.lines[i];
    const larder::Pack& pack = pack_of(in, line);
    out += say("  [ ] ", i + 1, ". ", name_of(in, line), ": ", line.count, " x ",
               larder::pack_text(pack), ", ", pack.supplier, ", ", day_text(line.arrives), "\n");
  }
  if (sent.lines.empty()) out += "Nothing was ordered.\n";
  return out;
}

std::string tick_list_csv(const larder::OrderInput& in, const larder::Order& sent) {
  std::string out = base::csv_line(
      {"line", "food", "pack", "supplier", "ordered", "came", "use_by", "instead", "contains"});
  for (std::size_t i = 0; i < sent.lines.size(); ++i) {
    const OrderLine& line = sent.lines[i];
    out += base::csv_line({std::to_string(i + 1), name_of(in, line),
                           larder::pack_text(pack_of(in, line)), pack_of(in, line).supplier,
                           std::to_string(line.count), "", "", "", ""});
  }
  return out;
}

std::string say_delivery(const DeliveryView& v) {
  const std::vector<ToDo> all = Listing(v).run();
  std::string out = say("Delivery of ", day_text(v.day), ": ", v.in.week.title, "\n");
  for (const Heading& heading : kHeadings) {
    bool first = true;
    for (const ToDo& one : all) {
      if (one.what != heading.what) continue;
      if (first) out += say("\n", heading.says, "\n");
      first = false;
      std::string line;
      const bool label = one.what == "check again";
      for (const std::string& part : {label ? one.for_lesson : one.food, one.amount,
                                      label ? "" : one.for_lesson, one.words}) {
        if (!part.empty()) line += (line.empty() ? "" : ", ") + part;
      }
      out += say("  [ ] ", line, "\n");
    }
  }
  if (v.top_up.total() > 0)
    out += say("  To pay for the top-up: ", larder::pounds_text(v.top_up.total()), "\n");
  out +=
      "\nA swapped packet is another food until its label has been read. The label and the "
      "school's "
      "own records decide.\n";
  return out;
}

std::string delivery_csv(const DeliveryView& v) {
  std::string out = base::csv_line({"to do", "food", "amount", "lesson", "note"});
  for (const ToDo& one : Listing(v).run())
    out += base::csv_line({one.what, one.food, one.amount, one.for_lesson, one.words});
  return out;
}

std::string delivery_json(const DeliveryView& v) {
  Node out = Node::object();
  out.set("kind", Node::of("delivery"));
  out.set("version", Node::of(1));
  out.set("title", Node::of(v.in.week.title));
  out.set("day", Node::of(base::date_text(v.day)));
  Node& lots = out.set("put_away", Node::list());
  for (const larder::StockLot& lot : v.outcome.lots) {
    Node& one = lots.add(Node::object());
    one.set("food", Node::of(lot.food));
    one.set("amount", Node::of(kitchen::quantity_text(lot.amount)));
    one.set("use_by", lot.use_by ? Node::of(base::date_text(*lot.use_by)) : Node());
  }
  Node& back = out.set("send_back", Node::list());
  for (const base::Problem& fault : v.outcome.faults) back.add(Node::of(fault.message));
  Node& again = out.set("check_again", Node::list());
  for (const larder::Recheck& r : v.outcome.rechecks) {
    Node& one = again.add(Node::object());
    one.set("lesson", Node::of(lesson(v, r.lesson).title));
    one.set("date", Node::of(base::date_text(lesson(v, r.lesson).date)));
    one.set("dish", Node::of(r.dish));
    one.set("food", Node::of(r.food));
    one.set("product", Node::of(r.product));
    one.set("label_read", Node::of(r.label_read));
    Node& more = one.set("more", Node::list());
    for (const kitchen::Allergen a : r.more) more.add(Node::of(kitchen::word(a)));
    one.set("all_fourteen", Node::of(r.more.size() == kAllFourteen));
    Node& cooks = one.set("cooks", Node::list());
    for (const std::string& cook : r.cooks) cooks.add(Node::of(cook));
  }
  Node& missing = out.set("did_not_come", Node::list());
  for (const larder::Missing& m : v.outcome.missing) {
    Node& one = missing.add(Node::object());
    one.set("line", Node::of(m.line + 1));
    one.set("food", Node::of(pack_of(v.in, line_of(v, m.line)).food));
    one.set("packs", Node::of(m.packs));
    Node& hits = one.set("lessons", Node::list());
    for (const larder::LessonUse& hit : m.hits) hits.add(Node::of(lesson(v, hit.lesson).title));
  }
  Node& open = out.set("not_ticked", Node::list());
  for (const int i : v.outcome.not_ticked) open.add(Node::of(i + 1));
  Node& more = out.set("top_up", Node::list());
  for (const OrderLine& line : v.top_up.lines) {
    Node& one = more.add(Node::object());
    one.set("supplier", Node::of(pack_of(v.in, line).supplier));
    one.set("order_by", Node::of(base::date_text(line.order_by)));
    one.set("food", Node::of(pack_of(v.in, line).food));
    one.set("pack", Node::of(larder::pack_text(pack_of(v.in, line))));
    one.set("count", Node::of(line.count));
    one.set("pence", Node::of(static_cast<double>(line.pence)));
  }
  Node& shorts = out.set("short", Node::list());
  for (const larder::Shortfall& s : v.top_up.shortfalls) {
    Node& one = shorts.add(Node::object());
    one.set("food", Node::of(v.in.needs.foods[static_cast<std::size_t>(s.food)].food));
    one.set("lesson", Node::of(lesson(v, s.lesson).title));
    one.set("why", Node::of(s.why));
  }
  out.set("top_up_pence", Node::of(static_cast<double>(v.top_up.total())));
  return kitchen::json_text(out);
}

}  // namespace print
