// What the store keeps: documents. Every noun of a school is one JSON text of a kind.
//
// "Fruit scones" is a document of the kind dish with the id "fruit-scones"; changing its minutes
// makes version 2, and version 1 can still be read. What a text means is not known here: kitchen
// and its neighbours read it.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace store {

/// The closed list of kinds. A new one is added here and in kKinds, nowhere else; the database
/// learns it when it is opened.
enum class Kind : std::uint8_t {
  kSchool,      ///< name, bells, terms
  kClass,       ///< pupils of a teaching group; may hold health data
  kRoom,        ///< a food room
  kHouseRules,  ///< the school's own switches
  kDish,        ///< what is cooked
  kLesson,      ///< dishes + room + class + bell, on a day
  kWeek,        ///< lessons that are ordered for together
  kTable,       ///< a CSV text in its JSON coat: prices, stock, foods, labels
  kPlan,        ///< a computed answer for one version of a lesson
  kRota,        ///< who does what by turns
  kScheme,      ///< a scheme of work: the dishes of a year in order
  kRecord,      ///< what was read, tasted, marked or put right
};

struct KindName {
  Kind kind;
  std::string_view name;   ///< in files, addresses and the database
  std::string_view words;  ///< on screens: "the house rules"
};

inline constexpr std::array<KindName, 12> kKinds{{
    {Kind::kSchool, "school", "school"},
    {Kind::kClass, "class", "class"},
    {Kind::kRoom, "room", "room"},
    {Kind::kHouseRules, "house_rules", "house rules"},
    {Kind::kDish, "dish", "dish"},
    {Kind::kLesson, "lesson", "lesson"},
    {Kind::kWeek, "week", "week"},
    {Kind::kTable, "table", "table"},
    {Kind::kPlan, "plan", "plan"},
    {Kind::kRota, "rota", "rota"},
    {Kind::kScheme, "scheme", "scheme of work"},
    {Kind::kRecord, "record", "record"},
}};

std::string_view name_of(Kind);   ///< "house_rules"
std::string_view words_of(Kind);  ///< "house rules"
std::optional<Kind> kind_named(std::string_view name);

/// Which document: "dish/fruit-scones".
struct Ref {
  Kind kind = Kind::kDish;
  std::string id;
  friend auto operator<=>(const Ref&, const Ref&) = default;
};

/// A word of small letters, digits and hyphens: 1 to 80 letters, no hyphen at the ends or two in a
/// row.
bool good_id(std::string_view);
/// "Crème brûlée, for 7B" -> "creme-brulee-for-7b"; "untitled" when no letter is left.
std::string id_from(std::string_view title);

/// A document as it stands, or as a version of it stood.
struct Document {
  Kind kind = Kind::kDish;
  std::string id;
  std::int64_t version = 0;        ///< from 1, one more with every change, also with a removal
  std::string body;                ///< JSON text on one line, members in the order written
  std::string title;               ///< never empty
  std::optional<std::string> day;  ///< "2026-11-17": the day of a lesson, rota or plan
  std::string changed_at;          ///< "2026-11-17T09:05:00Z", universal time
  std::string changed_by;          ///< id of a user, or empty: nobody was signed in
  bool deleted = false;
  std::vector<Ref> links;  ///< what it uses, in order of kind and id

  friend bool operator==(const Document&, const Document&) = default;
};

/// A document in a list: all but its body and links.
struct Summary {
  Kind kind = Kind::kDish;
  std::string id;
  std::int64_t version = 0;
  std::string title;
  std::optional<std::string> day;
  std::string changed_at;
  std::string changed_by;
  bool deleted = false;

  friend bool operator==(const Summary&, const Summary&) = default;
};

/// One line of a document's history.
struct Change {
  std::int64_t version = 0;
  std::string at;    ///< universal time
  std::string who;   ///< id of a user, or empty
  std::string what;  ///< "Made the simmering five minutes longer"
  std::string title;
  bool deleted = false;  ///< this change removed the document

  friend bool operator==(const Change&, const Change&) = default;
};

/// Who changes something, and what they did in a few words. It stands in the history.
struct Act {
  std::string who;   ///< id of a user, or empty
  std::string what;  ///< up to 200 letters; may be empty
};

inline constexpr std::size_t kLargestBody = 8U << 20U;  ///< bytes; a day's answer is a tenth of it

/// What a caller hands in.
/// body:  a JSON object. If it has a member "kind", that must be the document's kind.
/// links: the documents it uses; each must exist and not be removed.
/// title: if empty, the body's "title", else its "name", else its "school".
/// day:   if empty, the body's "date".
struct Draft {
  std::string body;
  std::vector<Ref> links;
  std::string title;
  std::optional<std::string> day;
};

/// Somebody else was quicker: the version expected is not the current one. Nothing was written.
struct Clash {
  Document current;
};

/// What a change to an existing document comes to.
using Changed = std::variant<Document, Clash>;

/// What a list is asked for; all that are given must hold.
struct Filter {
  std::optional<std::string> from;  ///< first day, ISO; documents without a day are left out
  std::optional<std::string> to;    ///< last day, ISO, inclusive
  std::string text;                 ///< each word of it begins a word of the title, accents aside
  std::optional<Ref> uses;          ///< only those that link to this document
  bool removed = false;             ///< the removed ones instead of those that stand
  std::size_t most = 10'000;
};

/// To know whether there is any.
inline Filter first_only() {
  Filter filter;
  filter.most = 1;
  return filter;
}

}  // namespace store
