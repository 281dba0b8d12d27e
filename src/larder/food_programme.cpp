#include "larder/food_programme.h"

#include <algorithm>
#include <numeric>

namespace larder {
namespace {

struct Held {
  const Lot* lot;
  double left;
  bool stock;
  std::size_t index;
};

// Earliest end first serves as much as can be served at all, because the days of a lot are an
// interval; and it leaves what lasts longest.
bool used_before(const Held& a, const Held& b) {
  if (a.lot->last != b.lot->last) return a.lot->last < b.lot->last;
  if (a.lot->lasts != b.lot->lasts) return b.lot->lasts;
  if (a.stock != b.stock) return a.stock;
  return a.index < b.index;
}

}  // namespace

Served serve(const FoodProgramme& p, const std::vector<int>& counts) {
  const std::size_t days = p.need.size();
  Served out;
  out.from_stock.assign(p.stock.size(), std::vector<double>(days, 0.0));
  out.from_batch.assign(p.batches.size(), std::vector<double>(days, 0.0));
  out.short_by.assign(days, 0.0);
  std::vector<Held> held;
  for (std::size_t i = 0; i < p.stock.size(); ++i)
    held.push_back({&p.stock[i], p.stock[i].size, true, i});
  for (std::size_t b = 0; b < p.batches.size(); ++b) {
    if (counts[b] > 0)
      held.push_back({&p.batches[b].lot, p.batches[b].lot.size * counts[b], false, b});
  }
  std::sort(held.begin(), held.end(), used_before);
  for (std::size_t day = 0; day < days; ++day) {
    double wanted = p.need[day];
    const int now = static_cast<int>(day);
    for (Held& h : held) {
      if (wanted <= 0) break;
      if (h.left <= 0 || h.lot->first > now || h.lot->last < now) continue;
      const double taken = std::min(wanted, h.left);
      h.left -= taken;
      wanted -= taken;
      (h.stock ? out.from_stock : out.from_batch)[h.index][day] += taken;
    }
    if (wanted > kAmountSlack * std::max(1.0, p.need[day])) {
      out.short_by[day] = wanted;
      out.short_in_all += wanted;
    }
  }
  for (const Held& h : held) {
    if (h.lot->lasts) out.left_that_lasts += h.left;
  }
  return out;
}

void drop_useless(std::vector<Batch>& batches) {
  std::vector<Batch> kept;
  for (std::size_t i = 0; i < batches.size(); ++i) {
    const Batch& a = batches[i];
    bool useless = false;
    for (std::size_t j = 0; j < batches.size() && !useless; ++j) {
      if (i == j) continue;
      const Batch& b = batches[j];
      const bool as_good = b.price <= a.price && b.lot.size >= a.lot.size &&
                           b.lot.first <= a.lot.first && b.lot.last >= a.lot.last &&
                           b.lot.lasts >= a.lot.lasts;
      const bool same = as_good && b.price == a.price && b.lot == a.lot;
      useless = as_good && (!same || j < i);
    }
    if (!useless) kept.push_back(a);
  }
  batches = std::move(kept);
}

}  // namespace larder
