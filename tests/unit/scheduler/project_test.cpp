// The reader of published project files, and the check that shares nothing with the engine.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <string>

#include "../../../bench/scheduler/project.h"
#include "scheduler/solve.h"

namespace projects {
namespace {

using ::testing::ElementsAre;
using ::testing::EndsWith;
using ::testing::HasSubstr;
using ::testing::IsEmpty;

std::filesystem::path file_with(const std::string& name, const std::string& text) {
  const std::filesystem::path file = std::filesystem::path(::testing::TempDir()) / name;
  std::ofstream(file) << text;
  return file;
}

std::string fault_of(const std::string& name, const std::string& text) {
  try {
    read_project(file_with(name, text));
  } catch (const ReadError& error) {
    return error.what();
  }
  return "read without a fault";
}

// Two jobs of 3 and 2 that share a resource of 1; job 2 starts at most 4 after job 1.
const std::string kTwoJobs =
    "2\t1\t0\t0\n"
    "0\t1\t1\t1\t[0]\n"
    "1\t1\t1\t2\t[1]\n"
    "2\t1\t2\t3\t1\t[2]\t[-4]\n"
    "3\t1\t0\n"
    "0\t1\t0\t0\n"
    "1\t1\t3\t1\n"
    "2\t1\t2\t1\n"
    "3\t1\t0\t0\n"
    "1\n";

const std::string kSm =
    "jobs (incl. supersource/sink ):  4\n"
    "horizon                       :  5\n"
    "  - renewable                 :  2   R\n"
    "  - nonrenewable              :  0   N\n"
    "PRECEDENCE RELATIONS:\n"
    "jobnr.    #modes  #successors   successors\n"
    "   1        1          2           2   3\n"
    "   2        1          1           4\n"
    "   3        1          1           4\n"
    "   4        1          0\n"
    "REQUESTS/DURATIONS:\n"
    "jobnr. mode duration  R 1  R 2\n"
    "------------------------------\n"
    "  1      1     0       0    0\n"
    "  2      1     3       2    0\n"
    "  3      1     2       1    4\n"
    "  4      1     0       0    0\n"
    "RESOURCEAVAILABILITIES:\n"
    "  R 1  R 2\n"
    "    2    4\n";

TEST(project_reader, minimum_and_maximum_lags_of_progen_max_are_lags_between_starts) {
  const Project project = read_project(file_with("two.sch", kTwoJobs));
  ASSERT_EQ(project.jobs.size(), 4U);
  EXPECT_EQ(project.first_number, 0);
  EXPECT_EQ(project.jobs[1].duration, 3);
  EXPECT_THAT(project.jobs[2].demands, ElementsAre(1));
  EXPECT_THAT(project.capacities, ElementsAre(1));
  ASSERT_EQ(project.lags.size(), 4U);
  EXPECT_EQ(project.lags[3].from, 2);
  EXPECT_EQ(project.lags[3].to, 1);
  EXPECT_EQ(project.lags[3].least, -4);
}

TEST(project_reader, successors_of_sm_start_after_the_whole_duration) {
  const Project project = read_project(file_with("two.sm", kSm));
  ASSERT_EQ(project.jobs.size(), 4U);
  EXPECT_EQ(project.first_number, 1);
  EXPECT_THAT(project.jobs[2].demands, ElementsAre(1, 4));
  EXPECT_THAT(project.capacities, ElementsAre(2, 4));
  ASSERT_EQ(project.lags.size(), 4U);
  EXPECT_EQ(project.lags[2].from, 1);
  EXPECT_EQ(project.lags[2].to, 3);
  EXPECT_EQ(project.lags[2].least, 3);
}

TEST(project_reader, the_short_form_is_told_apart_by_its_first_line) {
  const Project project = read_project(
      file_with("two.rcp", "4 1\n2\n0 0 2 2 3\n3 2 1 4\n2 1\n1 4\n0 0 0\n"));
  ASSERT_EQ(project.jobs.size(), 4U);
  EXPECT_EQ(project.jobs[1].duration, 3);
  ASSERT_EQ(project.lags.size(), 4U);
  EXPECT_EQ(project.lags[3].from, 2);
  EXPECT_EQ(project.lags[3].least, 2);
  EXPECT_EQ(read_project(file_with("max.rcp", kTwoJobs)).lags.size(), 4U);
}

TEST(project_reader, a_fault_names_file_line_and_what_is_wrong) {
  EXPECT_THAT(fault_of("none.sch", ""), EndsWith("none.sch: is empty"));
  EXPECT_THAT(fault_of("word.sch", "2\t1\tx\t0\n"), HasSubstr("word.sch:1: \"x\" is not a whole"));
  EXPECT_THAT(fault_of("short.sch", kTwoJobs.substr(0, 60)), HasSubstr("the file ends"));
  EXPECT_THAT(fault_of("long.sch", kTwoJobs + "1\n"), HasSubstr("long.sch:11: more lines"));
  std::string lag = kTwoJobs;
  lag.replace(lag.find("\t[-4]"), 5, "");
  EXPECT_THAT(fault_of("lag.sch", lag), HasSubstr("lag.sch:4: expected 2 successors"));
  std::string mode = kSm;
  mode.replace(mode.find("   2        1"), 13, "   2        3");
  EXPECT_THAT(fault_of("mode.sm", mode), HasSubstr("mode.sm:8: 3 modes"));
  EXPECT_THAT(fault_of("far.rcp", "4 1\n2\n0 0 1 9\n"), HasSubstr("far.rcp:3: a successor is 9"));
  EXPECT_THAT(fault_of("absent/none.sm", kSm), HasSubstr("cannot be opened"));
}

TEST(project_check, each_kind_of_breach_is_named) {
  const Project project = read_project(file_with("two.sch", kTwoJobs));
  EXPECT_THAT(breaches(project, {0, 0, 3, 5}), IsEmpty());
  EXPECT_THAT(breaches(project, {0, 0, 2, 4}), ElementsAre(HasSubstr("resource 1 at 2: 2 of 1")));
  EXPECT_THAT(breaches(project, {0, 0, 5, 7}), ElementsAre(HasSubstr("less than -4 after")));
  EXPECT_THAT(breaches(project, {0, 0, 3, 4}), ElementsAre(HasSubstr("less than 2 after")));
  EXPECT_THAT(breaches(project, {-1, 0, 3, 5}), ElementsAre(HasSubstr("before 0")));
  EXPECT_THAT(breaches(project, {0, 0, 3}), ElementsAre(HasSubstr("not one start time")));
}

TEST(project_check, the_engine_agrees_on_the_least_makespan) {
  for (const auto& [name, text] :
       {std::pair<const char*, std::string>{"two.sch", kTwoJobs}, {"two.sm", kSm}}) {
    const Project project = read_project(file_with(name, text));
    const scheduler::Outcome outcome = solve(to_problem(project), {});
    ASSERT_EQ(outcome.status, scheduler::Status::kOptimal) << name;
    EXPECT_EQ(outcome.values[0], 5) << name;
  }
}

}  // namespace
}  // namespace projects
