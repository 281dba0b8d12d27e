#include "print/sheets/risk_sheet.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <zip.h>

#include "look_at_pdf.h"
#include "sample.h"
#include "sample_dishes.h"

namespace {

using namespace print::sheets;
using testing::Contains;
using testing::Field;
using testing::HasSubstr;
using testing::Not;

kitchen::Lesson lesson_of(kitchen::Dish dish) {
  kitchen::Lesson lesson = sample::two_waves().lesson;
  lesson.dishes = {std::move(dish)};
  for (kitchen::Cook& cook : lesson.cooks) cook.dishes = {0};
  return lesson;
}

TEST(RiskSheet, lists_the_hazards_the_steps_have_and_no_others) {
  const auto fried = risks(lesson_of(sample::spring_rolls()));
  EXPECT_THAT(fried, Contains(Field(&RiskLine::hazard, "Hot oil")));
  const auto baked = risks(lesson_of(sample::scones()));
  EXPECT_THAT(baked, Not(Contains(Field(&RiskLine::hazard, "Hot oil"))));
  EXPECT_THAT(baked, Contains(Field(&RiskLine::hazard, "Ovens and grills")));
  for (const auto& lines : {fried, baked})
    EXPECT_THAT(lines, Contains(Field(&RiskLine::hazard, HasSubstr("allergens"))));
}

TEST(RiskSheet, names_what_the_house_rules_bar_and_where) {
  kitchen::Dish scones = sample::scones();
  scones.ingredients = {{"self-raising flour", 220, "g", {}, true, "", "", false}};
  kitchen::Lesson lesson = lesson_of(scones);
  const auto tasting = Field(&RiskLine::hazard, "Raw mixtures tasted or licked");
  EXPECT_THAT(risks(lesson), Not(Contains(tasting)));
  lesson.rules.no_raw_tasting = true;
  EXPECT_THAT(risks(lesson), Contains(tasting));
  lesson.purpose = kitchen::Purpose::kTakeHome;
  lesson.rules.food_home_chilled = true;
  lesson.dishes[0].keep_chilled = true;
  EXPECT_THAT(risks(lesson), Contains(Field(&RiskLine::hazard, "Food warm on the way home")));
}

TEST(RiskSheet, defers_to_the_employer_and_leaves_room_to_sign) {
  const std::string said = look::words(pdf_of_risk_sheet(lesson_of(sample::spring_rolls())));
  EXPECT_THAT(said, HasSubstr("Your employer's and local rules come first."));
  EXPECT_THAT(said, HasSubstr("signature"));
  for (const char* step : {"1 Hazard", "2 Who might", "3 What is done", "4 What more", "5 Looked"})
    EXPECT_THAT(said, HasSubstr(step));
}

/// One file of a package, read with libzip.
std::string part(const std::string& package, const char* name) {
  zip_error_t error;
  zip_source_t* source = zip_source_buffer_create(package.data(), package.size(), 0, &error);
  zip_t* archive = zip_open_from_source(source, ZIP_RDONLY, &error);
  if (archive == nullptr) return "";
  zip_stat_t stat;
  std::string out;
  if (zip_stat(archive, name, 0, &stat) == 0) {
    out.resize(stat.size);
    zip_file_t* file = zip_fopen(archive, name, 0);
    if (zip_fread(file, out.data(), stat.size) < 0) out.clear();
    zip_fclose(file);
  }
  zip_discard(archive);
  return out;
}

// ISO/IEC 26300-1:2015, part 3, 3.3: the file "mimetype" is first, stored, without an extra field,
// so that the type stands at byte 38.
TEST(RiskSheet, the_package_begins_with_its_stored_type) {
  const std::string odt = odt_of_risk_sheet(lesson_of(sample::spring_rolls()));
  EXPECT_EQ(odt.substr(0, 4), "PK\x03\x04");
  EXPECT_EQ(odt.substr(8, 2), std::string("\0\0", 2));   // method: stored
  EXPECT_EQ(odt.substr(28, 2), std::string("\0\0", 2));  // no extra field
  EXPECT_EQ(odt.substr(30, 8), "mimetype");
  EXPECT_EQ(odt.substr(38, 39), "application/vnd.oasis.opendocument.text");
  EXPECT_THAT(part(odt, "META-INF/manifest.xml"), HasSubstr("content.xml"));
  EXPECT_THAT(part(odt, "styles.xml"), HasSubstr("landscape"));
}

TEST(RiskSheet, the_package_says_what_the_page_says_and_is_the_same_twice) {
  kitchen::Lesson lesson = lesson_of(sample::spring_rolls());
  lesson.title = "9R <rolls> & \"oil\"";
  const std::string odt = odt_of_risk_sheet(lesson);
  const std::string content = part(odt, "content.xml");
  for (const RiskLine& line : risks(lesson)) EXPECT_THAT(content, HasSubstr(line.hazard));
  EXPECT_THAT(content, HasSubstr("9R &lt;rolls&gt; &amp;"));
  EXPECT_EQ(odt, odt_of_risk_sheet(lesson));
}

}  // namespace
