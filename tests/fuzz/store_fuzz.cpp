// Any bytes as a zip to take in are understood or refused with reasons; any bytes as JSON have one
// canonical form, whichever way they were laid out before, or are refused.
#include <cstdint>
#include <cstdlib>
#include <iostream>
#include <string>
#include <string_view>

#include "base/text.h"
#include "store/json_text.h"
#include "store/parcel.h"

namespace {

[[noreturn]] void fail(std::string_view why) {
  std::cerr << "store_fuzz: " << why << '\n';
  std::abort();
}

void judge(const base::Problems& problems) {
  if (problems.empty()) fail("refused without a reason");
  for (const base::Problem& problem : problems) {
    if (problem.code.empty() || problem.message.empty() || problem.remedy.empty())
      fail("a problem without code, message or remedy");
    if (base::not_utf8(problem.message) || base::not_utf8(problem.file))
      fail("a problem with a broken letter");
  }
}

void judge_json(std::string_view text) {
  const auto canonical = store::canonical_json(text);
  if (!canonical) return judge(canonical.problems());
  const auto again = store::canonical_json(canonical.value());
  if (!again || again.value() != canonical.value()) fail("the canonical form is not stable");
  const auto tidy = store::tidy_json(text);
  if (!tidy) fail("canonical but not tidy");
  const auto from_tidy = store::canonical_json(tidy.value());
  if (!from_tidy || from_tidy.value() != canonical.value()) fail("tidying changed something");
  const auto body = store::read_body(text);
  if (!body) return judge(body.problems());
  if (body.value().canonical != canonical.value()) fail("two canonical forms");
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view bytes(reinterpret_cast<const char*>(data), size);
  judge_json(bytes);
  const auto parcel = store::open_parcel(bytes);
  if (!parcel) {
    judge(parcel.problems());
    return 0;
  }
  for (const auto& [ref, ready] : parcel.value().ready) {
    if (!store::good_id(ref.id) || ready.title.empty() || base::not_utf8(ready.title))
      fail("a draft that cannot be kept");
  }
  return 0;
}
