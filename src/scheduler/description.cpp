#include "scheduler/description.h"

namespace scheduler {

void put(Description& text, std::initializer_list<std::int64_t> numbers) {
  text.insert(text.end(), numbers.begin(), numbers.end());
}

void put_list(Description& text, const Description& numbers) {
  put(text, {static_cast<std::int64_t>(numbers.size())});
  text.insert(text.end(), numbers.begin(), numbers.end());
}

void put_activity(Description& text, const Activity& activity) {
  put(text, {activity.duration_min, activity.duration_max, activity.earliest, activity.latest_end,
             activity.optional ? 1 : 0, activity.cleans_bits,
             static_cast<std::int64_t>(activity.modes.size())});
}

void put_resource(Description& text, const Resource& resource) {
  put(text, {static_cast<std::int64_t>(resource.kind), resource.capacity,
             resource.initial ? *resource.initial : -1});
  for (const Limit& limit : resource.limits) put(text, {limit.hazard, limit.at_once});
  for (const auto& row : resource.change) put_list(text, {row.begin(), row.end()});
}

void put_use(Description& text, const Use& use) {
  put(text,
      {use.amount, use.door_shut, use.soil, use.minds, use.overlaps_not, use.kind_bit, use.hazard});
  put_list(text, {use.settings.begin(), use.settings.end()});
}

void put_term(Description& text, const Term& term) {
  put(text,
      {static_cast<std::int64_t>(term.kind), term.weight, term.allowance, term.at, term.tolerance});
}

}  // namespace scheduler
