// What a week's lessons need to be bought, worked out from the kept lessons, prices and stores.
#pragma once

#include <memory>
#include <string>

#include "larder/worked_order.h"
#include "print/larder_view.h"
#include "serve/api_json.h"
#include "serve/context.h"

namespace serve {

/// An order with everything its lines point into.
struct WeekOrder {
  larder::Week week;
  std::shared_ptr<const kitchen::Foods> foods;
  std::shared_ptr<const larder::PriceList> prices;
  std::shared_ptr<const larder::Stock> stock;
  larder::Needs needs;
  larder::WorkedOrder worked;
  std::vector<std::string> unread;  ///< lessons that have to be mended first

  larder::OrderInput input() const { return {week, needs, *prices, stock->lots, *foods}; }
  /// `input` must outlive it.
  print::OrderView view(const larder::OrderInput& input) const {
    return {input, worked.order, worked.costs, worked.days};
  }
};

/// Remembered until a lesson of the week or a table changes. Problems: those of the week's reader.
base::Result<std::shared_ptr<const WeekOrder>> order_for(Context&, base::Date monday);

/// The few lines a week's page shows; null without lessons or prices. One not remembered yet is
/// worked out beside, and the pages hear of it (`document` of kind "order").
Node week_order(Context&, base::Date monday);

}  // namespace serve
