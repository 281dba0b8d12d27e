#include "print/picture.h"

#include <fmt/format.h>

#include <algorithm>

#include "print/picture_parts.h"
#include "print/say_parts.h"
#include "print/tokens.h"

namespace print {

Frame::Frame(const kitchen::Lesson& l, const Answer& a, int w)
    : lesson(l), answer(a), width(std::max(w, 640)) {
  right = width - 18;
  until = lesson.bell + base::minutes(4);
  if (answer.plan) {
    for (const Task& task : answer.plan->tasks)
      until = std::max(until, task.end + base::minutes(2));
  }
  if (lesson.cooks.size() > 20) row = 18;
}

double Frame::x(Seconds t) const {
  const auto part = static_cast<double>(std::clamp(t, Seconds{0}, until).count());
  return left +
         (right - left) * part / static_cast<double>(std::max<std::int64_t>(1, until.count()));
}

std::string Frame::ink(int dish) const {
  return "d" + std::to_string(dish < 0 ? 0 : dish % static_cast<int>(token::kDish.size()) + 1);
}

std::string picture_style() {
  std::string css = fmt::format(
      "text{{font-family:{};font-size:13px;fill:{};font-variant-numeric:tabular-nums}}"
      ".h{{font-family:{};font-weight:600}}.b{{font-weight:700}}.q{{fill:{}}}.w{{fill:#fff}}"
      ".s11{{font-size:11px}}.s14{{font-size:14px}}.s16{{font-size:16px}}.s27{{font-size:27px}}."
      "s25{{font-size:25px}}"
      ".good{{fill:{}}}.bad{{fill:{}}}",
      token::kText, token::kInk, token::kHead, token::kSoft, token::kLeaf, token::kEmber);
  css += fmt::format(
      ".paper{{fill:{}}}.card{{fill:{}}}.band{{fill:{}}}.deep{{fill:{}}}.count{{fill:{}}}.oven{{"
      "fill:{};stroke:{};stroke-width:1.4}}"
      ".rule{{stroke:{};stroke-width:1}}.thin{{stroke:{};stroke-width:.6}}.edge{{stroke:{};stroke-"
      "width:1}}"
      ".ink{{stroke:{};stroke-width:2;fill:none}}.fine{{stroke:{};stroke-width:1;fill:none}}.dash{{"
      "stroke:{};stroke-width:1;stroke-dasharray:4 3;fill:none}}"
      ".solid{{fill:{}}}.plate{{fill:#fff}}.full{{stroke:{};stroke-width:2.4}}",
      token::kPaper, token::kCard, token::kBand, token::kBandDeep, token::kCount, token::kOven,
      token::kInk, token::kRule, token::kRule, token::kEdge, token::kInk, token::kInk, token::kInk,
      token::kInk, token::kEmber);
  css += fmt::format(
      ".walk{{stroke:{0};stroke-width:1;fill:none}}.stand{{stroke:{0};stroke-width:5;fill:none}}."
      "must{{stroke:{0};stroke-width:2.4}}"
      ".two.stand{{stroke:#fff;stroke-width:3}}.ring{{fill:#fff;stroke:{1};stroke-width:1.8}}.late{"
      "{fill:{2}}}"
      ".clean{{fill:url(#dots);stroke:{0};stroke-width:.8}}.t0{{fill:{0}}}.d0{{fill:{0}}}.o0{{fill:"
      "#fff;stroke:{0};stroke-width:1.3}}.p0{{fill:url(#w0)}}"
      ".bar:focus{{outline:3px solid {0};outline-offset:1px}}.bar:focus "
      "rect{{stroke:{0};stroke-width:2}}",
      token::kInk, token::kLeaf, token::kEmber);
  for (std::size_t i = 0; i < token::kDish.size(); ++i) {
    css += fmt::format(
        ".d{0}{{fill:{1}}}.t{0}{{fill:{1}}}.o{0}{{fill:#fff;stroke:{1};stroke-width:1.3}}"
        ".p{0}{{fill:url(#w{0});stroke:{1};stroke-width:1}}.l{0}{{stroke:{1};stroke-width:2.2}}",
        i + 1, token::kDish[i]);
  }
  return css + "@media print{.bar:focus{outline:0}.card,.paper{fill:#fff}}";
}

namespace {

std::string patterns() {
  std::string out = "<defs>";
  for (std::size_t i = 0; i <= token::kDish.size(); ++i) {
    out += fmt::format(
        R"svg(<pattern id="w{0}" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><rect class="plate" width="6" height="6"/><rect class="d{0}" width="2.4" height="6"/></pattern>)svg",
        i);
  }
  return out +
         R"svg(<pattern id="dots" width="4" height="4" patternUnits="userSpaceOnUse"><rect class="plate" width="4" height="4"/><circle class="solid" cx="2" cy="2" r="1"/></pattern></defs>)svg";
}

std::string description(const kitchen::Lesson& lesson, const Answer& answer) {
  return fmt::format(
      "Time runs from left to right, {} to the bell at {}. {} in {}, then ovens, rings, sinks and "
      "adults. {}",
      kitchen::clock(lesson, Seconds{0}), kitchen::clock(lesson, lesson.bell),
      counted(static_cast<int>(lesson.cooks.size()), "cook", "cooks"),
      counted(static_cast<int>(lesson.room.bays.size()), "bay", "bays"),
      verdict_words(lesson, answer));
}

}  // namespace

std::string picture(const kitchen::Lesson& lesson, const Answer& answer,
                    const PictureOptions& options, bool with_head) {
  Frame frame(lesson, answer, options.width);
  if (with_head) draw_head(frame);
  const double top = frame.y;
  if (answer.plan) {
    draw_clock(frame);
    draw_strip(frame);
    draw_places(frame);
    draw_ovens(frame);
    draw_counts(frame);
    draw_adults(frame);
  }
  const double bottom = frame.y;
  draw_legend(frame);
  const std::string size = fmt::format(R"(width="{0}" height="{1}" viewBox="0 0 {0} {1}")",
                                       number(frame.width), number(frame.y));
  std::string out = fmt::format(
      R"(<svg xmlns="http://www.w3.org/2000/svg" {} role="group" aria-labelledby="plan-title plan-desc" lang="en-GB"><title id="plan-title">{}</title><desc id="plan-desc">{}</desc><style>{}</style>)",
      size, escaped(lesson.title.empty() ? "Time plan" : "Time plan: " + lesson.title),
      escaped(description(lesson, answer)), picture_style());
  out += patterns();
  out += fmt::format(R"(<rect class="paper" width="{}" height="{}"/>)", number(frame.width),
                     number(frame.y));
  if (answer.plan) out += ground(frame, top, bottom);
  out += frame.body.str();
  if (answer.plan) out += bell(frame, top, bottom);
  return out + "</svg>\n";
}

std::string picture_svg(const kitchen::Lesson& lesson, const timeplan::Answer& answer,
                        const PictureOptions& options) {
  return picture(lesson, answer, options, true);
}

}  // namespace print
