#include "base/text.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <clocale>

namespace {

using namespace base;

TEST(Text, NamesAreJoinedAsASentenceDoes) {
  EXPECT_EQ(joined({}), "");
  EXPECT_EQ(joined({"salt"}), "salt");
  EXPECT_EQ(joined({"salt", "oil", "rice"}), "salt, oil and rice");
  EXPECT_EQ(joined({"salt", "oil"}, "or"), "salt or oil");
}

TEST(Text, NumbersHaveAPointWhateverTheLocale) {
  const std::string before = std::setlocale(LC_ALL, nullptr);
  std::setlocale(LC_ALL, "de_DE.UTF-8");  // where it is not installed the test still holds
  EXPECT_EQ(number_text(0.5), "0.5");
  EXPECT_EQ(number_in("0.5"), 0.5);
  std::setlocale(LC_ALL, before.c_str());
}

TEST(Text, ANumberWithAnythingBehindItIsNoNumber) {
  EXPECT_EQ(number_in("5 min"), std::nullopt);
  EXPECT_EQ(number_in("0,5"), std::nullopt);
  EXPECT_EQ(number_in(""), std::nullopt);
}

TEST(Text, MinutesAreSaidWithoutFalsePrecision) {
  EXPECT_EQ(minutes_text(minutes(20)), "20 min");
  EXPECT_EQ(minutes_text(Seconds{90}), "1.5 min");
  EXPECT_EQ(minutes_text(Seconds{20}), "0.3 min");
}

TEST(Text, APersonsWordsAreShownShortAndOnOneLine) {
  EXPECT_EQ(in_quotes("a\nb"), "'a b'");
  EXPECT_EQ(letters(base::in_quotes(std::string(500, 'x'))), 63U);
}

TEST(Text, TheNearestWordIsOneSlipAway) {
  const std::vector<std::string> known = {"minutes", "attention", "follows"};
  EXPECT_EQ(nearest("minuts", known), "minutes");
  EXPECT_EQ(nearest("mintues", known), "minutes");
  EXPECT_EQ(nearest("Follows", known), "follows");
}

TEST(Text, AWordLikeNothingKnownHasNoNearest) {
  EXPECT_EQ(nearest("xyzzy", {"minutes", "attention"}), std::nullopt);
  EXPECT_EQ(nearest("minutes", {}), std::nullopt);
}

RC_GTEST_PROP(Text, EditDistanceIsZeroForEqualWordsOnlyAndTheSameBothWays,
              (std::string a, std::string b)) {
  a = a.substr(0, 30);
  b = b.substr(0, 30);
  RC_ASSERT(edit_distance(a, b) == edit_distance(b, a));
  RC_ASSERT((edit_distance(a, b) == 0) == (a == b));
}

TEST(Text, Utf8IsAcceptedInFull) {
  EXPECT_EQ(not_utf8("crème brûlée, 180 °C, Yağmur, 饺子, 🍞"), std::nullopt);
}

TEST(Text, TheFirstByteThatIsNotUtf8IsFound) {
  EXPECT_EQ(not_utf8("cr\xE8me"), 2U);          // Latin-1
  EXPECT_EQ(not_utf8("a\xC0\x80"), 1U);         // overlong
  EXPECT_EQ(not_utf8("\xED\xA0\x80"), 0U);      // half of a surrogate pair
  EXPECT_EQ(not_utf8("abc\xE2\x82"), 3U);       // cut off
  EXPECT_EQ(not_utf8("\xF4\x90\x80\x80"), 0U);  // beyond the last code point
}

TEST(Text, LettersAreCountedNotBytes) {
  EXPECT_EQ(letters("crème"), 5U);
  EXPECT_EQ(first_letters("crème", 3), "crè");
}

}  // namespace
