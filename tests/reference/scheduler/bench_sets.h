// Published instance sets. They are not part of this project; tests that need them are skipped
// where they are not at hand.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

namespace scheduler::testing {

/// The folder with SET.tar.xz and best_known.csv: named by BENCHBELL_BENCH, else beside the
/// project.
std::filesystem::path bench_folder();

/// A set unpacked for as long as this lives; nothing when it is not at hand.
class BenchSet {
 public:
  explicit BenchSet(const std::string& set);
  ~BenchSet();
  BenchSet(const BenchSet&) = delete;
  BenchSet& operator=(const BenchSet&) = delete;

  bool at_hand() const { return !folder_.empty(); }
  /// By name. Errors: std::runtime_error when the archive cannot be unpacked.
  const std::vector<std::filesystem::path>& instances() const { return instances_; }
  std::filesystem::path instance(const std::string& name) const { return folder_ / set_ / name; }

 private:
  std::string set_;
  std::filesystem::path folder_;
  std::vector<std::filesystem::path> instances_;
};

}  // namespace scheduler::testing
