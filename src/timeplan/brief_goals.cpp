// The goal levels of section "Goals" in docs/methods/rules.md as terms of the engine. Cooks of one
// line whose terms are the same are counted in the weight.
#include <algorithm>

#include "timeplan/brief_maker.h"

namespace timeplan {

using kitchen::Moment;
using scheduler::GoalLevel;
using scheduler::Term;

namespace {

// Adds a term, or its weight to an equal one.
void add_term(GoalLevel& level, Term term) {
  if (term.weight == 0) return;
  std::sort(term.high.begin(), term.high.end());
  std::sort(term.low.begin(), term.low.end());
  for (Term& known : level.terms) {
    if (known.high == term.high && known.low == term.low && known.allowance == term.allowance) {
      known.weight += term.weight;
      return;
    }
  }
  level.terms.push_back(std::move(term));
}

int hold_rate(const kitchen::Hold& hold) {
  switch (hold.kind) {
    case kitchen::HoldKind::kCrisp:
      return 3;
    case kitchen::HoldKind::kHot:
      return 1;
    case kitchen::HoldKind::kKeeps:
      return 0;
  }
  return 0;
}

}  // namespace

std::vector<std::string> level_names(const kitchen::Lesson& lesson, bool bell_is_hard) {
  std::vector<std::string> names;
  if (!bell_is_hard) names.emplace_back("G1 overrun");
  names.emplace_back(lesson.spread_before_buffer ? "G3 spread" : "G2 buffer shortfall");
  names.emplace_back(lesson.spread_before_buffer ? "G2 buffer shortfall" : "G3 spread");
  names.emplace_back("G4 quality loss");
  names.emplace_back("G6 early");
  return names;
}

void BriefMaker::add_goals() {
  GoalLevel overrun{"G1 overrun", {}, 0}, buffer{"G2 buffer shortfall", {}, 0},
      spread{"G3 spread", {}, 0}, quality{"G4 quality loss", {}, 0}, early{"G6 early", {}, 0};
  for (int c = 0; c < static_cast<int>(lesson_.cooks.size()); ++c) {
    const auto i = static_cast<std::size_t>(c);
    const int team = line_of(c);
    const int due = as_units(base::grid_down(cook_of(c).leaves - lesson_.check_out));
    const scheduler::Event washed = event(net_.wash_up[i].back(), Moment::kEnd);
    Term late;
    late.high = {washed};
    late.team = team;
    late.allowance = due;
    add_term(overrun, late);
    late.allowance = due - as_units(net_.buffer[i]);
    add_term(buffer, late);
    late.allowance = 0;
    add_term(early, late);
  }
  for (const ServeMoment& serve : net_.serves) {
    Term range;
    range.team = line_of(serve.cook);
    range.allowance = 3;
    for (const Wait& w : net_.waits) {
      if (w.to != serve.node || w.why != WaitWhy::kHold) continue;
      const Task& last = node(w.from).task;
      const kitchen::Hold& hold = lesson_.dishes[static_cast<std::size_t>(last.dish)].hold;
      const scheduler::Event ready = event(w.from, Moment::kEnd);
      if (hold.kind != kitchen::HoldKind::kKeeps) {
        range.high.push_back(ready);
        range.low.push_back(ready);
      }
      Term waiting;
      waiting.team = range.team;
      waiting.weight = hold_rate(hold);
      waiting.high = {event(serve.node, Moment::kStart)};
      waiting.low = {ready};
      add_term(quality, waiting);
    }
    if (range.high.size() > 1) add_term(spread, range);
  }
  for (int n = 0; n < static_cast<int>(net_.nodes.size()); ++n) {
    const Task& t = node(n).task;
    if (t.kind != TaskKind::kStep || t.step < 0 || node(n).most == node(n).least) continue;
    Term longer;
    longer.team = line_of(t.cook);
    longer.weight = lesson_.dishes[static_cast<std::size_t>(t.dish)]
                        .method[static_cast<std::size_t>(t.step)]
                        .elastic_loss;
    longer.high = {event(n, Moment::kEnd)};
    longer.low = {event(n, Moment::kStart)};
    longer.allowance = as_units(node(n).least);
    add_term(quality, longer);
  }
  auto& goals = brief_.problem.goals;
  if (!options_.bell_is_hard) goals.push_back(std::move(overrun));
  goals.push_back(lesson_.spread_before_buffer ? spread : buffer);
  goals.push_back(lesson_.spread_before_buffer ? buffer : spread);
  goals.push_back(std::move(quality));
  goals.push_back(std::move(early));
}

}  // namespace timeplan
