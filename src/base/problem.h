// What is wrong, where, and how to mend it: the one shape of every mistake a person can make.
//
// "The soup needs an oven at 12:05 and Food Room 2 has none left" is a Problem; a broken promise
// inside the program is not (that is an exception, caught once in app/).
#pragma once

#include <string>
#include <utility>
#include <variant>
#include <vector>

namespace base {

/// One mistake in words a teacher understands.
/// code:    stable and dotted ("dish.step.no_minutes"); never reused for another meaning.
/// file:    the file as the person named it; empty when there is none.
/// where:   RFC 6901 JSON pointer into that file ("/method/3/minutes"), or empty for the whole document.
/// message: what is wrong, with the thing's own name and the figures.
/// remedy:  what to do about it; never empty.
struct Problem {
  std::string code;
  std::string file;
  std::string where;
  std::string message;
  std::string remedy;

  friend bool operator==(const Problem&, const Problem&) = default;
};

using Problems = std::vector<Problem>;

/// Either a value or everything that is wrong with the input: all faults at once, never only the
/// first.
template <class T>
class [[nodiscard]] Result {
 public:
  Result(T value) : content_(std::move(value)) {}
  Result(Problems problems) : content_(std::move(problems)) {}
  Result(Problem problem) : content_(Problems{std::move(problem)}) {}

  explicit operator bool() const { return std::holds_alternative<T>(content_); }
  const T& value() const& { return std::get<T>(content_); }
  T&& value() && { return std::get<T>(std::move(content_)); }
  const Problems& problems() const { return std::get<Problems>(content_); }

 private:
  std::variant<T, Problems> content_;
};

/// Adds what is wrong with one input to what is wrong with all; nothing when it was fine.
template <class T>
void gather(const Result<T>& one, Problems& all) {
  if (!one) all.insert(all.end(), one.problems().begin(), one.problems().end());
}

}  // namespace base
