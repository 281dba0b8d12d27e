// A delivery as people read it: the list to tick off at the door; then what to put away, send back,
// read again and still buy.
#pragma once

#include <string>
#include <vector>

#include "larder/delivery.h"
#include "larder/order.h"

namespace print {

struct DeliveryView {
  const larder::OrderInput& in;  ///< the week as it is now
  const larder::Order& sent;
  const std::vector<larder::Ticked>& ticks;
  const larder::DeliveryOutcome& outcome;
  const larder::Order& top_up;  ///< what is still to be bought; its lines as those of an order
  base::Date day;               ///< it came
};

/// The lines of a sent order to tick off, numbered from 1; as words and as the table that
/// larder::read_ticks() reads (its first row the headings).
std::string say_tick_list(const larder::OrderInput&, const larder::Order& sent);
std::string tick_list_csv(const larder::OrderInput&, const larder::Order& sent);

std::string say_delivery(const DeliveryView&);
/// One row for each thing to do: what, food, how much, for which lesson, words.
std::string delivery_csv(const DeliveryView&);
/// schemas/delivery.schema.json.
std::string delivery_json(const DeliveryView&);

}  // namespace print
