#include "print/say_scale.h"

#include <fmt/format.h>

#include "base/text.h"

namespace print {
namespace {

using kitchen::Ratio;
using larder::Shown;

const std::string& name(const kitchen::Dish& dish, int ingredient) {
  return dish.ingredients[static_cast<std::size_t>(ingredient)].name;
}

// "+2.5 g of 187.5 g", nothing when the rounding changes nothing.
std::string error_text(const Shown& amount) {
  if (amount.error == Ratio(0)) return "";
  const bool more = amount.error > Ratio(0);
  const Ratio by = more ? amount.error : Ratio(0) - amount.error;
  const std::string unit(kitchen::unit_word(amount.exact.unit));
  return fmt::format("rounded {} by {}{}{}", more ? "up" : "down", base::decimal_text(by),
                     unit.empty() ? "" : " ", unit);
}

std::string large_text(const kitchen::Quantity& q) {
  if (!q.stated()) return "to taste";
  if (q.unit == kitchen::Unit::kGram && q.middle() >= Ratio(1000))
    return fmt::format("{} kg", base::decimal_text(q.middle() / Ratio(1000), 3));
  if (q.unit == kitchen::Unit::kMillilitre && q.middle() >= Ratio(1000))
    return fmt::format("{} litres", base::decimal_text(q.middle() / Ratio(1000), 3));
  return quantity_text(q);
}

}  // namespace

std::string say_warnings(const std::vector<std::string>& warnings) {
  std::string out;
  for (const std::string& warning : warnings) out += fmt::format("  Mind: {}\n", warning);
  return out;
}

std::string say_scaled(const kitchen::Dish& dish, const larder::Scaled& scaled,
                       const std::string& title) {
  std::string out = fmt::format("{}, {} (times {})\n\n", dish.name, title,
                                base::decimal_text(scaled.factor, 4));
  for (const larder::ScaledLine& line : scaled.lines) {
    const std::string rounded = error_text(line.amount);
    const std::string more = line.note.empty() ? rounded
                             : rounded.empty() ? line.note
                                               : line.note + "; " + rounded;
    out += fmt::format("  {:<28} {:<20} {}", name(dish, line.ingredient), line.amount.text, more);
    out.erase(out.find_last_not_of(' ') + 1);
    out += "\n";
  }
  return out + (scaled.warnings.empty() ? "" : "\n") + say_warnings(scaled.warnings);
}

std::string say_sets(const kitchen::Dish& dish, const larder::SetOrder& order) {
  std::string out = fmt::format("{}, {}\n\n  {:<28} {:<18} {}\n", dish.name,
                                base::counted(order.sets, "set", "sets"), "", "each tray",
                                "all together");
  std::string sources;
  for (const larder::SetLine& line : order.lines) {
    out += fmt::format("  {:<28} {:<18} {}\n", name(dish, line.ingredient), line.tray.text,
                       large_text(line.order));
    if (!line.waste.source.empty()) {
      sources += fmt::format("  {}: more for beginners' peeling, times {}: {}\n",
                             name(dish, line.ingredient), base::decimal_text(line.waste.factor, 2),
                             line.waste.source);
    }
  }
  if (!sources.empty()) out += "\n" + sources;
  return out + (order.warnings.empty() ? "" : "\n") + say_warnings(order.warnings);
}

std::string say_times(const kitchen::Dish& dish, const std::vector<larder::TimeWarning>& warnings) {
  if (warnings.empty()) return "";
  std::string out = "\nWhat does not grow with the amounts (as one batch):\n";
  for (const larder::TimeWarning& warning : warnings) {
    out += fmt::format("  {}: {}\n", dish.method[static_cast<std::size_t>(warning.step)].brief,
                       warning.says);
  }
  return out;
}

}  // namespace print
