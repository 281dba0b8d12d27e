// Documents in their tables: what is read. Inside the store only; errors are thrown (database.h).
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "store/database.h"
#include "store/document.h"

namespace store {

std::vector<Summary> list_documents(Database&, Kind, const Filter&);
std::vector<std::string> days_of(Database&, Kind, const Filter&);
std::vector<std::pair<std::string, std::int64_t>> versions_of(Database&, Kind);
std::optional<Document> find_document(Database&, Kind, const std::string& id);
std::optional<Document> find_version(Database&, Kind, const std::string& id, std::int64_t version);
std::vector<Change> history_of(Database&, Kind, const std::string& id);
std::vector<Summary> users_of(Database&, Kind, const std::string& id);
/// By the fingerprint of their canonical text.
std::vector<Summary> marked(Database&, Kind, const std::string& mark);

/// A title as lists look for it: its folded words, each with a space before it.
std::string search_text(const std::string& title);
/// "dish/fruit-scones room/food-room-1", sorted, none twice; and back.
std::string links_text(std::vector<Ref> links);
std::vector<Ref> links_in(const std::string& text);

}  // namespace store
