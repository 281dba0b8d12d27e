// The table of task times that travels with the program.
#pragma once

#include <fstream>
#include <sstream>
#include <stdexcept>

#include "kitchen/reading/task_times.h"

namespace tests {

inline const kitchen::TaskTimes& shipped_task_times() {
  static const kitchen::TaskTimes kTimes = [] {
    std::ifstream file(BENCHBELL_SOURCE_DIR "/data/task_times.csv", std::ios::binary);
    std::stringstream text;
    text << file.rdbuf();
    auto read = kitchen::read_task_times(text.str(), "data/task_times.csv");
    if (!read) throw std::runtime_error(read.problems().front().message);
    return std::move(read).value();
  }();
  return kTimes;
}

}  // namespace tests
