#include "print/sheets/pictograms.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <filesystem>
#include <map>
#include <set>

#include "../../support/lesson_file.h"
#include "print/sheets/pictogram_shapes.h"

namespace {

using namespace print::sheets;

TEST(Pictograms, each_has_a_word_and_a_shape_of_its_own) {
  std::set<std::string_view> words;
  for (const Pictogram picture : all_pictograms()) {
    EXPECT_TRUE(words.insert(word(picture)).second) << word(picture);
    const Shapes shapes = shapes_of(picture);
    EXPECT_GT(shapes.solid.size() + shapes.lines.size(), 0U) << word(picture);
    Document d("", "");
    d.begin_part(kA4, "");
    const int page = d.add_page();
    Canvas c = d.on(page);
    draw_pictogram(c, picture, {100, 100, 80, 60});
    EXPECT_GT(d.pdf().size(), 500U);
  }
}

TEST(Pictograms, most_steps_of_the_demo_dishes_find_one) {
  int steps = 0, none = 0;
  for (const auto& file :
       std::filesystem::directory_iterator(std::string(BENCHBELL_SOURCE_DIR) + "/demo/dishes")) {
    kitchen::Lesson lesson;
    lesson.dishes = {support::dish_file("demo/dishes/" + file.path().filename().string())};
    for (std::size_t s = 0; s < lesson.dishes[0].method.size(); ++s) {
      timeplan::Task task;
      task.dish = 0;
      task.step = static_cast<int>(s);
      ++steps;
      none += pictogram(lesson, task) == Pictogram::kStep ? 1 : 0;
    }
  }
  EXPECT_GT(steps, 150);
  EXPECT_LT(none * 100, steps * 20) << none << " of " << steps;
}

TEST(Pictograms, heat_and_kit_say_more_than_the_verb) {
  kitchen::Lesson lesson;
  lesson.dishes.resize(1);
  const auto of = [&](const kitchen::Step& step) {
    lesson.dishes[0].method = {step};
    timeplan::Task task;
    task.dish = 0;
    task.step = 0;
    return pictogram(lesson, task);
  };
  kitchen::Step bake;
  bake.says = "Slide the tray in.";
  bake.heat = kitchen::Heat{};
  bake.heat->with = kitchen::HeatKind::kOven;
  EXPECT_EQ(of(bake), Pictogram::kOvenIn);
  kitchen::Step fry;
  fry.says = "Lower the rolls in.";
  fry.heat = kitchen::Heat{};
  fry.hazard = kitchen::Hazard::kHotOil;
  EXPECT_EQ(of(fry), Pictogram::kFry);
  kitchen::Step cut;
  cut.says = "Slice the leek.";
  EXPECT_EQ(of(cut), Pictogram::kCut);
}

}  // namespace
