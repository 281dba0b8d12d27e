#include "serve/http/message.h"

#include <gtest/gtest.h>

#include <stdexcept>

namespace serve::http {
namespace {

TEST(Message, HeadersAreFoundWhateverTheirCase) {
  Request request;
  request.headers = {{"Content-Type", "a"}, {"content-type", "b"}};
  ASSERT_NE(request.header("CONTENT-TYPE"), nullptr);
  EXPECT_EQ(*request.header("CONTENT-TYPE"), "a");
  EXPECT_EQ(request.header("Content-Typ"), nullptr);
  request.query = {{"Day", "1"}};
  EXPECT_EQ(request.asked("day"), nullptr);
  EXPECT_EQ(*request.asked("Day"), "1");
}

TEST(Message, AParameterThatTheRouteLacksIsAFaultOfTheProgram) {
  EXPECT_THROW(static_cast<void>(Request{}.parameter("id")), std::out_of_range);
}

TEST(Message, MethodsAreExactWords) {
  for (const auto method :
       {Method::kGet, Method::kHead, Method::kPost, Method::kPut, Method::kPatch, Method::kDelete})
    EXPECT_EQ(method_in(method_text(method)), method);
  EXPECT_EQ(method_in("get"), Method::kOther);
  EXPECT_EQ(method_in("TRACE"), Method::kOther);
}

TEST(Message, ABodyIsOwnSharedOrLasting) {
  EXPECT_EQ(Body("own").view(), "own");
  EXPECT_EQ(Body(std::make_shared<const std::string>("shared")).view(), "shared");
  EXPECT_EQ(Body(std::shared_ptr<const std::string>()).view(), "");
  EXPECT_EQ(Body::lasting("lasting").view(), "lasting");
  EXPECT_TRUE(Body().empty());
}

TEST(Message, DatesAreThoseOfTheStandard) {
  EXPECT_EQ(http_date(784111777), "Sun, 06 Nov 1994 08:49:37 GMT");  // the example of RFC
                                                                     // 9110, 5.6.7
  EXPECT_EQ(http_date(0), "Thu, 01 Jan 1970 00:00:00 GMT");
}

TEST(Message, CookiesAreStrictAndRefuseWhatTheyCannotHold) {
  Cookie cookie;
  cookie.name = "session";
  cookie.value = "abc";
  EXPECT_EQ(set_cookie(cookie), "session=abc; Path=/; HttpOnly; SameSite=Strict");
  cookie.secure = true;
  cookie.max_age_seconds = 60;
  EXPECT_EQ(set_cookie(cookie),
            "session=abc; Path=/; Max-Age=60; HttpOnly; SameSite=Strict; Secure");
  for (const char* bad : {"a b", "a;b", "a\r\nSet-Cookie: x", "a\"", "a,b", "a\\b", "é"}) {
    cookie.value = bad;
    EXPECT_THROW(static_cast<void>(set_cookie(cookie)), std::invalid_argument) << bad;
  }
  cookie.value = "a";
  cookie.name = "a=b";
  EXPECT_THROW(static_cast<void>(set_cookie(cookie)), std::invalid_argument);
}

TEST(Message, AnotherSiteIsToldFromOurOwn) {
  const auto from = [](Pairs headers) {
    Request request;
    request.host = "kitchen-pc:8080";
    request.headers = std::move(headers);
    return from_another_site(request);
  };
  EXPECT_FALSE(from({}));
  EXPECT_FALSE(from({{"Sec-Fetch-Site", "same-origin"}}));
  EXPECT_FALSE(from({{"Sec-Fetch-Site", "none"}}));
  EXPECT_TRUE(from({{"Sec-Fetch-Site", "same-site"}}));
  EXPECT_TRUE(from({{"Sec-Fetch-Site", "cross-site"}, {"Origin", "http://kitchen-pc:8080"}}));
  EXPECT_FALSE(from({{"Origin", "http://Kitchen-PC:8080"}}));
  EXPECT_TRUE(from({{"Origin", "http://kitchen-pc"}}));
  EXPECT_TRUE(from({{"Origin", "http://evil.example"}}));
  EXPECT_TRUE(from({{"Origin", "null"}}));
}

TEST(Message, JsonStringsAreValidWhateverIsInThem) {
  EXPECT_EQ(json_quoted("a\"b\\c\nd\x01\x1f"), "\"a\\\"b\\\\c\\nd\\u0001\\u001f\"");
  EXPECT_EQ(json_quoted("crème"), "\"crème\"");
  EXPECT_EQ(json_quoted("a\xff"
                        "b\xc3"),
            "\"a\xEF\xBF\xBD"
            "b\xEF\xBF\xBD\"");
}

TEST(Message, ARefusalNamesEveryProblem) {
  const Response response = refused(422,
                                    {base::Problem{"a.b", "f", "/x/0", "No \"oven\".", "Buy one."},
                                     base::Problem{"c", "", "", "m", "r"}});
  EXPECT_EQ(response.status, 422);
  EXPECT_EQ(response.content_type, "application/json");
  EXPECT_EQ(
      response.body.view(),
      R"({"problems":[{"code":"a.b","where":"/x/0","message":"No \"oven\".","remedy":"Buy one."},)"
      R"({"code":"c","where":"","message":"m","remedy":"r"}]})");
}

TEST(Message, TooManySaysWhenToTryAgain) {
  EXPECT_EQ(*find_header(too_many(0.2).headers, "Retry-After"), "1");
  EXPECT_EQ(*find_header(too_many(61.1).headers, "Retry-After"), "62");
}

TEST(Message, AFileToKeepHasItsNameInBothAlphabets) {
  const auto how = [](std::string_view name) {
    return *find_header(download("text/csv", name, "x").headers, "Content-Disposition");
  };
  EXPECT_EQ(how("order.csv"), "attachment; filename=\"order.csv\"");
  EXPECT_EQ(how("crème.csv"),
            "attachment; filename=\"cr__me.csv\"; filename*=UTF-8''cr%C3%A8me.csv");
  EXPECT_EQ(how("a\"\r\nb/c").find_first_of("\r\n/"), std::string::npos);
}

}  // namespace
}  // namespace serve::http
