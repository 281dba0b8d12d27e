#include "app/planning.h"

#include <optional>

#include "app/console.h"
#include "app/files.h"
#include "app/find_dish.h"
#include "app/own_tables.h"
#include "base/clock.h"
#include "base/text.h"
#include "desk/finish_plan.h"
#include "desk/lesson_allergens.h"
#include "kitchen/check_lesson.h"
#include "kitchen/read.h"
#include "print/say_allergens.h"
#include "safety/conflicts.h"
#include "safety/kit_order.h"
#include "shipped/safety.h"
#include "timeplan/quick_lesson.h"

namespace app {
namespace {

using base::Problems;

template <class Value>
std::optional<Value> word_in(const std::string& word,
                             std::initializer_list<std::pair<const char*, Value>> words,
                             const std::string& option, Problems& problems) {
  std::vector<std::string> known;
  for (const auto& [name, value] : words) {
    if (base::replaced(word, '-', ' ') == name) return value;
    known.emplace_back(name);
  }
  problems.push_back({"quick." + option, "", "",
                      base::say("--", option, " ", base::in_quotes(word), " is not known."),
                      base::say("Say ", base::joined(known, "or"), ".")});
  return std::nullopt;
}

std::optional<int> minute_in(const std::string& text, const std::string& option,
                             Problems& problems) {
  const auto time = base::local_time_in(text);
  if (time && !time->date && time->after_midnight.count() % 60 == 0)
    return static_cast<int>(time->after_midnight.count() / 60);
  problems.push_back({"quick." + option, "", "",
                      base::say("--", option, " ", base::in_quotes(text), " is not a clock time."),
                      "Write it like 09:05."});
  return std::nullopt;
}

base::Result<kitchen::HouseRules> rules_of(const PlanAsked& asked) {
  if (asked.rules_file.empty())
    return kitchen::read_house_rules(R"({"kind": "house_rules", "version": 1})", "");
  const auto text = read_file(asked.rules_file);
  if (!text) return text.problems();
  return kitchen::read_house_rules(text.value(), asked.rules_file);
}

base::Result<kitchen::Lesson> quick(const PlanAsked& asked) {
  using kitchen::Purpose;
  Problems problems;
  timeplan::QuickWish wish;
  for (const std::string& name : asked.dishes) {
    auto dish = find_dish(name);
    if (dish) {
      wish.dishes.push_back(std::move(dish).value());
    } else {
      base::gather(dish, problems);
    }
  }
  const auto together = word_in<int>(asked.in, {{"alone", 1}, {"pairs", 2}, {"threes", 3}}, "in",
                                     problems);
  const auto purpose = word_in<Purpose>(asked.purpose,
                                        {{"eat here", Purpose::kEatHere},
                                         {"take home", Purpose::kTakeHome},
                                         {"taste", Purpose::kTaste},
                                         {"judged", Purpose::kJudged},
                                         {"demonstrate", Purpose::kDemonstrate},
                                         {"event", Purpose::kEvent}},
                                        "purpose", problems);
  const auto from = minute_in(asked.from, "from", problems),
             to = minute_in(asked.to, "to", problems);
  const auto rules = rules_of(asked);
  base::gather(rules, problems);
  if (!problems.empty()) return problems;
  wish.pupils = asked.pupils;
  wish.together = *together;
  wish.cookers = asked.cookers;
  wish.sinks = asked.sinks;
  wish.from_minute = *from;
  wish.to_minute = *to;
  wish.purpose = *purpose;
  wish.rules = rules.value();
  auto lesson = timeplan::quick_lesson(wish);
  if (!lesson) return lesson.problems();
  kitchen::Lesson made = std::move(lesson).value();
  made.trays_at_places = asked.trays;
  const Problems wrong = kitchen::check(made);
  if (!wrong.empty()) return wrong;
  return made;
}

}  // namespace

base::Result<kitchen::Lesson> lesson_of(const PlanAsked& asked) {
  if (asked.lesson_file.empty()) return quick(asked);
  const auto text = read_file(asked.lesson_file);
  if (!text) return text.problems();
  return kitchen::read_lesson(text.value(), asked.lesson_file, file_loader());
}

namespace {

base::Result<std::vector<std::string>> add_allergens(const PlanAsked& asked,
                                                     kitchen::Lesson& lesson) {
  const auto foods = foods_with(asked.foods_file);
  if (!foods) return foods.problems();
  const auto labels = labels_of(asked.labels_file, foods.value());
  if (!labels) return labels.problems();
  auto notes = desk::add_allergens(lesson, foods.value(), labels.value());
  if (notes) return notes;
  Problems wrong = notes.problems();
  for (base::Problem& problem : wrong) {
    problem.file = asked.lesson_file;
    if (problem.code == "lesson.cook_avoids" || problem.code == "rules.nuts")
      problem.remedy += " Name their file with --labels; `benchbell allergens` says more.";
  }
  return wrong;
}

// Like what a cook avoids (rule K2): what must be changed refuses the lesson, with what would
// settle it.
base::Problem refusal(const kitchen::Lesson& lesson, const safety::Conflict& c,
                      const std::string& file) {
  std::string ways;
  for (const safety::Remedy& remedy : c.settled_by)
    ways += (ways.empty() ? "" : ". Or: ") + remedy.says;
  const std::string& cook = lesson.cooks[static_cast<std::size_t>(c.cook)].name;
  return {"lesson.cook_needs", file, "",
          base::say(cook, " (", safety::word(c.need), "): ", safety::sentence(lesson, c)),
          ways + "."};
}

// The school's list of needs: its allergens are kept as those the lesson says; diets and how far a
// need reaches are judged here. Gives the notes on what to settle and on who goes first at what.
base::Result<std::vector<std::string>> add_needs(const PlanAsked& asked, kitchen::Lesson& lesson) {
  if (asked.needs_file.empty()) return std::vector<std::string>{};
  const auto text = read_file(asked.needs_file);
  if (!text) return text.problems();
  const auto needs = safety::read_needs(text.value(), asked.needs_file, lesson);
  if (!needs) return needs.problems();
  const auto foods = foods_with(asked.foods_file);
  if (!foods) return foods.problems();
  const auto labels = labels_of(asked.labels_file, foods.value());
  if (!labels) return labels.problems();
  const safety::Evidence evidence{foods.value(), labels.value(), shipped::hidden()};
  std::vector<kitchen::Dish> known;
  Problems wrong;
  std::vector<std::string> notes;
  for (const safety::Conflict& c :
       safety::conflicts({lesson, needs.value(), evidence, shipped::substitutes(), known})) {
    // Who meets it at shared kit is the planner's affair: it keeps them apart by rule K2.
    const bool own = c.why == safety::Why::kOwnDish || c.why == safety::Why::kInTheRoom;
    if (c.seriousness == safety::Seriousness::kStop && own) {
      wrong.push_back(refusal(lesson, c, asked.needs_file));
      continue;
    }
    const std::string& cook = lesson.cooks[static_cast<std::size_t>(c.cook)].name;
    const std::string word(safety::word(c.seriousness));
    notes.push_back(base::say(cook, ", ", word, ": ", safety::sentence(lesson, c)));
  }
  if (!wrong.empty()) return wrong;
  for (const safety::ThingOrder& thing : safety::order_at_things(lesson, needs.value(), evidence))
    notes.push_back(print::who_goes_first(lesson, thing));
  for (const safety::CookNeeds& cook : needs.value()) {
    for (const safety::Need& need : cook.needs) {
      if (const auto* allergen = std::get_if<kitchen::Allergen>(&need.what))
        lesson.cooks[static_cast<std::size_t>(cook.cook)].avoids.insert(*allergen);
    }
  }
  return notes;
}

}  // namespace

base::Result<Ready> ready_lesson(const PlanAsked& asked) {
  auto read = lesson_of(asked);
  if (!read) return read.problems();
  Ready out{read.value(), read.value(), {}};
  const auto needs = add_needs(asked, out.lesson);
  if (!needs) return needs.problems();
  auto notes = add_allergens(asked, out.lesson);
  if (!notes) return notes.problems();
  out.label_notes = std::move(notes).value();
  out.label_notes.insert(out.label_notes.end(), needs.value().begin(), needs.value().end());
  return out;
}

timeplan::Answer planned(Ready& ready, const PlanAsked& asked) {
  Console console(ready.lesson.title);
  timeplan::PlanOptions options;
  options.seconds = asked.seconds;
  options.seed = asked.seed;
  options.runs = asked.runs;
  options.stop = [&] { return console.stop(); };
  options.progress = [&](const timeplan::Progress& now) { console.doing(now.says); };
  timeplan::Answer answer = timeplan::plan_lesson(ready.lesson, options);
  desk::finish_plan(ready.lesson, answer, ready.label_notes);
  return answer;
}

}  // namespace app
