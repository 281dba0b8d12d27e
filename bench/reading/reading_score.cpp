// How much of the texts in folders is read as people read them, by the tests' own judge.
//
//   reading_score FOLDER... [--errors]
#include <iostream>
#include <string>
#include <vector>

#include "../../tests/unit/reading/text_score.h"

int main(int argc, char** argv) {
  const std::vector<std::string> arguments(argv + 1, argv + argc);
  bool errors = false;
  for (const std::string& argument : arguments) errors = errors || argument == "--errors";
  for (const std::string& argument : arguments) {
    if (argument == "--errors") continue;
    const tests::TextScore score = tests::score_of(argument, errors ? &std::cout : nullptr);
    tests::print_score(std::cout, argument, score);
  }
  return 0;
}
