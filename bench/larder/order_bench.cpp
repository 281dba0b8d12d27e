// How long the order of a large department's week takes, how near the best it is proved to be, and
// how much memory it uses: 40 lessons of 24 pupils, 250 foods, 600 packs, three suppliers with two
// vans each. Foods, dishes and prices are random and mean nothing; the same seed gives the same
// week.
#include <sys/resource.h>

#include <chrono>
#include <cstdio>
#include <random>

#include "base/text.h"
#include "larder/order.h"

namespace {

using namespace larder;
using kitchen::Quantity;
using kitchen::Ratio;
using kitchen::Unit;

constexpr int kFoods = 250, kPacks = 600, kLessons = 40, kPupils = 24, kLines = 10;

class Luck {
 public:
  explicit Luck(unsigned seed) : engine_(seed) {}
  int whole(int least, int most) {
    return least + static_cast<int>(engine_() % static_cast<unsigned>(most - least + 1));
  }

 private:
  std::mt19937 engine_;
};

struct Made {
  kitchen::Foods foods;
  PriceList prices;
  Week week;
};

kitchen::Foods random_foods(Luck& luck) {
  std::vector<kitchen::Food> out;
  for (int i = 0; i < kFoods; ++i) {
    kitchen::Food f;
    f.key = base::say("food_", i);
    f.name = base::say("Food ", i);
    const int kind = luck.whole(0, 3);
    f.storage = kind == 0   ? kitchen::Storage::kAmbient
                : kind == 1 ? kitchen::Storage::kAmbientThenChilled
                : kind == 2 ? kitchen::Storage::kChilled
                            : kitchen::Storage::kFrozen;
    out.push_back(std::move(f));
  }
  return kitchen::Foods(std::move(out));
}

Made random_week(unsigned seed) {
  Luck luck(seed);
  Made out;
  out.foods = random_foods(luck);
  const base::Date monday = *base::date_in("2026-11-16");
  const char* names[] = {"North", "South", "Corner"};
  for (int s = 0; s < 3; ++s) {
    out.week.suppliers.push_back({names[s],
                                  s == 2 ? 0 : 450,
                                  s == 2 ? 0 : 4000,
                                  s == 2,
                                  {{base::Date{monday.days - 3}, monday},
                                   {base::Date{monday.days}, base::Date{monday.days + 2}}}});
  }
  for (int p = 0; p < kPacks; ++p) {
    Pack pack;
    pack.food = base::say("food_", p % kFoods);
    pack.supplier = names[luck.whole(0, 2)];
    const int grams = 50 * luck.whole(2, 10) * (p < kFoods ? 1 : luck.whole(1, 8));
    pack.size = Quantity::of(Ratio(grams), Unit::kGram);
    pack.price = 20 + grams * luck.whole(15, 60) / 100;
    pack.line = p + 2;
    out.prices.packs.push_back(std::move(pack));
  }
  std::vector<kitchen::Dish> dishes;
  for (int d = 0; d < kLessons; ++d) {
    kitchen::Dish dish;
    dish.name = base::say("Dish ", d);
    for (int i = 0; i < kLines; ++i) {
      kitchen::Ingredient line;
      // Every food is used; the later ones of a dish are staples that several classes use.
      line.food = base::say("food_", i < 7 ? (d * 7 + i) % kFoods : luck.whole(0, 29));
      line.name = line.food;
      line.amount = 5 * luck.whole(1, 40);
      line.unit = "g";
      dish.ingredients.push_back(std::move(line));
    }
    dishes.push_back(std::move(dish));
  }
  for (int l = 0; l < kLessons; ++l) {
    WeekLesson lesson;
    lesson.title = base::say("Lesson ", l + 1);
    lesson.class_name = base::say("Class ", l % 12);
    lesson.date = base::Date{monday.days + l % 5};
    lesson.pupils = kPupils;
    lesson.dishes.push_back({dishes[static_cast<std::size_t>(l)], Ratio(kPupils + 2), {}, 0});
    out.week.lessons.push_back(std::move(lesson));
  }
  return out;
}

}  // namespace

int main() {
  std::printf("%4s %6s %6s %9s %9s %9s %8s %8s %8s\n", "seed", "foods", "lines", "cost", "bound",
              "naive", "gap %", "seconds", "peak MB");
  for (unsigned seed = 1; seed <= 10; ++seed) {
    const Made made = random_week(seed);
    const auto start = std::chrono::steady_clock::now();
    const Needs needs = needs_of(made.week, made.foods);
    const std::vector<StockLot> stock;
    const OrderInput in{made.week, needs, made.prices, stock, made.foods};
    OrderWish wish;
    wish.today = *base::date_in("2026-11-12");
    const Order order = plan_order(in, wish);
    const double seconds = std::chrono::duration<double>(std::chrono::steady_clock::now() - start)
                               .count();
    rusage usage{};
    getrusage(RUSAGE_SELF, &usage);
    std::printf("%4u %6zu %6zu %9.2f %9.2f %9.2f %8.3f %8.2f %8.1f\n", seed, needs.foods.size(),
                order.lines.size(), order.cost / 100, order.bound / 100,
                static_cast<double>(order.naive.total()) / 100, order.gap() * 100, seconds,
                static_cast<double>(usage.ru_maxrss) / 1024);
  }
  return 0;
}
