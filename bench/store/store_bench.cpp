// A school of some years in one file: 1,200 pupils in 50 classes, 500 dishes, 3,000 lessons. How
// long do the everyday questions take, and how big is the file? Invented data; times are medians.
#include <algorithm>
#include <chrono>
#include <cstdio>
#include <filesystem>
#include <iostream>
#include <string>
#include <vector>

#include "store/exchange.h"
#include "store/repository.h"

namespace {

using namespace store;
namespace fs = std::filesystem;

constexpr int kClasses = 50;
constexpr int kPupilsAClass = 24;
constexpr int kDishes = 500;
constexpr int kLessons = 3000;

double milliseconds(const std::chrono::steady_clock::time_point& since) {
  return std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - since)
      .count();
}

/// The middle one and the slowest but one in a hundred of `times` runs, in milliseconds.
template <class Work>
void measure(const char* what, int times, const Work& work) {
  std::vector<double> took;
  for (int i = 0; i < times; ++i) {
    const auto begin = std::chrono::steady_clock::now();
    work(i);
    took.push_back(milliseconds(begin));
  }
  std::sort(took.begin(), took.end());
  std::printf("%-44s %9.3f ms   99 in 100 within %9.3f ms\n", what, took[took.size() / 2],
              took[took.size() * 99 / 100]);
}

template <class T>
const T& must(const base::Result<T>& result) {
  if (!result) {
    std::cerr << result.problems()[0].message << '\n';
    std::exit(1);
  }
  return result.value();
}

std::string class_text(int number) {
  std::string text = R"({"kind":"class","version":1,"title":"Class )" + std::to_string(number) +
                     R"(","pupils":[)";
  for (int i = 0; i < kPupilsAClass; ++i) {
    text += (i > 0 ? "," : "") + std::string(R"({"name":"Pupil )") + std::to_string(number) + "-" +
            std::to_string(i) + R"(","needs":["milk"]})";
  }
  return text + "]}";
}

std::string dish_text(int number, int minutes) {
  std::string text = R"({"kind":"dish","version":1,"name":"Dish )" + std::to_string(number) +
                     R"(","method":[)";
  for (int i = 0; i < 15; ++i) {
    text += (i > 0 ? "," : "") + std::string(R"({"id":"step-)") + std::to_string(i) +
            R"(","do":"Soften the vegetables in the oil, stirring all the time","minutes":)" +
            std::to_string(minutes) + "}";
  }
  return text + "]}";
}

std::string day_of(int lesson) {
  const auto two = [](int number) { return (number < 10 ? "0" : "") + std::to_string(number); };
  return std::to_string(2026 + lesson / 1200) + "-" + two(1 + lesson / 100 % 12) + "-" +
         two(1 + lesson % 28);
}

std::string lesson_text(int number) {
  std::string text = R"({"kind":"lesson","version":1,"title":"Lesson )" + std::to_string(number) +
                     R"(","date":")" + day_of(number) + R"(","cooks":[)";
  for (int i = 0; i < 24; ++i) {
    text += (i > 0 ? "," : "") + std::string(R"({"name":"Pupil )") + std::to_string(i) +
            R"(","people":1,"place":"A1","dishes":["soup"]})";
  }
  return text + "]}";
}

void furnish(Repository& school) {
  const auto begin = std::chrono::steady_clock::now();
  const auto kept = school.transact([](Writer& writer) -> base::Result<Outcome> {
    for (int i = 0; i < kClasses; ++i) {
      must(writer.create(Kind::kClass, "class-" + std::to_string(i), {class_text(i), {}, "", {}},
                         {}));
    }
    for (int i = 0; i < kDishes; ++i) {
      must(writer.create(Kind::kDish, "dish-" + std::to_string(i), {dish_text(i, 5), {}, "", {}},
                         {}));
    }
    for (int i = 0; i < kLessons; ++i) {
      const Draft draft{lesson_text(i),
                        {{Kind::kClass, "class-" + std::to_string(i % kClasses)},
                         {Kind::kDish, "dish-" + std::to_string(i % kDishes)}},
                        "",
                        {}};
      must(writer.create(Kind::kLesson, "lesson-" + std::to_string(i), draft, {}));
    }
    return Outcome::kKeep;
  });
  must(kept);
  std::printf("%-44s %9.0f ms\n", "fill the school, one transaction", milliseconds(begin));
}

void questions(Repository& school) {
  std::size_t lessons = 0;
  measure("lessons of a week", 300, [&](int i) {
    const std::string month = day_of(i % 30 * 100).substr(0, 8);
    Filter week;
    week.from = month + "08";
    week.to = month + "14";
    lessons += must(school.list(Kind::kLesson, week)).size();
  });
  std::printf("%-44s %9.1f\n", "  lessons in such a week", static_cast<double>(lessons) / 300);
  measure("all 500 dishes", 50, [&](int) { must(school.list(Kind::kDish)); });
  measure("dishes whose title has a word", 50, [&](int i) {
    Filter filter;
    filter.text = std::to_string(i);
    must(school.list(Kind::kDish, filter));
  });
  measure("get a lesson", 1000,
          [&](int i) { must(school.get(Kind::kLesson, "lesson-" + std::to_string(i * 3))); });
  measure("lessons that use a dish", 200,
          [&](int i) { must(school.used_by(Kind::kDish, "dish-" + std::to_string(i))); });
  measure("replace a dish, on the disk", 200, [&](int i) {
    must(school.replace(Kind::kDish, "dish-" + std::to_string(i), 1, {dish_text(i, 6), {}, "", {}},
                        {}));
  });
}

}  // namespace

int main() {
  const fs::path folder = fs::temp_directory_path() / "benchbell-store-bench";
  fs::remove_all(folder);
  fs::create_directory(folder);
  const std::string path = (folder / "school.benchbell").string();
  auto opened = open_sqlite(path);
  must(opened);
  auto school = std::move(opened).value();
  furnish(*school);
  questions(*school);
  measure("a backup", 3, [&](int) { must(school->back_up(2)); });
  std::string zip;
  measure("everything as a zip", 3, [&](int) { zip = must(export_zip(*school)); });
  measure("look at that zip", 3, [&](int) { must(preview_import(*school, zip)); });
  school.reset();
  measure("open, checked", 5, [&](int) { must(open_sqlite(path)); });
  std::printf("%-44s %9.1f MB, the zip %.1f MB\n", "the file",
              static_cast<double>(fs::file_size(path)) / 1e6,
              static_cast<double>(zip.size()) / 1e6);
  fs::remove_all(folder);
  return 0;
}
