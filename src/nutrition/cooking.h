// What cooking does to weight and vitamins: the tables data/yields.csv and data/retention.csv, and
// one ingredient's share of them.
//
// "Chicken breast, boneless, baked: 74 % of its raw weight is left (66 to 82, from memory)."
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/problem.h"
#include "kitchen/nutrients.h"

namespace nutrition {

/// What is done to an ingredient, over all the steps that use it.
enum class Cooking : std::int8_t {
  kRaw,       ///< no heat
  kBoiled,    ///< in water that is thrown away
  kSimmered,  ///< in liquid that is eaten
  kBaked,
  kFried,
  kDeepFried,
  kGrilled,
  kCount
};
/// "raw", "boiled", "simmered", "baked", "fried", "deep fried", "grilled".
std::string_view word_for(Cooking);

enum class YieldKind : std::int8_t {
  kLoss,    ///< water and fat that leave; nutrients are taken to stay, so fat drained off is
            ///< overstated
  kUptake,  ///< water that is taken up
  kTrim,    ///< peeling and trimming, for amounts as bought
  kNote     ///< kept for its source, never applied
};

/// One row of yields.csv.
struct Yield {
  std::string id;                  ///< "DY007"
  std::string what;                ///< "chicken breast, boneless, baked"
  std::vector<std::string> foods;  ///< keys, or "mix:bread", "mix:cake", "mix:biscuit", "mix:jam"
  std::vector<Cooking> cooking;    ///< empty = any
  YieldKind kind = YieldKind::kLoss;
  double share = 1;            ///< weight after / weight before
  double least = 1, most = 1;  ///< the usual band
  std::string source, confidence;
};

class CookingTables {
 public:
  CookingTables() = default;

  const std::vector<Yield>& yields() const { return yields_; }
  /// The row for a food (or a mix) cooked so; nothing when there is none.
  const Yield* yield(std::string_view food, Cooking, YieldKind) const;
  /// Share of a nutrient that is left; 1 where no row says otherwise.
  double kept(Cooking, kitchen::Nutrient) const;
  /// Where the shares left come from; empty without any.
  const std::string& retention_source() const { return retention_source_; }

 private:
  friend base::Result<CookingTables> read_cooking(std::string_view, std::string_view);
  CookingTables(std::vector<Yield> yields) : yields_(std::move(yields)) {}

  std::vector<Yield> yields_;
  std::array<std::array<std::optional<double>, kitchen::kNutrients>,
             static_cast<std::size_t>(Cooking::kCount)>
      kept_{};
  std::string retention_source_;
};

/// The two tables from the text of their files. Errors: table.*, cooking.column, cooking.value.
base::Result<CookingTables> read_cooking(std::string_view yields_csv,
                                         std::string_view retention_csv);

}  // namespace nutrition
