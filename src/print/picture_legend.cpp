// What the patterns, inks and marks of the picture mean.
#include <algorithm>

#include "print/paper.h"
#include "print/picture_parts.h"

namespace print {
namespace {

constexpr double kStart = 18;

/// Moves to a fresh line when `need` pixels no longer fit.
void make_room(Frame& frame, double& x, double need) {
  if (x + need <= frame.right || x <= kStart) return;
  x = kStart;
  frame.y += 20;
}

void draw_attention(Frame& frame) {
  static constexpr std::pair<Look, const char*> kMeans[] = {
      {Look::kHands, "busy with this"},
      {Look::kWatch, "look in now and then"},
      {Look::kLeave, "waits by itself"},
      {Look::kGrownUp, "an adult must be there"},
      {Look::kClean, "wash, clear"}};
  double x = kStart;
  for (const auto& [look, means] : kMeans) {
    const std::string word = look_word(look);
    const double wide = text_width(word, 13, true);
    make_room(frame, x, 37 + wide + text_width(means, 13));
    draw_bar(frame, look, -1, x, frame.y, 26, 14, "", "");
    frame.body.text(x + 32, frame.y + 11, word, "b");
    frame.body.text(x + 37 + wide, frame.y + 11, means, "q");
    x += 53 + wide + text_width(means, 13);
  }
  frame.y += 24;
}

void draw_dishes(Frame& frame) {
  double x = kStart;
  for (std::size_t d = 0; d < frame.lesson.dishes.size(); ++d) {
    const kitchen::Dish& dish = frame.lesson.dishes[d];
    const std::string name = shortened(dish_name(dish), 36);
    make_room(frame, x, 32 + text_width(name, 13));
    draw_bar(frame, Look::kHands, static_cast<int>(d), x, frame.y, 26, 15, dish.tag, "");
    frame.body.text(x + 32, frame.y + 12, name, "");
    x += 50 + text_width(name, 13);
  }
  frame.y += 20;
}

}  // namespace

void draw_legend(Frame& frame) {
  frame.y += 12;
  draw_attention(frame);
  draw_dishes(frame);
  const char* marks =
      "Thin line under a bar: it cooks on by itself while hands are busy. Two thin uprights in a "
      "row: the adult's look. "
      "Two upright lines through everything: the bell. Square on a pole: checkpoint. Thick "
      "upright: last safe start.";
  for (const std::string& line : wrapped(marks, static_cast<int>((frame.right - kStart) / 7.8))) {
    frame.body.text(kStart, frame.y + 12, line, "q");
    frame.y += 17;
  }
  frame.y += 12;
}

}  // namespace print
