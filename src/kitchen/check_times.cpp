// What is tied to the clock: adults, windows, bans, sittings, dishes over two lessons.
#include <algorithm>

#include "kitchen/check_parts.h"

namespace kitchen {
namespace {

std::string span(const Lesson& lesson, Seconds from, Seconds to) {
  return say("from ", clock(lesson, from), " to ", clock(lesson, to));
}

void check_adults(const Lesson& lesson, Problems& problems) {
  if (lesson.adults.empty()) {
    add(problems, "lesson.no_adults", "/adults", "The lesson has no adult.",
        "List at least one adult, or leave the entry out for one teacher.");
    return;
  }
  const auto leaders = std::count_if(lesson.adults.begin(), lesson.adults.end(),
                                     [](const Adult& a) { return a.leads; });
  if (leaders != 1) {
    add(problems, "lesson.one_adult_leads", "/adults",
        say(leaders == 0 ? std::string("No adult leads") : say(leaders, " adults lead"),
            " this lesson; one must."),
        "Add \"leads\": true to one adult, and to no other.");
  }
  for (std::size_t a = 0; a < lesson.adults.size(); ++a) {
    const Adult& adult = lesson.adults[a];
    if (adult.from < adult.to && adult.from >= Seconds{0} && adult.to <= lesson.bell) continue;
    add(problems, "lesson.adult_not_there", place_in("adults", a),
        say(in_quotes(adult.name), " is there ", span(lesson, adult.from, adult.to),
            "; the lesson runs ", span(lesson, Seconds{0}, lesson.bell), "."),
        "Write a start and a later end inside the lesson.");
  }
}

void check_window(const Lesson& lesson, std::size_t w, Problems& problems) {
  const Window& window = lesson.windows[w];
  const std::string where = place_in("windows", w);
  const std::string what = say("The window ", in_quotes(window.name));
  if (window.latest < window.earliest) {
    add(problems, "lesson.window_latest_first", where,
        say(what, " starts at ", clock(lesson, window.earliest), " or later, but at ",
            clock(lesson, window.latest), " at the latest."),
        "Make the latest start the later of the two.");
  } else if (window.earliest < Seconds{0} || window.latest + window.length > lesson.bell) {
    add(problems, "lesson.window_outside", where,
        say(what, " may run until ", clock(lesson, window.latest + window.length),
            " and starts at ", clock(lesson, window.earliest), " or later; the lesson runs ",
            span(lesson, Seconds{0}, lesson.bell), "."),
        "Move it inside the lesson.");
  } else if (base::grid_up(window.earliest) > base::grid_down(window.latest)) {
    add(problems, "lesson.window_between_minutes", where,
        say(what, " could start only between two whole minutes, from ",
            clock(lesson, window.earliest), " to ", clock(lesson, window.latest), "."),
        "Write its start on a whole minute.");
  }
  const bool is_break = window.kind == WindowKind::kBreak;
  if (is_break && window.led_by)
    add(problems, "lesson.break_is_led", below(where, "led_by"),
        say(what, " is a break, and breaks are led by nobody."),
        "Take the adult out, or make it a hands-off window.");
  if (!is_break && window.ovens_stay_on)
    add(problems, "lesson.ovens_only_in_breaks", below(where, "ovens_stay_on"),
        say(what, " is not a break, so its ovens stay on anyway."), "Take the entry out.");
  if (window.kind == WindowKind::kStop && window.after.empty() && window.before.empty()) {
    add(problems, "lesson.stop_without_steps", where,
        say(what, " is a stop, and it does not say after or before which step."),
        "Name a step in after or before.");
  }
  const bool sound = window.earliest <= window.latest && window.earliest >= Seconds{0} &&
                     window.latest + window.length <= lesson.bell;
  if (window.led_by && sound) {
    const Adult& leader = lesson.adults[static_cast<std::size_t>(*window.led_by)];
    if (std::max(window.earliest, leader.from) >
        std::min(window.latest, leader.to - window.length)) {
      add(problems, "lesson.leader_away", below(where, "led_by"),
          say(what, " is led by ", in_quotes(leader.name), ", who is there only ",
              span(lesson, leader.from, leader.to), "."),
          "Let another adult lead it, or move it.");
    }
  }
  const auto stays = [&](const Adult& a) {
    return a.from <= window.earliest && a.to >= window.latest + window.length;
  };
  if (is_break && window.ovens_stay_on &&
      std::none_of(lesson.adults.begin(), lesson.adults.end(), stays)) {
    add(problems, "lesson.nobody_stays", where,
        say(what, " leaves ovens on, and no adult is there the whole time."),
        "Name an adult who is there from its start to its end, or let the ovens be switched off.");
  }
}

bool meet(const std::vector<int>& one, const std::vector<int>& two) {
  if (one.empty() || two.empty()) return true;  // everyone
  return std::any_of(one.begin(), one.end(),
                     [&](int c) { return std::find(two.begin(), two.end(), c) != two.end(); });
}

void check_overlaps(const Lesson& lesson, Problems& problems) {
  for (std::size_t b = 0; b < lesson.windows.size(); ++b) {
    for (std::size_t a = 0; a < b; ++a) {
      const Window& one = lesson.windows[a];
      const Window& two = lesson.windows[b];
      // Always together, wherever each is put in its range.
      const bool overlap = one.latest < two.earliest + two.length &&
                           two.latest < one.earliest + one.length;
      const bool same_leader = one.led_by && one.led_by == two.led_by;
      if (!overlap || (!meet(one.audience, two.audience) && !same_leader)) continue;
      add(problems, "lesson.windows_overlap", place_in("windows", b),
          say("The windows ", in_quotes(one.name), " and ", in_quotes(two.name),
              " cannot both be kept: they overlap however they are moved."),
          "Give them different times.");
    }
  }
}

void check_pins(const Lesson& lesson, Problems& problems) {
  for (std::size_t p = 0; p < lesson.pins.size(); ++p) {
    const Pin& pin = lesson.pins[p];
    const Dish& dish = dish_at(lesson, pin.step.dish);
    const std::string what = say("The step ",
                                 in_quotes(dish.method[static_cast<std::size_t>(pin.step.step)].id),
                                 " of ", dish_name(dish));
    const std::string where = place_in("pins", p);
    if (pin.at < Seconds{0} || pin.at >= lesson.bell)
      add(problems, "lesson.pin_outside", where,
          say(what, " is pinned to ", clock(lesson, pin.at), "; the lesson runs ",
              span(lesson, Seconds{0}, lesson.bell), "."),
          "Pin it to a time inside the lesson, or take the pin off.");
    if (!steps_done(lesson, pin.step.dish)[static_cast<std::size_t>(pin.step.step)])
      add(problems, "lesson.pin_other_half", where,
          say(what, " is pinned, and this lesson does the other half of the dish."),
          "Take the pin off.");
    for (std::size_t c = 0; c < lesson.cooks.size(); ++c) {
      const int first = pin_of(lesson, static_cast<int>(c), pin.step);
      const bool theirs = pin.cooks.empty() || std::find(pin.cooks.begin(), pin.cooks.end(),
                                                         static_cast<int>(c)) != pin.cooks.end();
      if (!theirs || first < 0 || first == static_cast<int>(p)) continue;
      add(problems, "lesson.pinned_twice", where,
          say(what, " is pinned twice for ", in_quotes(lesson.cooks[c].name), "."),
          "Keep one of the pins.");
      break;
    }
  }
}

void check_bans(const Lesson& lesson, Problems& problems) {
  for (std::size_t i = 0; i < lesson.bans.size(); ++i) {
    const Ban& ban = lesson.bans[i];
    if (ban.after >= Seconds{0} && ban.after <= lesson.bell) continue;
    add(problems, "lesson.ban_outside", place_in("bans", i),
        say("The ban on ", in_quotes(word(ban.hazard)), " after ", clock(lesson, ban.after),
            " lies outside the lesson."),
        "Write a time inside the lesson.");
  }
}

bool put_away(const Lesson& lesson, int dish) {
  return std::any_of(lesson.carry.begin(), lesson.carry.end(),
                     [dish](const CarryOver& c) { return c.dish == dish && !c.second_half; });
}

void check_sittings(const Lesson& lesson, Problems& problems) {
  for (std::size_t q = 0; q < lesson.sittings.size(); ++q) {
    const Sitting& sitting = lesson.sittings[q];
    if (sitting.earliest >= Seconds{0} &&
        base::grid_up(sitting.earliest) <= base::grid_down(sitting.latest) &&
        sitting.latest <= lesson.bell)
      continue;
    add(problems, "lesson.sitting_outside", place_in("sittings", q),
        say(in_quotes(sitting.name), " is ", span(lesson, sitting.earliest, sitting.latest),
            "; it must lie inside the lesson, ", span(lesson, Seconds{0}, lesson.bell), "."),
        "Write a start and a later end inside the lesson.");
  }
  if (lesson.purpose == Purpose::kTakeHome && lesson.sittings.empty()) return;
  for (const int d : dishes_cooked(lesson)) {
    if (put_away(lesson, d)) continue;
    const auto serves = [d](const Sitting& s) {
      return s.dishes.empty() || std::find(s.dishes.begin(), s.dishes.end(), d) != s.dishes.end();
    };
    const auto n = std::count_if(lesson.sittings.begin(), lesson.sittings.end(), serves);
    if (n == 0)
      add(problems, "lesson.dish_not_served", "/sittings",
          say("No sitting serves ", dish_name(dish_at(lesson, d)), "."), "Add it to a sitting.");
    if (n > 1)
      add(problems, "lesson.dish_served_twice", "/sittings",
          say(dish_name(dish_at(lesson, d)), " is served in ", n, " sittings."), "Keep it in one.");
  }
}

void check_carry(const Lesson& lesson, Problems& problems) {
  for (std::size_t i = 0; i < lesson.carry.size(); ++i) {
    const auto same = [&](const CarryOver& c) { return c.dish == lesson.carry[i].dish; };
    const auto first = std::find_if(lesson.carry.begin(), lesson.carry.end(), same);
    if (first - lesson.carry.begin() == static_cast<std::ptrdiff_t>(i)) continue;
    add(problems, "lesson.carried_twice", place_in("carry", i),
        say("The dish ", dish_name(dish_at(lesson, lesson.carry[i].dish)),
            " is carried over twice."),
        "A lesson does one half of a dish; keep one entry.");
  }
}

}  // namespace

void check_times(const Lesson& lesson, Problems& problems) {
  if (lesson.check_out >= lesson.bell) {
    add(problems, "lesson.check_out_too_long", "/check_out_minutes",
        say("Checking out takes ", base::minutes_text(lesson.check_out), " of a lesson of ",
            base::minutes_text(lesson.bell), "."),
        "Keep fewer minutes for it.");
  }
  check_adults(lesson, problems);
  for (std::size_t w = 0; w < lesson.windows.size(); ++w) check_window(lesson, w, problems);
  check_overlaps(lesson, problems);
  check_pins(lesson, problems);
  check_bans(lesson, problems);
  check_sittings(lesson, problems);
  check_carry(lesson, problems);
}

}  // namespace kitchen
