#include "print/machine.h"

#include <fmt/format.h>

#include <chrono>
#include <cstdio>
#include <nlohmann/json.hpp>

#include "base/index.h"
#include "print/chance_words.h"
#include "print/equipment.h"
#include "print/facts.h"
#include "print/task_kinds.h"

namespace print {
namespace {

using Json = nlohmann::ordered_json;

using base::at;

/// "2026-11-17T10:50:00"; without a date only the clock time.
std::string moment(const kitchen::Lesson& lesson, Seconds t) {
  const auto days = std::chrono::floor<std::chrono::days>(
      std::chrono::minutes(lesson.opens_minute) + t);
  // clock() says seconds only when there are any; here they are always said.
  const Seconds rest = t % base::kGrid;
  const std::string clock = fmt::format("{}:{:02}", kitchen::clock(lesson, t - rest), rest.count());
  int y = 0;
  unsigned m = 0, d = 0;
  if (std::sscanf(lesson.date.c_str(), "%4d-%2u-%2u", &y, &m, &d) != 3) return clock;
  const std::chrono::year_month_day date{std::chrono::year{y}, std::chrono::month{m},
                                         std::chrono::day{d}};
  if (!date.ok()) return clock;
  const std::chrono::year_month_day then{std::chrono::sys_days{date} + days};
  return fmt::format("{:04}-{:02}-{:02}T{}", static_cast<int>(then.year()),
                     static_cast<unsigned>(then.month()), static_cast<unsigned>(then.day()), clock);
}

std::int64_t whole_minutes(Seconds t) { return base::grid_up(t) / base::kGrid; }

Json name_or_null(int index, auto&& list, auto&& name) {
  return index < 0 || at(index) >= list.size() ? Json(nullptr) : Json(name(list[at(index)]));
}

constexpr auto kName = [](const auto& thing) { return thing.name; };

std::string verdict(timeplan::Verdict v) {
  return v == timeplan::Verdict::kFits         ? "fits"
         : v == timeplan::Verdict::kDoesNotFit ? "does not fit"
                                               : "not found";
}

std::string purpose(kitchen::Purpose p) {
  static constexpr const char* kWords[] = {"take home", "eat here",    "taste",
                                           "judged",    "demonstrate", "event"};
  return kWords[static_cast<std::size_t>(p)];
}

std::string kind(TaskKind k) { return std::string(kTaskKinds[static_cast<std::size_t>(k)]); }

Json oven_json(kitchen::OvenSetting s) {
  static constexpr const char* kWords[] = {"conventional", "fan", "grill"};
  return {{"celsius", s.celsius}, {"kind", kWords[static_cast<std::size_t>(s.kind)]}};
}

Json lesson_json(const kitchen::Lesson& lesson) {
  return {{"title", lesson.title},
          {"school", lesson.rules.school},
          {"room", lesson.room.name},
          {"opens", moment(lesson, Seconds{0})},
          {"bell", moment(lesson, lesson.bell)},
          {"zone", lesson.zone},
          {"purpose", purpose(lesson.purpose)},
          {"timelines", lesson.timelines == kitchen::Timelines::kOwn ? "own" : "waves"}};
}

Json task_json(const kitchen::Lesson& lesson, const Task& task) {
  const kitchen::Step* step = step_of(lesson, task);
  Json place = nullptr;
  if (task.cook >= 0) place = lesson.room.places[at(lesson.cooks[at(task.cook)].place)].name;
  return {
      {"kind", kind(task.kind)},
      {"says", sentence(lesson, task)},
      {"start", moment(lesson, task.start)},
      {"end", moment(lesson, task.end)},
      {"attention", task.kind == TaskKind::kWindow ? "hands off" : look_word(look(lesson, task))},
      {"cook", name_or_null(task.cook, lesson.cooks, kName)},
      {"place", place},
      {"dish", name_or_null(task.dish, lesson.dishes, kName)},
      {"step", step == nullptr ? Json(nullptr) : Json(step->id)},
      {"part", task.part},
      {"window", name_or_null(task.window, lesson.windows, kName)},
      {"bay", name_or_null(task.bay, lesson.room.bays, kName)},
      {"cooker", name_or_null(task.cooker, lesson.room.cookers, kName)},
      {"oven", task.setting ? oven_json(*task.setting) : Json(nullptr)},
      {"sink_bay", name_or_null(task.sink_bay, lesson.room.bays, kName)},
      {"hand_basin", task.basin},
      {"kit",
       name_or_null(task.kit, lesson.room.kit, [](const kitchen::Kit& k) { return k.item; })},
      {"kit_units", task.kit_units},
      {"adult", name_or_null(task.adult, lesson.adults, kName)},
      {"pinned", task.kind == TaskKind::kStep && task.part == 0 &&
                     kitchen::pin_of(lesson, task.cook, {task.dish, task.step}) >= 0}};
}

Json cooks_json(const kitchen::Lesson& lesson, const Plan& plan) {
  Json out = Json::array();
  for (int c = 0; at(c) < lesson.cooks.size(); ++c) {
    const kitchen::Cook& cook = lesson.cooks[at(c)];
    out.push_back(
        {{"name", cook.name},
         {"place", lesson.room.places[at(cook.place)].name},
         {"bay", lesson.room.bays[at(bay_of(lesson, c))].name},
         {"people", cook.people},
         {"wave",
          at(c) < plan.wave_of_cook.size() ? Json(plan.wave_of_cook[at(c)] + 1) : Json(nullptr)},
         {"buffer_minutes",
          at(c) < plan.buffer.size() ? Json(whole_minutes(plan.buffer[at(c)])) : Json(nullptr)}});
  }
  return out;
}

Json checkpoints_json(const kitchen::Lesson& lesson, const Plan& plan) {
  Json out = Json::array();
  for (const timeplan::Checkpoint& check : plan.checkpoints) {
    Task step;
    step.dish = check.dish;
    step.step = check.step;
    const kitchen::Step* found = step_of(lesson, step);
    out.push_back({{"wave", check.wave + 1},
                   {"at", moment(lesson, check.at)},
                   {"says", check.says},
                   {"dish", name_or_null(check.dish, lesson.dishes, kName)},
                   {"step", found == nullptr ? Json(nullptr) : Json(found->id)}});
  }
  return out;
}

Json ovens_json(const kitchen::Lesson& lesson, const Plan& plan) {
  Json out = Json::array();
  for (const OvenUse& oven : oven_use(lesson, plan)) {
    Json batches = Json::array();
    for (std::size_t b = 0; b < oven.batches.size(); ++b) {
      const Batch& batch = oven.batches[b];
      Json trays = Json::array();
      for (const Tray& tray : batch.trays) {
        Json cooks = Json::array();
        for (const int c : tray.cooks) cooks.push_back(lesson.cooks[at(c)].name);
        trays.push_back({{"dish", lesson.dishes[at(tray.dish)].name},
                         {"cooks", cooks},
                         {"from", moment(lesson, tray.from)},
                         {"to", moment(lesson, tray.to)}});
      }
      batches.push_back({{"setting", oven_json(batch.setting)},
                         {"switch_at", moment(lesson, oven.knobs[b].at)},
                         {"ready_at", moment(lesson, oven.knobs[b].ready)},
                         {"from_cold", oven.knobs[b].from_cold},
                         {"from", moment(lesson, batch.from)},
                         {"to", moment(lesson, batch.to)},
                         {"trays", trays}});
    }
    out.push_back({{"oven", lesson.room.cookers[at(oven.cooker)].name}, {"batches", batches}});
  }
  return out;
}

Json adults_json(const kitchen::Lesson& lesson, const Plan& plan) {
  Json out = Json::array();
  for (int a = 0; at(a) < lesson.adults.size(); ++a) {
    Json list = Json::array();
    for (const Stand& stand : stands(lesson, plan, a)) {
      Json visits = Json::array();
      for (const Visit& v : stand.visits) {
        visits.push_back({{"from", moment(lesson, v.from)},
                          {"to", moment(lesson, v.to)},
                          {"bay", name_or_null(v.bay, lesson.room.bays, kName)},
                          {"who", v.who}});
      }
      list.push_back({{"from", moment(lesson, stand.from)},
                      {"to", moment(lesson, stand.to)},
                      {"why", stand.why},
                      {"hazard", stand.hazard ? Json(hazard(*stand.hazard)) : Json(nullptr)},
                      {"visits", visits}});
    }
    out.push_back({{"name", lesson.adults[at(a)].name},
                   {"leads", lesson.adults[at(a)].leads},
                   {"stands", list}});
  }
  return out;
}

Json plan_json(const kitchen::Lesson& lesson, const Plan& plan) {
  Json tasks = Json::array(), served = Json::array(), goals = Json::array();
  for (const Task& task : plan.tasks) tasks.push_back(task_json(lesson, task));
  for (const timeplan::Served& s : plan.served) {
    served.push_back({{"cook", name_or_null(s.cook, lesson.cooks, kName)},
                      {"sitting", name_or_null(s.sitting, lesson.sittings, kName)},
                      {"at", moment(lesson, s.at)}});
  }
  for (const timeplan::Level& l : plan.levels) {
    Json goal = {{"name", l.name}, {"value", l.value}, {"bound", l.bound}, {"proved", l.proved}};
    if (l.grid) {
      goal["value_before_checkpoints"] = l.grid->free_value;
      goal["bound_with_checkpoints"] = l.grid->bound;
    }
    goals.push_back(std::move(goal));
  }
  return {{"waves", plan.waves},
          {"cooks", cooks_json(lesson, plan)},
          {"tasks", tasks},
          {"served", served},
          {"checkpoints", checkpoints_json(lesson, plan)},
          {"ovens", ovens_json(lesson, plan)},
          {"adults", adults_json(lesson, plan)},
          {"goals", goals}};
}

Json last_json(const kitchen::Lesson& lesson, const Answer& answer) {
  Json out = Json::array();
  for (const timeplan::LastSafeStart& last : answer.last_safe_starts) {
    out.push_back({{"wave", last.wave + 1},
                   {"at", moment(lesson, last.at)},
                   {"says", last.says},
                   {"instead", last.instead}});
  }
  return out;
}

Json chance_json(const kitchen::Lesson& lesson, const Answer& answer) {
  const std::optional<Likely> chance = likely(lesson, answer);
  if (!chance) return nullptr;
  Json marks = Json::array();
  for (const Seconds m : chance->marks) marks.push_back(moment(lesson, m));
  return {{"word", chance->word},           {"about", chance->about},
          {"says", chance->says},           {"last_finish_twentieths", marks},
          {"runs", chance->runs},           {"in_time_share", chance->share},
          {"in_time_least", chance->least}, {"in_time_most", chance->most}};
}

}  // namespace

std::string answer_json(const kitchen::Lesson& lesson, const timeplan::Answer& answer) {
  Json trials = Json::array(), causes = Json::array(), remedies = Json::array();
  for (const timeplan::WaveTrial& t : answer.trials) {
    trials.push_back(
        {{"waves", t.waves},
         {"fits", t.fits},
         {"proved", t.proved},
         {"misses_by_minutes", t.misses_by ? Json(whole_minutes(*t.misses_by)) : Json(nullptr)}});
  }
  for (const timeplan::Cause& c : answer.causes)
    causes.push_back({{"code", c.code}, {"says", c.says}});
  for (const timeplan::Remedy& r : answer.remedies) {
    remedies.push_back({{"code", r.code},
                        {"says", r.says},
                        {"buys", r.buys},
                        {"fits", r.fits},
                        {"gain_minutes", whole_minutes(r.gain)}});
  }
  const Json out = {{"format", 1},
                    {"verdict", verdict(answer.verdict)},
                    {"spare_minutes", whole_minutes(answer.spare)},
                    {"over_minutes", whole_minutes(answer.overrun)},
                    {"checkpoint_cost_minutes", whole_minutes(answer.grid_cost)},
                    {"own_timelines_needed", answer.own_timelines_needed},
                    {"lesson", lesson_json(lesson)},
                    {"causes", causes},
                    {"causes_minimal", answer.causes_minimal},
                    {"remedies", remedies},
                    {"trials", trials},
                    {"chance", chance_json(lesson, answer)},
                    {"last_safe_starts", last_json(lesson, answer)},
                    {"plan", answer.plan ? plan_json(lesson, *answer.plan) : Json(nullptr)},
                    {"notes", answer.notes},
                    {"calm", answer.calm},
                    {"work",
                     {{"seconds", answer.seconds},
                      {"first_plan_seconds", answer.first_seconds},
                      {"seed", answer.seed},
                      {"kept_standing", answer.kept_standing},
                      {"stopped_early", answer.stopped_early}}}};
  return out.dump(2, ' ', false, Json::error_handler_t::replace);
}

}  // namespace print
