// The words foods are called by: in full, in the singular, which of them tell one food from
// another, and which say nothing of it. Only for food_matcher.cpp. Common practice, no source.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace kitchen {

/// Folded, in the singular, short forms written out ("marg", "s.r.", "gf").
std::vector<std::string> food_words(std::string_view text);
/// The words [from, to) with a space between.
std::string spoken(const std::vector<std::string>&, std::size_t from, std::size_t to);

/// Words that make another food of what they stand with ("oil", "free", "sauce"): never dropped,
/// never ignored.
bool changes_food(const std::string& word);
/// Little words, and words that add nothing to which food is meant: "of", "fresh", "large".
bool idle(const std::string& word);
/// Parts of keys that only say in which form a food is: "dried", "tinned".
bool form_word(std::string_view word);
/// A food's key without its form: "parsley" of "parsley_fresh".
std::string stem_of(const std::string& key);

bool has(const std::vector<std::string>& words, std::string_view word);
/// A word with doubled letters written once.
std::string once(const std::string& word);
/// What is left of a word when its vowels are gone: "sossage" and "sausage" sound alike.
std::string sound(const std::string& word);

}  // namespace kitchen
