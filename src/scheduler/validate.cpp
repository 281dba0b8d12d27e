#include "scheduler/validate.h"

#include <stdexcept>
#include <string>

namespace scheduler {
namespace {

void require(bool fine, const std::string& what) {
  if (!fine) throw std::invalid_argument("malformed problem: " + what);
}

class Validator {
 public:
  explicit Validator(const Problem& problem) : problem_(problem) {}

  void run() const {
    require(problem_.horizon >= 0, "horizon");
    for (const Resource& resource : problem_.resources) check_resource(resource);
    for (const Activity& activity : problem_.activities) check_activity(activity);
    for (const Lag& lag : problem_.lags) {
      check_event(lag.from, "lag");
      check_event(lag.to, "lag");
    }
    for (const Span& span : problem_.spans) check_span(span);
    for (const Blocked& blocked : problem_.blocked) check_list(blocked.activities, "blocked");
    for (const auto& group : problem_.same_mode) check_list(group, "same_mode");
    for (const auto& group : problem_.exactly_one) check_list(group, "exactly_one");
    for (const GoalLevel& level : problem_.goals) check_level(level);
  }

 private:
  bool is_activity(int i) const {
    return i >= 0 && static_cast<std::size_t>(i) < problem_.activities.size();
  }
  void check_event(Event event, const char* where) const {
    require(is_activity(event.activity), where);
  }
  void check_list(const std::vector<int>& list, const char* where) const {
    for (const int i : list) require(is_activity(i), where);
  }

  void check_resource(const Resource& resource) const {
    for (const auto& row : resource.change)
      require(row.size() == resource.change.size(), resource.name + " change");
    if (resource.initial) {
      require(*resource.initial >= 0 &&
                  static_cast<std::size_t>(*resource.initial) < resource.change.size(),
              resource.name + " initial");
    }
  }

  void check_use(const Use& use, const std::string& who) const {
    require(use.resource >= 0 && static_cast<std::size_t>(use.resource) < problem_.resources.size(),
            who + " uses an unknown resource");
    require(use.amount >= 0, who + " uses a negative amount");
    const Resource& resource = problem_.resources[static_cast<std::size_t>(use.resource)];
    if (resource.kind != ResourceKind::kSettings) return;
    for (const int setting : use.settings) {
      require(setting >= 0 && static_cast<std::size_t>(setting) < resource.change.size(),
              who + " setting");
    }
  }

  void check_activity(const Activity& activity) const {
    require(!activity.modes.empty(), activity.name + " has no mode");
    require(activity.duration_min >= 0 && activity.duration_max >= activity.duration_min,
            activity.name + " duration");
    for (const Mode& mode : activity.modes) {
      for (const Use& use : mode.uses) check_use(use, activity.name);
    }
    if (activity.cleans) {
      require(*activity.cleans >= 0 &&
                  static_cast<std::size_t>(*activity.cleans) < problem_.resources.size(),
              activity.name + " cleans an unknown resource");
    }
  }

  void check_span(const Span& span) const {
    check_event(span.from, "span");
    check_event(span.to, "span");
    check_list(span.excludes, "span excludes");
    if (span.like) require(is_activity(*span.like), "span like");
    if (!span.like) require(span.uses_by_mode.size() <= 1, "span modes");
    for (const auto& uses : span.uses_by_mode) {
      for (const Use& use : uses) {
        check_use(use, "span");
        require(use.settings.size() <= 1 || span.like.has_value(), "span with a free setting");
      }
    }
  }

  void check_level(const GoalLevel& level) const {
    require(level.band >= 0, level.name + " band");
    for (const Term& term : level.terms) {
      require(term.weight >= 0, level.name + " has a negative weight");
      for (const Event event : term.high) check_event(event, "term");
      for (const Event event : term.low) check_event(event, "term");
      if (term.kind != Term::Kind::kExcess) require(is_activity(term.activity), "term activity");
      if (term.kind == Term::Kind::kOutOfOrder) require(is_activity(term.other), "term other");
    }
  }

  const Problem& problem_;
};

}  // namespace

void validate(const Problem& problem) { Validator(problem).run(); }

}  // namespace scheduler
