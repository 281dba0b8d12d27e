// A method's text as sentences and clauses, each clause one action.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "kitchen/reading/actions.h"
#include "kitchen/reading/line_tokens.h"
#include "kitchen/reading/method_line.h"
#include "kitchen/reading/stated_times.h"

namespace kitchen {

struct Sentence {
  std::string text;  ///< tidied, without a number before it
  std::vector<LineToken> tokens;
  std::size_t line = 0;  ///< index of the method line it stands in
  int line_number = 0;   ///< of the text
  std::string group;
};

/// The sentences of the lines in their order; nothing but list numbers is left out.
std::vector<Sentence> sentences_of(const std::vector<MethodLine>&);

struct Clause {
  std::size_t sentence = 0;        ///< index
  std::size_t begin = 0, end = 0;  ///< tokens of the sentence, end not included
  const Action* action = nullptr;  ///< never null
  Work work = Work::kAdd;          ///< of the action, seen in its words: "put in the oven" bakes
  std::optional<StatedTime> time;
  std::optional<StatedOven> oven;
};

/// The clauses of a sentence; none when it names no action.
std::vector<Clause> clauses_of(const Sentence&, std::size_t index);

/// Whether one of the words stands among the tokens [begin, end).
bool says(const std::vector<LineToken>&, std::size_t begin, std::size_t end,
          std::initializer_list<std::string_view> words);

}  // namespace kitchen
