// Several people at one desk at once: nothing that was answered with 200 is lost.
#include <gtest/gtest.h>

#include <atomic>
#include <thread>

#include "desk.h"

namespace {

using namespace serve_test;

/// One more in `about` under the writer's name; tried again after every clash, as a page does.
void write_again_and_again(Desk& desk, const std::string& writer, int times,
                           std::atomic<int>& clashes) {
  const Asker asker = desk.open();
  for (int i = 0; i < times; ++i) {
    for (;;) {
      const Answer read = desk.get("/api/documents/lesson/b-two-dishes", &asker);
      json body = read.body.at("body");
      if (!body.contains("about")) body["about"] = json::object();
      body["about"][writer] = body["about"].value(writer, 0) + 1;
      const Answer written = desk.put("/api/documents/lesson/b-two-dishes",
                                      {{"body", body}, {"what", writer}},
                                      read.body.at("version").get<long long>(), &asker);
      if (written.status == 200) break;
      ASSERT_EQ(written.status, 412) << written.text;
      ++clashes;
    }
  }
}

TEST(Writers, TwoOnOneLessonLoseNothing) {
  Desk desk;
  constexpr int kTimes = 25;
  std::atomic<int> clashes{0};
  std::thread one([&] { write_again_and_again(desk, "one", kTimes, clashes); });
  std::thread two([&] { write_again_and_again(desk, "two", kTimes, clashes); });
  one.join();
  two.join();
  const auto [body, version] = desk.document("lesson", "b-two-dishes");
  EXPECT_EQ(body.at("about").at("one"), kTimes);
  EXPECT_EQ(body.at("about").at("two"), kTimes);
  EXPECT_EQ(version, 1 + 2 * kTimes);
  const json history = desk.get("/api/documents/lesson/b-two-dishes/history").body.at("history");
  EXPECT_EQ(history.size(), 1U + 2 * kTimes);
}

TEST(Writers, ReadersSeeWholeAnswersWhileOthersWriteAndPlan) {
  Desk desk;
  const std::string job = desk.post("/api/plan",
                                    {{"lesson", "h-stop-gate-demonstration"}, {"seconds", 2}})
                              .body.at("job");
  std::atomic<bool> end{false};
  std::atomic<int> clashes{0}, answers{0};
  std::thread writer([&] {
    write_again_and_again(desk, "one", 15, clashes);
    end = true;
  });
  std::thread reader([&] {
    while (!end) {
      for (const char* path :
           {"/api/week", "/api/dishes", "/api/dishes/fruit-scones/view", "/api/stores/order"}) {
        EXPECT_EQ(desk.get(path).status, 200) << path;
        ++answers;
      }
    }
  });
  writer.join();
  reader.join();
  EXPECT_GT(answers, 3);
  EXPECT_EQ(desk.ended(job).state, serve::JobState::kDone);
}

TEST(Writers, TwoFirstPeopleAreNotBothLetIn) {
  Desk desk(Fill::kNothing);
  std::atomic<int> made{0};
  const auto add = [&](const std::string& name) {
    if (desk.post("/api/people", {{"name", name}, {"password", kPassword}, {"role", "head"}})
            .status == 201)
      ++made;
  };
  std::thread one([&] { add("Ms Hart"); });
  std::thread two([&] { add("Mr Reed"); });
  one.join();
  two.join();
  EXPECT_EQ(made, 1);
  EXPECT_EQ(desk.store->users().value().size(), 1U);
}

}  // namespace
