// Any bytes whatever are either read or refused with reasons, and what is read survives being
// written and read again.
#include <cstdint>
#include <cstdlib>
#include <iostream>
#include <string>
#include <string_view>

#include "kitchen/check_lesson.h"
#include "kitchen/read.h"

namespace {

[[noreturn]] void fail(std::string_view why) {
  std::cerr << "read_fuzz: " << why << '\n';
  std::abort();
}

/// Refusals say what is wrong and what to do; values come back equal.
template <class T, class Read, class Write>
void judge(const base::Result<T>& result, Read read, Write write) {
  if (!result) {
    if (result.problems().empty()) fail("refused without a reason");
    for (const base::Problem& problem : result.problems()) {
      if (problem.code.empty() || problem.message.empty() || problem.remedy.empty()) {
        fail("a problem without code, message or remedy");
      }
    }
    return;
  }
  const std::string text = write(result.value());
  const auto again = read(text);
  if (!again) {
    for (const auto& problem : again.problems()) std::cerr << problem.message << '\n';
    std::cerr << text;
    fail("what was written cannot be read");
  }
  if (!(again.value() == result.value())) fail("what was written reads differently");
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  // A file a lesson names is the lesson itself: enough to walk every way through the loader.
  const kitchen::Loader loader = [text](const std::string& path) -> base::Result<std::string> {
    if (path.size() % 2 == 0)
      return base::Problem{"test.no_file", path, "", "There is no such file.", "Check the path."};
    return std::string(text);
  };
  const auto dish = [](std::string_view t) { return kitchen::read_dish(t, "dish.json"); };
  const auto room = [](std::string_view t) { return kitchen::read_room(t, "room.json"); };
  const auto rules = [](std::string_view t) { return kitchen::read_house_rules(t, "rules.json"); };
  const auto lesson = [&](std::string_view t) {
    return kitchen::read_lesson(t, "lesson.json", loader);
  };
  judge(dish(text), dish, kitchen::write_dish);
  judge(room(text), room, kitchen::write_room);
  judge(rules(text), rules, kitchen::write_house_rules);
  const auto read = lesson(text);
  judge(read, lesson, kitchen::write_lesson);
  if (read) static_cast<void>(kitchen::notes(read.value()));
  return 0;
}
