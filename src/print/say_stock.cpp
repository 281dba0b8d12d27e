#include "print/say_stock.h"

#include "base/text.h"

namespace print {

using base::say;

std::string say_stock(const std::vector<larder::StockLot>& all,
                      const std::vector<larder::StockLot>& to_look_at,
                      const std::vector<larder::StockWarning>& warnings,
                      const kitchen::Foods& foods) {
  std::string out = say(base::counted(static_cast<long long>(all.size()), "lot", "lots"),
                        " in the stores.\n");
  if (to_look_at.empty()) {
    out += "Nothing needs a look.\n";
  } else {
    out += say("Look at these ", to_look_at.size(),
               "; correct only what is wrong, the rest is taken on trust.\n");
  }
  for (const larder::StockLot& lot : to_look_at) {
    const kitchen::Food* food = foods.find(lot.food);
    out += say("  [ ] ", food == nullptr ? lot.food : food->name, ", ",
               kitchen::quantity_text(lot.amount), lot.opened ? ", opened" : "",
               lot.use_by ? ", use by " + larder::day_text(*lot.use_by) : "",
               lot.where.empty() ? "" : ", ", lot.where, "\n");
  }
  if (!warnings.empty())
    out +=
        "Warnings; no lesson stops for them. Look in the cupboard, top up, or use a stand-in whose "
        "label has been read.\n";
  for (const larder::StockWarning& warning : warnings) out += say("  ! ", warning.text, "\n");
  return out;
}

}  // namespace print
