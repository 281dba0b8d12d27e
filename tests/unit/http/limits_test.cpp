// What the server does not put up with: slowness, size, number. All patience is made short; every
// wait is for what the server does, never for time to pass.
#include <gmock/gmock.h>

#include <latch>

#include "running.h"
#include "serve/http/server.h"

namespace serve::http {
namespace {

using http_test::Answer;
using http_test::Client;
using http_test::eventually;
using http_test::get_route;
using http_test::little_router;
using http_test::Running;
using std::chrono::milliseconds;
using testing::HasSubstr;

ServerOptions impatient() {
  ServerOptions out;
  out.patience.head = milliseconds(150);
  out.patience.body = milliseconds(150);
  out.patience.whole_body = milliseconds(400);
  out.patience.idle = milliseconds(150);
  out.patience.write = milliseconds(200);
  return out;
}

TEST(Limits, AConnectionThatSaysNothingIsClosed) {
  Running running(little_router(), impatient());
  Client silent = running.client();
  EXPECT_TRUE(silent.ended());
  Client idle = running.client();
  EXPECT_EQ(idle.get("/hello").status, 200);
  EXPECT_TRUE(idle.ended());
  EXPECT_TRUE(eventually([&] { return running.server().connections() == 0; }));
}

TEST(Limits, HeadersThatDripAreNotWaitedFor) {
  Running running(little_router(), impatient());
  Client client = running.client();
  client.send("GET /hello HTTP/1.1\r\nHost: localhost\r\n");
  // A header every few milliseconds for as long as it is taken: each alone comes in time.
  while (client.try_send("X: 1\r\n") && running.log().empty())
    std::this_thread::sleep_for(milliseconds(5));
  EXPECT_THAT(running.log(1)[0], HasSubstr("\"status\":408"));
  EXPECT_TRUE(eventually([&] { return running.server().connections() == 0; }));
}

TEST(Limits, ASlowHeadIsToldSo) {
  Running running(little_router(), impatient());
  Client client = running.client();
  client.send("GET /hello HTTP/1.1\r\nHo");
  const Answer answer = client.answer();
  EXPECT_EQ(answer.status, 408);
  EXPECT_EQ(answer.header("connection"), "close");
  EXPECT_TRUE(client.ended());
}

TEST(Limits, ABodyThatStopsOrDripsIsNotWaitedFor) {
  Running running(little_router(), impatient());
  Client stopped = running.client();
  stopped.send("POST /upload HTTP/1.1\r\nHost: localhost\r\nContent-Length: 1000\r\n\r\nhalf");
  EXPECT_EQ(stopped.answer().status, 408);
  EXPECT_TRUE(stopped.ended());
  Client dripping = running.client();
  dripping.send("POST /upload HTTP/1.1\r\nHost: localhost\r\nContent-Length: 1000000\r\n\r\n");
  while (dripping.try_send("x") && running.log().size() < 2)
    std::this_thread::sleep_for(milliseconds(5));
  EXPECT_THAT(running.log(2)[1], HasSubstr("\"status\":408"));
}

TEST(Limits, WhoDoesNotTakeTheAnswerIsLeft) {
  Router router;
  const std::string huge(64U << 20U, 'x');
  const auto shared = std::make_shared<const std::string>(huge);
  router.add(get_route("/huge", [shared](const Request&) {
    Response out;
    out.content_type = "application/octet-stream";
    out.body = shared;
    return out;
  }));
  Running running(std::move(router), impatient());
  Client client = running.client();
  client.send("GET /huge HTTP/1.1\r\nHost: localhost\r\n\r\n");
  EXPECT_TRUE(eventually([&] { return running.server().connections() == 0; }));
}

TEST(Limits, AHugeAnswerArrivesWhole) {
  Router router;
  const auto shared = std::make_shared<const std::string>(std::string(20U << 20U, 'x'));
  router.add(get_route("/huge", [shared](const Request&) {
    Response out;
    out.body = shared;
    return out;
  }));
  Running running(std::move(router));
  EXPECT_EQ(running.client().get("/huge").body, *shared);
}

TEST(Limits, TooMuchIsRefusedBeforeItIsSent) {
  Running running(little_router());
  Client client = running.client();
  client.send("POST /echo HTTP/1.1\r\nHost: localhost\r\nContent-Length: 1001\r\n\r\n");
  const Answer answer = client.answer();
  EXPECT_EQ(answer.status, 413);
  EXPECT_THAT(answer.body, HasSubstr("at most 1000 bytes"));
  EXPECT_TRUE(client.ended());
}

TEST(Limits, TheAnswerToTooMuchArrivesAlthoughMoreIsOnItsWay) {
  Running running(little_router());
  for (int i = 0; i < 20; ++i) {
    Client client = running.client();
    client.send("POST /upload HTTP/1.1\r\nHost: localhost\r\nContent-Length: 3000000\r\n\r\n" +
                std::string(2'000'000, 'x'));
    EXPECT_EQ(client.answer().status, 413);
  }
}

TEST(Limits, ARouteMayTakeMoreThanTheServer) {
  ServerOptions options;
  options.limits.body_bytes = 10;
  Running running(little_router(), options);
  EXPECT_EQ(running.client().post("/upload", std::string(1U << 20U, 'x')).body, "1048576");
  EXPECT_EQ(running.client().post("/upload", std::string((1U << 20U) + 1, 'x')).status, 413);
}

TEST(Limits, AllBodiesTogetherHaveALimit) {
  ServerOptions options;
  options.limits.bodies_in_hand = 1500;
  Running running(little_router(), options);
  Client first = running.client();
  first.send(
      "POST /echo HTTP/1.1\r\nHost: localhost\r\nExpect: 100-continue\r\nContent-Length: "
      "1000\r\n\r\n");
  EXPECT_EQ(first.head().status, 100);  // its thousand bytes are counted from here on
  const Answer second = running.client().post("/echo", std::string(1000, 'x'));
  EXPECT_EQ(second.status, 503);
  EXPECT_NE(second.header("retry-after"), "(none)");
  first.send(std::string(1000, 'a'));
  EXPECT_EQ(first.answer().status, 200);
  EXPECT_TRUE(eventually(
      [&] { return running.client().post("/echo", std::string(1000, 'x')).status == 200; }));
}

TEST(Limits, ConnectionsHaveALimit) {
  ServerOptions options;
  options.limits.connections = 2;
  Running running(little_router(), options);
  Client one = running.client();
  EXPECT_EQ(one.get("/hello").status, 200);
  {
    Client two = running.client();
    EXPECT_EQ(two.get("/hello").status, 200);
    EXPECT_TRUE(running.client().ended());
    EXPECT_EQ(one.get("/hello").status, 200);
  }
  EXPECT_TRUE(eventually([&] { return running.server().connections() == 1; }));
  EXPECT_EQ(running.client().get("/hello").status, 200);
}

TEST(Limits, ALineThatIsTooLongForTheWorkersIs503) {
  std::latch go(1);
  Router router;
  router.add(get_route("/slow", [&go](const Request&) {
    go.wait();
    return text(200, "done");
  }));
  ServerOptions options;
  options.workers = 1;
  options.limits.waiting = 1;
  Running running(std::move(router), options);
  std::vector<Client> clients;
  for (int i = 0; i < 8; ++i) {
    clients.push_back(running.client());
    clients.back().send("GET /slow HTTP/1.1\r\nHost: localhost\r\n\r\n");
  }
  // One is in hand, one waits; the others are told at once, or all but the first if it was not yet
  // taken up.
  const auto lines = running.log(6);
  for (const auto& line : lines) EXPECT_THAT(line, HasSubstr("\"status\":503"));
  go.count_down();
  int done = 0;
  for (Client& client : clients) done += client.answer().status == 200 ? 1 : 0;
  EXPECT_GE(done, 1);
  EXPECT_LE(done, 2);
}

}  // namespace
}  // namespace serve::http
