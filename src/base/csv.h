// Tables as schools keep them: CSV by RFC 4180, with commas, semicolons or tabs, in UTF-8, UTF-16
// or Windows-1252.
//
// Every fault is noted with its line in words; the rows that can be read are read.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/problem.h"

namespace base {

inline constexpr std::size_t kLargestTable = 16U << 20U;  ///< bytes
inline constexpr std::size_t kMostColumns = 200;

struct Table {
  struct Row {
    int line = 0;                    ///< in the file, from 1
    std::vector<std::string> cells;  ///< as many as there are columns; spaces at the ends are gone
  };
  std::vector<std::string> columns;  ///< names as written, spaces at the ends gone
  std::vector<Row> rows;             ///< rows that are not blank
  std::string encoding;  ///< "UTF-8", "UTF-16" or "Windows-1252": what the file turned out to be
  char separator = ',';

  /// The column whose name is that, whatever its case and accents.
  std::optional<std::size_t> column(std::string_view name) const;
};

/// Errors: table.too_big, table.encoding, table.empty, table.columns, table.quote, table.row_long.
/// A row that is too short is filled with empty cells; one with more cells than columns is refused
/// (a price with a comma must not shift what stands behind it).
Result<Table> read_csv(std::string_view bytes, std::string file_name);

/// One cell, quoted when it must be. A cell that a spreadsheet would take for a formula gets a
/// leading apostrophe.
std::string csv_cell(std::string_view);
std::string csv_line(const std::vector<std::string>& cells);

}  // namespace base
