// The words of the command line that speak of food rather than of plans.
#pragma once

#include <optional>

namespace CLI {
class App;
}

namespace app {

/// Adds them; the one that is said runs while the words are read and leaves its exit code in
/// `code`, which must outlive that.
void add_food_words(CLI::App& program, std::optional<int>& code);

}  // namespace app
