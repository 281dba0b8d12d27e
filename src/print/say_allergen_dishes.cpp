// What is stated of dishes: in groups from "contains" to "not listed", the diets, and the table.
#include <algorithm>
#include <map>

#include "base/text.h"
#include "kitchen/words.h"
#include "print/allergen_parts.h"
#include "print/facts.h"
#include "print/words.h"
#include "safety/annex.h"

namespace print {
namespace {

using base::say;
using kitchen::Dish;
using safety::Stated;

constexpr int kLead = 18;        // "Check the label" and two spaces
constexpr int kTableLead = 14;   // "crustaceans" and room
constexpr int kDishColumn = 17;  // the longest word of a statement and two spaces

constexpr Stated kFromWorst[] = {Stated::kContains, Stated::kMayContain, Stated::kCheckLabel,
                                 Stated::kUnknown, Stated::kNotListed};

std::string padded(std::string text, int width) {
  const auto have = static_cast<int>(base::letters(text));
  if (have < width) text.append(static_cast<std::size_t>(width - have), ' ');
  return text;
}

// A row of a table keeps its spaces, so it goes past the wrapping.
void row(Paper& paper, std::string text) {
  while (!text.empty() && text.back() == ' ') text.pop_back();
  paper.row(text);
}

std::string with_semicolons(const std::vector<std::string>& items) {
  std::string text;
  for (const std::string& item : items) text += (text.empty() ? "" : "; ") + item;
  return text;
}

/// Words with the reason they share: "gluten and milk (butter)".
class Reasons {
 public:
  void add(std::string_view word, const std::vector<std::string>& names) {
    const std::string reason = names.empty() ? "" : " (" + base::joined(names) + ")";
    if (!by_reason_.contains(reason)) order_.push_back(reason);
    by_reason_[reason].emplace_back(word);
  }
  std::string text() {
    std::vector<std::string> items;
    for (const std::string& reason : order_)
      items.push_back(base::joined(by_reason_[reason]) + reason);
    return with_semicolons(items);
  }

 private:
  std::map<std::string, std::vector<std::string>> by_reason_;
  std::vector<std::string> order_;
};

class DishSheet {
 public:
  DishSheet(Paper& paper, const Dish& dish, const safety::Evidence& evidence)
      : paper_(paper), dish_(dish), evidence_(evidence) {
    for (const kitchen::Ingredient& each : dish.ingredients)
      said_.push_back(safety::statements(each, evidence.foods, evidence.labels));
  }

  void say_all(bool details) {
    paper_.heading(tame(dish_name(dish_)));
    const safety::Summary summary = safety::summary(dish_, evidence_.foods, evidence_.labels);
    for (const Stated stated : kFromWorst) say_group(summary, stated);
    say_diets();
    if (details) say_sources();
  }

 private:
  void say_group(const safety::Summary& summary, Stated stated) {
    Reasons reasons;
    for (const safety::Allergen a : safety::kFourteen) {
      if (summary[safety::at(a)] != stated) continue;
      std::vector<std::string> names;
      for (std::size_t i = 0; i < said_.size(); ++i) {
        if (stated != Stated::kNotListed && said_[i][safety::at(a)].stated == stated)
          names.push_back(with_kinds(dish_.ingredients[i], a));
      }
      reasons.add(kitchen::word(a), names);
    }
    if (const std::string text = reasons.text(); !text.empty())
      paper_.entry(capital(std::string(word(stated))), text, 2, kLead);
  }

  // "plain flour: wheat": the law wants the cereal and the nut named.
  std::string with_kinds(const kitchen::Ingredient& ingredient, safety::Allergen allergen) const {
    const kitchen::Food* food = safety::food_of(ingredient, evidence_.foods);
    const auto kinds = food == nullptr ? std::vector<std::string>{}
                                       : safety::kinds_in(*food, allergen);
    return tame(ingredient.name) + (kinds.empty() ? "" : ": " + base::joined(kinds));
  }

  void say_diets() {
    Reasons not_for, check, unknown;
    for (const auto& diet : safety::kDietWords) {
      if (diet.value == safety::Diet::kCoeliac) continue;  // gluten stands above
      const auto all = safety::findings(dish_, {diet.value, safety::Reach::kEat}, evidence_);
      const Stated strongest = safety::strongest(all);
      if (!safety::may_be_there(strongest)) continue;
      std::vector<std::string> names;
      for (const safety::Finding& each : all) {
        if (each.statement.stated == strongest && each.ingredient >= 0)
          names.push_back(tame(dish_.ingredients[static_cast<std::size_t>(each.ingredient)].name));
      }
      Reasons& group = strongest == Stated::kContains  ? not_for
                       : strongest == Stated::kUnknown ? unknown
                                                       : check;
      group.add(diet.word, names);
    }
    if (const std::string text = not_for.text(); !text.empty())
      paper_.entry("Does not fit", text, 2, kLead);
    if (const std::string text = check.text(); !text.empty())
      paper_.entry("Check labels for", text, 2, kLead);
    if (const std::string text = unknown.text(); !text.empty())
      paper_.entry("Not known for", text, 2, kLead);
  }

  void say_sources() {
    for (std::size_t i = 0; i < said_.size(); ++i) {
      std::map<std::string, std::vector<std::string>> by_words;
      for (const safety::Allergen a : safety::kFourteen) {
        const safety::Statement& s = said_[i][safety::at(a)];
        if (s.stated == Stated::kNotListed) continue;
        by_words[say(word(s.stated), " (", s.from, ")")].emplace_back(kitchen::word(a));
      }
      std::vector<std::string> items;
      for (const auto& [words, allergens] : by_words) {
        const bool all = allergens.size() == safety::kAllergenCount;
        items.push_back((all ? "all fourteen" : base::joined(allergens)) + ": " + words);
      }
      if (items.empty()) items.push_back("nothing listed (" + said_[i][0].from + ")");
      paper_.entry(tame(dish_.ingredients[i].name), with_semicolons(items), 4, kLead);
    }
  }

  Paper& paper_;
  const Dish& dish_;
  const safety::Evidence& evidence_;
  std::vector<safety::Statements> said_;
};

}  // namespace

void say_dishes(Paper& paper, const std::vector<Dish>& dishes, const safety::Evidence& evidence,
                bool details) {
  for (const Dish& dish : dishes) {
    DishSheet(paper, dish, evidence).say_all(details);
    paper.space();
  }
  say_allergen_table(paper, dishes, evidence);
}

void say_allergen_table(Paper& paper, const std::vector<Dish>& dishes,
                        const safety::Evidence& evidence) {
  const auto side_by_side = static_cast<std::size_t>(
      std::max(1, (paper.width() - kTableLead) / kDishColumn));
  for (std::size_t from = 0; from < dishes.size(); from += side_by_side) {
    const std::size_t to = std::min(dishes.size(), from + side_by_side);
    paper.space();
    std::vector<safety::Summary> columns;
    std::vector<std::vector<std::string>> heads;
    std::size_t tallest = 0;
    for (std::size_t d = from; d < to; ++d) {
      columns.push_back(safety::summary(dishes[d], evidence.foods, evidence.labels));
      heads.push_back(wrapped(dish_name(dishes[d]), kDishColumn - 2));
      tallest = std::max(tallest, heads.back().size());
    }
    for (std::size_t i = 0; i < tallest; ++i) {
      std::string head = padded("", kTableLead);
      for (const auto& name : heads) head += padded(i < name.size() ? name[i] : "", kDishColumn);
      row(paper, head);
    }
    for (const safety::Allergen a : safety::kFourteen) {
      std::string text = padded(std::string(kitchen::word(a)), kTableLead);
      for (const safety::Summary& column : columns)
        text += padded(std::string(word(column[safety::at(a)])), kDishColumn);
      row(paper, text);
    }
  }
}

}  // namespace print
