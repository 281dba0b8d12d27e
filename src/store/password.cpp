#include "store/password.h"

#include <array>
#include <semaphore>
#include <stdexcept>

#include "base/text.h"
#include "store/sodium.h"

namespace store {
namespace {

std::counting_semaphore<kPasswordsAtOnce>& places() {
  static std::counting_semaphore<kPasswordsAtOnce> places{kPasswordsAtOnce};
  return places;
}

class Place {
 public:
  Place() { places().acquire(); }
  ~Place() { places().release(); }
  Place(const Place&) = delete;
  Place& operator=(const Place&) = delete;
};

struct Work {
  unsigned long kib = 0;
  unsigned long passes = 0;
};

/// What "$argon2id$v=19$m=19456,t=3,p=1$..." asks for; zero work if it is not such a text.
Work work_of(const std::string& hash) {
  constexpr std::string_view kStart = "$argon2id$v=19$m=";
  const auto number = [&hash](std::size_t& at) {
    unsigned long value = 0;
    const std::size_t begin = at;
    while (at < hash.size() && at - begin < 9 && hash[at] >= '0' && hash[at] <= '9') {
      value = value * 10 + static_cast<unsigned long>(hash[at++] - '0');
    }
    return value;
  };
  if (!hash.starts_with(kStart) || hash.size() >= crypto_pwhash_STRBYTES) return {};
  std::size_t at = kStart.size();
  Work work;
  work.kib = number(at);
  if (hash.compare(at, 3, ",t=") != 0) return {};
  at += 3;
  work.passes = number(at);
  return hash.compare(at, 5, ",p=1$") == 0 ? work : Work{};
}

/// Anything may have been written into the file; a hash that asks for gigabytes is not ours.
bool is_ours(const std::string& hash) {
  const Work work = work_of(hash);
  return work.kib >= 8 && work.kib <= 4 * (kPasswordMemory >> 10U) && work.passes >= 1 &&
         work.passes <= 4 * kPasswordPasses;
}

}  // namespace

base::Result<std::string> hash_password(std::string_view password) {
  need_sodium();
  if (base::not_utf8(password)) {
    return base::Problem{"password.not_text", "", "", "The password holds signs that are not text.",
                         "Type it in again."};
  }
  if (base::letters(password) < kShortestPassword) {
    return base::Problem{"password.too_short", "", "",
                         base::say("A password needs at least ", kShortestPassword, " letters."),
                         "Take three or four words that only you would put together."};
  }
  if (password.size() > kLongestPassword) {
    return base::Problem{"password.too_long", "", "", "That password is too long.",
                         "Take one of up to two hundred letters."};
  }
  std::array<char, crypto_pwhash_STRBYTES> out{};
  const Place place;
  if (crypto_pwhash_str(out.data(), password.data(), password.size(), kPasswordPasses,
                        kPasswordMemory) != 0) {
    return base::Problem{"password.no_memory", "", "",
                         "There is not enough memory to keep a password safely just now.",
                         "Close other programs on this machine and try again."};
  }
  return std::string(out.data());
}

bool password_fits(const std::string& kept_hash, std::string_view password) {
  need_sodium();
  if (password.size() > kLongestPassword || !is_ours(kept_hash)) return false;
  // The library reads a field of this size.
  std::array<char, crypto_pwhash_STRBYTES> field{};
  kept_hash.copy(field.data(), field.size() - 1);
  const Place place;
  return crypto_pwhash_str_verify(field.data(), password.data(), password.size()) == 0;
}

bool password_of_nobody(std::string_view password) {
  static const std::string kNobody = [] {
    auto made = hash_password("nobody's password, whatever it may be");
    return made ? std::move(made).value() : std::string();
  }();
  password_fits(kNobody, password);
  return false;
}

bool password_is_outdated(const std::string& kept_hash) {
  const Work work = work_of(kept_hash);
  return work.kib != kPasswordMemory >> 10U || work.passes != kPasswordPasses;
}

}  // namespace store
