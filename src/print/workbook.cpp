#include "print/workbook.h"

#include <unistd.h>
#include <xlsxwriter.h>

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>

#include "base/text.h"

namespace print {
namespace {

std::string sheet_name(const std::string& name) {
  std::string out = base::first_letters(name, 31);
  for (char& c : out) {
    if (std::string_view("[]:*?/\\'").find(c) != std::string_view::npos) c = ' ';
  }
  return out.empty() ? "Sheet" : out;
}

void write(lxw_workbook* book, const Sheet& sheet) {
  lxw_worksheet* page = workbook_add_worksheet(book, sheet_name(sheet.name).c_str());
  if (page == nullptr) return;
  lxw_format* bold = workbook_add_format(book);
  format_set_bold(bold);
  std::vector<std::size_t> widths;
  for (std::size_t r = 0; r < sheet.rows.size(); ++r) {
    const auto& row = sheet.rows[r];
    widths.resize(std::max(widths.size(), row.size()), 8);
    for (std::size_t c = 0; c < row.size(); ++c) {
      const bool figure = r > 0 && std::find(sheet.figures.begin(), sheet.figures.end(), c) !=
                                       sheet.figures.end();
      const auto number = figure ? base::number_in(row[c]) : std::nullopt;
      const auto at_row = static_cast<lxw_row_t>(r);
      const auto at_column = static_cast<lxw_col_t>(c);
      if (number)
        worksheet_write_number(page, at_row, at_column, *number, nullptr);
      else
        worksheet_write_string(page, at_row, at_column, row[c].c_str(), r == 0 ? bold : nullptr);
      widths[c] = std::max(widths[c], std::min<std::size_t>(base::letters(row[c]) + 2, 60));
    }
  }
  for (std::size_t c = 0; c < widths.size(); ++c) {
    const auto column = static_cast<lxw_col_t>(c);
    worksheet_set_column(page, column, column, static_cast<double>(widths[c]), nullptr);
  }
  worksheet_freeze_panes(page, 1, 0);
}

}  // namespace

base::Result<bool> write_workbook(const std::string& path, const std::vector<Sheet>& sheets) {
  const std::string part = path + ".part";
  // Tried first, because the library says what went wrong on the error stream by itself.
  std::FILE* tried = std::fopen(part.c_str(), "wb");
  if (tried != nullptr) std::fclose(tried);
  lxw_workbook* book = tried == nullptr ? nullptr : workbook_new(part.c_str());
  if (book != nullptr) {
    for (const Sheet& sheet : sheets) write(book, sheet);
    if (workbook_close(book) == LXW_NO_ERROR && std::rename(part.c_str(), path.c_str()) == 0)
      return true;
    std::remove(part.c_str());
  }
  return base::Problem{"file.unwritable", path, "", "This spreadsheet cannot be written.",
                       "Give another name or folder, or free some space."};
}

base::Result<std::string> workbook(const std::vector<Sheet>& sheets) {
  std::string path = (std::filesystem::temp_directory_path() / "benchbell-XXXXXX").string();
  const int opened = ::mkstemp(path.data());
  if (opened >= 0) ::close(opened);
  const auto written = write_workbook(path, sheets);
  std::string bytes;
  if (written) {
    std::ifstream file(path, std::ios::binary);
    bytes.assign(std::istreambuf_iterator<char>(file), {});
  }
  std::remove(path.c_str());
  if (!written) return written.problems();
  return bytes;
}

}  // namespace print
