// Learns how much each sign of the order of steps weighs, from texts whose waits people have
// written down, and tells how well that serves texts it has not learnt from.
//
//   learn_order FOLDER... [--table] [--tell]
//
// Each FOLDER holds NN.txt and NN.expected.json. Ten times a tenth of the texts is left out, the
// weights are learnt from the others, and the order of those left out is judged: the figure to go
// by; --tell tells each step of them that waits otherwise than a person said. With --table
// src/kitchen/reading/order_weight_table.h is written, from all texts.
//
// Method: logistic regression on pairs of steps (whether the later waits for the earlier), with a
// penalty on the squared weights; the history of a text is the people's own while learning, and the
// reader's own while judged. (D. R. Cox 1958; J. Duchi and others 2011 for the steps of descent.)
#include <cmath>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <set>
#include <sstream>
#include <string>
#include <vector>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "../../tests/support/shipped_foods.h"
#include "../../tests/support/shipped_task_times.h"
#include "kitchen/reading/order_signs.h"
#include "kitchen/reading/read_dish_text.h"
#include "kitchen/reading/read_method.h"
#include "kitchen/reading/step_order.h"

namespace {

using namespace kitchen;
using nlohmann::json;
using Waits = std::vector<std::set<int>>;

constexpr int kFolds = 10;
constexpr double kPenalty = 2;
/// Signs that stand for themselves may weigh more than those that go with others.
constexpr double kPenaltyAlone = 1;
constexpr int kRounds = 120;

struct Pair {
  std::vector<int> signs;
  bool waits = false;
};

struct Text {
  std::string name;
  DishDraft draft;
  std::vector<Work> works;
  Waits wanted;  // by line
  std::vector<Pair> pairs;
};

std::string text_of(const std::filesystem::path& path) {
  std::ifstream file(path, std::ios::binary);
  std::stringstream text;
  text << file.rdbuf();
  return text.str();
}

int line_of(const Text& text, int step) {
  return text.draft.method[static_cast<std::size_t>(step)].line_number - 1;
}

// A line of a person may be several steps to the reader: they are one after the other, the first
// waits, the last is waited for, unless the food says otherwise.
void find_pairs(Text& text) {
  const Waits needed = needed_waits(text.wanted), before = all_waits(text.wanted);
  const IngredientWords words(text.draft.ingredients, tests::shipped_foods());
  OrderSigns signs(text.draft, text.works, words);
  auto& method = text.draft.method;
  const int count = static_cast<int>(method.size());
  for (int i = 0; i < count; ++i) {
    const int line = line_of(text, i);
    const bool first = i == 0 || line_of(text, i - 1) != line;
    const OrderSigns::Look look = signs.look(i);
    std::vector<int> follows;
    for (int k = 0; k < i; ++k) {
      const int other = line_of(text, k);
      const bool last = line_of(text, k + 1) != other;
      Pair pair{signs.signs(k, look), false};
      if (other == line) {
        if (k != i - 1) continue;
        pair.waits = true;
      } else if (needed[static_cast<std::size_t>(line)].count(other) != 0) {
        if (!first || !last) continue;
        pair.waits = true;
      } else if (before[static_cast<std::size_t>(line)].count(other) != 0) {
        continue;
      }
      if (pair.waits) follows.push_back(k);
      text.pairs.push_back(std::move(pair));
    }
    method[static_cast<std::size_t>(i)].follows = follows;
    signs.settle(i);
  }
}

Text read(const std::filesystem::path& expected) {
  const json wanted = json::parse(text_of(expected));
  std::filesystem::path source = expected;
  source.replace_extension().replace_extension(".txt");
  Text text;
  text.name = source.parent_path().filename().string() + "/" + source.filename().string();
  text.draft.ingredients = read_dish_text(text_of(source), tests::shipped_foods(),
                                          tests::shipped_task_times())
                               .ingredients;
  std::vector<MethodLine> lines;
  for (const json& step : wanted.at("steps")) {
    lines.push_back({static_cast<int>(lines.size()) + 1, "", step.at("text").get<std::string>()});
    text.wanted.emplace_back();
    for (const json& w : step.at("waits_for")) text.wanted.back().insert(w.get<int>());
  }
  const IngredientWords words(text.draft.ingredients, tests::shipped_foods());
  text.works = read_steps(text.draft, lines, words, tests::shipped_task_times());
  find_pairs(text);
  return text;
}

// Descent with a step of its own for each weight.
std::vector<double> learn(const std::vector<const Text*>& texts) {
  const auto count = static_cast<std::size_t>(sign_count());
  std::vector<double> weights(count, 0), moved(count, 1e-6), slope(count);
  std::vector<const Pair*> pairs;
  for (const Text* text : texts) {
    for (const Pair& pair : text->pairs) pairs.push_back(&pair);
  }
  for (int round = 0; round < kRounds; ++round) {
    for (std::size_t k = 0; k < count; ++k)
      slope[k] = (k < static_cast<std::size_t>(plain_sign_count()) ? kPenaltyAlone : kPenalty) *
                 weights[k];
    for (const Pair* pair : pairs) {
      double sum = 0;
      for (const int s : pair->signs) sum += weights[static_cast<std::size_t>(s)];
      const double error = 1 / (1 + std::exp(-sum)) - (pair->waits ? 1 : 0);
      for (const int s : pair->signs) slope[static_cast<std::size_t>(s)] += error;
    }
    for (std::size_t k = 0; k < count; ++k) {
      moved[k] += slope[k] * slope[k];
      weights[k] -= 0.5 * slope[k] / std::sqrt(moved[k]);
    }
  }
  return weights;
}

struct Right {
  int right = 0, all = 0;
};

Right judge(Text text, const std::vector<double>& weights, bool tell) {
  for (StepDraft& s : text.draft.method) s.follows.clear();
  const IngredientWords words(text.draft.ingredients, tests::shipped_foods());
  order_steps(text.draft, text.works, words, weights);
  Waits is(text.wanted.size());
  for (std::size_t i = 0; i < text.draft.method.size(); ++i) {
    const int line = line_of(text, static_cast<int>(i));
    for (const int f : text.draft.method[i].follows) {
      if (line_of(text, f) < line) is[static_cast<std::size_t>(line)].insert(line_of(text, f));
    }
  }
  const Waits wanted = needed_waits(text.wanted), mine = needed_waits(is);
  Right out;
  for (std::size_t i = 0; i < wanted.size(); ++i) {
    out.right += wanted[i] == mine[i] ? 1 : 0;
    ++out.all;
    if (!tell || wanted[i] == mine[i]) continue;
    std::string line = fmt::format("{} {}: wanted", text.name, i);
    for (const int w : wanted[i]) line += fmt::format(" {}", w);
    line += " is";
    for (const int w : mine[i]) line += fmt::format(" {}", w);
    for (const StepDraft& s : text.draft.method)
      if (s.line_number == static_cast<int>(i) + 1) line += " | " + s.says;
    std::cout << line << "\n";
  }
  return out;
}

// The whole file src/kitchen/reading/order_weight_table.h, without what hardly weighs.
void print_table(const std::vector<double>& weights) {
  constexpr double kHardly = 0.1;
  std::string rows;
  int count = 0;
  for (int s = 0; s < sign_count(); ++s) {
    const double weight = weights[static_cast<std::size_t>(s)];
    if (std::fabs(weight) < kHardly) continue;
    rows += fmt::format("    {{\"{}\", {:.2f}}},\n", sign_name(s), weight);
    ++count;
  }
  fmt::print(
      R"(// Written by bench_programs/learn_order --table; see docs/methods/reading-methods.md. Long because
// it is a table: one row for each sign that weighs anything. Only for order_weights.cpp.
#pragma once

#include <array>
#include <string_view>

namespace kitchen {{

struct SignWeight {{
  std::string_view sign;  ///< by its name (order_signs.h)
  double weight;
}};

// clang-format off
constexpr std::array<SignWeight, {}> kSignWeights = {{{{
{}}}}};
// clang-format on

}}  // namespace kitchen
)",
      count, rows);
}

}  // namespace

int main(int argc, char** argv) {
  std::vector<Text> texts;
  bool table = false, tell = false;
  for (int i = 1; i < argc; ++i) {
    const std::string arg = argv[i];
    if (arg == "--table") {
      table = true;
      continue;
    }
    if (arg == "--tell") {
      tell = true;
      continue;
    }
    std::vector<std::filesystem::path> files;
    for (const auto& entry : std::filesystem::directory_iterator(arg))
      if (entry.path().extension() == ".json") files.push_back(entry.path());
    std::sort(files.begin(), files.end());
    for (const auto& file : files) texts.push_back(read(file));
  }
  std::vector<const Text*> all;
  for (const Text& text : texts) all.push_back(&text);
  Right left_out, learnt;
  std::map<std::string, Right> by_set;
  for (int fold = 0; fold < kFolds; ++fold) {
    std::vector<const Text*> from;
    for (std::size_t k = 0; k < texts.size(); ++k)
      if (static_cast<int>(k % kFolds) != fold) from.push_back(&texts[k]);
    const std::vector<double> weights = learn(from);
    for (std::size_t k = 0; k < texts.size(); ++k) {
      if (static_cast<int>(k % kFolds) != fold) continue;
      const Right r = judge(texts[k], weights, tell);
      left_out.right += r.right, left_out.all += r.all;
      Right& set = by_set[texts[k].name.substr(0, texts[k].name.find('/'))];
      set.right += r.right, set.all += r.all;
    }
  }
  const std::vector<double> weights = learn(all);
  for (const Text& text : texts) {
    const Right r = judge(text, weights, false);
    learnt.right += r.right, learnt.all += r.all;
  }
  std::size_t pairs = 0;
  for (const Text& text : texts) pairs += text.pairs.size();
  if (table) {
    print_table(weights);
    return 0;
  }
  for (const auto& [set, r] : by_set)
    fmt::print("{}: {:.1f} % of {} left out\n", set, 100.0 * r.right / r.all, r.all);
  fmt::print(
      "{} texts, {} steps, {} pairs, {} signs: {:.1f} % right of those left out, {:.1f} % of those "
      "learnt from\n",
      texts.size(), left_out.all, pairs, sign_count(), 100.0 * left_out.right / left_out.all,
      100.0 * learnt.right / learnt.all);
  return 0;
}
