// The stores as people read them: what is there, what to look at, what will not do.
#pragma once

#include <string>
#include <vector>

#include "larder/stock.h"

namespace print {

/// The short round: lots worth a look, a box to tick beside each; then the warnings, which stop
/// nothing.
std::string say_stock(const std::vector<larder::StockLot>& all,
                      const std::vector<larder::StockLot>& to_look_at,
                      const std::vector<larder::StockWarning>&, const kitchen::Foods&);

}  // namespace print
