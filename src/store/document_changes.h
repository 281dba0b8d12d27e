// Documents in their tables: what is written. Each function is called inside a write transaction
// and looks before it writes; a Problem means that nothing was written. Inside the store only.
#pragma once

#include <cstdint>
#include <optional>
#include <string>

#include "base/problem.h"
#include "store/database.h"
#include "store/document.h"

namespace store {

/// `now` everywhere: the stamp of the change, "2026-11-17T09:05:00Z".
base::Result<Document> create_document(Database&, Kind, const std::optional<std::string>& id,
                                       const Draft&, const Act&, const std::string& now);
base::Result<Changed> replace_document(Database&, const Ref&, std::int64_t expected, const Draft&,
                                       const Act&, const std::string& now);
base::Result<Changed> remove_document(Database&, const Ref&, std::int64_t expected, const Act&,
                                      const std::string& now);
base::Result<Changed> restore_document(Database&, const Ref&, std::int64_t version,
                                       std::int64_t expected, const Act&, const std::string& now);
base::Result<bool> erase_document(Database&, const Ref&);

}  // namespace store
