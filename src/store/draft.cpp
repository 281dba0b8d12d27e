#include "store/draft.h"

#include "base/clock.h"
#include "base/text.h"
#include "store/json_text.h"

namespace store {

using base::Problem;
using base::say;

namespace {

/// One line of at most kLongestTitle letters.
std::string one_line(std::string_view text) {
  std::string out = base::first_letters(base::trimmed(text), kLongestTitle);
  for (char& c : out) {
    if (static_cast<unsigned char>(c) < 0x20 || c == 0x7F) c = ' ';
  }
  return base::trimmed(out);
}

std::string title_of(const Draft& draft, const JsonBody& body) {
  if (!base::not_utf8(draft.title)) {
    if (std::string given = one_line(draft.title); !given.empty()) return given;
  }
  for (const char* member : {"title", "name", "school"}) {
    const auto found = body.texts.find(member);
    if (found == body.texts.end()) continue;
    if (std::string title = one_line(found->second); !title.empty()) return title;
  }
  return "";
}

}  // namespace

Problem bad_id(const std::string& id) {
  return {"store.bad_id", "", "",
          say(base::in_quotes(id), " cannot be the short name of a document."),
          "Use up to 80 small letters, digits and hyphens between them, like fruit-scones."};
}

base::Result<ReadyDraft> read_draft(Kind kind, const Draft& draft) {
  auto read = read_body(draft.body);
  if (!read) return read.problems();
  JsonBody body = std::move(read).value();
  base::Problems problems;
  ReadyDraft ready;
  if (const auto said = body.texts.find("kind");
      said != body.texts.end() && said->second != name_of(kind)) {
    problems.push_back({"store.kind_differs", "", "/kind",
                        say("This says it is of the kind ", base::in_quotes(said->second),
                            ", but it was to be kept as a ", words_of(kind), "."),
                        "Keep it as what it is, or choose another file."});
  }
  ready.title = title_of(draft, body);
  if (ready.title.empty()) {
    problems.push_back(
        {"store.no_title", "", "/title",
         say("This ", words_of(kind), " has no name, so nobody could find it again."),
         "Give it a name."});
  }
  if (draft.day) {
    ready.day = draft.day;
  } else if (const auto date = body.texts.find("date"); date != body.texts.end()) {
    ready.day = date->second;
  }
  if (ready.day && !base::date_in(*ready.day)) {
    problems.push_back({"store.day", "", "/date",
                        say(base::in_quotes(*ready.day), " is not a day of the calendar."),
                        "Write the day as year, month, day: 2026-11-17."});
  }
  for (const Ref& link : draft.links) {
    if (!good_id(link.id)) problems.push_back(bad_id(link.id));
  }
  if (!problems.empty()) return problems;
  ready.links = draft.links;
  ready.body = std::move(body.compact);
  ready.canonical = std::move(body.canonical);
  return ready;
}

}  // namespace store
