// refusals.json: one change to a sample file each, and the sentence it earns. Anyone who can read a
// file can add one.
#include <gtest/gtest.h>

#include <filesystem>
#include <regex>
#include <set>

#include <nlohmann/json.hpp>

#include "samples.h"

namespace {

using nlohmann::json;

json refusals() { return json::parse(samples::file("tests/unit/kitchen/refusals.json")); }

std::string changed(const json& refusal) {
  if (refusal.contains("text")) return refusal["text"];
  const std::string of = refusal["of"];
  const json sample = of == "dish"          ? samples::dish()
                      : of == "room"        ? samples::room()
                      : of == "house_rules" ? samples::house_rules()
                                            : samples::lesson();
  return sample.patch(refusal["patch"]).dump();
}

TEST(Refusals, EveryFaultIsToldWithItsPlaceItsSentenceAndARemedy) {
  const json all = refusals();
  for (const json& refusal : all) {
    SCOPED_TRACE(refusal["name"].get<std::string>());
    const base::Problems problems = samples::problems_of(refusal["of"], changed(refusal));
    EXPECT_EQ(problems.size(), refusal["problems"].get<std::size_t>()) << samples::told(problems);
    const auto told = std::find_if(problems.begin(), problems.end(), [&](const base::Problem& p) {
      return p.code == refusal["code"];
    });
    ASSERT_NE(told, problems.end()) << samples::told(problems);
    EXPECT_EQ(told->where, refusal["where"]);
    EXPECT_EQ(told->message, refusal["sentence"]);
    EXPECT_FALSE(told->remedy.empty());
    EXPECT_FALSE(told->file.empty());
  }
}

TEST(Refusals, EverySampleWithoutAChangeIsRead) {
  EXPECT_EQ(samples::told(samples::problems_of("dish", samples::dish().dump())), "");
  EXPECT_EQ(samples::told(samples::problems_of("room", samples::room().dump())), "");
  EXPECT_EQ(samples::told(samples::problems_of("house_rules", samples::house_rules().dump())), "");
  EXPECT_EQ(samples::told(samples::problems_of("lesson", samples::lesson().dump())), "");
}

TEST(Refusals, EveryCodeOfTheReadersIsTriggered) {
  std::set<std::string> triggered;
  const json all = refusals();
  for (const json& refusal : all) triggered.insert(refusal["code"]);
  // These need a file too big to write down or a lesson no file can hold; their tests stand
  // elsewhere in this folder.
  triggered.insert({"file.not_utf8", "file.too_big", "file.too_deep", "file.too_many_values",
                    "file.too_many_problems", "lesson.broken_reference", "lesson.cook_size"});
  const std::regex code("\"((file|field|dish|room|lesson|rules|oven)\\.[a-z_0-9.]+)\"");
  std::set<std::string> written;
  const std::string folder = std::string(BENCHBELL_SOURCE_DIR) + "/src/kitchen";
  for (const auto& entry : std::filesystem::directory_iterator(folder)) {
    if (entry.path().extension() != ".cpp") continue;
    const std::string text = samples::file("src/kitchen/" + entry.path().filename().string());
    for (std::sregex_iterator at(text.begin(), text.end(), code), end; at != end; ++at)
      written.insert((*at)[1]);
  }
  EXPECT_GT(written.size(), 100U);
  EXPECT_EQ(triggered, written);
}

}  // namespace
