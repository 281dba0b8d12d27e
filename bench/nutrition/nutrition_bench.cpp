// How long a label takes (under 1 ms is wanted) and the smallest change of a dish (under 1 s), over
// the shipped dishes.
#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <filesystem>
#include <fstream>
#include <sstream>

#include "kitchen/read.h"
#include "nutrition/develop.h"
#include "nutrition/label.h"

namespace {

using std::chrono::steady_clock;

double milliseconds(steady_clock::time_point from) {
  return std::chrono::duration<double, std::milli>(steady_clock::now() - from).count();
}

std::string text_of(const std::filesystem::path& path) {
  std::ifstream file(path, std::ios::binary);
  std::stringstream text;
  text << file.rdbuf();
  return text.str();
}

struct Worst {
  double sum = 0, most = 0;
  int count = 0;
  std::string of;
  void add(double took, const std::string& name) {
    sum += took;
    ++count;
    if (took > most) most = took, of = name;
  }
  void print(const char* what) const {
    fmt::print("{}: {} times, mean {:.2f} ms, worst {:.2f} ms ({})\n", what, count,
               sum / std::max(1, count), most, of);
  }
};

}  // namespace

int main() {
  const std::filesystem::path top = BENCHBELL_SOURCE_DIR;
  const auto foods = kitchen::read_foods(text_of(top / "data/foods.csv"), "foods.csv");
  const auto tables = nutrition::read_cooking(text_of(top / "data/yields.csv"),
                                              text_of(top / "data/retention.csv"));
  if (!foods || !tables) return 1;
  std::vector<std::filesystem::path> files;
  for (const auto& entry : std::filesystem::directory_iterator(top / "demo/dishes"))
    files.push_back(entry.path());
  std::sort(files.begin(), files.end());
  Worst label, develop;
  int possible = 0, impossible = 0, not_weighed = 0;
  for (const auto& file : files) {
    const auto dish = kitchen::read_dish(text_of(file), file.filename().string());
    if (!dish) continue;
    const auto found = nutrition::foods_of(dish.value(), foods.value());
    nutrition::DishNutrients held;
    for (int turn = 0; turn < 20; ++turn) {
      const auto start = steady_clock::now();
      held = nutrition::dish_nutrients(dish.value(), found, tables.value());
      const auto declared = nutrition::label_of(held);
      label.add(milliseconds(start), declared.lines.empty() ? "nothing" : held.dish);
    }
    for (const char* words :
         {"saturates not high", "salt low", "fibre at least 8 g", "energy at most 400 kcal"}) {
      nutrition::DevelopAsked asked;
      asked.dish = dish.value();
      asked.foods = found;
      asked.allowed = nutrition::usual_changes(asked.dish, held);
      asked.goals = nutrition::read_goal(words, held.portion_grams()).value();
      const auto start = steady_clock::now();
      const auto developed = nutrition::develop(asked, tables.value());
      if (!developed) {
        ++not_weighed;
        continue;
      }
      develop.add(milliseconds(start), held.dish + ", " + words);
      ++(developed.value().possible ? possible : impossible);
    }
  }
  label.print("label of a dish");
  develop.print("smallest change or what stops it");
  fmt::print("{} possible, {} not, {} not asked because an ingredient could not be weighed\n",
             possible, impossible, not_weighed);
}
