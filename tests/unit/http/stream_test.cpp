// Server-sent events over real connections.
#include <gmock/gmock.h>

#include "running.h"
#include "serve/http/events.h"
#include "serve/http/server.h"

namespace serve::http {
namespace {

using http_test::Answer;
using http_test::Client;
using http_test::eventually;
using http_test::get_route;
using http_test::Running;
using testing::HasSubstr;
using testing::Not;

Router router(Hub& hub) {
  Router out;
  out.add(get_route("/events/{channel}", [&hub](const Request& r) {
    return follow(hub, {r.parameter("channel")}, last_event_id(r),
                  "key of " + r.parameter("channel"));
  }));
  return out;
}

Client listening(const Running& running, const std::string& channel,
                 const std::string& headers = {}) {
  Client client = running.client();
  client.send("GET /events/" + channel + " HTTP/1.1\r\nHost: localhost\r\n" + headers + "\r\n");
  const Answer head = client.head();
  EXPECT_EQ(head.status, 200);
  EXPECT_EQ(head.header("content-type"), "text/event-stream");
  EXPECT_EQ(head.header("cache-control"), "no-store");
  EXPECT_EQ(head.header("content-length"), "(none)");
  return client;
}

TEST(Stream, WhatIsPublishedIsHeardInOrder) {
  Hub hub;
  Running running(router(hub));
  Client client = listening(running, "a");
  for (int i = 0; i < 30; ++i) hub.publish("a", "state", std::to_string(i));
  for (int i = 0; i < 30; ++i)
    EXPECT_THAT(client.until("\n\n"), HasSubstr("event: state\ndata: " + std::to_string(i) + "\n"));
  EXPECT_THAT(running.log(1)[0], HasSubstr("\"route\":\"/events/{channel}\",\"status\":200"));
}

TEST(Stream, WhoComesBackHearsTheRest) {
  Hub hub;
  Running running(router(hub));
  std::string id;
  {
    Client client = listening(running, "a");
    hub.publish("a", "x", "1");
    const std::string event = client.until("\n\n");
    id = event.substr(4, event.find('\n') - 4);
  }
  EXPECT_TRUE(eventually([&] { return hub.listeners() == 0; }));  // noticed without writing to it
  hub.publish("a", "x", "2");
  hub.publish("a", "x", "3");
  Client back = listening(running, "a", "Last-Event-ID: " + id + "\r\n");
  EXPECT_THAT(back.until("\n\n"), HasSubstr("data: 2\n"));
  EXPECT_THAT(back.until("\n\n"), HasSubstr("data: 3\n"));
  hub.publish("a", "x", "4");
  EXPECT_THAT(back.until("\n\n"), HasSubstr("data: 4\n"));
  Client lost = listening(running, "a", "Last-Event-ID: another-start-5\r\n");
  EXPECT_THAT(lost.until("\n\n"), HasSubstr("event: missed\n"));
}

TEST(Stream, TwoHundredPagesHearEverything) {
  Hub hub;
  Running running(router(hub));
  constexpr int kPages = 200, kEvents = 20;
  std::vector<Client> pages;
  for (int i = 0; i < kPages; ++i) pages.push_back(listening(running, "a"));
  EXPECT_EQ(hub.listeners("a"), static_cast<std::size_t>(kPages));
  std::thread second([&hub] {
    for (int i = 0; i < kEvents; ++i) hub.publish("a", "x", "more");
  });
  for (int i = 0; i < kEvents; ++i) hub.publish("a", "x", "more");
  second.join();
  for (Client& page : pages)
    for (int i = 0; i < 2 * kEvents; ++i)
      EXPECT_THAT(page.until("\n\n"), HasSubstr("data: more\n"));
  pages.clear();
  EXPECT_TRUE(
      eventually([&] { return hub.listeners() == 0 && running.server().connections() == 0; }));
}

TEST(Stream, ASilentStreamIsKeptAlive) {
  Hub hub;
  ServerOptions options;
  options.patience.heartbeat = std::chrono::milliseconds(20);
  Running running(router(hub), options);
  Client client = listening(running, "a");
  EXPECT_EQ(client.until("\n\n"), ":\n\n");
  EXPECT_EQ(client.until("\n\n"), ":\n\n");
}

TEST(Stream, AReaderWhoIsTooSlowIsLeftAndTheOthersAreNot) {
  Hub hub;
  ServerOptions options;
  options.limits.stream_queue = 8;
  Running running(router(hub), options);
  Client slow = listening(running, "a");
  Client quick = listening(running, "b");
  EXPECT_EQ(hub.listeners(), 2U);
  const std::string piece(200'000, 'x');
  // More than the network and the queue can hold, unread.
  EXPECT_TRUE(eventually([&] {
    hub.publish("a", "x", piece);
    return hub.listeners() == 1;
  }));
  hub.publish("b", "x", "1");
  EXPECT_THAT(quick.until("\n\n"), HasSubstr("data: 1\n"));
}

TEST(Stream, SigningOutEndsTheStream) {
  Hub hub;
  Running running(router(hub));
  Client mine = listening(running, "a"), other = listening(running, "b");
  hub.publish("a", "x", "last word");
  EXPECT_EQ(hub.end("key of a"), 1U);
  EXPECT_THAT(mine.rest(), HasSubstr("data: last word\n\n"));
  hub.publish("b", "x", "1");
  EXPECT_THAT(other.until("\n\n"), HasSubstr("data: 1\n"));
}

TEST(Stream, AHeadAsksForNoStream) {
  Hub hub;
  Running running(router(hub));
  Client client = running.client();
  client.send("HEAD /events/a HTTP/1.1\r\nHost: localhost\r\n\r\n");
  EXPECT_EQ(client.answer(true).header("content-type"), "text/event-stream");
  EXPECT_EQ(hub.listeners(), 0U);
}

TEST(Stream, APageThatTalksOnItsStreamIsCutOff) {
  Hub hub;
  Running running(router(hub));
  Client client = listening(running, "a");
  while (client.try_send(std::string(4096, 'x')) && hub.listeners() > 0) {
  }
  EXPECT_TRUE(eventually([&] { return hub.listeners() == 0; }));
}

}  // namespace
}  // namespace serve::http
