#include "kitchen/reading/made_words.h"

#include <algorithm>
#include <array>
#include <string_view>

#include "base/folding.h"
#include "base/text.h"
#include "kitchen/foods.h"

namespace kitchen {
namespace {

// What ends the words of a thing: "a smooth paste with the milk".
bool ends_thing(const std::string& word) {
  return base::one_of(word, {"and", "or", "in", "with", "of", "for", "to", "on", "about", "then",
                             "from", "into", "that", "until", "but", "by", "using", "over", "at"});
}

// The last word before something that cannot belong to the thing: "a soft white dough".
std::string thing_from(const std::vector<std::string>& words, std::size_t at) {
  std::string thing;
  constexpr std::size_t kLongest = 4;
  for (std::size_t i = at; i < std::min(at + kLongest, words.size()); ++i) {
    if (ends_thing(words[i])) break;
    thing = words[i];
  }
  return thing;
}

bool number(const std::string& word) {
  return (word[0] >= '0' && word[0] <= '9') ||
         base::one_of(word, {"two", "three", "four", "five", "six", "eight", "ten", "twelve"});
}

// "Shape into 4 patties", "into about 20 meatballs".
bool counted(const std::vector<std::string>& words, std::size_t i) {
  if (words[i] != "into" && words[i] != "to") return false;
  const std::size_t at = base::one_of(words[i + 1], {"about", "roughly"}) ? i + 2 : i + 1;
  return at + 1 < words.size() && number(words[at]) && words[at + 1] != "minute";
}

}  // namespace

bool can_be_made(const std::string& word) {
  static constexpr std::array<std::string_view, 65> kNot = {
      "heat",   "oven",   "ring",   "hob",    "pan",      "boil",   "water",     "lid",
      "side",   "packet", "middle", "time",   "minute",   "fridge", "rest",      "grill",
      "simmer", "well",   "bowl",   "tin",    "tray",     "dish",   "saucepan",  "jug",
      "wok",    "basin",  "plate",  "board",  "surface",  "cm",     "inch",      "half",
      "piece",  "slice",  "cube",   "strip",  "dice",     "wedge",  "chunk",     "round",
      "square", "hollow", "centre", "center", "hole",     "space",  "set",       "total",
      "way",    "bit",    "edge",   "top",    "bottom",   "base",   "thickness", "size",
      "shape",  "circle", "ball",   "finger", "triangle", "end",    "broiler",   "microwave",
      "freezer"};
  return word.size() > 2 && word[0] >= 'a' && word[0] <= 'z' &&
         std::find(kNot.begin(), kNot.end(), word) == kNot.end();
}

std::vector<std::string> things_made(const std::vector<std::string>& words) {
  std::vector<std::string> out;
  for (std::size_t i = 0; i + 1 < words.size(); ++i) {
    std::size_t at = 0;
    if (base::one_of(words[i], {"make", "form", "give"}))
      at = i + 1;
    else if ((words[i] == "to" || words[i] == "into" || words[i] == "for") && i + 2 < words.size())
      at = base::one_of(words[i + 1], {"a", "an"}) || counted(words, i) ||
                   (words[i] == "for" && words[i + 1] == "the" && i == 0)
               ? i + 1
               : 0;
    if (at == 0) continue;
    if (base::one_of(words[at], {"a", "an", "the", "your", "up"})) ++at;
    while (at < words.size() &&
           (base::one_of(words[at], {"the", "a", "about", "roughly"}) || number(words[at])))
      ++at;
    if (at >= words.size()) continue;
    const std::string thing = thing_from(words, at);
    if (can_be_made(thing)) out.push_back(thing);
  }
  return out;
}

std::vector<std::string> things_of_heading(const std::string& heading) {
  std::vector<std::string> out;
  for (const std::string& word : base::words_of(base::folded(heading))) {
    const std::string one = singular(word);
    if (base::one_of(one,
                     {"for", "the", "to", "make", "finish", "serve", "method", "step", "stage",
                      "ingredient", "you", "need", "and", "with", "mix", "together", "decorate"}))
      continue;
    if (can_be_made(one)) out.push_back(one);
  }
  return out;
}

}  // namespace kitchen
