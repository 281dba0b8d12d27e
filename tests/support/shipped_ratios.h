// The table of working ratios that travels with the program, read once for a test program.
#pragma once

#include <fstream>
#include <sstream>
#include <stdexcept>

#include "kitchen/ratios/preparations.h"

namespace tests {

inline const kitchen::Preparations& shipped_ratios() {
  static const kitchen::Preparations kRatios = [] {
    std::ifstream file(BENCHBELL_SOURCE_DIR "/data/ratios.csv", std::ios::binary);
    std::stringstream text;
    text << file.rdbuf();
    auto read = kitchen::read_preparations(text.str(), "data/ratios.csv");
    if (!read) throw std::runtime_error(read.problems().front().message);
    return std::move(read).value();
  }();
  return kRatios;
}

}  // namespace tests
