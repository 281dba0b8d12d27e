// Lessons planned and kept: the answer for one version of a lesson, what it changed against the
// plan before, and the few figures a week's page needs of it.
#pragma once

#include <map>
#include <memory>
#include <mutex>
#include <optional>
#include <string>

#include "desk/what_changed.h"
#include "serve/api_json.h"
#include "serve/context.h"
#include "timeplan/answer.h"

namespace serve {

struct Planned;

struct PlanWish {
  double seconds = 3;
  int runs = 2000;          ///< of the lesson, for its chance
  bool keep_lines = false;  ///< of a few plans that are as good, the one nearest to the plan before
  /// The plan of the lesson as it was before a change: kept as far as the change lets it. Null: not
  /// known any more, as after a new start of the program; then `keep_lines` is the next best.
  std::shared_ptr<const Planned> standing = {};
  std::string what;  ///< for the history
};

/// An answer with the lesson it is for, as it was planned (allergens said, own timelines if only
/// those fit).
struct Planned {
  kitchen::Lesson lesson;
  timeplan::Answer answer;
};

/// Plans a lesson, with the school's foods and labels. Problems: those of desk::add_allergens().
base::Result<Planned> plan_it(Context&, kitchen::Lesson, const PlanWish&, JobDesk*,
                              const std::optional<desk::Printed>& before);

/// Plans a kept lesson, keeps the plan, and gives the API's LessonPlan as JSON text.
base::Result<std::string> plan_kept(Context&, const std::string& lesson_id, const PlanWish&,
                                    JobDesk*, const std::string& who);

/// LessonPlan of the newest kept plan, or of an older version. Problems: store.not_found.
base::Result<std::string> kept_plan(Context&, const std::string& lesson_id,
                                    std::optional<std::int64_t> version);

/// LessonPlan of a lesson that is not kept.
std::string loose_plan(const Planned&);

/// The plan of a kept lesson as values, for paper: the one that was kept, made again from the same
/// seed when the program was started since. Problems: plan.none, those of the readers.
base::Result<std::shared_ptr<const Planned>> planned_for_paper(Context&,
                                                               const std::string& lesson_id);

/// The plan that stands when this version of the lesson is changed to `body`: the one kept for it,
/// or, when that does not fit, the last one before it that does, with its lesson. A change that
/// takes back another, as taking off a pin, finds the lesson as it was: then its plan of that time.
/// Null when there is none.
std::shared_ptr<const Planned> standing_plan(Context&, const std::string& lesson_id,
                                             std::int64_t lesson_version, const std::string& body);

/// What a week's page says of a plan; the "digest" of a kept plan.
Node digest_of(const Planned&);

}  // namespace serve
