// The sheets as pictures at 30 dots to the inch, compared with pictures somebody looked at. They
// are kept in tests/data/sheets; BENCHBELL_NEW_PICTURES=1 in the environment writes them anew: look
// at every one before you commit it.
#include <cairo.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <memory>

#include "look_at_pdf.h"
#include "samples_of_sheets.h"

namespace {

struct Grey {
  int width = 0, height = 0;
  std::vector<int> dots;
};

Grey picture(const std::string& path) {
  const std::unique_ptr<cairo_surface_t, void (*)(cairo_surface_t*)> surface(
      cairo_image_surface_create_from_png(path.c_str()), cairo_surface_destroy);
  Grey out;
  if (cairo_surface_status(surface.get()) != CAIRO_STATUS_SUCCESS) return out;
  out.width = cairo_image_surface_get_width(surface.get());
  out.height = cairo_image_surface_get_height(surface.get());
  const unsigned char* data = cairo_image_surface_get_data(surface.get());
  const int stride = cairo_image_surface_get_stride(surface.get());
  const bool grey = cairo_image_surface_get_format(surface.get()) == CAIRO_FORMAT_A8;
  for (int y = 0; y < out.height; ++y) {
    for (int x = 0; x < out.width; ++x) out.dots.push_back(data[y * stride + (grey ? x : 4 * x)]);
  }
  return out;
}

/// Share of dots that are clearly another grey: more than a quarter of the way from black to white.
double different(const Grey& a, const Grey& b) {
  if (a.width != b.width || a.height != b.height || a.dots.empty()) return 1;
  std::size_t n = 0;
  for (std::size_t i = 0; i < a.dots.size(); ++i) n += std::abs(a.dots[i] - b.dots[i]) > 64 ? 1 : 0;
  return static_cast<double>(n) / static_cast<double>(a.dots.size());
}

class Picture : public testing::TestWithParam<sample::NamedSheet> {};

TEST_P(Picture, looks_as_it_did_when_somebody_looked) {
  const std::string name = GetParam().name;
  const auto made = look::pictures(sample::pdf_of(GetParam(), sample::two_waves()), 30, name);
  ASSERT_FALSE(made.empty());
  const std::filesystem::path kept = std::filesystem::path(BENCHBELL_SOURCE_DIR) /
                                     "tests/data/sheets" / (name + ".png");
  if (std::getenv("BENCHBELL_NEW_PICTURES") != nullptr) {
    std::filesystem::copy_file(made.front(), kept,
                               std::filesystem::copy_options::overwrite_existing);
  }
  // One dot in a hundred may differ: another version of the typeface moves edges, not words.
  EXPECT_LE(different(picture(made.front()), picture(kept.string())), 0.01) << made.front();
}

INSTANTIATE_TEST_SUITE_P(Sheets, Picture, testing::ValuesIn(sample::all_sheets()),
                         [](const auto& info) {
                           std::string n = info.param.name;
                           std::replace(n.begin(), n.end(), '-', '_');
                           return n;
                         });

TEST(PictureCompare, a_moved_line_is_noticed) {
  const auto sheets = sample::all_sheets();
  sample::Told other = sample::two_waves();
  other.lesson.bell += base::minutes(10);
  const auto one = look::pictures(sample::pdf_of(sheets.front(), sample::two_waves()), 30, "one");
  const auto two = look::pictures(sample::pdf_of(sheets.front(), other), 30, "two");
  EXPECT_GT(different(picture(one.front()), picture(two.front())), 0.01);
}

}  // namespace
