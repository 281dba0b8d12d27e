// Small things that come from the machine: the time of a change, random letters, a text's
// fingerprint.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

namespace store {

/// Seconds since 1970 as "2026-11-17T09:05:00Z" (ISO 8601, universal time). Such texts sort as the
/// times do, for the years 0 to 9999.
std::string stamp_of(std::int64_t seconds);
/// The machine's clock, seconds since 1970.
std::int64_t now_seconds();

/// `bytes` random bytes as twice as many letters, 0-9 and a-f. Good enough for secrets.
std::string random_letters(std::size_t bytes);
/// BLAKE2b with 256 bits (RFC 7693) as 64 letters.
std::string fingerprint(std::string_view);

}  // namespace store
