// Adults: who watches what, how much at once, and whether they may, can and are there (rules V1 to
// V5, W3, W5).
#include <algorithm>
#include <set>
#include <tuple>

#include <fmt/format.h>

#include "timeplan/verify/checks.h"
#include "timeplan/verify/sweep.h"

namespace timeplan::judge {

namespace {

constexpr int kWholeAdult = 100;
constexpr int kHalfAdult = 50;

// A task that takes an adult.
struct Duty {
  int task = -1;
  int hundredths = 0;
  std::optional<kitchen::Hazard> hazard;  // a step that is watched
  bool leads = false;                     // only an adult who leads may do it
};

const kitchen::Adult& adult_of(const Case& c, int a) {
  return c.lesson.adults[static_cast<std::size_t>(a)];
}

bool exists(const Case& c, int a) { return a >= 0 && a < std::ssize(c.lesson.adults); }

std::optional<Duty> watching(const Case& c, int index) {
  const auto& step = c.step(c.task(index).dish, c.task(index).step);
  if (!step.hazard) return std::nullopt;
  const auto it = c.lesson.rules.watch.find(*step.hazard);
  const int hundredths = it == c.lesson.rules.watch.end() ? kWholeAdult : it->second.hundredths;
  return Duty{index, hundredths, step.hazard, false};
}

std::optional<Duty> duty(const Case& c, int index) {
  using enum TaskKind;
  const Task& t = c.task(index);
  switch (t.kind) {
    case kStep:
      return watching(c, index);
    case kLook:
    case kBayLook:
      return Duty{index, kHalfAdult, {}, true};
    case kKnivesOut:
    case kKnivesIn:
      return Duty{index, kWholeAdult, {}, true};
    case kWindow:
      if (!c.lesson.windows[static_cast<std::size_t>(t.window)].led_by) return std::nullopt;
      return Duty{index, kWholeAdult, {}, false};
    default:
      return std::nullopt;
  }
}

void check_who(Case& c, const Duty& d) {
  const Task& t = c.task(d.task);
  const auto say = [&](const char* rule, const std::string& what) {
    c.report(rule, fmt::format("{}: {}.", c.label(d.task), what), {d.task}, when(t));
  };
  if (t.kind == TaskKind::kWindow) {
    const int leader = *c.lesson.windows[static_cast<std::size_t>(t.window)].led_by;
    if (t.adult != leader) say("V3", "it is led by " + adult_of(c, leader).name);
  }
  if (!exists(c, t.adult)) {
    say(d.hazard ? "V5" : "V3", "no adult sees to it");
    return;
  }
  const auto& adult = adult_of(c, t.adult);
  if (d.leads && !adult.leads) say("V3", adult.name + " does not lead the lesson");
  const auto& may = adult.may_watch;
  if (d.hazard && std::find(may.begin(), may.end(), *d.hazard) == may.end()) {
    say("V3", adult.name + " may not watch this");
  }
  if (t.start < adult.from || t.end > adult.to) {
    say("V3",
        fmt::format("{} is in the room only {}", adult.name, c.at(Span{adult.from, adult.to})));
  }
}

int bay_of(const Case& c, int task) { return c.place_of(c.task(task).cook).bay; }

// Cooks at one first cooker who show the same step at the same time are looked at together (rule
// Y5).
std::vector<Use> loads(const Case& c, int adult, const std::vector<Duty>& duties) {
  std::set<std::tuple<int, int, int, Seconds, Seconds>> looked_at;
  std::vector<Use> uses;
  for (const auto& d : duties) {
    const Task& t = c.task(d.task);
    if (t.adult != adult) continue;
    if (t.kind == TaskKind::kLook) {
      const int cooker = c.place_of(t.cook).cookers.front();
      if (!looked_at.insert({cooker, t.dish, t.step, t.start, t.end}).second) continue;
    }
    uses.push_back({when(t), d.hundredths, {d.task}});
  }
  return uses;
}

void check_load(Case& c, int adult, const std::vector<Duty>& duties) {
  for (const auto& e : over(loads(c, adult, duties), kWholeAdult)) {
    c.report("V1",
             fmt::format("{} would be needed {} hundredths at {}.", adult_of(c, adult).name,
                         e.amount, c.at(e.span)),
             e.tasks, e.span);
  }
  for (const auto& [hazard, watch] : c.lesson.rules.watch) {
    std::vector<Use> uses;
    for (const auto& d : duties) {
      const Task& t = c.task(d.task);
      if (t.adult == adult && d.hazard == hazard) uses.push_back({when(t), 1, {d.task}});
    }
    for (const auto& e : over(uses, watch.at_once)) {
      c.report("V2",
               fmt::format("{} would watch {} at once at {}; the house rules allow {}.",
                           adult_of(c, adult).name, e.amount, c.at(e.span), watch.at_once),
               e.tasks, e.span);
    }
  }
}

bool seen_together(const Case& c, const std::set<int>& bays) {
  const auto& sights = c.lesson.room.seen_together;
  if (sights.empty() || bays.size() <= 1) return true;
  return std::any_of(sights.begin(), sights.end(), [&](const std::vector<int>& sight) {
    return std::all_of(bays.begin(), bays.end(), [&](int b) {
      return std::find(sight.begin(), sight.end(), b) != sight.end();
    });
  });
}

// Which bays are watched at one moment can only grow at the start of a step.
void check_sight(Case& c, int adult, const std::vector<Duty>& duties) {
  for (const auto& d : duties) {
    const Task& begun = c.task(d.task);
    if (!d.hazard || begun.adult != adult || begun.start >= begun.end) continue;
    std::set<int> bays;
    std::vector<int> tasks;
    Seconds until = begun.end;
    for (const auto& other : duties) {
      const Task& t = c.task(other.task);
      if (!other.hazard || t.adult != adult) continue;
      if (t.start > begun.start || t.end <= begun.start) continue;
      bays.insert(bay_of(c, other.task));
      tasks.push_back(other.task);
      until = std::min(until, t.end);
    }
    if (seen_together(c, bays)) continue;
    c.report("V4",
             fmt::format("{} cannot see all they watch from one point at {}.",
                         adult_of(c, adult).name, c.at(begun.start)),
             tasks, {begun.start, until});
  }
}

// A break is a break for adults too, and whoever leads a window leads it.
void check_other_calls(Case& c, const std::vector<Duty>& duties) {
  for (int w = 0; w < static_cast<int>(c.lesson.windows.size()); ++w) {
    const auto& window = c.lesson.windows[static_cast<std::size_t>(w)];
    const auto span = c.window(w);
    if (!span) continue;
    const bool pause = window.kind == kitchen::WindowKind::kBreak;
    for (const auto& d : duties) {
      const Task& t = c.task(d.task);
      const bool this_window = t.kind == TaskKind::kWindow && t.window == w;
      if (this_window || !overlap(*span, when(t))) continue;
      if (pause ? !exists(c, t.adult) : window.led_by != t.adult) continue;
      c.report("W3",
               fmt::format("{}, keeps {} during {} ({}).", c.label(d.task),
                           adult_of(c, t.adult).name, window.name, c.at(*span)),
               {d.task}, *span);
    }
  }
}

void check_bans(Case& c, const std::vector<Duty>& duties) {
  for (const auto& d : duties) {
    for (const auto& ban : c.lesson.bans) {
      const Task& t = c.task(d.task);
      if (d.hazard != ban.hazard || t.end <= ban.after) continue;
      c.report("W5", fmt::format("{}: it must have ended by {}.", c.label(d.task), c.at(ban.after)),
               {d.task}, {ban.after, t.end});
    }
  }
}

void check_house_list(Case& c, const std::vector<Duty>& duties) {
  for (const auto& d : duties) {
    if (!d.hazard || c.lesson.rules.watch.contains(*d.hazard)) continue;
    c.report("V1",
             fmt::format("{}: the house rules do not say how much of an adult it takes.",
                         c.label(d.task)),
             {d.task}, when(c.task(d.task)));
  }
}

}  // namespace

void check_adults(Case& c) {
  std::vector<Duty> duties;
  for (const int t : c.all()) {
    if (const auto d = duty(c, t)) duties.push_back(*d);
  }
  check_house_list(c, duties);
  for (const auto& d : duties) check_who(c, d);
  for (int a = 0; a < static_cast<int>(c.lesson.adults.size()); ++a) {
    check_load(c, a, duties);
    check_sight(c, a, duties);
  }
  check_other_calls(c, duties);
  check_bans(c, duties);
}

}  // namespace timeplan::judge
