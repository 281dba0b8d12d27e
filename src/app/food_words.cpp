#include "app/food_words.h"

#include <array>
#include <memory>
#include <string_view>

#include <CLI/CLI.hpp>

#include "app/commands.h"

namespace app {
namespace {

constexpr std::array<const char*, 3> kWords = {"foods", "ratios", "scale"};

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

void add_ratios(CLI::App& program, int& code) {
  const auto asked = std::make_shared<RatiosAsked>();
  CLI::App* ratios = program.add_subcommand(
      "ratios", "The ratios of a dish that must stay, and what a pupil's change would do");
  ratios->add_option("dish", asked->dish, "A shipped dish, a dish file, or \"dish: variant\"")
      ->required();
  ratios->add_option(
      "--change", asked->changes,
      "\"swap butter for oil\", \"leave out the egg\", \"50 g more sugar\", \"double "
      "the salt\", \"add 30 g cocoa\"; again for another");
  ratios->add_flag("--details", asked->details,
                   "What was counted, where each band is from, why a preparation was recognised");
  ratios->add_option("--foods", asked->own_foods_file, kOwnFoods);
  ratios->footer(
      "Examples:\n  benchbell ratios fruit-scones --details\n"
      "  benchbell ratios swiss-roll --change \"swap eggs for aquafaba\"\n"
      "Exit code: 1 when a change will fail.\n");
  ratios->callback([asked, &code] { code = app::ratios(*asked); });
}

void add_scale(CLI::App& program, int& code) {
  const auto asked = std::make_shared<ScaleAsked>();
  CLI::App* scale = program.add_subcommand(
      "scale", "A dish for more or fewer, for another tin, by what there is, or in sets");
  scale->add_option("dish", asked->dish, "A shipped dish, a dish file, or \"dish: variant\"")
      ->required();
  scale->add_option("--portions", asked->portions, "For so many portions");
  scale->add_option("--tin", asked->tin, "The dish's tin, in cm: \"round 20\", \"two round 18\"");
  scale->add_option("--to-tin", asked->to_tin, "Your tin: \"rectangle 30 x 20\"");
  scale->add_option("--have", asked->have, "What there is: \"flour 900 g\"; again for another");
  scale->add_option("--cooks", asked->cooks, "Sets: one for each cook")->group("Sets for a class");
  scale->add_option("--spares", asked->spares, "Spare sets")->group("Sets for a class");
  scale->add_flag("--demonstration", asked->demonstration, "One more for the demonstration")
      ->group("Sets for a class");
  scale->add_flag("--practised", asked->practised, "Nothing more for beginners' peeling")
      ->group("Sets for a class");
  scale->add_flag("--beaten-eggs", asked->beaten_eggs, "Part of an egg is beaten and weighed");
  scale->add_option("--foods", asked->own_foods_file, kOwnFoods);
  scale->footer(
      "Examples:\n  benchbell scale fruit-scones --cooks 12 --spares 1 --demonstration\n"
      "  benchbell scale polenta-cake --tin \"round 20\" --to-tin \"round 23\"\n"
      "  benchbell scale fruit-scones --have \"flour 900 g\"\n");
  scale->callback([asked, &code] { code = app::scale(*asked); });
}

}  // namespace

void add_food_words(CLI::App& program, int& code) {
  add_foods(program, code);
  add_ratios(program, code);
  add_scale(program, code);
}

bool food_word_said(const CLI::App& program) {
  for (const char* word : kWords) {
    if (program.got_subcommand(word)) return true;
  }
  return false;
}

}  // namespace app
