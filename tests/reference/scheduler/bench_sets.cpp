#include "bench_sets.h"

#include <gtest/gtest.h>
#include <unistd.h>

#include <algorithm>
#include <cstdlib>
#include <stdexcept>
#include <string>

namespace scheduler::testing {

namespace fs = std::filesystem;

fs::path bench_folder() {
  if (const char* named = std::getenv("BENCHBELL_BENCH")) return named;
  return fs::path(BENCHBELL_SOURCE_DIR) / ".." / "shared" / "bench";
}

BenchSet::BenchSet(const std::string& set) : set_(set) {
  const fs::path archive = bench_folder() / (set + ".tar.xz");
  if (!fs::exists(archive)) return;
  // The process's number: two runs on one machine must not remove each other's files.
  const fs::path unpacked = fs::path(::testing::TempDir()) /
                            ("benchbell_" + set + "_" + std::to_string(::getpid()));
  fs::create_directories(unpacked);
  const std::string command = "tar -xJf '" + archive.string() + "' -C '" + unpacked.string() + "'";
  if (std::system(command.c_str()) != 0) throw std::runtime_error(command);
  folder_ = unpacked;
  for (const auto& entry : fs::directory_iterator(folder_ / set))
    instances_.push_back(entry.path());
  std::sort(instances_.begin(), instances_.end());
}

BenchSet::~BenchSet() {
  std::error_code ignored;  // what is left over lies in the folder for temporary files
  if (at_hand()) fs::remove_all(folder_, ignored);
}

}  // namespace scheduler::testing
