// Paper itself: pages, words set on them, lines, boxes and patterns, and the PDF they become. Made
// in the process with Cairo and Pango; the same calls give the same bytes.
//
// Lengths are points (72 to the inch), from the top left corner of the page. Everything is black
// and grey: a school's printer has no colour. Nothing is ever cut off: words wrap, shrink where a
// sheet says so, or go to the next page (flow.h).
#pragma once

#include <functional>
#include <memory>
#include <string>
#include <utility>
#include <vector>

#include "print/facts.h"
#include "print/sheets/words_on_paper.h"

namespace print::sheets {

inline constexpr double kMm = 72 / 25.4;
/// What school printers leave white; every sheet keeps it (common practice, no source).
inline constexpr double kMargin = 13 * kMm;
/// Smallest print on any sheet that has room; a label may go lower before it wraps.
inline constexpr double kSmall = 8.5;

struct Size {
  double w = 0, h = 0;
};
inline constexpr Size kA4{210 * kMm, 297 * kMm};  ///< ISO 216
inline constexpr Size kA4Wide{297 * kMm, 210 * kMm};

struct Box {
  double x = 0, y = 0, w = 0, h = 0;
  double right() const { return x + w; }
  double bottom() const { return y + h; }
  Box inset(double by) const { return {x + by, y + by, w - 2 * by, h - 2 * by}; }
};

enum class Align { kLeft, kCentre, kRight };

struct Type {
  double size = 10;
  bool bold = false;
  Align align = Align::kLeft;
  double grey = 0;  ///< 0 black to 1 white; text is never above 0.35 (contrast 7:1 on white)
};

/// Words that are set: their size is known, and they can be put down once or often.
class Block {
 public:
  double width = 0, height = 0;
  int lines = 0;
  double size = 0;      ///< of the type, after shrinking
  double baseline = 0;  ///< of the first line, from the top

 private:
  friend class Document;
  friend class Canvas;
  std::shared_ptr<void> layout_;
  double set_width_ = -1;
  double grey_ = 0;
};

/// A line of strokes and curves, for what is drawn by hand.
class Path {
 public:
  Path& move(double x, double y);
  Path& line(double x, double y);
  /// Two control points and the end.
  Path& curve(double x1, double y1, double x2, double y2, double x, double y);
  /// From one angle to another, clockwise, in turns (0.25 = a quarter); 0 points right.
  Path& arc(double x, double y, double r, double from = 0, double to = 1);
  Path& close();

 private:
  friend class Canvas;
  struct Piece {
    char kind = 'm';
    double at[6] = {0, 0, 0, 0, 0, 0};
  };
  std::vector<Piece> pieces_;
};

class Document;

/// A hand that draws on one page.
class Canvas {
 public:
  void put(const Block&, double x, double y);
  /// Turned to read upwards: `x`, `y` is the lower left corner of the turned words.
  void put_upwards(const Block&, double x, double y);
  void line(double x1, double y1, double x2, double y2, double width = 0.5, double grey = 0);
  void dashes(double x1, double y1, double x2, double y2, double width = 0.5);
  void frame(const Box&, double width = 0.75);
  void fill(const Box&, double grey = 0);
  void stroke(const Path&, double width = 1);
  void fill(const Path&, double grey = 0);
  /// A path drawn in a square of 100 by 100, put into a box.
  void stroke_in(const Box&, const Path&, double width);
  void fill_in(const Box&, const Path&, double grey = 0);
  /// The pattern of an attention: solid, hatched, outline, double left edge, dotted.
  void pattern(Look, const Box&);

 private:
  friend class Document;
  Canvas(Document& document, int page) : document_(&document), page_(page) {}
  Document* document_;
  int page_;
};

/// One PDF. A part is one thing in it, such as one cook's sheet: its pages are numbered on their
/// own.
class Document {
 public:
  /// `title` for the file's own title; `date` (ISO 8601) for the day it is made for.
  Document(std::string title, std::string date);
  Document(Document&&) noexcept;
  Document& operator=(Document&&) noexcept;
  ~Document();

  /// `foot` stands at the left of every page's foot ("9K, soup. Tue 17 Nov"), `running` at the head
  /// of its second and further pages. No foot, no page figures: for sheets of labels.
  void begin_part(Size size, std::string foot, std::string running = "");
  /// Index of the new page.
  int add_page();
  Canvas on(int page);
  Size size_of(int page) const;
  /// From 1 within its part.
  int number_of(int page) const;
  /// True when the page after `page` belongs to the same part.
  bool goes_on(int page) const;
  int pages() const;
  int parts() const;

  /// Sets words within a width; below 0 = on one line.
  Block set(const Words&, const Type&, double width = -1) const;
  /// The largest size up to `type.size` at which the words keep within the box and no word is
  /// broken; at `least` they are broken rather than cut.
  Block set_in(const Words&, Type, double width, double height, double least = 5) const;

  /// Letters for which no typeface of this machine has a shape, over all words set so far.
  int unknown_letters() const;

  /// The bytes. Nothing can be added afterwards.
  std::string pdf();

 private:
  friend class Canvas;
  struct Inside;
  std::unique_ptr<Inside> inside_;
};

}  // namespace print::sheets
