// An order as it was sent, read back from what `benchbell order --format json` wrote, and a
// delivery as it was ticked off beside it.
//
// The order that is planned today is another than the one the van brings: lessons change. What
// counts at the door is what was sent.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "larder/delivery.h"
#include "larder/order.h"

namespace larder {

/// `in` holds the week as it is now and the price list the order was made from. A line whose food
/// no lesson needs any more is kept: its `food` is -1, it has no uses, and it can be ticked off.
/// Errors: file.*, order.kind, order.field (what is missing or of the wrong kind), order.pack (the
/// price list has no such pack any more).
base::Result<Order> read_sent_order(std::string_view json, const std::string& file_name,
                                    const OrderInput& in);

/// Columns line, came and, where they matter, use_by, instead, contains. `line` is the number of
/// the order's line; a row whose `came` is empty has not been ticked. `instead` is what came in its
/// place; `contains` its label's allergens ("milk; soya"), "none" when the label names none of the
/// fourteen, empty while nobody has read it: then it counts as all fourteen.
/// Errors: table.*, delivery.column, delivery.line, delivery.came, delivery.use_by,
/// delivery.contains, all at once.
base::Result<std::vector<Ticked>> read_ticks(std::string_view csv, const std::string& file_name,
                                             const Order& order);

/// The order without the lines that were ticked off: what is still on its way.
Order still_coming(const Order&, const std::vector<Ticked>&);

}  // namespace larder
