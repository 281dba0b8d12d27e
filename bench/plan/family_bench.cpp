// Generated class-size lessons: how soon the first plan stands, how far each goal level is from its
// bound after two seconds, how soon it is known that fewer waves or no plan at all will do, and how
// soon the reasons are there. family_bench [COUNT] [SEED] [COOKS]; a line a
// lesson, then the figures. COOKS: that many in every lesson instead of 8 to 30.
#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <cstdlib>
#include <vector>

#include "base/memory.h"
#include "class_family.h"
#include "timeplan/answer.h"

namespace {

using std::chrono::steady_clock;

double median(std::vector<double> values) {
  if (values.empty()) return 0;
  std::sort(values.begin(), values.end());
  return values[values.size() / 2];
}

double part(const std::vector<double>& values, double most) {
  if (values.empty()) return 1;
  const auto within = std::count_if(values.begin(), values.end(),
                                    [most](double v) { return v <= most; });
  return static_cast<double>(within) / static_cast<double>(values.size());
}

struct Figures {
  std::vector<double> first, gaps, waves_proved, refuted, reasons;
  int fits = 0, does_not = 0, not_found = 0, everyday_fits = 0;
};

/// Distances of the goal levels from their bounds, per cent of the lesson for each cook (rule Z3).
std::vector<double> gaps(const kitchen::Lesson& lesson, const timeplan::Plan& plan) {
  std::vector<double> result;
  const double whole = static_cast<double>(lesson.cooks.size()) *
                       static_cast<double>(lesson.bell.count()) / 60.0;
  for (const timeplan::Level& level : plan.levels) {
    if (level.name.starts_with("G1") || level.name.starts_with("Gw")) continue;
    const std::int64_t bound = level.grid ? level.grid->bound : level.bound;
    result.push_back(100.0 * static_cast<double>(level.value - bound) / whole);
  }
  return result;
}

void measure(const bench::ClassLesson& made, Figures& figures) {
  timeplan::PlanOptions options;
  options.seconds = 2;
  options.with_chance = options.with_remedies = options.with_last_safe_starts = false;
  const auto start = steady_clock::now();
  const timeplan::Answer answer = timeplan::plan_lesson(made.lesson, options);
  const double seconds = std::chrono::duration<double>(steady_clock::now() - start).count();
  std::string said;
  if (answer.verdict == timeplan::Verdict::kFits) {
    ++figures.fits;
    figures.everyday_fits += made.everyday ? 1 : 0;
    figures.first.push_back(answer.first_seconds);
    double widest = 0;
    for (const double gap : gaps(made.lesson, *answer.plan)) {
      figures.gaps.push_back(gap);
      widest = std::max(widest, gap);
    }
    if (made.everyday) figures.waves_proved.push_back(answer.waves_seconds.value_or(1e9));
    const std::string least = answer.waves_seconds ? fmt::format(" (least, known after {:.3f} s)",
                                                                 *answer.waves_seconds)
                                                   : "";
    said = fmt::format("fits in {}{}{}, first {:.3f} s, widest gap {:.2f} %", answer.plan->waves,
                       answer.own_timelines_needed ? " timelines" : " waves", least,
                       answer.first_seconds, widest);
  } else if (answer.verdict == timeplan::Verdict::kDoesNotFit) {
    ++figures.does_not;
    figures.refuted.push_back(answer.refuted_seconds);
    figures.reasons.push_back(answer.causes.empty() ? 1e9 : seconds);
    said = fmt::format("does not fit, known after {:.3f} s, {} reasons{}", answer.refuted_seconds,
                       answer.causes.size(), answer.causes_minimal ? "" : " (not minimal)");
  } else {
    ++figures.not_found;
    said = "neither a plan nor a proof";
  }
  fmt::print("{:<75} {} ({:.2f} s)\n", made.what, said, seconds);
}

}  // namespace

int main(int argc, char** argv) {
  base::keep_freed_memory();
  const int count = argc > 1 ? std::atoi(argv[1]) : 40;
  const auto seed = static_cast<std::uint64_t>(argc > 2 ? std::atoll(argv[2]) : 1);
  const int cooks = argc > 3 ? std::atoi(argv[3]) : 0;
  Figures figures;
  for (const bench::ClassLesson& made : bench::class_family(count, seed, cooks))
    measure(made, figures);
  double sum = 0;
  for (const double gap : figures.gaps) sum += gap;
  const double mean = figures.gaps.empty() ? 0 : sum / static_cast<double>(figures.gaps.size());
  fmt::print("{} fit, {} do not, {} not decided\n", figures.fits, figures.does_not,
             figures.not_found);
  fmt::print("first plan: median {:.0f} ms, within 300 ms {:.0f} % (all)\n",
             1000 * median(figures.first), 100 * part(figures.first, 0.3));
  fmt::print("mean distance of a level from its bound after 2 s: {:.2f} % (at most 1)\n", mean);
  fmt::print("one dish: fewest waves known within 1 s: {:.0f} % (all)\n",
             100 * part(figures.waves_proved, 1));
  fmt::print("not fitting known within 2 s: {:.0f} %, with reasons within 5 s: {:.0f} % (90)\n",
             100 * part(figures.refuted, 2), 100 * part(figures.reasons, 5));
}
