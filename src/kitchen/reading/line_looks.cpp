#include "kitchen/reading/line_looks.h"

#include <algorithm>
#include <array>
#include <string>

#include "base/folding.h"
#include "base/text.h"
#include "kitchen/reading/amounts.h"
#include "kitchen/reading/ingredient_line.h"
#include "kitchen/reading/line_words.h"

namespace kitchen {
namespace {

using Tokens = std::vector<LineToken>;

constexpr std::array<std::string_view, 33> kIngredientHeadings = {"ingredients",
                                                                  "ingredient",
                                                                  "ingredient list",
                                                                  "ingredients list",
                                                                  "you will need",
                                                                  "you'll need",
                                                                  "what you need",
                                                                  "what you will need",
                                                                  "what you'll need",
                                                                  "shopping list",
                                                                  "you need",
                                                                  "the ingredients",
                                                                  "list of ingredients",
                                                                  "to buy",
                                                                  "food",
                                                                  "weigh out",
                                                                  "bring from home",
                                                                  "bring",
                                                                  "for the dish you need",
                                                                  "things you need",
                                                                  "basket",
                                                                  "ingredients needed",
                                                                  "what goes in",
                                                                  "what to bring",
                                                                  "what we used",
                                                                  "ingredients we used",
                                                                  "to bring",
                                                                  "what you want",
                                                                  "ingredient amount",
                                                                  "ingredients amount",
                                                                  "ingredient quantity",
                                                                  "ingredients quantity",
                                                                  "ingredient weight"};
constexpr std::array<std::string_view, 31> kMethodHeadings = {
    "method",         "instructions",    "directions",
    "steps",          "how to make it",  "how to make",
    "preparation",    "what to do",      "the method",
    "procedure",      "making it",       "to make",
    "how to",         "cooking",         "cooking instructions",
    "step by step",   "how to cook it",  "let's cook",
    "what you do",    "how it's done",   "preparation method",
    "cooking method", "how to do it",    "making",
    "making them",    "making the dish", "how i make it",
    "how we made it", "what we did",     "what was done",
    "what happens"};
constexpr std::array<std::string_view, 26> kOtherHeadings = {"notes",
                                                             "note",
                                                             "tips",
                                                             "tip",
                                                             "nutrition",
                                                             "nutritional information",
                                                             "equipment",
                                                             "story",
                                                             "about",
                                                             "comments",
                                                             "storage",
                                                             "variations",
                                                             "top tip",
                                                             "top tips",
                                                             "cook's tip",
                                                             "cooks tip",
                                                             "serving suggestions",
                                                             "reviews",
                                                             "allergens",
                                                             "skills",
                                                             "extension",
                                                             "homework",
                                                             "source",
                                                             "equipment needed",
                                                             "per serving",
                                                             "nutrition information"};

std::string bare(std::string_view text) {
  std::string folded = base::folded(text);
  constexpr std::string_view kMarks = " #*_:-=.!~|>\"";
  const auto first = folded.find_first_not_of(kMarks);
  if (first == std::string::npos) return "";
  return folded.substr(first, folded.find_last_not_of(kMarks) - first + 1);
}

Section named_section(const std::string& spaced) {
  // The heads of two columns: "Ingredient      Amount".
  std::string heading;
  for (const std::string& word : base::words_of(spaced))
    heading += (heading.empty() ? "" : " ") + word;
  if (base::one_of(heading, kIngredientHeadings)) return Section::kIngredients;
  if (base::one_of(heading, kMethodHeadings)) return Section::kMethod;
  if (base::one_of(heading, kOtherHeadings)) return Section::kOther;
  return Section::kNone;
}

bool step_number(const Tokens& t, std::size_t& next) {
  if (t.empty()) return false;
  std::size_t i = t[0].is("step") || t[0].is("stage") ? 1 : 0;
  if (i >= t.size() || !t[i].number() || !t[i].value.whole() || t[i].value > base::Ratio(60))
    return false;
  const bool mark = i + 1 < t.size() && !t[i + 1].spaced &&
                    (t[i + 1].is(".") || t[i + 1].is(")") || t[i + 1].is(":"));
  if (!mark && i == 0) return false;
  next = i + (mark ? 2 : 1);
  if (i == 1 && next < t.size() && (t[next].is("-") || t[next].is(":"))) ++next;
  return true;
}

bool verb_at(const Tokens& t, std::size_t i) {
  if (i >= t.size() || t[i].kind != LineToken::Kind::kWord) return false;
  static constexpr std::array<std::string_view, 24> kAlsoFoods = {
      "butter", "flour", "oil",      "zest",  "juice",  "ice",     "mince",   "cube",
      "dry",    "light", "roast",    "toast", "batter", "core",    "roll",    "steam",
      "top",    "grill", "sandwich", "pinch", "dot",    "squeeze", "drizzle", "flake"};
  static constexpr std::array<std::string_view, 17> kObjects = {
      "the", "a",   "an",  "your", "and",  "both", "each", "two",    "them",
      "it",  "any", "all", "in",   "with", "over", "well", "lightly"};
  // "You cream the butter with the sugar."
  if (t[i].is("you") || t[i].is("we") || t[i].is("i"))
    return i + 2 < t.size() && method_verb(t[i + 1].word) && !t[i + 1].is("use");
  const std::string next = i + 1 < t.size() ? t[i + 1].word : "";
  if (base::one_of(t[i].word, kAlsoFoods)) {
    const bool fruit = (t[i].is("zest") || t[i].is("juice")) && next == "and";
    return base::one_of(next, kObjects) && !fruit;
  }
  if (t[i].is("to") &&
      (next == "serve" || next == "garnish" || next == "decorate" || next == "finish"))
    return i + 2 < t.size() && t[i + 2].is(",");
  // "finely grated zest" is no instruction.
  if (t[i].word.ends_with("ly") && next.ends_with("ed")) return false;
  if (method_verb(t[i].word))
    return next != "," || t[i].is("then") || t[i].is("next") || t[i].is("finally") ||
           t[i].is("meanwhile") || t.size() > 8;
  // "Carefully fold", "Very gently stir".
  return t[i].word.ends_with("ly") && i + 1 < t.size() && method_verb(t[i + 1].word);
}

}  // namespace

std::string_view without_number(std::string_view line) {
  line = without_bullet(line);
  while (!line.empty() && (line[0] == '#' || line[0] == ' ')) line.remove_prefix(1);
  const Tokens t = line_tokens(line);
  std::size_t next = 0;
  if (!step_number(t, next)) return line;
  if (next >= t.size()) return {};
  return line.substr(t[next].begin);
}

std::string heading_text(std::string_view line) {
  const std::string_view open = without_number(line);
  std::string out = trimmed_marks(open);
  while (!out.empty() && (out.back() == '*' || out.back() == ':')) out.pop_back();
  return out;
}

LineLooks looks_of(std::string_view line) {
  LineLooks looks;
  const std::string_view open = without_bullet(line);
  looks.bullet = open.size() != line.size();
  Tokens t = line_tokens(open);
  std::size_t next = 0;
  looks.numbered = step_number(t, next);
  const std::size_t first = looks.numbered ? next : 0;
  looks.words = static_cast<std::size_t>(
      std::count_if(t.begin(), t.end(),
                    [](const LineToken& each) { return each.kind == LineToken::Kind::kWord; }));
  const char last = open.empty() ? ' ' : open.back();
  looks.colon_last = last == ':' ||
                     (open.size() > 1 && last == '*' && open[open.size() - 2] == ':');
  looks.sentence = looks.words >= 5 && (last == '.' || last == '!');
  looks.verb_first = verb_at(t, first);
  looks.capitals = looks.words > 0 && std::none_of(open.begin(), open.end(),
                                                   [](char c) { return c >= 'a' && c <= 'z'; });
  const Measures measures;
  if (const auto amount = amount_at(t, first, measures); amount && amount->quantity.stated()) {
    looks.amount_alone = amount->next >= t.size() && !looks.numbered;
    looks.amount_first = !looks.amount_alone && !(looks.numbered && looks.verb_first);
    looks.measured = amount->quantity.unit != Unit::kPiece || !amount->quantity.piece.empty();
    // "A crumble for cold days", "One of the first dishes": an article counts only with a measure.
    if (t[first].is("a") || t[first].is("an") || t[first].is("one"))
      looks.amount_first = looks.amount_first && amount->quantity.unit != Unit::kToTaste &&
                           !(amount->quantity.unit == Unit::kPiece &&
                             amount->quantity.piece.empty() && looks.words > 5);
  }
  for (std::size_t i = 1; i < t.size() && !looks.amount_first; ++i) {
    if (!t[i].number()) continue;
    const auto amount = amount_at(t, i, measures);
    if (amount && amount->next >= t.size() && looks.words <= 8) looks.amount_last = true;
  }
  return looks;
}

HeadingFound section_heading(std::string_view line) {
  HeadingFound found;
  found.rest = line.size();
  const std::string whole = bare(line);
  found.section = named_section(whole);
  if (found.section != Section::kNone) return found;
  // "Ingredients (serves 4)", "Method for the cake", "Ingredients for 4".
  for (const std::string_view tail : {" (", " for ", " - "}) {
    const auto cut = whole.find(tail);
    if (cut == std::string::npos || whole.size() > 60) continue;
    const Section section = named_section(whole.substr(0, cut));
    if (section != Section::kNone && section != Section::kOther) {
      if (tail == " for " && !(whole.starts_with("ingredient") || whole.starts_with("method")))
        continue;
      found.section = section;
      return found;
    }
  }
  const auto colon = line.find(':');
  if (colon != std::string_view::npos && colon < 32) {
    found.section = named_section(bare(line.substr(0, colon)));
    if (found.section != Section::kNone) {
      found.rest = colon + 1;
      while (found.rest < line.size() && (line[found.rest] == ' ' || line[found.rest] == '*'))
        ++found.rest;
    }
    return found;
  }
  // "You will need 200 g flour, 2 eggs and some milk."
  const std::string folded = base::folded(line);
  for (const std::string_view opening : {"you will need ", "you'll need ", "you need "}) {
    if (!folded.starts_with(opening) || folded.size() != line.size()) continue;
    found.section = Section::kIngredients;
    found.rest = opening.size();
  }
  return found;
}

bool group_heading(std::string_view line, const LineLooks& looks) {
  // "TO DECORATE (choose one or more)", "Sauce (mix together)": what stands in brackets is a
  // remark.
  const auto bracket = line.find(" (");
  if (bracket != std::string_view::npos && bracket > 2 && line.back() == ')') {
    const std::string_view before = line.substr(0, bracket);
    if (line_tokens(line.substr(bracket)).size() <= 9 && !looks.amount_first)
      return group_heading(before, looks_of(before));
  }
  if (looks.words == 0 || looks.words > 7 || looks.amount_first || looks.amount_last ||
      looks.amount_alone || looks.sentence)
    return false;
  const std::string folded = bare(line);
  const bool for_the = folded.starts_with("for the ") || folded.starts_with("to make the ") ||
                       folded.starts_with("for your ") || folded.starts_with("to serve with") ||
                       folded == "to serve" || folded == "to finish" || folded == "to decorate" ||
                       folded == "to garnish";
  if (for_the && (looks.colon_last || looks.words <= 5)) return line.back() != '.';
  if (looks.colon_last) return true;
  if (line.starts_with("#") || (line.starts_with("**") && line.ends_with("**"))) return true;
  // "Dough", "Topping": parts of dishes. "Tomato sauce" may be an ingredient, "Sauce" is not.
  static constexpr std::array<std::string_view, 26> kParts = {
      "dough",    "topping",  "filling",   "sauce",    "base",  "dressing",   "marinade",
      "crumble",  "glaze",    "icing",     "pastry",   "salad", "coating",    "batter",
      "stuffing", "frosting", "crust",     "toppings", "cake",  "decoration", "garnish",
      "sponge",   "rub",      "meatballs", "assembly", "slaw"};
  static constexpr std::array<std::string_view, 8> kAlsoFoods = {
      "sauce", "icing", "pastry", "salad", "stuffing", "dressing", "cake", "base"};
  const auto space = folded.rfind(' ');
  const std::string_view noun = std::string_view(folded).substr(
      space == std::string::npos ? 0 : space + 1);
  const bool plain = line.find(',') == std::string_view::npos && line[0] >= 'A' && line[0] <= 'Z';
  if (looks.words <= 3 && !looks.bullet && plain && base::one_of(noun, kParts)) {
    if (looks.words == 1 || !base::one_of(noun, kAlsoFoods)) return true;
  }
  const bool letters = std::any_of(line.begin(), line.end(),
                                   [](char c) { return c >= 'A' && c <= 'Z'; });
  return looks.capitals && letters && looks.words <= 4 && !looks.bullet;
}

bool time_line(std::string_view line) {
  const std::string folded = base::folded(without_bullet(line));
  static constexpr std::array<std::string_view, 17> kOpen = {
      "prep",        "preparation time", "preparation:", "cook time", "cooking time", "cook:",
      "cook ",       "total time",       "time",         "ready in",  "takes ",       "bake time",
      "baking time", "chill time",       "total:",       "hands-on",  "difficulty"};
  const bool opens = std::any_of(kOpen.begin(), kOpen.end(),
                                 [&](std::string_view open) { return folded.starts_with(open); });
  if (!opens || folded.size() > 90) return false;
  if (folded.starts_with("difficulty")) return true;
  const bool digits = std::any_of(folded.begin(), folded.end(),
                                  [](char c) { return c >= '0' && c <= '9'; });
  const bool unit = folded.find("min") != std::string::npos ||
                    folded.find("hour") != std::string::npos ||
                    folded.find("hr") != std::string::npos;
  if (!digits || !unit) return false;
  // "Cook the rice for 12 minutes." is a step.
  static constexpr std::array<std::string_view, 8> kSteps = {
      " the ", " until", " for ", " in a ", " it ", " on ", " gently", " with "};
  return std::none_of(kSteps.begin(), kSteps.end(), [&](std::string_view w) {
    return folded.find(w) != std::string::npos && !folded.starts_with("ready in");
  });
}

}  // namespace kitchen
