#include <algorithm>
#include <set>

#include "base/csv.h"
#include "base/folding.h"
#include "base/text.h"
#include "larder/prices.h"

namespace larder {

using base::in_quotes;
using base::say;
using kitchen::Food;
using kitchen::Foods;

namespace {

// A table with the rows that do not fit its columns taken out and told.
struct Kept {
  base::Table table;
  base::Problems faults;
};

std::string without_lines(std::string_view bytes, const std::set<int>& lines) {
  const auto text = base::decoded(bytes);
  std::string out;
  int line = 1;
  for (const char c : text ? text->text : std::string()) {
    if (c == '\n')
      ++line, out += c;
    else if (!lines.contains(line))
      out += c;
  }
  return out;
}

base::Result<Kept> kept_rows(std::string_view bytes, const std::string& file) {
  auto table = base::read_csv(bytes, file);
  if (table) return Kept{std::move(table).value(), {}};
  base::Problems faults = table.problems();
  std::set<int> lines;
  for (const base::Problem& p : faults) {
    const auto number = base::number_in(
        std::string_view(p.where).substr(std::min<std::size_t>(p.where.size(), 5)));
    if (p.code != "table.row_long" || !number) return faults;
    lines.insert(static_cast<int>(*number));
  }
  auto rest = base::read_csv(without_lines(bytes, lines), file);
  if (!rest) return faults;
  return Kept{std::move(rest).value(), std::move(faults)};
}

class PriceReader {
 public:
  PriceReader(Kept kept, std::string file, const Foods& foods)
      : table_(std::move(kept.table)), file_(std::move(file)), foods_(foods) {
    list_.faults = std::move(kept.faults);
  }

  base::Result<PriceList> read() {
    base::Problems missing;
    for (const std::string_view needed : {"food", "size", "price"}) {
      if (!table_.column(needed)) {
        missing.push_back({"prices.column", file_, "line 1",
                           say("The price list has no column ", in_quotes(needed), "."),
                           "Name the columns in the first row: food, supplier, pack, size, price, "
                           "usable, loose, keeps_days, opened_days."});
      }
    }
    if (!missing.empty()) return missing;
    for (const base::Table::Row& row : table_.rows) {
      row_ = &row;
      good_ = true;
      Pack pack = read_row();
      if (good_) keep(std::move(pack));
    }
    return std::move(list_);
  }

 private:
  std::string cell(std::string_view column) const {
    const auto at = table_.column(column);
    return at ? row_->cells[*at] : std::string();
  }

  void fault(std::string code, std::string_view column, std::string message, std::string remedy) {
    good_ = false;
    list_.faults.push_back({std::move(code), file_, say("line ", row_->line, ", ", column),
                            std::move(message), std::move(remedy)});
  }

  const Food* food() {
    const std::string name = cell("food");
    if (const Food* found = foods_.find(name)) return found;
    if (const Food* found = foods_.named(name)) return found;
    std::vector<std::string> near;
    for (const auto& each : foods_.search(name, 3)) near.push_back(in_quotes(each.food->name));
    fault("prices.food", "food",
          name.empty() ? say("Line ", row_->line, " names no food.")
                       : say("No food is called ", in_quotes(name), "."),
          near.empty() ? "Use a name of the table of foods, or add it to the school's own foods."
                       : say("Did you mean ", base::joined(near, "or"), "?"));
    return nullptr;
  }

  std::optional<int> days(std::string_view column) {
    const std::string text = cell(column);
    if (text.empty()) return std::nullopt;
    const auto value = base::number_in(text);
    if (value && *value >= 0 && *value <= 3650 && *value == static_cast<int>(*value))
      return static_cast<int>(*value);
    fault("prices.days", column,
          say(in_quotes(cell("food")), ": ", in_quotes(text), " is not a number of days."),
          "Write whole days from 0 to 3650, or leave the cell empty.");
    return std::nullopt;
  }

  void price(Pack& pack) {
    const std::string text = cell("price");
    if (text.empty()) return;  // not known is told as missing when the food is needed
    pack.price = pence_in(text);
    if (!pack.price || *pack.price > kDearest) {
      fault("prices.price", "price",
            say(in_quotes(cell("food")), ": the price ", in_quotes(text), " cannot be read."),
            "Write pounds and pence: 1.20.");
    } else if (*pack.price == 0) {
      fault(
          "prices.price", "price",
          say(in_quotes(cell("food")), ": a price of ", pounds_text(*pack.price), " is no price."),
          "Leave the cell empty when the price is not known; enter gifts as stock.");
    }
  }

  // A litre of flour and a gram of milk are sizes only if the food's density is known.
  void sizes(Pack& pack, const Food& food) {
    const std::string text = cell("size");
    const auto size = size_in(text);
    if (!size) {
      fault("prices.size", "size",
            text.empty()
                ? say(in_quotes(food.name), ": the pack has no size.")
                : say(in_quotes(food.name), ": ", in_quotes(text), " is not a size above 0."),
            "Write a number and a unit: 500 g, 1.5 kg, 1 l, 12 eggs, 6 x 400 g.");
      return;
    }
    pack.size = *size;
    const std::string used = cell("usable");
    if (used.empty()) return;
    pack.usable = size_in(used);
    if (!pack.usable) {
      fault("prices.usable", "usable",
            say(in_quotes(food.name), ": ", in_quotes(used), " is not an amount above 0."),
            "Write what of one pack is used: 240 g for a drained tin, 12 sheets.");
      return;
    }
    // "1,20" without quotation marks leaves the price as 1 and "20" in this column.
    const bool bare = kitchen::dimension(pack.usable->unit) == kitchen::Dimension::kCount &&
                      pack.usable->piece.empty();
    if (bare && kitchen::dimension(pack.size.unit) != kitchen::Dimension::kCount) {
      fault(
          "prices.usable", "usable",
          say(in_quotes(food.name), ": usable is ", in_quotes(used), ", a number without a unit."),
          "Write its unit: 240 g, 12 sheets. If it is the end of a price with a comma, put the "
          "price in quotation marks: \"1,20\".");
      return;
    }
    const auto same = kitchen::converted(*pack.usable, pack.size.unit);
    if (same && kitchen::dimension(pack.size.unit) != kitchen::Dimension::kCount &&
        same->middle() > pack.size.middle()) {
      fault("prices.usable", "usable",
            say(in_quotes(food.name), ": ", in_quotes(used), " are used of a pack of ",
                in_quotes(text), "."),
            "What is used cannot be more than the pack holds.");
    }
  }

  Pack read_row() {
    Pack pack;
    pack.line = row_->line;
    const Food* found = food();
    if (found != nullptr) {
      pack.food = found->key;
      sizes(pack, *found);
    }
    pack.supplier = cell("supplier");
    pack.words = cell("pack");
    price(pack);
    pack.keeps_days = days("keeps_days");
    pack.opened_days = days("opened_days");
    loose(pack);
    return pack;
  }

  void loose(Pack& pack) {
    const std::string text = base::folded(cell("loose"));
    pack.loose = text == "yes" || text == "y" || text == "true" || text == "1" || text == "loose";
    if (pack.loose || text.empty() || text == "no" || text == "n" || text == "false" || text == "0")
      return;
    fault("prices.loose", "loose",
          say(in_quotes(cell("food")), ": loose is ", in_quotes(text), "."), "Write yes or no.");
  }

  void keep(Pack pack) {
    const auto twin = std::find_if(list_.packs.begin(), list_.packs.end(), [&](const Pack& p) {
      return p.food == pack.food && p.supplier == pack.supplier && p.size == pack.size &&
             p.words == pack.words;
    });
    if (twin != list_.packs.end()) {
      fault("prices.twice", "size",
            say("The same pack of ", in_quotes(cell("food")), " stands in lines ", twin->line,
                " and ", pack.line, "; the first counts."),
            "Take one of the two out, or give them different words in the column pack.");
      return;
    }
    list_.packs.push_back(std::move(pack));
  }

  base::Table table_;
  std::string file_;
  const Foods& foods_;
  PriceList list_;
  const base::Table::Row* row_ = nullptr;
  bool good_ = true;
};

}  // namespace

base::Result<PriceList> read_prices(std::string_view csv, std::string file_name,
                                    const Foods& foods) {
  auto kept = kept_rows(csv, file_name);
  if (!kept) return kept.problems();
  return PriceReader(std::move(kept).value(), std::move(file_name), foods).read();
}

Keeping keeping_of(const Pack& pack, const Food& food) {
  Keeping out;
  switch (food.storage) {
    case kitchen::Storage::kAmbient:
      out = {180, 90, false};
      break;
    case kitchen::Storage::kAmbientThenChilled:
      out = {180, 3, false};
      break;
    case kitchen::Storage::kChilled:
      out = {5, 2, false};
      break;
    case kitchen::Storage::kFrozen:
      out = {90, 90, false};
      break;
  }
  out.assumed = !pack.keeps_days;
  if (pack.keeps_days) out.closed = *pack.keeps_days;
  // A box of eggs or a net of lemons has no "opened"; nor has anything that keeps less long than
  // opened.
  if (pack.opened_days)
    out.opened = *pack.opened_days;
  else if (pack.loose || kitchen::dimension(pack.size.unit) == kitchen::Dimension::kCount)
    out.opened = out.closed;
  if (out.opened > out.closed) out.opened = out.closed;
  return out;
}

kitchen::Quantity in_stores(const Pack& pack, const Food& food) {
  if (!pack.usable) return pack.size;
  if (kitchen::dimension(pack.usable->unit) != kitchen::Dimension::kMass || !food.edible)
    return *pack.usable;
  return kitchen::times(*pack.usable, kitchen::Ratio(1) / kitchen::Ratio::near(*food.edible));
}

std::string pack_text(const Pack& pack) {
  const std::string size = kitchen::quantity_text(pack.size);
  if (pack.words.empty()) return pack.loose ? "loose, " + size : size;
  return pack.words + ", " + size;
}

std::optional<UnitPrice> cheapest_pack(const kitchen::Food& food, const Measure& measure,
                                       const PriceList& prices) {
  std::optional<UnitPrice> best;
  for (const Pack& pack : prices.packs) {
    if (pack.food != food.key || !pack.price) continue;
    const auto holds = pack.usable ? in_measure(*pack.usable, food, measure)
                                   : bought_in_measure(pack.size, food, measure);
    if (!holds || holds.value() <= Ratio(0)) continue;
    const Ratio unit = Ratio(*pack.price) / holds.value();
    if (!best || unit < best->pence) best = UnitPrice{unit, &pack};
  }
  return best;
}

}  // namespace larder
