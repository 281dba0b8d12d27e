// The table of foods that travels with the program, read once for a test program.
#pragma once

#include <fstream>
#include <sstream>
#include <stdexcept>

#include "kitchen/foods.h"

namespace tests {

inline const kitchen::Foods& shipped_foods() {
  static const kitchen::Foods kFoods = [] {
    std::ifstream file(BENCHBELL_SOURCE_DIR "/data/foods.csv", std::ios::binary);
    std::stringstream text;
    text << file.rdbuf();
    auto read = kitchen::read_foods(text.str(), "data/foods.csv");
    if (!read) throw std::runtime_error(read.problems().front().message);
    return std::move(read).value();
  }();
  return kFoods;
}

}  // namespace tests
