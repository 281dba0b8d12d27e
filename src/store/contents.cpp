#include "store/contents.h"

#include <nlohmann/json.hpp>

#include "base/text.h"
#include "store/json_text.h"

namespace store {

using base::Problem;
using nlohmann::ordered_json;

namespace {

Problem bad_contents(std::string_view why) {
  return {"zip.contents", std::string(kContentsName), "",
          base::say("The list in the zip, contents.json, cannot be used: ", why, "."),
          "Fetch the zip again. If you made it by hand, leave contents.json out."};
}

std::optional<std::string> text_at(const nlohmann::json& row, const char* member) {
  const auto found = row.find(member);
  if (found == row.end() || !found->is_string()) return std::nullopt;
  return found->get<std::string>();
}

std::optional<Listed> listed_in(const nlohmann::json& row) {
  if (!row.is_object()) return std::nullopt;
  const auto document = text_at(row, "document");
  const auto ref = document ? ref_in(*document) : std::nullopt;
  const auto title = text_at(row, "title");
  if (!ref || !title) return std::nullopt;
  Listed out{*ref, *title, text_at(row, "day"), {}};
  const auto links = row.find("uses");
  if (links == row.end()) return out;
  if (!links->is_array()) return std::nullopt;
  for (const auto& each : *links) {
    const auto link = each.is_string() ? ref_in(each.get<std::string>()) : std::nullopt;
    if (!link) return std::nullopt;
    out.links.push_back(*link);
  }
  return out;
}

}  // namespace

std::string ref_text(const Ref& ref) { return base::say(name_of(ref.kind), "/", ref.id); }

std::optional<Ref> ref_in(std::string_view text) {
  const auto slash = text.find('/');
  if (slash == std::string_view::npos) return std::nullopt;
  const auto kind = kind_named(text.substr(0, slash));
  const auto id = text.substr(slash + 1);
  if (!kind || !good_id(id)) return std::nullopt;
  return Ref{*kind, std::string(id)};
}

std::string contents_text(const std::vector<Listed>& listed) {
  ordered_json rows = ordered_json::array();
  for (const Listed& each : listed) {
    ordered_json row = {{"document", ref_text(each.ref)}, {"title", each.title}};
    if (each.day) row["day"] = *each.day;
    if (!each.links.empty()) {
      row["uses"] = ordered_json::array();
      for (const Ref& link : each.links) row["uses"].push_back(ref_text(link));
    }
    rows.push_back(std::move(row));
  }
  const ordered_json whole = {{"kind", "contents"}, {"version", 1}, {"documents", std::move(rows)}};
  return whole.dump(2) + "\n";
}

base::Result<std::vector<Listed>> read_contents(std::string_view text) {
  if (const auto checked = read_body(text); !checked) {
    return bad_contents(checked.problems().front().message);
  }
  const auto whole = nlohmann::json::parse(text, nullptr, false);
  const auto version = whole.find("version");
  if (text_at(whole, "kind") != "contents" || version == whole.end() || *version != 1) {
    return bad_contents("it is of another kind, or of a newer Benchbell");
  }
  const auto rows = whole.find("documents");
  if (rows == whole.end() || !rows->is_array()) return bad_contents("it lists no documents");
  std::vector<Listed> listed;
  for (const auto& row : *rows) {
    auto one = listed_in(row);
    if (!one) {
      return bad_contents(base::say("entry ", listed.size() + 1, " of its list is not complete"));
    }
    listed.push_back(*std::move(one));
  }
  return listed;
}

}  // namespace store
