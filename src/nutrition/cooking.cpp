#include "nutrition/cooking.h"

#include <algorithm>

#include "base/csv.h"
#include "base/text.h"
#include "kitchen/words.h"

namespace nutrition {

using base::in_quotes;
using base::say;
using kitchen::Word;

namespace {

constexpr Word<Cooking> kCookingWords[] = {
    {"raw", Cooking::kRaw},           {"boiled", Cooking::kBoiled},
    {"simmered", Cooking::kSimmered}, {"baked", Cooking::kBaked},
    {"fried", Cooking::kFried},       {"deep fried", Cooking::kDeepFried},
    {"grilled", Cooking::kGrilled}};
constexpr Word<YieldKind> kKindWords[] = {{"loss", YieldKind::kLoss},
                                          {"uptake", YieldKind::kUptake},
                                          {"trim", YieldKind::kTrim},
                                          {"note", YieldKind::kNote}};

std::vector<std::string> parts(const std::string& text) {
  std::vector<std::string> out;
  std::size_t from = 0;
  while (from < text.size()) {
    const std::size_t to = std::min(text.find(';', from), text.size());
    if (to > from) out.push_back(text.substr(from, to - from));
    from = to + 1;
  }
  return out;
}

// One of the two tables, cell by cell, with every fault noted.
class Rows {
 public:
  Rows(std::string_view text, std::string file, std::vector<std::string_view> columns,
       base::Problems& problems)
      : file_(std::move(file)), problems_(problems) {
    auto read = base::read_csv(text, file_);
    if (!read) {
      base::gather(read, problems_);
      return;
    }
    table_ = std::move(read).value();
    for (const std::string_view column : columns) {
      if (!table_.column(column)) {
        problems_.push_back({"cooking.column", file_, "line 1",
                             say("The table has no column ", in_quotes(column), "."),
                             "Add the column."});
        table_.rows.clear();
      }
    }
  }

  const std::vector<base::Table::Row>& rows() const { return table_.rows; }
  const std::string& cell(const base::Table::Row& row, std::string_view column) const {
    return row.cells[*table_.column(column)];
  }
  double share(const base::Table::Row& row, std::string_view column) {
    const auto value = base::number_in(cell(row, column));
    if (value && *value > 0 && *value <= 20) return *value;
    wrong(row, column, "a share above 0 and at most 20");
    return 1;
  }
  template <class T, std::size_t N>
  T word(const base::Table::Row& row, std::string_view column, const std::string& text,
         const Word<T> (&words)[N]) {
    if (const auto value = kitchen::value_of(words, text)) return *value;
    wrong(row, column, base::joined(kitchen::spellings(words), "or"));
    return T{};
  }
  void wrong(const base::Table::Row& row, std::string_view column, std::string_view wanted) {
    problems_.push_back(
        {"cooking.value", file_, say("line ", row.line, ", ", column),
         say("The table says ", in_quotes(cell(row, column)), "; it must be ", wanted, "."),
         "Correct the cell."});
  }

 private:
  std::string file_;
  base::Problems& problems_;
  base::Table table_;
};

std::vector<Yield> yields_in(std::string_view csv, base::Problems& problems) {
  Rows rows(
      csv, "yields.csv",
      {"id", "what", "foods", "cooking", "kind", "yield", "least", "most", "source", "confidence"},
      problems);
  std::vector<Yield> out;
  for (const auto& row : rows.rows()) {
    Yield yield;
    yield.id = rows.cell(row, "id");
    yield.what = rows.cell(row, "what");
    yield.foods = parts(rows.cell(row, "foods"));
    for (const std::string& word : parts(rows.cell(row, "cooking"))) {
      if (word != "any") yield.cooking.push_back(rows.word(row, "cooking", word, kCookingWords));
    }
    yield.kind = rows.word(row, "kind", rows.cell(row, "kind"), kKindWords);
    yield.share = rows.share(row, "yield");
    yield.least = rows.share(row, "least");
    yield.most = rows.share(row, "most");
    yield.source = rows.cell(row, "source");
    yield.confidence = rows.cell(row, "confidence");
    out.push_back(std::move(yield));
  }
  return out;
}

}  // namespace

std::string_view word_for(Cooking cooking) { return kitchen::word_for(kCookingWords, cooking); }

const Yield* CookingTables::yield(std::string_view food, Cooking cooking, YieldKind kind) const {
  for (const Yield& each : yields_) {
    if (each.kind != kind) continue;
    if (std::find(each.foods.begin(), each.foods.end(), food) == each.foods.end()) continue;
    const bool so = each.cooking.empty() || std::find(each.cooking.begin(), each.cooking.end(),
                                                      cooking) != each.cooking.end();
    if (so) return &each;
  }
  return nullptr;
}

double CookingTables::kept(Cooking cooking, kitchen::Nutrient nutrient) const {
  return kept_[static_cast<std::size_t>(cooking)][static_cast<std::size_t>(nutrient)].value_or(1);
}

base::Result<CookingTables> read_cooking(std::string_view yields_csv,
                                         std::string_view retention_csv) {
  base::Problems problems;
  CookingTables tables(yields_in(yields_csv, problems));
  Rows rows(retention_csv, "retention.csv", {"cooking", "nutrient", "kept", "source", "confidence"},
            problems);
  for (const auto& row : rows.rows()) {
    const Cooking cooking = rows.word(row, "cooking", rows.cell(row, "cooking"), kCookingWords);
    const auto& names = kitchen::kNutrientNames;
    const auto name = std::find_if(names.begin(), names.end(), [&](const auto& n) {
      return n.column == rows.cell(row, "nutrient");
    });
    const double kept = rows.share(row, "kept");
    if (name == names.end()) {
      rows.wrong(row, "nutrient", "a nutrient's column of the table of foods");
    } else if (kept > 1) {
      rows.wrong(row, "kept", "a share of at most 1");
    } else {
      tables.kept_[static_cast<std::size_t>(cooking)]
                  [static_cast<std::size_t>(name->nutrient)] = kept;
      tables.retention_source_ = say(rows.cell(row, "source"), "; ", rows.cell(row, "confidence"));
    }
  }
  if (!problems.empty()) return problems;
  return tables;
}

}  // namespace nutrition
