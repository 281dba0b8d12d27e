#include "timeplan/chance/play_tables.h"

#include <algorithm>
#include <stdexcept>
#include <string>
#include <tuple>

#include "base/index.h"

namespace timeplan {
namespace {

using base::at;
using Lists = std::vector<std::vector<int>>;

void check_index(int index, std::size_t size, const char* what) {
  if (index < 0 || at(index) >= size)
    throw std::invalid_argument(std::string("play model: no such ") + what);
}

void check_ways(const PlayModel& model, const std::vector<PlayWay>& ways) {
  for (const PlayWay& way : ways)
    for (const PlayUse& use : way.uses)
      check_index(use.resource, model.resources.size(), "resource");
}

void check(const PlayModel& model) {
  const std::size_t n = model.activities.size();
  for (const PlayActivity& a : model.activities) {
    if (a.cook != -1) check_index(a.cook, model.cooks.size(), "cook");
    if (a.hands_on && a.cook == -1) throw std::invalid_argument("play model: hands without a cook");
    for (const int cook : a.audience) check_index(cook, model.cooks.size(), "cook");
    check_ways(model, a.ways);
  }
  for (const PlayWait& w : model.waits) {
    check_index(w.from, n, "activity");
    check_index(w.to, n, "activity");
  }
  for (const PlaySpan& s : model.spans) {
    check_index(s.opens, n, "activity");
    if (s.closes != -1) check_index(s.closes, n, "activity");
    if (s.oven != -1) {
      check_index(s.oven, model.ovens.size(), "oven");
      check_index(s.setting, at(model.ovens[at(s.oven)].settings), "oven setting");
    }
    check_ways(model, s.ways);
  }
  for (const PlayOrder& o : model.orders)
    for (const int a : o.activities) check_index(a, n, "activity");
}

/// Sorted by planned start, then number, as the rule breaks ties (activities carry their cook's
/// order).
void sort_as_planned(const PlayModel& model, std::vector<int>& list) {
  std::sort(list.begin(), list.end(), [&](int x, int y) {
    return std::tuple(model.activities[at(x)].planned_start, x) <
           std::tuple(model.activities[at(y)].planned_start, y);
  });
  list.erase(std::unique(list.begin(), list.end()), list.end());
}

/// The waits a run looks at. Those of one moment are kept by starting together. A wait to an end
/// whose first event the plan has before the start is asked for at the start as well, so that
/// nobody stands with full hands waiting for it.
std::vector<PlayWait> effective_waits(const PlayModel& model) {
  std::vector<PlayWait> waits;
  for (const PlayWait& w : model.waits) {
    const PlayActivity& from = model.activities[at(w.from)];
    const PlayActivity& to = model.activities[at(w.to)];
    if (from.together != -1 && from.together == to.together) continue;
    waits.push_back(w);
    const int moment = from.planned_start + (w.from_end ? from.planned : 0);
    if (w.to_end && w.least >= 0 && moment <= to.planned_start)
      waits.push_back({w.from, w.from_end, w.to, false, 0});
  }
  return waits;
}

void lay_waits(const PlayModel& model, PlayTables& t) {
  const std::size_t n = model.activities.size();
  std::vector<std::vector<PlayWait>> starts(n), ends(n);
  Lists into(n);
  t.missing.assign(n, 0);
  t.end_missing.assign(n, 0);
  for (const PlayWait& w : effective_waits(model)) {
    (w.from_end ? ends : starts)[at(w.from)].push_back(w);
    if (w.least < 0) continue;
    into[at(w.to)].push_back(w.from);
    ++(w.to_end ? t.end_missing : t.missing)[at(w.to)];
  }
  t.after_start = Rows(starts);
  t.after_end = Rows(ends);
  t.waits_into = Rows(into);
}

/// The step that ends an elastic one: the closing step of the same cook that follows its end. What
/// merely cools or rests has none and ends by itself.
void find_closers(const PlayModel& model, PlayTables& t) {
  t.closer.assign(model.activities.size(), -1);
  t.elastic.assign(model.activities.size(), -1);
  for (const PlayWait& w : model.waits) {
    const PlayActivity& from = model.activities[at(w.from)];
    const PlayActivity& to = model.activities[at(w.to)];
    if (from.longest <= 0 || !w.from_end || w.to_end || w.least != 0 || from.cook != to.cook ||
        !to.closing)
      continue;
    if (to.together != -1 || t.elastic[at(w.to)] != -1) continue;
    int& closer = t.closer[at(w.from)];
    const auto rank = [&](int a) { return std::tuple(model.activities[at(a)].planned_start, a); };
    if (closer != -1 && rank(closer) <= rank(w.to)) continue;
    if (closer != -1) t.elastic[at(closer)] = -1;
    closer = w.to;
    t.elastic[at(w.to)] = w.from;
  }
  t.elastic_waits.assign(model.activities.size(), 0);
  for (const PlayWait& w : effective_waits(model))
    t.elastic_waits[at(w.to)] += !w.to_end && w.from_end && w.least >= 0 &&
                                 t.elastic[at(w.to)] == w.from;
}

void lay_ways(const PlayModel& model, PlayTables& t) {
  std::vector<std::vector<PlayUse>> uses;
  const auto lay = [&](const std::vector<PlayWay>& ways, std::vector<int>& first) {
    first.push_back(static_cast<int>(uses.size()));
    for (const PlayWay& way : ways) {
      uses.push_back(way.uses);
      t.way_end_by.push_back(way.end_by);
    }
  };
  for (const PlayActivity& a : model.activities) lay(a.ways, t.first_way);
  t.first_way.push_back(static_cast<int>(uses.size()));
  for (const PlaySpan& s : model.spans) lay(s.ways, t.first_span_way);
  t.first_span_way.push_back(static_cast<int>(uses.size()));
  t.way_uses = Rows(uses);
}

void lay_spans(const PlayModel& model, PlayTables& t) {
  const std::size_t n = model.activities.size();
  Lists opens(n), starts(n), ends(n), shut(n), trays(model.ovens.size());
  for (std::size_t s = 0; s < model.spans.size(); ++s) {
    const PlaySpan& span = model.spans[s];
    opens[at(span.opens)].push_back(static_cast<int>(s));
    if (span.closes != -1)
      (span.closes_at_end ? ends : starts)[at(span.closes)].push_back(static_cast<int>(s));
    for (const int a : span.shuts_out) shut[at(a)].push_back(static_cast<int>(s));
    if (span.oven != -1) trays[at(span.oven)].push_back(static_cast<int>(s));
  }
  for (auto& list : trays)
    std::sort(list.begin(), list.end(), [&](int x, int y) {
      const int a = model.spans[at(x)].opens, b = model.spans[at(y)].opens;
      return std::tuple(model.activities[at(a)].planned_start, a, x) <
             std::tuple(model.activities[at(b)].planned_start, b, y);
    });
  t.opens = Rows(opens);
  t.closes_at_start = Rows(starts);
  t.closes_at_end = Rows(ends);
  t.shut_out_by = Rows(shut);
  t.trays = Rows(trays);
}

void lay_lists(const PlayModel& model, PlayTables& t) {
  const std::size_t n = model.activities.size();
  Lists cooks(model.cooks.size()), hands(model.cooks.size()), users(model.resources.size()),
      orders(n), voids(n), groups;
  Lists breaks(model.cooks.size()), windows(model.cooks.size());
  for (std::size_t i = 0; i < n; ++i) {
    const PlayActivity& a = model.activities[i];
    const int id = static_cast<int>(i);
    if (a.cook != -1) cooks[at(a.cook)].push_back(id);
    if (a.hands_on) hands[at(a.cook)].push_back(id);
    if (model.mind_windows && a.window != PlayWindow::kNone)
      for (const int cook : a.audience) windows[at(cook)].push_back(id);
    if (a.void_after != -1) voids[at(a.void_after)].push_back(id);
    if (a.together != -1) {
      if (groups.size() <= at(a.together)) groups.resize(at(a.together) + 1);
      groups[at(a.together)].push_back(id);
    }
    for (const PlayWay& way : a.ways)
      for (const PlayUse& use : way.uses) users[at(use.resource)].push_back(id);
  }
  for (const PlaySpan& s : model.spans)
    for (const PlayWay& way : s.ways)
      for (const PlayUse& use : way.uses) users[at(use.resource)].push_back(s.opens);
  for (std::size_t o = 0; o < model.orders.size(); ++o)
    for (const int a : model.orders[o].activities) orders[at(a)].push_back(static_cast<int>(o));
  for (std::size_t b = 0; b < model.breaks.size(); ++b)
    for (const int cook : model.breaks[b].cooks) breaks[at(cook)].push_back(static_cast<int>(b));
  for (auto* lists : {&cooks, &hands, &users})
    for (auto& list : *lists) sort_as_planned(model, list);
  t.of_cook = Rows(cooks);
  t.hands_of_cook = Rows(hands);
  t.users = Rows(users);
  t.orders_of = Rows(orders);
  t.breaks_of = Rows(breaks);
  t.windows_of = Rows(windows);
  t.group = Rows(groups);
  t.voids = Rows(voids);
}

/// Latest planned start at which some way still ends in time; kNever if there is always one.
int last_chance(const PlayActivity& a) {
  int end_by = a.ways.empty() ? kNever : 0;
  for (const PlayWay& way : a.ways) end_by = std::max(end_by, way.end_by);
  end_by = std::min(end_by, a.end_by);
  return end_by == kNever ? kNever : end_by - a.planned;
}

void lay_clock(const PlayModel& model, PlayTables& t) {
  for (std::size_t i = 0; i < model.activities.size(); ++i) {
    const PlayActivity& a = model.activities[i];
    const int last = last_chance(a);
    if (last != kNever)
      t.clock.push_back({std::max(0, last + 1), PlayEvent::kGiveUp, static_cast<int>(i)});
    if (a.window != PlayWindow::kNone)
      t.clock.push_back(
          {a.planned_start + model.patience_window, PlayEvent::kPatience, static_cast<int>(i)});
  }
  for (std::size_t o = 0; o < model.ovens.size(); ++o) {
    const int oven = static_cast<int>(o);
    t.clock.push_back({0, PlayEvent::kOven, oven});
    for (const int s : t.trays[oven]) {
      const PlayActivity& a = model.activities[at(model.spans[at(s)].opens)];
      t.clock.push_back({a.planned_start + model.patience_oven, PlayEvent::kOven, oven});
    }
  }
  for (std::size_t b = 0; b < model.breaks.size(); ++b) {
    t.clock.push_back({model.breaks[b].from, PlayEvent::kBreakStart, static_cast<int>(b)});
    t.clock.push_back({model.breaks[b].to, PlayEvent::kBreakEnd, static_cast<int>(b)});
  }
  for (std::size_t r = 0; r < model.resources.size(); ++r)
    for (const PlayChange& c : model.resources[r].changes)
      t.clock.push_back({c.at, PlayEvent::kResource, static_cast<int>(r), c.by});
  for (std::size_t c = 0; c < model.cooks.size(); ++c)
    for (const PlayChange& change : model.cooks[c].people_changes)
      t.clock.push_back({change.at, PlayEvent::kPeople, static_cast<int>(c), change.by});
  std::sort(t.clock.begin(), t.clock.end(), [](const ClockEvent& x, const ClockEvent& y) {
    return std::tuple(x.at, x.what, x.id, x.by) < std::tuple(y.at, y.what, y.id, y.by);
  });
}

/// Rule D2 for every activity. Those who start together are clock-bound only if all of them could
/// be earlier.
void lay_clock_bound(const PlayModel& model, PlayTables& t) {
  const std::size_t n = model.activities.size();
  t.clock_bound.assign(n, 0);
  t.floor.assign(n, 0);
  for (std::size_t i = 0; i < n; ++i)
    t.clock_bound[i] = model.activities[i].window == PlayWindow::kNone &&
                       could_start_earlier(model, static_cast<int>(i));
  for (int g = 0; g < t.group.rows(); ++g) {
    const auto members = t.group[g];
    const bool all = std::all_of(members.begin(), members.end(),
                                 [&](int a) { return t.clock_bound[at(a)]; });
    for (const int a : members) t.clock_bound[at(a)] = all;
  }
  for (std::size_t i = 0; i < n; ++i) {
    const PlayActivity& a = model.activities[i];
    const bool by_clock = t.clock_bound[i] || a.window == PlayWindow::kHandsOff;
    t.floor[i] = by_clock ? std::max(a.earliest, a.planned_start) : a.earliest;
  }
}

/// Most of a resource that could be wanted at once: everything. Enough for that means nobody ever
/// waits for it.
void find_held_resources(const PlayModel& model, PlayTables& t) {
  const std::size_t n = model.resources.size();
  t.held_resource.assign(n, 0);
  std::vector<int> wanted(n, 0);
  const auto add = [&](const std::vector<PlayWay>& ways, bool span) {
    std::vector<int> most(n, 0);
    for (const PlayWay& way : ways) {
      for (const PlayUse& use : way.uses) {
        most[at(use.resource)] = std::max(most[at(use.resource)], use.amount);
        if (span) t.held_resource[at(use.resource)] = 1;
      }
    }
    for (std::size_t r = 0; r < n; ++r) wanted[r] += most[r];
  };
  for (const PlayActivity& a : model.activities) add(a.ways, false);
  for (const PlaySpan& s : model.spans) add(s.ways, true);
  for (std::size_t r = 0; r < n; ++r)
    if (wanted[r] <= model.resources[r].capacity && model.resources[r].changes.empty())
      t.held_resource[r] = 0;
}

bool contended(const PlayTables& t, const PlaySpan& s) {
  bool is = s.oven != -1;
  for (const PlayWay& way : s.ways)
    for (const PlayUse& use : way.uses) is = is || t.held_resource[at(use.resource)];
  return is;
}

/// Who could ever wait for whom because of something held, an oven, an order or a shared tray.
void find_islands(const PlayModel& model, PlayTables& t) {
  std::vector<int>& island = t.island;
  for (std::size_t c = 0; c <= model.cooks.size(); ++c)
    island.push_back(static_cast<int>(c));  // the last: the room's own
  const auto island_of = [&](int a) {
    const int cook = model.activities[at(a)].cook;
    return cook == -1 ? model.cooks.size() : at(cook);
  };
  const auto join = [&](int a, int b) {
    const int from = island[island_of(a)], to = island[island_of(b)];
    std::replace(island.begin(), island.end(), from, to);
  };
  const auto join_all = [&](std::span<const int> list) {
    for (const int a : list) join(a, list.front());
  };
  for (int r = 0; r < t.users.rows(); ++r)
    if (t.held_resource[at(r)]) join_all(t.users[r]);
  for (int o = 0; o < t.trays.rows(); ++o)
    for (const int s : t.trays[o])
      join(model.spans[at(s)].opens, model.spans[at(t.trays[o].front())].opens);
  for (const PlayOrder& order : model.orders) join_all(order.activities);
  for (int g = 0; g < t.group.rows(); ++g) join_all(t.group[g]);
}

std::vector<char> touching(const PlayModel& model, const PlayTables& t) {
  std::vector<char> touches(model.activities.size(), 0);
  for (const PlaySpan& s : model.spans)
    if (contended(t, s))
      touches[at(s.opens)] = touches[at(s.closes == -1 ? s.opens : s.closes)] = 1;
  for (const PlayOrder& order : model.orders)
    for (const int a : order.activities) touches[at(a)] = 1;
  for (std::size_t i = 0; i < model.activities.size(); ++i)
    for (const PlayWay& way : model.activities[i].ways)
      for (const PlayUse& use : way.uses)
        touches[i] = touches[i] || t.held_resource[at(use.resource)];
  return touches;
}

/// Starts and ends, as planned, of everything that touches what spans hold, or keeps an order.
void lay_planned_order(const PlayModel& model, PlayTables& t) {
  find_held_resources(model, t);
  find_islands(model, t);
  t.touches_held = touching(model, t);
  std::vector<OrderStep> all;
  for (std::size_t i = 0; i < model.activities.size(); ++i) {
    if (!t.touches_held[i]) continue;
    all.push_back({static_cast<int>(i), false});
    all.push_back({static_cast<int>(i), true});
  }
  std::sort(all.begin(), all.end(), [&](const OrderStep& x, const OrderStep& y) {
    const auto key = [&](const OrderStep& s) {
      const PlayActivity& a = model.activities[at(s.activity)];
      // A moment ends after it starts; everything else that ends does so before the next starts.
      const bool late_end = s.end && a.planned == 0;
      return std::tuple(a.planned_start + (s.end ? a.planned : 0),
                        late_end ? 2
                        : s.end  ? 0
                                 : 1,
                        s.activity);
    };
    return key(x) < key(y);
  });
  std::vector<std::vector<OrderStep>> lists(model.cooks.size() + 1);
  for (const OrderStep& step : all) {
    const int cook = model.activities[at(step.activity)].cook;
    lists[at(t.island[cook == -1 ? model.cooks.size() : at(cook)])].push_back(step);
  }
  t.planned_order = Rows(lists);
}

}  // namespace

PlayTables play_tables(const PlayModel& model) {
  check(model);
  PlayTables t;
  for (const PlayResource& r : model.resources) t.base_capacity.push_back(r.capacity);
  lay_waits(model, t);
  find_closers(model, t);
  lay_ways(model, t);
  lay_spans(model, t);
  lay_lists(model, t);
  lay_clock(model, t);
  lay_clock_bound(model, t);
  lay_planned_order(model, t);
  return t;
}

}  // namespace timeplan
