// The working ratios of base preparations, as data/ratios.csv keeps them: "scones: fat 16 to 30 %
// of the flour's weight; less: dry, bready; more: spreads, crumbly".
//
// All of it is common practice with a band, not law, and every row says so. Reading checks each
// word, so that code after the reader can count with it.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/problem.h"
#include "kitchen/ratios/roles.h"

namespace kitchen {

/// What an amount is counted in on one side of a ratio. Eggs without shell: 50 g whole (medium,
/// row DC120), white 33 g (USDA SR26 WEIGHT 01124 seq 1), yolk 17 g (01125 seq 1).
enum class CountedIn : std::int8_t {
  kGram,
  kKilogram,
  kMillilitre,
  kLitre,
  kEgg,
  kWhite,
  kYolk,
  kLeaf,  ///< of gelatine, counted, never weighed
};
std::string_view counted_in_word(CountedIn);

/// One side of a ratio: which roles count, and in what.
struct Side {
  std::string words;  ///< as the table has it: "milk+egg"
  std::vector<Share> shares;
  CountedIn in = CountedIn::kGram;
  friend bool operator==(const Side&, const Side&) = default;
};

/// value = per * numerator / denominator, wanted between least and most.
struct RatioRow {
  std::string id;           ///< "DR037"
  std::string preparation;  ///< key: "scones"
  std::string quantity;     ///< "fat, % of flour weight"
  Side numerator, denominator;
  Ratio per = 1;     ///< 100 for per cent, 300 for "per 300 ml"
  std::string when;  ///< it holds only then: "counted in leaves"; empty = always
  Ratio value, least, most;
  std::string unit;
  std::string below, above;  ///< what goes wrong outside
  std::string source, confidence, note;
  friend bool operator==(const RatioRow&, const RatioRow&) = default;
};

/// A figure of a preparation that is no ratio of amounts: a temperature, a time, a thickness.
struct PreparationNote {
  std::string id, preparation, quantity;
  Ratio value, least, most;
  std::string unit;
  std::string below, above;
  std::string source, confidence, note;
  friend bool operator==(const PreparationNote&, const PreparationNote&) = default;
};

struct Preparations {
  std::vector<RatioRow> ratios;
  std::vector<PreparationNote> notes;

  std::vector<const RatioRow*> ratios_of(std::string_view preparation) const;
  std::vector<const PreparationNote*> notes_of(std::string_view preparation) const;
  friend bool operator==(const Preparations&, const Preparations&) = default;
};

/// Errors: table.*, ratios.column, ratios.word (an unknown role, measure or kind), ratios.value
/// (not a number, a band upside down, a value outside its band), ratios.twice.
base::Result<Preparations> read_preparations(std::string_view csv, std::string file_name);

}  // namespace kitchen
