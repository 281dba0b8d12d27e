// The figures behind the plan. Only here may engine words stand.
#include <fmt/format.h>

#include <algorithm>

#include "print/chance_words.h"
#include "print/say_parts.h"

namespace print {
namespace {

/// Rule Z3: a ratio of a goal that can be nought means nothing, so a gap is minutes per cook and
/// per cent of the lesson.
std::string level_words(const kitchen::Lesson& lesson, const timeplan::Level& level) {
  std::string text = fmt::format("value {}, bound {}", level.value, level.bound);
  // What the grid costs is not for want of looking: the gap is to the best with these checkpoints.
  const std::int64_t best = level.grid ? level.grid->bound : level.bound;
  if (level.grid && (level.grid->free_value != level.value || best != level.bound)) {
    text += fmt::format(" ({} with these checkpoints; value {} before they were set)", best,
                        level.grid->free_value);
  }
  const auto cooks = static_cast<double>(lesson.cooks.size());
  const double bell = static_cast<double>(lesson.bell.count()) / 60.0;
  const auto gap = static_cast<double>(level.value - best);
  const bool waves = level.name.starts_with("Gw");  // a number of waves, not minutes
  if (!waves && cooks > 0 && bell > 0) {
    text += fmt::format(", gap {:.1f} min a cook, {:.1f} % of the lesson", gap / cooks,
                        100 * gap / (cooks * bell));
  }
  return text + (level.proved ? ", proved best." : ", not proved best.");
}

}  // namespace

std::vector<std::pair<std::string, std::string>> detail_lines(const kitchen::Lesson& lesson,
                                                              const Answer& answer) {
  std::vector<std::pair<std::string, std::string>> out;
  if (answer.plan) {
    for (const timeplan::Level& level : answer.plan->levels)
      out.push_back({level.name, level_words(lesson, level)});
    if (!answer.plan->buffer.empty()) {
      const auto [least, most] = std::minmax_element(answer.plan->buffer.begin(),
                                                     answer.plan->buffer.end());
      const std::string range = *least == *most ? minutes(*least)
                                                : minutes(*least) + " to " + minutes(*most);
      out.push_back({"Buffer", range + " wanted before the bell, by cook (rule 8.1)."});
    }
  }
  out.push_back({"Calm", fmt::format("{} (G5, never claimed proved).", answer.calm)});
  out.push_back(
      {"Work", fmt::format("{:.2f} s, first verified plan after {:.2f} s{}{}.", answer.seconds,
                           answer.first_seconds,
                           answer.kept_standing ? ", kept from the plan before a change" : "",
                           answer.stopped_early ? ", stopped early" : "")});
  out.push_back({"Seed", std::to_string(answer.seed) + "."});
  if (const std::optional<Likely> chance = likely(lesson, answer)) {
    out.insert(out.end(), chance->details.begin(), chance->details.end());
  }
  return out;
}

void say_details(Paper& paper, const kitchen::Lesson& lesson, const Answer& answer) {
  paper.heading("Details");
  for (const auto& [name, figures] : detail_lines(lesson, answer))
    paper.entry(name, figures, 2, 16);
}

}  // namespace print
