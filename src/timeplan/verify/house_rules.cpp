// The school's own rules and the two ends of the lesson: frying, knives, nuts, counting, looking at
// bays (Y8, Y11).
#include <algorithm>

#include <fmt/format.h>

#include "kitchen/raw_tasting.h"
#include "timeplan/verify/checks.h"
#include "timeplan/verify/lengths.h"

namespace timeplan::judge {

namespace {

bool uses_knife(const kitchen::Step& step) {
  return std::any_of(step.kit.begin(), step.kit.end(),
                     [](const auto& need) { return need.item == "knife"; });
}

// Are two adults in the room for all of `span`? Adults may relieve each other, so ask at every
// change.
bool two_adults(const Case& c, Span span) {
  std::vector<Seconds> moments{span.from};
  for (const auto& a : c.lesson.adults) {
    if (a.to > span.from && a.to < span.to) moments.push_back(a.to);
  }
  return std::all_of(moments.begin(), moments.end(), [&](Seconds t) {
    return std::count_if(c.lesson.adults.begin(), c.lesson.adults.end(),
                         [&](const auto& a) { return a.from <= t && t < a.to; }) >= 2;
  });
}

void check_step(Case& c, int index) {
  const Task& t = c.task(index);
  const auto& step = c.step(t.dish, t.step);
  const auto& rules = c.lesson.rules;
  const auto say = [&](const std::string& what) {
    c.report("Y11", fmt::format("{}: {}.", c.label(index), what), {index}, when(t));
  };
  if (step.hazard == kitchen::Hazard::kHotOil) {
    if (!rules.frying) say("the school does not fry");
    if (c.lesson.year < rules.frying_from_year) {
      say(fmt::format("frying is for year {} and up", rules.frying_from_year));
    }
    if (rules.second_adult_for_frying && !two_adults(c, when(t))) {
      say("frying needs a second adult in the room");
    }
  }
  const bool knife = uses_knife(step) || step.hazard == kitchen::Hazard::kFirstKnife;
  if (knife && c.lesson.year < rules.knives_from_year) {
    say(fmt::format("knives are for year {} and up", rules.knives_from_year));
  }
}

// Every step that has ended when `step` starts, by waits from end to start.
std::vector<int> ended_before(const kitchen::Dish& dish, int step) {
  std::vector<int> found;
  std::vector<int> open{step};
  while (!open.empty()) {
    const int now = open.back();
    open.pop_back();
    for (const auto& wait : dish.method[static_cast<std::size_t>(now)].follows) {
      const bool ended = wait.of == kitchen::Moment::kEnd && wait.moment == kitchen::Moment::kStart;
      if (!ended || std::find(found.begin(), found.end(), wait.step) != found.end()) continue;
      found.push_back(wait.step);
      open.push_back(wait.step);
    }
  }
  return found;
}

// May something raw still be in what the step tastes?
bool raw_at(const kitchen::Dish& dish, int step) {
  std::vector<int> over = ended_before(dish, step);
  std::vector<int> cooking;
  for (const int h : over) {
    if (dish.method[static_cast<std::size_t>(h)].heat) cooking.push_back(h);
  }
  if (cooking.empty() && kitchen::has_unnamed_raw(dish)) return true;
  over.push_back(step);
  return std::any_of(over.begin(), over.end(), [&](int raw) {
    if (!kitchen::brings_raw(dish, raw)) return false;
    return std::none_of(cooking.begin(), cooking.end(), [&](int h) {
      const auto before = ended_before(dish, h);
      return h == raw || std::find(before.begin(), before.end(), raw) != before.end();
    });
  });
}

void check_tasting_raw(Case& c, int index) {
  const Task& t = c.task(index);
  if (!c.lesson.rules.no_raw_tasting || !kitchen::says_to_taste(c.step(t.dish, t.step))) return;
  if (!raw_at(c.dish(t.dish), t.step)) return;
  c.report("Y11", fmt::format("{}: the school bars tasting raw mixtures.", c.label(index)), {index},
           when(t));
}

void check_nuts(Case& c) {
  if (c.lesson.rules.nuts) return;
  for (const auto& cook : c.lesson.cooks) {
    for (const int d : cook.dishes) {
      const auto contains = kitchen::allergens(c.dish(d));
      if (!contains.contains(kitchen::Allergen::kNuts) &&
          !contains.contains(kitchen::Allergen::kPeanuts)) {
        continue;
      }
      c.report("Y11",
               fmt::format("{}: the {} may contain nuts, and the school allows none.", cook.name,
                           c.dish(d).name),
               {}, {});
    }
  }
}

void by_the_bell(Case& c, int index, const char* rule) {
  const Task& t = c.task(index);
  if (t.end <= c.lesson.bell) return;
  c.report(rule,
           fmt::format("{}: it must end by the bell at {}.", c.label(index), c.at(c.lesson.bell)),
           {index}, when(t));
}

void check_knives(Case& c) {
  const auto out = c.find({TaskKind::kKnivesOut});
  const auto in = c.find({TaskKind::kKnivesIn});
  for (const int index : c.all()) {
    const Task& t = c.task(index);
    if (t.kind != TaskKind::kStep || !uses_knife(c.step(t.dish, t.step))) continue;
    if (out && t.start < c.task(*out).end) {
      c.report("Y8",
               fmt::format("{}, starts before the knives are counted out at {}.", c.label(index),
                           c.at(c.task(*out).end)),
               {*out, index}, {t.start, c.task(*out).end});
    }
    if (in && t.end > c.task(*in).start) {
      c.report("Y8",
               fmt::format("{}, ends after the knives are counted in at {}.", c.label(index),
                           c.at(c.task(*in).start)),
               {*in, index}, {c.task(*in).start, t.end});
    }
  }
  if (out) by_the_bell(c, *out, "Y8");
  if (in) by_the_bell(c, *in, "Y8");
}

// When the last cook of a bay has washed up; the very start when nobody is there.
Seconds bay_washed(const Case& c, int bay) {
  Seconds latest{0};
  for (int k = 0; k < c.cooks(); ++k) {
    if (c.place_of(k).bay != bay) continue;
    for (const int t : c.wash_up(k)) latest = std::max(latest, c.task(t).end);
  }
  return latest;
}

void check_bay_look(Case& c, int bay) {
  const auto look = c.find({TaskKind::kBayLook, -1, -1, -1, 0, bay});
  if (!look) return;
  const Task& t = c.task(*look);
  const auto washed = bay_washed(c, bay);
  if (t.start < washed) {
    c.report(
        "Y8",
        fmt::format("{}, before its washing up has ended at {}.", c.label(*look), c.at(washed)),
        {*look}, {t.start, washed});
  }
  // If late wash-up leaves no minute before the bell, it is the wash-up that is late.
  by_the_bell(c, *look, washed + base::minutes(1) > c.lesson.bell ? "K5" : "Y8");
}

}  // namespace

void check_house_rules(Case& c) {
  for (const int t : c.all()) {
    if (c.task(t).kind != TaskKind::kStep) continue;
    check_step(c, t);
    check_tasting_raw(c, t);
  }
  check_nuts(c);
  check_knives(c);
  for (int b = 0; b < static_cast<int>(c.lesson.room.bays.size()); ++b) check_bay_look(c, b);
}

}  // namespace timeplan::judge
