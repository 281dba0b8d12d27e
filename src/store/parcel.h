// A zip understood: drafts of documents by their names. Inside the store only.
#pragma once

#include <map>
#include <string_view>

#include "base/problem.h"
#include "store/document.h"
#include "store/draft.h"

namespace store {

struct Parcel {
  std::map<Ref, Draft> drafts;
  std::map<Ref, ReadyDraft> ready;  ///< the same, checked
  bool has_contents = false;        ///< else nothing is known of links
};

/// Errors: all of preview_import but store.*, and those of a draft with the file's name; all at
/// once, up to a hundred.
base::Result<Parcel> open_parcel(std::string_view zip);

}  // namespace store
