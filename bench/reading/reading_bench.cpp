// Reading dishes from texts: how long one takes. At most 10 ms for a text of 40 lines is wanted.
#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

#include "kitchen/reading/food_matcher.h"
#include "kitchen/reading/read_dish_text.h"

namespace {

using std::chrono::steady_clock;

std::string text_of(const std::filesystem::path& path) {
  std::ifstream file(path, std::ios::binary);
  std::stringstream text;
  text << file.rdbuf();
  return text.str();
}

template <class Work>
double median_ms(Work work) {
  std::vector<double> took;
  for (int i = 0; i < 15; ++i) {
    const auto start = steady_clock::now();
    work();
    took.push_back(std::chrono::duration<double, std::milli>(steady_clock::now() - start).count());
  }
  std::sort(took.begin(), took.end());
  return took[took.size() / 2];
}

}  // namespace

int main() {
  const std::string root = BENCHBELL_SOURCE_DIR;
  const auto foods = kitchen::read_foods(text_of(root + "/data/foods.csv"), "foods.csv");
  const auto times = kitchen::read_task_times(text_of(root + "/data/task_times.csv"),
                                              "task_times.csv");
  if (!foods || !times) return 1;
  // As the server reads: the names are sorted once.
  const kitchen::FoodMatcher names(foods.value());
  const auto read = [&](const std::string& text) {
    return kitchen::read_dish_text(text, names, times.value());
  };
  fmt::print("names of {} foods sorted: {:.2f} ms\n", foods.value().all().size(),
             median_ms([&] { kitchen::FoodMatcher matcher(foods.value()); }));
  std::vector<std::filesystem::path> paths;
  for (const auto& entry : std::filesystem::directory_iterator(root + "/tests/data/dishes")) {
    const std::string name = entry.path().filename().string();
    if (name.ends_with(".txt") && !name.ends_with(".expected.txt")) paths.push_back(entry.path());
  }
  std::sort(paths.begin(), paths.end());
  double sum = 0, worst = 0, lines = 0;
  for (const auto& path : paths) {
    const std::string text = text_of(path);
    const double took = median_ms([&] { static_cast<void>(read(text)); });
    sum += took;
    worst = std::max(worst, took);
    lines += static_cast<double>(std::count(text.begin(), text.end(), '\n'));
  }
  const auto count = static_cast<double>(paths.size());
  fmt::print("{} texts of {:.0f} lines on average: mean {:.2f} ms, worst {:.2f} ms\n", paths.size(),
             lines / count, sum / count, worst);
  std::string forty = "Forty lines\nServes 4\nIngredients\n", endless = forty;
  for (int i = 0; i < 20; ++i) forty += "2 large ripe vine tomatos, peeled and choped\n";
  forty += "Method\n";
  for (int i = 0; i < 16; ++i) forty += "Fry the tomatoes in the oil for 5 minutes until soft.\n";
  fmt::print("40 lines, half of them misspelt ingredients: {:.2f} ms\n",
             median_ms([&] { static_cast<void>(read(forty)); }));
  for (int i = 0; i < 5000; ++i) endless += "200 g plain flour, sifted\n";
  fmt::print("5,000 ingredient lines: {:.0f} ms\n",
             median_ms([&] { static_cast<void>(read(endless)); }));
  return 0;
}
