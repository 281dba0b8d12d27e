#include "print/sheets/pictograms.h"

#include <algorithm>
#include <array>

#include "base/text.h"
#include "print/sheets/pictogram_shapes.h"

namespace print::sheets {
namespace {

constexpr std::array kAll = {
    Pictogram::kHands,  Pictogram::kCollect, Pictogram::kWeigh,  Pictogram::kCut,
    Pictogram::kPeel,   Pictogram::kMix,     Pictogram::kRoll,   Pictogram::kPan,
    Pictogram::kStir,   Pictogram::kFry,     Pictogram::kOvenIn, Pictogram::kOvenOut,
    Pictogram::kGrill,  Pictogram::kKettle,  Pictogram::kWait,   Pictogram::kWatch,
    Pictogram::kProbe,  Pictogram::kLook,    Pictogram::kCool,   Pictogram::kFridge,
    Pictogram::kPack,   Pictogram::kServe,   Pictogram::kWipe,   Pictogram::kWashUp,
    Pictogram::kListen, Pictogram::kStep};

struct Verb {
  std::string_view word;
  Pictogram picture;
};
// What a sentence begins with, where neither heat nor kit says more.
constexpr auto kVerbs = std::to_array<Verb>({
    {"add", Pictogram::kMix},     {"arrange", Pictogram::kServe}, {"beat", Pictogram::kMix},
    {"bridge", Pictogram::kCut},  {"chill", Pictogram::kFridge},  {"chop", Pictogram::kCut},
    {"claw", Pictogram::kCut},    {"cool", Pictogram::kCool},     {"crush", Pictogram::kCut},
    {"cut", Pictogram::kCut},     {"dice", Pictogram::kCut},      {"fill", Pictogram::kServe},
    {"fold", Pictogram::kMix},    {"grate", Pictogram::kCut},     {"halve", Pictogram::kCut},
    {"knead", Pictogram::kRoll},  {"ladle", Pictogram::kServe},   {"leave", Pictogram::kWait},
    {"mash", Pictogram::kMix},    {"measure", Pictogram::kWeigh}, {"mix", Pictogram::kMix},
    {"peel", Pictogram::kPeel},   {"pipe", Pictogram::kRoll},     {"plate", Pictogram::kServe},
    {"probe", Pictogram::kProbe}, {"rest", Pictogram::kWait},     {"rinse", Pictogram::kHands},
    {"roll", Pictogram::kRoll},   {"rub", Pictogram::kMix},       {"seed", Pictogram::kCut},
    {"serve", Pictogram::kServe}, {"shape", Pictogram::kRoll},    {"slice", Pictogram::kCut},
    {"spoon", Pictogram::kServe}, {"stir", Pictogram::kMix},      {"swirl", Pictogram::kHands},
    {"wash", Pictogram::kHands},  {"weigh", Pictogram::kWeigh},   {"whip", Pictogram::kMix},
    {"whisk", Pictogram::kMix},   {"wipe", Pictogram::kWipe},     {"wrap", Pictogram::kPack},
});

std::string first_word(std::string_view text) {
  std::size_t end = 0;
  while (end < text.size() && text[end] != ' ' && text[end] != ',') ++end;
  return base::lower(text.substr(0, end));
}

bool has_kit(const kitchen::Step& step, std::string_view what) {
  for (const kitchen::KitNeed& need : step.kit) {
    if (need.item.find(what) != std::string::npos) return true;
  }
  return false;
}

Pictogram heated(const kitchen::Step& step) {
  switch (step.heat->with) {
    case kitchen::HeatKind::kOven:
      return Pictogram::kOvenIn;
    case kitchen::HeatKind::kGrill:
      return Pictogram::kGrill;
    case kitchen::HeatKind::kRing:
      break;
  }
  if (step.hazard == kitchen::Hazard::kHotOil || first_word(step.says) == "fry")
    return Pictogram::kFry;
  return kitchen::hands_on(step.attention) ? Pictogram::kStir : Pictogram::kPan;
}

Pictogram of_step(const kitchen::Lesson& lesson, const Task& task, const kitchen::Step& step) {
  if (step.hazard == kitchen::Hazard::kProbing || has_kit(step, "probe")) return Pictogram::kProbe;
  if (step.closes) {
    const kitchen::Step& hot = lesson.dishes[static_cast<std::size_t>(task.dish)]
                                   .method[static_cast<std::size_t>(*step.closes)];
    if (hot.heat && hot.heat->with != kitchen::HeatKind::kRing) return Pictogram::kOvenOut;
  }
  if (step.heat) return heated(step);
  if (has_kit(step, "kettle")) return Pictogram::kKettle;
  if (step.fridge_tenths > 0 || step.freezer_tenths > 0) return Pictogram::kFridge;
  for (const Verb& verb : kVerbs) {
    if (verb.word == first_word(step.says)) return verb.picture;
  }
  if (has_kit(step, "scales")) return Pictogram::kWeigh;
  if (has_kit(step, "knife") || has_kit(step, "grater")) return Pictogram::kCut;
  if (has_kit(step, "whisk") || has_kit(step, "blender")) return Pictogram::kMix;
  if (step.attention == kitchen::Attention::kLeave) return Pictogram::kWait;
  if (!kitchen::hands_on(step.attention)) return Pictogram::kWatch;
  return Pictogram::kStep;
}

}  // namespace

std::span<const Pictogram> all_pictograms() { return kAll; }

std::string_view word(Pictogram picture) {
  switch (picture) {
    case Pictogram::kHands:
      return "wash";
    case Pictogram::kCollect:
      return "collect";
    case Pictogram::kWeigh:
      return "weigh";
    case Pictogram::kCut:
      return "cut";
    case Pictogram::kPeel:
      return "peel";
    case Pictogram::kMix:
      return "mix";
    case Pictogram::kRoll:
      return "roll and shape";
    case Pictogram::kPan:
      return "in the pan";
    case Pictogram::kStir:
      return "stir in the pan";
    case Pictogram::kFry:
      return "fry";
    case Pictogram::kOvenIn:
      return "in the oven";
    case Pictogram::kOvenOut:
      return "out of the oven";
    case Pictogram::kGrill:
      return "under the grill";
    case Pictogram::kKettle:
      return "kettle";
    case Pictogram::kWait:
      return "wait";
    case Pictogram::kWatch:
      return "watch";
    case Pictogram::kProbe:
      return "probe";
    case Pictogram::kLook:
      return "stop for the look";
    case Pictogram::kCool:
      return "cool";
    case Pictogram::kFridge:
      return "fridge";
    case Pictogram::kPack:
      return "lid and label";
    case Pictogram::kServe:
      return "serve";
    case Pictogram::kWipe:
      return "wipe down";
    case Pictogram::kWashUp:
      return "wash up";
    case Pictogram::kListen:
      return "look and listen";
    case Pictogram::kStep:
      break;
  }
  return "hands";
}

Pictogram pictogram(const kitchen::Lesson& lesson, const Task& task) {
  switch (task.kind) {
    case TaskKind::kApronAndHands:
    case TaskKind::kHandWash:
      return Pictogram::kHands;
    case TaskKind::kCollectIngredients:
    case TaskKind::kCollectEquipment:
      return Pictogram::kCollect;
    case TaskKind::kCleanDown:
      return Pictogram::kWipe;
    case TaskKind::kKitWash:
    case TaskKind::kFullClean:
    case TaskKind::kWashUp:
      return Pictogram::kWashUp;
    case TaskKind::kLook:
    case TaskKind::kBayLook:
    case TaskKind::kKnivesOut:
    case TaskKind::kKnivesIn:
      return Pictogram::kLook;
    case TaskKind::kStore:
    case TaskKind::kTakeOutOfStore:
      return Pictogram::kFridge;
    case TaskKind::kPack:
      return Pictogram::kPack;
    case TaskKind::kWindow:
      return Pictogram::kListen;
    case TaskKind::kStep:
      break;
  }
  const kitchen::Step* step = step_of(lesson, task);
  return step == nullptr ? Pictogram::kStep : of_step(lesson, task, *step);
}

void draw_pictogram(Canvas& c, Pictogram picture, const Box& box) {
  const double side = std::min(box.w, box.h);
  const Box square{box.x + (box.w - side) / 2, box.y + (box.h - side) / 2, side, side};
  const Shapes shapes = shapes_of(picture);
  for (const Path& path : shapes.solid) c.fill_in(square, path);
  for (const Path& path : shapes.white) c.fill_in(square, path, 1);
  for (const Path& path : shapes.lines) c.stroke_in(square, path, side * 0.035);
}

}  // namespace print::sheets
