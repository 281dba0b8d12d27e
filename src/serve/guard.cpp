#include "serve/routes.h"

#include "serve/api_json.h"

namespace serve {
namespace {

using http::Method;
using http::Request;
using http::Response;

bool writes(Method method) { return method != Method::kGet && method != Method::kHead; }

bool may(store::Role role, const std::string& needs) {
  if (needs == "read") return true;
  if (needs == "stores") return true;
  if (needs == "write") return role != store::Role::kTechnician;
  return role == store::Role::kHead;  // "head", and any word a programmer may misspell
}

Who asker(Context& context, const Request& request) {
  if (const std::string* cookie = request.cookie("benchbell")) {
    const auto session = context.store.see_session(*cookie);
    if (session && session.value()) {
      const store::Session& found = *session.value();
      return {found.user.id, found.user.name, found.user.role, found.csrf, true};
    }
  }
  // On this machine, and as long as nobody may sign in, everything is open: the first minute with
  // the program must not begin with a password.
  if (context.open && request.loopback)
    return {"", "", store::Role::kHead, context.open_token, true};
  return {};
}

}  // namespace

http::Middleware guard(Context& context) {
  return [&context](Request& request, const http::Route* route, const http::Handler& next) {
    Who found = asker(context, request);
    const bool signed_in = found.signed_in;
    const store::Role role = found.role;
    const std::string token = found.token;
    request.who = std::move(found);
    if (route == nullptr || route->needs.empty()) return next(request);
    if (!signed_in)
      return http::refused(401, "sign_in.needed", "You are not signed in.",
                           "Sign in, then try again.");
    if (!may(role, route->needs))
      return http::refused(403, "sign_in.not_allowed",
                           route->needs == "head" ? "Only the head of department may do this."
                                                  : "This is for teachers.",
                           "Ask somebody who may.");
    if (writes(request.method)) {
      const std::string* sent = request.header("X-Benchbell-Token");
      if (sent == nullptr || *sent != token)
        return http::refused(403, "sign_in.token", "This page is not up to date.",
                             "Load the page again, then try once more.");
    }
    return next(request);
  };
}

const Who& who(const Request& request) { return std::any_cast<const Who&>(request.who); }

std::string name_of_user(Context& context, const std::string& id) {
  if (id.empty()) return "";
  const auto user = context.store.user(id);
  return user && user.value() ? user.value()->name : "somebody";
}

void tell_changed(Context& context, std::string_view kind, const std::string& id,
                  std::int64_t version, const std::string& title) {
  ++context.changes;
  Node news = Node::object();
  news.set("kind", Node::of(kind));
  news.set("id", Node::of(id));
  news.set("version", Node::of(static_cast<double>(version)));
  news.set("title", Node::of(title));
  context.hub.publish("desk", "document", json_line(news));
}

void tell_changed(Context& context, const store::Document& document) {
  tell_changed(context, store::name_of(document.kind), document.id, document.version,
               document.title);
}

http::Response clash_answer(Context& context, const store::Document& current, const Node* yours,
                            const base::Problem& problem) {
  Node node = Node::object();
  node.set("problems", problems_node({problem}));
  node.set("yours", yours == nullptr ? Node() : *yours);
  node.set("theirs", document_node(current, name_of_user(context, current.changed_by)));
  http::Response response = answer(node, 412);
  response.headers.push_back({"ETag", etag(current.version)});
  return response;
}

void add_route(http::Router& router, Context& context, http::Method method, const char* pattern,
               const char* needs, RouteHandler handler) {
  router.add(
      {.method = method,
       .pattern = pattern,
       .needs = needs,
       .handler = [&context, handler](const http::Request& r) { return handler(context, r); }});
}

}  // namespace serve
