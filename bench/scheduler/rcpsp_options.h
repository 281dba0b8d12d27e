// The command line of rcpsp.
#pragma once

#include <cstdint>
#include <filesystem>
#include <stdexcept>
#include <string>
#include <vector>

namespace projects {

struct Arguments {
  std::vector<std::filesystem::path> files;
  double seconds = 10;
  int threads = 1;
  std::uint64_t seed = 1;
  std::filesystem::path csv;       ///< empty: standard output
  std::filesystem::path proof;     ///< of the one instance, empty: none
  std::filesystem::path schedule;  ///< folder, empty: none
  std::filesystem::path known;     ///< table of best known values, empty: none
  std::string set;                 ///< its set
  bool help = false;
};

class UsageError : public std::runtime_error {
 public:
  using std::runtime_error::runtime_error;
};

/// Errors: UsageError with a sentence.
Arguments read_arguments(const std::vector<std::string>& words);

extern const char* const kHelp;

}  // namespace projects
