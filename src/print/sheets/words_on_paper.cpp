#include "print/sheets/words_on_paper.h"

#include "print/paper.h"
#include "print/words.h"

namespace print::sheets {

Words& Words::add(std::string_view plain) {
  if (!plain.empty()) runs_.push_back({tame(plain), false});
  return *this;
}

Words& Words::bold(std::string_view text) {
  if (!text.empty()) runs_.push_back({tame(text), true});
  return *this;
}

Words& Words::line() {
  runs_.push_back({"\n", false});
  return *this;
}

Words& Words::also(const Words& more) {
  runs_.insert(runs_.end(), more.runs_.begin(), more.runs_.end());
  return *this;
}

std::string Words::plain() const {
  std::string out;
  for (const Run& run : runs_) out += run.text;
  return out;
}

std::string Words::markup() const {
  std::string out;
  for (const Run& run : runs_)
    out += run.bold ? "<b>" + escaped(run.text) + "</b>" : escaped(run.text);
  return out;
}

}  // namespace print::sheets
