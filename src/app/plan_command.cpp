// benchbell plan: a lesson file, or the quick way in; words, picture, JSON out.
#include <unistd.h>
#include <algorithm>
#include <cstdio>
#include <optional>

#include "app/commands.h"
#include "app/console.h"
#include "app/files.h"
#include "app/safety_tables.h"
#include "app/shipped.h"
#include "app/shipped_foods.h"
#include "base/clock.h"
#include "base/text.h"
#include "kitchen/check_lesson.h"
#include "kitchen/read.h"
#include "print/machine.h"
#include "print/picture.h"
#include "print/say.h"
#include "print/say_allergens.h"
#include "safety/conflicts.h"
#include "safety/food_allergens.h"
#include "safety/kit_order.h"
#include "timeplan/answer.h"
#include "timeplan/export.h"
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
                      base::say("--", option, " ", base::quoted(word), " is not known."),
                      base::say("Say ", base::joined(known, "or"), ".")});
  return std::nullopt;
}

std::optional<int> minute_in(const std::string& text, const std::string& option,
                             Problems& problems) {
  const auto time = base::local_time_in(text);
  if (time && !time->date && time->after_midnight.count() % 60 == 0)
    return static_cast<int>(time->after_midnight.count() / 60);
  problems.push_back({"quick." + option, "", "",
                      base::say("--", option, " ", base::quoted(text), " is not a clock time."),
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
      problems.insert(problems.end(), dish.problems().begin(), dish.problems().end());
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
  if (!rules) problems.insert(problems.end(), rules.problems().begin(), rules.problems().end());
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

base::Result<kitchen::Lesson> lesson_of(const PlanAsked& asked) {
  if (asked.lesson_file.empty()) return quick(asked);
  const auto text = read_file(asked.lesson_file);
  if (!text) return text.problems();
  return kitchen::read_lesson(text.value(), asked.lesson_file, file_loader());
}

// The table of foods speaks for what dish files forgot. A lesson in which nobody avoids anything is
// planned as it is; it is only held against the house rule on nuts. Gives the notes on labels.
base::Result<std::vector<std::string>> add_allergens(const PlanAsked& asked,
                                                     kitchen::Lesson& lesson) {
  if (!safety::allergens_matter(lesson)) return std::vector<std::string>{};
  const auto foods = foods_with(asked.foods_file);
  if (!foods) return foods.problems();
  const auto labels = labels_of(asked.labels_file, foods.value());
  if (!labels) return labels.problems();
  kitchen::Lesson all_said = lesson;
  for (kitchen::Dish& dish : all_said.dishes)
    dish = safety::with_food_allergens(dish, foods.value(), labels.value());
  Problems wrong = kitchen::check(all_said);
  for (base::Problem& problem : wrong) {
    problem.file = asked.lesson_file;
    if (problem.code != "lesson.cook_avoids" && problem.code != "rules.nuts") continue;
    problem.remedy +=
        " The table of foods says so, or leaves it to the label: record the labels "
        "you read and name that file with --labels; `benchbell allergens` says more.";
  }
  if (!wrong.empty()) return wrong;
  auto notes = safety::notes_on_labels(lesson, foods.value(), labels.value());
  const bool avoided = std::any_of(lesson.cooks.begin(), lesson.cooks.end(),
                                   [](const kitchen::Cook& cook) { return !cook.avoids.empty(); });
  if (avoided) lesson = std::move(all_said);
  return notes;
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
  const safety::Evidence evidence{foods.value(), labels.value(), shipped_hidden()};
  std::vector<kitchen::Dish> known;
  Problems wrong;
  std::vector<std::string> notes;
  for (const safety::Conflict& c :
       safety::conflicts({lesson, needs.value(), evidence, shipped_substitutes(), known})) {
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

int plan(const PlanAsked& asked) {
  auto read = lesson_of(asked);
  if (!read) return tell(read.problems());
  kitchen::Lesson lesson = std::move(read).value();
  const auto need_notes = add_needs(asked, lesson);
  if (!need_notes) return tell(need_notes.problems());
  const auto label_notes = add_allergens(asked, lesson);
  if (!label_notes) return tell(label_notes.problems());

  std::optional<timeplan::Answer> answer;
  {
    Console console(lesson.title);
    timeplan::PlanOptions options;
    options.seconds = asked.seconds;
    options.seed = asked.seed;
    options.runs = asked.runs;
    options.stop = [&] { return console.stop(); };
    options.progress = [&](const std::string& what) { console.doing(what); };
    answer = timeplan::plan_lesson(lesson, options);
  }
  answer->notes = kitchen::notes(lesson);
  answer->notes.insert(answer->notes.end(), label_notes.value().begin(), label_notes.value().end());
  answer->notes.insert(answer->notes.end(), need_notes.value().begin(), need_notes.value().end());
  // What only works with a timeline for every cook is shown so.
  if (answer->own_timelines_needed) lesson.timelines = kitchen::Timelines::kOwn;

  if (asked.json) {
    std::fputs(print::answer_json(lesson, *answer).c_str(), stdout);
    std::fputc('\n', stdout);
  } else {
    print::SayOptions how;
    how.details = asked.details;
    how.width = asked.width;
    how.colour = ::isatty(STDOUT_FILENO) == 1;
    std::fputs(print::say(lesson, *answer, how).c_str(), stdout);
  }
  Problems problems;
  const auto keep = [&](const char* what, const std::string& file, const std::string& text) {
    if (file.empty()) return;
    const auto written = write_file(file, text);
    if (!written)
      problems.insert(problems.end(), written.problems().begin(), written.problems().end());
    if (written && !asked.json) std::printf("The %s is in %s\n", what, file.c_str());
  };
  keep("picture", asked.svg_file,
       asked.svg_file.empty() ? "" : print::picture_svg(lesson, *answer, {}));
  keep("picture", asked.html_file,
       asked.html_file.empty() ? "" : print::picture_html(lesson, *answer, {}));
  keep("model", asked.minizinc_file,
       asked.minizinc_file.empty() ? "" : timeplan::minizinc(lesson, *answer));
  if (!problems.empty()) return tell(problems);
  return answer->verdict == timeplan::Verdict::kFits ? kFits : kDoesNotFit;
}

}  // namespace app
