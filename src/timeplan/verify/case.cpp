#include "timeplan/verify/case.h"

#include <algorithm>
#include <utility>

#include <fmt/format.h>

namespace timeplan::judge {

namespace {

Half whole_dish(const kitchen::Dish& dish) {
  Half half;
  half.here.assign(dish.method.size(), true);
  half.reading = kitchen::reading_order(dish);
  return half;
}

// The step after which the dish is put away, and everything it follows, directly or not.
std::vector<bool> done_before_split(const kitchen::Dish& dish, const kitchen::Split& split) {
  std::vector<bool> done(dish.method.size(), false);
  std::vector<int> open{split.after_step};
  while (!open.empty()) {
    const auto s = static_cast<std::size_t>(open.back());
    open.pop_back();
    if (done[s]) continue;
    done[s] = true;
    for (const auto& wait : dish.method[s].follows) {
      if (wait.least.count() >= 0) open.push_back(wait.step);
    }
  }
  return done;
}

}  // namespace

Key key_of(const Task& t) {
  using enum TaskKind;
  switch (t.kind) {
    case kApronAndHands:
    case kCollectIngredients:
    case kCollectEquipment:
      return {t.kind, t.cook};
    case kStep:
      return {t.kind, t.cook, t.dish, t.step, t.part};
    case kHandWash:
    case kLook:
      return {t.kind, t.cook, t.dish, t.step};
    case kKitWash:
      return {t.kind, t.cook, t.dish, -1, 0, t.kit};
    case kStore:
    case kTakeOutOfStore:
    case kPack:
      return {t.kind, t.cook, t.dish};
    case kWashUp:
      return {t.kind, t.cook, -1, -1, t.part};
    case kWindow:
      return {t.kind, -1, -1, -1, 0, t.window};
    case kBayLook:
      return {t.kind, -1, -1, -1, 0, t.bay};
    case kKnivesOut:
    case kKnivesIn:
      return {t.kind};
    case kCleanDown:
      return {t.kind, t.cook};
    case kFullClean:
      return {t.kind, t.cook, -1, -1, 0, t.kit};
  }
  return {t.kind, -2};  // a kind that does not exist: no lesson expects it
}

Case::Case(const kitchen::Lesson& the_lesson, const Plan& the_plan)
    : lesson(the_lesson), plan(the_plan) {
  cut_halves();
  draw_lines();
}

void Case::cut_halves() {
  for (const auto& dish : lesson.dishes) halves.push_back(whole_dish(dish));
  for (const auto& carry : lesson.carry) {
    const auto d = static_cast<std::size_t>(carry.dish);
    const auto& dish = lesson.dishes[d];
    Half& half = halves[d];
    half.split = &dish.splits[static_cast<std::size_t>(carry.split)];
    half.second = carry.second_half;
    half.here = done_before_split(dish, *half.split);
    if (half.second) half.here.flip();
    std::erase_if(half.reading, [&](int s) { return !half.here[static_cast<std::size_t>(s)]; });
  }
}

void Case::draw_lines() {
  const auto n = lesson.cooks.size();
  const bool waves = lesson.timelines == kitchen::Timelines::kWaves &&
                     plan.wave_of_cook.size() == n;
  for (std::size_t c = 0; c < n; ++c) {
    wave.push_back(waves ? plan.wave_of_cook[c] : static_cast<int>(c));
    line.push_back(static_cast<int>(c));
    for (std::size_t b = 0; waves && b < c; ++b) {
      if (wave[b] == wave[c] && lesson.cooks[b].dishes == lesson.cooks[c].dishes) {
        line[c] = line[b];
        break;
      }
    }
  }
  for (std::size_t c = 0; c < n; ++c) {
    double slowest = 0;
    for (std::size_t b = 0; b < n; ++b) {
      if (line[b] == line[c]) slowest = std::max(slowest, lesson.cooks[b].pace);
    }
    pace.push_back(slowest);
  }
}

void Case::report(std::string rule, std::string message, std::vector<int> which, Span span) {
  std::sort(which.begin(), which.end());
  which.erase(std::unique(which.begin(), which.end()), which.end());
  found.push_back({std::move(rule), std::move(message), std::move(which), span.from, span.to});
}

const kitchen::Place& Case::place_of(int c) const {
  return lesson.room.places[static_cast<std::size_t>(cook(c).place)];
}

std::optional<int> Case::find(const Key& key) const {
  const auto it = tasks.find(key);
  if (it == tasks.end()) return std::nullopt;
  return it->second;
}

std::vector<int> Case::parts(int c, int d, int s) const {
  std::vector<int> result;
  const Key first{TaskKind::kStep, c, d, s};
  for (auto it = tasks.lower_bound(first); it != tasks.end(); ++it) {
    const Key& k = it->first;
    if (k.kind != TaskKind::kStep || k.cook != c || k.dish != d || k.step != s) break;
    result.push_back(it->second);
  }
  return result;
}

std::optional<Span> Case::span(int c, int d, int s) const {
  const auto list = parts(c, d, s);
  if (list.empty()) return std::nullopt;
  return Span{task(list.front()).start, task(list.back()).end};
}

std::optional<Seconds> Case::ready(int c, int d) const {
  const auto last = span(c, d, kitchen::last_step(dish(d)));
  if (!last) return std::nullopt;
  return last->to;
}

std::vector<int> Case::wash_up(int c) const {
  std::vector<int> result;
  for (auto it = tasks.lower_bound(Key{TaskKind::kWashUp, c}); it != tasks.end(); ++it) {
    if (it->first.kind != TaskKind::kWashUp || it->first.cook != c) break;
    result.push_back(it->second);
  }
  return result;
}

std::vector<int> Case::all() const {
  std::vector<int> result;
  for (const auto& [key, index] : tasks) result.push_back(index);
  result.insert(result.end(), clean_downs.begin(), clean_downs.end());
  result.insert(result.end(), full_cleans.begin(), full_cleans.end());
  std::sort(result.begin(), result.end());
  return result;
}

std::vector<int> Case::of_cook(int c) const {
  auto result = all();
  std::erase_if(result, [&](int t) { return key_of(task(t)).cook != c; });
  return result;
}

std::optional<Span> Case::window(int w) const {
  const auto t = find({TaskKind::kWindow, -1, -1, -1, 0, w});
  if (!t) return std::nullopt;
  return when(task(*t));
}

bool Case::in_audience(int w, int c) const {
  const auto& audience = lesson.windows[static_cast<std::size_t>(w)].audience;
  return audience.empty() || std::find(audience.begin(), audience.end(), c) != audience.end();
}

Seconds Case::due(int c) const { return base::grid_down(cook(c).leaves - lesson.check_out); }

std::string Case::at(Seconds t) const { return kitchen::clock(lesson, t); }

std::string Case::at(Span s) const { return fmt::format("{} to {}", at(s.from), at(s.to)); }

std::string Case::what(int index) const {
  using enum TaskKind;
  const Task& t = task(index);
  const auto of_dish = [&] { return "the " + dish(t.dish).name; };
  switch (t.kind) {
    case kApronAndHands:
      return "apron and hands";
    case kCollectIngredients:
      return "collecting ingredients";
    case kCollectEquipment:
      return "collecting equipment";
    case kStep:
      return fmt::format("\"{}\" of {}", step(t.dish, t.step).brief, of_dish());
    case kHandWash:
      return fmt::format("washing hands after raw work on {}", of_dish());
    case kCleanDown:
      return "cleaning down the place";
    case kKitWash:
      return fmt::format("washing the {}", lesson.room.kit[static_cast<std::size_t>(t.kit)].item);
    case kFullClean:
      return fmt::format("full clean of the {}",
                         lesson.room.kit[static_cast<std::size_t>(t.kit)].item);
    case kLook:
      return fmt::format("the look at \"{}\" of {}", step(t.dish, t.step).brief, of_dish());
    case kStore:
      return fmt::format("storing {}", of_dish());
    case kTakeOutOfStore:
      return fmt::format("taking {} out of store", of_dish());
    case kPack:
      return fmt::format("packing {}", of_dish());
    case kWashUp:
      return fmt::format("washing up, part {}", t.part + 1);
    case kWindow:
      return lesson.windows[static_cast<std::size_t>(t.window)].name;
    case kBayLook:
      return fmt::format("the look at bay {}",
                         lesson.room.bays[static_cast<std::size_t>(t.bay)].name);
    case kKnivesOut:
      return "knives out";
    case kKnivesIn:
      return "knives in";
  }
  return "a task of no known kind";
}

std::string Case::label(int index) const {
  const Task& t = task(index);
  const auto text = fmt::format("{}, {}", what(index), at(when(t)));
  // Nobody's task may carry any number for a cook: the plan is not trusted.
  const int whose = key_of(t).cook;
  return whose >= 0 ? fmt::format("{}: {}", cook(whose).name, text) : text;
}

std::string minutes_text(Seconds t) {
  const auto s = t.count();
  if (s % 60 == 0) return fmt::format("{} min", s / 60);
  return fmt::format("{} min {} s", s / 60, s % 60);
}

}  // namespace timeplan::judge
