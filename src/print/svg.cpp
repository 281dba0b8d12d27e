#include "print/svg.h"

#include <fmt/format.h>

#include "print/words.h"

namespace print {

std::string number(double value) {
  std::string text = fmt::format("{:.1f}", value);
  if (text.ends_with(".0")) text.resize(text.size() - 2);
  return text == "-0" ? "0" : text;
}

double text_width(std::string_view text, double size, bool bold) {
  return (bold ? 0.69 : 0.6) * size * static_cast<double>(letters(text));
}

void Svg::rect(double x, double y, double w, double h, std::string_view classes) {
  out_ += fmt::format(R"(<rect class="{}" x="{}" y="{}" width="{}" height="{}"/>)", classes,
                      number(x), number(y), number(w), number(h));
}

void Svg::line(double x1, double y1, double x2, double y2, std::string_view classes) {
  out_ += fmt::format(R"(<path class="{}" d="M{} {}L{} {}"/>)", classes, number(x1), number(y1),
                      number(x2), number(y2));
}

void Svg::path(const std::vector<std::pair<double, double>>& corners, bool closed,
               std::string_view classes) {
  std::string d;
  for (const auto& [x, y] : corners)
    d += fmt::format("{}{} {}", d.empty() ? "M" : "L", number(x), number(y));
  out_ += fmt::format(R"(<path class="{}" d="{}{}"/>)", classes, d, closed ? "Z" : "");
}

void Svg::circle(double x, double y, double r, std::string_view classes) {
  out_ += fmt::format(R"(<circle class="{}" cx="{}" cy="{}" r="{}"/>)", classes, number(x),
                      number(y), number(r));
}

void Svg::text(double x, double y, std::string_view text, std::string_view classes,
               std::string_view anchor) {
  out_ += fmt::format(
      R"(<text class="{}" x="{}" y="{}"{}>{}</text>)", classes, number(x), number(y),
      anchor == "start" ? "" : fmt::format(R"( text-anchor="{}")", anchor), escaped(text));
}

void Svg::open(std::string_view classes, std::string_view label, std::string_view extra) {
  const std::string words = escaped(label);
  out_ += fmt::format(R"(<g class="{}" aria-label="{}"{}{}><title>{}</title>)", classes, words,
                      extra.empty() ? "" : " ", extra, words);
}

void Svg::close() { out_ += "</g>\n"; }

}  // namespace print
