// The head of the picture answers the question: does it fit, how likely, and if not, why and what
// would help.
#include <algorithm>

#include "print/chance_words.h"
#include "print/paper.h"
#include "print/picture_parts.h"
#include "print/say_parts.h"

namespace print {
namespace {

/// Letters that fit into `width` pixels at a type size.
int letters_in(double width, double size) {
  return std::max(10, static_cast<int>(width / (0.56 * size)));
}

void lines(Frame& frame, const std::string& text, double x, double width, double size,
           const char* classes) {
  for (const std::string& line : wrapped(text, letters_in(width, size))) {
    frame.body.text(x, frame.y, line, classes);
    frame.y += size * 1.35;
  }
}

void draw_chance(Frame& frame, const Likely& chance) {
  const double width = 330;
  const double x = frame.width - 18 - width;
  std::string said = chance.whole;
  frame.body.open("chance", said, R"(role="img")");
  frame.body.text(frame.width - 18, 26, capital(chance.word) + ", " + chance.about, "h s16", "end");
  draw_marks(frame.body, frame.lesson, chance.marks, x, 104, width);
  frame.body.close();
}

}  // namespace

void draw_head(Frame& frame) {
  const Answer& answer = frame.answer;
  const std::optional<Likely> chance = likely(frame.lesson, answer);
  const double width = frame.width - 36 - (chance ? 360 : 0);
  const bool fits = answer.verdict == timeplan::Verdict::kFits;
  frame.y = 38;
  lines(frame, verdict_words(frame.lesson, answer), 18, width, 27,
        fits ? "h s27 good" : "h s27 bad");
  frame.y -= 8;
  if (!fits) {
    for (const timeplan::Cause& cause : answer.causes)
      lines(frame, stopped(cause.says), 18, width, 16, "s16 b");
    if (!answer.remedies.empty()) {
      frame.y += 6;
      frame.body.text(18, frame.y, "What would help", "h s16");
      frame.y += 20;
    }
    for (const timeplan::Remedy& r : answer.remedies) {
      lines(frame, stopped(r.says) + (r.buys.empty() ? "" : " " + stopped(capital(r.buys))), 18,
            width, 14, "s14");
    }
    frame.y += 6;
  }
  if (const std::string trials = trials_words(answer); !trials.empty())
    lines(frame, trials, 18, width, 14, "s14");
  lines(frame, lesson_words(frame.lesson), 18, width, 14, "s14");
  if (chance) {
    draw_chance(frame, *chance);
    lines(frame, chance->whole, 18, width, 14, "s14 b");
    if (!chance->says.empty()) lines(frame, joined(chance->says), 18, width, 14, "s14 q");
    frame.y = std::max(frame.y, 142.0);
  }
  frame.y += 6;
}

}  // namespace print
