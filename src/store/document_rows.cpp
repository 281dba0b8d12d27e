#include "store/document_rows.h"

#include <algorithm>
#include <stdexcept>

#include "base/folding.h"
#include "base/text.h"

namespace store {
namespace {

Kind kind_in(const std::string& name) {
  const auto kind = kind_named(name);
  if (!kind) throw std::logic_error("the database holds the unknown kind " + name);
  return *kind;
}

constexpr const char* kSummaryColumns =
    "d.kind, d.id, d.version, d.title, d.day, d.changed_at, d.changed_by, d.deleted";

std::vector<Summary> summaries(Statement& statement) {
  std::vector<Summary> found;
  while (statement.step()) {
    Summary one;
    one.kind = kind_in(statement.column<std::string>(0));
    one.id = statement.column<std::string>(1);
    one.version = statement.column<std::int64_t>(2);
    one.title = statement.column<std::string>(3);
    one.day = statement.column<std::optional<std::string>>(4);
    one.changed_at = statement.column<std::string>(5);
    one.changed_by = statement.column<std::string>(6);
    one.deleted = statement.column<bool>(7);
    found.push_back(std::move(one));
  }
  return found;
}

std::optional<Document> document_in(Statement& statement) {
  if (!statement.step()) return std::nullopt;
  Document one;
  one.kind = kind_in(statement.column<std::string>(0));
  one.id = statement.column<std::string>(1);
  one.version = statement.column<std::int64_t>(2);
  one.title = statement.column<std::string>(3);
  one.day = statement.column<std::optional<std::string>>(4);
  one.changed_at = statement.column<std::string>(5);
  one.changed_by = statement.column<std::string>(6);
  one.deleted = statement.column<bool>(7);
  one.links = links_in(statement.column<std::string>(8));
  one.body = statement.column<std::string>(9);
  return one;
}

}  // namespace

std::string search_text(const std::string& title) {
  std::string out;
  for (const std::string& word : base::words_of(base::folded(title))) out += " " + word;
  return out;
}

std::string links_text(std::vector<Ref> links) {
  std::sort(links.begin(), links.end());
  links.erase(std::unique(links.begin(), links.end()), links.end());
  std::string out;
  for (const Ref& link : links) {
    if (!out.empty()) out += ' ';
    out += base::say(name_of(link.kind), "/", link.id);
  }
  return out;
}

std::vector<Ref> links_in(const std::string& text) {
  std::vector<Ref> links;
  for (const std::string& part : base::parts(text, ' ')) {
    const auto slash = part.find('/');
    if (slash == std::string::npos) throw std::logic_error("a link without a kind: " + part);
    links.push_back({kind_in(part.substr(0, slash)), part.substr(slash + 1)});
  }
  return links;
}

std::vector<Summary> list_documents(Database& database, Kind kind, const Filter& filter) {
  constexpr std::size_t kMostWords = 8;
  auto words = base::words_of(base::folded(filter.text));
  if (words.size() > kMostWords) words.resize(kMostWords);
  std::string sql = base::say("select ", kSummaryColumns, " from documents d");
  if (filter.uses) {
    sql +=
        " join document_links l on l.from_kind = d.kind and l.from_id = d.id"
        " and l.to_kind = $uses_kind and l.to_id = $uses_id";
  }
  sql += " where d.kind = $kind and d.deleted = $removed";
  if (filter.from) sql += " and d.day >= $from";
  if (filter.to) sql += " and d.day <= $to";
  for (std::size_t i = 0; i < words.size(); ++i) {
    sql += base::say(" and d.search like $word", i);  // a word has no sign that `like` knows
  }
  sql += " order by coalesce(d.day, ''), d.search, d.id limit $most";
  Statement statement(database, sql);
  statement.bind("$kind", name_of(kind)).bind("$removed", filter.removed);
  statement.bind("$most", static_cast<std::int64_t>(filter.most));
  if (filter.uses) {
    statement.bind("$uses_kind", name_of(filter.uses->kind)).bind("$uses_id", filter.uses->id);
  }
  if (filter.from) statement.bind("$from", *filter.from);
  if (filter.to) statement.bind("$to", *filter.to);
  for (std::size_t i = 0; i < words.size(); ++i) {
    statement.bind(base::say("$word", i).c_str(), "% " + words[i] + "%");
  }
  return summaries(statement);
}

std::vector<std::string> days_of(Database& database, Kind kind, const Filter& filter) {
  std::string sql =
      "select distinct day from documents where kind = $kind and deleted = 0 and day is not null";
  if (filter.from) sql += " and day >= $from";
  if (filter.to) sql += " and day <= $to";
  Statement statement(database, sql + " order by day");
  statement.bind("$kind", name_of(kind));
  if (filter.from) statement.bind("$from", *filter.from);
  if (filter.to) statement.bind("$to", *filter.to);
  std::vector<std::string> out;
  while (statement.step()) out.push_back(statement.column<std::string>(0));
  return out;
}

std::vector<std::pair<std::string, std::int64_t>> versions_of(Database& database, Kind kind) {
  Statement statement(database,
                      "select id, version from documents where kind = $1 and deleted = 0");
  statement.bind("$1", name_of(kind));
  std::vector<std::pair<std::string, std::int64_t>> out;
  while (statement.step())
    out.emplace_back(statement.column<std::string>(0), statement.column<std::int64_t>(1));
  return out;
}

std::optional<Document> find_document(Database& database, Kind kind, const std::string& id) {
  Statement statement(database,
                      "select d.kind, d.id, d.version, d.title, d.day, d.changed_at, d.changed_by,"
                      " d.deleted, v.links, v.body from documents d join document_versions v"
                      " on v.kind = d.kind and v.id = d.id and v.version = d.version"
                      " where d.kind = $1 and d.id = $2");
  statement.bind("$1", name_of(kind)).bind("$2", id);
  return document_in(statement);
}

std::optional<Document> find_version(Database& database, Kind kind, const std::string& id,
                                     std::int64_t version) {
  Statement statement(
      database,
      "select kind, id, version, title, day, changed_at, changed_by, deleted, links,"
      " body from document_versions where kind = $1 and id = $2 and version = $3");
  statement.bind("$1", name_of(kind)).bind("$2", id).bind("$3", version);
  return document_in(statement);
}

std::vector<Change> history_of(Database& database, Kind kind, const std::string& id) {
  Statement statement(database,
                      "select version, changed_at, changed_by, what, title, deleted"
                      " from document_versions where kind = $1 and id = $2 order by version desc");
  statement.bind("$1", name_of(kind)).bind("$2", id);
  std::vector<Change> found;
  while (statement.step()) {
    found.push_back({statement.column<std::int64_t>(0), statement.column<std::string>(1),
                     statement.column<std::string>(2), statement.column<std::string>(3),
                     statement.column<std::string>(4), statement.column<bool>(5)});
  }
  return found;
}

std::vector<Summary> users_of(Database& database, Kind kind, const std::string& id) {
  Statement statement(database, base::say("select ", kSummaryColumns,
                                          " from documents d join document_links l"
                                          " on l.from_kind = d.kind and l.from_id = d.id"
                                          " where l.to_kind = $1 and l.to_id = $2 and d.deleted = 0"
                                          " order by d.kind, coalesce(d.day, ''), d.search, d.id"));
  statement.bind("$1", name_of(kind)).bind("$2", id);
  return summaries(statement);
}

std::vector<Summary> marked(Database& database, Kind kind, const std::string& mark) {
  Statement statement(database, base::say("select ", kSummaryColumns,
                                          " from documents d where d.kind = $1 and d.mark = $2"
                                          " and d.deleted = 0 order by d.search, d.id"));
  statement.bind("$1", name_of(kind)).bind("$2", mark);
  return summaries(statement);
}

}  // namespace store
