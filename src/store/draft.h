// What a caller hands in, checked whole before anything is written. Pure; inside the store.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/problem.h"
#include "store/document.h"

namespace store {

inline constexpr std::size_t kLongestTitle = 200;  ///< letters

/// A draft that can be written.
struct ReadyDraft {
  std::string body;  ///< compact
  std::string canonical;
  std::string title;
  std::optional<std::string> day;
  std::vector<Ref> links;
};

/// All faults at once. Errors: store.body, store.body_too_big, store.kind_differs, store.no_title,
/// store.day, store.bad_id (of a link).
base::Result<ReadyDraft> read_draft(Kind, const Draft&);

/// "store.bad_id" for an id that is not good.
base::Problem bad_id(const std::string& id);

}  // namespace store
