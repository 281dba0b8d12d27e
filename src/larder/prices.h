// The school's price list: what a pack holds, what it costs, how long it keeps.
//
// food,supplier,pack,size,price,keeps_days,opened_days,usable
// red lentils,Hollin Wholesale,bag,1.5 kg,3.45,365,,
// tinned chickpeas,Hollin Wholesale,tin,400 g,0.49,720,2,240 g
//
// Rows that can be read are usable however many others cannot; those are told one by one.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/problem.h"
#include "kitchen/foods.h"
#include "kitchen/quantity.h"
#include "larder/measure.h"
#include "larder/money.h"

namespace larder {

struct Pack {
  std::string food;  ///< key of the table of foods
  std::string supplier;
  std::string words;                        ///< "bag", "tin", "tray of 30"
  kitchen::Quantity size;                   ///< as bought; above 0
  std::optional<kitchen::Quantity> usable;  ///< what of it is used: a tin drained, a pack in sheets
  std::optional<Pence> price;               ///< nothing: not known, so it is never chosen
  bool loose = false;                       ///< sold singly: the size is one piece or one measure
  std::optional<int> keeps_days;            ///< closed, from delivery; nothing: by how it is stored
  std::optional<int> opened_days;           ///< once opened; nothing: by how it is stored
  int line = 0;                             ///< in the file
  friend bool operator==(const Pack&, const Pack&) = default;
};

struct PriceList {
  std::vector<Pack> packs;
  base::Problems faults;  ///< rows left out, with their line
};

/// Errors (nothing is readable): table.*, prices.column.
/// Faults (a row is left out): table.row_long, prices.food (unknown, the nearest names offered),
/// prices.size, prices.price, prices.days, prices.usable, prices.twice. A row without a price is
/// kept and never chosen.
base::Result<PriceList> read_prices(std::string_view csv, std::string file_name,
                                    const kitchen::Foods&);

/// "500 g", "1.5kg", "12 eggs", "6 x 400 g", "400 g tin", "each"; nothing for what is not an amount
/// above 0.
std::optional<kitchen::Quantity> size_in(std::string_view);

/// "bag, 500 g", "loose, each": how a pack is called.
std::string pack_text(const Pack&);

/// How long a pack keeps closed and opened, in days.
struct Keeping {
  int closed = 0;
  int opened = 0;
  bool assumed = false;  ///< the price list does not say: by how the food is stored
};
/// Where the list is silent: ambient 180 days closed and 90 opened, chilled 5 and 2, frozen 90 and
/// 90, chilled once opened 180 and 3. Common practice, no source; the label always wins.
Keeping keeping_of(const Pack&, const kitchen::Food&);

struct UnitPrice {
  Ratio pence;  ///< for one of the measure, exact
  const Pack* pack = nullptr;
};
/// The pack that is cheapest for what of it is used; the first of equals. Nothing when no price is
/// known.
std::optional<UnitPrice> cheapest_pack(const kitchen::Food&, const Measure&, const PriceList&);

/// One pack as it lies in the stores: its size, or as much of the food as bought as gives what of
/// it is used (a drained tin).
kitchen::Quantity in_stores(const Pack&, const kitchen::Food&);

}  // namespace larder
