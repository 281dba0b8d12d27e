#include "app/food_words.h"

#include <array>
#include <memory>
#include <string_view>

#include <CLI/CLI.hpp>

#include "app/commands.h"

namespace app {
namespace {

constexpr std::array<const char*, 4> kWords = {"foods", "label", "develop", "allergens"};

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

void add_label(CLI::App& program, int& code) {
  const auto asked = std::make_shared<LabelAsked>();
  CLI::App* label = program.add_subcommand("label",
                                           "What a dish holds: the label's table, colours, five a "
                                           "day, shares of a day, and what is not known");
  label
      ->add_option("dishes", asked->dishes,
                   "Shipped dishes or dish files; \"dish: variant\" for a variant; several "
                   "stand side by side")
      ->required();
  label->add_option("--portions", asked->portions, "How many it serves, if not as the dish says")
      ->check(CLI::Range(1, 1000));
  label
      ->add_option("--weighed", asked->weighed,
                   "Grams of the finished dish on the scales: better than any estimate")
      ->check(CLI::Range(1.0, 1e6));
  label->add_option("--day-of", asked->band,
                    "Whose day: \"girls 11\", \"boys 11\", \"girls 15\" or \"boys 15\"");
  label->add_flag("--drink", asked->drink, "Judge it as a drink");
  label->add_flag("--details", asked->details, "Open every figure down to the row it came from");
  label->add_flag("--json", asked->json, "Print it for machines");
  label->add_flag("--raw-weights", asked->raw_weights, "Without weight changes in cooking");
  label->add_flag("--keep-vitamins", asked->keep_vitamins, "Without losses of vitamins in cooking");
  label->add_option("--foods", asked->own_file, kOwnFoods);
  label->footer(
      "Examples:\n  benchbell label macaroni-cheese\n  benchbell label lentil-dhal --portions 4 "
      "--details\n");
  label->callback([asked, &code] { code = app::label(*asked); });
}

void add_develop(CLI::App& program, int& code) {
  const auto asked = std::make_shared<DevelopWords>();
  CLI::App* develop = program.add_subcommand(
      "develop", "The smallest change that makes a dish reach a goal, or what stands in the way");
  develop->add_option("dish", asked->dish, "A shipped dish or a dish file")->required();
  develop
      ->add_option("--goal", asked->goals,
                   "\"salt not high\", \"saturates low\", \"fibre at least 6 g a portion\"; "
                   "give it again for a second goal")
      ->required();
  develop->add_option("--keep", asked->keep, "An ingredient that stays as it is");
  develop->add_option("--swap", asked->swaps,
                      "Another food that may stand in: \"butter = rapeseed oil\"");
  develop->add_option("--within", asked->within, "Per cent an ingredient may change by")
      ->capture_default_str()
      ->check(CLI::Range(1.0, 100.0));
  develop->add_option("--foods", asked->own_file, kOwnFoods);
  develop->footer(
      "Example:\n  benchbell develop macaroni-cheese --goal \"salt not high\" --keep macaroni\n"
      "Exit code: 0 there is a change, 1 there is none, 2 something to mend.\n");
  develop->callback([asked, &code] { code = app::develop(*asked); });
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
  add_label(program, code);
  add_develop(program, code);
  add_allergens(program, code);
}

bool food_word_said(const CLI::App& program) {
  for (const char* word : kWords) {
    if (program.got_subcommand(word)) return true;
  }
  return false;
}

}  // namespace app
