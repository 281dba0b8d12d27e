// Everything the school keeps: lists, one document, its history, undo. The version read is the
// version written to, or both are shown.
#include <array>
#include <map>

#include "base/text.h"
#include "serve/api_json.h"
#include "serve/routes.h"

namespace serve {
namespace {

// Plans and records are made by the program, not typed in.
constexpr std::array kTyped{Kind::kSchool, Kind::kClass,  Kind::kRoom,  Kind::kHouseRules,
                            Kind::kDish,   Kind::kLesson, Kind::kTable, Kind::kScheme};

std::optional<Kind> kind_of(const Request& request) {
  const auto kind = store::kind_named(request.parameter("kind"));
  for (const Kind each : kTyped) {
    if (kind == each) return kind;
  }
  return std::nullopt;
}

/// What the school has agreed on is the head's to change; the cupboards are everybody's.
std::optional<Response> forbidden(const Who& asks, Kind kind) {
  if (asks.role == store::Role::kHead || kind == Kind::kTable) return std::nullopt;
  if (kind == Kind::kSchool || kind == Kind::kHouseRules)
    return http::refused(
        403, "documents.head_only",
        base::say("The ", store::words_of(kind), " is the head of department's to change."),
        "Ask them.");
  if (asks.role == store::Role::kTechnician)
    return http::refused(403, "documents.teachers_only", "This is for teachers to change.",
                         "Ask one of them.");
  return std::nullopt;
}

/// Names of users by their ids, each looked up once however long the list is.
class NamesOfUsers {
 public:
  explicit NamesOfUsers(Context& context) : context_(context) {}
  const std::string& operator()(const std::string& id) {
    const auto [there, fresh] = names_.try_emplace(id);
    if (fresh) there->second = name_of_user(context_, id);
    return there->second;
  }

 private:
  Context& context_;
  std::map<std::string, std::string> names_;
};

Node summary_node(NamesOfUsers& names, const store::Summary& summary) {
  Node node = Node::object();
  node.set("id", Node::of(summary.id));
  node.set("title", Node::of(summary.title));
  node.set("version", Node::of(static_cast<double>(summary.version)));
  node.set("changed_at", Node::of(summary.changed_at));
  node.set("changed_by", Node::of(names(summary.changed_by)));
  node.set("day", text_or_null(summary.day));
  return node;
}

Response with_version(Context& context, const store::Document& document, int status) {
  Response response = answer(document_node(document, name_of_user(context, document.changed_by)),
                             status);
  response.headers.push_back({"ETag", etag(document.version)});
  return response;
}

Response clash(Context& context, const store::Clash& clash, const Node* yours) {
  const std::string by = name_of_user(context, clash.current.changed_by);
  return clash_answer(context, clash.current, yours,
                      {"document.clash", "", "",
                       base::say(by.empty() ? std::string("Another page") : by,
                                 " changed this while you were at it."),
                       "Look at both versions and keep what is right."});
}

/// What came of a change: the document, both versions, or why not.
Response outcome(Context& context, const base::Result<store::Changed>& changed, const Node* yours) {
  if (!changed) return refuse(changed.problems());
  if (const auto* other = std::get_if<store::Clash>(&changed.value()))
    return clash(context, *other, yours);
  const auto& document = std::get<store::Document>(changed.value());
  tell_changed(context, document);
  return with_version(context, document, 200);
}

/// A body read from a request and found sound.
struct Sent {
  Node request;
  Node body;
  store::Draft draft;
  std::string what;
};

base::Result<Sent> sent(Context& context, const Request& request, Kind kind, bool is_new) {
  auto read = body_of(request);
  if (!read) return read.problems();
  const Member document{"body", Shape::kObject, true}, what{"what"};
  const auto odd = is_new ? misshapen(read.value(), {{"id"}, document, what})
                          : misshapen(read.value(), {document, what});
  if (!odd.empty()) return odd;
  Sent out{read.value(), *read.value().find("body"), {}, text_in(read.value(), "what")};
  // A new lesson keeps the school's rules unless it says otherwise.
  if (is_new && kind == Kind::kLesson && out.body.find("house_rules") == nullptr) {
    if (const auto rules = context.kept.house_rules_path())
      out.body.set("house_rules", Node::of(*rules));
  }
  out.draft.body = kitchen::json_text(out.body);
  const base::Problems wrong = look_at(kind, out.draft.body, context.kept).wrong;
  if (!wrong.empty()) return wrong;
  out.draft.links = links_of(kind, out.body);
  return out;
}

Response list(Context& context, const Request& request) {
  const auto kind = kind_of(request);
  if (!kind) return http::not_found();
  store::Filter filter;
  if (const std::string* from = request.asked("from")) filter.from = *from;
  if (const std::string* to = request.asked("to")) filter.to = *to;
  if (const std::string* text = request.asked("q")) filter.text = *text;
  const auto found = context.store.list(*kind, filter);
  if (!found) return refuse(found.problems());
  Node node = Node::object();
  Node& documents = node.set("documents", Node::list());
  NamesOfUsers names(context);
  for (const store::Summary& summary : found.value()) documents.add(summary_node(names, summary));
  return answer(node);
}

Response create(Context& context, const Request& request) {
  const auto kind = kind_of(request);
  if (!kind) return http::not_found();
  if (auto no = forbidden(who(request), *kind)) return std::move(*no);
  const auto made = sent(context, request, *kind, true);
  if (!made) return http::refused(400, made.problems());
  const std::string id = text_in(made.value().request, "id");
  const auto created = context.store.create(*kind, id.empty() ? std::nullopt : std::optional(id),
                                            made.value().draft,
                                            {who(request).id, made.value().what});
  if (!created) return refuse_new(created.problems());
  tell_changed(context, created.value());
  return with_version(context, created.value(), 201);
}

Response read(Context& context, const Request& request) {
  const auto kind = kind_of(request);
  if (!kind) return http::not_found();
  const std::string& id = request.parameter("id");
  if (const std::string* text = request.asked("version")) {
    const auto version = version_in(*text);
    if (!version) return http::not_found();
    const auto found = context.store.get(*kind, id, *version);
    if (!found) return refuse(found.problems());
    return found.value() ? with_version(context, *found.value(), 200) : http::not_found();
  }
  const auto found = context.kept.document(*kind, id);
  return found ? with_version(context, found.value(), 200) : refuse(found.problems());
}

Response write(Context& context, const Request& request) {
  const auto kind = kind_of(request);
  if (!kind) return http::not_found();
  if (auto no = forbidden(who(request), *kind)) return std::move(*no);
  const auto version = version_seen(request);
  if (!version) return refuse(version.problems());
  const auto made = sent(context, request, *kind, false);
  if (!made) return http::refused(400, made.problems());
  const auto changed = context.store.replace(*kind, request.parameter("id"), version.value(),
                                             made.value().draft,
                                             {who(request).id, made.value().what});
  return outcome(context, changed, &made.value().body);
}

Response remove(Context& context, const Request& request) {
  const auto kind = kind_of(request);
  if (!kind) return http::not_found();
  if (auto no = forbidden(who(request), *kind)) return std::move(*no);
  const auto version = version_seen(request);
  if (!version) return refuse(version.problems());
  const auto removed = context.store.remove(*kind, request.parameter("id"), version.value(),
                                            {who(request).id, "Put away"});
  if (!removed) return refuse(removed.problems());
  if (const auto* other = std::get_if<store::Clash>(&removed.value()))
    return clash(context, *other, nullptr);
  tell_changed(context, std::get<store::Document>(removed.value()));
  return http::no_content();
}

Response history(Context& context, const Request& request) {
  const auto kind = kind_of(request);
  if (!kind) return http::not_found();
  const auto found = context.store.history(*kind, request.parameter("id"));
  if (!found) return refuse(found.problems());
  if (found.value().empty()) return http::not_found();
  Node node = Node::object();
  Node& lines = node.set("history", Node::list());
  NamesOfUsers names(context);
  for (const store::Change& change : found.value()) {
    Node& line = lines.add(Node::object());
    line.set("version", Node::of(static_cast<double>(change.version)));
    line.set("at", Node::of(change.at));
    line.set("by", Node::of(names(change.who)));
    line.set("what", Node::of(change.what));
    line.set("removed", Node::of(change.deleted));
  }
  return answer(node);
}

Response undo(Context& context, const Request& request) {
  const auto kind = kind_of(request);
  if (!kind) return http::not_found();
  if (auto no = forbidden(who(request), *kind)) return std::move(*no);
  const auto seen = version_seen(request);
  if (!seen) return refuse(seen.problems());
  std::int64_t wanted = seen.value() - 1;
  if (!request.body.empty()) {
    const auto body = body_of(request);
    if (!body) return refuse(body.problems());
    const auto odd = misshapen(body.value(), {{"to_version", Shape::kWhole}});
    if (!odd.empty()) return refuse(odd);
    wanted = whole_in(body.value(), "to_version").value_or(static_cast<int>(wanted));
  }
  const std::string& id = request.parameter("id");
  const auto there = context.store.get(*kind, id);
  if (!there) return refuse(there.problems());
  if (!there.value()) return http::not_found();
  if (wanted < 1)
    return http::refused(409, "document.nothing_to_undo", "This is its first version.",
                         "Put it away if it should not be here.");
  const auto restored = context.store.restore(
      *kind, id, wanted, seen.value(), {who(request).id, base::say("Back to version ", wanted)});
  return outcome(context, restored, nullptr);
}

Response check(Context& context, const Request& request) {
  const auto kind = kind_of(request);
  if (!kind) return http::not_found();
  const auto body = body_of(request);
  if (!body) return refuse(body.problems());
  const auto odd = misshapen(body.value(), {{"body", Shape::kObject, true}});
  if (!odd.empty()) return refuse(odd);
  const Node* document = body.value().find("body");
  Node node = Node::object();
  auto [all, rows] = look_at(*kind, kitchen::json_text(*document), context.kept);
  all.insert(all.end(), rows.begin(), rows.end());
  node.set("problems", problems_node(all));
  return answer(node);
}

}  // namespace

void add_document_routes(http::Router& router, Context& context) {
  add_route(router, context, Method::kGet, "/api/documents/{kind}", "read", list);
  add_route(router, context, Method::kPost, "/api/documents/{kind}", "stores", create);
  add_route(router, context, Method::kGet, "/api/documents/{kind}/{id}", "read", read);
  add_route(router, context, Method::kPut, "/api/documents/{kind}/{id}", "stores", write);
  add_route(router, context, Method::kDelete, "/api/documents/{kind}/{id}", "stores", remove);
  add_route(router, context, Method::kGet, "/api/documents/{kind}/{id}/history", "read", history);
  add_route(router, context, Method::kPost, "/api/documents/{kind}/{id}/undo", "stores", undo);
  add_route(router, context, Method::kPost, "/api/check/{kind}", "read", check);
}

}  // namespace serve
