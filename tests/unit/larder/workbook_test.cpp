#include "print/workbook.h"

#include <gtest/gtest.h>

#include <cstdio>
#include <fstream>
#include <sstream>

namespace {

TEST(Workbook, IsAZipArchiveOnDiskAndNothingIsLeftBeside) {
  const std::string path = testing::TempDir() + "larder_workbook_test.xlsx";
  const auto written = print::write_workbook(
      path, {{"Order [1]", {{"food", "price"}, {"=HYPERLINK(\"x\")", "1.20"}}, {1}}});
  ASSERT_TRUE(written);
  std::ifstream file(path, std::ios::binary);
  std::stringstream bytes;
  bytes << file.rdbuf();
  EXPECT_EQ(bytes.str().substr(0, 2), "PK");  // ECMA-376 part 2: a ZIP package
  EXPECT_FALSE(std::ifstream(path + ".part").good());
  std::remove(path.c_str());
}

TEST(Workbook, ThatCannotBeWrittenIsAProblem) {
  const auto written = print::write_workbook("/nowhere/at/all.xlsx", {{"a", {{"b"}}, {}}});
  ASSERT_FALSE(written);
  EXPECT_EQ(written.problems()[0].code, "file.unwritable");
}

}  // namespace
