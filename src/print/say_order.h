// The order as people read it: what to buy from whom by when, what is not settled, what it costs.
#pragma once

#include <string>
#include <vector>

#include "print/larder_view.h"

namespace print {

struct SayOrder {
  bool details = false;   ///< open every line: for which lessons, what is left, how it was proved
  bool families = false;  ///< the private split between school and families; staff only
};

std::string say_order(const OrderView&, const SayOrder&);

/// The order as a table, the first row its headings.
std::vector<std::vector<std::string>> order_rows(const OrderView&);
/// CSV of it; cells that a spreadsheet would take for formulas are defused.
std::string order_csv(const OrderView&);
/// schemas/order.schema.json.
std::string order_json(const OrderView&);

}  // namespace print
