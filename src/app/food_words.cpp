#include "app/food_words.h"

#include <array>
#include <memory>
#include <string_view>

#include <CLI/CLI.hpp>

#include "app/commands.h"

namespace app {
namespace {

constexpr std::array<const char*, 1> kWords = {"foods"};

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

}  // namespace

void add_food_words(CLI::App& program, int& code) { add_foods(program, code); }

bool food_word_said(const CLI::App& program) {
  for (const char* word : kWords) {
    if (program.got_subcommand(word)) return true;
  }
  return false;
}

}  // namespace app
