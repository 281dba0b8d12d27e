#include "print/say_allergens.h"

#include <algorithm>

#include "base/text.h"
#include "kitchen/words.h"
#include "print/allergen_parts.h"
#include "print/facts.h"
#include "print/words.h"

namespace print {
namespace {

using base::say;
using kitchen::Dish;
using safety::Conflict;
using safety::Stated;

constexpr int kLead = 18;  // "check the label" and two spaces

class Sheet {
 public:
  Sheet(const AllergenSheet& sheet, const AllergenSay& how)
      : sheet_(sheet), how_(how), paper_(how.width, how.colour) {}

  std::string text() {
    if (!sheet_.dishes.empty()) {
      say_dishes(paper_, sheet_.dishes, sheet_.evidence, how_.details);
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
  void say_lesson(const AllergenLesson& one) {
    const kitchen::Lesson& lesson = one.lesson;
    paper_.heading(tame(lesson.title));
    std::vector<Dish> dishes;
    for (const int d : dishes_made(lesson))
      dishes.push_back(lesson.dishes[static_cast<std::size_t>(d)]);
    if (how_.details) {
      say_dishes(paper_, dishes, sheet_.evidence, true);
    } else {
      say_allergen_table(paper_, dishes, sheet_.evidence);
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
      paper_.entry(capital(thing.thing), tame(turns_words(lesson, thing)), 4, kLead);
  }

  void say_cook(const AllergenLesson& one, const safety::CookNeeds& needs) {
    const kitchen::Cook& cook = one.lesson.cooks[static_cast<std::size_t>(needs.cook)];
    const std::string& place = one.lesson.room.places[static_cast<std::size_t>(cook.place)].name;
    paper_.subheading(tame(say(cook.name, ", ", place, ": ", needs_words(needs))));
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

  void say_own_things(const safety::CookNeeds& needs) {
    const std::string things = own_things_words(needs);
    if (!things.empty()) paper_.entry("Own things", things, 4, 26);
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

std::string needs_words(const safety::CookNeeds& needs) {
  std::vector<std::string> words;
  for (const safety::Need& need : needs.needs)
    words.push_back(say(word(need), ", ", kitchen::word_for(safety::kReachWords, need.reach)));
  return base::joined(words);
}

std::string own_things_words(const safety::CookNeeds& needs) {
  std::vector<std::string> things;
  for (const safety::Need& need : needs.needs) {
    for (const safety::ThingRule& rule : safety::own_things(need)) {
      if (std::find(things.begin(), things.end(), rule.says) == things.end())
        things.push_back(rule.says);
    }
  }
  return things.empty() ? "" : capital(joined(things, "; ")) + ".";
}

std::string turns_words(const kitchen::Lesson& lesson, const safety::ThingOrder& thing) {
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

std::string who_goes_first(const kitchen::Lesson& lesson, const safety::ThingOrder& thing) {
  return say(capital(thing.thing), ", who goes first: ", turns_words(lesson, thing));
}

std::string say_allergens(const AllergenSheet& sheet, const AllergenSay& how) {
  return Sheet(sheet, how).text();
}

}  // namespace print
