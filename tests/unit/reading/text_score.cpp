#include "text_score.h"

#include <algorithm>
#include <cmath>
#include <fstream>
#include <functional>
#include <map>
#include <ostream>
#include <set>
#include <sstream>

#include <nlohmann/json.hpp>

#include "../../support/shipped_foods.h"
#include "../../support/shipped_task_times.h"
#include "base/folding.h"
#include "kitchen/reading/line_tokens.h"
#include "kitchen/reading/read_dish_text.h"
#include "kitchen/reading/read_method.h"
#include "kitchen/reading/step_order.h"
#include "kitchen/words.h"

namespace tests {
namespace {

using namespace kitchen;
using nlohmann::json;
using Names = std::set<std::string>;

std::string text_of(const std::filesystem::path& path) {
  std::ifstream file(path, std::ios::binary);
  std::stringstream text;
  text << file.rdbuf();
  return text.str();
}

bool near(const json& wanted, const Ratio& is) {
  return wanted.is_number() &&
         std::fabs(wanted.get<double>() - is.value()) < 0.01 * std::max(1.0, is.value());
}

bool same_amount(const json& wanted, const Quantity& is) {
  const std::string unit = wanted.at("unit");
  if (!is.stated()) return unit == "none" && wanted.at("least").is_null();
  // "A few leaves" are no amount to one person and two to four to another.
  const bool few = is.unit == Unit::kPiece && is.least == Ratio(2) && is.most == Ratio(4);
  if (few && unit == "none" && wanted.at("least").is_null()) return true;
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

std::string joined(const Names& names) {
  std::string out;
  for (const std::string& n : names) out += (out.empty() ? "" : ", ") + n;
  return "{" + out + "}";
}

// One word for things a person might call either way: which pan it is is told by its food.
std::string ware_kind(const std::string& ware) {
  static const std::map<std::string, std::string> kKinds = {{"mixing bowl", "bowl"},
                                                            {"vegetable knife", "knife"},
                                                            {"vegetable board", "board"},
                                                            {"red board", "board"},
                                                            {"blue board", "board"},
                                                            {"wooden spoon", "spoon"},
                                                            {"metal spoon", "spoon"},
                                                            {"potato masher", "masher"},
                                                            {"cooling rack", "wire rack"},
                                                            {"large pan", "saucepan"},
                                                            {"small pan", "saucepan"},
                                                            {"pan", "saucepan"},
                                                            {"cake tin", "tin"},
                                                            {"loaf tin", "tin"},
                                                            {"tray", "baking tray"},
                                                            {"flan tin", "flan ring"},
                                                            {"flan dish", "flan ring"},
                                                            {"cutters", "cutter"},
                                                            {"cling film", "film"},
                                                            {"greaseproof paper", "paper"},
                                                            {"baking parchment", "paper"},
                                                            {"baking paper", "paper"},
                                                            {"thermometer", "probe"},
                                                            {"measuring jug", "jug"},
                                                            {"stick blender", "hand blender"},
                                                            {"spatula", "spoon"},
                                                            {"skewers", "skewer"},
                                                            {"plastic bag", "food bag"},
                                                            {"bag", "food bag"}};
  const auto found = kKinds.find(ware);
  return found == kKinds.end() ? ware : found->second;
}

// Whoever asks for a tin or a blender is content with a flan ring or a hand blender.
bool has_ware(const Names& wares, const std::string& wanted) {
  if (wares.count(wanted) != 0) return true;
  return std::any_of(wares.begin(), wares.end(), [&](const std::string& is) {
    return is.ends_with(" " + wanted) || (wanted == "tin" && is == "flan ring");
  });
}

std::string place_of(const StepDraft& step) {
  constexpr const char* kPlaces[] = {"ring",   "oven",   "grill",  "microwave",
                                     "kettle", "fridge", "freezer"};
  return step.heat ? kPlaces[static_cast<int>(step.heat->value.where)] : "none";
}

Names words_of_waits(const std::set<int>& waits) {
  Names out;
  for (const int w : waits) out.insert(std::to_string(w + 1));
  return out;
}

class TextJudge {
 public:
  TextJudge(std::string name, const json& wanted, TextScore& score, std::ostream* errors)
      : name_(std::move(name)), wanted_(wanted), score_(score), errors_(errors) {}

  void judge_list(const std::string& text) {
    ingredients(read_dish_text(text, shipped_foods(), shipped_task_times()));
  }

  void judge(const std::string& text) {
    const DishDraft draft = read_dish_text(text, shipped_foods(), shipped_task_times());
    headline(draft);
    ingredients(draft);
    // Step by step, so that a step cut otherwise does not shift all that follow.
    steps_.ingredients = draft.ingredients;
    std::vector<MethodLine> lines;
    for (const json& one : wanted_.at("steps"))
      lines.push_back({static_cast<int>(lines.size()) + 1, "", one.at("text").get<std::string>()});
    read_method(steps_, lines, shipped_foods(), shipped_task_times());
    for (std::size_t i = 0; i < lines.size(); ++i) step(static_cast<int>(i));
    waits();
  }

 private:
  std::string name_;
  const json& wanted_;
  TextScore& score_;
  std::ostream* errors_;
  DishDraft steps_;
  std::map<std::string, std::string> same_food_;  // what would do -> the food asked for

  void tell(std::string_view what, const std::string& where, const std::string& wanted,
            const std::string& is) {
    if (errors_ != nullptr)
      *errors_ << what << " | " << name_ << " | " << where << " | wanted " << wanted << " | is "
               << is << "\n";
  }

  void add(std::size_t attribute, int i, bool good, const std::string& wanted,
           const std::string& is) {
    score_.attributes[attribute].add(good);
    if (!good)
      tell(kAttributes[attribute],
           std::to_string(i + 1) + " " +
               wanted_["steps"][static_cast<std::size_t>(i)]["text"].get<std::string>(),
           wanted, is);
  }

  void headline(const DishDraft& draft) {
    const std::string is = plain(draft.name.value);
    if (wanted_.contains("name") && wanted_["name"].is_string()) {
      const std::string name = plain(wanted_["name"].get<std::string>());
      const bool good = is.find(name) != std::string::npos ||
                        (is.size() > 4 && name.find(is) != std::string::npos);
      score_.names.add(good);
      if (!good) tell("name", "", name, is);
    }
    if (!wanted_.contains("portions") || !wanted_["portions"].is_number() ||
        wanted_["portions"].get<int>() < 1)
      return;
    const int portions = wanted_["portions"];
    score_.portions.add(portions == draft.portions.value);
    if (portions != draft.portions.value)
      tell("portions", draft.name.value, std::to_string(portions),
           std::to_string(draft.portions.value));
  }

  static std::string plain(const std::string& text) {
    std::string out;
    for (const std::string& word : base::words_of(base::folded(text))) out += word + " ";
    return out;
  }

  void ingredients(const DishDraft& draft) {
    std::vector<bool> used(draft.ingredients.size(), false);
    for (const json& one : wanted_.at("ingredients")) {
      for (const json& other : one.at("also_ok"))
        same_food_.emplace(other.get<std::string>(), one.at("food").get<std::string>());
      const std::string line = base::folded(tidied_line(one.at("line").get<std::string>()));
      bool found = false;
      std::string is;
      for (std::size_t i = 0; i < used.size() && !found; ++i) {
        const IngredientDraft& mine = draft.ingredients[i];
        std::string its = base::folded(tidied_line(mine.line));
        if (its.starts_with("- ")) its.erase(0, 2);
        const bool same_line = its.find(line) != std::string::npos ||
                               line.find(its) != std::string::npos;
        if (used[i] || !same_line) continue;
        is += quantity_text(mine.quantity.value) + " of " + mine.food.value + "; ";
        if (ingredient_right(one, mine)) used[i] = found = true;
      }
      score_.ingredients.add(found);
      if (!found)
        tell("ingredient", one.at("line"),
             one.at("least").dump() + " " + one.at("unit").get<std::string>() + " of " +
                 one.at("food").get<std::string>(),
             is.empty() ? "not found" : is);
    }
    for (std::size_t i = 0; i < used.size(); ++i) {
      if (used[i]) continue;
      ++score_.extra;
      tell("too many", draft.ingredients[i].line, "nothing", draft.ingredients[i].food.value);
    }
  }

  std::vector<const StepDraft*> mine(int i) const {
    std::vector<const StepDraft*> out;
    for (const StepDraft& s : steps_.method) {
      if (s.line_number == i + 1) out.push_back(&s);
    }
    return out;
  }

  void step(int i) {
    const json& wanted = wanted_["steps"][static_cast<std::size_t>(i)];
    const auto all = mine(i);
    if (all.empty()) {
      for (std::size_t a = 0; a + 1 < kAttributes.size(); ++a)
        add(a, i, false, "a step", "no step");
      return;
    }
    const auto weight = [](const StepDraft* s) {
      return std::make_tuple(s->heat.has_value(), s->least.confidence == 1, s->most.value);
    };
    const StepDraft& main = **std::max_element(
        all.begin(), all.end(),
        [&](const auto* a, const auto* b) { return weight(a) < weight(b); });
    minutes(i, wanted.at("minutes"), all);
    const std::string attention(word_for(kAttentionWords, main.attention.value));
    add(1, i, wanted.at("attention") == attention, wanted["attention"], attention);
    add(2, i, wanted.at("place") == place_of(main), wanted["place"], place_of(main));
    Names hazards, wares, uses;
    std::string hygiene = "none";
    for (const StepDraft* s : all) {
      for (const auto& h : s->hazards) hazards.insert(std::string(word(h.value)));
      if (s->hygiene && (hygiene == "none" || s->hygiene->value == Hygiene::kRaw))
        hygiene = word_for(kHygieneWords, s->hygiene->value);
      for (const auto& e : s->equipment) wares.insert(ware_kind(e.value));
      for (const int u : s->uses) {
        const IngredientDraft& used = steps_.ingredients[static_cast<std::size_t>(u)];
        const std::string food = used.food.value.empty() ? "?" + used.name : used.food.value;
        const auto other = same_food_.find(food);
        uses.insert(other == same_food_.end() ? food : other->second);
      }
    }
    const std::string clean = wanted.at("hygiene").is_null() ? "none" : wanted["hygiene"];
    add(3, i, clean == hygiene, clean, hygiene);
    sets(4, i, wanted.at("hazards"), hazards);
    Names named;
    for (const json& e : wanted.at("equipment")) named.insert(ware_kind(e.get<std::string>()));
    const bool all_there = std::all_of(
        named.begin(), named.end(), [&](const std::string& ware) { return has_ware(wares, ware); });
    add(5, i, all_there, joined(named), joined(wares));
    Names foods;
    for (const json& u : wanted.at("uses")) {
      const auto other = same_food_.find(u.get<std::string>());
      foods.insert(other == same_food_.end() ? u.get<std::string>() : other->second);
    }
    add(6, i, foods == uses, joined(foods), joined(uses));
  }

  void sets(std::size_t attribute, int i, const json& list, const Names& is) {
    Names wanted;
    for (const json& one : list) wanted.insert(one.get<std::string>());
    add(attribute, i, wanted == is, joined(wanted), joined(is));
  }

  void minutes(int i, const json& wanted, const std::vector<const StepDraft*>& all) {
    double least = 0, most = 0;
    bool stated = false;
    for (const StepDraft* s : all) {
      if (s->least.confidence < 1) continue;
      stated = true;
      least += static_cast<double>(s->least.value.count()) / 60;
      most += static_cast<double>(s->most.value.count()) / 60;
    }
    const bool good = wanted.is_null()
                          ? !stated
                          : stated && std::fabs(wanted[0].get<double>() - least) < 0.51 &&
                                std::fabs(wanted[1].get<double>() - most) < 0.51;
    add(0, i, good, wanted.dump(),
        stated ? std::to_string(least) + " to " + std::to_string(most) : "not stated");
  }

  void waits() {
    const std::size_t count = wanted_["steps"].size();
    std::vector<std::set<int>> wanted(count), is(count);
    for (std::size_t i = 0; i < count; ++i) {
      for (const json& w : wanted_["steps"][i].at("waits_for")) wanted[i].insert(w.get<int>());
    }
    for (const StepDraft& s : steps_.method) {
      const int at = s.line_number - 1;
      for (const int f : s.follows) {
        const int other = steps_.method[static_cast<std::size_t>(f)].line_number - 1;
        if (other < at) is[static_cast<std::size_t>(at)].insert(other);
      }
    }
    const auto wanted_needed = needed_waits(wanted), is_needed = needed_waits(is);
    for (std::size_t i = 0; i < count; ++i)
      add(7, static_cast<int>(i), wanted_needed[i] == is_needed[i],
          joined(words_of_waits(wanted_needed[i])), joined(words_of_waits(is_needed[i])));
  }
};

}  // namespace

Share TextScore::sum(std::size_t many) const {
  Share out;
  for (std::size_t a = 0; a < many; ++a) {
    out.right += attributes[a].right;
    out.all += attributes[a].all;
  }
  return out;
}

TextScore score_of(const std::filesystem::path& folder, std::ostream* errors) {
  std::vector<std::filesystem::path> texts;
  for (const auto& entry : std::filesystem::directory_iterator(folder)) {
    if (entry.path().extension() == ".txt") texts.push_back(entry.path());
  }
  std::sort(texts.begin(), texts.end());
  TextScore score;
  for (const std::filesystem::path& path : texts) {
    std::filesystem::path beside = path;
    beside.replace_extension("expected.json");
    const json wanted = json::parse(text_of(beside));
    ++score.texts;
    TextJudge(path.stem().string(), wanted, score, errors).judge(text_of(path));
  }
  return score;
}

Share score_of_lines(const std::filesystem::path& file, std::ostream* errors) {
  constexpr std::size_t kList = 10;
  const json all = json::parse(text_of(file));
  std::vector<json> lists;
  std::vector<std::string> texts;
  std::size_t lines = 0;
  std::string last;
  for (const json& one : all) {
    const std::string line = one.at("line");
    if (line != last && lines++ % kList == 0) {
      lists.push_back({{"ingredients", json::array()}});
      texts.emplace_back("Dish\n\nIngredients\n");
    }
    lists.back()["ingredients"].push_back(one);
    if (line != last) texts.back() += line + "\n";
    last = line;
  }
  TextScore score;
  for (std::size_t i = 0; i < lists.size(); ++i)
    TextJudge("list " + std::to_string(i + 1), lists[i], score, errors)
        .judge_list(texts[i] + "\nMethod\nMix everything together in a bowl.\n");
  return score.ingredients;
}

void print_score(std::ostream& out, std::string_view name, const TextScore& score) {
  const auto line = [&](std::string_view what, const Share& share) {
    out << "  " << what << ": " << share.right << " of " << share.all << ", "
        << std::round(share.percent() * 10) / 10 << " %\n";
  };
  out << name << ", " << score.texts << " texts\n";
  line("name", score.names);
  line("portions", score.portions);
  line("ingredients", score.ingredients);
  out << "  read as an ingredient and not right: " << score.extra << "\n";
  for (std::size_t a = 0; a < kAttributes.size(); ++a) line(kAttributes[a], score.attributes[a]);
  line("the first five", score.firm());
  line("all attributes", score.all());
}

}  // namespace tests
