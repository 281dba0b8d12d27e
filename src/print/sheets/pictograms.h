// Pictures of what hands do in a kitchen, drawn for this program out of lines and curves: a knife
// at a board, scales, a bowl and spoon ... Each stands in a square and is told by its shape alone,
// and its word always stands beside it.
#pragma once

#include <span>

#include "print/facts.h"
#include "print/sheets/page.h"

namespace print::sheets {

enum class Pictogram {
  kHands,  ///< wash hands
  kCollect,
  kWeigh,
  kCut,
  kPeel,
  kMix,
  kRoll,
  kPan,
  kStir,
  kFry,
  kOvenIn,
  kOvenOut,
  kGrill,
  kKettle,
  kWait,
  kWatch,
  kProbe,
  kLook,
  kCool,
  kFridge,
  kPack,
  kServe,
  kWipe,
  kWashUp,
  kListen,
  kStep,  ///< none of the others: an open hand
};
std::span<const Pictogram> all_pictograms();
std::string_view word(Pictogram);
/// From the kind of task, its heat and kit, then the verb its sentence begins with.
Pictogram pictogram(const kitchen::Lesson&, const Task&);
/// Inside the box, as large as its shorter side.
void draw_pictogram(Canvas&, Pictogram, const Box&);

}  // namespace print::sheets
