// Who is signed in, signing in and out, and who may.
#include <algorithm>

#include "base/text.h"
#include "serve/api_json.h"
#include "serve/routes.h"
#include "store/password.h"

namespace serve {
namespace {

constexpr std::chrono::seconds kSessionLasts{12 * 3600};  // one school day

constexpr std::size_t kShortest = 10;  // letters, as the contract says; the store takes fewer

base::Result<std::string> hash_of(const std::string& password) {
  if (base::letters(password) < kShortest)
    return base::Problem{"people.short_password", "", "/password", "The password is too short.",
                         base::say("Take at least ", kShortest,
                                   " letters; three words with spaces are easy to remember.")};
  return store::hash_password(password);
}

Node person_node(const store::User& user) {
  Node node = Node::object();
  node.set("id", Node::of(user.id));
  node.set("name", Node::of(user.name));
  node.set("role", Node::of(store::name_of(user.role)));
  return node;
}

Node me_node(Context& context, const Who& asks) {
  Node node = Node::object();
  node.set("signed_in", Node::of(asks.signed_in));
  const auto lessons = context.store.list(store::Kind::kLesson, store::first_only());
  const auto rooms = context.store.list(store::Kind::kRoom, store::first_only());
  const bool empty = lessons && lessons.value().empty() && rooms && rooms.value().empty();
  node.set("first_run", Node::of(asks.signed_in && empty));
  node.set("open", Node::of(context.open.load()));
  node.set("demo", Node::of(context.demo));
  if (asks.id.empty()) {
    node.set("person", Node());
  } else {
    Node& person = node.set("person", Node::object());
    person.set("id", Node::of(asks.id));
    person.set("name", Node::of(asks.name));
    person.set("role", Node::of(store::name_of(asks.role)));
  }
  node.set("token", Node::of(asks.token));
  const Node school = asks.signed_in ? context.kept.school() : Node::object();
  node.set("school", Node::of(text_in(school, "name")));
  node.set("today", Node::of(base::date_text(context.today())));
  node.set("version", Node::of("0.1.0"));
  return node;
}

Response sign_in(Context& context, const Request& request) {
  const auto body = body_of(request);
  if (!body) return refuse(body.problems());
  const auto odd = misshapen(body.value(),
                             {{"name", Shape::kText, true}, {"password", Shape::kText, true}});
  if (!odd.empty()) return refuse(odd);
  const std::string name = text_in(body.value(), "name"),
                    password = text_in(body.value(), "password");
  // Both the address and the name are limited: neither many names from one machine nor one name
  // from many machines can be tried out.
  for (const std::string& key :
       {"from " + http::address_key(request.remote), "as " + base::lower(name)}) {
    if (const auto wait = context.sign_in_limit.take(key)) return http::too_many(*wait);
  }
  const auto wrong = [] {
    return http::refused(401, "sign_in.wrong", "Name and password do not belong together.",
                         "Try again; the head of department can give you a new password.");
  };
  const auto user = context.store.user_named(name);
  if (!user) return refuse(user.problems());
  if (!user.value()) {
    store::password_of_nobody(password);  // takes as long as a real one, so names cannot be found
                                          // out
    return wrong();
  }
  const bool right = store::password_fits(user.value()->password_hash, password);
  const auto noted = context.store.note_sign_in(user.value()->id, right);
  if (!noted) return refuse(noted.problems());
  if (!right) return wrong();
  context.sign_in_limit.forget("as " + base::lower(name));
  const auto session = context.store.start_session(user.value()->id, kSessionLasts);
  if (!session) return refuse(session.problems());
  const Who asks{user.value()->id, user.value()->name, user.value()->role, session.value().csrf,
                 true};
  Response response = answer(me_node(context, asks));
  response.headers.push_back(
      {"Set-Cookie", http::set_cookie({.name = "benchbell",
                                       .value = session.value().token,
                                       .max_age_seconds = kSessionLasts.count(),
                                       .secure = request.secure})});
  return response;
}

Response sign_out(Context& context, const Request& request) {
  if (const std::string* cookie = request.cookie("benchbell")) {
    const auto ended = context.store.end_session(*cookie);
    if (!ended) return refuse(ended.problems());
    context.hub.end(who(request).token);
  }
  Response response = http::no_content();
  response.headers.push_back(
      {"Set-Cookie",
       http::set_cookie(
           {.name = "benchbell", .value = "", .max_age_seconds = 0, .secure = request.secure})});
  return response;
}

Response add_person(Context& context, const Request& request) {
  const Who& asks = who(request);
  const bool first = context.open && request.loopback;
  const auto not_for_you = [] {
    return http::refused(403, "people.not_allowed", "Only the head of department may add people.",
                         "Ask them.");
  };
  if (!first && !(asks.signed_in && asks.role == store::Role::kHead)) return not_for_you();
  const std::string* token = request.header("X-Benchbell-Token");
  if (token == nullptr || *token != asks.token)
    return http::refused(403, "sign_in.token", "This page is not up to date.",
                         "Load the page again, then try once more.");
  const auto body = body_of(request);
  if (!body) return refuse(body.problems());
  const auto odd = misshapen(body.value(), {{"name", Shape::kText, true},
                                            {"password", Shape::kText, true},
                                            {"role", Shape::kText, true}});
  if (!odd.empty()) return refuse(odd);
  auto role = store::role_named(text_in(body.value(), "role"));
  if (!role)
    return http::refused(400, "people.role", "The role is not known.",
                         "Choose teacher, technician or head.");
  if (first) role = store::Role::kHead;  // somebody must be able to add the others
  const auto hash = hash_of(text_in(body.value(), "password"));
  if (!hash) return refuse(hash.problems());
  // Of two who come first at once one is the head and the other asks them.
  if (first && !context.open.exchange(false)) return not_for_you();
  const auto made = context.store.add_user(text_in(body.value(), "name"), *role, hash.value());
  if (!made) {
    if (first) context.open = true;
    return refuse_new(made.problems());
  }
  return answer(person_node(made.value()), 201);
}

Response change_person(Context& context, const Request& request) {
  const Who& asks = who(request);
  const std::string& id = request.parameter("person");
  const auto found = context.store.user(id);
  if (!found) return refuse(found.problems());
  if (!found.value()) return http::not_found();
  const bool own = asks.id == id, head = asks.role == store::Role::kHead;
  if (!own && !head)
    return http::refused(403, "people.not_allowed", "You may change yourself only.",
                         "Ask the head of department.");
  const auto body = body_of(request);
  if (!body) return refuse(body.problems());
  const auto odd = misshapen(body.value(), {{"name"}, {"role"}, {"password"}, {"old_password"}});
  if (!odd.empty()) return refuse(odd);
  store::User user = *found.value();
  if (const std::string name = text_in(body.value(), "name"); !name.empty()) user.name = name;
  if (const std::string word = text_in(body.value(), "role"); !word.empty()) {
    const auto role = store::role_named(word);
    if (!role)
      return http::refused(400, "people.role", "The role is not known.",
                           "Choose teacher, technician or head.");
    if (!head && *role != user.role)
      return http::refused(403, "people.not_allowed", "Only the head of department gives roles.",
                           "Ask them.");
    user.role = *role;
  }
  if (body.value().find("password") != nullptr) {
    const std::string password = text_in(body.value(), "password");
    if (own && !store::password_fits(user.password_hash, text_in(body.value(), "old_password")))
      return http::refused(400, "people.old_password", "The old password is not right.",
                           "Type the password you sign in with now.");
    const auto hash = hash_of(password);
    if (!hash) return refuse(hash.problems());
    user.password_hash = hash.value();
  }
  if (found.value()->role == store::Role::kHead && user.role != store::Role::kHead) {
    const auto all = context.store.users();
    if (!all) return refuse(all.problems());
    const auto heads = std::count_if(
        all.value().begin(), all.value().end(),
        [](const store::User& u) { return u.role == store::Role::kHead; });
    if (heads == 1)
      return http::refused(400, "people.last_head", "Somebody must be head of department.",
                           "Make another person head first.");
  }
  const auto changed = context.store.change_user(user);
  if (!changed) return refuse_new(changed.problems());
  return answer(person_node(changed.value()));
}

Response remove_person(Context& context, const Request& request) {
  const std::string& id = request.parameter("person");
  if (id == who(request).id)
    return http::refused(409, "people.yourself", "You cannot remove yourself.",
                         "Ask another head of department.");
  const auto removed = context.store.remove_user(id);
  if (!removed) return refuse(removed.problems());
  return removed.value() ? http::no_content() : http::not_found();
}

}  // namespace

void add_people_routes(http::Router& router, Context& context) {
  router.add(
      {.method = Method::kGet,
       .pattern = "/api/me",
       .needs = "",
       .handler = [&context](const Request& r) { return answer(me_node(context, who(r))); }});
  add_route(router, context, Method::kPost, "/api/sign-in", "", sign_in);
  add_route(router, context, Method::kPost, "/api/sign-out", "read", sign_out);
  router.add({.method = Method::kGet,
              .pattern = "/api/people",
              .needs = "head",
              .handler = [&context](const Request&) {
                const auto users = context.store.users();
                if (!users) return refuse(users.problems());
                Node node = Node::object();
                Node& list = node.set("people", Node::list());
                for (const store::User& user : users.value()) list.add(person_node(user));
                return answer(node);
              }});
  add_route(router, context, Method::kPost, "/api/people", "", add_person);
  add_route(router, context, Method::kPatch, "/api/people/{person}", "read", change_person);
  add_route(router, context, Method::kDelete, "/api/people/{person}", "head", remove_person);
}

}  // namespace serve
