#include "app/food_words.h"

#include <array>
#include <memory>
#include <string_view>

#include <CLI/CLI.hpp>

#include "app/commands.h"

namespace app {
namespace {

constexpr std::array<const char*, 2> kWords = {"foods", "allergens"};

constexpr const char* kOwnFoods = "The school's own foods (CSV), which win over the shipped ones";

void add_foods(CLI::App& program, int& code) {
  const auto asked = std::make_shared<FoodsAsked>();
  CLI::App* foods = program.add_subcommand(
      "foods", "Look a food up: what it holds, weighs and contains, and where each figure is from");
  foods->add_option("words", asked->words, "Its name in any spelling, or its key");
  foods->add_option("--foods", asked->own_file, kOwnFoods);
  foods->footer("Examples:\n  benchbell foods scallion\n  benchbell foods \"tinned tomatos\"\n");
  foods->callback([asked, &code] { code = app::foods(*asked); });
}

void add_allergens(CLI::App& program, int& code) {
  const auto asked = std::make_shared<AllergensAsked>();
  CLI::App* allergens = program.add_subcommand(
      "allergens",
      "What is stated of the fourteen allergens in dishes; in lessons, who must not have it and "
      "what would settle it");
  allergens->add_option("what", asked->what, "Dishes, dish files, lesson files")->required();
  allergens->add_option("--foods", asked->foods_file, kOwnFoods);
  allergens->add_option("--needs", asked->needs_file,
                        "Allergies and diets of the cooks (CSV: cook, need, reach; lesson)");
  allergens->add_option("--labels", asked->labels_file,
                        "Labels that were read (CSV: food, pack, read_on, contains, may_contain, "
                        "in_use)");
  allergens->add_flag("--details", asked->details, "Every ingredient, with who says what");
  allergens->add_flag("--json", asked->json, "For machines");
  allergens->add_option("--width", asked->width, "Letters a line")
      ->capture_default_str()
      ->check(CLI::Range(40, 200));
  allergens->footer(
      "Examples:\n"
      "  benchbell allergens fruit-scones \"lentil-dhal: gluten-free flatbread\"\n"
      "  benchbell allergens demo/lessons/b-two-dishes.json\n"
      "Exit code: 0 nothing must be changed, 1 something must, 2 something in the input is wrong.\n"
      "Labels and the school's own records decide, not this sheet.\n");
  allergens->callback([asked, &code] { code = app::allergens(*asked); });
}

}  // namespace

void add_food_words(CLI::App& program, int& code) {
  add_foods(program, code);
  add_allergens(program, code);
}

bool food_word_said(const CLI::App& program) {
  for (const char* word : kWords) {
    if (program.got_subcommand(word)) return true;
  }
  return false;
}

}  // namespace app
