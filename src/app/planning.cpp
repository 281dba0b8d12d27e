#include "app/planning.h"

#include <optional>

#include "app/console.h"
#include "app/files.h"
#include "app/find_dish.h"
#include "app/own_tables.h"
#include "base/clock.h"
#include "base/text.h"
#include "desk/lesson_allergens.h"
#include "kitchen/check_lesson.h"
#include "kitchen/read.h"
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

}  // namespace

base::Result<Ready> ready_lesson(const PlanAsked& asked) {
  auto read = lesson_of(asked);
  if (!read) return read.problems();
  Ready out{read.value(), read.value(), {}};
  auto notes = add_allergens(asked, out.lesson);
  if (!notes) return notes.problems();
  out.label_notes = std::move(notes).value();
  return out;
}

timeplan::Answer planned(Ready& ready, const PlanAsked& asked) {
  Console console(ready.lesson.title);
  timeplan::PlanOptions options;
  options.seconds = asked.seconds;
  options.seed = asked.seed;
  options.runs = asked.runs;
  options.stop = [&] { return console.stop(); };
  options.progress = [&](const std::string& what) { console.doing(what); };
  timeplan::Answer answer = timeplan::plan_lesson(ready.lesson, options);
  answer.notes = kitchen::notes(ready.lesson);
  answer.notes.insert(answer.notes.end(), ready.label_notes.begin(), ready.label_notes.end());
  // What only works with a timeline for every cook is shown so.
  if (answer.own_timelines_needed) ready.lesson.timelines = kitchen::Timelines::kOwn;
  return answer;
}

}  // namespace app
