// A dish as its page shows it: the row of the list, the method as strands, ratios, label, cost,
// allergens, safety.
#pragma once

#include <string>
#include <vector>

#include "serve/api_json.h"
#include "serve/context.h"

namespace serve {

/// What a dish can be chosen by. `versions`: as written first.
Node dish_row(Context&, const std::string& id, std::int64_t version,
              const std::vector<kitchen::Dish>& versions);

/// DishView of the contract as JSON text, of one version of the dish.
std::string dish_view(Context&, const std::string& id, std::int64_t version, const Node& body,
                      const std::vector<kitchen::Dish>& versions, const kitchen::Dish& shown);

}  // namespace serve
