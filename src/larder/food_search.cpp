// The search for one food: look where the first day is short and add one more of each pack that
// could help, never the same set twice.
#include <algorithm>
#include <cmath>
#include <limits>

#include "larder/food_programme.h"

namespace larder {
namespace {

constexpr double kEndless = std::numeric_limits<double>::infinity();

// The least that packs cost which hold `amount` between them, whatever the days: a lower bound.
class Cover {
 public:
  Cover(const FoodProgramme& p, double most) {
    double smallest = kEndless;
    for (const Batch& b : p.batches) smallest = std::min(smallest, b.lot.size);
    if (p.batches.empty() || most <= 0) return;
    cell_ = std::max(smallest / 12, most / 1500);
    const auto cells = static_cast<std::size_t>(most / cell_) + 1;
    least_.assign(cells + 1, 0.0);
    for (std::size_t at = 1; at <= cells; ++at) {
      double best = kEndless;
      for (const Batch& b : p.batches) {
        // Sizes rounded up and amounts down: the bound stays below the truth.
        const auto size = static_cast<std::size_t>(std::ceil(b.lot.size / cell_ - 1e-9));
        const double before = least_[at > size ? at - size : 0];
        best = std::min(best, before + b.price - p.worth * b.lot.size);
      }
      least_[at] = best;
    }
  }

  /// Of prices less the worth of all they hold.
  double at(double amount) const {
    if (least_.empty() || amount <= 0) return 0;
    const double cells = std::ceil(amount / cell_ * (1 - 1e-9) - 1e-9);
    return least_[std::min(static_cast<std::size_t>(std::max(0.0, cells)), least_.size() - 1)];
  }

 private:
  double cell_ = 1;
  std::vector<double> least_;
};

class Search {
 public:
  Search(const FoodProgramme& p, const FoodSearch& how)
      : p_(p), how_(how), counts_(p.batches.size(), 0), closed_(p.batches.size(), 0) {
    total_ = 0;
    for (const double need : p.need) total_ += need;
    cover_ = Cover(p, total_);
  }

  FoodPlan run(bool& finished) {
    visit(0, kEndless);
    finished = nodes_ <= how_.most_nodes;
    FoodPlan out;
    out.feasible = best_ < kEndless;
    out.counts = best_counts_;
    out.cost = best_;
    out.bound = out.feasible ? best_ - slack() : 0;
    return out;
  }

 private:
  double slack() const { return best_ < kEndless ? how_.gap * std::fabs(best_) : 0; }

  // Any completion Y holds at least what is short, D. Earliest end first wastes as little as can be
  // wasted, so what lasts and is left at the end is at most (left now) + size(Y) - D. Hence
  //   cost >= price + sum over Y of (price - worth size) + worth (D - left now)
  // and, because a unit bought costs more than it is worth left, never less than buying just D.
  double bound(double price, const Served& now) const {
    double cheapest = kEndless;
    for (std::size_t b = 0; b < p_.batches.size(); ++b) {
      if (closed_[b] == 0)
        cheapest = std::min(cheapest, p_.batches[b].price / p_.batches[b].lot.size);
    }
    if (cheapest == kEndless) return kEndless;
    const double missing = now.short_in_all, left = now.left_that_lasts;
    const double by_unit = price + missing * cheapest - p_.worth * std::min(p_.worth_most, left);
    const double by_cover = price + cover_.at(missing) + p_.worth * (missing - left);
    return std::max(by_unit, by_cover);
  }

  // False if the last pack added lets nothing more be served than `short_before`: such packs are
  // not tried here. Some pack of every completion helps at once (what lots can serve together is a
  // matroid), and one that does not may still be tried further down.
  bool visit(double price, double short_before) {
    if (++nodes_ > how_.most_nodes) return true;
    const Served now = serve(p_, counts_);
    if (now.short_in_all >= short_before - 1e-9 * total_) return false;
    if (now.short_in_all <= 0) {
      const double cost = price - p_.worth * std::min(p_.worth_most, now.left_that_lasts);
      if (cost < best_ - 1e-9) {
        best_ = cost;
        best_counts_ = counts_;
      }
      return true;
    }
    if (bound(price, now) >= best_ - std::max(1e-9, slack())) return true;
    std::size_t day = 0;
    while (now.short_by[day] <= 0) ++day;
    branch(price, static_cast<int>(day), now);
    return true;
  }

  // A pack that begins after the short day cannot help it, not even by freeing another.
  void branch(double price, int day, const Served& now) {
    std::vector<std::size_t> order, tried;
    for (std::size_t b = 0; b < p_.batches.size(); ++b) {
      if (closed_[b] == 0 && p_.batches[b].lot.first <= day) order.push_back(b);
    }
    const double missing = std::max(now.short_in_all, 1e-9);
    const auto each = [&](std::size_t b) {
      return p_.batches[b].price / std::min(p_.batches[b].lot.size, missing);
    };
    std::sort(order.begin(), order.end(),
              [&](std::size_t a, std::size_t b) { return each(a) < each(b); });
    for (const std::size_t b : order) {
      ++counts_[b];
      const bool helped = visit(price + p_.batches[b].price, now.short_in_all);
      --counts_[b];
      if (!helped) continue;
      closed_[b] = 1;
      tried.push_back(b);
    }
    for (const std::size_t b : tried) closed_[b] = 0;
  }

  const FoodProgramme& p_;
  FoodSearch how_;
  Cover cover_{FoodProgramme{}, 0};
  std::vector<int> counts_, best_counts_;
  std::vector<char> closed_;
  double total_ = 0, best_ = kEndless;
  std::size_t nodes_ = 0;
};

// The days fall apart where nothing can be used on both sides, if nothing left is worth anything.
std::vector<FoodProgramme> parts_of(const FoodProgramme& p, std::vector<std::vector<int>>& whose) {
  const int days = static_cast<int>(p.need.size());
  std::vector<char> joined(p.need.size(), 0);  // day i with day i + 1
  const auto join = [&](const Lot& lot) {
    for (int d = std::max(0, lot.first); d < std::min(lot.last, days - 1); ++d)
      joined[static_cast<std::size_t>(d)] = 1;
  };
  for (const Lot& lot : p.stock) join(lot);
  for (const Batch& b : p.batches) join(b.lot);
  std::vector<FoodProgramme> out;
  for (int first = 0; first < days;) {
    int last = first;
    while (last + 1 < days && joined[static_cast<std::size_t>(last)] != 0) ++last;
    FoodProgramme part;
    part.need.assign(p.need.begin() + first, p.need.begin() + last + 1);
    const auto inside = [&](Lot lot) {
      lot.first = std::max(0, lot.first - first);
      lot.last = std::min(last, lot.last) - first;
      return lot;
    };
    const auto meets = [&](const Lot& lot) { return lot.first <= last && lot.last >= first; };
    for (const Lot& lot : p.stock) {
      if (meets(lot)) part.stock.push_back(inside(lot));
    }
    whose.emplace_back();
    for (std::size_t b = 0; b < p.batches.size(); ++b) {
      if (!meets(p.batches[b].lot)) continue;
      part.batches.push_back(p.batches[b]);
      part.batches.back().lot = inside(p.batches[b].lot);
      whose.back().push_back(static_cast<int>(b));
    }
    out.push_back(std::move(part));
    first = last + 1;
  }
  return out;
}

FoodPlan solve_one(const FoodProgramme& p, const FoodSearch& how) {
  bool finished = false;
  FoodPlan found = Search(p, how).run(finished);
  if (finished) return found;
  FoodPlan other = solve_by_milp(p, how);
  if (!other.feasible) {  // stopped before it had any: the search may have had one
    found.bound = std::max(0.0, other.bound);
    return found;
  }
  if (found.feasible && found.cost < other.cost) {
    other.counts = std::move(found.counts);
    other.cost = found.cost;
  }
  return other;
}

}  // namespace

FoodPlan solve(const FoodProgramme& p, const FoodSearch& how) {
  if (p.worth > 0) return solve_one(p, how);
  FoodPlan out;
  out.counts.assign(p.batches.size(), 0);
  std::vector<std::vector<int>> whose;
  const std::vector<FoodProgramme> parts = parts_of(p, whose);
  for (std::size_t i = 0; i < parts.size(); ++i) {
    const FoodPlan part = solve_one(parts[i], how);
    out.feasible = out.feasible && part.feasible;
    out.cost += part.cost;
    out.bound += part.bound;
    for (std::size_t b = 0; b < part.counts.size(); ++b)
      out.counts[static_cast<std::size_t>(whose[i][b])] = part.counts[b];
  }
  return out;
}

}  // namespace larder
