// Rows of a table with named columns, for the readers of this folder: a cell by its column, and
// every fault with its line.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/csv.h"
#include "base/text.h"
#include "kitchen/foods.h"
#include "kitchen/words.h"

namespace safety {

/// Goes through a table row by row; faults are collected and told together.
class Rows {
 public:
  /// `kind` begins the codes of problems: "labels" gives labels.column, labels.value.
  Rows(base::Result<base::Table> table, std::string file, std::string kind);

  /// Notes each column that must be there and is not. False when the table cannot be used at all.
  bool has_columns(const std::vector<std::string>& needed);
  bool next();

  /// The cell, or empty when there is no such column.
  const std::string& cell(std::string_view column) const;
  std::string needed(std::string_view column);  ///< must not be blank
  std::vector<std::string> list(std::string_view column, char separator = ' ') const;
  kitchen::Allergens allergens(std::string_view column);
  bool yes(std::string_view column, bool otherwise);
  /// Keys of foods, each of which must be in the table of foods.
  std::vector<std::string> foods(std::string_view column, const kitchen::Foods&);
  void check_food(std::string_view column, const std::string& key, const kitchen::Foods&);

  template <class T, std::size_t N>
  T word(std::string_view column, const kitchen::Word<T> (&words)[N]) {
    const std::string text = base::lower(cell(column));
    if (const auto value = kitchen::value_of(words, text)) return *value;
    unknown_word(column, kitchen::spellings(words));
    return words[0].value;
  }

  void wrong(const std::string& code, std::string_view column, std::string message,
             std::string remedy);
  void unknown_word(std::string_view column, const std::vector<std::string>& known);
  /// The problems so far; empty = all well.
  const base::Problems& problems() const { return problems_; }

 private:
  base::Table table_;
  std::string file_, kind_;
  std::size_t row_ = 0;
  base::Problems problems_;
};

}  // namespace safety
