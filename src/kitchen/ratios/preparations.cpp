// The table of ratios from CSV: columns by name, every word checked, all faults at once.
#include "kitchen/ratios/preparations.h"

#include <set>

#include "base/csv.h"
#include "base/text.h"
#include "kitchen/words.h"

namespace kitchen {

using base::in_quotes;
using base::say;

namespace {

constexpr Word<CountedIn> kCountedInWords[] = {
    {"g", CountedIn::kGram},    {"kg", CountedIn::kKilogram}, {"ml", CountedIn::kMillilitre},
    {"l", CountedIn::kLitre},   {"egg", CountedIn::kEgg},     {"white", CountedIn::kWhite},
    {"yolk", CountedIn::kYolk}, {"leaf", CountedIn::kLeaf}};

constexpr std::string_view kColumns[] = {
    "id",           "preparation", "quantity",       "kind",      "numerator",
    "numerator_in", "denominator", "denominator_in", "per",       "when",
    "value",        "unit",        "band_low",       "band_high", "below_band",
    "above_band",   "source",      "confidence",     "note"};

class RatioReader {
 public:
  RatioReader(const base::Table& table, std::string file) : table_(table), file_(std::move(file)) {}

  base::Result<Preparations> read() {
    for (const std::string_view name : kColumns) {
      if (!table_.column(name)) {
        wrong("ratios.column", 1, say("The column ", in_quotes(name), " is missing."),
              "Add the column; docs/methods/ratios.md names them all.");
      }
    }
    if (!problems_.empty()) return problems_;
    for (const base::Table::Row& row : table_.rows) read_row(row);
    if (!problems_.empty()) return problems_;
    return std::move(out_);
  }

 private:
  const base::Table& table_;
  std::string file_;
  base::Problems problems_;
  Preparations out_;
  std::set<std::string> seen_;

  void wrong(std::string code, int line, std::string message, std::string remedy) {
    problems_.push_back(
        {std::move(code), file_, say("line ", line), std::move(message), std::move(remedy)});
  }

  const std::string& cell(const base::Table::Row& row, std::string_view name) const {
    return row.cells[*table_.column(name)];
  }

  Ratio number(const base::Table::Row& row, std::string_view name) {
    const auto value = Ratio::in(cell(row, name));
    if (value && *value >= Ratio(0)) return *value;
    wrong("ratios.value", row.line,
          say("Row ", cell(row, "id"), " has ", in_quotes(cell(row, name)), " as its ", name, "."),
          "Write a number of 0 or more with a point.");
    return 0;
  }

  Side side(const base::Table::Row& row, std::string_view words_column,
            std::string_view in_column) {
    Side side;
    side.words = cell(row, words_column);
    std::string part;
    for (const char c : side.words + "+") {
      if (c != '+') {
        part += c;
        continue;
      }
      if (const auto shares = shares_of(part)) {
        side.shares.insert(side.shares.end(), shares->begin(), shares->end());
      } else {
        wrong("ratios.word", row.line,
              say("Row ", cell(row, "id"), " counts ", in_quotes(part), ", which is no role."),
              "Use roles such as flour, fat, sugar, egg, milk, joined by +.");
      }
      part.clear();
    }
    const auto in = value_of(kCountedInWords, cell(row, in_column));
    if (!in) {
      wrong("ratios.word", row.line,
            say("Row ", cell(row, "id"), " counts in ", in_quotes(cell(row, in_column)), "."),
            say("Use one of ", base::joined(spellings(kCountedInWords), "or"), "."));
    }
    side.in = in.value_or(CountedIn::kGram);
    return side;
  }

  template <class Row>
  void read_band(const base::Table::Row& row, Row& out) {
    out.id = cell(row, "id");
    out.preparation = cell(row, "preparation");
    out.quantity = cell(row, "quantity");
    out.value = number(row, "value");
    out.least = number(row, "band_low");
    out.most = number(row, "band_high");
    out.unit = cell(row, "unit");
    out.below = cell(row, "below_band");
    out.above = cell(row, "above_band");
    out.source = cell(row, "source");
    out.confidence = cell(row, "confidence");
    out.note = cell(row, "note");
    if (out.least > out.value || out.value > out.most) {
      wrong("ratios.value", row.line,
            say("Row ", out.id, " has its usual value outside its own band."),
            "Put the value between band_low and band_high.");
    }
    if (!seen_.insert(out.id).second) {
      wrong("ratios.twice", row.line, say("Row ", out.id, " stands there twice."),
            "Give every row an id of its own.");
    }
  }

  void read_row(const base::Table::Row& row) {
    const std::string& kind = cell(row, "kind");
    if (kind == "note") {
      PreparationNote note;
      read_band(row, note);
      out_.notes.push_back(std::move(note));
      return;
    }
    if (kind != "ratio") {
      wrong("ratios.word", row.line,
            say("Row ", cell(row, "id"), " is of the kind ", in_quotes(kind), "."),
            "Write ratio or note.");
      return;
    }
    RatioRow ratio;
    read_band(row, ratio);
    ratio.numerator = side(row, "numerator", "numerator_in");
    ratio.denominator = side(row, "denominator", "denominator_in");
    ratio.per = number(row, "per");
    ratio.when = cell(row, "when");
    out_.ratios.push_back(std::move(ratio));
  }
};

template <class Row>
std::vector<const Row*> rows_of(const std::vector<Row>& rows, std::string_view preparation) {
  std::vector<const Row*> out;
  for (const Row& row : rows) {
    if (row.preparation == preparation) out.push_back(&row);
  }
  return out;
}

}  // namespace

std::string_view counted_in_word(CountedIn in) { return word_for(kCountedInWords, in); }

std::vector<const RatioRow*> Preparations::ratios_of(std::string_view preparation) const {
  return rows_of(ratios, preparation);
}

std::vector<const PreparationNote*> Preparations::notes_of(std::string_view preparation) const {
  return rows_of(notes, preparation);
}

base::Result<Preparations> read_preparations(std::string_view csv, std::string file_name) {
  const auto table = base::read_csv(csv, file_name);
  if (!table) return table.problems();
  return RatioReader(table.value(), std::move(file_name)).read();
}

}  // namespace kitchen
