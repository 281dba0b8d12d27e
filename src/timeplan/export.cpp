#include "timeplan/export.h"

#include "scheduler/minizinc.h"
#include "timeplan/trial.h"

namespace timeplan {
namespace {

/// How far over the bell a lesson that does not fit may run: as far as the planner looks.
constexpr Seconds kBeyondBell = base::minutes(480);

}  // namespace

std::string minizinc(const kitchen::Lesson& lesson, const Answer& answer) {
  const bool fits = answer.verdict == Verdict::kFits && answer.plan.has_value();
  const bool own = lesson.timelines == kitchen::Timelines::kOwn;
  BriefOptions how;
  how.bell_is_hard = fits;
  how.beyond_bell = kBeyondBell;
  std::vector<int> waves;
  if (!own) waves = answer.plan ? answer.plan->wave_of_cook : splits(lesson, 1).front();
  const Trial trial = prepare(lesson, waves, how);
  std::vector<std::int64_t> values;
  if (fits) {
    for (const Level& level : answer.plan->levels) {
      // The bell is hard and the number of waves is given: neither is a level of this problem.
      if (level.name.starts_with("G1") || level.name.starts_with("Gw")) continue;
      values.push_back(level.grid ? level.grid->free_value : level.value);
    }
  }
  const std::size_t level = fits ? trial.brief.problem.goals.size() - 1 : 0;
  return scheduler::minizinc(trial.brief.problem, level, values);
}

}  // namespace timeplan
