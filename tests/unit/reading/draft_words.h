// All words a draft still holds, for tests that nothing of a text is lost.
#pragma once

#include <set>
#include <string>

#include "base/folding.h"
#include "kitchen/reading/draft.h"
#include "kitchen/reading/line_tokens.h"

namespace tests {

inline std::set<std::string> draft_words(const kitchen::DishDraft& draft) {
  std::set<std::string> out;
  const auto add = [&](const std::string& text) {
    for (const auto& token : kitchen::line_tokens(kitchen::tidied_line(text))) {
      if (token.kind == kitchen::LineToken::Kind::kWord) out.insert(token.word);
    }
  };
  for (const auto& each : draft.ingredients) add(each.line);
  for (const auto& each : draft.method) add(each.says);
  for (const auto& each : draft.unread) add(each.line);
  return out;
}

/// Words of the text the draft no longer holds, "and" and "then" apart: they only join steps.
inline std::string lost_words(const kitchen::DishDraft& draft, const std::string& text) {
  const std::set<std::string> held = draft_words(draft);
  std::string out;
  for (const auto& token : kitchen::line_tokens(kitchen::tidied_line(text))) {
    const bool word = token.kind == kitchen::LineToken::Kind::kWord && !token.is("and") &&
                      !token.is("then") && !token.is("step");
    if (word && !held.contains(token.word)) out += token.word + " ";
  }
  return out;
}

}  // namespace tests
