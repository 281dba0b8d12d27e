#include "serve/http/target.h"

#include <gtest/gtest.h>

namespace serve::http {
namespace {

std::string path(std::string_view raw) {
  const auto target = target_in(raw);
  return target ? target->path : "(refused)";
}

TEST(Target, PathsAreDecodedAndPutInOneForm) {
  EXPECT_EQ(path("/"), "/");
  EXPECT_EQ(path("/api/dishes"), "/api/dishes");
  EXPECT_EQ(path("/api//dishes/"), "/api/dishes");
  EXPECT_EQ(path("///"), "/");
  EXPECT_EQ(path("/a%20b%2Bc+d"), "/a b+c+d");  // RFC 3986: a plus is a plus in a path
  EXPECT_EQ(path("/cr%C3%A8me"), "/crème");
  EXPECT_EQ(path("/a?b=/../c"), "/a");
  EXPECT_EQ(path("/.hidden/..b/c.."), "/.hidden/..b/c..");
}

TEST(Target, AWayOutOfTheFolderIsRefusedHoweverItIsWritten) {
  for (const char* raw : {"/..",
                          "/../etc/passwd",
                          "/assets/../../etc",
                          "/%2e%2e/etc",
                          "/%2E./x",
                          "/.%2e",
                          "/a/.",
                          "/./a",
                          "/%2e",
                          "/a%2fb",
                          "/a%2F..%2Fb",
                          "/a\\..\\b",
                          "/a%5cb",
                          "/%00",
                          "/a%0d%0ab",
                          "/a%7f",
                          "/%",
                          "/%4",
                          "/%zz",
                          "/%c3",
                          "/%c0%ae%c0%ae/",
                          "/%ed%a0%80",
                          "/a#b"})
    EXPECT_EQ(path(raw), "(refused)") << raw;
}

TEST(Target, OnlyPathsAndWholeAddressesAreTargets) {
  for (const char* raw : {"", "*", "hello", "localhost:80", "ftp://a/b", "http://", "http:///x"})
    EXPECT_EQ(path(raw), "(refused)") << raw;
  // RFC 9112, 3.2.2: a server must accept the absolute form.
  const auto whole = target_in("http://kitchen-pc:8080/plans?day=1");
  ASSERT_TRUE(whole);
  EXPECT_EQ(whole->authority, "kitchen-pc:8080");
  EXPECT_EQ(whole->path, "/plans");
  EXPECT_EQ(whole->query, (Pairs{{"day", "1"}}));
  EXPECT_EQ(path("http://kitchen-pc"), "/");
}

TEST(Target, AQueryIsReadAsAFormIsSent) {
  const auto target = target_in("/x?a=1&b=two+words&a=%26&empty=&flag&&=v&c=d=e");
  ASSERT_TRUE(target);
  EXPECT_EQ(target->query, (Pairs{{"a", "1"},
                                  {"b", "two words"},
                                  {"a", "&"},
                                  {"empty", ""},
                                  {"flag", ""},
                                  {"", "v"},
                                  {"c", "d=e"}}));
  EXPECT_EQ(form_in("note=one%0D%0Atwo"), (Pairs{{"note", "one\r\ntwo"}}));
  for (const char* raw : {"a=%", "a=%0", "a=%00", "%1b=a", "a=%ff"})
    EXPECT_FALSE(form_in(raw)) << raw;
  EXPECT_FALSE(target_in("/x?a=%00"));
}

TEST(Target, CookiesAreReadAndOddOnesPassedOver) {
  EXPECT_EQ(cookies_in("session=abc; theme=\"dark\";odd; =x;  b = c=d "),
            (Pairs{{"session", "abc"}, {"theme", "dark"}, {"b", "c=d"}}));
  EXPECT_TRUE(cookies_in("").empty());
}

TEST(Hosts, NamesAddressesAndPorts) {
  const auto local = host_in("LocalHost:8080");
  ASSERT_TRUE(local);
  EXPECT_EQ(local->name, "localhost");
  EXPECT_EQ(local->port, 8080);
  EXPECT_TRUE(local->loopback);
  EXPECT_FALSE(local->address);
  EXPECT_TRUE(host_in("127.0.0.53")->loopback);
  EXPECT_TRUE(host_in("[::1]:80")->loopback);
  EXPECT_TRUE(host_in("192.0.2.7")->address);
  EXPECT_FALSE(host_in("192.0.2.7")->loopback);
  EXPECT_FALSE(host_in("localhost.example")->loopback);
  for (const char* raw : {"", ":80", "a b", "a:0", "a:65536", "a:8x", "a:1:2", "[::1", "[x]",
                          "[::1]x", "a/b", "user@host", "café"})
    EXPECT_FALSE(host_in(raw)) << raw;
}

TEST(Hosts, OnLoopbackAForeignNameIsRefused) {
  const auto allowed = [](std::string_view host, const std::vector<std::string>& names,
                          bool loopback) { return host_allowed(*host_in(host), names, loopback); };
  EXPECT_TRUE(allowed("localhost:1234", {}, true));
  EXPECT_TRUE(allowed("127.0.0.1", {}, true));
  EXPECT_FALSE(allowed("rebound.example", {}, true));
  EXPECT_FALSE(allowed("192.0.2.7", {}, true));
  EXPECT_TRUE(allowed("bench.example", {"bench.example"}, true));
  EXPECT_TRUE(allowed("anything.example", {}, false));
  EXPECT_FALSE(allowed("anything.example", {"kitchen-pc"}, false));
  EXPECT_TRUE(allowed("kitchen-pc:8080", {"kitchen-pc"}, false));
  EXPECT_TRUE(allowed("192.0.2.7", {"kitchen-pc"}, false));
}

}  // namespace
}  // namespace serve::http
