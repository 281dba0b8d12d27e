// A plan as the room plays it: flat activities, what they take, and who waits for whom. Made from a
// lesson's network and plan by play_model_of (chance.h), or by hand in tests; knows nothing of
// dishes or cooks' names.
//
// Example: "softening, cook 3, a glance, planned at 600 s for 300 s, opens the pan's ring" is one
// PlayActivity and one PlaySpan. All times are whole seconds since the lesson opens (rule T1).
#pragma once

#include <limits>
#include <vector>

namespace timeplan {

inline constexpr int kNever = std::numeric_limits<int>::max();

/// So much of one shared thing.
struct PlayUse {
  int resource = 0;
  int amount = 1;
};

/// One way of doing it; everything in it is taken together (rule D4).
struct PlayWay {
  std::vector<PlayUse> uses;
  int end_by = kNever;  ///< an adult who leaves: not begun when its planned length ends later
};

/// A change of what there is, by the clock: an adult comes or goes, one person of a cook is away.
struct PlayChange {
  int at = 0;
  int by = 0;
};

struct PlayResource {
  int capacity = 1;
  std::vector<PlayChange> changes;
};

struct PlayCook {
  int people = 1;
  std::vector<PlayChange> people_changes;  ///< rule Y9
};

/// An oven with a knob. Settings are numbers 0 to settings - 1; 0 is cold when `cold_is_zero`
/// matters (breaks).
struct PlayOven {
  int twelfths = 24;
  int settings = 1;
  int opening = 0;
  std::vector<int> change;  ///< [from * settings + to] seconds
};

enum class PlayWindow : signed char { kNone, kHandsOff, kStop };

struct PlayActivity {
  int cook = -1;          ///< -1: of the whole room
  int dish = -1;          ///< what is given up together; -1 none
  int attention = 0;      ///< tenths over all its people
  int busy = 0;           ///< halves of a person (rule A3)
  bool hands_on = false;  ///< attention 5 and more for each person
  int planned_start = 0;
  int planned = 0;  ///< planned length
  int earliest = 0;
  int latest_start = kNever;  ///< later is a quality fault (a sitting's end)
  int end_by = kNever;        ///< a ban: not begun when its planned length ends later (rule D8)
  int due = kNever;           ///< success asks that it has ended by then
  bool finish = false;        ///< counts for the cook's finish
  bool closing = false;       ///< urgent when ready (rule D3)
  bool cleaning = false;      ///< done even when the dish is given up
  bool heated = false;        ///< paused by a break
  bool in_break = false;      ///< may run in a break (rule W3)
  int longest = 0;            ///< elastic (rule D9): over-cooked beyond this; 0 = not elastic
  PlayWindow window = PlayWindow::kNone;
  std::vector<int> audience;  ///< windows: cooks
  std::vector<PlayWay> ways;  ///< the planned one first; empty = needs nothing shared
  int door_shut = 0;  ///< from its start, the door of the oven of span `door_span` (rule O7)
  int door_span = -1;
  int together = -1;    ///< activities of one number start at one moment (rule Y7)
  int void_after = -1;  ///< not needed any more once that activity has started
  bool calls = false;   ///< may raise a hand (7.7): no adult is beside it already
};

/// least <= moment(to) - moment(from) <= most.
struct PlayWait {
  int from = 0;
  bool from_end = true;
  int to = 0;
  bool to_end = false;
  int least = 0;  ///< negative: asks nothing
  int most = kNever;
  bool safety = false;
};

/// Held from the start of one activity to the start or end of another.
struct PlaySpan {
  int opens = 0;
  int closes = 0;  ///< -1: held to the end of the lesson
  bool closes_at_end = true;
  std::vector<PlayWay> ways;  ///< the planned one first
  int oven = -1;              ///< a tray: its planned oven, setting and share of a shelf
  int setting = 0;
  int twelfths = 0;
  std::vector<int> shuts_out;  ///< of the same cook: may not run meanwhile (rule H5)
};

/// Keeps the planned order strictly (rule D7): a place, a kit unit that allergens concern.
struct PlayOrder {
  std::vector<int> activities;
  std::vector<int> classes;  ///< equal classes may overlap; -1 overlaps nothing
};

struct PlayBreak {
  int from = 0;
  int to = 0;
  std::vector<int> cooks;
  bool ovens_stay_on = false;
};

/// Everything a run needs besides its luck. Indices point into the vectors of this model.
struct PlayModel {
  std::vector<PlayCook> cooks;
  std::vector<PlayResource> resources;
  std::vector<PlayOven> ovens;
  std::vector<PlayActivity> activities;
  std::vector<PlayWait> waits;
  std::vector<PlaySpan> spans;
  std::vector<PlayOrder> orders;
  std::vector<PlayBreak> breaks;
  std::vector<int> helpers;  ///< resources that answer a raised hand, in order of preference
  int help_amount = 50;
  int grid = 60;              ///< the plan's step, for the left-shift test (rule D2)
  int patience_own = 180;     ///< D3
  int patience_oven = 300;    ///< D6
  int patience_window = 300;  ///< D8
  int urgent_within = 120;    ///< D3
  bool mind_windows = false;  ///< hands-on steps that by the plan's minutes would run into a window
                              ///< wait for it
};

}  // namespace timeplan
