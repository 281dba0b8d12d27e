// Lines that hold more than one thing, cut: "Ingredients: 200 g flour, 2 eggs. Method: whisk ...",
// a title with the list behind it. Only for layout.cpp.
//
// Every cut keeps all letters: the parts of a line, put together, are the line.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "kitchen/reading/layout.h"

namespace kitchen {

/// "200 g flour, 2 eggs, beaten and 1 tbsp milk": three parts, their commas still on them. With
/// `every_comma` also where no amount follows, unless it is a preparation.
std::vector<std::string> list_parts(const std::string& tidied, bool every_comma);
/// Where the method begins in a line that began with ingredients; nothing if it does not.
std::optional<std::size_t> method_cut(const std::string& tidied);
/// Where the list begins in "Pancakes: 100 g flour, 2 eggs".
std::optional<std::size_t> title_cut(const std::string& tidied);
/// "serves 4", "makes 12", "for 4 people" inside a title or a heading.
std::optional<Portions> portions_within(const std::string& tidied);
/// Whether the words and temperatures of a text are American (see Measures).
bool american_text(std::string_view text);

}  // namespace kitchen
