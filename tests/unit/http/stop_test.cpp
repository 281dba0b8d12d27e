// Stopping: what is in hand is finished, everything else is closed.
#include <gmock/gmock.h>

#include <latch>

#include "running.h"
#include "serve/http/events.h"
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
using std::chrono::seconds;

bool refused(int port) {
  try {
    return Client(port).ended();
  } catch (const std::runtime_error&) {
    return true;
  }
}

TEST(Stop, ARequestInHandIsFinishedAndNoNewOneTaken) {
  std::latch begun(1), go(1);
  Router router = little_router();
  router.add(get_route("/slow", [&](const Request&) {
    begun.count_down();
    go.wait();
    return text(200, "finished");
  }));
  Running running(std::move(router));
  Client busy = running.client(), idle = running.client();
  EXPECT_EQ(idle.get("/hello").status, 200);
  busy.send(
      "GET /slow HTTP/1.1\r\nHost: localhost\r\n\r\nGET /hello HTTP/1.1\r\nHost: "
      "localhost\r\n\r\n");
  begun.wait();
  bool clean = false;
  std::thread stopping([&] { clean = running.server().stop(seconds(20)); });
  EXPECT_TRUE(idle.ended());
  EXPECT_TRUE(refused(running.port()));
  go.count_down();
  const Answer answer = busy.answer();
  EXPECT_EQ(answer.body, "finished");
  EXPECT_EQ(answer.header("connection"), "close");
  EXPECT_TRUE(busy.ended());  // the one behind it in the line was not begun
  stopping.join();
  EXPECT_TRUE(clean);
  EXPECT_EQ(running.server().connections(), 0U);
}

TEST(Stop, ABodyOnItsWayIsWaitedFor) {
  Running running(little_router());
  Client client = running.client();
  client.send(
      "POST /echo HTTP/1.1\r\nHost: localhost\r\nExpect: 100-continue\r\nContent-Length: "
      "4\r\n\r\n");
  EXPECT_EQ(client.head().status, 100);
  std::thread stopping([&] { EXPECT_TRUE(running.server().stop(seconds(20))); });
  EXPECT_TRUE(eventually([&] { return refused(running.port()); }));
  client.send("salt");
  EXPECT_EQ(client.answer().body, "salt");
  stopping.join();
}

TEST(Stop, WhatTakesTooLongIsCutOff) {
  Running running(little_router());
  Client client = running.client();
  client.send(
      "POST /echo HTTP/1.1\r\nHost: localhost\r\nExpect: 100-continue\r\nContent-Length: "
      "4\r\n\r\n");
  EXPECT_EQ(client.head().status, 100);
  EXPECT_FALSE(running.server().stop(milliseconds(50)));
  EXPECT_EQ(client.rest(), "");
}

TEST(Stop, StreamsAreClosed) {
  Hub hub;
  Router router;
  router.add(get_route("/events", [&hub](const Request&) { return follow(hub, {"a"}, ""); }));
  Running running(std::move(router));
  std::vector<Client> pages;
  for (int i = 0; i < 20; ++i) {
    pages.push_back(running.client());
    pages.back().send("GET /events HTTP/1.1\r\nHost: localhost\r\n\r\n");
    EXPECT_EQ(pages.back().head().status, 200);
  }
  EXPECT_TRUE(running.server().stop(seconds(20)));
  EXPECT_EQ(hub.listeners(), 0U);
  for (Client& page : pages) EXPECT_TRUE(page.ended());
  hub.publish("a", "x", "nobody hears");
}

TEST(Stop, TwiceAndFromTwoThreadsAndWithoutStarting) {
  Running running(little_router());
  std::thread waiting([&] { running.server().wait(); });
  std::thread other([&] { running.server().stop(seconds(5)); });
  EXPECT_TRUE(running.server().stop(seconds(5)));
  EXPECT_TRUE(running.server().stop(seconds(5)));
  other.join();
  waiting.join();
  Server never({}, little_router());
  EXPECT_TRUE(never.stop(seconds(1)));
  never.wait();
}

TEST(Stop, TheEndOfAServerIsTheEndOfItsConnections) {
  std::optional<Client> client;
  {
    Running running(little_router());
    client.emplace(running.client());
    EXPECT_EQ(client->get("/hello").status, 200);
  }
  EXPECT_TRUE(client->ended());
}

}  // namespace
}  // namespace serve::http
