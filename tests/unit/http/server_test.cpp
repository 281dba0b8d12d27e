// The server as a browser sees it.
#include "serve/http/server.h"

#include <gmock/gmock.h>

#include <atomic>
#include <stdexcept>

#include "running.h"

namespace serve::http {
namespace {

using http_test::Answer;
using http_test::Client;
using http_test::get_route;
using http_test::little_router;
using http_test::Running;
using testing::HasSubstr;
using testing::Not;

TEST(Server, OneConnectionServesManyRequests) {
  Running running(little_router());
  Client client = running.client();
  for (int i = 0; i < 50; ++i) {
    const Answer answer = client.get("/dishes/" + std::to_string(i));
    EXPECT_EQ(answer.status, 200);
    EXPECT_EQ(answer.body, std::to_string(i));
  }
  EXPECT_EQ(client.post("/echo", "salt").body, "salt");
  EXPECT_EQ(running.server().connections(), 1U);
}

TEST(Server, RequestsSentInOneGoAreAnsweredInOrder) {
  Running running(little_router());
  Client client = running.client();
  std::string all;
  for (int i = 0; i < 40; ++i) {
    all += "GET /dishes/" + std::to_string(i) + " HTTP/1.1\r\nHost: localhost\r\n\r\n";
    all += "POST /echo HTTP/1.1\r\nHost: localhost\r\nContent-Length: 2\r\n\r\nab";
  }
  client.send(all +
              "GET /hello HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\nGET /hello");
  for (int i = 0; i < 40; ++i) {
    EXPECT_EQ(client.answer().body, std::to_string(i));
    EXPECT_EQ(client.answer().body, "ab");
  }
  const Answer last = client.answer();
  EXPECT_EQ(last.header("connection"), "close");
  EXPECT_TRUE(client.ended());
}

TEST(Server, ARequestMayComeByteByByte) {
  Running running(little_router());
  Client client = running.client();
  for (const char c :
       std::string("POST /echo HTTP/1.1\r\nHost: localhost\r\nContent-Length: 3\r\n\r\nabc"))
    client.send(std::string(1, c));
  EXPECT_EQ(client.answer().body, "abc");
}

TEST(Server, HeadIsGetWithoutTheBody) {
  Running running(little_router());
  Client client = running.client();
  client.send("HEAD /hello HTTP/1.1\r\nHost: localhost\r\n\r\n");
  const Answer head = client.answer(true);
  EXPECT_EQ(head.status, 200);
  EXPECT_EQ(head.header("content-length"), "12");
  EXPECT_EQ(client.get("/hello").body, "good morning");  // no byte of a body came in between
}

TEST(Server, OldClientsAreAnsweredAndLeft) {
  Running running(little_router());
  Client client = running.client();
  client.send("GET /hello HTTP/1.0\r\n\r\n");
  EXPECT_EQ(client.answer().body, "good morning");
  EXPECT_TRUE(client.ended());
  Client keeping = running.client();
  keeping.send("GET /hello HTTP/1.0\r\nConnection: keep-alive\r\n\r\n");
  EXPECT_EQ(keeping.answer().header("connection"), "keep-alive");
  EXPECT_EQ(keeping.get("/hello").status, 200);
}

TEST(Server, TheBodyIsAskedForWhenTheClientWaits) {
  Running running(little_router());
  Client client = running.client();
  client.send(
      "POST /echo HTTP/1.1\r\nHost: localhost\r\nExpect: 100-continue\r\nContent-Length: "
      "4\r\n\r\n");
  EXPECT_EQ(client.head().status, 100);
  client.send("salt");
  EXPECT_EQ(client.answer().body, "salt");
  // And not when it would be refused anyway.
  client.send(
      "POST /echo HTTP/1.1\r\nHost: localhost\r\nExpect: 100-continue\r\nContent-Length: "
      "4000\r\n\r\n");
  EXPECT_EQ(client.answer().status, 413);
  EXPECT_TRUE(client.ended());
}

TEST(Server, WrongAddressesAndMethods) {
  Running running(little_router());
  Client client = running.client();
  EXPECT_EQ(client.get("/nothing").status, 404);
  EXPECT_EQ(running.client().post("/hello", "x").status, 405);
  client.send("DELETE /hello HTTP/1.1\r\nHost: localhost\r\n\r\n");
  const Answer wrong = client.answer();
  EXPECT_EQ(wrong.status, 405);
  EXPECT_EQ(wrong.header("allow"), "GET, HEAD");
  client.send("BREW /hello HTTP/1.1\r\nHost: localhost\r\n\r\n");
  EXPECT_EQ(client.answer().status, 405);
}

TEST(Server, ABodyForNoRouteIsNotRead) {
  Running running(little_router());
  Client client = running.client();
  client.send(
      "POST /nothing HTTP/1.1\r\nHost: localhost\r\nContent-Length: 5000000\r\n\r\nonly the start");
  const Answer answer = client.answer();
  EXPECT_EQ(answer.status, 404);
  EXPECT_EQ(answer.header("connection"), "close");
  EXPECT_TRUE(client.ended());
}

TEST(Server, AWayOutOfTheFolderIsRefused) {
  Router router = little_router();
  std::atomic<int> reached{0};
  router.add(get_route("/files/{path*}", [&reached](const Request&) {
    ++reached;
    return text(200, "a file");
  }));
  Running running(std::move(router));
  for (const char* path :
       {"/files/../hello", "/files/%2e%2e/%2e%2e/etc/passwd", "/files/a%2fb", "/files/..\\x"}) {
    Client client = running.client();
    EXPECT_EQ(client.get(path).status, 400) << path;
    EXPECT_TRUE(client.ended());
  }
  EXPECT_EQ(reached, 0);
}

TEST(Server, ALineEndInAHeaderIsA500AndNothingElse) {
  Router router;
  router.add(get_route("/go/{where}", [](const Request& r) {
    return see_other("/" + *r.asked("to") + r.parameter("where"));
  }));
  Running running(std::move(router));
  Client client = running.client();
  const Answer answer = client.get("/go/x?to=a%0D%0ASet-Cookie:%20s=1%0D%0A%0D%0Ahello");
  EXPECT_EQ(answer.status, 500);
  EXPECT_EQ(answer.header("set-cookie"), "(none)");
  EXPECT_EQ(answer.header("location"), "(none)");
  EXPECT_EQ(client.get("/go/plans?to=").status, 303);
}

TEST(Server, AHandlersFaultIsANumberAndNoMore) {
  Router router;
  router.add(get_route("/throws/{id}", [](const Request&) -> Response {
    throw std::runtime_error("secret: Ada's allergy");
  }));
  router.add(get_route("/odd", [](const Request&) -> Response { throw 7; }));
  std::string told;
  ServerOptions options;
  options.fault = [&told](std::string_view incident, std::string_view pattern,
                          std::string_view what) {
    told = std::string(incident) + '|' + std::string(pattern) + '|' + std::string(what);
    throw std::runtime_error("and this one too");
  };
  Running running(std::move(router), options);
  Client client = running.client();
  const Answer answer = client.get("/throws/77");
  EXPECT_EQ(answer.status, 500);
  EXPECT_THAT(answer.body, Not(HasSubstr("secret")));
  const std::string incident = told.substr(0, 8);
  EXPECT_EQ(told, incident + "|/throws/{id}|secret: Ada's allergy");
  EXPECT_THAT(answer.body, HasSubstr(incident));
  const std::string line = running.log(1)[0];
  EXPECT_THAT(line, HasSubstr("\"incident\":\"" + incident + '"'));
  EXPECT_THAT(line, Not(HasSubstr("secret")));
  EXPECT_EQ(client.get("/odd").status, 500);  // the same connection: nothing is broken
}

TEST(Server, TheLogHasThePatternAndNothingOfThePerson) {
  Running running(little_router());
  Client client = running.client();
  client.get("/dishes/adas-birthday-cake?who=Ada", "Cookie: session=topsecret\r\n");
  client.get("/nothing/Ada");
  const auto lines = running.log(2);
  ASSERT_EQ(lines.size(), 2U);
  EXPECT_THAT(lines[0],
              testing::MatchesRegex(
                  R"(\{"time":"[0-9-]+T[0-9:.]+Z","method":"GET","route":"/dishes/\{id\}",)"
                  R"("status":200,"ms":[0-9.]+,"bytes":18\})"));
  EXPECT_THAT(lines[1], HasSubstr("\"route\":null,\"status\":404"));
  for (const auto& line : lines) {
    EXPECT_THAT(line, Not(HasSubstr("da")));
    EXPECT_THAT(line, Not(HasSubstr("127.0.0.1")));
    EXPECT_THAT(line, Not(HasSubstr("secret")));
  }
}

TEST(Server, LongJsonIsPackedForThoseWhoTakeIt) {
  const std::string long_json = "[" + std::string(5000, ' ') + "]";
  Router router;
  router.add(get_route("/long", [&](const Request&) { return json(200, long_json); }));
  Running running(std::move(router));
  Client client = running.client();
  const Answer packed = client.get("/long", "Accept-Encoding: gzip\r\n");
  EXPECT_EQ(packed.header("content-encoding"), "gzip");
  EXPECT_EQ(http_test::unzipped(packed.body), long_json);
  EXPECT_LT(packed.body.size(), 200U);
  const Answer plain = client.get("/long");
  EXPECT_EQ(plain.header("content-encoding"), "(none)");
  EXPECT_EQ(plain.body, long_json);
}

TEST(Server, EveryAnswerIsGuardedAlsoTheRefusals) {
  Running running(little_router());
  for (const char* request : {"GET /hello HTTP/1.1\r\nHost: localhost\r\n\r\n", "nonsense\r\n\r\n",
                              "GET /../x HTTP/1.1\r\nHost: localhost\r\n\r\n",
                              "GET /hello HTTP/1.1\r\nHost: elsewhere.example\r\n\r\n"}) {
    Client client = running.client();
    client.send(request);
    const Answer answer = client.answer();
    EXPECT_THAT(answer.header("content-security-policy"), HasSubstr("default-src 'self'"))
        << request;
    EXPECT_EQ(answer.header("x-content-type-options"), "nosniff") << request;
    EXPECT_EQ(answer.header("cache-control"), "no-store") << request;
  }
}

TEST(Server, AForeignNameIsNotAnsweredOnThisMachine) {
  Running running(little_router());
  Client client = running.client();
  client.send("GET /hello HTTP/1.1\r\nHost: rebound.example:" + std::to_string(running.port()) +
              "\r\n\r\n");
  const Answer answer = client.answer();
  EXPECT_EQ(answer.status, 421);
  EXPECT_THAT(answer.body, Not(HasSubstr("good morning")));
  ServerOptions named;
  named.host_names = {"bench.example"};
  Running other(little_router(), named);
  Client known = other.client();
  known.send("GET /hello HTTP/1.1\r\nHost: Bench.Example\r\n\r\n");
  EXPECT_EQ(known.answer().status, 200);
}

TEST(Server, AnotherSitesPageCannotChangeAnything) {
  Running running(little_router());
  EXPECT_EQ(running.client().post("/echo", "x", "Origin: http://evil.example\r\n").status, 403);
  EXPECT_EQ(running.client().post("/echo", "x", "Sec-Fetch-Site: cross-site\r\n").status, 403);
  EXPECT_EQ(running.client().post("/echo", "x", "Origin: http://localhost\r\n").status, 200);
  EXPECT_EQ(running.client().get("/hello", "Sec-Fetch-Site: cross-site\r\n").status, 200);
}

TEST(Server, AHandlerKnowsWhereARequestComesFrom) {
  Router router;
  router.add(get_route("/who", [](const Request& r) {
    return text(
        200, r.remote + (r.loopback ? " here" : "") + (r.secure ? " secure" : "") + ' ' + r.host);
  }));
  Running running(std::move(router));
  EXPECT_EQ(running.client().get("/who").body, "127.0.0.1 here localhost");
}

TEST(Server, BothFamiliesOfAddresses) {
  ServerOptions options;
  options.address = "::";
  Router router;
  router.add(get_route("/who", [](const Request& r) { return text(200, r.remote); }));
  Server server(options, std::move(router));
  const auto port = server.start();
  if (!port) GTEST_SKIP() << "this machine has no IPv6";
  EXPECT_EQ(Client(port.value()).get("/who").body, "127.0.0.1");  // not ::ffff:127.0.0.1
}

TEST(Server, APortThatIsTakenIsSaidInPlainWords) {
  Running running(little_router());
  ServerOptions options;
  options.port = running.port();
  Server second(options, little_router());
  const auto started = second.start();
  ASSERT_FALSE(started);
  const base::Problem& problem = started.problems().front();
  EXPECT_EQ(problem.code, "serve.port_in_use");
  EXPECT_THAT(problem.message, HasSubstr("Port " + std::to_string(running.port()) + " is taken"));
  EXPECT_FALSE(problem.remedy.empty());
  EXPECT_TRUE(second.stop(std::chrono::seconds(1)));
}

TEST(Server, AnAddressThatIsNoneIsSaidInPlainWords) {
  for (const char* address : {"kitchen", "192.0.2.7", ""}) {
    ServerOptions options;
    options.address = address;
    Server server(options, little_router());
    const auto started = server.start();
    ASSERT_FALSE(started) << address;
    EXPECT_EQ(started.problems().front().code, "serve.address");
  }
}

}  // namespace
}  // namespace serve::http
