// TLS with the certificate made by ourselves, judged by OpenSSL as a client that trusts only it.
#include <gmock/gmock.h>

#include <chrono>
#include <fstream>

#include "running.h"
#include "serve/http/events.h"
#include "serve/http/self_signed.h"
#include "serve/http/server.h"
#include "temporary_folder.h"

namespace serve::http {
namespace {

using http_test::Answer;
using http_test::Client;
using http_test::eventually;
using http_test::get_route;
using http_test::little_router;
using http_test::Running;
using http_test::TemporaryFolder;
using testing::HasSubstr;

long long now() {
  return std::chrono::duration_cast<std::chrono::seconds>(
             std::chrono::system_clock::now().time_since_epoch())
      .count();
}

class Tls : public testing::Test {
 protected:
  TemporaryFolder folder_;
  TlsFiles files_ = self_signed(folder_.path(), {"localhost", "kitchen-pc", "127.0.0.1"}, now())
                        .value()
                        .files;
  ServerOptions options() const {
    ServerOptions out;
    out.tls = files_;
    return out;
  }
};

TEST_F(Tls, RequestsOverTls) {
  Router router = little_router();
  router.add(
      get_route("/who", [](const Request& r) { return text(200, r.secure ? "secure" : "open"); }));
  Running running(std::move(router), options());
  for (const char* name : {"localhost", "kitchen-pc", "127.0.0.1"}) {
    Client client(running.port(), files_.certificate, name);
    const Answer answer = client.get("/who");
    EXPECT_EQ(answer.body, "secure");
    EXPECT_EQ(answer.header("strict-transport-security"), "max-age=31536000");
    EXPECT_EQ(client.cipher(), "TLSv1.3");
    EXPECT_EQ(client.post("/upload", std::string(500'000, 'x')).body, "500000");
    client.send("GET /hello HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n");
    EXPECT_EQ(client.answer().body, "good morning");
    EXPECT_TRUE(client.ended());
  }
  EXPECT_TRUE(eventually([&] { return running.server().connections() == 0; }));
}

TEST_F(Tls, AnotherNameIsNotCovered) {
  Running running(little_router(), options());
  EXPECT_THROW(Client(running.port(), files_.certificate, "bank.example"), std::runtime_error);
}

TEST_F(Tls, StreamsOverTlsAndStopping) {
  Hub hub;
  Router router;
  router.add(get_route("/events", [&hub](const Request&) { return follow(hub, {"a"}, ""); }));
  Running running(std::move(router), options());
  std::vector<Client> pages;
  for (int i = 0; i < 10; ++i) {
    pages.emplace_back(running.port(), files_.certificate);
    pages.back().send("GET /events HTTP/1.1\r\nHost: localhost\r\n\r\n");
    EXPECT_EQ(pages.back().head().status, 200);
  }
  for (int i = 0; i < 10; ++i) hub.publish("a", "x", std::to_string(i));
  for (Client& page : pages)
    for (int i = 0; i < 10; ++i)
      EXPECT_THAT(page.until("\n\n"), HasSubstr("data: " + std::to_string(i) + "\n"));
  pages.pop_back();
  EXPECT_TRUE(eventually([&] { return hub.listeners() == 9; }));
  std::thread stopping([&] { running.server().stop(std::chrono::seconds(20)); });
  for (Client& page : pages) EXPECT_EQ(page.rest(), "");
  pages.clear();
  stopping.join();
  EXPECT_EQ(hub.listeners(), 0U);
}

TEST_F(Tls, WhoSpeaksPlainlyOrNotAtAllIsLeft) {
  ServerOptions impatient = options();
  impatient.patience.greeting = std::chrono::milliseconds(100);
  Running running(little_router(), impatient);
  Client plain = running.client();
  plain.send("GET /hello HTTP/1.1\r\nHost: localhost\r\n\r\n");
  EXPECT_THAT(plain.rest(), testing::Not(HasSubstr("good morning")));
  EXPECT_EQ(running.client().rest(), "");
  EXPECT_EQ(Client(running.port(), files_.certificate).get("/hello").status, 200);
}

TEST_F(Tls, FilesThatWillNotDoAreSaidAtTheStart) {
  const auto problem = [&](const TlsFiles& files) {
    ServerOptions options;
    options.tls = files;
    Server server(options, little_router());
    const auto started = server.start();
    return started ? std::string("started") : started.problems().front().code;
  };
  EXPECT_EQ(problem({"/nowhere/c.pem", files_.key}), "serve.certificate");
  EXPECT_EQ(problem({files_.certificate, "/nowhere/k.pem"}), "serve.certificate");
  EXPECT_EQ(problem({files_.key, files_.certificate}), "serve.certificate");
  const TemporaryFolder other;
  const TlsFiles others = self_signed(other.path(), {"localhost"}, now()).value().files;
  EXPECT_EQ(problem({files_.certificate, others.key}), "serve.certificate");  // not a pair
}

}  // namespace
}  // namespace serve::http
