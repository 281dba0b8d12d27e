#include "serve/http/router.h"

#include <gtest/gtest.h>

#include <stdexcept>

#include "running.h"

namespace serve::http {
namespace {

using http_test::get_route;
using http_test::route;

Handler says(std::string what) {
  return [what](const Request&) { return text(200, what); };
}

Request asking(Method method, std::string path) {
  Request out;
  out.method = method;
  out.path = std::move(path);
  return out;
}

Router router() {
  Router out;
  out.add(get_route("/{page*}", says("file")));
  out.add(get_route("/", says("first")));
  out.add(get_route("/api/documents/{kind}/{id}", says("document")));
  out.add(route(Method::kPut, "/api/documents/{kind}/{id}", says("put")));
  out.add(get_route("/api/documents/{kind}/newest", says("newest")));
  out.add(get_route("/api/documents/dish/{id}", says("dish")));
  out.add(route(Method::kPost, "/api/plans", says("plan")));
  return out;
}

std::string said(Method method, std::string path) {
  const Response response = router().answer(asking(method, std::move(path)));
  return response.status == 200 ? std::string(response.body.view())
                                : std::to_string(response.status);
}

TEST(Router, TheCloserPatternWinsWhateverTheOrder) {
  EXPECT_EQ(said(Method::kGet, "/"), "first");
  EXPECT_EQ(said(Method::kGet, "/api/documents/room/1"), "document");
  EXPECT_EQ(said(Method::kGet, "/api/documents/room/newest"), "newest");
  EXPECT_EQ(said(Method::kGet, "/api/documents/dish/newest"), "dish");  // the earlier segment
                                                                        // decides
  EXPECT_EQ(said(Method::kGet, "/assets/a/b.js"), "file");
  EXPECT_EQ(said(Method::kHead, "/api/documents/room/1"), "document");
  EXPECT_EQ(said(Method::kPut, "/api/documents/room/1"), "put");
}

TEST(Router, AWrongMethodIs405AndSaysWhatIsAllowed) {
  const Response response = router().answer(asking(Method::kDelete, "/api/documents/room/1"));
  EXPECT_EQ(response.status, 405);
  EXPECT_EQ(*find_header(response.headers, "Allow"), "GET, HEAD, PUT");
  // The address is that of plans, so the catch-all for files does not answer in its place.
  EXPECT_EQ(said(Method::kGet, "/api/plans"), "405");
  EXPECT_EQ(said(Method::kOther, "/api/plans"), "405");
}

TEST(Router, NothingThereIs404) {
  Router small;
  small.add(get_route("/a/{b}", says("b")));
  for (const char* path : {"/", "/a", "/a/b/c", "/b/a"})
    EXPECT_EQ(small.answer(asking(Method::kGet, path)).status, 404) << path;
}

TEST(Router, ParametersAreGivenByName) {
  Router out;
  out.add(get_route("/a/{x}/{rest*}", [](const Request& r) {
    return text(200, r.parameter("x") + "|" + r.parameter("rest"));
  }));
  EXPECT_EQ(out.answer(asking(Method::kGet, "/a/one two/3/4/5")).body.view(), "one two|3/4/5");
}

TEST(Router, PatternsThatAreNoneAreRefused) {
  for (const char* bad : {"", "a", "//", "/a/", "/a//b", "/{}", "/{a}/{a}", "/{a*}/b", "/x{a}",
                          "/{a", "/a*", "/{a}b", "/{a{b}}"}) {
    Router out;
    EXPECT_THROW(out.add(get_route(bad, says(""))), std::invalid_argument) << bad;
  }
  Router out;
  out.add(get_route("/a/{b}", says("")));
  EXPECT_THROW(out.add(get_route("/a/{c}", says(""))), std::invalid_argument);
  EXPECT_THROW(out.add(route(Method::kHead, "/b", says(""))), std::invalid_argument);
  EXPECT_THROW(out.add(get_route("/b", {})), std::invalid_argument);
  EXPECT_NO_THROW(out.add(route(Method::kPost, "/a/{c}", says(""))));
}

TEST(Router, TheMiddlewareStandsBeforeEveryHandlerAndKnowsTheRoute) {
  Router out;
  Route secret = get_route("/secret", [](const Request& r) {
    return text(200, "hello " + std::any_cast<std::string>(r.who));
  });
  secret.needs = "teacher";
  out.add(std::move(secret));
  out.add(get_route("/open", says("open")));
  out.use([](Request& request, const Route* found, const Handler& next) {
    if (found == nullptr) return text(401, "who are you");
    if (found->needs.empty()) return next(request);
    if (request.cookie("session") == nullptr) return refused(403, "c", "m", "r");
    request.who = std::string("Ms Hart");
    return next(request);
  });
  EXPECT_EQ(out.answer(asking(Method::kGet, "/open")).status, 200);
  EXPECT_EQ(out.answer(asking(Method::kGet, "/secret")).status, 403);
  EXPECT_EQ(out.answer(asking(Method::kGet, "/nowhere")).status, 401);
  Request known = asking(Method::kGet, "/secret");
  known.cookies = {{"session", "1"}};
  EXPECT_EQ(out.answer(known).body.view(), "hello Ms Hart");
  EXPECT_EQ(out.routes().size(), 2U);
  EXPECT_EQ(out.routes()[0].needs, "teacher");
}

}  // namespace
}  // namespace serve::http
