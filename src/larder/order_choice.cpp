// Which vans come, and with them what each food costs: foods meet only in what the vans charge.
#include <algorithm>
#include <cmath>
#include <limits>

#include "larder/order_parts.h"

namespace larder {
namespace {

constexpr double kEndless = std::numeric_limits<double>::infinity();
constexpr std::size_t kMostSubsets = 10;  ///< vans with a charge that are tried in every
                                          ///< combination

class Choice {
 public:
  Choice(const Works& works, const OrderWish& wish) : works_(works), known_(works.foods.size()) {
    how_.gap = wish.gap;
    how_.seconds = wish.seconds;
    for (std::size_t k = 0; k < works.slots.size(); ++k) {
      const std::uint64_t bit = std::uint64_t{1} << k;
      all_ |= bit;
      const Supplier& s = supplier(k);
      if (s.delivery > 0 || s.minimum > 0) charged_.push_back(bit);
    }
  }

  Chosen run() {
    if (charged_.size() <= kMostSubsets)
      every_combination();
    else
      close_one_by_one();
    Chosen out;
    out.slots = best_;
    out.bound = std::min(bound_, best_cost_);
    for (std::size_t f = 0; f < works_.foods.size(); ++f) {
      const Known& known = of(f, best_);
      out.plans.push_back(known.plan);
      out.packs.push_back(known.batches);
    }
    return out;
  }

 private:
  struct Known {
    std::vector<Batch> batches;
    FoodPlan plan;
  };

  const Supplier& supplier(std::size_t slot) const {
    return works_.suppliers[static_cast<std::size_t>(works_.slots[slot].supplier)];
  }

  // The plan of a food when only these vans come; asked once for each choice that matters to it.
  const Known& of(std::size_t f, std::uint64_t open) {
    const FoodWork& work = works_.foods[f];
    const auto [at, fresh] = known_[f].try_emplace(open & work.slots);
    Known& known = at->second;
    if (!fresh) return known;
    FoodProgramme p = work.all;
    std::erase_if(p.batches, [&](const Batch& b) {
      const Source& source = work.sources[static_cast<std::size_t>(b.tag)];
      return (open >> source.slot & 1U) == 0;
    });
    drop_useless(p.batches);
    known.batches = p.batches;
    for (const auto& [slots, other] : known_[f]) {
      if (slots != at->first && other.batches == known.batches) {
        known.plan = other.plan;
        return known;
      }
    }
    known.plan = possible(p) ? solve(p, how_) : FoodPlan{{}, 0, 0, false};
    return known;
  }

  static bool possible(const FoodProgramme& p) {
    double total = 0;
    for (const double need : p.need) total += need;
    std::vector<int> plenty;
    for (const Batch& b : p.batches)
      plenty.push_back(static_cast<int>(std::ceil(total / b.lot.size)) + 1);
    return serve(p, plenty).short_in_all <= 0;
  }

  struct Cost {
    double cost = kEndless, bound = kEndless;
  };

  // What it all costs with these vans; the bound is for orders that use every charged one of them.
  Cost of_vans(std::uint64_t open) {
    Cost out{0, 0};
    std::vector<double> goods(works_.slots.size(), 0.0);
    for (std::size_t f = 0; f < works_.foods.size(); ++f) {
      const Known& known = of(f, open);
      if (!known.plan.feasible) return {};
      out.cost += known.plan.cost;
      out.bound += known.plan.bound;
      for (std::size_t b = 0; b < known.batches.size(); ++b) {
        const auto tag = static_cast<std::size_t>(known.batches[b].tag);
        const int slot = works_.foods[f].sources[tag].slot;
        goods[static_cast<std::size_t>(slot)] += known.batches[b].price * known.plan.counts[b];
      }
    }
    for (std::size_t k = 0; k < goods.size(); ++k) {
      const Supplier& s = supplier(k);
      if ((open >> k & 1U) != 0) out.bound += static_cast<double>(s.delivery);
      if (goods[k] <= 0) continue;
      out.cost += static_cast<double>(s.delivery);
      out.cost += std::max(0.0, static_cast<double>(s.minimum) - goods[k]);
    }
    return out;
  }

  void keep(std::uint64_t open, const Cost& cost) {
    if (cost.cost < best_cost_ - 1e-9) {
      best_cost_ = cost.cost;
      best_ = open;
    }
  }

  void every_combination() {
    std::uint64_t free = all_;
    for (const std::uint64_t bit : charged_) free &= ~bit;
    const std::uint64_t combinations = std::uint64_t{1} << charged_.size();
    // All open first: ties then go to fewer vans only if that is cheaper.
    for (std::uint64_t c = combinations; c-- > 0;) {
      std::uint64_t open = free;
      for (std::size_t i = 0; i < charged_.size(); ++i) {
        if ((c >> i & 1U) != 0) open |= charged_[i];
      }
      const Cost cost = of_vans(open);
      keep(open, cost);
      bound_ = std::min(bound_, cost.bound);
    }
  }

  // More vans than can be tried in every combination: the bound leaves their charges out.
  void close_one_by_one() {
    std::uint64_t open = all_;
    const Cost start = of_vans(open);
    keep(open, start);
    bound_ = start.bound;
    for (std::size_t k = 0; k < works_.slots.size(); ++k)
      bound_ -= static_cast<double>(supplier(k).delivery);
    for (bool better = true; better;) {
      better = false;
      for (const std::uint64_t bit : charged_) {
        if ((best_ & bit) == 0) continue;
        const double before = best_cost_;
        keep(best_ & ~bit, of_vans(best_ & ~bit));
        better = better || best_cost_ < before - 1e-9;
      }
    }
  }

  const Works& works_;
  FoodSearch how_;
  std::vector<std::map<std::uint64_t, Known>> known_;
  std::vector<std::uint64_t> charged_;
  std::uint64_t all_ = 0, best_ = 0;
  double best_cost_ = kEndless, bound_ = kEndless;
};

}  // namespace

Chosen choose(const Works& works, const OrderWish& wish) { return Choice(works, wish).run(); }

}  // namespace larder
