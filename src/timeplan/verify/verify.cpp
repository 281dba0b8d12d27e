// The judge: first what must be there, then every rule in turn.
#include "timeplan/plan.h"
#include "timeplan/verify/checks.h"
#include "timeplan/verify/expected.h"

namespace timeplan {

std::vector<Violation> verify(const kitchen::Lesson& lesson, const Plan& plan) {
  judge::Case c(lesson, plan);
  judge::match_tasks(c);
  for (const auto check :
       {judge::check_attention, judge::check_waits, judge::check_windows, judge::check_serving,
        judge::check_holds, judge::check_vessels, judge::check_ovens, judge::check_shared,
        judge::check_kit, judge::check_hygiene, judge::check_adults, judge::check_house_rules,
        judge::check_waves, judge::check_goals}) {
    check(c);
  }
  return c.found;
}

}  // namespace timeplan
