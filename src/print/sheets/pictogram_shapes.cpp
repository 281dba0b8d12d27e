// One function a picture: coordinates of lines and curves, nothing else, which is why the file is
// long.
#include "print/sheets/pictogram_shapes.h"

namespace print::sheets {
namespace {

Path box(double x, double y, double w, double h) {
  return Path().move(x, y).line(x + w, y).line(x + w, y + h).line(x, y + h).close();
}
Path stroke(double x1, double y1, double x2, double y2) { return Path().move(x1, y1).line(x2, y2); }
Path drop(double x, double y, double size) {
  return Path()
      .move(x, y)
      .curve(x + size * 0.3, y + size * 0.5, x + size * 0.5, y + size * 0.7, x + size * 0.5,
             y + size)
      .curve(x + size * 0.5, y + size * 1.6, x - size * 0.5, y + size * 1.6, x - size * 0.5,
             y + size)
      .curve(x - size * 0.5, y + size * 0.7, x - size * 0.3, y + size * 0.5, x, y)
      .close();
}
Path steam(double x, double y) {
  return Path().move(x, y).curve(x - 7, y - 7, x + 7, y - 13, x, y - 20);
}
/// A hand seen from the side: four fingers together and a thumb.
Path flat_hand(double x, double y) {
  return Path()
      .move(x, y)
      .curve(x + 14, y - 8, x + 34, y - 8, x + 50, y - 2)
      .curve(x + 56, y + 1, x + 54, y + 8, x + 48, y + 8)
      .line(x + 28, y + 9)
      .curve(x + 24, y + 16, x + 8, y + 17, x, y + 14)
      .close();
}
Path bowl() { return Path().move(12, 46).line(88, 46).curve(88, 92, 12, 92, 12, 46).close(); }
Path pan() {
  return Path().move(14, 50).line(70, 50).line(68, 80).curve(68, 85, 16, 85, 16, 80).close();
}
Path pan_handle() { return Path().move(70, 55).line(98, 50).line(98, 57).line(70, 62).close(); }
Path clock_face() { return Path().arc(50, 52, 36); }
Path knife_blade() {
  return Path().move(8, 40).line(60, 40).line(60, 56).curve(40, 58, 20, 54, 8, 40).close();
}
Path oven_body() { return box(14, 14, 72, 74); }

Shapes of_hands() {
  return {
      {flat_hand(16, 52), flat_hand(28, 76), drop(34, 14, 11), drop(54, 8, 11), drop(72, 18, 11)},
      {},
      {}};
}
Shapes of_collect() {
  return {{Path().arc(36, 46, 11), Path().arc(62, 44, 13)},
          {},
          {Path().move(8, 56).line(16, 78).line(84, 78).line(92, 56).close(),
           stroke(49, 44, 49, 24), Path().move(49, 24).curve(56, 16, 64, 16, 68, 20)}};
}
Shapes of_weigh() {
  return {{box(20, 62, 60, 26)},
          {Path().arc(50, 75, 9)},
          {stroke(50, 75, 55, 69),
           Path().move(22, 34).line(78, 34).curve(76, 56, 24, 56, 22, 34).close(),
           stroke(50, 52, 50, 62)}};
}
Shapes of_cut() {
  return {{knife_blade(), box(62, 41, 32, 10), box(10, 80, 80, 6)},
          {},
          {Path().arc(30, 70, 9), Path().arc(50, 70, 9), Path().arc(70, 70, 9)}};
}
Shapes of_peel() {
  return {{Path().move(56, 22).curve(74, 20, 88, 34, 84, 46).line(72, 50).line(52, 32).close()},
          {},
          {Path()
               .move(16, 88)
               .curve(10, 70, 26, 54, 46, 60)
               .curve(60, 64, 60, 84, 44, 90)
               .curve(34, 94, 22, 94, 16, 88)
               .close(),
           Path().move(50, 36).line(68, 54), Path().move(60, 62).curve(72, 66, 66, 80, 78, 84)}};
}
Shapes of_mix() {
  return {{bowl()},
          {},
          {stroke(50, 46, 74, 8), stroke(58, 46, 80, 10),
           Path().move(28, 36).curve(36, 28, 46, 28, 50, 34)}};
}
Shapes of_roll() {
  return {
      {box(22, 34, 56, 16), box(6, 39, 14, 6), box(80, 39, 14, 6)},
      {},
      {Path().move(10, 72).curve(20, 58, 80, 58, 90, 72).curve(80, 84, 20, 84, 10, 72).close()}};
}
Shapes of_pan() {
  return {
      {pan(), pan_handle(), box(10, 90, 64, 4)}, {}, {steam(30, 42), steam(42, 40), steam(54, 42)}};
}
Shapes of_stir() {
  return {{pan(), pan_handle(), box(10, 90, 64, 4)},
          {},
          {stroke(40, 50, 56, 8), Path().move(26, 38).curve(28, 26, 40, 26, 40, 34),
           Path().move(40, 34).line(35, 30), Path().move(40, 34).line(45, 29)}};
}
Shapes of_fry() {
  return {{Path().move(10, 62).line(70, 62).line(62, 76).line(18, 76).close(), pan_handle(),
           box(10, 84, 60, 4)},
          {},
          {Path().arc(28, 50, 4), Path().arc(42, 44, 4), Path().arc(56, 50, 4), steam(34, 34),
           steam(50, 32)}};
}
Shapes of_oven_in() {
  return {{oven_body()},
          {box(22, 38, 56, 42)},
          {stroke(26, 66, 74, 66), stroke(50, 42, 50, 60),
           Path().move(42, 53).line(50, 61).line(58, 53)}};
}
Shapes of_oven_out() {
  return {{oven_body()},
          {box(22, 38, 56, 42)},
          {stroke(26, 72, 74, 72), stroke(50, 66, 50, 46),
           Path().move(42, 53).line(50, 45).line(58, 53)}};
}
Shapes of_grill() {
  return {{box(12, 12, 76, 12), box(12, 82, 76, 6)},
          {},
          {Path().move(26, 32).line(22, 44).line(30, 50).line(26, 62),
           Path().move(50, 32).line(46, 44).line(54, 50).line(50, 62),
           Path().move(74, 32).line(70, 44).line(78, 50).line(74, 62), stroke(20, 74, 80, 74)}};
}
Shapes of_kettle() {
  return {{Path().move(28, 36).line(68, 36).line(76, 86).line(20, 86).close(),
           Path().move(70, 50).line(92, 38).line(94, 44).line(74, 62).close()},
          {},
          {Path().move(30, 34).curve(24, 8, 72, 8, 66, 34), steam(92, 30)}};
}
Shapes of_wait() {
  return {{}, {}, {clock_face(), stroke(50, 52, 50, 28), stroke(50, 52, 66, 60)}};
}
Shapes of_watch() {
  return {{Path().arc(50, 50, 14)},
          {Path().arc(50, 50, 5)},
          {Path().move(6, 50).curve(26, 18, 74, 18, 94, 50).curve(74, 82, 26, 82, 6, 50).close()}};
}
Shapes of_probe() {
  return {{Path().move(58, 8).line(88, 8).line(88, 36).line(58, 36).close(),
           Path().move(10, 68).curve(30, 56, 70, 56, 90, 68).line(86, 90).line(14, 90).close()},
          {box(63, 13, 20, 12)},
          {stroke(66, 36, 46, 74)}};
}
Shapes of_look() {
  return {{Path().arc(30, 26, 11),
           Path().move(12, 90).curve(12, 50, 20, 42, 30, 42).curve(40, 42, 48, 50, 48, 90).close()},
          {},
          {Path().move(58, 58).line(68, 70).line(92, 38)}};
}
Shapes of_cool() {
  return {{box(14, 74, 72, 5)},
          {},
          {Path().move(26, 72).curve(24, 52, 76, 52, 74, 72), stroke(22, 80, 22, 90),
           stroke(78, 80, 78, 90), stroke(50, 8, 50, 40), stroke(36, 16, 64, 32),
           stroke(64, 16, 36, 32)}};
}
Shapes of_fridge() {
  return {{box(30, 20, 5, 12), box(30, 50, 5, 22)},
          {},
          {box(22, 8, 56, 84), stroke(22, 40, 78, 40), stroke(58, 52, 58, 80),
           stroke(46, 59, 70, 73), stroke(70, 59, 46, 73)}};
}
Shapes of_pack() {
  return {{box(12, 34, 76, 10)},
          {box(34, 56, 32, 20)},
          {Path().move(18, 46).line(24, 86).line(76, 86).line(82, 46).close(), box(36, 56, 28, 18),
           stroke(41, 63, 59, 63), stroke(41, 68, 53, 68)}};
}
Shapes of_serve() {
  return {{Path().move(30, 56).curve(32, 36, 68, 36, 70, 56).close()},
          {},
          {Path().move(8, 58).line(92, 58).curve(86, 76, 14, 76, 8, 58).close(), steam(42, 30),
           steam(58, 30)}};
}
Shapes of_wipe() {
  return {{Path().move(20, 44).line(64, 36).line(72, 60).line(28, 70).close()},
          {},
          {stroke(8, 82, 92, 82), Path().move(76, 40).curve(84, 46, 86, 54, 84, 62),
           Path().move(84, 32).curve(94, 42, 96, 54, 92, 66)}};
}
Shapes of_wash_up() {
  return {{Path().move(8, 56).line(92, 56).line(84, 90).line(16, 90).close()},
          {},
          {Path().arc(46, 50, 22, 0.5, 1.0),
           Path().move(72, 50).line(72, 16).curve(72, 6, 56, 6, 56, 18), Path().arc(24, 42, 5),
           Path().arc(86, 42, 4)}};
}
Shapes of_listen() {
  return {{Path().arc(26, 30, 11),
           Path().move(8, 88).curve(8, 54, 16, 46, 26, 46).curve(36, 46, 44, 54, 44, 88).close()},
          {},
          {Path().move(56, 22).curve(64, 30, 64, 44, 56, 52),
           Path().move(68, 14).curve(80, 28, 80, 46, 68, 60),
           Path().move(80, 6).curve(96, 26, 96, 48, 80, 68)}};
}
Shapes of_step() {
  return {{Path()
               .move(28, 92)
               .line(28, 34)
               .curve(28, 26, 37, 26, 37, 34)
               .line(37, 52)
               .line(40, 52)
               .line(40, 18)
               .curve(40, 10, 49, 10, 49, 18)
               .line(49, 50)
               .line(52, 50)
               .line(52, 22)
               .curve(52, 14, 61, 14, 61, 22)
               .line(61, 54)
               .line(64, 54)
               .line(64, 32)
               .curve(64, 25, 72, 25, 72, 32)
               .line(72, 66)
               .curve(72, 80, 66, 86, 64, 92)
               .close(),
           Path().move(28, 64).line(14, 50).curve(9, 44, 16, 38, 21, 43).line(30, 54).close()},
          {},
          {}};
}

}  // namespace

Shapes shapes_of(Pictogram picture) {
  switch (picture) {
    case Pictogram::kHands:
      return of_hands();
    case Pictogram::kCollect:
      return of_collect();
    case Pictogram::kWeigh:
      return of_weigh();
    case Pictogram::kCut:
      return of_cut();
    case Pictogram::kPeel:
      return of_peel();
    case Pictogram::kMix:
      return of_mix();
    case Pictogram::kRoll:
      return of_roll();
    case Pictogram::kPan:
      return of_pan();
    case Pictogram::kStir:
      return of_stir();
    case Pictogram::kFry:
      return of_fry();
    case Pictogram::kOvenIn:
      return of_oven_in();
    case Pictogram::kOvenOut:
      return of_oven_out();
    case Pictogram::kGrill:
      return of_grill();
    case Pictogram::kKettle:
      return of_kettle();
    case Pictogram::kWait:
      return of_wait();
    case Pictogram::kWatch:
      return of_watch();
    case Pictogram::kProbe:
      return of_probe();
    case Pictogram::kLook:
      return of_look();
    case Pictogram::kCool:
      return of_cool();
    case Pictogram::kFridge:
      return of_fridge();
    case Pictogram::kPack:
      return of_pack();
    case Pictogram::kServe:
      return of_serve();
    case Pictogram::kWipe:
      return of_wipe();
    case Pictogram::kWashUp:
      return of_wash_up();
    case Pictogram::kListen:
      return of_listen();
    case Pictogram::kStep:
      break;
  }
  return of_step();
}

}  // namespace print::sheets
