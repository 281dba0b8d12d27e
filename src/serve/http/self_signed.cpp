#include "serve/http/self_signed.h"

#include <arpa/inet.h>
#include <fcntl.h>
#include <ifaddrs.h>
#include <net/if.h>
#include <openssl/evp.h>
#include <openssl/pem.h>
#include <openssl/rand.h>
#include <openssl/x509v3.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <climits>
#include <fstream>
#include <memory>
#include <optional>
#include <set>
#include <sstream>
#include <system_error>
#include <utility>

#include "base/text.h"

namespace serve::http {
namespace {

namespace fs = std::filesystem;

template <auto release>
struct Release {
  template <class T>
  void operator()(T* thing) const {
    release(thing);
  }
};
using Certificate = std::unique_ptr<X509, Release<X509_free>>;
using Key = std::unique_ptr<EVP_PKEY, Release<EVP_PKEY_free>>;
using Stream = std::unique_ptr<BIO, Release<BIO_free_all>>;
using Extension = std::unique_ptr<X509_EXTENSION, Release<X509_EXTENSION_free>>;

constexpr long long kDay = 24LL * 60 * 60;
// 825 days is the most that the strictest browsers take from a certificate somebody vouches for by
// hand (from memory, to verify); the clock of a school's computer may be a day off.
constexpr long long kGoodFor = 825 * kDay;
constexpr long long kRemakeBefore = 30 * kDay;

bool is_address(const std::string& name) {
  std::array<unsigned char, sizeof(in6_addr)> out{};
  return inet_pton(AF_INET, name.c_str(), out.data()) == 1 ||
         inet_pton(AF_INET6, name.c_str(), out.data()) == 1;
}

bool is_host_name(const std::string& name) {
  return !name.empty() && name.size() <= 253 && std::all_of(name.begin(), name.end(), [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-' || c == '.' || c == '_';
  });
}

Certificate read_certificate(const fs::path& file) {
  const Stream in(BIO_new_file(file.c_str(), "r"));
  return Certificate(in ? PEM_read_bio_X509(in.get(), nullptr, nullptr, nullptr) : nullptr);
}

Key read_key(const fs::path& file) {
  const Stream in(BIO_new_file(file.c_str(), "r"));
  return Key(in ? PEM_read_bio_PrivateKey(in.get(), nullptr, nullptr, nullptr) : nullptr);
}

std::string fingerprint_of(X509* certificate) {
  std::array<unsigned char, EVP_MAX_MD_SIZE> digest{};
  unsigned length = 0;
  if (X509_digest(certificate, EVP_sha256(), digest.data(), &length) != 1) return {};
  constexpr std::string_view kHex = "0123456789ABCDEF";
  std::string out;
  for (unsigned i = 0; i < length; ++i) {
    if (i > 0) out += ':';
    out += kHex[digest[i] >> 4U];
    out += kHex[digest[i] & 15U];
  }
  return out;
}

bool covers(X509* certificate, const std::string& name) {
  return is_address(name)
             ? X509_check_ip_asc(certificate, name.c_str(), 0) == 1
             : X509_check_host(certificate, name.c_str(), name.size(), 0, nullptr) == 1;
}

bool still_good(X509* certificate, EVP_PKEY* key, const std::vector<std::string>& names,
                long long now) {
  if (certificate == nullptr || key == nullptr || X509_check_private_key(certificate, key) != 1)
    return false;
  auto begins_by = static_cast<time_t>(now), ends_after = static_cast<time_t>(now + kRemakeBefore);
  return X509_cmp_time(X509_get0_notBefore(certificate), &begins_by) < 0 &&
         X509_cmp_time(X509_get0_notAfter(certificate), &ends_after) > 0 &&
         std::all_of(names.begin(), names.end(),
                     [&](const std::string& name) { return covers(certificate, name); });
}

bool add_extension(X509* certificate, int kind, const std::string& value) {
  X509V3_CTX context;
  X509V3_set_ctx_nodb(&context);
  X509V3_set_ctx(&context, certificate, certificate, nullptr, nullptr, 0);
  const Extension extension(X509V3_EXT_conf_nid(nullptr, &context, kind, value.c_str()));
  return extension && X509_add_ext(certificate, extension.get(), -1) == 1;
}

Certificate make_certificate(EVP_PKEY* key, const std::vector<std::string>& names, long long now) {
  Certificate out(X509_new());
  if (!out || X509_set_version(out.get(), X509_VERSION_3) != 1) return nullptr;
  std::array<unsigned char, 16> serial{};
  if (RAND_bytes(serial.data(), serial.size()) != 1) return nullptr;
  serial[0] = static_cast<unsigned char>((serial[0] & 0x7FU) | 0x40U);  // positive, full length
  const std::unique_ptr<BIGNUM, Release<BN_free>> number(
      BN_bin2bn(serial.data(), serial.size(), nullptr));
  if (!number || BN_to_ASN1_INTEGER(number.get(), X509_get_serialNumber(out.get())) == nullptr)
    return nullptr;
  ASN1_TIME_set(X509_getm_notBefore(out.get()), static_cast<time_t>(now - kDay));
  ASN1_TIME_set(X509_getm_notAfter(out.get()), static_cast<time_t>(now - kDay + kGoodFor));
  X509_NAME* subject = X509_get_subject_name(out.get());
  const std::string shown = names.front().substr(0, 64);  // the most a common name may hold (RFC
                                                          // 5280)
  X509_NAME_add_entry_by_txt(subject, "O", MBSTRING_UTF8,
                             reinterpret_cast<const unsigned char*>("Benchbell, made by itself"),
                             -1, -1, 0);
  X509_NAME_add_entry_by_txt(subject, "CN", MBSTRING_UTF8,
                             reinterpret_cast<const unsigned char*>(shown.c_str()), -1, -1, 0);
  std::string also;
  for (const std::string& name : names)
    also += (also.empty() ? "" : ",") + std::string(is_address(name) ? "IP:" : "DNS:") + name;
  if (X509_set_issuer_name(out.get(), subject) != 1 || X509_set_pubkey(out.get(), key) != 1 ||
      !add_extension(out.get(), NID_basic_constraints, "critical,CA:FALSE") ||
      !add_extension(out.get(), NID_key_usage, "critical,digitalSignature") ||
      !add_extension(out.get(), NID_ext_key_usage, "serverAuth") ||
      !add_extension(out.get(), NID_subject_key_identifier, "hash") ||
      !add_extension(out.get(), NID_subject_alt_name, also) ||
      X509_sign(out.get(), key, EVP_sha256()) == 0)
    return nullptr;
  return out;
}

std::string text_of(BIO* memory) {
  char* bytes = nullptr;
  const long length = BIO_get_mem_data(memory, &bytes);
  return {bytes, static_cast<std::size_t>(std::max(0L, length))};
}

/// All of it under another name first: a file half written is never found under its own. The mode
/// is set as the file is made, so that a key is at no moment open to others.
bool write_file(const fs::path& file, const std::string& bytes, mode_t mode) {
  fs::path beside = file;
  beside += ".new";
  ::unlink(beside.c_str());
  const int out = ::open(beside.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC | O_NOFOLLOW,
                         mode);
  if (out < 0) return false;
  std::size_t done = 0;
  while (done < bytes.size()) {
    const ssize_t n = ::write(out, bytes.data() + done, bytes.size() - done);
    if (n <= 0) break;
    done += static_cast<std::size_t>(n);
  }
  const bool whole = done == bytes.size() && ::fchmod(out, mode) == 0 && ::fsync(out) == 0;
  ::close(out);
  if (!whole || ::rename(beside.c_str(), file.c_str()) != 0) {
    ::unlink(beside.c_str());
    return false;
  }
  return true;
}

base::Problem problem(std::string code, const fs::path& folder, std::string message,
                      std::string remedy) {
  return {std::move(code), folder.string(), "", std::move(message), std::move(remedy)};
}

}  // namespace

base::Result<SelfSigned> self_signed(const fs::path& folder, const std::vector<std::string>& names,
                                     long long now) {
  std::vector<std::string> wanted;
  for (const std::string& name : names) {
    const std::string low = base::lower(name);
    // Checked, as a comma in a name would add another name to the certificate.
    if (!is_address(low) && !is_host_name(low))
      return problem(
          "serve.certificate.names", folder,
          base::say(base::in_quotes(name), " is neither a computer's name nor its address."),
          "Use names such as kitchen-pc.local or addresses such as 192.168.1.20.");
    if (std::find(wanted.begin(), wanted.end(), low) == wanted.end()) wanted.push_back(low);
  }
  if (wanted.empty())
    return problem("serve.certificate.names", folder, "A certificate needs at least one name.",
                   "Give the name by which other computers reach this one.");
  SelfSigned out;
  out.files = {folder / "benchbell-certificate.pem", folder / "benchbell-key.pem"};
  const Certificate old = read_certificate(out.files.certificate);
  const Key old_key = read_key(out.files.key);
  if (still_good(old.get(), old_key.get(), wanted, now)) {
    fs::permissions(out.files.key, fs::perms::owner_read | fs::perms::owner_write);
    out.fingerprint = fingerprint_of(old.get());
    return out;
  }

  const Key key(EVP_EC_gen("P-256"));
  const Certificate made = key ? make_certificate(key.get(), wanted, now) : nullptr;
  const Stream certificate_text(BIO_new(BIO_s_mem())), key_text(BIO_new(BIO_s_mem()));
  if (!made || PEM_write_bio_X509(certificate_text.get(), made.get()) != 1 ||
      PEM_write_bio_PKCS8PrivateKey(key_text.get(), key.get(), nullptr, nullptr, 0, nullptr,
                                    nullptr) != 1)
    return problem("serve.certificate.make", folder, "The certificate could not be made.",
                   "Check the computer's date, or give a certificate of the school's own.");
  std::error_code fault;
  fs::create_directories(folder, fault);
  if (fault || !write_file(out.files.key, text_of(key_text.get()), 0600) ||
      !write_file(out.files.certificate, text_of(certificate_text.get()), 0644))
    return problem(
        "serve.certificate.folder", folder,
        base::say("The certificate cannot be written into ", base::in_quotes(folder.string()), '.'),
        "Choose a folder that this program may write into.");
  out.fingerprint = fingerprint_of(made.get());
  out.made_now = true;
  return out;
}

std::vector<std::string> names_of_this_machine() {
  std::vector<std::string> out{"localhost", "127.0.0.1", "::1"};
  const auto add = [&out](std::string name) {
    name = base::lower(name);
    if ((is_address(name) || is_host_name(name)) &&
        std::find(out.begin(), out.end(), name) == out.end())
      out.push_back(std::move(name));
  };
  std::array<char, HOST_NAME_MAX + 1> host{};
  if (gethostname(host.data(), host.size() - 1) == 0) {
    const std::string name = host.data();
    add(name);
    if (name.find('.') == std::string::npos) add(name + ".local");
  }
  ifaddrs* cards = nullptr;
  if (getifaddrs(&cards) != 0) return out;
  for (const ifaddrs* card = cards; card != nullptr; card = card->ifa_next) {
    if (card->ifa_addr == nullptr || (card->ifa_flags & IFF_UP) == 0) continue;
    std::array<char, INET6_ADDRSTRLEN> text{};
    if (card->ifa_addr->sa_family == AF_INET) {
      const auto* four = reinterpret_cast<const sockaddr_in*>(card->ifa_addr);
      if (inet_ntop(AF_INET, &four->sin_addr, text.data(), text.size()) != nullptr)
        add(text.data());
    } else if (card->ifa_addr->sa_family == AF_INET6) {
      const auto* six = reinterpret_cast<const sockaddr_in6*>(card->ifa_addr);
      // Link-local addresses need the card's name behind them, which no browser takes.
      if (!IN6_IS_ADDR_LINKLOCAL(&six->sin6_addr) &&
          inet_ntop(AF_INET6, &six->sin6_addr, text.data(), text.size()) != nullptr)
        add(text.data());
    }
  }
  freeifaddrs(cards);
  return out;
}

}  // namespace serve::http
