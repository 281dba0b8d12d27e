// The table of foods: how long it takes to read and to search, misspelt words included. At most 5
// ms a search is wanted.
#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <fstream>
#include <sstream>

#include "kitchen/foods.h"

namespace {

using std::chrono::steady_clock;

double milliseconds(steady_clock::time_point from) {
  return std::chrono::duration<double, std::milli>(steady_clock::now() - from).count();
}

}  // namespace

int main() {
  std::ifstream file(BENCHBELL_SOURCE_DIR "/data/foods.csv", std::ios::binary);
  std::stringstream text;
  text << file.rdbuf();
  auto start = steady_clock::now();
  const auto read = kitchen::read_foods(text.str(), "data/foods.csv");
  if (!read) {
    fmt::print(stderr, "{}\n", read.problems().front().message);
    return 1;
  }
  const kitchen::Foods& foods = read.value();
  fmt::print("read {} foods: {:.1f} ms\n", foods.all().size(), milliseconds(start));

  // Every food by its own name, whole, turned round, and with a letter missing.
  double sum = 0, worst = 0;
  int searches = 0, at_first = 0;
  std::string slowest;
  for (const kitchen::Food& food : foods.all()) {
    std::string turned = food.name;
    std::reverse(turned.begin(), turned.end());
    std::string misspelt = food.name;
    if (misspelt.size() > 5) misspelt.erase(misspelt.size() / 2, 1);
    for (const std::string& words : {food.name, misspelt, turned}) {
      start = steady_clock::now();
      const auto found = foods.search(words);
      const double took = milliseconds(start);
      sum += took;
      ++searches;
      if (took > worst) {
        worst = took;
        slowest = words;
      }
      if (words != turned && !found.empty() && found.front().food == &food) ++at_first;
    }
  }
  fmt::print(
      "{} searches: mean {:.2f} ms, worst {:.2f} ms ('{}'); the food meant stands first in "
      "{:.1f} %\n",
      searches, sum / searches, worst, slowest,
      100.0 * at_first / (2.0 * static_cast<double>(foods.all().size())));
}
