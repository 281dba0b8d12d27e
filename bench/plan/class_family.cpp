#include "class_family.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <stdexcept>

#include "../../tests/support/lesson_file.h"
#include "scheduler/random.h"
#include "timeplan/quick_lesson.h"

namespace bench {
namespace {

using scheduler::Random;

struct KnownDish {
  const char* file;
  int usual;  ///< minutes of a lesson that suits it, for pairs (tried out with this program)
};

constexpr std::array kDishes{KnownDish{"lentil-dhal", 70},       KnownDish{"fruit-scones", 60},
                             KnownDish{"tomato-bean-soup", 65},  KnownDish{"macaroni-cheese", 65},
                             KnownDish{"apple-crumble", 75},     KnownDish{"frittata", 60},
                             KnownDish{"chickpea-tagine", 80},   KnownDish{"chicken-fajitas", 70},
                             KnownDish{"pork-burgers", 75},      KnownDish{"polenta-cake", 90},
                             KnownDish{"vegetable-samosas", 95}, KnownDish{"turkey-burritos", 75}};

constexpr std::array kPairs{std::pair{0, 1}, std::pair{2, 1}, std::pair{3, 4}, std::pair{6, 1}};

const KnownDish& dish_at(int index) { return kDishes[static_cast<std::size_t>(index)]; }

void add_register(kitchen::Lesson& lesson) {
  kitchen::Window window;
  window.name = "Register";
  window.length = base::minutes(3);
  window.led_by = 0;
  lesson.windows.push_back(window);
}

// Before the first step that is watched, or the third one; anywhere in the first half.
void add_demonstration(kitchen::Lesson& lesson) {
  const std::vector<kitchen::Step>& method = lesson.dishes[0].method;
  std::size_t step = std::min<std::size_t>(2, method.size() - 1);
  for (std::size_t i = method.size(); i-- > 0;) {
    if (method[i].hazard) step = i;
  }
  kitchen::Window window;
  window.name = "Demonstration";
  window.earliest = base::minutes(5);
  window.latest = base::grid_down(lesson.bell / 2);
  window.length = base::minutes(5);
  window.led_by = 0;
  window.before = {{0, static_cast<int>(step)}};
  lesson.windows.push_back(window);
}

void add_break(kitchen::Lesson& lesson) {
  kitchen::Window window;
  window.name = "Break";
  window.kind = kitchen::WindowKind::kBreak;
  window.earliest = window.latest = base::grid_down(lesson.bell / 2);
  window.length = base::minutes(10);
  lesson.windows.push_back(window);
}

ClassLesson make(Random& random, const kitchen::HouseRules& rules, int wanted) {
  ClassLesson made;
  made.everyday = random.below(5) != 0;
  const int usually = 8 + random.below(23);
  const int cooks = wanted > 0 ? wanted : usually;
  std::vector<int> dishes{random.below(static_cast<int>(kDishes.size()))};
  if (!made.everyday) {
    const auto& [a, b] = kPairs[static_cast<std::size_t>(
        random.below(static_cast<int>(kPairs.size())))];
    dishes = {a, b};
  }
  timeplan::QuickWish wish;
  // A class has 30 at most: many cooks are singles, few may be pairs or threes.
  wish.together = std::max(1, std::min(3, 40 / cooks));
  if (wish.together > 1) wish.together = 1 + random.below(wish.together);
  wish.pupils = cooks * wish.together;
  wish.cookers = std::clamp(cooks / (1 + random.below(3)), 4, 20);
  wish.sinks = std::clamp(wish.cookers / (1 + random.below(2)), 2, 20);
  wish.purpose = random.below(3) == 0 ? kitchen::Purpose::kTakeHome : kitchen::Purpose::kEatHere;
  wish.rules = rules;
  int usual = 0;
  std::string names;
  for (const int d : dishes) {
    wish.dishes.push_back(support::dish_file(fmt::format("demo/dishes/{}.json", dish_at(d).file)));
    usual = usual == 0 ? dish_at(d).usual : usual + dish_at(d).usual / 2;
    names += (names.empty() ? "" : " and ") + std::string(dish_at(d).file);
  }
  // From too short to roomy, in steps of five minutes; who works alone needs longer.
  if (wish.together == 1) usual = usual * 5 / 4;
  const int minutes = (usual * (80 + 10 * random.below(9)) / 100 + 4) / 5 * 5;
  wish.to_minute = wish.from_minute + minutes;
  auto lesson = timeplan::quick_lesson(wish);
  if (!lesson) throw std::runtime_error(lesson.problems().front().message);
  made.lesson = std::move(lesson).value();
  add_register(made.lesson);
  if (random.below(2) == 0) add_demonstration(made.lesson);
  if (minutes >= 90 && random.below(3) == 0) add_break(made.lesson);
  made.what = fmt::format("{} cooks of {}, {}, {} cookers, {} sinks, {} min", cooks, wish.together,
                          names, wish.cookers, wish.sinks, minutes);
  return made;
}

}  // namespace

std::vector<ClassLesson> class_family(int count, std::uint64_t seed, int cooks) {
  const auto rules = kitchen::read_house_rules(R"({"kind": "house_rules", "version": 1})", "");
  Random random(seed);
  std::vector<ClassLesson> lessons;
  for (int i = 0; i < count; ++i) lessons.push_back(make(random, rules.value(), cooks));
  return lessons;
}

}  // namespace bench
