#include "serve/http/events.h"

#include <gtest/gtest.h>

#include <stdexcept>
#include <thread>

#include "serve/http/message.h"

namespace serve::http {
namespace {

struct Ear : Listener {
  void hear(std::shared_ptr<const std::string> frame) override { heard += *frame; }
  void end() override { ended = true; }
  std::string heard;
  bool ended = false;
};

EventStream to(std::vector<std::string> channels, std::string after = {}, std::string key = {}) {
  EventStream out;
  out.channels = std::move(channels);
  out.after = std::move(after);
  out.key = std::move(key);
  return out;
}

/// The "data" of every event of a stream, read as the standard says (WHATWG HTML, 9.2.6).
std::vector<std::string> data_of(const std::string& stream) {
  std::vector<std::string> out;
  std::string data;
  bool any = false;
  for (std::size_t at = 0; at < stream.size();) {
    const auto end = stream.find('\n', at);
    const std::string line = stream.substr(at, end - at);
    at = end + 1;
    if (line.empty()) {
      if (any) out.push_back(data.substr(0, data.size() - 1));
      data.clear();
      any = false;
    } else if (line.rfind("data: ", 0) == 0) {
      data += line.substr(6) + '\n';
      any = true;
    }
  }
  return out;
}

using Texts = std::vector<std::string>;

TEST(Events, AFrameIsAsTheStandardSays) {
  EXPECT_EQ(event_frame("7", "state", "{}"), "id: 7\nevent: state\ndata: {}\n\n");
  EXPECT_EQ(event_frame("", "", ""), "data: \n\n");
  EXPECT_EQ(event_frame("", "", "a\nb\r\nc\rd\n"),
            "data: a\ndata: b\ndata: c\ndata: d\ndata: \n\n");
  EXPECT_THROW(static_cast<void>(event_frame("", "a\nb", "")), std::invalid_argument);
  EXPECT_THROW(static_cast<void>(event_frame("a\rb", "", "")), std::invalid_argument);
}

TEST(Events, OnlyThoseOnTheChannelHear) {
  Hub hub;
  const auto one = std::make_shared<Ear>(), two = std::make_shared<Ear>();
  EXPECT_EQ(hub.join(one, to({"lesson/1", "news", "news"})), "");
  EXPECT_EQ(hub.join(two, to({"lesson/2"})), "");
  hub.publish("lesson/1", "state", "a");
  hub.publish("news", "n", "b");
  hub.publish("lesson/2", "state", "c");
  EXPECT_EQ(data_of(one->heard), (Texts{"a", "b"}));
  EXPECT_EQ(data_of(two->heard), (Texts{"c"}));
  EXPECT_EQ(hub.listeners(), 2U);
  EXPECT_EQ(hub.listeners("news"), 1U);
  hub.leave(one.get());
  hub.publish("news", "n", "d");
  EXPECT_EQ(data_of(one->heard), (Texts{"a", "b"}));
  EXPECT_EQ(hub.listeners("news"), 0U);
}

TEST(Events, WhoComesBackHearsWhatWasMissedInOrder) {
  Hub hub;
  const std::string first = hub.publish("a", "x", "1");
  hub.publish("b", "x", "2");
  hub.publish("a", "x", "3");
  hub.publish("c", "x", "4");
  const auto ear = std::make_shared<Ear>();
  EXPECT_EQ(data_of(hub.join(ear, to({"b", "a"}, first))), (Texts{"2", "3"}));
  const auto fresh = std::make_shared<Ear>();
  EXPECT_EQ(hub.join(fresh, to({"a"})), "");
  EXPECT_EQ(hub.join(std::make_shared<Ear>(), to({"a"}, hub.last_id())), "");
}

TEST(Events, WhoWasAwayTooLongIsToldSo) {
  Hub hub({3, 100'000, 100});
  const std::string first = hub.publish("a", "x", "0");
  const std::string second = hub.publish("a", "x", "1");
  for (int i = 2; i < 5; ++i) hub.publish("a", "x", std::to_string(i));
  const auto came = [&](const std::string& after) {
    return hub.join(std::make_shared<Ear>(), to({"a"}, after));
  };
  EXPECT_EQ(data_of(came(second)), (Texts{"2", "3", "4"}));  // nothing of it is lost
  EXPECT_EQ(came(first), event_frame(hub.last_id(), "missed", ""));
  EXPECT_EQ(came("other-1"), event_frame(hub.last_id(), "missed", ""));  // of another start
  EXPECT_EQ(came("rubbish\n"), event_frame(hub.last_id(), "missed", ""));
  Hub other;
  EXPECT_EQ(other.join(std::make_shared<Ear>(), to({"a"}, first)),
            event_frame(other.last_id(), "missed", ""));
}

TEST(Events, LongEventsAreKeptForLess) {
  Hub hub({64, 1000, 100});
  const std::string first = hub.publish("a", "x", "short");
  hub.publish("a", "x", std::string(2000, 'l'));
  EXPECT_NE(hub.join(std::make_shared<Ear>(), to({"a"}, first)).find("event: missed"),
            std::string::npos);
}

TEST(Events, ForgottenChannelsAreNotTakenForSilentOnes) {
  Hub hub({64, 100'000, 2});
  const std::string start = hub.publish("a", "x", "1");
  hub.publish("a", "x", "2");
  hub.publish("b", "x", "3");
  hub.publish("c", "x", "4");  // there is room for two: "a" goes
  const auto gap = [&](const std::string& channel, const std::string& after) {
    return hub.join(std::make_shared<Ear>(), to({channel}, after)).find("missed") !=
           std::string::npos;
  };
  EXPECT_TRUE(gap("a", start));
  EXPECT_FALSE(gap("a", hub.last_id()));
  hub.publish("a", "x", "5");  // it exists anew and still lacks "2"
  EXPECT_TRUE(gap("a", start));
}

TEST(Events, AFollowedChannelIsNeverForgotten) {
  Hub hub({64, 100'000, 2});
  const auto ear = std::make_shared<Ear>();
  hub.join(ear, to({"a"}));
  for (int i = 0; i < 20; ++i) hub.publish("b" + std::to_string(i), "x", "");
  hub.publish("a", "x", "still here");
  EXPECT_EQ(data_of(ear->heard), (Texts{"still here"}));
}

TEST(Events, TheOpeningComesFirst) {
  Hub hub;
  const std::string before = hub.last_id();
  hub.publish("a", "x", "change");
  EventStream stream = to({"a"}, before);
  stream.opening = event_frame("", "state", "all");
  EXPECT_EQ(data_of(hub.join(std::make_shared<Ear>(), stream)), (Texts{"all", "change"}));
}

TEST(Events, SigningOutEndsOnlyOnesOwnStreams) {
  Hub hub;
  const auto mine = std::make_shared<Ear>(), other = std::make_shared<Ear>();
  hub.join(mine, to({"a"}, "", "session 1"));
  hub.join(other, to({"a"}, "", "session 2"));
  EXPECT_EQ(hub.end("session 1"), 1U);
  EXPECT_TRUE(mine->ended);
  EXPECT_FALSE(other->ended);
  hub.publish("a", "x", "1");
  EXPECT_EQ(mine->heard, "");
  EXPECT_EQ(data_of(other->heard), (Texts{"1"}));
  EXPECT_EQ(hub.end("nobody"), 0U);
  EXPECT_EQ(hub.end_channel("a"), 1U);
  EXPECT_TRUE(other->ended);
  EXPECT_EQ(hub.listeners(), 0U);
  EXPECT_EQ(hub.end_channel("a"), 0U);
}

TEST(Events, ManyMayPublishAtOnce) {
  Hub hub;
  const auto ear = std::make_shared<Ear>();
  hub.join(ear, to({"a"}));
  std::vector<std::thread> threads;
  for (int t = 0; t < 4; ++t)
    threads.emplace_back([&hub] {
      for (int i = 0; i < 100; ++i) hub.publish("a", "x", "1");
    });
  for (auto& thread : threads) thread.join();
  EXPECT_EQ(data_of(ear->heard).size(), 400U);
}

TEST(Events, TheLastIdIsInTheHeaderOrInTheAddress) {
  Request request;
  EXPECT_EQ(last_event_id(request), "");
  request.query = {{"after", "x-1"}};
  EXPECT_EQ(last_event_id(request), "x-1");
  request.headers = {{"last-event-id", "x-2"}};
  EXPECT_EQ(last_event_id(request), "x-2");
}

}  // namespace
}  // namespace serve::http
