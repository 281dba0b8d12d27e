#include "kitchen/reading/step_order.h"

#include <algorithm>

#include "kitchen/reading/order_signs.h"

namespace kitchen {
namespace {

class Order {
 public:
  Order(DishDraft& draft, const std::vector<Work>& works, const IngredientWords& words,
        const std::vector<double>& weights)
      : draft_(draft), signs_(draft, works, words), weights_(weights) {}

  void run() {
    for (int i = 0; i < count(); ++i) one(i);
    join_loose_ends();
    for (StepDraft& s : draft_.method) std::sort(s.follows.begin(), s.follows.end());
  }

 private:
  DishDraft& draft_;
  OrderSigns signs_;
  const std::vector<double>& weights_;
  /// For each step how far it leans towards waiting for those before it, the nearest first; above 0
  /// it waits.
  std::vector<std::vector<double>> leaning_;

  int count() const { return static_cast<int>(draft_.method.size()); }
  StepDraft& step(int i) { return draft_.method[static_cast<std::size_t>(i)]; }

  void one(int i) {
    const OrderSigns::Look look = signs_.look(i);
    leaning_.emplace_back();
    for (int earlier = i - 1; earlier >= std::max(0, i - kFarthest); --earlier) {
      double sum = 0;
      for (const int sign : signs_.signs(earlier, look))
        sum += weights_[static_cast<std::size_t>(sign)];
      leaning_.back().push_back(sum);
      // "The soy mixture" is waited for whatever else speaks against it.
      if (sum > 0 || look.mixture.count(earlier) != 0) step(i).follows.push_back(earlier);
    }
    // "Add the tomatoes to the pan": somebody must have had that pan.
    auto& follows = step(i).follows;
    const bool there = look.into < 0 || std::any_of(follows.begin(), follows.end(),
                                                    [&](int f) { return signs_.has_pan(f); });
    if (!there) follows.push_back(look.into);
    signs_.settle(i);
  }

  // What nobody waits for must be done before the last step, or it would be left over: it joins
  // where that is likeliest.
  void join_loose_ends() {
    std::vector<bool> waited(draft_.method.size(), false);
    for (const StepDraft& s : draft_.method) {
      for (const int f : s.follows) waited[static_cast<std::size_t>(f)] = true;
    }
    for (int i = 0; i + 1 < count(); ++i) {
      if (waited[static_cast<std::size_t>(i)]) continue;
      int best = count() - 1;
      for (int later = i + 1; later < std::min(count(), i + kFarthest + 1); ++later) {
        if (!signs_.set_up(later) && leaning(later, i) > leaning(best, i)) best = later;
      }
      step(best).follows.push_back(i);
    }
  }

  double leaning(int later, int earlier) const {
    constexpr double kNever = -1e9;
    const auto& row = leaning_[static_cast<std::size_t>(later)];
    const auto back = static_cast<std::size_t>(later - earlier - 1);
    return back < row.size() ? row[back] : kNever;
  }
};

}  // namespace

void order_steps(DishDraft& draft, const std::vector<Work>& works, const IngredientWords& words,
                 const std::vector<double>& weights) {
  Order(draft, works, words, weights).run();
}

std::vector<std::set<int>> all_waits(const std::vector<std::set<int>>& waits) {
  std::vector<std::set<int>> before(waits.size());
  for (std::size_t i = 0; i < waits.size(); ++i) {
    for (const int w : waits[i]) {
      const auto at = static_cast<std::size_t>(w);
      before[i].insert(w);
      before[i].insert(before[at].begin(), before[at].end());
    }
  }
  return before;
}

std::vector<std::set<int>> needed_waits(const std::vector<std::set<int>>& waits) {
  const std::vector<std::set<int>> before = all_waits(waits);
  std::vector<std::set<int>> out(waits.size());
  for (std::size_t i = 0; i < waits.size(); ++i) {
    for (const int w : waits[i]) {
      const bool implied = std::any_of(waits[i].begin(), waits[i].end(), [&](int other) {
        return before[static_cast<std::size_t>(other)].count(w) != 0;
      });
      if (!implied) out[i].insert(w);
    }
  }
  return out;
}

}  // namespace kitchen
