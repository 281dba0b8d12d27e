#include "serve/http/static_files.h"

#include <gtest/gtest.h>

#include <stdexcept>

#include "client.h"
#include "serve/http/respond.h"

namespace serve::http {
namespace {

const std::string kPlain(3000, 'x');
const std::string kPacked = gzipped(kPlain);

StaticFiles files() {
  Asset script{"/assets/page-4f1a.js", kPlain, kPacked, "text/javascript", "4f1a", true};
  Asset page{"/index.html", "<p>", "", "text/html; charset=utf-8", "77", false};
  return StaticFiles({script, page});
}

Response asked(const std::string& path, Pairs headers = {}) {
  Request request;
  request.path = path;
  request.headers = std::move(headers);
  return files()(request);
}

std::string header(const Response& response, std::string_view name) {
  const std::string* found = find_header(response.headers, name);
  return found == nullptr ? "(none)" : *found;
}

TEST(StaticFiles, TheFormThatTheBrowserTakes) {
  const Response plain = asked("/assets/page-4f1a.js");
  EXPECT_EQ(plain.body.view(), kPlain);
  EXPECT_EQ(header(plain, "Content-Encoding"), "(none)");
  EXPECT_EQ(header(plain, "ETag"), "\"4f1a\"");
  const Response packed = asked("/assets/page-4f1a.js", {{"accept-encoding", "br, gzip"}});
  EXPECT_EQ(http_test::unzipped(std::string(packed.body.view())), kPlain);
  EXPECT_EQ(header(packed, "Content-Encoding"), "gzip");
  EXPECT_EQ(header(packed, "ETag"), "\"4f1a-gz\"");
  EXPECT_EQ(header(packed, "Vary"), "Accept-Encoding");
  EXPECT_EQ(packed.content_type, "text/javascript");
}

TEST(StaticFiles, HowLongItMayBeKept) {
  EXPECT_EQ(header(asked("/assets/page-4f1a.js"), "Cache-Control"),
            "public, max-age=31536000, immutable");
  EXPECT_EQ(header(asked("/index.html"), "Cache-Control"), "no-cache");
}

TEST(StaticFiles, WhatTheBrowserHasIsNotSentAgain) {
  for (const char* known : {"\"77\"", "W/\"77\"", "\"1\", \"77\"", "*"}) {
    const Response same = asked("/index.html", {{"If-None-Match", known}});
    EXPECT_EQ(same.status, 304) << known;
    EXPECT_TRUE(same.body.empty());
    EXPECT_EQ(header(same, "ETag"), "\"77\"");
  }
  EXPECT_EQ(asked("/index.html", {{"If-None-Match", "\"7\""}}).status, 200);
  EXPECT_EQ(asked("/assets/page-4f1a.js", {{"If-None-Match", "\"4f1a-gz\""}}).status, 304);
}

TEST(StaticFiles, NoSuchFile) {
  EXPECT_EQ(asked("/assets/../secret").status, 404);
  EXPECT_EQ(asked("/assets").status, 404);
  EXPECT_THROW(
      StaticFiles({Asset{"/a", "", "", "", "", false}, Asset{"/a", "", "", "", "", false}}),
      std::invalid_argument);
}

TEST(StaticFiles, WhoTakesGzip) {
  const auto takes = [](const char* header) {
    Request request;
    request.headers = {{"Accept-Encoding", header}};
    return accepts_gzip(request);
  };
  EXPECT_TRUE(takes("gzip"));
  EXPECT_TRUE(takes("deflate, GZip;q=0.5"));
  EXPECT_TRUE(takes("*"));
  EXPECT_FALSE(takes("gzip;q=0"));
  EXPECT_FALSE(takes("gzip; q=0.000, *"));
  EXPECT_FALSE(takes("*;q=0"));
  EXPECT_FALSE(takes("br"));
  EXPECT_FALSE(accepts_gzip(Request{}));
}

}  // namespace
}  // namespace serve::http
