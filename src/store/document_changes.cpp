#include "store/document_changes.h"

#include <algorithm>
#include <set>

#include "base/text.h"
#include "store/document_rows.h"
#include "store/draft.h"
#include "store/json_text.h"
#include "store/stamp.h"

namespace store {

using base::Problem;
using base::Problems;
using base::Result;
using base::say;

namespace {

constexpr std::size_t kLongestWhat = 200;  // letters

Problem not_found(const Ref& ref) {
  return {"store.not_found", "", "",
          say("There is no ", words_of(ref.kind), " under the name ", base::in_quotes(ref.id), "."),
          "Look for it in the list; somebody may have given it another name."};
}

std::string named(const Summary& one) {
  std::string text = say("the ", words_of(one.kind), " ", base::in_quotes(one.title));
  if (one.day) text += say(" (", *one.day, ")");
  return text;
}

Problem in_use(const Document& document, const std::vector<Summary>& users) {
  constexpr std::size_t kMostNamed = 5;
  std::vector<std::string> names;
  for (std::size_t i = 0; i < users.size() && i < kMostNamed; ++i) names.push_back(named(users[i]));
  if (users.size() > kMostNamed) {
    names.push_back(
        base::counted(static_cast<long long>(users.size() - kMostNamed), "other", "others"));
  }
  return {"store.in_use", "", "",
          say("The ", words_of(document.kind), " ", base::in_quotes(document.title), " is used by ",
              base::joined(names), "."),
          say("Take it out of ", users.size() == 1 ? "that one" : "those", " first, or keep it.")};
}

Problems missing_links(Database& database, const Ref& from, const std::vector<Ref>& links) {
  Problems problems;
  for (const Ref& link : links) {
    if (link == from) continue;
    const auto found = find_document(database, link.kind, link.id);
    if (found && !found->deleted) continue;
    if (found) {
      problems.push_back({"store.link_missing", "", "",
                          say("The ", words_of(link.kind), " ", base::in_quotes(found->title),
                              " that is used here was removed."),
                          say("Bring that ", words_of(link.kind), " back, or choose another.")});
    } else {
      problems.push_back(
          {"store.link_missing", "", "",
           say("There is no ", words_of(link.kind), " under the name ", base::in_quotes(link.id),
               ", and it is used here."),
           say("Choose another ", words_of(link.kind), ", or make that one first.")});
    }
  }
  return problems;
}

/// One version, as it is written.
struct Entry {
  Ref ref;
  std::int64_t version = 1;
  ReadyDraft draft;
  Act act;
  std::string now;
  bool deleted = false;
};

Document document_of(const Entry& entry) {
  Document out;
  out.kind = entry.ref.kind;
  out.id = entry.ref.id;
  out.version = entry.version;
  out.body = entry.draft.body;
  out.title = entry.draft.title;
  out.day = entry.draft.day;
  out.changed_at = entry.now;
  out.changed_by = entry.act.who;
  out.deleted = entry.deleted;
  out.links = links_in(links_text(entry.draft.links));
  return out;
}

void write_head(Database& database, const Entry& entry) {
  Statement(database,
            "insert into documents (kind, id, version, title, search, day, changed_at, changed_by,"
            " deleted, mark) values ($kind, $id, $version, $title, $search, $day, $at, $by,"
            " $deleted, $mark) on conflict (kind, id) do update set version = excluded.version,"
            " title = excluded.title, search = excluded.search, day = excluded.day,"
            " changed_at = excluded.changed_at, changed_by = excluded.changed_by,"
            " deleted = excluded.deleted, mark = excluded.mark")
      .bind("$kind", name_of(entry.ref.kind))
      .bind("$id", entry.ref.id)
      .bind("$version", entry.version)
      .bind("$title", entry.draft.title)
      .bind("$search", search_text(entry.draft.title))
      .bind("$day", entry.draft.day)
      .bind("$at", entry.now)
      .bind("$by", entry.act.who)
      .bind("$deleted", entry.deleted)
      .bind("$mark", fingerprint(entry.draft.canonical))
      .run();
}

void write_version(Database& database, const Entry& entry) {
  Statement(database,
            "insert into document_versions (kind, id, version, title, day, changed_at, changed_by,"
            " what, deleted, links, body) values ($kind, $id, $version, $title, $day, $at, $by,"
            " $what, $deleted, $links, $body)")
      .bind("$kind", name_of(entry.ref.kind))
      .bind("$id", entry.ref.id)
      .bind("$version", entry.version)
      .bind("$title", entry.draft.title)
      .bind("$day", entry.draft.day)
      .bind("$at", entry.now)
      .bind("$by", entry.act.who)
      .bind("$what",
            base::not_utf8(entry.act.what) ? "" : base::first_letters(entry.act.what, kLongestWhat))
      .bind("$deleted", entry.deleted)
      .bind("$links", links_text(entry.draft.links))
      .bind("$body", entry.draft.body)
      .run();
}

void write_links(Database& database, const Entry& entry) {
  Statement(database, "delete from document_links where from_kind = $1 and from_id = $2")
      .bind("$1", name_of(entry.ref.kind))
      .bind("$2", entry.ref.id)
      .run();
  if (entry.deleted) return;
  Statement insert(database,
                   "insert into document_links (from_kind, from_id, to_kind, to_id)"
                   " values ($1, $2, $3, $4)");
  const std::set<Ref> links(entry.draft.links.begin(), entry.draft.links.end());
  for (const Ref& link : links) {
    if (link == entry.ref) continue;  // a document that uses itself could never be removed
    insert.bind("$1", name_of(entry.ref.kind))
        .bind("$2", entry.ref.id)
        .bind("$3", name_of(link.kind))
        .bind("$4", link.id)
        .run();
  }
}

Document write(Database& database, const Entry& entry) {
  write_head(database, entry);
  write_version(database, entry);
  write_links(database, entry);
  return document_of(entry);
}

bool taken(Database& database, const Ref& ref) {
  Statement statement(database, "select 1 from documents where kind = $1 and id = $2");
  return statement.bind("$1", name_of(ref.kind)).bind("$2", ref.id).step();
}

/// "fruit-scones", or with the first number that is free.
std::string free_id(Database& database, Kind kind, const std::string& title) {
  constexpr std::int64_t kTries = 20;
  const std::string wanted = id_from(title);
  std::string id = wanted;
  for (std::int64_t number = 2; taken(database, {kind, id}); ++number) {
    if (number == kTries) {  // a title of hundreds: begin behind them instead of walking past each
      Statement count(database, "select count(*) from documents where kind = $1 and id like $2");
      count.bind("$1", name_of(kind)).bind("$2", wanted + "-%").step();
      number = std::max(number, count.column<std::int64_t>(0));
    }
    id = say(wanted, "-", number);
  }
  return id;
}

/// The document as it stands if it is the version expected, else why not.
struct Expected {
  std::optional<Document> current;
  bool as_expected = false;
};

Expected look_for(Database& database, const Ref& ref, std::int64_t expected) {
  Expected out;
  out.current = find_document(database, ref.kind, ref.id);
  out.as_expected = out.current && out.current->version == expected;
  return out;
}

ReadyDraft draft_of(const Document& document) {
  ReadyDraft draft;
  draft.body = document.body;
  // Bodies were checked when they came in.
  draft.canonical = canonical_json(document.body).value();
  draft.title = document.title;
  draft.day = document.day;
  draft.links = document.links;
  return draft;
}

}  // namespace

Result<Document> create_document(Database& database, Kind kind,
                                 const std::optional<std::string>& id, const Draft& draft,
                                 const Act& act, const std::string& now) {
  auto read = read_draft(kind, draft);
  Problems problems = read ? Problems{} : read.problems();
  if (id && !good_id(*id)) problems.push_back(bad_id(*id));
  if (!problems.empty()) return problems;
  Entry entry{{kind, ""}, 1, std::move(read).value(), act, now};
  entry.ref.id = id ? *id : free_id(database, kind, entry.draft.title);
  if (const auto before = find_document(database, kind, entry.ref.id)) {
    if (!before->deleted) {
      return Problem{
          "store.id_taken", "", "",
          say("There is a ", words_of(kind), " under the name ", base::in_quotes(entry.ref.id),
              " already: ", base::in_quotes(before->title), "."),
          "Choose another name, or change the one that is there."};
    }
    entry.version = before->version + 1;
  }
  problems = missing_links(database, entry.ref, entry.draft.links);
  if (!problems.empty()) return problems;
  return write(database, entry);
}

Result<Changed> replace_document(Database& database, const Ref& ref, std::int64_t expected,
                                 const Draft& draft, const Act& act, const std::string& now) {
  auto read = read_draft(ref.kind, draft);
  if (!read) return read.problems();
  Expected found = look_for(database, ref, expected);
  if (!found.current) return not_found(ref);
  if (!found.as_expected || found.current->deleted) return Changed{Clash{*found.current}};
  Entry entry{ref, expected + 1, std::move(read).value(), act, now};
  if (auto problems = missing_links(database, ref, entry.draft.links); !problems.empty()) {
    return problems;
  }
  return Changed{write(database, entry)};
}

Result<Changed> remove_document(Database& database, const Ref& ref, std::int64_t expected,
                                const Act& act, const std::string& now) {
  Expected found = look_for(database, ref, expected);
  if (!found.current) return not_found(ref);
  if (!found.as_expected || found.current->deleted) return Changed{Clash{*found.current}};
  const auto users = users_of(database, ref.kind, ref.id);
  if (!users.empty()) return in_use(*found.current, users);
  return Changed{write(database, {ref, expected + 1, draft_of(*found.current), act, now, true})};
}

Result<Changed> restore_document(Database& database, const Ref& ref, std::int64_t version,
                                 std::int64_t expected, const Act& act, const std::string& now) {
  Expected found = look_for(database, ref, expected);
  if (!found.current) return not_found(ref);
  if (!found.as_expected) return Changed{Clash{*found.current}};
  const auto wanted = find_version(database, ref.kind, ref.id, version);
  if (!wanted || wanted->deleted) {
    return Problem{
        "store.no_version", "", "",
        wanted ? say("With version ", version, " of ", base::in_quotes(found.current->title),
                     " it was removed; there is nothing to go back to in it.")
               : say("There is no version ", version, " of ", base::in_quotes(found.current->title),
                     "."),
        "Choose another line of its history."};
  }
  Entry entry{ref, expected + 1, draft_of(*wanted), act, now};
  if (auto problems = missing_links(database, ref, entry.draft.links); !problems.empty()) {
    return problems;
  }
  return Changed{write(database, entry)};
}

Result<bool> erase_document(Database& database, const Ref& ref) {
  const auto found = find_document(database, ref.kind, ref.id);
  if (!found) return false;
  const auto users = users_of(database, ref.kind, ref.id);
  if (!users.empty()) return in_use(*found, users);
  Statement(database, "delete from documents where kind = $1 and id = $2")
      .bind("$1", name_of(ref.kind))
      .bind("$2", ref.id)
      .run();
  return true;
}

}  // namespace store
