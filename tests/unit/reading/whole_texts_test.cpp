// Whole texts, invented and judged by somebody who had not seen the reader: how many of their
// ingredients and of their steps' attributes are read right. The floors are what was reached.
//
// Beside NN.txt stands NN.expected.json: ingredients with least, most, unit, piece and food (and
// what else would do), steps with minutes, attention, place, hygiene and hazards.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <set>
#include <sstream>

#include <nlohmann/json.hpp>

#include "../../support/shipped_foods.h"
#include "../../support/shipped_task_times.h"
#include "base/folding.h"
#include "kitchen/reading/make_dish.h"
#include "kitchen/reading/read_dish_text.h"
#include "kitchen/reading/read_method.h"
#include "kitchen/words.h"

namespace {

using namespace kitchen;
using nlohmann::json;

std::string text_of(const std::filesystem::path& path) {
  std::ifstream file(path, std::ios::binary);
  std::stringstream text;
  text << file.rdbuf();
  return text.str();
}

struct Share {
  int right = 0, all = 0;
  void add(bool good) {
    right += good ? 1 : 0;
    ++all;
  }
  double percent() const { return 100.0 * right / all; }
};

bool near(const json& wanted, const Ratio& is) {
  return wanted.is_number() &&
         std::fabs(wanted.get<double>() - is.value()) < 0.01 * std::max(1.0, is.value());
}

bool same_amount(const json& wanted, const Quantity& is) {
  const std::string unit = wanted.at("unit");
  if (!is.stated()) return unit == "none" && wanted.at("least").is_null();
  if (!near(wanted.at("least"), is.least) || !near(wanted.at("most"), is.most)) return false;
  return is.unit == Unit::kPiece ? unit == "piece" : unit == unit_word(is.unit);
}

bool ingredient_right(const json& wanted, const IngredientDraft& is) {
  const bool other_amount = wanted.contains("alt") && wanted["alt"].is_object() &&
                            same_amount(wanted["alt"], is.quantity.value);
  const bool other_food = std::any_of(
      wanted.at("also_ok").begin(), wanted.at("also_ok").end(),
      [&](const json& key) { return key.get<std::string>() == is.food.value; });
  return (same_amount(wanted, is.quantity.value) || other_amount) &&
         (wanted.at("food") == is.food.value || other_food);
}

std::string place_of(const StepDraft& step) {
  constexpr const char* kPlaces[] = {"ring",   "oven",   "grill",  "microwave",
                                     "kettle", "fridge", "freezer"};
  return step.heat ? kPlaces[static_cast<int>(step.heat->value.where)] : "none";
}

// The attributes of the steps a line became, against what a person wrote down for that line.
void judge_step(const json& wanted, const std::vector<const StepDraft*>& mine, Share& share) {
  if (mine.empty()) {
    for (int i = 0; i < 5; ++i) share.add(false);
    return;
  }
  const auto weight = [](const StepDraft* s) {
    return std::make_tuple(s->heat.has_value(), s->least.confidence == 1, s->most.value);
  };
  const StepDraft& main = **std::max_element(
      mine.begin(), mine.end(),
      [&](const auto* a, const auto* b) { return weight(a) < weight(b); });
  double least = 0, most = 0;
  bool stated = false;
  std::set<std::string> hazards;
  std::string hygiene;
  for (const StepDraft* s : mine) {
    if (s->least.confidence == 1) {
      stated = true;
      least += static_cast<double>(s->least.value.count()) / 60;
      most += static_cast<double>(s->most.value.count()) / 60;
    }
    for (const auto& h : s->hazards) hazards.insert(std::string(word(h.value)));
    if (s->hygiene && (hygiene.empty() || s->hygiene->value == Hygiene::kRaw))
      hygiene = word_for(kHygieneWords, s->hygiene->value);
  }
  const json& minutes = wanted.at("minutes");
  share.add(minutes.is_null() ? !stated
                              : stated && std::fabs(minutes[0].get<double>() - least) < 0.51 &&
                                    std::fabs(minutes[1].get<double>() - most) < 0.51);
  share.add(wanted.at("attention") == word_for(kAttentionWords, main.attention.value));
  share.add(wanted.at("place") == place_of(main));
  share.add(wanted.at("hygiene").is_null() ? hygiene.empty() : wanted["hygiene"] == hygiene);
  std::set<std::string> wanted_hazards;
  for (const json& h : wanted.at("hazards")) wanted_hazards.insert(h.get<std::string>());
  share.add(hazards == wanted_hazards);
}

TEST(WholeTexts, MostIngredientsAndAttributesAreReadAsAPersonReadsThem) {
  Share ingredients, attributes;
  int texts = 0;
  for (const auto& entry :
       std::filesystem::directory_iterator(BENCHBELL_SOURCE_DIR "/tests/data/whole_texts")) {
    if (entry.path().extension() != ".txt") continue;
    ++texts;
    std::filesystem::path beside = entry.path();
    beside.replace_extension("expected.json");
    const json wanted = json::parse(text_of(beside));
    const DishDraft draft = read_dish_text(text_of(entry.path()), tests::shipped_foods(),
                                           tests::shipped_task_times());
    EXPECT_TRUE(dish_from(draft, tests::shipped_foods())) << entry.path();
    std::vector<bool> used(draft.ingredients.size(), false);
    for (const json& one : wanted.at("ingredients")) {
      const std::string line = base::folded(one.at("line").get<std::string>());
      bool found = false;
      for (std::size_t i = 0; i < used.size() && !found; ++i) {
        const std::string is = base::folded(draft.ingredients[i].line);
        const bool same_line = is.find(line) != std::string::npos ||
                               line.find(is) != std::string::npos;
        if (used[i] || !same_line || !ingredient_right(one, draft.ingredients[i])) continue;
        used[i] = found = true;
      }
      ingredients.add(found);
    }
    // Step by step, so that a step cut otherwise does not shift all that follow.
    DishDraft steps;
    steps.ingredients = draft.ingredients;
    std::vector<MethodLine> lines;
    for (const json& one : wanted.at("steps"))
      lines.push_back({static_cast<int>(lines.size()) + 1, "", one.at("text").get<std::string>()});
    read_method(steps, lines, tests::shipped_foods(), tests::shipped_task_times());
    for (std::size_t i = 0; i < lines.size(); ++i) {
      std::vector<const StepDraft*> mine;
      for (const StepDraft& s : steps.method) {
        if (s.line_number == lines[i].line_number) mine.push_back(&s);
      }
      judge_step(wanted["steps"][i], mine, attributes);
    }
  }
  std::cout << texts << " texts: " << ingredients.right << " of " << ingredients.all
            << " ingredients, " << attributes.right << " of " << attributes.all
            << " attributes of steps\n";
  EXPECT_EQ(texts, 30);
  EXPECT_GE(ingredients.percent(), 92);
  EXPECT_GE(attributes.percent(), 93);
}

}  // namespace
