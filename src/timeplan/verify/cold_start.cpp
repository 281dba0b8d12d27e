// Ovens that are cold or stand at some setting when the first tray wants to go in: the opening and
// the break.
#include <algorithm>

#include <fmt/format.h>

#include "timeplan/verify/ovens.h"

namespace timeplan::judge {

namespace {

const std::string& name_of(const Case& c, int cooker) {
  return c.lesson.room.cookers[static_cast<std::size_t>(cooker)].name;
}

// From the opening setting, or from cold when nobody has set the oven.
Seconds first_heating(const Case& c, int cooker, const kitchen::OvenSetting& to) {
  const auto& change = c.lesson.room.change_over;
  for (const auto& set : c.lesson.ovens) {
    if (set.cooker == cooker) {
      return base::grid_up(kitchen::change_over(change, set.setting, to));
    }
  }
  return base::grid_up(kitchen::heat_up(change, to));
}

// The trays that go in first at or after `moment`; several when they go in together.
std::vector<const Tray*> first_after(const std::vector<Tray>& trays, Seconds moment) {
  std::vector<const Tray*> first;
  for (const auto& t : trays) {
    if (t.span.from < moment) continue;
    if (!first.empty() && t.span.from > first.front()->span.from) continue;
    if (!first.empty() && t.span.from < first.front()->span.from) first.clear();
    first.push_back(&t);
  }
  return first;
}

void must_wait(const Case& c, const char* rule, int cooker, const Tray& tray, Seconds from,
               Seconds heating, std::vector<Violation>& found) {
  if (tray.span.from >= from + heating) return;
  found.push_back({rule,
                   fmt::format("The oven of cooker {} needs {} from {} to reach {} degrees; "
                               "{} goes in at {}.",
                               name_of(c, cooker), minutes_text(heating), c.at(from),
                               tray.setting.celsius, tray.name, c.at(tray.span.from)),
                   tray.tasks, from, tray.span.from});
}

}  // namespace

std::vector<Span> breaks_with_ovens_off(const Case& c) {
  std::vector<Span> breaks;
  for (int w = 0; w < static_cast<int>(c.lesson.windows.size()); ++w) {
    const auto& window = c.lesson.windows[static_cast<std::size_t>(w)];
    if (window.kind != kitchen::WindowKind::kBreak || window.ovens_stay_on) continue;
    if (const auto span = c.window(w)) breaks.push_back(*span);
  }
  return breaks;
}

std::vector<Violation> judge_cold_starts(const Case& c, int cooker,
                                         const std::vector<Tray>& trays) {
  std::vector<Violation> found;
  const auto breaks = breaks_with_ovens_off(c);
  for (const Tray* tray : first_after(trays, Seconds::min())) {
    const bool after_break = std::any_of(breaks.begin(), breaks.end(),
                                         [&](const Span& b) { return b.to <= tray->span.from; });
    if (after_break) continue;  // whatever stood at the opening is cold again
    must_wait(c, "O5", cooker, *tray, Seconds{0}, first_heating(c, cooker, tray->setting), found);
  }
  for (const auto& pause : breaks) {
    for (const auto& tray : trays) {
      if (!overlap(tray.span, pause)) continue;
      found.push_back({"O6",
                       fmt::format("The oven of cooker {} is off in the break {}, and {} is "
                                   "in it.",
                                   name_of(c, cooker), c.at(pause), tray.name),
                       tray.tasks, pause.from, pause.to});
    }
    for (const Tray* tray : first_after(trays, pause.to)) {
      const auto heating = base::grid_up(
          kitchen::heat_up(c.lesson.room.change_over, tray->setting));
      must_wait(c, "O6", cooker, *tray, pause.to, heating, found);
    }
  }
  return found;
}

}  // namespace timeplan::judge
