#include "random_room.h"

#include <algorithm>
#include <tuple>
#include <utility>

namespace random_room {
namespace {

using namespace timeplan;

int end_of(const PlayActivity& a) { return a.planned_start + a.planned; }
bool meet(const PlayActivity& a, int from, int to) {
  return a.planned_start < to && from < end_of(a);
}

/// Does activity `i`, planned where it stands, fit in with those before it in the list?
class Fit {
 public:
  Fit(const PlayModel& model, std::size_t placed) : m_(model), placed_(placed) {}

  bool all_fit(std::size_t first) const {
    for (std::size_t i = first; i < placed_; ++i)
      if (!waits(i) || !hands(i) || !apart(i) || !in_room(i)) return false;
    return things() && trays();
  }

 private:
  bool waits(std::size_t i) const {
    return std::all_of(m_.waits.begin(), m_.waits.end(), [&](const PlayWait& w) {
      if (static_cast<std::size_t>(std::max(w.from, w.to)) >= placed_ ||
          (w.to != static_cast<int>(i) && w.from != static_cast<int>(i)))
        return true;
      const PlayActivity& from = m_.activities[static_cast<std::size_t>(w.from)];
      const PlayActivity& to = m_.activities[static_cast<std::size_t>(w.to)];
      return (w.to_end ? end_of(to) : to.planned_start) >=
             (w.from_end ? end_of(from) : from.planned_start) + w.least;
    });
  }
  bool hands(std::size_t i) const {
    const PlayActivity& a = m_.activities[i];
    if (a.cook == -1) return true;
    for (int t = a.planned_start; t < end_of(a); t += m_.grid) {
      int attention = 0, busy = 0;
      for (std::size_t b = 0; b < placed_; ++b) {
        if (m_.activities[b].cook != a.cook || !meet(m_.activities[b], t, t + m_.grid)) continue;
        attention += m_.activities[b].attention;
        busy += m_.activities[b].busy;
      }
      const int people = m_.cooks[static_cast<std::size_t>(a.cook)].people;
      if (attention > 10 * people || busy > 2 * people) return false;
    }
    return true;
  }
  bool apart(std::size_t i) const {
    for (const PlayOrder& order : m_.orders) {
      for (std::size_t x = 0; x < order.activities.size(); ++x) {
        for (std::size_t y = 0; y < x; ++y) {
          const auto a = static_cast<std::size_t>(order.activities[x]),
                     b = static_cast<std::size_t>(order.activities[y]);
          if (std::max(a, b) >= placed_ || (a != i && b != i) ||
              (order.classes[x] == order.classes[y] && order.classes[x] != -1))
            continue;
          if (meet(m_.activities[a], m_.activities[b].planned_start, end_of(m_.activities[b])))
            return false;
        }
      }
    }
    for (const PlaySpan& s : m_.spans) {
      if (static_cast<std::size_t>(std::max(s.opens, s.closes)) >= placed_) continue;
      for (const int out : s.shuts_out)
        if (static_cast<std::size_t>(out) < placed_ &&
            meet(m_.activities[static_cast<std::size_t>(out)], from(s), to(s)))
          return false;
    }
    return true;
  }
  bool in_room(std::size_t i) const {
    const PlayActivity& a = m_.activities[i];
    for (const PlayActivity& w : m_.activities) {
      if (w.window == PlayWindow::kNone || a.attention == 0 || &w == &a) continue;
      if (meet(a, w.planned_start, end_of(w))) return false;
    }
    for (const PlayBreak& b : m_.breaks)
      if (!a.in_break && a.planned > 0 && meet(a, b.from, b.to)) return false;
    return a.end_by == kNever || end_of(a) <= a.end_by;
  }
  int from(const PlaySpan& s) const {
    return m_.activities[static_cast<std::size_t>(s.opens)].planned_start;
  }
  int to(const PlaySpan& s) const {
    const PlayActivity& c = m_.activities[static_cast<std::size_t>(s.closes)];
    return s.closes_at_end ? end_of(c) : c.planned_start;
  }
  bool things() const {
    int last = 0;
    for (std::size_t i = 0; i < placed_; ++i) last = std::max(last, end_of(m_.activities[i]));
    for (int t = 0; t < last; t += m_.grid) {
      std::vector<int> used(m_.resources.size(), 0);
      const auto add = [&](const std::vector<PlayWay>& ways) {
        if (!ways.empty())
          for (const PlayUse& use : ways.front().uses)
            used[static_cast<std::size_t>(use.resource)] += use.amount;
      };
      for (std::size_t i = 0; i < placed_; ++i)
        if (meet(m_.activities[i], t, t + m_.grid)) add(m_.activities[i].ways);
      for (const PlaySpan& s : m_.spans)
        if (static_cast<std::size_t>(std::max(s.opens, s.closes)) < placed_ && from(s) <= t &&
            t < to(s))
          add(s.ways);
      for (std::size_t r = 0; r < used.size(); ++r)
        if (used[r] > m_.resources[r].capacity) return false;
    }
    return true;
  }
  bool trays() const {
    for (std::size_t x = 0; x < m_.spans.size(); ++x) {
      const PlaySpan& s = m_.spans[x];
      if (s.oven == -1 || static_cast<std::size_t>(std::max(s.opens, s.closes)) >= placed_)
        continue;
      const PlayOven& oven = m_.ovens[static_cast<std::size_t>(s.oven)];
      const auto change = [&](int a, int b) {
        return oven.change[static_cast<std::size_t>(a * oven.settings + b)];
      };
      if (from(s) < change(oven.opening, s.setting)) return false;
      for (const PlayBreak& b : m_.breaks)
        if (from(s) < b.to + change(0, s.setting) && b.from < to(s)) return false;
      int used = 0;
      for (const PlaySpan& o : m_.spans) {
        if (o.oven != s.oven || static_cast<std::size_t>(std::max(o.opens, o.closes)) >= placed_)
          continue;
        const bool before = to(o) + change(o.setting, s.setting) <= from(s),
                   after = to(s) + change(s.setting, o.setting) <= from(o);
        if (o.setting != s.setting && !before && !after) return false;
        if (from(o) <= from(s) && from(s) < to(o)) used += o.twelfths;
      }
      if (used > oven.twelfths) return false;
    }
    return true;
  }

  const PlayModel& m_;
  std::size_t placed_;
};

/// Places activities `first` to the end, in list order each as early as it can or a little later,
/// as one block: when one finds no room the whole block moves on.
void place_block(PlayModel& model, std::size_t first, Random& random) {
  const std::size_t n = model.activities.size();
  int pause = random.one_in(4) ? model.grid * random.number(1, 6) : 0;
  for (int base = 0;; base += model.grid) {
    int at = base;
    bool good = true;
    for (std::size_t i = first; i < n && good; ++i) {
      PlayActivity& a = model.activities[i];
      good = false;
      for (int tries = 0; tries < 40 && !good; ++tries, at += model.grid) {
        a.planned_start = std::max(at, a.earliest);
        good = Fit(model, i + 1).all_fit(i);
      }
      at = a.planned_start;
    }
    if (!good) continue;
    if (pause == 0) return;
    base += pause - model.grid;
    pause = 0;
  }
}

/// One cook's next piece of work, a block of one to four activities that follow each other.
class Maker {
 public:
  Maker(Random& random, int unit) : random_(random), unit_(unit) { m_.grid = unit; }

  int add(int cook, int attention, int most_minutes) {
    PlayActivity a;
    a.cook = cook;
    a.attention = attention;
    a.busy = attention >= 8 ? 2 : attention == 5 ? 1 : 0;
    a.hands_on = attention >= 5;
    a.planned = unit_ * random_.number(1, most_minutes);
    a.finish = true;
    m_.activities.push_back(a);
    return static_cast<int>(m_.activities.size()) - 1;
  }
  void after(int from, int to, int most_minutes = -1) {
    m_.waits.push_back(
        {from, true, to, false, 0, most_minutes < 0 ? kNever : unit_ * most_minutes, false});
  }
  PlayActivity& act(int i) { return m_.activities[static_cast<std::size_t>(i)]; }

  PlayModel m_;
  Random& random_;
  int unit_;
};

void add_oven(Maker& maker) {
  PlayOven oven;
  oven.twelfths = 12 * maker.random_.number(1, 2);
  oven.settings = 3;
  oven.opening = maker.random_.number(0, 2);
  for (int from = 0; from < 3; ++from)
    for (int to = 0; to < 3; ++to)
      oven.change.push_back(from == to ? 0 : maker.unit_ * (to == 0 ? 5 : 3 + from));
  maker.m_.ovens.push_back(oven);
}

void add_window(Maker& maker, int cooks) {
  PlayActivity w;
  w.window = maker.random_.one_in(3) ? PlayWindow::kStop : PlayWindow::kHandsOff;
  for (int c = 0; c < cooks; ++c) w.audience.push_back(c);
  w.planned_start = maker.unit_ * maker.random_.number(5, 40);
  w.planned = maker.unit_ * maker.random_.number(1, 5);
  maker.m_.activities.push_back(w);
}

}  // namespace

PlayModel simple(Random& random) {
  Maker maker(random, 1);
  const int cooks = random.number(1, 4);
  maker.m_.cooks.resize(static_cast<std::size_t>(cooks));
  maker.m_.resources = {{1, {}}, {2, {}}};
  maker.m_.patience_own = 3;
  maker.m_.patience_oven = maker.m_.patience_window = 5;
  maker.m_.urgent_within = 2;
  add_oven(maker);
  if (random.one_in(2)) {
    add_window(maker, cooks);
    maker.m_.activities.back().window = PlayWindow::kHandsOff;
  }
  const int attentions[] = {8, 8, 8, 10, 5, 2, 1, 0};
  std::vector<int> last(static_cast<std::size_t>(cooks), -1);
  for (int block = random.number(3, 12); block > 0; --block) {
    const std::size_t first = maker.m_.activities.size();
    const int cook = random.number(0, cooks - 1);
    int& before = last[static_cast<std::size_t>(cook)];
    const int a = maker.add(cook, attentions[random.number(0, 7)], 8);
    if (before != -1 && !random.one_in(3))
      maker.after(before, a, random.one_in(4) ? random.number(0, 6) : -1);
    if (random.one_in(2)) maker.act(a).ways = {{{{random.number(0, 1), 1}}, kNever}};
    if (maker.act(a).attention <= 2 && random.one_in(2)) {
      PlaySpan tray;
      tray.opens = tray.closes = a;
      tray.oven = 0;
      tray.setting = random.number(1, 2);
      tray.twelfths = random.one_in(2) ? 12 : 6;
      maker.m_.spans.push_back(tray);
    }
    before = a;
    if (maker.act(a).attention <= 2 && !random.one_in(3)) {
      const int out = maker.add(cook, 8, 2);
      maker.act(out).closing = true;
      maker.after(a, out, random.number(0, 2));
      before = out;
    }
    place_block(maker.m_, first, random);
  }
  return maker.m_;
}

namespace {

void add_pan(Maker& maker, int cook, int& before) {
  const int soften = maker.add(cook, maker.random_.one_in(2) ? 5 : 2, 6);
  if (before != -1) maker.after(before, soften);
  const int boil = maker.add(cook, maker.random_.number(0, 2), 12);
  maker.after(soften, boil, 5);
  maker.act(boil).heated = maker.act(soften).heated = true;
  if (maker.random_.one_in(3)) maker.act(boil).longest = maker.act(boil).planned + 300;
  const int drain = maker.add(cook, 8, 2);
  maker.act(drain).closing = true;
  maker.act(drain).ways = {{{{1, 1}}, kNever}};
  maker.after(boil, drain, 1);
  PlaySpan pan;
  pan.opens = soften;
  pan.closes = drain;
  pan.ways = {{{{0, 1}}, kNever}};
  if (maker.random_.one_in(2)) pan.ways.push_back({{{4, 1}}, kNever});
  if (maker.random_.one_in(4)) std::swap(pan.ways.front(), pan.ways.back());
  maker.m_.spans.push_back(pan);
  before = drain;
}

void add_kit_over_other_work(Maker& maker, int cook, int& before) {
  const int use = maker.add(cook, 8, 5);
  if (before != -1) maker.after(before, use);
  // The second pan comes while the kit, and perhaps a ring, is still held: the case in which two
  // could wait for each other for ever.
  const int pan = maker.add(cook, 2, 8);
  maker.after(use, pan);
  const int stir = maker.add(cook, 8, 4);
  maker.after(pan, stir);
  const int wash = maker.add(cook, 8, 2);
  maker.act(wash).closing = maker.act(wash).cleaning = true;
  maker.act(wash).ways = {{{{1, 1}}, kNever}};
  maker.after(stir, wash);
  maker.m_.spans.push_back({use, wash, true, {{{{2, 1}}, kNever}}, -1, 0, 0, {}});
  maker.m_.spans.push_back({pan, stir, true, {{{{0, 1}}, kNever}}, -1, 0, 0, {}});
  before = wash;
}

void add_bake(Maker& maker, int cook, int& before) {
  const int bake = maker.add(cook, 0, 15);
  maker.act(bake).heated = true;
  if (before != -1) maker.after(before, bake);
  if (maker.random_.one_in(4)) maker.act(bake).door_shut = 180;
  const int out = maker.add(cook, 8, 1);
  maker.act(out).closing = true;
  maker.after(bake, out, 1);
  maker.act(bake).door_span = static_cast<int>(maker.m_.spans.size());
  maker.m_.spans.push_back(
      {bake, out, true, {}, 0, maker.random_.number(1, 2), maker.random_.one_in(2) ? 12 : 6, {}});
  before = out;
}

void add_raw(Maker& maker, int cook, int& before, int dish) {
  // The first raw step may become urgent while something the second needs is still to do: it must
  // not be begun then.
  const int rest = maker.add(cook, 0, 10);
  if (before != -1) maker.after(before, rest);
  const int board = maker.add(cook, 8, 4);
  const int first = maker.add(cook, 8, 5);
  maker.after(rest, first, maker.random_.number(1, 6));
  const int raw = maker.add(cook, 8, 5);
  maker.after(first, raw);
  maker.after(board, raw);
  const int wash = maker.add(cook, 10, 1);
  maker.act(wash).closing = maker.act(wash).cleaning = true;
  for (const int a : {board, first, raw, wash}) maker.act(a).dish = dish;
  maker.act(wash).ways = {{{{1, 1}}, kNever}};
  maker.after(raw, wash, 1);
  PlaySpan hands;
  hands.opens = first;
  hands.closes = wash;
  maker.m_.spans.push_back(hands);
  const int clean = maker.add(cook, 8, 3);
  maker.act(clean).closing = maker.act(clean).cleaning = true;
  maker.after(raw, clean);
  maker.m_.orders[static_cast<std::size_t>(cook / 2)].activities.insert(
      maker.m_.orders[static_cast<std::size_t>(cook / 2)].activities.end(), {first, raw, clean});
  maker.m_.orders[static_cast<std::size_t>(cook / 2)].classes.insert(
      maker.m_.orders[static_cast<std::size_t>(cook / 2)].classes.end(), {2, 2, -1});
  before = wash;
}

void add_plain(Maker& maker, int cook, int& before, int dish) {
  const int a = maker.add(cook, maker.random_.one_in(3) ? 10 : 8, 8);
  if (before != -1)
    maker.after(before, a, maker.random_.one_in(4) ? maker.random_.number(0, 6) : -1);
  maker.act(a).dish = dish;
  maker.act(a).calls = !maker.random_.one_in(3);
  if (!maker.act(a).calls) maker.act(a).ways = {{{{3, 50}}, kNever}};
  if (maker.act(a).calls && maker.random_.one_in(2)) {
    auto& order = maker.m_.orders[static_cast<std::size_t>(cook / 2)];
    order.activities.push_back(a);
    order.classes.push_back(maker.random_.number(0, 1));
  }
  before = a;
}

/// Nobody hands-on of the cook but the group itself may come between raw food and the hand-wash.
void shut_out(PlayModel& model) {
  for (PlaySpan& s : model.spans) {
    if (!s.ways.empty() || s.oven != -1) continue;
    for (std::size_t i = 0; i < model.activities.size(); ++i) {
      const int a = static_cast<int>(i);
      const PlayActivity& it = model.activities[i];
      const int cook = model.activities[static_cast<std::size_t>(s.opens)].cook;
      const int from = model.activities[static_cast<std::size_t>(s.opens)].planned_start;
      const int to = end_of(model.activities[static_cast<std::size_t>(s.closes)]);
      if (it.cook == cook && it.hands_on && !meet(it, from, to)) s.shuts_out.push_back(a);
    }
  }
}

void sort_orders(PlayModel& model) {
  for (PlayOrder& order : model.orders) {
    std::vector<std::pair<int, int>> both;
    for (std::size_t i = 0; i < order.activities.size(); ++i)
      both.emplace_back(order.activities[i], order.classes[i]);
    std::sort(both.begin(), both.end(), [&](const auto& x, const auto& y) {
      const auto start = [&](int a) {
        return model.activities[static_cast<std::size_t>(a)].planned_start;
      };
      return std::pair(start(x.first), x.first) < std::pair(start(y.first), y.first);
    });
    for (std::size_t i = 0; i < both.size(); ++i)
      std::tie(order.activities[i], order.classes[i]) = both[i];
  }
}

}  // namespace

PlayModel full(Random& random) {
  Maker maker(random, 60);
  const int cooks = random.number(2, 6);
  maker.m_.cooks.resize(static_cast<std::size_t>(cooks));
  for (auto& cook : maker.m_.cooks) cook.people = random.number(1, 2);
  // rings, sink, kit, adult, rings of the cooker beside
  maker.m_.resources = {{random.number(1, 3), {}}, {1, {}}, {1, {}}, {100, {}}, {1, {}}};
  maker.m_.helpers = {3};
  maker.m_.orders.resize(static_cast<std::size_t>((cooks + 1) / 2));
  add_oven(maker);
  if (random.one_in(2)) add_window(maker, cooks);
  if (random.one_in(3)) {
    PlayBreak pause{60 * random.number(20, 60), 0, {}, false};
    pause.to = pause.from + 600;
    for (int c = 0; c < cooks; ++c) pause.cooks.push_back(c);
    maker.m_.breaks.push_back(pause);
  }
  std::vector<int> last(static_cast<std::size_t>(cooks), -1);
  for (int block = random.number(4, 18); block > 0; --block) {
    const std::size_t first = maker.m_.activities.size();
    const int cook = random.number(0, cooks - 1);
    int none = -1;
    int& before = random.one_in(3) ? none : last[static_cast<std::size_t>(cook)];
    switch (random.number(0, 4)) {
      case 0:
        add_pan(maker, cook, before);
        break;
      case 1:
        add_kit_over_other_work(maker, cook, before);
        break;
      case 2:
        add_bake(maker, cook, before);
        break;
      case 3:
        add_raw(maker, cook, before, block);
        break;
      default:
        add_plain(maker, cook, before, block);
        break;
    }
    place_block(maker.m_, first, random);
    for (std::size_t i = first; i < maker.m_.activities.size(); ++i)
      if (maker.m_.activities[i].dish != -1 && random.one_in(6))
        maker.m_.activities[i].end_by = end_of(maker.m_.activities[i]) + 60 * random.number(0, 5);
  }
  shut_out(maker.m_);
  sort_orders(maker.m_);
  return maker.m_;
}

std::vector<int> lengths(const PlayModel& model, Random& random) {
  std::vector<int> length;
  for (const PlayActivity& a : model.activities) {
    const int real = a.planned * random.number(50, 200) / 100;
    const bool fixed = a.window != PlayWindow::kNone || random.one_in(3);
    length.push_back(fixed ? a.planned : std::max(model.grid == 1 ? 1 : 20, real));
  }
  return length;
}

}  // namespace random_room
