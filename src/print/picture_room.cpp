// Below the places: ovens as hills, rings and sinks as counts, and the adults' thread through the
// bays.
#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "base/index.h"

#include "print/picture_parts.h"

namespace print {
namespace {

using base::at;

constexpr double kHill = 26;  ///< height of a strip
constexpr double kCold = 20;  ///< degrees of a cold kitchen
constexpr double kHottest = 260;

double height(double celsius) {
  return (kHill - 5) * std::clamp((celsius - kCold) / (kHottest - kCold), 0.0, 1.0);
}

std::vector<std::pair<double, double>> hill(const Frame& frame, const OvenUse& oven, double base) {
  std::vector<std::pair<double, double>> corners;
  const int cools = std::max(1, frame.lesson.room.change_over.cool_degrees_per_minute);
  const auto cooling = [&](int celsius) { return base::minutes((celsius - 20) / cools); };
  for (std::size_t i = 0; i < oven.batches.size(); ++i) {
    const Batch& batch = oven.batches[i];
    const KnobTurn& knob = oven.knobs[i];
    const double top = base - height(batch.setting.celsius);
    if (i > 0 && knob.from_cold) {
      corners.push_back(
          {frame.x(std::min(knob.at,
                            oven.batches[i - 1].to + cooling(oven.batches[i - 1].setting.celsius))),
           base});
    }
    if (i == 0 || knob.from_cold)
      corners.push_back({frame.x(knob.at), knob.already_on ? top : base});
    corners.push_back({frame.x(knob.ready), top});
    corners.push_back({frame.x(batch.to), top});
  }
  const Batch& last = oven.batches.back();
  corners.push_back({frame.x(last.to + cooling(last.setting.celsius)), base});
  if (oven.knobs.front().already_on) corners.push_back({frame.x(Seconds{0}), base});
  return corners;
}

/// Moments at which every shelf of the oven is taken.
std::vector<std::pair<Seconds, Seconds>> full(const kitchen::Lesson& lesson, const OvenUse& oven) {
  std::vector<std::pair<Seconds, int>> changes;
  for (const Batch& batch : oven.batches) {
    for (const Tray& tray : batch.trays) {
      changes.push_back({tray.from, tray.twelfths});
      changes.push_back({tray.to, -tray.twelfths});
    }
  }
  std::sort(changes.begin(), changes.end());  // at one moment trays come out before others go in
  const int room = 12 * lesson.room.cookers[at(oven.cooker)].shelves;
  std::vector<std::pair<Seconds, Seconds>> out;
  int used = 0;
  for (const auto& [when, change] : changes) {
    const bool before = used >= room;
    used += change;
    if (used >= room && !before) out.push_back({when, when});
    if (before && used < room) out.back().second = when;
  }
  std::erase_if(out, [](const auto& s) { return s.first == s.second; });
  return out;
}

std::string hill_words(const kitchen::Lesson& lesson, const OvensAlike& alike) {
  std::vector<std::string> names, batches;
  for (const OvenUse& oven : alike.ovens)
    names.push_back(lesson.room.cookers[at(oven.cooker)].name);
  for (const Batch& batch : alike.ovens.front().batches) {
    batches.push_back(fmt::format("{} {}, {}", span(lesson, batch.from, batch.to),
                                  setting(batch.setting),
                                  counted(static_cast<int>(batch.trays.size()), "tray", "trays")));
  }
  return (names.size() == 1 ? "Oven " : "Ovens ") + joined(names) + ": " +
         joined(batches, "; then ");
}

void draw_trays(Frame& frame, const OvenUse& oven, double base) {
  std::vector<Seconds> lanes;
  for (const Batch& batch : oven.batches) {
    for (const Tray& tray : batch.trays) {
      std::size_t lane = 0;
      while (lane < lanes.size() && lanes[lane] > tray.from) ++lane;
      if (lane == lanes.size()) lanes.push_back(tray.to);
      lanes[lane] = tray.to;
      const double y = base - 3 - 3.6 * static_cast<double>(std::min<std::size_t>(lane, 4));
      frame.body.line(frame.x(tray.from), y, frame.x(tray.to), y,
                      "l" + frame.ink(tray.dish).substr(1));
    }
  }
}

void draw_hill(Frame& frame, const OvensAlike& alike) {
  const OvenUse& oven = alike.ovens.front();
  const double base = frame.y + kHill;
  std::vector<std::string> names;
  for (const OvenUse& o : alike.ovens)
    names.push_back(frame.lesson.room.cookers[at(o.cooker)].name);
  frame.body.open("bar", hill_words(frame.lesson, alike), R"(tabindex="0" role="img")");
  frame.body.text(44, base - 4, shortened(joined(names), 18), "s11 b");
  frame.body.path(hill(frame, oven, base), true, "oven");
  draw_trays(frame, oven, base);
  for (std::size_t i = 0; i < oven.batches.size(); ++i) {
    const std::string when = (oven.knobs[i].already_on
                                  ? ""
                                  : kitchen::clock(frame.lesson, oven.knobs[i].at) + " ") +
                             setting(oven.batches[i].setting);
    const double x = frame.x(oven.knobs[i].at);
    const double need = text_width(when, 11, true) + 4;
    const bool room_before = i == 0 && x - need > frame.left;
    const double y = i == 0 ? base - 4 : frame.y + 8;
    frame.body.text(room_before ? x - 4 : x + 3, i == 0 && !room_before ? frame.y + 9 : y, when,
                    "s11 b", room_before ? "end" : "start");
  }
  for (const auto& [from, to] : full(frame.lesson, oven)) {
    frame.body.line(frame.x(from), frame.y + 3, frame.x(from), base, "full");
    frame.body.line(frame.x(to), frame.y + 3, frame.x(to), base, "full");
    frame.body.text(frame.x(to) + 4, base - 8, "full to " + kitchen::clock(frame.lesson, to),
                    "s11 b bad");
  }
  frame.body.line(44, base, frame.right, base, "rule");
  frame.body.close();
  frame.y += kHill + 3;
}

void draw_count(Frame& frame, const std::string& name, const Usage& use, int there) {
  const double tall = 24;
  const double base = frame.y + tall;
  const double scale = (tall - 3) / std::max(1, std::max(there, use.most));
  std::string words = fmt::format("{}: {} of {} at most", name, use.most, there);
  if (use.most > 0) words += ", " + span(frame.lesson, use.most_from, use.most_to);
  frame.body.open("bar", words, R"(tabindex="0" role="img")");
  frame.body.text(18, base - 5, name, "h s14");
  frame.body.text(frame.left - 8, base - 5, fmt::format("of {}", there), "q", "end");
  std::vector<std::pair<double, double>> corners{{frame.left, base}};
  double level = base;
  for (const Count& count : use.counts) {
    corners.push_back({frame.x(count.from), level});
    level = base - scale * count.in_use;
    corners.push_back({frame.x(count.from), level});
  }
  corners.push_back({corners.back().first, base});
  frame.body.path(corners, true, "count");
  frame.body.line(frame.left, base - scale * there, frame.right, base - scale * there, "dash");
  if (use.most > 0) {
    const double middle = (frame.x(use.most_from) + frame.x(use.most_to)) / 2;
    frame.body.text(middle, base - 3, std::to_string(use.most), "b", "middle");
  }
  frame.body.line(44, base, frame.right, base, "rule");
  frame.body.close();
  frame.y += tall + 4;
}

/// Thin where they walk: they stay until two minutes before the next visit.
template <class Height>
void draw_walk(Frame& frame, const std::vector<Stand>& all, Height y_of, bool hollow) {
  std::vector<Visit> visits;
  for (const Stand& s : all) visits.insert(visits.end(), s.visits.begin(), s.visits.end());
  std::stable_sort(visits.begin(), visits.end(),
                   [](const Visit& a, const Visit& b) { return a.from < b.from; });
  std::vector<std::pair<double, double>> walk;
  Seconds free{0};
  for (const Visit& v : visits) {
    if (!walk.empty() && v.from < free) continue;  // seen from the same spot
    if (!walk.empty())
      walk.push_back({frame.x(std::max(free, v.from - base::minutes(2))), walk.back().second});
    walk.push_back({frame.x(v.from), y_of(v.bay)});
    walk.push_back({frame.x(v.to), y_of(v.bay)});
    free = v.to;
  }
  if (!walk.empty()) frame.body.path(walk, false, hollow ? "walk dash" : "walk");
}

/// The thread of one adult: heavy where they stand, thin where they walk, a tick before it where
/// they must be there.
void draw_thread(Frame& frame, int adult, bool hollow) {
  const kitchen::Adult& who = frame.lesson.adults[at(adult)];
  const double step = 10;
  const double top = frame.y + 7;
  const auto y_of = [&](int bay) { return top + step * (bay + 1); };
  frame.body.text(18, top + 10, shortened(who.name, 16), "h s14");
  frame.body.text(frame.left - 6, top + 4, "front", "s11 q", "end");
  for (int b = 0; at(b) < frame.lesson.room.bays.size(); ++b) {
    frame.body.text(frame.left - 6, y_of(b) + 4, shortened(frame.lesson.room.bays[at(b)].name, 3),
                    "s11 q", "end");
  }
  const std::vector<Stand> all = stands(frame.lesson, *frame.answer.plan, adult);
  draw_walk(frame, all, y_of, hollow);
  const double foot = top + step * static_cast<double>(frame.lesson.room.bays.size()) + 18;
  std::array<double, 2> said_until{0, 0};
  for (const Stand& s : all) {
    frame.body.open(
        "bar",
        who.name + ": " + span(frame.lesson, s.from, s.to) + ", " + stand_words(frame.lesson, s),
        R"(tabindex="0" role="img")");
    for (const Visit& v : s.visits) {
      const double x = frame.x(v.from);
      if (s.hazard) frame.body.line(x - 3, y_of(v.bay) - 6, x - 3, y_of(v.bay) + 6, "must");
      frame.body.line(x, y_of(v.bay), std::max(frame.x(v.to), x + 3), y_of(v.bay), "stand");
      if (hollow)
        frame.body.line(x + 1, y_of(v.bay), std::max(frame.x(v.to), x + 3) - 1, y_of(v.bay),
                        "two stand");
    }
    const std::string word = kitchen::clock(frame.lesson, s.from) + " " +
                             shortened(s.why.substr(0, s.why.find(':')), 22);
    const double x_bell = frame.x(frame.lesson.bell);
    double x = std::min(frame.x(s.from), frame.right - text_width(word, 11) - 2);
    if (x < x_bell && x + text_width(word, 11) > x_bell - 6) x = x_bell - 6 - text_width(word, 11);
    const std::size_t level = x > said_until[0] ? 0 : 1;
    if (x > said_until[level]) {
      frame.body.text(x, foot + 13 * static_cast<double>(level), word, "s11");
      said_until[level] = x + text_width(word, 11) + 6;
    }
    frame.body.close();
  }
  frame.y = foot + (said_until[1] > 0 ? 21 : 8);
}

}  // namespace

void draw_ovens(Frame& frame) {
  const std::vector<OvensAlike> ovens = ovens_alike(frame.lesson,
                                                    oven_use(frame.lesson, *frame.answer.plan));
  if (ovens.empty()) return;
  frame.body.line(18, frame.y, frame.right, frame.y, "ink");
  frame.y += 4;
  frame.body.text(18, frame.y + 14, "Ovens", "h s14");
  frame.body.text(72, frame.y + 14, "height is heat", "q s11");
  frame.y += 6;
  for (const OvensAlike& alike : ovens) {
    if (&alike == &ovens.front()) frame.y += 12;
    draw_hill(frame, alike);
  }
  frame.y += 2;
}

void draw_counts(Frame& frame) {
  draw_count(frame, "Rings", ring_use(frame.lesson, *frame.answer.plan),
             rings_in_room(frame.lesson));
  draw_count(frame, "Sinks", sink_use(frame.lesson, *frame.answer.plan),
             sinks_in_room(frame.lesson));
}

void draw_adults(Frame& frame) {
  frame.body.line(18, frame.y, frame.right, frame.y, "ink");
  frame.y += 2;
  bool first = true;
  for (int a = 0; at(a) < frame.lesson.adults.size(); ++a) {
    if (stands(frame.lesson, *frame.answer.plan, a).empty()) continue;
    draw_thread(frame, a, !first);
    first = false;
  }
}

}  // namespace print
