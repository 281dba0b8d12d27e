// One change to a lesson in a teacher's words: "close cooker B1", "Aisha and Ben are away 10:20 to
// 10:50", "look at the dough before it is rolled". A document in, a document out; nothing is
// planned here.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/problem.h"
#include "kitchen/read.h"

namespace desk {

enum class ChangeKind : std::int8_t {
  kRemedy,       ///< `code` of a remedy that was offered
  kPace,         ///< `cook`, `pace`
  kAway,         ///< `cook`, `from`, `to`: one person of the cook is out
  kNotHere,      ///< `cook`: not there today; with more than one person, one of them
  kSwap,         ///< `cook`, `other` change places
  kPin,          ///< `cook`, `place`: moves there and stays when seats are dealt again
  kCloseCooker,  ///< `cooker` is not used
  kMoveWindow,   ///< `window`, `from`, and `minutes` if its length changes
  kAddStop,      ///< everybody stops before `dish` `step`, for `minutes`
  kAddGate,      ///< the adult looks for `look_for` after `dish` `step`, `minutes` each
  kPinStep,      ///< `dish` `step` starts at `from`, for `cooks` (none: everybody who makes it)
  kUnpinStep,    ///< `dish` `step` starts when it can, for `cooks` (none: everybody)
  kBell,         ///< `from` and/or `to`
  kPurpose,      ///< `purpose`
  kDish,         ///< `cook` makes `dish` ("scones: no dairy"): that version of it, or, of one dish,
                 ///< another
};

/// By its word: "close cooker".
std::optional<ChangeKind> change_kind(std::string_view word);

struct LessonChange {
  ChangeKind kind = ChangeKind::kPace;
  std::string code, cook, other, from, to, cooker, window, dish, step, look_for, place, purpose;
  std::vector<std::string> cooks;
  double pace = 1;
  double minutes = 0;  ///< 0 = not said
};

struct Changed {
  std::string text;        ///< the lesson's document
  std::string says;        ///< for the history: "Cooker B1 is closed."
  kitchen::Lesson lesson;  ///< what `text` says
};

/// `text` is a lesson's document named `file`; rooms and dishes it names come through the loader.
/// What a change touches is written into the lesson itself, so the room and the dish stay as they
/// are for everybody else. The result has been read and checked whole.
/// Errors: change.*, whose `where` points into the change that was asked for ("/cook"), room.* with
///         "/cooker", and those of kitchen::read_lesson(), which point into the changed document.
base::Result<Changed> changed(std::string_view text, const std::string& file,
                              const kitchen::Loader&, const LessonChange&);

}  // namespace desk
