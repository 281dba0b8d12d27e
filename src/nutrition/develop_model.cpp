#include "nutrition/develop_model.h"

#include <algorithm>
#include <cmath>

namespace nutrition {

namespace {

using optimise::kNoLimit;
using optimise::Programme;
using optimise::Row;
using optimise::Term;

// A wish for a least change, a nearest bound, or neither.
enum class Wish { kLeastChange, kNearest };

class Builder {
 public:
  Builder(const Model& model, Wish wish, const Relaxed* relaxed)
      : model_(model), wish_(wish), relaxed_(relaxed) {
    double most_change = 1;
    for (const ModelPart& part : model.parts) {
      for (const Mode& mode : part.modes)
        most_change += 1 + (std::abs(mode.most - part.grams) + std::abs(mode.least - part.grams)) /
                               size(part);
    }
    one_more_ = most_change;
    for (std::size_t i = 0; i < model.parts.size(); ++i) add_part(i);
    for (std::size_t r = 0; r < model.ratios.size(); ++r) add_ratio(r);
    for (std::size_t g = 0; g < model.goals.size(); ++g) add_goal(g);
  }

  const Programme& programme() const { return programme_; }

  std::vector<Choice> choices(const std::vector<double>& values) const {
    std::vector<Choice> out;
    for (std::size_t i = 0; i < model_.parts.size(); ++i) {
      Choice choice{std::nullopt, model_.parts[i].grams};
      for (std::size_t m = 0; m < model_.parts[i].modes.size(); ++m) {
        const Columns& columns = columns_[i][m];
        if (values[columns.chosen] < 0.5) continue;
        choice = {m, values[columns.steps] * model_.parts[i].modes[m].step};
      }
      out.push_back(choice);
    }
    return out;
  }
  /// What the relaxed bound comes to at these values.
  double nearest(const std::vector<double>& values) const {
    const std::vector<Choice> chosen = choices(values);
    if (relaxed_->kind == Stop::Kind::kLeast || relaxed_->kind == Stop::Kind::kMost)
      return chosen[relaxed_->index].grams;
    if (relaxed_->kind == Stop::Kind::kRatio) {
      const RatioBound& ratio = model_.ratios[relaxed_->index];
      double over = 0, under = 0;
      for (std::size_t i = 0; i < chosen.size(); ++i) {
        over += ratio.numerator[i] * chosen[i].grams;
        under += ratio.denominator[i] * chosen[i].grams;
      }
      return under == 0 ? 0 : over / under;
    }
    const Goal& goal = model_.goals[relaxed_->index];
    double sum = 0, served = 0;
    for (std::size_t i = 0; i < chosen.size(); ++i) {
      const ModelPart& part = model_.parts[i];
      const Mode& mode = chosen[i].mode ? part.modes[*chosen[i].mode] : part.now;
      sum += chosen[i].grams * mode.per_gram[relaxed_->index];
      served += chosen[i].grams * mode.weight;
    }
    return goal.per == GoalPer::kPortion ? sum / model_.portions
           : served > 0                  ? 100 * sum / served
                                         : 0;
  }

 private:
  struct Columns {
    std::size_t chosen, steps;
  };
  const Model& model_;
  Wish wish_;
  const Relaxed* relaxed_;
  double one_more_ = 1;  // one more changed ingredient outweighs any amount of change
  Programme programme_;
  std::vector<std::vector<Columns>> columns_;

  static double size(const ModelPart& part) { return std::max(part.grams, 1.0); }
  bool is_relaxed(Stop::Kind kind, std::size_t index) const {
    return relaxed_ != nullptr && relaxed_->kind == kind && relaxed_->index == index;
  }

  void add_part(std::size_t i) {
    const ModelPart& part = model_.parts[i];
    columns_.emplace_back();
    Row one_of{{}, -kNoLimit, 1};
    Row up{{}, -kNoLimit, 0}, down{{}, -kNoLimit, 0};  // |change| is what both leave at least
    for (const Mode& mode : part.modes) {
      const bool counts = wish_ == Wish::kLeastChange;
      const std::size_t chosen = programme_.add(
          {0, 1, counts ? one_more_ + (mode.swap ? 0.5 : 0.0) : 0.0, true});
      const double fewest = std::ceil(mode.least / mode.step - 1e-9),
                   most = std::floor(mode.most / mode.step + 1e-9);
      const std::size_t steps = programme_.add({0, std::max(0.0, most), 0, true});
      programme_.add(Row{{{steps, 1}, {chosen, -most}}, -kNoLimit, 0});
      programme_.add(Row{{{steps, 1}, {chosen, -fewest}}, 0, kNoLimit});
      one_of.terms.push_back({chosen, 1});
      for (const auto& [row, sign] : {std::pair{&up, 1.0}, {&down, -1.0}}) {
        row->terms.push_back({steps, sign * mode.step / size(part)});
        row->terms.push_back({chosen, -sign * part.grams / size(part)});
      }
      columns_.back().push_back({chosen, steps});
    }
    if (part.modes.empty()) return;
    programme_.add(one_of);
    if (wish_ == Wish::kLeastChange) {
      const std::size_t change = programme_.add({0, kNoLimit, 1, false});
      up.terms.push_back({change, -1});
      down.terms.push_back({change, -1});
      programme_.add(up);
      programme_.add(down);
    } else if (is_relaxed(Stop::Kind::kLeast, i) || is_relaxed(Stop::Kind::kMost, i)) {
      const double sign = relaxed_->kind == Stop::Kind::kLeast ? -1 : 1;
      for (std::size_t m = 0; m < part.modes.size(); ++m) {
        programme_.variables[columns_[i][m].steps].cost = sign * part.modes[m].step;
        programme_.variables[columns_[i][m].chosen].cost = -sign * part.grams;
      }
    }
  }

  // The sum of what each ingredient brings, `of(part, mode)` a gram; its constant part goes to the
  // limits.
  template <class Of>
  Row sum_of(const Of& of, double& constant) const {
    Row row;
    constant = 0;
    for (std::size_t i = 0; i < model_.parts.size(); ++i) {
      const ModelPart& part = model_.parts[i];
      const double now = part.grams * of(i, part.now);
      constant += now;
      for (std::size_t m = 0; m < part.modes.size(); ++m) {
        row.terms.push_back({columns_[i][m].steps, part.modes[m].step * of(i, part.modes[m])});
        row.terms.push_back({columns_[i][m].chosen, -now});
      }
    }
    return row;
  }

  // least <= row + constant <= most, with room in either direction when the bound is let go.
  void add_limited(Row row, double constant, double least, double most, bool relaxed) {
    row.least = least - constant;
    row.most = most - constant;
    if (relaxed && std::isfinite(least))
      row.terms.push_back({programme_.add({0, kNoLimit, 1, false}), 1});
    if (relaxed && std::isfinite(most))
      row.terms.push_back({programme_.add({0, kNoLimit, 1, false}), -1});
    programme_.add(std::move(row));
  }

  void add_ratio(std::size_t r) {
    const RatioBound& ratio = model_.ratios[r];
    const bool relaxed = is_relaxed(Stop::Kind::kRatio, r);
    double constant = 0;
    for (const auto& [bound, at_least] : {std::pair{ratio.least, true}, {ratio.most, false}}) {
      if (!std::isfinite(bound)) continue;
      Row row = sum_of(
          [&, limit = bound](std::size_t i, const Mode&) {
            return ratio.numerator[i] - limit * ratio.denominator[i];
          },
          constant);
      add_limited(std::move(row), constant, at_least ? 0 : -kNoLimit, at_least ? kNoLimit : 0,
                  relaxed);
    }
  }

  void add_goal(std::size_t g) {
    const Goal& goal = model_.goals[g];
    const bool portion = goal.per == GoalPer::kPortion;
    double constant = 0;
    Row row = sum_of(
        [&](std::size_t, const Mode& mode) {
          return mode.per_gram[g] - (portion ? 0 : goal.amount / 100 * mode.weight);
        },
        constant);
    const double limit = portion ? goal.amount * model_.portions : 0;
    add_limited(std::move(row), constant, goal.at_most ? -kNoLimit : limit,
                goal.at_most ? limit : kNoLimit, is_relaxed(Stop::Kind::kGoal, g));
  }
};

}  // namespace

ModelAnswer least_change(const Model& model, double seconds) {
  const Builder builder(model, Wish::kLeastChange, nullptr);
  const optimise::Solution solution = optimise::minimise(builder.programme(),
                                                         {seconds, 1'000'000, 0});
  ModelAnswer answer;
  answer.status = solution.status;
  if (solution.found()) answer.choices = builder.choices(solution.values);
  return answer;
}

std::optional<double> nearest_without(const Model& model, const Relaxed& relaxed, double seconds) {
  const Builder builder(model, Wish::kNearest, &relaxed);
  const optimise::Solution solution = optimise::minimise(builder.programme(),
                                                         {seconds, 1'000'000, 0});
  if (!solution.found()) return std::nullopt;
  return builder.nearest(solution.values);
}

}  // namespace nutrition
