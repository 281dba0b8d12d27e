#include "serve/api_json.h"

#include <algorithm>
#include <charconv>
#include <cmath>

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

namespace {

bool whole(double number) { return std::floor(number) == number && std::abs(number) < 1e9; }

bool is_a(const Node& node, Shape shape) {
  switch (shape) {
    case Shape::kText:
      return node.kind == Node::Kind::kText;
    case Shape::kNumber:
      return node.kind == Node::Kind::kNumber;
    case Shape::kWhole:
      return node.kind == Node::Kind::kNumber && whole(node.number);
    case Shape::kFlag:
      return node.kind == Node::Kind::kBool;
    case Shape::kObject:
      return node.kind == Node::Kind::kObject;
    case Shape::kList:
      return node.kind == Node::Kind::kList;
    case Shape::kTexts:
      return node.kind == Node::Kind::kList &&
             std::all_of(node.items.begin(), node.items.end(),
                         [](const Node& each) { return each.kind == Node::Kind::kText; });
  }
  return false;
}

const char* words(Shape shape) {
  switch (shape) {
    case Shape::kText:
      return "a text";
    case Shape::kNumber:
      return "a number";
    case Shape::kWhole:
      return "a whole number";
    case Shape::kFlag:
      return "true or false";
    case Shape::kObject:
      return "an object";
    case Shape::kList:
      return "a list";
    case Shape::kTexts:
      return "a list of texts";
  }
  return "something else";
}

}  // namespace

base::Problems misshapen(const Node& node, std::initializer_list<Member> known,
                         const std::string& below) {
  base::Problems out;
  const auto place = [&](std::string_view key) { return kitchen::below(below, key); };
  for (std::size_t i = 0; i < node.keys.size(); ++i) {
    const std::string& key = node.keys[i];
    const auto member = std::find_if(known.begin(), known.end(),
                                     [&](const Member& each) { return each.key == key; });
    if (member == known.end())
      out.push_back(
          {"request.unknown_member", "", place(key),
           base::say("The request has a member ", base::in_quotes(key), " that is not known."),
           "Leave it out."});
    else if (!is_a(node.items[i], member->shape))
      out.push_back({"request.wrong_kind", "", place(key),
                     base::say(base::in_quotes(key), " is not ", words(member->shape), "."),
                     base::say("Send ", words(member->shape), ".")});
  }
  for (const Member& each : known) {
    if (each.needed && node.find(each.key) == nullptr)
      out.push_back({"request.missing_member", "", place(each.key),
                     base::say(base::in_quotes(each.key), " is missing."),
                     base::say("Send it: ", words(each.shape), ".")});
  }
  return out;
}

base::Problems misshapen(const Node& node, std::initializer_list<Member> known) {
  return misshapen(node, known, "");
}

std::optional<int> whole_in(const Node& node, std::string_view key) {
  const auto number = number_in(node, key);
  return number && whole(*number) ? std::optional(static_cast<int>(*number)) : std::nullopt;
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

namespace {

void put_line(std::string& out, const Node& node) {
  switch (node.kind) {
    case Node::Kind::kNull:
      out += "null";
      return;
    case Node::Kind::kBool:
      out += node.flag ? "true" : "false";
      return;
    case Node::Kind::kNumber:
      out += base::number_text(node.number);
      return;
    case Node::Kind::kText:
      out += http::json_quoted(node.text);
      return;
    case Node::Kind::kList:
    case Node::Kind::kObject:
      break;
  }
  const bool object = node.kind == Node::Kind::kObject;
  out += object ? '{' : '[';
  for (std::size_t i = 0; i < node.items.size(); ++i) {
    if (i > 0) out += ',';
    if (object) out += http::json_quoted(node.keys[i]) + ':';
    put_line(out, node.items[i]);
  }
  out += object ? '}' : ']';
}

}  // namespace

std::string json_line(const Node& node) {
  std::string out;
  put_line(out, node);
  return out;
}

http::Response answer(const Node& node, int status) { return http::json(status, json_line(node)); }

std::string json_object(const std::vector<std::pair<std::string, std::string>>& members) {
  std::string out = "{";
  for (const auto& [key, value] : members) {
    if (out.size() > 1) out += ", ";
    out += http::json_quoted(key) + ": " + value;
  }
  return out + "}";
}

http::Response answer_raw(const std::vector<std::pair<std::string, std::string>>& members,
                          int status) {
  return http::json(status, json_object(members) + "\n");
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

http::Response refuse_new(const base::Problems& problems) {
  http::Response response = refuse(problems);
  if (response.status == 404 || response.status == 409) response.status = 400;
  return response;
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

std::optional<std::int64_t> version_in(std::string_view text) {
  std::int64_t version = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), version);
  if (error == std::errc() && end == text.data() + text.size() && version > 0) return version;
  return std::nullopt;
}

base::Result<std::int64_t> version_seen(const http::Request& request) {
  const std::string* header = request.header("If-Match");
  std::string_view text = header == nullptr ? std::string_view() : std::string_view(*header);
  if (text.size() >= 2 && text.front() == '"' && text.back() == '"')
    text = text.substr(1, text.size() - 2);
  if (const auto version = version_in(text)) return *version;
  return base::Problem{"request.no_version", "", "",
                       "The change does not say which version it was made to.",
                       "Load the page again, then change it."};
}

}  // namespace serve
