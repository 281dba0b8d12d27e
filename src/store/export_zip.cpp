#include <algorithm>

#include "store/contents.h"
#include "store/exchange.h"
#include "store/json_text.h"
#include "store/zip_file.h"

namespace store {

using base::Result;

namespace {

/// All documents that stand, of the kinds asked for, in order of kind and id.
Result<std::vector<Document>> standing(Reader& reader, const std::vector<Kind>& kinds) {
  std::vector<Document> found;
  for (const KindName& each : kKinds) {
    const bool wanted = kinds.empty() ||
                        std::find(kinds.begin(), kinds.end(), each.kind) != kinds.end();
    if (!wanted) continue;
    Filter all;
    all.most = kMostEntries;
    auto summaries = reader.list(each.kind, all);
    if (!summaries) return summaries.problems();
    for (const Summary& summary : summaries.value()) {
      auto document = reader.get(summary.kind, summary.id);
      if (!document) return document.problems();
      if (document.value()) found.push_back(*std::move(document).value());
    }
  }
  const auto name = [](const Document& one) { return ref_text({one.kind, one.id}); };
  std::sort(found.begin(), found.end(),
            [&](const Document& a, const Document& b) { return name(a) < name(b); });
  return found;
}

}  // namespace

Result<std::string> export_zip(Repository& repository, const std::vector<Kind>& kinds) {
  std::vector<Document> documents;
  const auto seen = repository.look([&](Reader& reader) -> Result<bool> {
    auto found = standing(reader, kinds);
    if (!found) return found.problems();
    documents = std::move(found).value();
    return true;
  });
  if (!seen) return seen.problems();
  std::vector<Ref> here;
  here.reserve(documents.size());
  for (const Document& each : documents) here.push_back({each.kind, each.id});
  std::sort(here.begin(), here.end());

  std::vector<Listed> listed;
  std::vector<ZipEntry> entries(1);
  for (Document& each : documents) {
    Listed row{{each.kind, each.id}, each.title, each.day, {}};
    for (const Ref& link : each.links) {
      if (std::binary_search(here.begin(), here.end(), link)) row.links.push_back(link);
    }
    auto text = tidy_json(each.body);
    if (!text) return text.problems();
    // Laid out it may be many times as long; what is exported must come in again.
    const bool fits = text.value().size() <= kLargestBody;
    entries.push_back(
        {ref_text(row.ref) + ".json", fits ? std::move(text).value() : std::move(each.body)});
    listed.push_back(std::move(row));
  }
  entries.front() = {std::string(kContentsName), contents_text(listed)};
  return write_zip(entries);
}

}  // namespace store
