#include "store/stamp.h"

#include <fmt/format.h>

#include <array>
#include <chrono>
#include <stdexcept>
#include <vector>

#include "store/sodium.h"

namespace store {
namespace {

std::string letters_of(const unsigned char* bytes, std::size_t count) {
  std::string out(count * 2 + 1, '\0');
  sodium_bin2hex(out.data(), out.size(), bytes, count);
  out.pop_back();
  return out;
}

}  // namespace

std::string stamp_of(std::int64_t seconds) {
  const std::chrono::sys_seconds time{std::chrono::seconds{seconds}};
  const auto midnight = std::chrono::floor<std::chrono::days>(time);
  const std::chrono::year_month_day date{midnight};
  const std::chrono::hh_mm_ss clock{time - midnight};
  return fmt::format("{:04}-{:02}-{:02}T{:02}:{:02}:{:02}Z", static_cast<int>(date.year()),
                     static_cast<unsigned>(date.month()), static_cast<unsigned>(date.day()),
                     clock.hours().count(), clock.minutes().count(), clock.seconds().count());
}

std::int64_t now_seconds() {
  return std::chrono::duration_cast<std::chrono::seconds>(
             std::chrono::system_clock::now().time_since_epoch())
      .count();
}

std::string random_letters(std::size_t bytes) {
  need_sodium();
  std::vector<unsigned char> random(bytes);
  randombytes_buf(random.data(), random.size());
  return letters_of(random.data(), random.size());
}

std::string fingerprint(std::string_view text) {
  need_sodium();
  std::array<unsigned char, 32> hash{};
  crypto_generichash(hash.data(), hash.size(), reinterpret_cast<const unsigned char*>(text.data()),
                     text.size(), nullptr, 0);
  return letters_of(hash.data(), hash.size());
}

}  // namespace store
