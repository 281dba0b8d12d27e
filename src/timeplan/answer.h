// Everything there is to say about a lesson: the proved plan, its chance, the last safe starts,
// and, when it does not fit, why and what would help. What print/ says, draws and writes for
// machines comes from this one value.
#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "kitchen/lesson.h"
#include "timeplan/chance/chance.h"
#include "timeplan/plan.h"

namespace timeplan {

enum class Verdict : std::int8_t {
  kFits,        ///< a verified plan ends by the bell
  kDoesNotFit,  ///< proved: no plan ends by the bell
  kNotFound,  ///< neither a plan nor a proof in the time given; said as a risk, never as a refusal
};

/// What was found for one number of waves: "one wave misses the bell by 9 min".
struct WaveTrial {
  int waves = 1;
  bool fits = false;
  bool proved = false;               ///< of not fitting, and of `misses_by`
  std::optional<Seconds> misses_by;  ///< least overrun of the last cook
};

/// A deciding step's latest clock time, and what to do instead (rule Y13).
struct LastSafeStart {
  int task = 0;  ///< into Plan::tasks (of one cook of the wave)
  int wave = 0;
  Seconds at{0};
  std::string says;     ///< "tins in the oven"
  std::string instead;  ///< "finish cold", "the technician takes the tray", "next lesson"
};

/// One member of a minimal set of reasons, in a teacher's words, with the figures.
struct Cause {
  std::string code;  ///< stable: "sinks", "bell", "hot oil and one adult"
  std::string says;  ///< "12 sets of washing up need 20 minutes at 6 sinks and there are 14."
};

/// A change that was planned again and works (or nearly), best first.
struct Remedy {
  std::string code;   ///< stable: "trios"
  std::string says;   ///< "Work in threes instead of pairs"
  std::string buys;   ///< "fits in two waves, 6 min spare"
  bool fits = false;  ///< verified by planning again
  Seconds gain{0};    ///< minutes won on the overrun when it does not fit by itself
};

struct Answer {
  Verdict verdict = Verdict::kNotFound;
  std::optional<Plan> plan;  ///< verified; for a lesson that does not fit the least late plan, if
                             ///< one was found
  std::vector<WaveTrial> trials;      ///< empty with own timelines
  bool own_timelines_needed = false;  ///< waves were asked for, but only private timelines fit
  std::optional<Chance> chance;       ///< only for plans that fit
  std::vector<LastSafeStart> last_safe_starts;
  std::vector<Cause> causes;   ///< minimal set; only when it does not fit
  bool causes_minimal = true;  ///< false when time ran out before every cause was tried without
  std::vector<Remedy> remedies;
  std::vector<std::string> notes;  ///< what the reader added, what was assumed, cautions
  Seconds spare{0};      ///< between the last wash-up end and the bell (less check-out); fits only
  Seconds overrun{0};    ///< of the last cook; does not fit only
  Seconds grid_cost{0};  ///< minutes lost to checkpoints on the five-minute grid (Y3)
  int calm = 0;          ///< G5, never claimed proved
  double seconds = 0;    ///< work done
  double first_seconds = 0;  ///< until the first verified plan
  /// Until a plan of this many waves stood and all fewer (with own timelines: all there may be)
  /// were proved not to do as well; none when that is not proved.
  std::optional<double> waves_seconds;
  double refuted_seconds = 0;  ///< until it was known that there is no plan; only then
  std::uint64_t seed = 1;
  bool kept_standing = false;  ///< the standing plan, with as little of it moved as was found to do
  bool stopped_early = false;  ///< asked to stop; best so far
};

/// A plan that is known already, and the lesson it was made for.
struct Standing {
  const kitchen::Lesson* lesson = nullptr;
  const Plan* plan = nullptr;
};

/// How far the planning is. The first goal level that may still become better stands for the gap:
/// `best` of the plan worked on, and `bound`, which none like it goes below.
struct Progress {
  std::string says;   ///< one short sentence
  std::string level;  ///< "G2 buffer shortfall"; empty while there is no plan
  std::int64_t best = 0, bound = 0;
};

struct PlanOptions {
  double seconds = 5.0;
  std::uint64_t seed = 1;
  int runs = 2000;
  bool with_chance = true;
  bool with_remedies = true;
  bool with_last_safe_starts = true;
  std::optional<Standing> standing;  ///< kept as far as the lesson lets it (keep.h); otherwise
                                     ///< planned afresh
  std::function<bool()> stop;        ///< asked often; true = give the best so far
  std::function<void(const Progress&)> progress;  ///< now and then
};

/// Plans, proves and judges a lesson. Throws std::logic_error only when a promise inside the
/// program is broken (a plan the verifier refuses).
Answer plan_lesson(const kitchen::Lesson&, const PlanOptions&);

}  // namespace timeplan
