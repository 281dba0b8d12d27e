// The routes of the API, one function a group; api/openapi.yaml is the contract.
//
// `needs` of a route: "" = anybody; "read" = whoever may sign in; "write" = teachers and the head;
// "stores" = technicians too; "head" = the head of department.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "serve/context.h"
#include "serve/http/router.h"

namespace serve {

// The words of every routes_*.cpp.
using http::Method;
using http::Request;
using http::Response;
using store::Kind;

void add_people_routes(http::Router&, Context&);
void add_document_routes(http::Router&, Context&);
void add_week_routes(http::Router&, Context&);
void add_dish_routes(http::Router&, Context&);
void add_class_routes(http::Router&, Context&);
void add_plan_routes(http::Router&, Context&);
void add_change_routes(http::Router&, Context&);
void add_store_routes(http::Router&, Context&);
void add_paper_routes(http::Router&, Context&);
void add_keeping_routes(http::Router&, Context&);

/// Signs in, checks roles and the token of writing requests, around every handler.
http::Middleware guard(Context&);

/// Who asks, as guard() found out. Only for routes that need somebody.
const Who& who(const http::Request&);
/// The name of a user id for screens: "Ms Hart"; "somebody" for one who is gone, "" for nobody.
std::string name_of_user(Context&, const std::string& id);
/// News of a job for the pages of the session that started it.
void tell_job(http::Hub&, const JobView&);
/// Tells every page that a document was changed, and counts the change.
void tell_changed(Context&, std::string_view kind, const std::string& id, std::int64_t version,
                  const std::string& title);
void tell_changed(Context&, const store::Document&);

/// 412 with both versions. `yours` is null for a removal.
http::Response clash_answer(Context&, const store::Document& current, const Node* yours,
                            const base::Problem&);

using RouteHandler = http::Response (*)(Context&, const http::Request&);
void add_route(http::Router&, Context&, http::Method, const char* pattern, const char* needs,
               RouteHandler);

}  // namespace serve
