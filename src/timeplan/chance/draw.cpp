#include "timeplan/chance/draw.h"

#include <algorithm>
#include <cmath>

#include "timeplan/chance/luck.h"

namespace timeplan {

double length_factor(const LengthOf& length, double z_own, double z_step, double z_cook,
                     double z_room) {
  const double half = std::sqrt(0.5);  // half of a step's variance is shared by all who do it
  const double log_factor = length.hands_on ? length.spread * half * (z_own + z_step) +
                                                  kCookForm * z_cook + kRoomForm * z_room
                                            : length.spread * z_own;
  return std::clamp(std::exp(log_factor), kLeastFactor, kMostFactor);
}

Draw::Draw(const LessonModel& model, std::uint64_t seed)
    : model_(model),
      seed_(seed),
      cook_(model.cook_ids.size()),
      step_(model.step_ids.size()),
      needs_step_(model.step_ids.size(), 0),
      length_(model.length.size()),
      calls_(model.length.size() * kCallsEach) {
  for (const LengthOf& length : model.length)
    if (length.hands_on && length.spread > 0)
      needs_step_[static_cast<std::size_t>(length.step)] = 1;
}

Luck Draw::of_run(std::uint64_t run, int opens_late) {
  const double room = normal(seed_, run, 0, 0, LuckFor::kRoom);
  for (std::size_t c = 0; c < cook_.size(); ++c)
    cook_[c] = normal(seed_, run, model_.cook_ids[c], 0, LuckFor::kCook);
  for (std::size_t s = 0; s < step_.size(); ++s)
    if (needs_step_[s]) step_[s] = normal(seed_, run, 0, model_.step_ids[s], LuckFor::kStep);
  for (std::size_t a = 0; a < length_.size(); ++a) {
    draw_length(a, run, room);
    draw_calls(a, run);
  }
  return {length_, calls_, opens_late};
}

void Draw::draw_length(std::size_t a, std::uint64_t run, double room) {
  const LengthOf& length = model_.length[a];
  if (length.median <= 0) {
    length_[a] = model_.play.activities[a].planned;
    return;
  }
  const auto cook = static_cast<std::size_t>(length.cook),
             step = static_cast<std::size_t>(length.step);
  const double own = length.spread > 0 ? normal(seed_, run, model_.cook_ids[cook],
                                                model_.step_ids[step], LuckFor::kCookStep)
                                       : 0;
  const double factor = length_factor(length, own, step_[step], cook_[cook], room);
  length_[a] = std::max(1, static_cast<int>(std::lround(length.median * factor)));
}

/// Calls come at a steady rate while hands work; a third in one step is left out.
void Draw::draw_calls(std::size_t a, std::uint64_t run) {
  HandsUp& first = calls_[a * kCallsEach];
  HandsUp& second = calls_[a * kCallsEach + 1];
  first = second = HandsUp{};
  if (!model_.play.activities[a].calls) return;
  const LengthOf& length = model_.length[a];
  const std::uint64_t cook = model_.cook_ids[static_cast<std::size_t>(length.cook)];
  // Parts of one step share their length's luck, but not the moment of a question.
  const std::uint64_t step = id_of(model_.step_ids[static_cast<std::size_t>(length.step)],
                                   static_cast<std::uint64_t>(model_.part[a]));
  const auto gap = [&](LuckFor what) {
    return -kSecondsBetweenCalls * std::log(uniform(seed_, run, cook, step, what));
  };
  const auto help = [&](LuckFor what) {
    return static_cast<int>(
        std::lround(kHelpMedian * std::exp(kHelpSpread * normal(seed_, run, cook, step, what))));
  };
  const double at = gap(LuckFor::kCall);
  if (at >= length_[a]) return;
  first = {static_cast<int>(at), help(LuckFor::kHelp)};
  const double next = at + gap(LuckFor::kNextCall);
  if (next < length_[a]) second = {static_cast<int>(next), help(LuckFor::kNextHelp)};
}

}  // namespace timeplan
