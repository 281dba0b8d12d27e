// A line of a table, of two columns or of a time plan, cut into its cells: "09:10 | Rub in the
// butter | [ ]" is a time, a step and a box to tick.
//
// Columns are told by tabs, bars or wide gaps. "750 g | potatoes | peeled" stays one cell, a row
// that is one ingredient in whatever order its columns stand; the cells put together are the line.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace kitchen {

enum class CellKind : std::int8_t {
  kText,
  kRow,     ///< an ingredient in several columns
  kTime,    ///< "09:10", "0-15 min"
  kMark,    ///< a box to tick, the number of a step
  kHeader,  ///< the heads of columns: "Time | What to do"
  kAside,   ///< of a column that holds neither food nor steps
};

struct Cell {
  std::string text;
  CellKind kind = CellKind::kText;
  bool right = false;  ///< of the right one of two columns
};

/// Cuts line after line, and remembers where the right column stood and what it held.
class Cells {
 public:
  std::vector<Cell> of(const std::string& line);

 private:
  std::optional<std::size_t> column_;  // in letters
  bool aside_ = false;                 // the right column holds equipment or times

  std::vector<Cell> gapped(const std::string& line);
  std::vector<Cell> judged(std::vector<std::string> pieces, bool firm);
};

/// A row of a table as one would write it in a list: "750 g potatoes, peeled". The line itself when
/// it is none.
std::string in_reading_order(std::string_view line);

/// The length of a time that stands before a step: "9.15  ", "0-15 min: ", "(10 mins) "; 0 = none.
std::size_t slot_before(std::string_view tidied_line);

}  // namespace kitchen
