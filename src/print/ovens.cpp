#include "print/equipment.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "base/index.h"
#include "print/stays.h"

namespace print {
namespace {

using base::at;

bool shares(const Tray& tray, const Stay& stay) {
  return stay.heat->shared_tray && tray.dish == stay.dish && tray.step == stay.step &&
         tray.from == stay.from && tray.to == stay.to &&
         tray.twelfths + stay.heat->shelf_twelfths <= 12;
}

void put_in(OvenUse& oven, const Stay& stay, bool after_break) {
  if (oven.batches.empty() || after_break || oven.batches.back().setting != *stay.setting) {
    oven.batches.push_back({*stay.setting, stay.from, stay.to, {}});
  }
  Batch& batch = oven.batches.back();
  batch.to = std::max(batch.to, stay.to);
  const auto tray = std::find_if(batch.trays.begin(), batch.trays.end(),
                                 [&](const Tray& t) { return shares(t, stay); });
  if (tray != batch.trays.end()) {
    tray->cooks.push_back(stay.cook);
    tray->twelfths += stay.heat->shelf_twelfths;
  } else {
    batch.trays.push_back({stay.dish,
                           stay.step,
                           {stay.cook},
                           stay.from,
                           stay.to,
                           *stay.setting,
                           stay.heat->shelf_twelfths});
  }
}

/// A break that turns ovens off lies between the two moments (rule O6).
bool cooled(const kitchen::Lesson& lesson, const Plan& plan, Seconds from, Seconds to) {
  return std::any_of(plan.tasks.begin(), plan.tasks.end(), [&](const Task& t) {
    if (t.kind != TaskKind::kWindow || t.start < from || t.end > to) return false;
    const kitchen::Window& w = lesson.windows[at(t.window)];
    return w.kind == kitchen::WindowKind::kBreak && !w.ovens_stay_on;
  });
}

KnobTurn knob_before(const kitchen::Lesson& lesson, const Plan& plan, const OvenUse& oven,
                     std::size_t batch) {
  const Batch& next = oven.batches[batch];
  const Seconds before = batch == 0 ? Seconds{0} : oven.batches[batch - 1].to;
  const kitchen::ChangeOver& change = lesson.room.change_over;
  KnobTurn turn;
  turn.to = next.setting;
  if (batch > 0 && !cooled(lesson, plan, before, next.from)) {
    turn.at = before;
    turn.ready = before + base::grid_up(kitchen::change_over(
                              change, oven.batches[batch - 1].setting, next.setting));
    return turn;
  }
  const auto set = std::find_if(
      lesson.ovens.begin(), lesson.ovens.end(),
      [&](const kitchen::OvenAtOpening& o) { return o.cooker == oven.cooker; });
  turn.ready = next.from;
  if (set == lesson.ovens.end() || cooled(lesson, plan, Seconds{0}, next.from)) {
    turn.from_cold = true;
    turn.at = std::max(Seconds{0},
                       next.from - base::grid_up(kitchen::heat_up(change, next.setting)));
    return turn;
  }
  turn.already_on = set->setting == next.setting;
  if (turn.already_on) {
    turn.ready = Seconds{0};
  } else {
    turn.at = std::max(Seconds{0}, next.from - base::grid_up(kitchen::change_over(
                                                   change, set->setting, next.setting)));
  }
  return turn;
}

}  // namespace

std::vector<OvenUse> oven_use(const kitchen::Lesson& lesson, const Plan& plan) {
  std::map<int, OvenUse> ovens;
  for (const Stay& stay : stays(lesson, plan)) {
    if (stay.heat->with == kitchen::HeatKind::kRing || !stay.setting || stay.cooker < 0) continue;
    OvenUse& oven = ovens[stay.cooker];
    oven.cooker = stay.cooker;
    put_in(oven, stay,
           !oven.batches.empty() && cooled(lesson, plan, oven.batches.back().to, stay.from));
  }
  std::vector<OvenUse> out;
  for (auto& [cooker, oven] : ovens) {
    for (std::size_t b = 0; b < oven.batches.size(); ++b)
      oven.knobs.push_back(knob_before(lesson, plan, oven, b));
    out.push_back(std::move(oven));
  }
  return out;
}

std::vector<OvensAlike> ovens_alike(const kitchen::Lesson& lesson,
                                    const std::vector<OvenUse>& ovens) {
  const auto same_batch = [](const Batch& a, const Batch& b) {
    return a.setting == b.setting && a.from == b.from && a.to == b.to &&
           a.trays.size() == b.trays.size() &&
           std::equal(a.trays.begin(), a.trays.end(), b.trays.begin(),
                      [](const Tray& x, const Tray& y) {
                        return x.dish == y.dish && x.from == y.from && x.to == y.to;
                      });
  };
  const auto same = [&](const OvenUse& a, const OvenUse& b) {
    return std::equal(a.batches.begin(), a.batches.end(), b.batches.begin(), b.batches.end(),
                      same_batch) &&
           std::equal(a.knobs.begin(), a.knobs.end(), b.knobs.begin(), b.knobs.end(),
                      [](const KnobTurn& x, const KnobTurn& y) {
                        return x.at == y.at && x.ready == y.ready;
                      });
  };
  const auto own = [&](const OvenUse& oven) {
    return std::all_of(oven.batches.begin(), oven.batches.end(), [&](const Batch& b) {
      return b.trays.size() == 1 && b.trays[0].cooks.size() == 1 &&
             lesson.room.places[at(lesson.cooks[at(b.trays[0].cooks[0])].place)].cookers.front() ==
                 oven.cooker;
    });
  };
  std::vector<OvensAlike> out;
  for (const OvenUse& oven : ovens) {
    auto alike = std::find_if(out.begin(), out.end(),
                              [&](const OvensAlike& o) { return same(o.ovens[0], oven); });
    if (alike == out.end()) alike = out.insert(out.end(), OvensAlike{});
    alike->ovens.push_back(oven);
    alike->own_trays_only = alike->own_trays_only && own(oven);
  }
  return out;
}

std::vector<KnobRound> knob_rounds(const std::vector<OvenUse>& ovens) {
  std::vector<KnobRound> out;
  for (const OvenUse& oven : ovens) {
    for (const KnobTurn& turn : oven.knobs) {
      const auto same = std::find_if(out.begin(), out.end(), [&](const KnobRound& r) {
        return r.turn.at == turn.at && r.turn.to == turn.to && r.turn.ready == turn.ready &&
               r.turn.from_cold == turn.from_cold && r.turn.already_on == turn.already_on;
      });
      if (same != out.end()) {
        same->cookers.push_back(oven.cooker);
      } else {
        out.push_back({turn, {oven.cooker}});
      }
    }
  }
  std::stable_sort(out.begin(), out.end(),
                   [](const KnobRound& a, const KnobRound& b) { return a.turn.at < b.turn.at; });
  return out;
}

std::string knob_words(const kitchen::Lesson& lesson, const KnobRound& round) {
  std::vector<std::string> names;
  for (const int c : round.cookers) names.push_back(lesson.room.cookers[at(c)].name);
  const std::string ovens = (names.size() == 1 ? "oven " : "ovens ") + joined(names);
  const std::string to = setting(round.turn.to);
  if (round.turn.already_on) return fmt::format("{} on at {} before the lesson", ovens, to);
  const std::string ready = kitchen::clock(lesson, round.turn.ready);
  if (round.turn.from_cold) return fmt::format("switch {} on, {}; hot by {}", ovens, to, ready);
  return fmt::format("turn {} to {}; ready by {}", ovens, to, ready);
}

}  // namespace print
