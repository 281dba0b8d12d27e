#include "serve/http/respond.h"

#include <gtest/gtest.h>

#include <stdexcept>

#include "client.h"

namespace serve::http {
namespace {

std::string all(const Response& response, bool secure = false) {
  return head_of(response, secure, 784111777) + std::string(end_of_head(true, false));
}

bool has(const std::string& head, const std::string& line) {
  return head.find("\r\n" + line + "\r\n") != std::string::npos;
}

TEST(Respond, EveryAnswerIsGuarded) {
  const std::string head = all(text(200, "hello"));
  EXPECT_EQ(head.rfind("HTTP/1.1 200 OK\r\nDate: Sun, 06 Nov 1994 08:49:37 GMT\r\n", 0), 0U);
  EXPECT_NE(head.find("Content-Security-Policy: default-src 'self'"), std::string::npos);
  EXPECT_NE(head.find("frame-ancestors 'none'"), std::string::npos);
  EXPECT_TRUE(has(head, "X-Content-Type-Options: nosniff"));
  EXPECT_TRUE(has(head, "Referrer-Policy: no-referrer"));
  EXPECT_NE(head.find("Permissions-Policy: camera=()"), std::string::npos);
  EXPECT_TRUE(has(head, "Cross-Origin-Opener-Policy: same-origin"));
  EXPECT_TRUE(has(head, "Cross-Origin-Resource-Policy: same-origin"));
  EXPECT_TRUE(has(head, "Cross-Origin-Embedder-Policy: require-corp"));
  EXPECT_TRUE(has(head, "Cache-Control: no-store"));
  EXPECT_TRUE(has(head, "Content-Length: 5"));
  EXPECT_EQ(head.find("Strict-Transport-Security"), std::string::npos);
  EXPECT_TRUE(has(all(text(200, ""), true), "Strict-Transport-Security: max-age=31536000"));
}

TEST(Respond, AHandlersOwnHeaderTakesThePlaceOfTheServers) {
  Response response = html(200, "x");
  response.headers = {{"cache-control", "max-age=60"}};
  const std::string head = all(response);
  EXPECT_TRUE(has(head, "cache-control: max-age=60"));
  EXPECT_EQ(head.find("no-store"), std::string::npos);
}

TEST(Respond, AHeaderThatWouldSplitTheAnswerIsRefused) {
  for (const char* bad : {"/a\r\nSet-Cookie: x=1", "/a\n", "/a\rb", "/a\x01", "/a\x7f"}) {
    EXPECT_THROW(static_cast<void>(all(see_other(bad))), std::invalid_argument) << bad;
    Response response;
    response.content_type = bad;
    EXPECT_THROW(static_cast<void>(all(response)), std::invalid_argument) << bad;
  }
  Response named;
  named.headers = {{"X: a\r\nY", "b"}};
  EXPECT_THROW(static_cast<void>(all(named)), std::invalid_argument);
  EXPECT_THROW(static_cast<void>(all(see_other(std::string("/a\0b", 4)))), std::invalid_argument);
}

TEST(Respond, NothingIsSaidOfABodyThatCannotBe) {
  EXPECT_EQ(all(no_content()).find("Content-Length"), std::string::npos);
  Response same;
  same.status = 304;
  EXPECT_EQ(all(same).find("Content-Length"), std::string::npos);
  EXPECT_TRUE(has(all(see_other("/plans")), "Content-Length: 0"));
  EXPECT_TRUE(has(all(see_other("/plans")), "Location: /plans"));
}

TEST(Respond, TheConnectionIsSaidAsItMustBe) {
  EXPECT_EQ(end_of_head(false, false), "Connection: close\r\n\r\n");
  EXPECT_EQ(end_of_head(true, false), "\r\n");
  EXPECT_EQ(end_of_head(true, true), "Connection: keep-alive\r\n\r\n");
}

TEST(Respond, LongTextsArePackedAndComeBackWhole) {
  std::string plain;
  for (int i = 0; i < 500; ++i) plain += "\"minutes\":" + std::to_string(i) + ',';
  Response response = json(200, plain);
  compress(true, response);
  EXPECT_EQ(*find_header(response.headers, "Content-Encoding"), "gzip");
  EXPECT_EQ(*find_header(response.headers, "Vary"), "Accept-Encoding");
  EXPECT_LT(response.body.view().size(), plain.size() / 2);
  EXPECT_EQ(http_test::unzipped(std::string(response.body.view())), plain);
}

TEST(Respond, WhatIsShortOrPackedOrNoTextIsLeftAlone) {
  const auto packed = [](Response response, bool takes) {
    compress(takes, response);
    return find_header(response.headers, "Content-Encoding") != nullptr;
  };
  const std::string lots(5000, 'a');
  EXPECT_TRUE(packed(json(200, lots), true));
  EXPECT_FALSE(packed(json(200, lots), false));
  EXPECT_FALSE(packed(json(200, std::string(999, 'a')), true));
  Response picture;
  picture.content_type = "image/png";
  picture.body = lots;
  EXPECT_FALSE(packed(picture, true));
  Response refused_packing = json(200, lots);
  compress(false, refused_packing);
  EXPECT_EQ(*find_header(refused_packing.headers, "Vary"), "Accept-Encoding");
}

}  // namespace
}  // namespace serve::http
