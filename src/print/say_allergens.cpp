#include "print/say_allergens.h"

#include <algorithm>
#include <map>

#include "base/text.h"
#include "kitchen/words.h"
#include "print/facts.h"
#include "print/paper.h"
#include "safety/annex.h"

namespace print {
namespace {

using base::say;
using kitchen::Dish;
using safety::Conflict;
using safety::Stated;

constexpr int kLead = 18;        // "check the label" and two spaces
constexpr int kDishColumn = 17;  // the longest word of a statement and two spaces

constexpr Stated kFromWorst[] = {Stated::kContains, Stated::kMayContain, Stated::kCheckLabel,
                                 Stated::kUnknown, Stated::kNotListed};

std::string padded(std::string text, int width) {
  const auto have = static_cast<int>(base::letters(text));
  if (have < width) text.append(static_cast<std::size_t>(width - have), ' ');
  return text;
}

std::string capital(std::string text) {
  if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') text[0] = static_cast<char>(text[0] - 32);
  return text;
}

class Sheet {
 public:
  Sheet(const AllergenSheet& sheet, const AllergenSay& how)
      : sheet_(sheet), how_(how), paper_(how.width, how.colour) {}

  std::string text() {
    if (!sheet_.dishes.empty()) {
      say_dishes(sheet_.dishes);
      paper_.space();
    }
    for (std::size_t i = 0; i < sheet_.lessons.size(); ++i) {
      say_lesson(sheet_.lessons[i]);
      say_leftovers(static_cast<int>(i));
      paper_.space();
    }
    paper_.paragraph(kLabelsDecide, 0, Ink::kStrong);
    return paper_.text();
  }

 private:
  void say_dishes(const std::vector<Dish>& dishes) {
    for (const Dish& dish : dishes) {
      say_dish(dish);
      paper_.space();
    }
    say_table(dishes);
  }

  // "contains   gluten (plain flour), milk (butter, milk)"
  void say_dish(const Dish& dish) {
    paper_.heading(tame(dish_name(dish)));
    std::vector<safety::Statements> said;
    for (const kitchen::Ingredient& each : dish.ingredients)
      said.push_back(safety::statements(each, sheet_.evidence.foods, sheet_.evidence.labels));
    const safety::Summary summary = safety::summary(dish, sheet_.evidence.foods,
                                                    sheet_.evidence.labels);
    for (const Stated stated : kFromWorst) say_group(dish, said, summary, stated);
    if (how_.details) say_sources(dish, said);
  }

  void say_group(const Dish& dish, const std::vector<safety::Statements>& said,
                 const safety::Summary& summary, Stated stated) {
    std::vector<std::string> items;
    std::map<std::string, std::vector<std::string>> by_reason;  // the same foods for many allergens
    std::vector<std::string> reasons;
    for (const safety::Allergen a : safety::kFourteen) {
      if (summary[safety::at(a)] != stated) continue;
      std::vector<std::string> names;
      for (std::size_t i = 0; i < said.size(); ++i) {
        if (stated != Stated::kNotListed && said[i][safety::at(a)].stated == stated)
          names.push_back(with_kinds(dish.ingredients[i], a));
      }
      const std::string reason = names.empty() ? "" : " (" + base::joined(names) + ")";
      if (!by_reason.contains(reason)) reasons.push_back(reason);
      by_reason[reason].emplace_back(kitchen::word(a));
    }
    for (const std::string& reason : reasons)
      items.push_back(base::joined(by_reason[reason]) + reason);
    if (items.empty()) return;
    std::string text;
    for (const std::string& item : items) text += (text.empty() ? "" : "; ") + item;
    paper_.entry(capital(std::string(word(stated))), text, 2, kLead);
  }

  // "plain flour: wheat": the law wants the cereal and the nut named.
  std::string with_kinds(const kitchen::Ingredient& ingredient, safety::Allergen allergen) const {
    const kitchen::Food* food = safety::food_of(ingredient, sheet_.evidence.foods);
    const auto kinds = food == nullptr ? std::vector<std::string>{}
                                       : safety::kinds_in(*food, allergen);
    return tame(ingredient.name) + (kinds.empty() ? "" : ": " + base::joined(kinds));
  }

  void say_sources(const Dish& dish, const std::vector<safety::Statements>& said) {
    for (std::size_t i = 0; i < said.size(); ++i) {
      std::map<std::string, std::vector<std::string>> by_words;
      for (const safety::Allergen a : safety::kFourteen) {
        const safety::Statement& s = said[i][safety::at(a)];
        if (s.stated == Stated::kNotListed) continue;
        by_words[say(word(s.stated), " (", s.from, ")")].emplace_back(kitchen::word(a));
      }
      std::string text;
      for (const auto& [words, allergens] : by_words) {
        const std::string which = allergens.size() == safety::kAllergenCount
                                      ? "all fourteen"
                                      : base::joined(allergens);
        text += (text.empty() ? "" : "; ") + which + ": " + words;
      }
      if (text.empty()) text = "nothing listed (" + said[i][0].from + ")";
      paper_.entry(tame(dish.ingredients[i].name), text, 4, kLead);
    }
  }

  // Fourteen rows in words, a column for each dish, as many side by side as fit.
  void say_table(const std::vector<Dish>& dishes) {
    const int lead = 14;
    const std::size_t side_by_side = static_cast<std::size_t>(
        std::max(1, (paper_.width() - lead) / kDishColumn));
    for (std::size_t from = 0; from < dishes.size(); from += side_by_side) {
      const std::size_t to = std::min(dishes.size(), from + side_by_side);
      paper_.space();
      std::vector<safety::Summary> columns;
      std::vector<std::vector<std::string>> heads;
      std::size_t tallest = 0;
      for (std::size_t d = from; d < to; ++d) {
        columns.push_back(
            safety::summary(dishes[d], sheet_.evidence.foods, sheet_.evidence.labels));
        heads.push_back(wrapped(dish_name(dishes[d]), kDishColumn - 2));
        tallest = std::max(tallest, heads.back().size());
      }
      for (std::size_t i = 0; i < tallest; ++i) {
        std::string head = padded("", lead);
        for (const auto& name : heads) head += padded(i < name.size() ? name[i] : "", kDishColumn);
        line(head);
      }
      for (const safety::Allergen a : safety::kFourteen) {
        std::string row = padded(std::string(kitchen::word(a)), lead);
        for (const safety::Summary& column : columns)
          row += padded(std::string(word(column[safety::at(a)])), kDishColumn);
        line(row);
      }
    }
  }

  // A row of a table keeps its spaces, so it goes past the wrapping.
  void line(std::string text) {
    while (!text.empty() && text.back() == ' ') text.pop_back();
    paper_.row(text);
  }

  void say_lesson(const AllergenLesson& one) {
    const kitchen::Lesson& lesson = one.lesson;
    paper_.heading(tame(lesson.title));
    std::vector<Dish> dishes;
    for (const int d : dishes_made(lesson))
      dishes.push_back(lesson.dishes[static_cast<std::size_t>(d)]);
    if (how_.details) {
      say_dishes(dishes);
    } else {
      say_table(dishes);
    }
    paper_.space();
    if (one.needs.empty()) {
      paper_.paragraph(
          "No cook of this lesson is recorded with an allergy or a diet. Check the school's "
          "records.");
      return;
    }
    for (const safety::CookNeeds& cook : one.needs) say_cook(one, cook);
    if (one.order.empty()) return;
    paper_.subheading("Who goes first");
    for (const safety::ThingOrder& thing : one.order)
      paper_.entry(capital(thing.thing), turns_words(lesson, thing), 4, kLead);
  }

  void say_cook(const AllergenLesson& one, const safety::CookNeeds& needs) {
    const kitchen::Cook& cook = one.lesson.cooks[static_cast<std::size_t>(needs.cook)];
    std::vector<std::string> words;
    for (const safety::Need& need : needs.needs)
      words.push_back(say(word(need), ", ", kitchen::word_for(safety::kReachWords, need.reach)));
    const std::string& place = one.lesson.room.places[static_cast<std::size_t>(cook.place)].name;
    paper_.subheading(tame(say(cook.name, ", ", place, ": ", base::joined(words))));
    std::vector<const Conflict*> own;
    for (const Conflict& c : one.conflicts) {
      if (c.cook == needs.cook) own.push_back(&c);
    }
    if (own.empty())
      paper_.paragraph("Nothing in the dishes of this lesson is stated or in doubt for this cook.",
                       4);
    std::string_view last;
    for (std::size_t i = 0; i < own.size(); ++i) {
      const std::string_view lead = word(own[i]->seriousness);
      const std::string of = needs.needs.size() > 1 ? std::string(word(own[i]->need)) + ": " : "";
      i = say_conflict(one.lesson, own, i, lead == last ? "" : capital(std::string(lead)), of);
      last = lead;
    }
    say_own_things(needs);
    paper_.space();
  }

  // One conflict, or all foods of one dish that are in no table together. Gives the last one told.
  std::size_t say_conflict(const kitchen::Lesson& lesson, const std::vector<const Conflict*>& own,
                           std::size_t i, const std::string& lead, const std::string& of) {
    const int indent = 4, column = 26;
    const Conflict& first = *own[i];
    const auto unlisted = [&](const Conflict& c) {
      return c.why == safety::Why::kOwnDish && c.stated == Stated::kUnknown && c.ingredient >= 0 &&
             c.need == first.need && c.dishes == first.dishes;
    };
    std::vector<std::string> names;
    std::size_t end = i;
    for (; unlisted(first) && end < own.size() && unlisted(*own[end]); ++end)
      names.push_back(ingredient_of(lesson, *own[end]));
    if (names.size() < 2) {
      paper_.entry(lead, tame(of + sentence(lesson, first)), indent, column);
      for (const safety::Remedy& remedy : first.settled_by)
        paper_.entry("-", stopped(tame(remedy.says)), indent + column, 2);
      return i;
    }
    const Dish& dish = lesson.dishes[static_cast<std::size_t>(first.dishes.front())];
    paper_.entry(lead,
                 tame(say(of, dish_name(dish), ": not known for ", word(first.need), ": ",
                          base::joined(names), ".")),
                 indent, column);
    paper_.entry("-", "Say which foods of the table they are, or enter them from their labels.",
                 indent + column, 2);
    for (const safety::Remedy& remedy : first.settled_by) {
      if (remedy.kind == safety::Remedy::Kind::kVariant)
        paper_.entry("-", stopped(tame(remedy.says)), indent + column, 2);
    }
    return end - 1;
  }

  static std::string ingredient_of(const kitchen::Lesson& lesson, const Conflict& c) {
    return lesson.dishes[static_cast<std::size_t>(c.dishes.front())]
        .ingredients[static_cast<std::size_t>(c.ingredient)]
        .name;
  }

  // With one full stop, also after "Chidi O.".
  static std::string stopped(std::string text) { return text.ends_with('.') ? text : text + "."; }

  void say_own_things(const safety::CookNeeds& needs) {
    std::vector<std::string> things;
    for (const safety::Need& need : needs.needs) {
      for (const safety::ThingRule& rule : safety::own_things(need)) {
        if (std::find(things.begin(), things.end(), rule.says) == things.end())
          things.push_back(rule.says);
      }
    }
    if (things.empty()) return;
    std::string text;
    for (const std::string& thing : things) text += (text.empty() ? "" : "; ") + thing;
    paper_.entry("Own things", capital(text) + ".", 4, 26);
  }

  static std::string turns_words(const kitchen::Lesson& lesson, const safety::ThingOrder& thing) {
    std::string text;
    for (const safety::Turn& turn : thing.turns) {
      std::vector<std::string> names;
      const bool last = &turn == &thing.turns.back();
      for (std::size_t i = 0; i < turn.cooks.size() && i < 4; ++i)
        names.push_back(lesson.cooks[static_cast<std::size_t>(turn.cooks[i])].name);
      if (last && turn.cooks.size() > 4 && !turn.clean_before) names = {"everybody else"};
      if (!last && turn.cooks.size() > 4) names.push_back(say(turn.cooks.size() - 4, " more"));
      if (!text.empty()) text += turn.clean_before ? "; full clean; then " : "; then ";
      text += base::joined(names);
    }
    return stopped(tame(capital(text)));
  }

  void say_leftovers(int lesson) {
    for (const safety::Leftover& left : sheet_.leftovers) {
      if (left.lesson != lesson) continue;
      const kitchen::Lesson& before = sheet_.lessons[static_cast<std::size_t>(left.before)].lesson;
      std::vector<std::string> dishes;
      for (const int d : left.dishes)
        dishes.push_back(dish_name(before.dishes[static_cast<std::size_t>(d)]));
      paper_.subheading(
          tame(say("Not in the room: ", word(left.need), ". ", before.title, " had it until ",
                   left.since, " (", base::joined(dishes), ": ", word(left.stated), ")")));
      paper_.entry("Fresh ones of", base::joined(left.replace) + ".", 4, kLead);
      for (const std::string& each : left.clean) paper_.entry("Clean", tame(each) + ".", 4, kLead);
    }
  }

  const AllergenSheet& sheet_;
  const AllergenSay& how_;
  Paper paper_;
};

}  // namespace

std::vector<int> dishes_made(const kitchen::Lesson& lesson) {
  std::vector<int> out;
  for (std::size_t d = 0; d < lesson.dishes.size(); ++d) {
    const bool made = std::any_of(lesson.cooks.begin(), lesson.cooks.end(), [&](const auto& cook) {
      return std::find(cook.dishes.begin(), cook.dishes.end(), static_cast<int>(d)) !=
             cook.dishes.end();
    });
    if (made) out.push_back(static_cast<int>(d));
  }
  return out;
}

std::string say_allergens(const AllergenSheet& sheet, const AllergenSay& how) {
  return Sheet(sheet, how).text();
}

}  // namespace print
