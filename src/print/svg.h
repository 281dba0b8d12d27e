// SVG written by hand: elements with short numbers, escaped words and classes instead of colours.
#pragma once

#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace print {

/// "12", "12.5"; never an exponent.
std::string number(double);
/// Roughly how wide text is in pixels; on the wide side, because fallback faces are.
double text_width(std::string_view text, double size, bool bold = false);

class Svg {
 public:
  void rect(double x, double y, double w, double h, std::string_view classes);
  void line(double x1, double y1, double x2, double y2, std::string_view classes);
  /// Corners joined; `closed` fills it.
  void path(const std::vector<std::pair<double, double>>& corners, bool closed,
            std::string_view classes);
  void circle(double x, double y, double r, std::string_view classes);
  /// `anchor` is "start", "middle" or "end"; `text` is escaped here.
  void text(double x, double y, std::string_view text, std::string_view classes,
            std::string_view anchor = "start");
  /// Opens a group whose words are read aloud and shown when pointed at. `extra` is further,
  /// ready-made attributes.
  void open(std::string_view classes, std::string_view label, std::string_view extra = "");
  void close();
  void raw(std::string_view xml) { out_ += xml; }
  const std::string& str() const { return out_; }

 private:
  std::string out_;
};

}  // namespace print
