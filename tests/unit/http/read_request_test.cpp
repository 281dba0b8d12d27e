#include "serve/http/read_request.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace serve::http {
namespace {

using State = RequestReader::State;

struct Read {
  State state = State::kHead;
  int status = 0;  ///< of the refusal
  Request request;
  std::string left;
  bool keep = false;
};

/// Feeds the bytes in pieces of that size, as a network would.
Read read(std::string_view bytes, std::size_t piece = 1U << 20U, std::size_t limit = 1000,
          Limits limits = {}) {
  RequestReader reader(limits);
  Read out;
  std::string buffer;
  for (std::size_t at = 0; at < bytes.size(); at += piece) {
    buffer += bytes.substr(at, piece);
    for (;;) {
      const State before = reader.state();
      buffer.erase(0, reader.feed(buffer));
      if (before == State::kHead && reader.state() == State::kBody)
        reader.allow_body(limit);
      else
        break;
    }
    if (reader.state() == State::kDone || reader.state() == State::kRefused) {
      buffer += bytes.substr(std::min(bytes.size(), at + piece));
      break;
    }
  }
  out.state = reader.state();
  out.keep = reader.keep_alive();
  out.left = buffer;
  if (out.state == State::kRefused) out.status = reader.refusal().status;
  if (out.state == State::kDone) out.request = reader.take();
  return out;
}

int refusal(std::string_view bytes) {
  const Read out = read(bytes);
  return out.state == State::kRefused ? out.status : out.state == State::kDone ? 200 : 0;
}

const std::string kPost =
    "POST /echo?a=1 HTTP/1.1\r\nHost: Kitchen-PC:80\r\nCookie: s=1; t=2\r\nCookie: u=3\r\n"
    "Content-Length: 5\r\n\r\nhello";
const std::string kChunked =
    "POST /echo HTTP/1.1\r\nHost: a\r\nTransfer-Encoding: chunked\r\n\r\n"
    "5;x=y\r\nhello\r\n7\r\n, world\r\n0\r\nHost: trailer\r\n\r\n";

TEST(ReadRequest, AWholeRequest) {
  const Read out = read(kPost + "GET");
  ASSERT_EQ(out.state, State::kDone);
  EXPECT_EQ(out.request.method, Method::kPost);
  EXPECT_EQ(out.request.path, "/echo");
  EXPECT_EQ(out.request.query, (Pairs{{"a", "1"}}));
  EXPECT_EQ(out.request.host, "kitchen-pc:80");
  EXPECT_EQ(out.request.cookies, (Pairs{{"s", "1"}, {"t", "2"}, {"u", "3"}}));
  EXPECT_EQ(out.request.body, "hello");
  EXPECT_EQ(out.left, "GET");
  EXPECT_TRUE(out.keep);
}

TEST(ReadRequest, PiecesOfABodyArePutTogetherAndTrailersNotBelieved) {
  const Read out = read(kChunked + "GET /");
  ASSERT_EQ(out.state, State::kDone);
  EXPECT_EQ(out.request.body, "hello, world");
  EXPECT_EQ(out.request.headers.size(), 2U);
  EXPECT_EQ(out.request.host, "a");
  EXPECT_EQ(out.left, "GET /");
}

RC_GTEST_PROP(ReadRequest, ItDoesNotMatterHowTheNetworkCutsItUp, ()) {
  const std::string bytes = *rc::gen::element(kPost, kChunked, "\r\n\r\n" + kPost);
  const auto piece = *rc::gen::inRange<std::size_t>(1, bytes.size());
  const Read whole = read(bytes), cut = read(bytes, piece);
  RC_ASSERT(whole.state == State::kDone);
  RC_ASSERT(cut.state == State::kDone);
  RC_ASSERT(cut.request.body == whole.request.body);
  RC_ASSERT(cut.request.headers == whole.request.headers);
  RC_ASSERT(cut.left == whole.left);
}

TEST(ReadRequest, KeepingTheConnectionIsAsTheVersionSays) {
  const auto keep = [](const std::string& version, const std::string& header) {
    return read("GET / HTTP/" + version + "\r\nHost: a\r\n" + header + "\r\n").keep;
  };
  EXPECT_TRUE(keep("1.1", ""));
  EXPECT_FALSE(keep("1.1", "Connection: close\r\n"));
  EXPECT_FALSE(keep("1.0", ""));
  EXPECT_TRUE(keep("1.0", "Connection: keep-alive\r\n"));
}

TEST(ReadRequest, WhatIsNoRequestIs400) {
  for (const char* bytes :
       {"\x16\x03\x01\x02\r\n\r\n", "GET\r\n\r\n", "GET / HTTP/1.1\nHost: a\n\n",
        "GET / HTTP/2.0\r\n\r\n", "GET  / HTTP/1.1\r\nHost: a\r\n\r\n",
        "GET / HTTP/1.1\r\nHost : a\r\n\r\n", "GET / HTTP/1.1\r\nHost: a\r\nX: a\rb\r\n\r\n",
        "GET / HTTP/1.1\r\nHost: a\r\nX: a\x01\r\n\r\n", "GET / HTTP/1.1\r\nHost: a\r\n: x\r\n\r\n",
        "G(T / HTTP/1.1\r\nHost: a\r\n\r\n"})
    EXPECT_EQ(refusal(bytes), 400) << bytes;
}

TEST(ReadRequest, OneHostAndOnlyOne) {
  EXPECT_EQ(refusal("GET / HTTP/1.1\r\n\r\n"), 400);
  EXPECT_EQ(refusal("GET / HTTP/1.1\r\nHost: a\r\nHost: b\r\n\r\n"), 400);
  EXPECT_EQ(refusal("GET / HTTP/1.1\r\nHost: a b\r\n\r\n"), 400);
  EXPECT_EQ(refusal("GET / HTTP/1.0\r\n\r\n"), 200);
}

// Two readers of one connection that see different requests in it let one person's request be
// completed by another's (RFC 9112, 11.2).
TEST(ReadRequest, ABodyWhoseEndIsInDoubtIsRefused) {
  const auto with = [](const std::string& headers) {
    return refusal("POST /echo HTTP/1.1\r\nHost: a\r\n" + headers + "\r\n0\r\n\r\n");
  };
  EXPECT_EQ(with("Content-Length: 5\r\nTransfer-Encoding: chunked\r\n"), 400);
  EXPECT_EQ(with("Transfer-Encoding: chunked\r\nContent-Length: 5\r\n"), 400);
  EXPECT_EQ(with("Content-Length: 5\r\nContent-Length: 6\r\n"), 400);
  EXPECT_EQ(with("Content-Length: -5\r\n"), 400);
  EXPECT_EQ(with("Content-Length: +5\r\n"), 400);
  EXPECT_EQ(with("Content-Length: 5 5\r\n"), 400);
  EXPECT_EQ(with("Content-Length: 99999999999999999999\r\n"), 400);
  EXPECT_EQ(with("Transfer-Encoding: chunked\r\nTransfer-Encoding: chunked\r\n"), 400);
  EXPECT_EQ(with("Transfer-Encoding: gzip, chunked\r\n"), 501);
  EXPECT_EQ(with("Transfer-Encoding: chunked, gzip\r\n"), 501);
  EXPECT_EQ(with("Transfer-Encoding: identity\r\n"), 501);
  EXPECT_EQ(with("Transfer-Encoding: xchunked\r\n"), 501);
  EXPECT_EQ(with("Transfer-Encoding: chunked\r\n"), 200);
  EXPECT_EQ(refusal("POST / HTTP/1.0\r\nTransfer-Encoding: chunked\r\n\r\n0\r\n\r\n"), 400);
  EXPECT_EQ(refusal("POST / HTTP/1.1\r\nHost: a\r\nTransfer-Encoding: chunked\r\n\r\nxyz\r\n"),
            400);
  EXPECT_EQ(
      refusal(
          "POST / HTTP/1.1\r\nHost: a\r\nTransfer-Encoding: chunked\r\n\r\n2\r\nabcd\r\n0\r\n\r\n"),
      400);
}

TEST(ReadRequest, SizesAreLimited) {
  const std::string start = "GET / HTTP/1.1\r\nHost: a\r\n";
  EXPECT_EQ(refusal("GET /" + std::string(5000, 'a') + " HTTP/1.1\r\nHost: a\r\n\r\n"), 414);
  EXPECT_EQ(refusal(start + "X: " + std::string(17000, 'a') + "\r\n\r\n"), 431);
  EXPECT_EQ(refusal(start + "X: " + std::string(17000, 'a')), 431);  // before it ends
  std::string many = start;
  for (int i = 0; i < 99; ++i) many += "X: 1\r\n";
  EXPECT_EQ(refusal(many + "\r\n"), 200);
  EXPECT_EQ(refusal(many + "X: 1\r\n\r\n"), 431);
  // All together, though each line is short and they come one at a time.
  Limits few;
  few.headers = 100'000;
  std::string drips = start;
  for (int i = 0; i < 3000; ++i) drips += "X: 12345\r\n";
  EXPECT_EQ(read(drips, 10, 1000, few).status, 431);
}

TEST(ReadRequest, ATooLargeBodyIs413SaidOrSent) {
  const Read said = read("POST / HTTP/1.1\r\nHost: a\r\nContent-Length: 1001\r\n\r\n");
  EXPECT_EQ(said.status, 413);
  const std::string start = "POST / HTTP/1.1\r\nHost: a\r\nTransfer-Encoding: chunked\r\n\r\n";
  EXPECT_EQ(read(start + "3e9\r\n").status, 413);  // 1001
  EXPECT_EQ(read(start + "3e8\r\n" + std::string(1000, 'a') + "\r\n1\r\na\r\n0\r\n\r\n").status,
            413);
  EXPECT_EQ(read(start + "3e8\r\n" + std::string(1000, 'a') + "\r\n0\r\n\r\n").state, State::kDone);
  // A chunk header that never ends is not waited for.
  EXPECT_EQ(read(start + "1;" + std::string(40'000, 'x')).status, 400);
}

TEST(ReadRequest, OnlyContinueCanBeExpected) {
  RequestReader reader{Limits{}};
  reader.feed("POST / HTTP/1.1\r\nHost: a\r\nExpect: 100-Continue\r\nContent-Length: 2\r\n\r\n");
  EXPECT_EQ(reader.state(), State::kBody);
  EXPECT_TRUE(reader.waits_for_continue());
  EXPECT_EQ(reader.length(), 2U);
  EXPECT_EQ(refusal("POST / HTTP/1.1\r\nHost: a\r\nExpect: tea\r\nContent-Length: 2\r\n\r\n"), 417);
}

TEST(ReadRequest, TheWholeAddressCountsMoreThanTheHost) {
  const Read out = read("GET http://other:81/x HTTP/1.1\r\nHost: a\r\n\r\n");
  ASSERT_EQ(out.state, State::kDone);
  EXPECT_EQ(out.request.host, "other:81");
  EXPECT_EQ(out.request.path, "/x");
}

}  // namespace
}  // namespace serve::http
