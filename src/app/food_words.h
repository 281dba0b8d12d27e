// The words of the command line that speak of food rather than of plans.
#pragma once

namespace CLI {
class App;
}

namespace app {

/// Adds them; the one that is said runs and leaves its exit code in `code`, which must outlive the
/// parsing.
void add_food_words(CLI::App& program, int& code);
/// Whether one of them was said.
bool food_word_said(const CLI::App& program);

}  // namespace app
