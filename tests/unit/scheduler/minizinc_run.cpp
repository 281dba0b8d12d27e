#include "minizinc_run.h"

#include <unistd.h>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>

namespace scheduler::testing {
namespace {

namespace fs = std::filesystem;

/// "levels = [3, 7]" of the last schedule.
std::vector<std::int64_t> levels_in(const std::string& said) {
  const std::string mark = "levels = [";
  const std::size_t from = said.rfind(mark);
  std::vector<std::int64_t> values;
  if (from == std::string::npos) return values;
  const char* at = said.c_str() + from + mark.size();
  for (char* end = nullptr; *at != ']' && *at != '\0'; at = end + (*end == ',' ? 1 : 0))
    values.push_back(std::strtoll(at, &end, 10));
  return values;
}

}  // namespace

bool minizinc_installed() { return std::system("minizinc --version > /dev/null 2>&1") == 0; }

MinizincAnswer minizinc_answer(const std::string& model) {
  static int number = 0;
  const fs::path file = fs::temp_directory_path() / ("benchbell-" + std::to_string(::getpid()) +
                                                     "-" + std::to_string(++number) + ".mzn");
  std::ofstream(file) << model;
  const std::string command = "minizinc --solver gecode '" + file.string() + "' 2>&1";
  MinizincAnswer answer;
  FILE* pipe = ::popen(command.c_str(), "r");
  char part[4096];
  while (pipe != nullptr && std::fgets(part, sizeof part, pipe) != nullptr) answer.said += part;
  if (pipe != nullptr) ::pclose(pipe);
  fs::remove(file);
  answer.proved = answer.said.find("==========") != std::string::npos;
  answer.refuted = answer.said.find("=====UNSATISFIABLE=====") != std::string::npos;
  answer.levels = levels_in(answer.said);
  return answer;
}

}  // namespace scheduler::testing
