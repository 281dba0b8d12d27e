#include "kitchen/check_lesson.h"

#include <algorithm>
#include <map>

#include "kitchen/check_parts.h"
#include "kitchen/raw_tasting.h"

namespace kitchen {

std::string dish_name(const Dish& dish) {
  return in_quotes(dish.variant.empty() ? dish.name : say(dish.name, " (", dish.variant, ")"));
}

std::vector<int> dishes_cooked(const Lesson& lesson) {
  std::vector<int> out;
  for (int d = 0; d < static_cast<int>(lesson.dishes.size()); ++d) {
    const auto cooks_it = [d](const Cook& cook) {
      return std::find(cook.dishes.begin(), cook.dishes.end(), d) != cook.dishes.end();
    };
    if (std::any_of(lesson.cooks.begin(), lesson.cooks.end(), cooks_it)) out.push_back(d);
  }
  return out;
}

std::vector<bool> steps_done(const Lesson& lesson, int dish) {
  const std::vector<Step>& method = dish_at(lesson, dish).method;
  const auto carry = std::find_if(lesson.carry.begin(), lesson.carry.end(),
                                  [dish](const CarryOver& c) { return c.dish == dish; });
  if (carry == lesson.carry.end()) return std::vector<bool>(method.size(), true);
  std::vector<bool> first(method.size(), false);
  std::vector<int> open{
      dish_at(lesson, dish).splits[static_cast<std::size_t>(carry->split)].after_step};
  while (!open.empty()) {
    const auto i = static_cast<std::size_t>(open.back());
    open.pop_back();
    if (first[i]) continue;
    first[i] = true;
    for (const Follows& wait : method[i].follows) open.push_back(wait.step);
  }
  if (carry->second_half) first.flip();
  return first;
}

namespace {

template <class T>
bool in_range(int index, const std::vector<T>& of) {
  return index >= 0 && index < static_cast<int>(of.size());
}

/// Every number that points at something points at something. The reader always gets this right.
bool indices_sound(const Lesson& lesson) {
  bool ok = true;
  const auto all = [&ok](const std::vector<int>& indices, const auto& of) {
    for (const int i : indices) ok = ok && in_range(i, of);
  };
  const auto steps = [&](const std::vector<StepRef>& refs) {
    for (const StepRef& ref : refs)
      ok = ok && in_range(ref.dish, lesson.dishes) &&
           in_range(ref.step, dish_at(lesson, ref.dish).method);
  };
  for (const Place& place : lesson.room.places) {
    ok = ok && in_range(place.bay, lesson.room.bays) && !place.cookers.empty();
    all(place.cookers, lesson.room.cookers);
  }
  for (const Dish& dish : lesson.dishes) {
    for (const Step& step : dish.method) {
      for (const Follows& wait : step.follows) ok = ok && in_range(wait.step, dish.method);
      ok = ok && (!step.closes || in_range(*step.closes, dish.method));
      all(step.uses, dish.ingredients);
    }
    for (const Split& split : dish.splits) ok = ok && in_range(split.after_step, dish.method);
    ok = ok && in_range(dish.wash_after, dish.method);
  }
  for (const Cook& cook : lesson.cooks) {
    ok = ok && in_range(cook.place, lesson.room.places);
    all(cook.dishes, lesson.dishes);
  }
  for (const Window& window : lesson.windows) {
    all(window.audience, lesson.cooks);
    ok = ok && (!window.led_by || in_range(*window.led_by, lesson.adults));
    steps(window.after);
    steps(window.before);
  }
  for (const Pin& pin : lesson.pins) {
    all(pin.cooks, lesson.cooks);
    steps({pin.step});
  }
  for (const Sitting& sitting : lesson.sittings) all(sitting.dishes, lesson.dishes);
  for (const CarryOver& carry : lesson.carry)
    ok = ok && in_range(carry.dish, lesson.dishes) &&
         in_range(carry.split, dish_at(lesson, carry.dish).splits);
  for (const OvenAtOpening& oven : lesson.ovens)
    ok = ok && in_range(oven.cooker, lesson.room.cookers);
  return ok && (!lesson.rack_for || in_range(*lesson.rack_for, lesson.adults));
}

template <class T>
void refuse_twins(const std::vector<T>& all, const char* list, std::string_view nouns,
                  const char* code, Problems& problems) {
  for (std::size_t i = 0; i < all.size(); ++i) {
    const auto first = std::find_if(all.begin(), all.end(),
                                    [&](const T& each) { return each.name == all[i].name; });
    if (first - all.begin() == static_cast<std::ptrdiff_t>(i)) continue;
    add(problems, code, below(place_in(list, i), "name"),
        say("Two ", nouns, " are called ", in_quotes(all[i].name), "."),
        "Give one of them another name.");
  }
}

void check_names(const Lesson& lesson, Problems& problems) {
  refuse_twins(lesson.cooks, "cooks", "cooks", "lesson.cook_twice", problems);
  refuse_twins(lesson.adults, "adults", "adults", "lesson.adult_twice", problems);
  refuse_twins(lesson.sittings, "sittings", "sittings", "lesson.sitting_name_twice", problems);
  std::map<std::string, const Dish*> tags;
  for (const Dish& dish : lesson.dishes) {
    const auto [at, fresh] = tags.emplace(dish.tag, &dish);
    if (fresh || at->second->name == dish.name) continue;
    add(problems, "lesson.tag_twice", "/dishes",
        say("The dishes ", dish_name(*at->second), " and ", dish_name(dish), " both have the tag ",
            in_quotes(dish.tag), "."),
        "Give one of them another tag of two letters in its file.");
  }
}

std::string guilty_ingredients(const Dish& dish, const Allergens& avoided) {
  std::vector<std::string> parts;
  for (const Ingredient& ingredient : dish.ingredients) {
    std::vector<std::string> found;
    for (const Allergen allergen : ingredient.contains) {
      if (avoided.count(allergen) > 0) found.emplace_back(word(allergen));
    }
    if (found.empty()) continue;
    parts.push_back(ingredient.label_read
                        ? say(ingredient.name, " (", base::joined(found), ")")
                        : say(ingredient.name, " (label not read, so it counts as everything)"));
  }
  return base::joined(parts);
}

void check_cook(const Lesson& lesson, std::size_t c, Problems& problems) {
  const Cook& cook = lesson.cooks[c];
  const std::string where = place_in("cooks", c);
  if (cook.people < 1 || cook.people > 3)
    add(problems, "lesson.cook_size", where,
        say("The cook ", in_quotes(cook.name), " has ", cook.people, " people."),
        "A cook is one to three people.");
  if (cook.dishes.empty())
    add(problems, "lesson.cook_without_dish", where,
        say("The cook ", in_quotes(cook.name), " has no dish."),
        "Give them a dish, or leave them out.");
  for (std::size_t i = 0; i < cook.dishes.size(); ++i) {
    const int d = cook.dishes[i];
    const Dish& dish = dish_at(lesson, d);
    const std::string dish_where = below(below(where, "dishes"), i);
    if (std::find(cook.dishes.begin(), cook.dishes.begin() + static_cast<std::ptrdiff_t>(i), d) !=
        cook.dishes.begin() + static_cast<std::ptrdiff_t>(i)) {
      add(problems, "lesson.dish_twice", dish_where,
          say("The cook ", in_quotes(cook.name), " has ", dish_name(dish), " twice."),
          "Name it once.");
      continue;
    }
    const std::string guilty = guilty_ingredients(dish, cook.avoids);
    if (!guilty.empty()) {
      add(problems, "lesson.cook_avoids", dish_where,
          say(in_quotes(cook.name), " must avoid something in ", dish_name(dish), ": ", guilty,
              "."),
          "Give them a variant without it, or another dish; read labels that are not read.");
    }
    const std::vector<bool> done = steps_done(lesson, d);
    for (std::size_t s = 0; s < dish.method.size(); ++s) {
      if (!done[s] || dish.method[s].people <= cook.people) continue;
      add(problems, "lesson.step_needs_two", dish_where,
          say("The step ", in_quotes(dish.method[s].id), " of ", dish_name(dish),
              " needs two people, and ", in_quotes(cook.name), " is one."),
          "Pair the cook, or change the step.");
    }
  }
}

void check_presence(const Lesson& lesson, std::size_t c, Problems& problems) {
  const Cook& cook = lesson.cooks[c];
  const std::string where = place_in("cooks", c);
  if (cook.arrives < Seconds{0} || cook.leaves > lesson.bell || cook.arrives >= cook.leaves) {
    add(problems, "lesson.cook_not_there", where,
        say(in_quotes(cook.name), " is there from ", clock(lesson, cook.arrives), " to ",
            clock(lesson, cook.leaves), "; the lesson runs from ", clock(lesson, Seconds{0}),
            " to ", clock(lesson, lesson.bell), "."),
        "Let them arrive before they leave, both inside the lesson.");
  }
  for (std::size_t i = 0; i < cook.away.size(); ++i) {
    const Away& hole = cook.away[i];
    if (hole.from >= Seconds{0} && hole.from < hole.to && hole.to <= lesson.bell) continue;
    add(problems, "lesson.away_outside", below(below(where, "away"), i),
        say(in_quotes(cook.name), " has one person away from ", clock(lesson, hole.from), " to ",
            clock(lesson, hole.to), ", which is not a time inside the lesson."),
        "Write a start and a later end inside the lesson.");
  }
}

bool adults_together(const Lesson& lesson) {
  for (std::size_t a = 0; a < lesson.adults.size(); ++a) {
    for (std::size_t b = a + 1; b < lesson.adults.size(); ++b) {
      const Adult& one = lesson.adults[a];
      const Adult& two = lesson.adults[b];
      if (std::max(one.from, two.from) < std::min(one.to, two.to)) return true;
    }
  }
  return false;
}

void check_hazard(const Lesson& lesson, const Dish& dish, const Step& step, Problems& problems) {
  const HouseRules& rules = lesson.rules;
  const std::string what = say("The step ", in_quotes(step.id), " of ", dish_name(dish));
  if (step.hazard == Hazard::kHotOil) {
    if (!rules.frying)
      add(problems, "rules.no_frying", "/dishes",
          say(what, " uses hot oil, and the house rules do not allow frying."),
          "Change the step, or choose a dish without hot oil.");
    if (rules.frying && lesson.year < rules.frying_from_year) {
      add(problems, "rules.frying_year", "/dishes",
          say(what, " uses hot oil; this is year ", lesson.year,
              ", and frying is allowed from year ", rules.frying_from_year, "."),
          "Change the step, or choose a dish without hot oil.");
    }
    if (rules.second_adult_for_frying && !adults_together(lesson)) {
      add(problems, "rules.second_adult", "/adults",
          say(what,
              " uses hot oil, and the house rules ask for a second adult; there are never two "
              "adults in the room."),
          "Add a second adult to the lesson, or change the step.");
    }
  }
  if (step.hazard == Hazard::kFirstKnife && lesson.year < rules.knives_from_year) {
    add(problems, "rules.knife_year", "/dishes",
        say(what, " uses knives; this is year ", lesson.year, ", and knives are allowed from year ",
            rules.knives_from_year, "."),
        "Change the step: scissors, graters or food cut beforehand.");
  }
  const auto may = [&](const Adult& a) {
    return std::find(a.may_watch.begin(), a.may_watch.end(), *step.hazard) != a.may_watch.end();
  };
  if (std::none_of(lesson.adults.begin(), lesson.adults.end(), may)) {
    add(problems, "lesson.nobody_may_watch", "/adults",
        say(what, " needs an adult near (", word(*step.hazard),
            "), and no adult of this lesson may watch that."),
        say("Add ", in_quotes(word(*step.hazard)), " to what an adult may watch."));
  }
}

/// What the house rule on food that goes home asks of the dishes and the fridge (rule Y12).
void check_home_chilled(const Lesson& lesson, Problems& problems) {
  if (lesson.rack_for) return;  // an adult sees to it after the lesson; the notes say so
  int boxes = 0;
  for (const int d : dishes_cooked(lesson)) {
    if (!chilled_before_home(lesson, d)) continue;
    for (const Cook& cook : lesson.cooks)
      boxes += static_cast<int>(std::count(cook.dishes.begin(), cook.dishes.end(), d));
    const Dish& dish = dish_at(lesson, d);
    const std::vector<bool> done = steps_done(lesson, d);
    bool hot = false;
    for (std::size_t s = 0; s < done.size(); ++s) hot = hot || (done[s] && dish.method[s].heat);
    if (!hot) continue;
    if (dish.cooling == Seconds{0}) {
      add(problems, "rules.hot_into_fridge", "/dishes",
          say("By the house rules ", dish_name(dish),
              " goes home only out of the fridge, and it has no minutes to cool first."),
          "Write its cooling_minutes, or \"keep_chilled\": false if it keeps out of the fridge.");
    } else if (dish.cooling + lesson.rules.pack > kIntoTheFridge) {
      add(problems, "rules.cooling_too_long", "/dishes",
          say("By the house rules ", dish_name(dish), " goes home only out of the fridge; with ",
              base::minutes_text(dish.cooling), " of cooling and ",
              base::minutes_text(lesson.rules.pack),
              " for lid and label it comes there later than 90 min after cooking."),
          "Cool it in smaller or flatter boxes, and shorten its cooling_minutes.");
    }
  }
  if (boxes * kBoxTenths <= lesson.room.fridge_tenths) return;
  add(problems, "rules.no_chill_space", "/room",
      say("By the house rules the food goes home only out of the fridge: ",
          base::counted(boxes, "box takes", "boxes take"), " ", boxes * kBoxTenths,
          " tenths of a shelf, and ", lesson.room.name, " has ", lesson.room.fridge_tenths, "."),
      "Count in the other fridges the class may use, let two cooks share a box, or eat it here.");
}

void check_class_size(const Lesson& lesson, Problems& problems) {
  const int most = lesson.rules.second_adult_above;
  int people = 0;
  for (const Cook& cook : lesson.cooks) people += cook.people;
  if (most == 0 || people <= most || adults_together(lesson)) return;
  add(problems, "rules.class_size", "/adults",
      say("This class has ", people, " pupils, and the house rules ask for a second adult above ",
          most, "; there are never two adults in the room."),
      "Add a second adult to the lesson, or split the class.");
}

void check_rules(const Lesson& lesson, Problems& problems) {
  check_class_size(lesson, problems);
  check_home_chilled(lesson, problems);
  for (const int d : dishes_cooked(lesson)) {
    const Dish& dish = dish_at(lesson, d);
    const std::vector<bool> done = steps_done(lesson, d);
    std::vector<Hazard> told;  // one sentence a hazard and dish is enough
    for (std::size_t s = 0; s < dish.method.size(); ++s) {
      const Step& step = dish.method[s];
      if (!done[s] || !step.hazard ||
          std::find(told.begin(), told.end(), *step.hazard) != told.end())
        continue;
      told.push_back(*step.hazard);
      check_hazard(lesson, dish, step, problems);
    }
    if (lesson.rules.no_raw_tasting) {
      for (const int s : tasted_raw(dish)) {
        if (!done[static_cast<std::size_t>(s)]) continue;
        add(problems, "rules.raw_tasting", "/dishes",
            say("The step ", in_quotes(dish.method[static_cast<std::size_t>(s)].id), " of ",
                dish_name(dish), " says to taste while ", base::joined(raw_in(dish)),
                " in it may still be raw, and the house rules bar tasting raw mixtures."),
            "Taste after the cooking, or take the tasting out of the step.");
      }
    }
    const std::string nuts = guilty_ingredients(dish, {Allergen::kNuts, Allergen::kPeanuts});
    if (!lesson.rules.nuts && !nuts.empty()) {
      add(problems, "rules.nuts", "/dishes",
          say("The dish ", dish_name(dish), " contains ", nuts,
              ", and the house rules keep nuts out of the room."),
          "Choose a variant without nuts; read labels that are not read.");
    }
  }
}

}  // namespace

Problems check(const Lesson& lesson) {
  Problems problems;
  if (!indices_sound(lesson)) {
    add(problems, "lesson.broken_reference", "",
        "The lesson refers to something that is not in it.",
        "Read the lesson from its file again.");
    return problems;
  }
  if (lesson.bell <= Seconds{0}) {
    add(problems, "lesson.bell_before_start", "/to",
        "The bell is not after the start of the lesson.", "Write a later bell.");
    return problems;
  }
  if (lesson.cooks.empty())
    add(problems, "lesson.no_cooks", "/cooks", "The lesson has no cooks.", "List at least one.");
  check_names(lesson, problems);
  for (std::size_t c = 0; c < lesson.cooks.size(); ++c) {
    check_cook(lesson, c, problems);
    check_presence(lesson, c, problems);
  }
  check_rules(lesson, problems);
  check_needs(lesson, problems);
  check_times(lesson, problems);
  return problems;
}

}  // namespace kitchen
