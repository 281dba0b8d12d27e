// Cairo and Pango stay in this file. Pages are kept as lists of strokes until the end, because
// "page 1 of 3" is known only then.
#include "print/sheets/page.h"

#include <cairo-pdf.h>
#include <fmt/format.h>
#include <pango/pangocairo.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <stdexcept>

#include "base/index.h"

namespace print::sheets {
namespace {

using base::at;

// Noto Sans for the text; the rest of the list is for scripts and signs it has not.
constexpr const char*
    kFaces = "Noto Sans,Noto Sans Arabic,Noto Sans Hebrew,DejaVu Sans,Noto Sans Symbols2";
// Noto's own lines stand far apart; on a sheet that must be one page they come closer.
constexpr float kLineSpacing = 0.86F;

template <class T>
using Owned = std::unique_ptr<T, void (*)(T*)>;

void unref(void* object) { g_object_unref(object); }

void set_grey(cairo_t* c, double grey) { cairo_set_source_rgb(c, grey, grey, grey); }

void rectangle(cairo_t* c, const Box& b) { cairo_rectangle(c, b.x, b.y, b.w, b.h); }

void hatch(cairo_t* c, const Box& b) {
  cairo_save(c);
  rectangle(c, b);
  cairo_clip(c);
  cairo_set_line_width(c, 1.5);
  for (double x = b.x - b.h; x < b.right(); x += 4.2) {
    cairo_move_to(c, x, b.bottom());
    cairo_line_to(c, x + b.h, b.y);
  }
  cairo_stroke(c);
  cairo_restore(c);
}

void dots(cairo_t* c, const Box& b) {
  const double step = 3.2, side = 1.4;
  for (double y = b.y + 1; y + side <= b.bottom(); y += step) {
    for (double x = b.x + 1; x + side <= b.right(); x += step) cairo_rectangle(c, x, y, side, side);
  }
  cairo_fill(c);
}

void draw_look(cairo_t* c, Look look, const Box& b) {
  set_grey(c, 0);
  cairo_set_line_width(c, 1);
  switch (look) {
    case Look::kHands:
      rectangle(c, b);
      cairo_fill(c);
      return;
    case Look::kWatch:
      hatch(c, b);
      rectangle(c, b.inset(0.5));
      cairo_stroke(c);
      return;
    case Look::kLeave:
      rectangle(c, b.inset(0.5));
      cairo_stroke(c);
      return;
    case Look::kGrownUp: {
      const double edge = std::min(2.0, b.w / 6);
      cairo_rectangle(c, b.x, b.y, edge, b.h);
      cairo_rectangle(c, b.x + 2 * edge, b.y, edge, b.h);
      cairo_rectangle(c, b.x + 4 * edge, b.y, b.w - 4 * edge, b.h);
      cairo_fill(c);
      return;
    }
    case Look::kClean:
      dots(c, b);
      return;
  }
}

}  // namespace

Path& Path::move(double x, double y) {
  pieces_.push_back({'m', {x, y}});
  return *this;
}
Path& Path::line(double x, double y) {
  pieces_.push_back({'l', {x, y}});
  return *this;
}
Path& Path::curve(double x1, double y1, double x2, double y2, double x, double y) {
  pieces_.push_back({'c', {x1, y1, x2, y2, x, y}});
  return *this;
}
Path& Path::arc(double x, double y, double r, double from, double to) {
  pieces_.push_back({'a', {x, y, r, from, to}});
  return *this;
}
Path& Path::close() {
  pieces_.push_back({'z', {}});
  return *this;
}

using Stroke = std::function<void(cairo_t*)>;

struct Document::Inside {
  struct Part {
    Size size;
    std::string foot, running;
    int pages = 0;
  };
  struct Sheet {
    int part = 0, number = 0;  ///< `number` from 1 within the part
    std::vector<Stroke> strokes;
  };

  std::string title, date;
  std::vector<Part> parts;
  std::vector<Sheet> sheets;
  Owned<PangoContext> context{nullptr, [](PangoContext* p) { unref(p); }};
  mutable int unknown = 0;
  bool done = false;

  Inside() {
    PangoFontMap* faces = pango_cairo_font_map_get_default();
    context.reset(pango_font_map_create_context(faces));
    cairo_font_options_t* options = cairo_font_options_create();
    cairo_font_options_set_hint_style(options, CAIRO_HINT_STYLE_NONE);
    cairo_font_options_set_hint_metrics(options, CAIRO_HINT_METRICS_OFF);
    pango_cairo_context_set_font_options(context.get(), options);
    cairo_font_options_destroy(options);
    pango_cairo_context_set_resolution(context.get(), 72);
    pango_context_set_round_glyph_positions(context.get(), FALSE);
    pango_context_set_language(context.get(), pango_language_from_string("en-gb"));
    pango_context_set_base_dir(context.get(), PANGO_DIRECTION_LTR);
  }

  Owned<PangoLayout> layout(const Words& words, const Type& type, double width) const {
    Owned<PangoLayout> l{pango_layout_new(context.get()), [](PangoLayout* p) { unref(p); }};
    PangoFontDescription* face = pango_font_description_from_string(kFaces);
    pango_font_description_set_absolute_size(face, type.size * PANGO_SCALE);
    if (type.bold) pango_font_description_set_weight(face, PANGO_WEIGHT_BOLD);
    pango_layout_set_font_description(l.get(), face);
    pango_font_description_free(face);
    // A name from right to left stands at the left of its column like every other.
    pango_layout_set_auto_dir(l.get(), FALSE);
    pango_layout_set_line_spacing(l.get(), kLineSpacing);
    if (width >= 0) {
      pango_layout_set_width(l.get(), static_cast<int>(std::floor(width * PANGO_SCALE)));
      pango_layout_set_wrap(l.get(), PANGO_WRAP_WORD_CHAR);
      pango_layout_set_alignment(l.get(), type.align == Align::kRight    ? PANGO_ALIGN_RIGHT
                                          : type.align == Align::kCentre ? PANGO_ALIGN_CENTER
                                                                         : PANGO_ALIGN_LEFT);
    }
    const std::string markup = words.markup();
    pango_layout_set_markup(l.get(), markup.c_str(), static_cast<int>(markup.size()));
    return l;
  }

  double widest_word(const Words& words, const Type& type) const {
    double most = 0;
    std::string word;
    const std::string text = words.plain() + " ";
    for (const char c : text) {
      if (c != ' ' && c != '\n') {
        word += c;
        continue;
      }
      if (word.empty()) continue;
      Type bold = type;
      bold.bold = true;  // on the wide side
      PangoRectangle box;
      pango_layout_get_extents(layout(Words(word), bold, -1).get(), nullptr, &box);
      most = std::max(most, static_cast<double>(box.width) / PANGO_SCALE);
      word.clear();
    }
    return most;
  }

  void foot(cairo_t* c, const Sheet& sheet) const {
    const Part& part = parts[at(sheet.part)];
    const double width = part.size.w - 2 * kMargin, y = part.size.h - kMargin;
    const auto put = [&](const std::string& text, double x, double w, double from_top,
                         Align align) {
      Type type{8, false, align, 0.25};
      auto l = layout(Words(text), type, w);
      set_grey(c, type.grey);
      cairo_move_to(c, x, from_top);
      pango_cairo_show_layout(c, l.get());
    };
    if (!part.foot.empty()) {
      const std::string count = fmt::format("page {} of {}", sheet.number, part.pages);
      put(part.foot, kMargin, width - 70, y - 10, Align::kLeft);
      put(count, kMargin + width - 66, 66, y - 10, Align::kRight);
    }
    if (!part.running.empty() && sheet.number > 1)
      put(part.running, kMargin, width, kMargin, Align::kLeft);
  }
};

Document::Document(std::string title, std::string date) : inside_(std::make_unique<Inside>()) {
  inside_->title = std::move(title);
  inside_->date = std::move(date);
}
Document::Document(Document&&) noexcept = default;
Document& Document::operator=(Document&&) noexcept = default;
Document::~Document() = default;

void Document::begin_part(Size size, std::string foot, std::string running) {
  inside_->parts.push_back({size, std::move(foot), std::move(running), 0});
}

int Document::add_page() {
  if (inside_->parts.empty()) throw std::logic_error("a page belongs to a part");
  Inside::Part& part = inside_->parts.back();
  inside_->sheets.push_back({static_cast<int>(inside_->parts.size()) - 1, ++part.pages, {}});
  return pages() - 1;
}

Canvas Document::on(int page) { return {*this, page}; }
int Document::pages() const { return static_cast<int>(inside_->sheets.size()); }
int Document::parts() const { return static_cast<int>(inside_->parts.size()); }
int Document::unknown_letters() const { return inside_->unknown; }

Size Document::size_of(int page) const {
  return inside_->parts[at(inside_->sheets[at(page)].part)].size;
}

int Document::number_of(int page) const { return inside_->sheets[at(page)].number; }

bool Document::goes_on(int page) const {
  return page + 1 < pages() && inside_->sheets[at(page)].part == inside_->sheets[at(page + 1)].part;
}

Block Document::set(const Words& words, const Type& type, double width) const {
  auto l = inside_->layout(words, type, width);
  PangoRectangle box;
  pango_layout_get_extents(l.get(), nullptr, &box);
  Block out;
  out.width = static_cast<double>(box.width) / PANGO_SCALE;
  out.height = words.empty() ? 0 : static_cast<double>(box.height) / PANGO_SCALE;
  out.lines = pango_layout_get_line_count(l.get());
  out.size = type.size;
  out.baseline = static_cast<double>(pango_layout_get_baseline(l.get())) / PANGO_SCALE;
  out.set_width_ = width;
  out.grey_ = type.grey;
  inside_->unknown += pango_layout_get_unknown_glyphs_count(l.get());
  out.layout_ = std::shared_ptr<PangoLayout>(l.release(), [](PangoLayout* p) { unref(p); });
  return out;
}

Block Document::set_in(const Words& words, Type type, double width, double height,
                       double least) const {
  // Widths grow with the size, so the widest word tells the size at which it just fits.
  const double word = inside_->widest_word(words, type);
  if (word > width) type.size = std::max(least, type.size * width / word * 0.995);
  for (;;) {
    Block block = set(words, type, width);
    if (block.height <= height || type.size <= least) return block;
    type.size = std::max(least, type.size * 0.94);
  }
}

void Canvas::put(const Block& block, double x, double y) {
  if (!block.layout_) return;
  auto layout = block.layout_;
  const double grey = block.grey_;
  document_->inside_->sheets[at(page_)].strokes.push_back([layout, x, y, grey](cairo_t* c) {
    set_grey(c, grey);
    cairo_move_to(c, x, y);
    pango_cairo_show_layout(c, static_cast<PangoLayout*>(layout.get()));
  });
}

void Canvas::put_upwards(const Block& block, double x, double y) {
  if (!block.layout_) return;
  auto layout = block.layout_;
  document_->inside_->sheets[at(page_)].strokes.push_back([layout, x, y](cairo_t* c) {
    cairo_save(c);
    set_grey(c, 0);
    cairo_translate(c, x, y);
    cairo_rotate(c, -std::numbers::pi / 2);
    cairo_move_to(c, 0, 0);
    pango_cairo_show_layout(c, static_cast<PangoLayout*>(layout.get()));
    cairo_restore(c);
  });
}

void Canvas::line(double x1, double y1, double x2, double y2, double width, double grey) {
  document_->inside_->sheets[at(page_)].strokes.push_back([=](cairo_t* c) {
    set_grey(c, grey);
    cairo_set_line_width(c, width);
    cairo_move_to(c, x1, y1);
    cairo_line_to(c, x2, y2);
    cairo_stroke(c);
  });
}

void Canvas::dashes(double x1, double y1, double x2, double y2, double width) {
  document_->inside_->sheets[at(page_)].strokes.push_back([=](cairo_t* c) {
    const double dash[] = {3, 3};
    set_grey(c, 0);
    cairo_set_line_width(c, width);
    cairo_set_dash(c, dash, 2, 0);
    cairo_move_to(c, x1, y1);
    cairo_line_to(c, x2, y2);
    cairo_stroke(c);
    cairo_set_dash(c, nullptr, 0, 0);
  });
}

void Canvas::frame(const Box& box, double width) {
  document_->inside_->sheets[at(page_)].strokes.push_back([=](cairo_t* c) {
    set_grey(c, 0);
    cairo_set_line_width(c, width);
    rectangle(c, box);
    cairo_stroke(c);
  });
}

void Canvas::fill(const Box& box, double grey) {
  document_->inside_->sheets[at(page_)].strokes.push_back([=](cairo_t* c) {
    set_grey(c, grey);
    rectangle(c, box);
    cairo_fill(c);
  });
}

void Canvas::stroke(const Path& path, double width) { stroke_in({0, 0, 100, 100}, path, width); }
void Canvas::fill(const Path& path, double grey) { fill_in({0, 0, 100, 100}, path, grey); }

namespace {

template <class Pieces>
void trace(cairo_t* c, const Pieces& pieces) {
  for (const auto& p : pieces) {
    const double* a = p.at;
    switch (p.kind) {
      case 'm':
        cairo_move_to(c, a[0], a[1]);
        break;
      case 'l':
        cairo_line_to(c, a[0], a[1]);
        break;
      case 'c':
        cairo_curve_to(c, a[0], a[1], a[2], a[3], a[4], a[5]);
        break;
      case 'a':
        if (cairo_has_current_point(c) == 0) cairo_new_sub_path(c);
        cairo_arc(c, a[0], a[1], a[2], a[3] * 2 * std::numbers::pi, a[4] * 2 * std::numbers::pi);
        break;
      default:
        cairo_close_path(c);
    }
  }
}

}  // namespace

void Canvas::stroke_in(const Box& box, const Path& path, double width) {
  auto pieces = path.pieces_;
  document_->inside_->sheets[at(page_)].strokes.push_back(
      [pieces = std::move(pieces), box, width](cairo_t* c) {
        cairo_save(c);
        cairo_translate(c, box.x, box.y);
        cairo_scale(c, box.w / 100, box.h / 100);
        cairo_new_path(c);
        trace(c, pieces);
        cairo_restore(c);  // the pen stays round whatever the box
        set_grey(c, 0);
        cairo_set_line_width(c, width);
        cairo_set_line_cap(c, CAIRO_LINE_CAP_ROUND);
        cairo_set_line_join(c, CAIRO_LINE_JOIN_ROUND);
        cairo_stroke(c);
        cairo_set_line_cap(c, CAIRO_LINE_CAP_BUTT);
        cairo_set_line_join(c, CAIRO_LINE_JOIN_MITER);
      });
}

void Canvas::fill_in(const Box& box, const Path& path, double grey) {
  auto pieces = path.pieces_;
  document_->inside_->sheets[at(page_)].strokes.push_back(
      [pieces = std::move(pieces), box, grey](cairo_t* c) {
        cairo_save(c);
        cairo_translate(c, box.x, box.y);
        cairo_scale(c, box.w / 100, box.h / 100);
        cairo_new_path(c);
        trace(c, pieces);
        cairo_restore(c);
        set_grey(c, grey);
        cairo_fill(c);
      });
}

void Canvas::pattern(Look look, const Box& box) {
  if (box.w <= 0 || box.h <= 0) return;
  document_->inside_->sheets[at(page_)].strokes.push_back(
      [look, box](cairo_t* c) { draw_look(c, look, box); });
}

std::string Document::pdf() {
  if (inside_->done) throw std::logic_error("a document is written once");
  inside_->done = true;
  std::string bytes;
  const auto write = [](void* to, const unsigned char* data, unsigned int size) {
    static_cast<std::string*>(to)->append(reinterpret_cast<const char*>(data), size);
    return CAIRO_STATUS_SUCCESS;
  };
  const Size first = inside_->sheets.empty() ? kA4 : size_of(0);
  Owned<cairo_surface_t> surface{
      cairo_pdf_surface_create_for_stream(write, &bytes, first.w, first.h),
      [](cairo_surface_t* s) { cairo_surface_destroy(s); }};
  // Without a date of ours Cairo writes the moment, and no two runs are alike.
  const std::string date = (inside_->date.size() == 10 ? inside_->date : "1970-01-01") +
                           "T00:00:00Z";
  cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_TITLE, inside_->title.c_str());
  cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_CREATE_DATE, date.c_str());
  cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_CREATOR, "Benchbell");
  Owned<cairo_t> c{cairo_create(surface.get()), [](cairo_t* x) { cairo_destroy(x); }};
  for (const Inside::Sheet& sheet : inside_->sheets) {
    const Size size = inside_->parts[at(sheet.part)].size;
    cairo_pdf_surface_set_size(surface.get(), size.w, size.h);
    for (const Stroke& stroke : sheet.strokes) {
      cairo_new_path(c.get());
      stroke(c.get());
    }
    inside_->foot(c.get(), sheet);
    cairo_show_page(c.get());
  }
  const cairo_status_t drawn = cairo_status(c.get());
  c.reset();
  cairo_surface_finish(surface.get());
  const cairo_status_t written = cairo_surface_status(surface.get());
  if (drawn != CAIRO_STATUS_SUCCESS || written != CAIRO_STATUS_SUCCESS) {
    throw std::logic_error(std::string("a page could not be drawn: ") +
                           cairo_status_to_string(drawn != CAIRO_STATUS_SUCCESS ? drawn : written));
  }
  return bytes;
}

}  // namespace print::sheets
