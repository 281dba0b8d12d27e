#include "serve/api_json.h"

#include <algorithm>
#include <charconv>

#include "base/text.h"

namespace serve {

base::Result<Node> body_of(const http::Request& request) {
  base::Problems problems;
  auto node = kitchen::parse_json(request.body, "", problems);
  if (!node) return problems;
  if (node->kind != Node::Kind::kObject)
    return base::Problem{"request.body", "", "", "The request does not hold an object.",
                         "Send a JSON object."};
  return std::move(*node);
}

base::Problems unknown_members(const Node& node, std::initializer_list<std::string_view> known) {
  base::Problems out;
  for (const std::string& key : node.keys) {
    if (std::find(known.begin(), known.end(), key) == known.end())
      out.push_back(
          {"request.unknown_member", "", "/" + key,
           base::say("The request has a member ", base::quoted(key), " that is not known."),
           "Leave it out."});
  }
  return out;
}

std::string text_in(const Node& node, std::string_view key) {
  const Node* found = node.find(key);
  return found != nullptr && found->kind == Node::Kind::kText ? found->text : std::string();
}

std::optional<double> number_in(const Node& node, std::string_view key) {
  const Node* found = node.find(key);
  return found != nullptr && found->kind == Node::Kind::kNumber ? std::optional(found->number)
                                                                : std::nullopt;
}

bool flag_in(const Node& node, std::string_view key) {
  const Node* found = node.find(key);
  return found != nullptr && found->kind == Node::Kind::kBool && found->flag;
}

std::vector<std::string> texts_in(const Node& node, std::string_view key) {
  std::vector<std::string> out;
  if (const Node* list = node.find(key); list != nullptr && list->kind == Node::Kind::kList) {
    for (const Node& each : list->items) {
      if (each.kind == Node::Kind::kText) out.push_back(each.text);
    }
  }
  return out;
}

Node texts(const std::vector<std::string>& all) {
  Node list = Node::list();
  for (const std::string& each : all) list.add(Node::of(each));
  return list;
}

Node text_or_null(const std::optional<std::string>& text) {
  return text ? Node::of(*text) : Node();
}

Node problems_node(const base::Problems& problems) {
  Node list = Node::list();
  for (const base::Problem& problem : problems) {
    Node& one = list.add(Node::object());
    one.set("code", Node::of(problem.code));
    one.set("message", Node::of(problem.message));
    one.set("remedy", Node::of(problem.remedy));
    one.set("where", Node::of(problem.where));
  }
  return list;
}

http::Response answer(const Node& node, int status) {
  return http::json(status, kitchen::json_text(node));
}

http::Response answer_raw(const std::vector<std::pair<std::string, std::string>>& members,
                          int status) {
  std::string out = "{";
  for (const auto& [key, value] : members) {
    if (out.size() > 1) out += ", ";
    out += http::json_quoted(key) + ": " + value;
  }
  return http::json(status, out + "}\n");
}

http::Response refuse(const base::Problems& problems) {
  const std::string& code = problems.front().code;
  const auto is = [&](std::string_view other) { return code == other; };
  int status = 400;
  if (is("store.not_found") || is("store.no_version")) status = 404;
  if (is("store.in_use") || is("store.id_taken") || is("store.name_taken") ||
      is("store.import_stale"))
    status = 409;
  if (is("request.no_version")) status = 428;
  if (is("store.disk_full") || is("store.locked") || is("store.read_only")) status = 503;
  if (is("store.damaged") || is("store.failed")) status = 500;
  return http::refused(status, problems);
}

Node document_node(const store::Document& document, const std::string& changed_by) {
  Node node = Node::object();
  node.set("kind", Node::of(store::name_of(document.kind)));
  node.set("id", Node::of(document.id));
  node.set("title", Node::of(document.title));
  node.set("version", Node::of(static_cast<double>(document.version)));
  node.set("changed_at", Node::of(document.changed_at));
  node.set("changed_by", Node::of(changed_by));
  base::Problems broken;
  auto body = kitchen::parse_json(document.body, "", broken);
  node.set("body", body ? std::move(*body) : Node::object());
  return node;
}

std::string etag(std::int64_t version) { return base::say("\"", version, "\""); }

base::Result<std::int64_t> version_seen(const http::Request& request) {
  const std::string* header = request.header("If-Match");
  std::string_view text = header == nullptr ? std::string_view() : std::string_view(*header);
  if (text.size() >= 2 && text.front() == '"' && text.back() == '"')
    text = text.substr(1, text.size() - 2);
  std::int64_t version = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), version);
  if (error == std::errc() && end == text.data() + text.size() && version > 0) return version;
  return base::Problem{"request.no_version", "", "",
                       "The change does not say which version it was made to.",
                       "Load the page again, then change it."};
}

}  // namespace serve
