// The answer for machines: one JSON document, described by schemas/answer.schema.json (JSON Schema
// 2020-12). Times are ISO 8601 local date-times of the lesson's zone, lengths are whole minutes,
// names are those of the files.
#pragma once

#include <string>

#include "kitchen/lesson.h"
#include "timeplan/answer.h"

namespace print {

/// Every key of the schema is always there; null means "does not apply". Broken UTF-8 becomes
/// U+FFFD.
std::string answer_json(const kitchen::Lesson&, const timeplan::Answer&);

}  // namespace print
