#include "base/csv.h"

#include <algorithm>
#include <utility>

#include "base/folding.h"
#include "base/text.h"

namespace base {
namespace {

// The separator that stands most often in the first line, outside quotes.
char separator_of(std::string_view text) {
  std::size_t commas = 0, semicolons = 0, tabs = 0;
  bool inside = false;
  for (const char c : text) {
    if (c == '"') inside = !inside;
    if (inside) continue;
    if (c == '\n') break;
    commas += c == ',' ? 1 : 0;
    semicolons += c == ';' ? 1 : 0;
    tabs += c == '\t' ? 1 : 0;
  }
  if (tabs > commas && tabs >= semicolons) return '\t';
  return semicolons > commas ? ';' : ',';
}

class CsvReader {
 public:
  CsvReader(std::string text, std::string file) : text_(std::move(text)), file_(std::move(file)) {}

  Result<Table> read() {
    table_.separator = separator_of(text_);
    while (at_ < text_.size()) {
      Table::Row row = next_row();
      const bool blank_row = std::all_of(row.cells.begin(), row.cells.end(),
                                         [](const std::string& c) { return c.empty(); });
      if (!blank_row) take(std::move(row));
      if (problems_.size() > kEnoughProblems) break;
    }
    if (table_.columns.empty() && problems_.empty()) {
      add("table.empty", 1, "The table has no rows.",
          "The first row must name the columns; the rows below hold the entries.");
    }
    if (!problems_.empty()) return problems_;
    return std::move(table_);
  }

 private:
  static constexpr std::size_t kEnoughProblems = 50;

  void add(std::string code, int line, std::string message, std::string remedy) {
    problems_.push_back(
        {std::move(code), file_, say("line ", line), std::move(message), std::move(remedy)});
  }

  Table::Row next_row() {
    Table::Row row;
    row.line = line_;
    for (;;) {
      row.cells.push_back(next_cell(row.line));
      if (at_ >= text_.size()) break;
      const char c = text_[at_++];
      if (c == '\n') {
        ++line_;
        break;
      }
    }
    return row;
  }

  // Up to the separator or the end of the line, which stay.
  std::string next_cell(int row_line) {
    std::string cell;
    while (at_ < text_.size() && text_[at_] == ' ') ++at_;
    if (at_ >= text_.size() || text_[at_] != '"') {
      while (at_ < text_.size() && text_[at_] != table_.separator && text_[at_] != '\n')
        cell += text_[at_++];
      return trimmed(cell);
    }
    ++at_;
    for (;; ++at_) {
      if (at_ >= text_.size()) {
        add("table.quote", row_line,
            say("A quotation mark that opens in line ", row_line, " is never closed."),
            "Close it with another quotation mark, or leave both out.");
        return cell;
      }
      if (text_[at_] == '\n') ++line_;
      if (text_[at_] != '"') {
        cell += text_[at_];
      } else if (at_ + 1 < text_.size() && text_[at_ + 1] == '"') {
        cell += '"';
        ++at_;
      } else {
        ++at_;
        break;
      }
    }
    // What stands between the closing mark and the separator is kept, not dropped.
    while (at_ < text_.size() && text_[at_] != table_.separator && text_[at_] != '\n')
      cell += text_[at_++];
    return trimmed(cell);
  }

  void take(Table::Row row) {
    if (table_.columns.empty()) {
      if (row.cells.size() > kMostColumns) {
        add("table.columns", row.line,
            say("The table has ", row.cells.size(), " columns; ", kMostColumns, " are the most."),
            "Save only the columns that are wanted.");
      }
      table_.columns = std::move(row.cells);
      return;
    }
    while (row.cells.size() > table_.columns.size() && row.cells.back().empty())
      row.cells.pop_back();
    if (row.cells.size() > table_.columns.size()) {
      add("table.row_long", row.line,
          say("Line ", row.line, " has ", row.cells.size(), " cells, but there are only ",
              table_.columns.size(), " columns."),
          "If a price or a name has a comma in it, put it in quotation marks: \"1,20\".");
      return;
    }
    row.cells.resize(table_.columns.size());
    table_.rows.push_back(std::move(row));
  }

  std::string text_, file_;
  std::size_t at_ = 0;
  int line_ = 1;
  Table table_;
  Problems problems_;
};

}  // namespace

std::optional<std::size_t> Table::column(std::string_view name) const {
  const std::string wanted = folded(name);
  for (std::size_t i = 0; i < columns.size(); ++i) {
    if (folded(columns[i]) == wanted) return i;
  }
  return std::nullopt;
}

Result<Table> read_csv(std::string_view bytes, std::string file_name) {
  if (bytes.size() > kLargestTable) {
    return Problem{"table.too_big", file_name, "",
                   say("The file has ", bytes.size() / 1'000'000, " million letters; ",
                       kLargestTable / 1'000'000, " are the most."),
                   "Save only the rows that are wanted."};
  }
  auto text = decoded(bytes);
  if (!text) {
    return Problem{"table.encoding", file_name, "", "The letters of this file cannot be read.",
                   "Save it again as CSV in UTF-8."};
  }
  const Encoding was = text->was;
  auto table = CsvReader(std::move(text->text), std::move(file_name)).read();
  if (!table) return table;
  Table out = std::move(table).value();
  out.encoding = was == Encoding::kUtf8    ? "UTF-8"
                 : was == Encoding::kUtf16 ? "UTF-16"
                                           : "Windows-1252";
  return out;
}

std::string csv_cell(std::string_view text) {
  std::string cell(text);
  if (!cell.empty() && std::string_view("=+-@\t").find(cell.front()) != std::string_view::npos &&
      !number_in(cell))
    cell.insert(cell.begin(), '\'');
  if (cell.find_first_of(",\"\n;") == std::string::npos) return cell;
  std::string quoted_cell = "\"";
  for (const char c : cell) {
    quoted_cell += c;
    if (c == '"') quoted_cell += '"';
  }
  return quoted_cell + '"';
}

std::string csv_line(const std::vector<std::string>& cells) {
  std::string line;
  for (std::size_t i = 0; i < cells.size(); ++i) {
    if (i > 0) line += ',';
    line += csv_cell(cells[i]);
  }
  return line + '\n';
}

}  // namespace base
