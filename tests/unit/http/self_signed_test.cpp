#include "serve/http/self_signed.h"

#include <gtest/gtest.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <fstream>
#include <sstream>

#include "temporary_folder.h"

namespace serve::http {
namespace {

using http_test::TemporaryFolder;
constexpr long long kNow = 1'795'950'000;  // November 2026
constexpr long long kDay = 86'400;

std::string content(const std::filesystem::path& file) {
  std::ifstream in(file);
  std::ostringstream out;
  out << in.rdbuf();
  return out.str();
}

int mode(const std::filesystem::path& file) {
  struct stat found {};
  EXPECT_EQ(::stat(file.c_str(), &found), 0);
  return static_cast<int>(found.st_mode & 0777U);
}

SelfSigned made(const std::filesystem::path& folder, const std::vector<std::string>& names,
                long long now = kNow) {
  auto out = self_signed(folder, names, now);
  if (!out) throw std::runtime_error(out.problems().front().message);
  return std::move(out).value();
}

TEST(SelfSigned, TheKeyCanBeReadByItsOwnerOnly) {
  const TemporaryFolder folder;
  const SelfSigned first = made(folder.path() / "tls", {"localhost"});
  EXPECT_TRUE(first.made_now);
  EXPECT_EQ(mode(first.files.key), 0600);
  EXPECT_EQ(mode(first.files.certificate), 0644);
  EXPECT_EQ(first.fingerprint.size(), 32U * 3 - 1);
  EXPECT_NE(content(first.files.key).find("BEGIN PRIVATE KEY"), std::string::npos);
  EXPECT_EQ(content(first.files.certificate).find("PRIVATE"), std::string::npos);
}

TEST(SelfSigned, TheSameIsUsedNextTime) {
  const TemporaryFolder folder;
  const SelfSigned first = made(folder.path(), {"localhost", "192.168.1.20"});
  const std::string key = content(first.files.key);
  ::chmod(first.files.key.c_str(), 0644);
  const SelfSigned second = made(folder.path(), {"192.168.1.20"}, kNow + 300 * kDay);
  EXPECT_FALSE(second.made_now);
  EXPECT_EQ(second.fingerprint, first.fingerprint);
  EXPECT_EQ(content(second.files.key), key);
  EXPECT_EQ(mode(second.files.key), 0600);  // whoever opened it: it is shut again
}

TEST(SelfSigned, ANewOneIsMadeWhenTheOldWillNotDo) {
  const TemporaryFolder folder;
  auto remade = [&, last = made(folder.path(), {"localhost"}).fingerprint](
                    const std::vector<std::string>& names, long long now) mutable {
    const SelfSigned next = made(folder.path(), names, now);
    const bool other = next.fingerprint != last;
    EXPECT_EQ(other, next.made_now);
    last = next.fingerprint;
    return other;
  };
  EXPECT_TRUE(remade({"localhost", "kitchen-pc"}, kNow));   // a name is missing
  EXPECT_FALSE(remade({"Kitchen-PC"}, kNow + 790 * kDay));  // 34 days left
  EXPECT_TRUE(remade({"kitchen-pc"}, kNow + 800 * kDay));   // 24 days left
  EXPECT_TRUE(remade({"kitchen-pc"}, kNow));                // made in the future
  std::ofstream(folder.path() / "benchbell-key.pem") << "rubbish";
  EXPECT_TRUE(remade({"kitchen-pc"}, kNow));
  std::ofstream(folder.path() / "benchbell-certificate.pem") << "rubbish";
  EXPECT_TRUE(remade({"kitchen-pc"}, kNow));
}

TEST(SelfSigned, ANameThatIsNoneIsRefused) {
  const TemporaryFolder folder;
  for (const char* name : {"", "a b", "a,DNS:bank.example", "a\nb", "café", "*"}) {
    const auto out = self_signed(folder.path(), {"localhost", name}, kNow);
    ASSERT_FALSE(out) << name;
    EXPECT_EQ(out.problems().front().code, "serve.certificate.names");
  }
  EXPECT_FALSE(self_signed(folder.path(), {}, kNow));
}

TEST(SelfSigned, AFolderThatCannotBeIsSaid) {
  const TemporaryFolder folder;
  std::ofstream(folder.path() / "file") << "x";
  const auto out = self_signed(folder.path() / "file" / "tls", {"localhost"}, kNow);
  ASSERT_FALSE(out);
  EXPECT_EQ(out.problems().front().code, "serve.certificate.folder");
}

TEST(SelfSigned, ThisMachineHasNames) {
  const auto names = names_of_this_machine();
  EXPECT_NE(std::find(names.begin(), names.end(), "localhost"), names.end());
  EXPECT_NE(std::find(names.begin(), names.end(), "127.0.0.1"), names.end());
  const TemporaryFolder folder;
  EXPECT_TRUE(self_signed(folder.path(), names, kNow));
}

}  // namespace
}  // namespace serve::http
