// Small lessons with plans made by hand, for the judge to look at.
//
// "Three cooks, a pan of mince, a salad, a tart and some fritters": every plan here keeps every
// rule, so that a test can break one rule and know what must be said. Names and dishes are
// invented; the school is Quillbridge School.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "timeplan/plan.h"

namespace timeplan::sample {

/// A lesson, a plan for it, and short ways of writing both down. Times are minutes after the
/// opening.
struct Sample {
  kitchen::Lesson lesson;
  Plan plan;

  Task& add(TaskKind, int cook, int from, int to);
  Task& step(int cook, int dish, int step, int from, int to, int part = 0);
  /// Apron and hands at the basins.
  void apron(int cook, int from, int to);
  /// One part of the washing up, at a sink of the cook's bay.
  void wash_up(int cook, int part, int from, int to);
  void serve(int cook, int at) { plan.served.push_back({cook, 0, base::minutes(at)}); }
  /// The six levels in the usual order; bounds equal values.
  void levels(std::vector<std::int64_t> values);

  Task& at(TaskKind, int cook, int dish = -1, int step = -1, int part = 0);
  void drop(const Task&);
};

/// A step to be filled in: minutes, attention. Spread is 0, so hands-on steps last a minute more
/// than `minutes` (the forms of the day and of the room: 1.46 % up, then up to the whole minute).
kitchen::Step step(std::string brief, kitchen::Attention, int minutes);
/// Waits for the end of step `of`; `most` minutes at most when it is not negative.
kitchen::Step& after(kitchen::Step&, int of, int most = -1, int least = 0);
kitchen::Heat ring(std::string vessel);
kitchen::Heat oven(std::string vessel, int celsius, kitchen::OvenKind, int twelfths);
/// House rules of Quillbridge School: the defaults and a complete list of what watching takes.
kitchen::HouseRules house_rules();
/// A lesson with house rules, one adult who leads and may watch everything, one sitting, timelines
/// of their own.
Sample blank(int bell);
/// A cook at a place.
kitchen::Cook cook(std::string name, int people, int place, std::vector<int> dishes, int bell);

/// Eat here, own timelines. Shared place, raw meat, kit washed between uses, sink, fridge, parts,
/// oven with fan, frying, gate, knives, bay looks, register, a hold on a ring, somebody away.
Sample supper();
/// Taste, two waves. Shared tray, change-over, opening setting, eye-level grill, stop, break,
/// tasting, checkpoints.
Sample bakery();
/// Eat here, own timelines. One ring for two pans, allergens on a mixer, draining in two bays,
/// three people.
Sample two_pans();
/// Take home, own timelines. First half and second half of carried-over dishes, packing, buffers
/// that matter.
Sample take_home();

}  // namespace timeplan::sample
