#include "larder/sent_order.h"

#include <algorithm>
#include <cmath>

#include "base/csv.h"
#include "base/folding.h"
#include "base/text.h"
#include "kitchen/json_tree.h"
#include "kitchen/words.h"

namespace larder {
namespace {

using base::in_quotes;
using base::say;
using kitchen::Node;

class SentReader {
 public:
  SentReader(std::string file, const OrderInput& in) : file_(std::move(file)), in_(in) {}

  base::Result<Order> read(std::string_view json) {
    const auto tree = kitchen::parse_json(json, file_, problems_);
    if (!tree) return problems_;
    const Node* kind = tree->find("kind");
    if (kind == nullptr || kind->text != "order")
      return base::Problem{"order.kind", file_, "", "This is no order that was written down.",
                           "Name the file that `benchbell order --format json --out` wrote."};
    const Node* lines = tree->find("lines");
    if (lines == nullptr || lines->kind != Node::Kind::kList) {
      missing("", "lines");
      return problems_;
    }
    order_.suppliers = in_.week.suppliers;
    for (std::size_t i = 0; i < lines->items.size(); ++i) line(lines->items[i], say("/lines/", i));
    if (!problems_.empty()) return problems_;
    return std::move(order_);
  }

 private:
  std::string file_;
  const OrderInput& in_;
  Order order_;
  base::Problems problems_;

  void missing(const std::string& where, std::string_view field) {
    problems_.push_back({"order.field", file_, where,
                         say("The order lacks ", in_quotes(field), " or it cannot be read."),
                         "Use the file as `benchbell order` wrote it."});
  }

  std::string text(const Node& line, const std::string& where, std::string_view field) {
    const Node* node = line.find(field);
    if (node != nullptr && node->kind == Node::Kind::kText) return node->text;
    missing(where, field);
    return "";
  }
  double number(const Node& line, const std::string& where, std::string_view field) {
    constexpr double kMost = 1e9;
    const Node* node = line.find(field);
    if (node != nullptr && node->kind == Node::Kind::kNumber && std::fabs(node->number) < kMost)
      return node->number;
    missing(where, field);
    return 0;
  }
  Date date(const Node& line, const std::string& where, std::string_view field) {
    const auto day = base::date_in(text(line, where, field));
    if (day) return *day;
    missing(where, field);
    return Date{0};
  }

  void line(const Node& node, const std::string& where) {
    OrderLine out;
    const std::string food = text(node, where, "food"), supplier = text(node, where, "supplier"),
                      pack = text(node, where, "pack");
    out.order_by = date(node, where, "order_by");
    out.arrives = date(node, where, "arrives");
    out.good_until = date(node, where, "good_until");
    out.count = static_cast<int>(number(node, where, "count"));
    out.pence = std::llround(number(node, where, "pence"));
    out.holds = Ratio::near(number(node, where, "holds"));
    out.left = Ratio::near(number(node, where, "left"));
    out.pack = pack_index(food, supplier, pack);
    out.supplier = supplier_index(supplier);
    out.food = food_index(food);
    if (out.pack < 0)
      problems_.push_back({"order.pack", file_, where,
                           say("The price list has no ", in_quotes(pack), " of ", in_quotes(food),
                               " from ", in_quotes(supplier), "."),
                           "Name the price list the order was made from."});
    if (out.count < 1) missing(where, "count");
    if (out.food >= 0) uses(node, out);
    order_.lines.push_back(std::move(out));
  }

  // Lessons that moved away are left out: nobody is short of what nobody cooks.
  void uses(const Node& node, OrderLine& out) const {
    const Node* all = node.find("uses");
    if (all == nullptr) return;
    for (const Node& use : all->items) {
      const Node *title = use.find("lesson"), *day = use.find("date"), *amount = use.find("amount");
      if (title == nullptr || day == nullptr || amount == nullptr) continue;
      const auto when = base::date_in(day->text);
      for (std::size_t i = 0; i < in_.week.lessons.size(); ++i) {
        const WeekLesson& lesson = in_.week.lessons[i];
        if (lesson.title != title->text || !when || lesson.date != *when) continue;
        out.uses.push_back({static_cast<int>(i), Ratio::near(amount->number)});
      }
    }
  }

  int pack_index(const std::string& food, const std::string& supplier,
                 const std::string& words) const {
    for (std::size_t i = 0; i < in_.prices.packs.size(); ++i) {
      const Pack& pack = in_.prices.packs[i];
      if (pack.food == food && pack.supplier == supplier && pack_text(pack) == words)
        return static_cast<int>(i);
    }
    return -1;
  }
  int food_index(const std::string& key) const {
    const auto& foods = in_.needs.foods;
    const auto found = std::find_if(foods.begin(), foods.end(),
                                    [&](const FoodNeed& f) { return f.food == key; });
    return found == foods.end() ? -1 : static_cast<int>(found - foods.begin());
  }
  int supplier_index(const std::string& name) {
    for (std::size_t i = 0; i < order_.suppliers.size(); ++i) {
      if (order_.suppliers[i].name == name) return static_cast<int>(i);
    }
    order_.suppliers.push_back({name, 0, 0, false, {}});
    return static_cast<int>(order_.suppliers.size()) - 1;
  }
};

class TickReader {
 public:
  TickReader(base::Table table, std::string file, const Order& order)
      : table_(std::move(table)), file_(std::move(file)), order_(order) {}

  base::Result<std::vector<Ticked>> read() {
    for (const std::string_view needed : {"line", "came"}) {
      if (!table_.column(needed))
        return base::Problem{"delivery.column", file_, "line 1",
                             say("The list has no column ", in_quotes(needed), "."),
                             "Name the columns in the first row: line, came, use_by, instead, "
                             "contains."};
    }
    std::vector<Ticked> out;
    for (const auto& row : table_.rows) {
      row_ = &row;
      if (!cell("came").empty()) out.push_back(tick());
    }
    if (!problems_.empty()) return problems_;
    return out;
  }

 private:
  base::Table table_;
  std::string file_;
  const Order& order_;
  const base::Table::Row* row_ = nullptr;
  base::Problems problems_;

  std::string cell(std::string_view column) const {
    const auto at = table_.column(column);
    return at ? row_->cells[*at] : std::string();
  }
  void fault(std::string code, std::string_view column, std::string message, std::string remedy) {
    problems_.push_back({std::move(code), file_, say("line ", row_->line, ", ", column),
                         std::move(message), std::move(remedy)});
  }

  std::optional<int> whole(std::string_view column, double least, double most) const {
    const auto n = base::number_in(cell(column));
    if (!n || *n < least || *n > most || std::floor(*n) != *n) return std::nullopt;
    return static_cast<int>(*n);
  }

  Ticked tick() {
    constexpr double kMostPacks = 100'000;
    Ticked out;
    const auto lines = static_cast<double>(order_.lines.size());
    if (const auto line = whole("line", 1, lines))
      out.line = *line - 1;
    else
      fault("delivery.line", "line", say("The order has no line ", in_quotes(cell("line")), "."),
            say("Its lines are numbered from 1 to ", order_.lines.size(), "."));
    if (const auto came = whole("came", 0, kMostPacks))
      out.came = *came;
    else
      fault("delivery.came", "came", say(in_quotes(cell("came")), " is not a number of packs."),
            "Write how many packs came; 0 for none; leave it empty while the van is not unpacked.");
    if (const std::string date = cell("use_by"); !date.empty()) {
      out.use_by = base::date_in(date);
      if (!out.use_by)
        fault("delivery.use_by", "use_by", say(in_quotes(date), " is not a date."),
              "Write year, month and day: 2026-11-17.");
    }
    out.product = cell("instead");
    out.swapped = !out.product.empty();
    label(out);
    return out;
  }

  void label(Ticked& out) {
    const std::string said = cell("contains");
    if (said.empty()) return;
    out.label_read = true;
    if (base::folded(said) == "none") return;
    for (const std::string& word : base::parts(base::replaced(said, ',', ';'), ';')) {
      const std::string one = base::folded(base::trimmed(word));
      if (one.empty()) continue;
      if (const auto allergen = kitchen::value_of(kitchen::kAllergenWords, one)) {
        out.contains.insert(*allergen);
        continue;
      }
      fault("delivery.contains", "contains",
            say(in_quotes(word), " is none of the fourteen allergens."),
            "Write their words with semicolons between: milk; soya. Write none if the label names "
            "none of the fourteen, and nothing while nobody has read it.");
    }
  }
};

}  // namespace

base::Result<Order> read_sent_order(std::string_view json, const std::string& file_name,
                                    const OrderInput& in) {
  return SentReader(file_name, in).read(json);
}

base::Result<std::vector<Ticked>> read_ticks(std::string_view csv, const std::string& file_name,
                                             const Order& order) {
  auto table = base::read_csv(csv, file_name);
  if (!table) return table.problems();
  return TickReader(std::move(table).value(), file_name, order).read();
}

Order still_coming(const Order& sent, const std::vector<Ticked>& ticks) {
  Order out = sent;
  out.lines.clear();
  for (std::size_t i = 0; i < sent.lines.size(); ++i) {
    const bool ticked = std::any_of(ticks.begin(), ticks.end(),
                                    [&](const Ticked& t) { return t.line == static_cast<int>(i); });
    if (!ticked) out.lines.push_back(sent.lines[i]);
  }
  return out;
}

}  // namespace larder
