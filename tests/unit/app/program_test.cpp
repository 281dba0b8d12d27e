// The command line from outside: exit codes, messages, files written whole or not at all.
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <sys/wait.h>

#include <algorithm>
#include <array>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <sstream>
#include <string>

#include "../../support/schema_walk.h"

namespace {

using testing::HasSubstr;
using testing::Not;

struct Ran {
  int code = -1;
  std::string said;  // both streams
};

Ran benchbell(const std::string& words) {
  const std::string command = std::string("cd '") + BENCHBELL_SOURCE_DIR + "' && '" +
                              BENCHBELL_PROGRAM + "' " + words + " 2>&1";
  std::FILE* pipe = ::popen(command.c_str(), "r");
  Ran ran;
  if (pipe == nullptr) return ran;
  std::array<char, 4096> part{};
  for (std::size_t n = 0; (n = std::fread(part.data(), 1, part.size(), pipe)) > 0;)
    ran.said.append(part.data(), n);
  const int status = ::pclose(pipe);
  ran.code = WIFEXITED(status) ? WEXITSTATUS(status) : -1;
  return ran;
}

// A folder of its own for each test.
class Program : public testing::Test {
 protected:
  void SetUp() override {
    const auto* info = testing::UnitTest::GetInstance()->current_test_info();
    folder_ = std::filesystem::path(testing::TempDir()) /
              ("benchbell_" + std::string(info->name()) + std::to_string(::getpid()));
    std::filesystem::create_directories(folder_);
  }
  void TearDown() override { std::filesystem::remove_all(folder_); }
  std::string at(const std::string& name) const { return (folder_ / name).string(); }
  void write(const std::string& name, const std::string& text) const {
    std::ofstream(at(name), std::ios::binary) << text;
  }
  static std::string text(const std::string& path) {
    std::ifstream in(path, std::ios::binary);
    std::ostringstream all;
    all << in.rdbuf();
    return all.str();
  }
  std::filesystem::path folder_;
};

TEST_F(Program, a_label_is_said_and_written_for_machines) {
  const Ran said = benchbell("label fruit-scones --portions 4 --day-of 'girls 15'");
  EXPECT_EQ(said.code, 0) << said.said;
  EXPECT_THAT(said.said, HasSubstr("4 portions of"));
  EXPECT_THAT(said.said, HasSubstr("girls 15 to 18"));
  EXPECT_THAT(said.said, HasSubstr("labels of your own packets win"));
  EXPECT_THAT(benchbell("label fruit-scones --json").said, HasSubstr("\"kind\": \"label\""));
  EXPECT_THAT(benchbell("label fruit-scones swiss-roll").said, HasSubstr("B  Swiss roll"));
  EXPECT_EQ(benchbell("label fruit-scones --day-of grandmothers").code, 2);
}

TEST_F(Program, a_smallest_change_is_found_or_what_stands_in_the_way) {
  const Ran found = benchbell("develop fruit-scones --seconds 60 --goal 'energy at most 150 kcal'");
  EXPECT_EQ(found.code, 0) << found.said;
  EXPECT_THAT(found.said, HasSubstr("The smallest change that does it"));
  const Ran none = benchbell("develop fruit-scones --seconds 60 --goal 'energy at most 20 kcal'");
  EXPECT_EQ(none.code, 1) << none.said;
  EXPECT_THAT(none.said, HasSubstr("No change within these bounds does it."));
  const Ran wrong = benchbell("develop fruit-scones --goal tasty --keep sultana --swap butter");
  EXPECT_EQ(wrong.code, 2);
  EXPECT_THAT(wrong.said, HasSubstr("'tasty' is not understood"));
  EXPECT_THAT(wrong.said, HasSubstr("Did you mean 'sultanas'?"));
  EXPECT_THAT(wrong.said, HasSubstr("names no other food"));
}

TEST_F(Program, a_text_is_read_with_how_sure_each_line_is_and_becomes_a_dish_file) {
  write("pie.txt", "Bean pie\nServes 4\n1 tin baked beans\n2 xqzv\nBake at 200C for 25 minutes.\n");
  const Ran shown = benchbell("read " + at("pie.txt"));
  EXPECT_EQ(shown.code, 0) << shown.said;
  EXPECT_THAT(shown.said, HasSubstr("sure     1 tin"));
  EXPECT_THAT(shown.said, HasSubstr("guess    2 · 'xqzv'"));
  EXPECT_EQ(
      benchbell("read " + at("pie.txt") + " --json 2>/dev/null | cat > " + at("pie.json")).code, 0);
  EXPECT_EQ(benchbell("check " + at("pie.json")).code, 0);
  EXPECT_EQ(benchbell("read " + at("pie.txt") + " --jsonld | grep -q schema.org").code, 0);
  const Ran footprint = benchbell("read --footprint 'oven 25 min'");
  EXPECT_EQ(footprint.code, 2);
  EXPECT_THAT(footprint.said, HasSubstr("how hot"));
}

TEST_F(Program, a_food_is_looked_up_by_any_name_with_the_source_of_its_figures) {
  const Ran ran = benchbell("foods garlic");
  EXPECT_EQ(ran.code, 0);
  EXPECT_THAT(ran.said, HasSubstr("USDA SR26 11215"));
  EXPECT_THAT(ran.said, HasSubstr("its label decides"));
}

TEST_F(Program, an_unknown_food_is_refused_with_the_way_to_add_it) {
  const Ran ran = benchbell("foods xqzv");
  EXPECT_EQ(ran.code, 2);
  EXPECT_THAT(ran.said, HasSubstr("--foods"));
}

TEST_F(Program, the_schools_own_label_wins_and_a_fault_in_it_names_its_line) {
  write("own.csv", "key,name,match,source,sugars_g\ngarlic,Garlic,label,packet of May,2.5\n");
  EXPECT_THAT(benchbell("foods garlic --foods " + at("own.csv")).said, HasSubstr("packet of May"));
  write("bad.csv", "key,name,sugars_g\ngarlic,Garlic,lots\n");
  const Ran bad = benchbell("foods garlic --foods " + at("bad.csv"));
  EXPECT_EQ(bad.code, 2);
  EXPECT_THAT(bad.said, HasSubstr("line 2"));
}

TEST_F(Program, the_sheet_of_allergens_says_that_labels_decide_and_nothing_is_free_from) {
  const Ran ran = benchbell("allergens fruit-scones");
  EXPECT_EQ(ran.code, 0);
  EXPECT_THAT(ran.said, HasSubstr("milk (butter and milk)"));
  EXPECT_THAT(ran.said, HasSubstr("Check the label"));
  EXPECT_THAT(ran.said, HasSubstr("Labels and the school's own records decide"));
}

// The demo in a folder of its own, with one text of one lesson changed.
std::string changed_lesson(const std::filesystem::path& folder, const std::string& lesson,
                           const std::string& from, const std::string& to) {
  const std::filesystem::path demo = folder / "demo";
  if (!std::filesystem::exists(demo))
    std::filesystem::copy(std::string(BENCHBELL_SOURCE_DIR) + "/demo", demo,
                          std::filesystem::copy_options::recursive);
  const std::filesystem::path file = demo / "lessons" / lesson;
  std::ifstream in(file, std::ios::binary);
  std::string all((std::istreambuf_iterator<char>(in)), std::istreambuf_iterator<char>());
  const auto at = all.find(from);
  if (at == std::string::npos) return "the lesson does not say " + from;
  std::ofstream(file, std::ios::binary) << all.replace(at, from.size(), to);
  return file.string();
}

TEST_F(Program, a_cook_who_makes_what_they_avoid_gets_what_would_settle_it) {
  const std::string lesson = changed_lesson(folder_, "b-two-dishes.json",
                                            "scones: oat drink and spread", "scones");
  const Ran ran = benchbell("allergens " + lesson);
  EXPECT_EQ(ran.code, 1) << ran.said;
  EXPECT_THAT(ran.said, HasSubstr("Change it"));
  EXPECT_THAT(ran.said, HasSubstr("Make the variant 'oat drink and spread'"));
  EXPECT_EQ(benchbell("check " + lesson).code, 2);
}

TEST_F(Program, not_in_the_room_reaches_the_lesson_before) {
  const std::string before = changed_lesson(folder_, "a-first-hob.json", "2026-09-22",
                                            "2026-11-17");
  const std::string lesson = changed_lesson(
      folder_, "b-two-dishes.json", "\"date\": \"2026-11-17\"", "\"date\":  \"2026-11-17\"");
  write("needs.csv",
        "cook,need,reach,lesson\nDaisy M.,celery,not in the room,\"9K, two dishes to eat "
        "together\"\n");
  const Ran ran = benchbell("allergens --needs " + at("needs.csv") + " " + before + " " + lesson);
  EXPECT_EQ(ran.code, 1) << ran.said;
  EXPECT_THAT(ran.said, HasSubstr("first time at the hob had it until 10:05"));
  EXPECT_THAT(ran.said, HasSubstr("dish cloths and tea towels"));
}

TEST_F(Program, an_unread_label_stops_the_plan_until_it_is_read) {
  const std::string lesson = changed_lesson(
      folder_, "b-two-dishes.json",
      "\"scones: oat drink and spread\"],\n      \"avoids\": [\"milk\"]",
      "\"scones: oat drink and spread\"],\n      \"avoids\": [\"sulphites\"]");
  const std::string plan = "plan --seconds 0.5 --runs 50 " + lesson;
  const Ran unread = benchbell(plan);  // the sultanas of the scones
  EXPECT_EQ(unread.code, 2) << unread.said;
  EXPECT_THAT(unread.said, HasSubstr("--labels"));
  write("labels.csv", "food,pack,read_on,contains,may_contain\nsultanas,500 g bag,2026-11-16,,\n");
  const Ran read = benchbell(plan + " --labels " + at("labels.csv"));
  EXPECT_NE(read.code, 2) << read.said;
}

TEST_F(Program, plans_from_four_answers) {
  const Ran ran = benchbell(
      "plan --dish fruit-scones --pupils 24 --in pairs --cookers 6 --sinks 6 --from 09:05 --to "
      "10:15 --purpose take-home --runs 100");
  EXPECT_EQ(ran.code, 0) << ran.said;
  EXPECT_THAT(ran.said, HasSubstr("10:15"));
}

TEST_F(Program, says_does_not_fit_with_exit_code_one) {
  const Ran ran = benchbell(
      "plan --dish fruit-scones --pupils 24 --in pairs --cookers 6 --sinks 6 --from 09:05 --to "
      "09:30 --runs 100");
  EXPECT_EQ(ran.code, 1) << ran.said;
}

TEST_F(Program, names_the_nearest_dish_when_there_is_none_of_that_name) {
  const Ran ran = benchbell("plan --dish lentl-dhal");
  EXPECT_EQ(ran.code, 2);
  EXPECT_THAT(ran.said, HasSubstr("lentil-dhal"));
}

TEST_F(Program, names_every_wrong_answer_at_once) {
  const Ran ran = benchbell(
      "plan --dish fruit-scones --pupils 900 --sinks 0 --from 10:00 --to 09:00");
  EXPECT_EQ(ran.code, 2);
  EXPECT_THAT(ran.said, HasSubstr("pupils"));
  EXPECT_THAT(ran.said, HasSubstr("sinks"));
  EXPECT_THAT(ran.said, HasSubstr("--to"));
}

TEST_F(Program, refuses_an_unknown_option_with_exit_code_two) {
  EXPECT_EQ(benchbell("plan --colour-me").code, 2);
}

TEST_F(Program, asks_for_a_lesson_when_it_is_given_none) {
  const Ran ran = benchbell("plan");
  EXPECT_EQ(ran.code, 2);
  EXPECT_THAT(ran.said, HasSubstr("--dish"));
}

TEST_F(Program, has_help_with_examples_on_every_command) {
  for (const char* command : {"plan", "check", "dishes"}) {
    const Ran ran = benchbell(std::string(command) + " --help");
    EXPECT_EQ(ran.code, 0);
    EXPECT_THAT(ran.said, HasSubstr("Example")) << command;
  }
}

TEST_F(Program, checks_all_files_of_the_demo) {
  const Ran ran = benchbell(
      "check demo/dishes/*.json demo/rooms/*.json demo/lessons/*.json demo/house-rules.json");
  EXPECT_EQ(ran.code, 0) << ran.said;
}

TEST_F(Program, says_what_is_wrong_with_each_kind_of_rubbish) {
  write("empty.json", "");
  write("noise.json", std::string(10 * 1024 * 1024, '\x9c'));
  write("deep.json", std::string(200000, '['));
  write("list.json", "[1, 2, 3]");
  for (const char* name : {"empty.json", "noise.json", "deep.json", "list.json", "missing.json"}) {
    const Ran ran = benchbell("check '" + at(name) + "'");
    EXPECT_EQ(ran.code, 2) << name;
    EXPECT_THAT(ran.said, HasSubstr(name));
    EXPECT_LT(ran.said.size(), 4000U) << name;
  }
}

TEST_F(Program, prints_a_dish_that_can_be_changed_and_planned_again) {
  const std::string mine = at("mine.json");
  ASSERT_EQ(benchbell("dishes fruit-scones > '" + mine + "'").code, 0);
  const Ran ran = benchbell("plan --dish '" + mine +
                            "' --pupils 8 --cookers 4 --sinks 4 --from 09:00 --to 10:15 --runs 50");
  EXPECT_EQ(ran.code, 0) << ran.said;
}

TEST_F(Program, writes_the_picture_whole_and_leaves_nothing_beside_it) {
  const Ran ran = benchbell("plan demo/lessons/a-first-hob.json --runs 50 --svg '" +
                            at("plan.svg") + "' --html '" + at("plan.html") + "'");
  EXPECT_EQ(ran.code, 0) << ran.said;
  EXPECT_THAT(text(at("plan.svg")), HasSubstr("</svg>"));
  EXPECT_THAT(text(at("plan.html")), HasSubstr("</html>"));
  EXPECT_EQ(std::distance(std::filesystem::directory_iterator(folder_),
                          std::filesystem::directory_iterator{}),
            2);
}

TEST_F(Program, writes_the_problem_behind_the_plan_for_other_solvers) {
  const Ran ran = benchbell("plan demo/lessons/a-first-hob.json --runs 50 --export-minizinc '" +
                            at("hob.mzn") + "'");
  EXPECT_EQ(ran.code, 0) << ran.said;
  EXPECT_THAT(ran.said, HasSubstr("The model is in"));
  EXPECT_THAT(text(at("hob.mzn")), HasSubstr("minimize goal;"));
}

TEST_F(Program, writes_the_model_of_a_lesson_that_does_not_fit_as_well) {
  const Ran ran = benchbell(
      "plan demo/lessons/e-does-not-fit.json --seconds 1 --export-minizinc '" + at("e.mzn") + "'");
  EXPECT_EQ(ran.code, 1) << ran.said;
  EXPECT_THAT(text(at("e.mzn")), HasSubstr("% level 1 G1 overrun"));
}

TEST_F(Program, says_so_when_the_picture_cannot_be_written) {
  const Ran ran = benchbell("plan demo/lessons/a-first-hob.json --runs 50 --svg '" +
                            at("no/such/folder.svg") + "'");
  EXPECT_EQ(ran.code, 2);
  EXPECT_THAT(ran.said, HasSubstr("cannot be written"));
}

TEST_F(Program, is_quiet_while_it_works_when_nobody_watches) {
  EXPECT_THAT(benchbell("plan demo/lessons/a-first-hob.json --runs 50").said,
              Not(HasSubstr("Ctrl-C")));
}

TEST_F(Program, gives_the_same_answer_twice) {
  const std::string words = "plan demo/lessons/a-first-hob.json --runs 200 --json";
  const auto without_clock = [](std::string said) {
    // How long it took is the only thing that may differ.
    for (std::size_t at = said.find("seconds"); at != std::string::npos;
         at = said.find("seconds", at + 1)) {
      const std::size_t end = said.find('\n', at);
      said.erase(at, end == std::string::npos ? end : end - at);
    }
    return said;
  };
  EXPECT_EQ(without_clock(benchbell(words).said), without_clock(benchbell(words).said));
}

TEST_F(Program, keeps_engine_words_out_of_what_a_teacher_reads) {
  for (const char* lesson : {"a-first-hob", "c-frying-in-turns", "e-does-not-fit"}) {
    const std::string said = benchbell(std::string("plan demo/lessons/") + lesson +
                                       ".json --runs 50 --seconds 2")
                                 .said;
    for (const char* word : {"makespan", "resource", " lag", "lower bound", "solver", "activity"})
      EXPECT_THAT(said, Not(HasSubstr(word))) << lesson;
  }
}

TEST_F(Program, RatiosShowsTheBandsAndWhatWasCounted) {
  const Ran ran = benchbell("ratios fruit-scones --details");
  EXPECT_EQ(ran.code, 0);
  EXPECT_THAT(ran.said, HasSubstr("scone dough"));
  EXPECT_THAT(ran.said, HasSubstr("22.22, within 16 to 30"));  // 50 g butter to 225 g flour
  EXPECT_THAT(ran.said, HasSubstr("DR037"));
  EXPECT_THAT(ran.said, HasSubstr("common practice"));
}

TEST_F(Program, AChangeThatFailsEndsWithOneAndSaysWhy) {
  const Ran ran = benchbell("ratios swiss-roll --change 'leave out the eggs'");
  EXPECT_EQ(ran.code, 1);
  EXPECT_THAT(ran.said, HasSubstr("will fail"));
  EXPECT_THAT(ran.said, HasSubstr("foam"));
  EXPECT_EQ(benchbell("ratios fruit-scones --change 'add 2 g cinnamon'").code, 0);
  EXPECT_EQ(benchbell("ratios fruit-scones --change 'make it nicer'").code, 2);
}

TEST_F(Program, ScaleMakesSetsTinsAndWhatThereIs) {
  const Ran sets = benchbell("scale fruit-scones --cooks 12 --spares 1 --demonstration");
  EXPECT_EQ(sets.code, 0);
  EXPECT_THAT(sets.said, HasSubstr("14 sets"));
  EXPECT_THAT(sets.said, HasSubstr("3.15 kg"));  // 14 x 225 g flour
  const Ran tin = benchbell("scale polenta-cake --tin 'round 20' --to-tin 'round 23'");
  EXPECT_THAT(tin.said, HasSubstr("1.3225"));
  EXPECT_THAT(benchbell("scale fruit-scones --have 'flour 900 g'").said, HasSubstr("times 4"));
  EXPECT_THAT(benchbell("scale fruit-scones --tin 'round 20'").said, HasSubstr("Two tins"));
  EXPECT_EQ(benchbell("scale fruit-scones --portions 8 --have 'flour 900 g'").code, 2);
}

TEST_F(Program, paper_makes_the_three_kinds_of_page_into_a_folder) {
  const Ran ran = benchbell("paper demo/lessons/a-first-hob.json --seconds 1 --out '" +
                            at("sheets") + "'");
  EXPECT_EQ(ran.code, 0) << ran.said;
  for (const char* name : {"teacher", "wall", "bays"})
    EXPECT_EQ(text(at(std::string("sheets/") + name + ".pdf")).substr(0, 5), "%PDF-") << name;
}

TEST_F(Program, paper_into_one_file_is_the_same_file_twice) {
  const std::string words =
      "paper demo/lessons/a-first-hob.json --what probe,rota,labels,letter "
      "--seconds 0.5 --today 2026-09-21 --out '";
  EXPECT_EQ(benchbell(words + at("one.pdf") + "'").code, 0);
  EXPECT_EQ(benchbell(words + at("two.pdf") + "'").code, 0);
  EXPECT_EQ(text(at("one.pdf")), text(at("two.pdf")));
}

TEST_F(Program, paper_that_needs_no_plan_plans_nothing_and_can_be_edited) {
  const Ran ran = benchbell(
      "paper demo/lessons/b-two-dishes.json --what allergies,risks,letter "
      "--out '" +
      at("sheets") + "'");
  EXPECT_EQ(ran.code, 0) << ran.said;  // this lesson may not be planned before labels are read
  EXPECT_EQ(text(at("sheets/risks.odt")).substr(30, 8), "mimetype");
  EXPECT_THAT(text(at("sheets/letter.txt")), HasSubstr("Please bring"));
}

TEST_F(Program, paper_prints_no_times_that_do_not_fit) {
  const Ran ran = benchbell("paper demo/lessons/e-does-not-fit.json --seconds 1 --out '" +
                            at("sheets") + "'");
  EXPECT_EQ(ran.code, 1);
  EXPECT_TRUE(std::filesystem::exists(at("sheets/teacher.pdf")));
  EXPECT_FALSE(std::filesystem::exists(at("sheets/wall.pdf")));
}

TEST_F(Program, paper_says_which_sheets_there_are) {
  const Ran ran = benchbell("paper demo/lessons/a-first-hob.json --what teacher,poster");
  EXPECT_EQ(ran.code, 2);
  EXPECT_THAT(ran.said, HasSubstr("poster"));
  EXPECT_THAT(ran.said, HasSubstr("picture"));
  EXPECT_EQ(benchbell("paper demo/lessons/a-first-hob.json --what order").code, 2);
  EXPECT_EQ(benchbell("paper demo/lessons/a-first-hob.json --what labels --stickers 9x9").code, 2);
}

constexpr const char* kWeek =
    "demo/weeks/week-47.json --prices demo/stores/prices.csv --stock demo/stores/stock.csv ";

TEST_F(Program, what_is_written_for_machines_keeps_its_published_schema) {
  const auto keeps = [&](const std::string& name, const std::string& words) {
    const std::string file = at(name + ".json");
    const Ran ran = benchbell(words + " > " + file);
    EXPECT_TRUE(ran.code == 0 || ran.code == 1) << words << ran.said;
    const tests::Json all = tests::schema(name);
    EXPECT_EQ(tests::schema_fault(all, all, tests::Json::parse(text(file)), ""), "") << words;
  };
  keeps("label", "label frittata --json");
  keeps("allergens",
        "allergens swiss-roll 'fruit-scones: oat drink and spread' demo/lessons/b-two-dishes.json "
        "demo/lessons/d-half-groups.json --json");
  keeps("order", std::string("order ") + kWeek + "--today 2026-11-12 --format json");
  const std::string sent = at("order.json");
  write("ticks.csv", "line,came,use_by,instead,contains\n1,0,,,\n2,1,2027-05-01,another make,\n");
  keeps("delivery", std::string("delivery ") + kWeek + "--sent " + sent + " --ticks " +
                        at("ticks.csv") + " --today 2026-11-16 --format json");
}

TEST_F(Program, a_delivery_is_ticked_off_and_put_away) {
  const std::string sent = at("sent.json");
  ASSERT_EQ(
      benchbell(std::string("order ") + kWeek + "--today 2026-11-12 --format json --out " + sent)
          .code,
      0);
  const std::string come = std::string("delivery ") + kWeek + "--today 2026-11-16 --sent " + sent;
  const Ran list = benchbell(come);
  EXPECT_EQ(list.code, 0) << list.said;
  EXPECT_THAT(list.said, HasSubstr("[ ] 1. "));
  ASSERT_EQ(benchbell(come + " --format csv --out " + at("ticks.csv")).code, 0);
  // Everything came but the first line; the second is of another make nobody has read.
  std::string ticked = "line,came,instead\n";
  const std::string sheet = text(at("ticks.csv"));
  const auto rows = std::count(sheet.begin(), sheet.end(), '\n') - 1;
  for (long row = 1; row <= rows; ++row)
    ticked += std::to_string(row) + (row == 1 ? ",0," : ",99,") + (row == 2 ? "another make" : "") +
              "\n";
  write("came.csv", ticked);
  const Ran done = benchbell(come + " --ticks " + at("came.csv") + " --stock-out " +
                             at("stock.csv"));
  EXPECT_EQ(done.code, 1) << done.said;
  EXPECT_THAT(done.said, HasSubstr("Did not come"));
  EXPECT_THAT(done.said, HasSubstr("counts as all fourteen"));
  EXPECT_GT(text(at("stock.csv")).size(),
            text(std::string(BENCHBELL_SOURCE_DIR) + "/demo/stores/stock.csv").size());
  EXPECT_EQ(benchbell("stock " + at("stock.csv") + " --today 2026-11-16").code, 0);
}

TEST_F(Program, a_week_is_checked_like_any_other_file) {
  const Ran good = benchbell("check demo/weeks/week-47.json");
  EXPECT_EQ(good.code, 0) << good.said;
  EXPECT_THAT(good.said, HasSubstr("week 'Week 47, Quillbridge School', 6 lessons"));
  write("week.json", R"({"kind": "week", "version": 1, "title": "No lessons said"})");
  EXPECT_EQ(benchbell("check " + at("week.json")).code, 2);
}

TEST_F(Program, a_diet_of_the_list_refuses_the_dish_it_meets) {
  write("needs.csv", "cook,need,reach\nnobody of that name,vegan,may not eat\n");
  EXPECT_EQ(benchbell("plan demo/lessons/a-first-hob.json --needs " + at("needs.csv")).code, 2);
  // Zara and Yusuf fry spring rolls in wrappers that hold egg; to touch them is too much.
  write("needs.csv", "cook,need,reach\nYusuf I. and Zara D.,vegan,may not touch\n");
  const std::string quick = " --seconds 0.2 --runs 20 --needs " + at("needs.csv");
  const Ran refused = benchbell("plan demo/lessons/c-frying-in-turns.json" + quick);
  EXPECT_EQ(refused.code, 2);
  EXPECT_THAT(refused.said, HasSubstr("Zara D. (vegan): Shallow-fried spring rolls"));
  write("needs.csv", "cook,need,reach\nGabriel A. and Holly B.,sesame,may not touch\n");
  const Ran noted = benchbell("plan demo/lessons/h-stop-gate-demonstration.json" + quick);
  EXPECT_EQ(noted.code, 0) << noted.said;
  EXPECT_THAT(noted.said, HasSubstr("who goes first: Gabriel A. and Holly B."));
}

}  // namespace
