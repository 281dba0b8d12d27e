#include "print/chance_words.h"

#include <fmt/format.h>

#include <algorithm>

namespace print {
namespace {

/// "between 80 and 84 in 100".
std::string in_hundred(const timeplan::Interval& interval) {
  return fmt::format("{:.0f} to {:.0f} in 100", 100 * interval.low, 100 * interval.high);
}

/// "Lessons that run late are most often held up by: Bake the scones (CS), then Wash up."
/// "Simmer soup (41 in 100), then Fry onions (8 in 100)": the first two.
std::string step_words(const kitchen::Lesson& lesson, const Plan& plan,
                       const std::vector<timeplan::DecidingStep>& steps) {
  std::vector<std::string> names;
  for (const timeplan::DecidingStep& step : steps) {
    if (names.size() == 2 || step.task < 0 ||
        static_cast<std::size_t>(step.task) >= plan.tasks.size())
      continue;
    const Task& task = plan.tasks[static_cast<std::size_t>(step.task)];
    const std::string dish = lesson.dishes.size() > 1 ? tag(lesson, task.dish) : "";
    names.push_back(fmt::format("{}{} ({:.0f} in 100)", brief(lesson, task),
                                dish.empty() ? "" : " " + dish, 100 * step.share));
  }
  return joined(names, ", then ");
}

std::string deciding_words(const kitchen::Lesson& lesson, const Plan& plan,
                           const timeplan::Chance& chance) {
  const std::string names = step_words(lesson, plan, chance.deciding);
  return names.empty() ? "" : "What most often holds the last ones up: " + names + ".";
}

std::string late_words(const timeplan::Chance& chance) {
  std::vector<std::string> parts;
  for (const timeplan::LateStart& late : chance.late_starts) {
    parts.push_back(minutes(late.later) + " late, " + timeplan::about_in_ten(late.room));
  }
  return parts.empty() ? "" : "If the class starts " + joined(parts, "; ") + ".";
}

/// Cooks who are out in time less often than four lessons in five, the least likely first.
std::string cooks_words(const kitchen::Lesson& lesson, const timeplan::Chance& chance) {
  std::vector<std::pair<double, int>> unsure;
  for (std::size_t c = 0; c < chance.cooks.size() && c < lesson.cooks.size(); ++c) {
    if (chance.cooks[c].share < 0.8) unsure.push_back({chance.cooks[c].share, static_cast<int>(c)});
  }
  if (unsure.empty()) return "";
  std::sort(unsure.begin(), unsure.end());
  std::vector<std::string> names;
  for (const auto& [share, cook] : unsure) {
    if (names.size() < 4) names.push_back(call(lesson, cook) + " " + timeplan::about_in_ten(share));
  }
  const bool more = unsure.size() > names.size();
  return "Least sure to be out in time: " + joined(names, ", ") +
         (more ? fmt::format(", and {} more.", unsure.size() - names.size()) : ".");
}

std::string whole_words(const kitchen::Lesson& lesson, const timeplan::Chance& chance) {
  const bool packs = lesson.purpose == kitchen::Purpose::kTakeHome && !lesson.rack_for;
  return capital(timeplan::word(chance.word)) + ": in " + chance.about +
         " lessons all are washed up" + (packs ? " and packed" : "") + " in time.";
}

/// The marks show washing up alone. Where the whole answer is much worse than they look, that must
/// be said.
std::string beyond_washing_words(const kitchen::Lesson& lesson, const timeplan::Chance& chance) {
  const auto in_time = std::count_if(chance.marks.begin(), chance.marks.end(), [&](Seconds m) {
    return m <= lesson.bell - lesson.check_out;
  });
  const double washed = static_cast<double>(in_time) / static_cast<double>(chance.marks.size());
  if (washed - chance.room < 0.15) return "";
  return "Washing up is not the whole of it: packing, or a dish that had to be given up, makes "
         "more lessons late.";
}

/// Behind a fault: ", most often at Probe (12 in 100)"; nothing when no step made it.
std::string where(const kitchen::Lesson& lesson, const Plan& plan,
                  const std::vector<timeplan::DecidingStep>& steps) {
  const std::string names = step_words(lesson, plan, steps);
  return names.empty() ? "" : ", most often at " + names;
}

std::vector<std::string> sentences(const kitchen::Lesson& lesson, const Plan& plan,
                                   const timeplan::Chance& chance) {
  std::vector<std::string> out;
  const std::string half = kitchen::clock(lesson, base::grid_up(chance.p50));
  const std::string most = kitchen::clock(lesson, base::grid_up(chance.p90));
  out.push_back(fmt::format("The last washing up ends by {} in half of them and by {} in 9 in 10.",
                            half, most));
  for (std::string text : {beyond_washing_words(lesson, chance), late_words(chance),
                           deciding_words(lesson, plan, chance), cooks_words(lesson, chance)}) {
    if (!text.empty()) out.push_back(std::move(text));
  }
  if (chance.safety_fault >= 0.05) {
    out.push_back("Take care: in " + timeplan::about_in_ten(chance.safety_fault) +
                  " a safety limit is passed" + where(lesson, plan, chance.unsafe) + ".");
  }
  if (chance.quality_fault >= 0.2) {
    out.push_back("In " + timeplan::about_in_ten(chance.quality_fault) +
                  " some food waits or cooks too long" + where(lesson, plan, chance.too_late) +
                  ".");
  }
  return out;
}

}  // namespace

std::optional<Likely> likely(const kitchen::Lesson& lesson, const Answer& answer) {
  if (!answer.chance || !answer.plan || answer.chance->runs == 0) return std::nullopt;
  const timeplan::Chance& chance = *answer.chance;
  Likely out;
  out.word = timeplan::word(chance.word);
  out.about = chance.about;
  out.whole = whole_words(lesson, chance);
  out.says = sentences(lesson, *answer.plan, chance);
  out.marks.assign(chance.marks.begin(), chance.marks.end());
  out.runs = chance.runs;
  out.share = chance.room;
  out.least = chance.interval.low;
  out.most = chance.interval.high;
  out.details = {
      {"Chance", fmt::format("{:.1f} in 100, interval {} (95 %).", 100 * chance.room,
                             in_hundred(chance.interval))},
      {"Runs", fmt::format("{}{}, seed {}.", chance.runs, chance.complete ? "" : ", stopped early",
                           chance.seed)},
      {"Not out", fmt::format("{:.2f} cooks at the bell on average.", chance.expected_not_out)},
      {"Faults",
       fmt::format("quality {:.1f} in 100, safety {:.1f} in 100, a dish given up {:.1f} in 100.",
                   100 * chance.quality_fault, 100 * chance.safety_fault, 100 * chance.given_up)}};
  for (const timeplan::LateStart& late : chance.late_starts) {
    out.details.push_back({minutes(late.later) + " late",
                           fmt::format("{:.1f} in 100, interval {}, {} runs.", 100 * late.room,
                                       in_hundred(late.interval), late.runs)});
  }
  return out;
}

}  // namespace print
