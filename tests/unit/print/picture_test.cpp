#include "print/picture.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <regex>

#include "print/facts.h"
#include "print/words.h"
#include "sample.h"

namespace {

bool has(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

struct Box {
  double x, y, w, h;
};

std::vector<Box> rects(const std::string& svg) {
  static const std::regex rect(
      "<rect class=\"[a-z0-9 ]+\" x=\"([-0-9.]+)\" y=\"([-0-9.]+)\" width=\"([-0-9.]+)\" "
      "height=\"([-0-9.]+)\"");
  std::vector<Box> out;
  for (auto it = std::sregex_iterator(svg.begin(), svg.end(), rect); it != std::sregex_iterator();
       ++it) {
    out.push_back(
        {std::stod((*it)[1]), std::stod((*it)[2]), std::stod((*it)[3]), std::stod((*it)[4])});
  }
  return out;
}

Box frame(const std::string& svg) {
  static const std::regex size("viewBox=\"0 0 ([0-9.]+) ([0-9.]+)\"");
  std::smatch found;
  if (!std::regex_search(svg, found, size)) return {0, 0, 0, 0};
  return {0, 0, std::stod(found[1]), std::stod(found[2])};
}

std::size_t count(const std::string& text, const std::string& part) {
  std::size_t n = 0;
  for (std::size_t i = text.find(part); i != std::string::npos; i = text.find(part, i + 1)) ++n;
  return n;
}

/// Every element opened is closed, in order. Enough for what this program writes.
bool well_formed(const std::string& xml) {
  static const std::regex element("<(/?)([a-z]+)[^>]*?(/?)>");
  std::vector<std::string> open;
  for (auto it = std::sregex_iterator(xml.begin(), xml.end(), element);
       it != std::sregex_iterator(); ++it) {
    if ((*it)[1].length() > 0) {
      if (open.empty() || open.back() != (*it)[2]) return false;
      open.pop_back();
    } else if ((*it)[3].length() == 0) {
      open.push_back((*it)[2]);
    }
  }
  return open.empty();
}

TEST(Picture, each_bar_lies_inside_the_picture) {
  for (const sample::Told& told :
       {sample::two_waves(), sample::over_the_bell(), sample::assessed(30)}) {
    for (const int width : {640, 1280, 1920}) {
      const std::string svg = print::picture_svg(told.lesson, told.answer, {width});
      const Box all = frame(svg);
      EXPECT_EQ(all.w, width);
      const std::vector<Box> boxes = rects(svg);
      EXPECT_GT(boxes.size(), 100U);
      for (const Box& b : boxes) {
        EXPECT_GE(b.x, 0);
        EXPECT_GE(b.y, 0);
        EXPECT_GE(b.w, 0);
        EXPECT_LE(b.x + b.w, all.w + 0.1);
        EXPECT_LE(b.y + b.h, all.h + 0.1);
      }
    }
  }
}

TEST(Picture, every_task_of_every_cook_can_be_focused_and_says_what_when_and_where) {
  const sample::Told told = sample::two_waves();
  const std::string svg = print::picture_svg(told.lesson, told.answer, {});
  for (const print::Task& task : told.answer.plan->tasks) {
    if (task.cook < 0) continue;
    const std::string label = "aria-label=\"" +
                              print::escaped(print::task_words(told.lesson, task)) +
                              "\" tabindex=\"0\"";
    EXPECT_TRUE(has(svg, label)) << label;
  }
}

TEST(Picture, names_with_signs_of_markup_are_escaped_everywhere) {
  sample::Told told = sample::two_waves();
  told.lesson.title = "9K <script>alert(1)</script> & \"more\"";
  told.lesson.cooks[0].name = "A<b> & \"C\"";
  told.lesson.dishes[0].name = "Soup <x> & 'y'";
  told.lesson.dishes[0].tag = "<&";
  told.lesson.dishes[0].method[0].says = "Weigh <i>\"all\"</i> & sift.";
  told.lesson.dishes[0].method[0].brief = "W<\"&>";
  told.lesson.windows[0].name = "Reg<ister> & \"so\"";
  told.answer.plan->checkpoints[0].says = "pans <on> & \"hot\"";
  told.answer.last_safe_starts[0].instead = "<b>cold</b> & \"late\"";
  told.answer.notes = {"<i>note</i> & \"this\""};
  const std::string svg = print::picture_svg(told.lesson, told.answer, {});
  const std::string html = print::picture_html(told.lesson, told.answer, {});
  for (const std::string raw : {"<script>alert", "<b>", "<i>", "<x>", "<on>", "<ister>", " & "}) {
    EXPECT_FALSE(has(svg, raw)) << raw;
    EXPECT_FALSE(has(html, raw)) << raw;
  }
  EXPECT_TRUE(has(svg, "A&lt;b&gt; &amp; &quot;C&quot;"));
  EXPECT_TRUE(well_formed(svg));
}

TEST(Picture, the_file_is_well_formed) {
  for (const sample::Told& told :
       {sample::two_waves(), sample::over_the_bell(), sample::assessed(30), sample::nothing()}) {
    EXPECT_TRUE(well_formed(print::picture_svg(told.lesson, told.answer, {})));
  }
}

TEST(Picture, nothing_is_fetched_from_elsewhere) {
  const sample::Told told = sample::two_waves();
  std::string html = print::picture_html(told.lesson, told.answer, {});
  const std::string xml_name = "xmlns=\"http://www.w3.org/2000/svg\"";  // a name, not an address to
                                                                        // fetch
  html.erase(html.find(xml_name), xml_name.size());
  for (const std::string part : {"http:", "https:", "src=", "@import", "url(h", "<link"})
    EXPECT_FALSE(has(html, part)) << part;
}

TEST(Picture, the_page_holds_the_printed_twin_with_the_same_figures) {
  const sample::Told told = sample::two_waves();
  const std::string html = print::picture_html(told.lesson, told.answer, {});
  EXPECT_TRUE(has(html, "<h1 class=\"fits\">It fits: 6 min spare. Two waves.</h1>"));
  EXPECT_TRUE(has(html,
                  "<th scope=\"row\">11:53 to 12:07</th><td>CS</td><td>Bake until golden "
                  "(leave)</td><td>leave</td>"));
  EXPECT_TRUE(has(html, "<caption>Last safe starts</caption>"));
  EXPECT_TRUE(has(html, "role=\"status\""));
  EXPECT_TRUE(has(html, "@media print"));
  for (const kitchen::Cook& cook : told.lesson.cooks)
    EXPECT_TRUE(has(html, "<td>" + cook.name + "</td>"));
}

TEST(Picture, a_lesson_that_does_not_fit_shows_causes_and_remedies_before_the_picture) {
  const sample::Told told = sample::over_the_bell();
  const std::string html = print::picture_html(told.lesson, told.answer, {});
  EXPECT_LT(html.find("12 sets of washing up"), html.find("Work in threes"));
  EXPECT_LT(html.find("Work in threes"), html.find("<svg"));
  const std::string svg = print::picture_svg(told.lesson, told.answer, {});
  EXPECT_LT(svg.find(">12 sets of washing up"), svg.find("class=\"wave\""));
}

TEST(Picture, thirty_cooks_with_three_dishes_have_rows_of_eighteen_pixels) {
  const sample::Told told = sample::assessed(30);
  const std::string svg = print::picture_svg(told.lesson, told.answer, {});
  EXPECT_EQ(count(svg, "class=\"cook\""), 30U);
  // places 1 and 2 of a bay: 18 px apart
  static const std::regex place("<text class=\"b\" x=\"44\" y=\"([0-9.]+)\">A([12])</text>");
  std::vector<double> at;
  for (auto it = std::sregex_iterator(svg.begin(), svg.end(), place); it != std::sregex_iterator();
       ++it)
    at.push_back(std::stod((*it)[1]));
  ASSERT_EQ(at.size(), 2U);
  EXPECT_NEAR(at[1] - at[0], 18, 0.11);
  EXPECT_LT(frame(svg).h, 1500);
}

TEST(Picture, the_bell_is_two_upright_lines_and_attention_has_five_words) {
  const sample::Told told = sample::two_waves();
  const std::string svg = print::picture_svg(told.lesson, told.answer, {});
  EXPECT_EQ(count(svg, "class=\"bell\""), 1U);
  for (const std::string word : {"hands", "watch", "leave", "grown-up", "clean"})
    EXPECT_TRUE(has(svg, ">" + word + "</text>"));
}

TEST(Picture, the_chance_is_twenty_marks_rings_before_the_bell_and_diamonds_after) {
  const sample::Told told = sample::two_waves();
  for (const std::string& picture : {print::picture_svg(told.lesson, told.answer, {}),
                                     print::picture_html(told.lesson, told.answer, {})}) {
    EXPECT_EQ(count(picture, "class=\"ring\""), 16U);
    EXPECT_EQ(count(picture, "class=\"late\""), 4U);
  }
}

TEST(Picture, empty_lists_make_a_small_picture) {
  sample::Told told = sample::nothing();
  EXPECT_GT(frame(print::picture_svg(told.lesson, told.answer, {})).h, 0);
  told.answer.plan.reset();
  EXPECT_FALSE(has(print::picture_html(told.lesson, told.answer, {}), "<svg"));
}

}  // namespace
