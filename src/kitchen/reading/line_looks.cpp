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

constexpr auto kIngredientHeadings = std::to_array<std::string_view>({"ingredients",
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
                                                                      "ingredient weight",
                                                                      "what you bring",
                                                                      "you bring",
                                                                      "pupils bring",
                                                                      "collect",
                                                                      "collect these",
                                                                      "get out",
                                                                      "weigh and measure",
                                                                      "weigh",
                                                                      "gather",
                                                                      "what it takes",
                                                                      "from the shop",
                                                                      "from the cupboard",
                                                                      "from the fridge",
                                                                      "shopping",
                                                                      "you are going to need",
                                                                      "you will be using",
                                                                      "ingredients and amounts",
                                                                      "ingredients and quantities",
                                                                      "what to buy",
                                                                      "what we need",
                                                                      "we need",
                                                                      "i need",
                                                                      "ingredients i used",
                                                                      "what i used",
                                                                      "stuff you need",
                                                                      "quantities",
                                                                      "amounts",
                                                                      "ingredients per pair",
                                                                      "ingredients for 1",
                                                                      "larder"});
constexpr auto kMethodHeadings = std::to_array<std::string_view>({"method",
                                                                  "instructions",
                                                                  "directions",
                                                                  "steps",
                                                                  "how to make it",
                                                                  "how to make",
                                                                  "how",
                                                                  "preparation",
                                                                  "what to do",
                                                                  "the method",
                                                                  "procedure",
                                                                  "making it",
                                                                  "to make",
                                                                  "how to",
                                                                  "cooking",
                                                                  "cooking instructions",
                                                                  "step by step",
                                                                  "how to cook it",
                                                                  "let's cook",
                                                                  "what you do",
                                                                  "how it's done",
                                                                  "preparation method",
                                                                  "cooking method",
                                                                  "how to do it",
                                                                  "making",
                                                                  "making them",
                                                                  "making the dish",
                                                                  "how i make it",
                                                                  "how we made it",
                                                                  "what we did",
                                                                  "what was done",
                                                                  "what happens",
                                                                  "your jobs",
                                                                  "jobs",
                                                                  "plan of action",
                                                                  "plan",
                                                                  "action plan",
                                                                  "time plan",
                                                                  "order of work",
                                                                  "how it is done",
                                                                  "how to make them",
                                                                  "making up",
                                                                  "to cook",
                                                                  "to assemble",
                                                                  "what you have to do",
                                                                  "what we do",
                                                                  "cooking steps",
                                                                  "steps to follow",
                                                                  "the steps",
                                                                  "sequence",
                                                                  "making sequence",
                                                                  "production plan",
                                                                  "what i did",
                                                                  "how i made it",
                                                                  "how it was made",
                                                                  "get cooking",
                                                                  "let's make it",
                                                                  "now cook",
                                                                  "assembly",
                                                                  "recipe method",
                                                                  "cooking order",
                                                                  "step-by-step",
                                                                  "practical",
                                                                  "task list",
                                                                  "tasks",
                                                                  "activity",
                                                                  "to do"});
constexpr auto kOtherHeadings = std::to_array<std::string_view>({"notes",
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
                                                                 "nutrition information",
                                                                 "equipment list",
                                                                 "you will also need",
                                                                 "kit",
                                                                 "kit list",
                                                                 "tools",
                                                                 "utensils",
                                                                 "comment",
                                                                 "you might also like",
                                                                 "you may also like",
                                                                 "more like this",
                                                                 "related",
                                                                 "related recipes",
                                                                 "evaluation",
                                                                 "quality points",
                                                                 "quality points to look for",
                                                                 "plenary",
                                                                 "starter",
                                                                 "learning objectives",
                                                                 "key words",
                                                                 "health and safety",
                                                                 "safety",
                                                                 "safety points",
                                                                 "hygiene and safety",
                                                                 "stretch",
                                                                 "challenge",
                                                                 "extension task",
                                                                 "warning",
                                                                 "serving suggestion",
                                                                 "did you know",
                                                                 "sensory words",
                                                                 "nutrition per serving",
                                                                 "nutrition facts",
                                                                 "per portion",
                                                                 "cost",
                                                                 "contains",
                                                                 "evaluation questions",
                                                                 "what i would change",
                                                                 "next time",
                                                                 "washing up",
                                                                 "what went well",
                                                                 "even better if",
                                                                 "storage and shelf life",
                                                                 "newsletter",
                                                                 "advertisement",
                                                                 "sponsored",
                                                                 "leave a comment",
                                                                 "reviews and comments",
                                                                 "ratings",
                                                                 "wine match",
                                                                 "special equipment",
                                                                 "reason for choice"});

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
  // "Ingrediants", "methd": the words everybody means to write.
  if (heading.size() >= 5 && heading[0] == 'i' && base::edit_distance(heading, "ingredients") <= 2)
    return Section::kIngredients;
  if (heading.size() >= 5 && heading[0] == 'm' && base::edit_distance(heading, "method") <= 1)
    return Section::kMethod;
  // "Recipe tip", "Chef's tips"
  const bool tip = heading.ends_with(" tip") || heading.ends_with(" tips") ||
                   heading.ends_with(" notes") || heading.ends_with(" note");
  if (tip && std::count(heading.begin(), heading.end(), ' ') <= 2) return Section::kOther;
  return Section::kNone;
}

bool at_word(const Tokens& t, std::size_t i) {
  return i < t.size() && t[i].kind == LineToken::Kind::kWord && t[i].spaced;
}

bool verb_at(const Tokens& t, std::size_t i);

// "(a) Peel", "b) Stir", "(1) Mix", "ii) Bake"
bool lettered(const Tokens& t, std::size_t& next) {
  const std::size_t open = t[0].is("(") ? 1 : 0;
  if (open + 2 >= t.size() || !t[open + 1].is(")") || t[open + 1].spaced) return false;
  const LineToken& letter = t[open];
  const bool roman = base::one_of(letter.word, {"ii", "iii", "iv", "vi", "vii", "viii", "ix"});
  const bool one = letter.kind == LineToken::Kind::kWord && (letter.word.size() == 1 || roman);
  const bool figure = open == 1 && letter.number() && letter.value.whole();
  if (!(one || figure) || !at_word(t, open + 2)) return false;
  next = open + 2;
  return true;
}

// "3  Peel the potato": a number without a mark, before a verb and its object.
bool verb_numbered(const Tokens& t, std::size_t& next) {
  static constexpr std::array<std::string_view, 26> kObjects = {
      "the",  "a",    "an",   "your", "in",   "out", "up",   "off",  "on",
      "it",   "them", "and",  "both", "all",  "of",  "for",  "with", "into",
      "each", "well", "over", "from", "oven", "to",  "then", "until"};
  if (t.size() < 4 || !t[0].number() || !t[0].value.whole() || t[0].value > base::Ratio(40) ||
      !at_word(t, 1) || t[1].text[0] < 'A' || t[1].text[0] > 'Z')
    return false;
  const bool object = t[2].kind == LineToken::Kind::kWord && base::one_of(t[2].word, kObjects);
  if (!object || !verb_at(t, 1)) return false;
  next = 1;
  return true;
}

bool step_number(const Tokens& t, std::size_t& next) {
  if (t.empty()) return false;
  if (lettered(t, next) || verb_numbered(t, next)) return true;
  std::size_t i = t[0].is("step") || t[0].is("stage") ? 1 : 0;
  if (i >= t.size() || !t[i].number() || !t[i].value.whole() || t[i].value > base::Ratio(60))
    return false;
  const bool touches = i + 1 < t.size() &&
                       (!t[i + 1].spaced || (t[i + 1].is(".") && at_word(t, i + 2)));
  const bool mark = touches && (t[i + 1].is(".") || t[i + 1].is(")") || t[i + 1].is(":"));
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

// "Person A: peel the onion", "Both: stir": behind the colon, else where it began.
std::size_t behind_person(const Tokens& t, std::size_t first) {
  if (first >= t.size()) return first;
  static constexpr std::array<std::string_view, 16> kPersons = {
      "person", "pupil", "partner",  "both", "student", "cook", "chef", "everyone",
      "all",    "pair",  "together", "a",    "b",       "c",    "d",    "you"};
  if (!base::one_of(t[first].word, kPersons)) return first;
  for (std::size_t i = first + 1; i < t.size() && i <= first + 2; ++i) {
    if (t[i].is(":") || (t[i].is("-") && t[i].spaced)) return i + 1;
  }
  return first;
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
  looks.verb_first = verb_at(t, first) || verb_at(t, behind_person(t, first));
  looks.capitals = looks.words > 0 && std::none_of(open.begin(), open.end(),
                                                   [](char c) { return c >= 'a' && c <= 'z'; });
  const Measures measures;
  if (const auto amount = amount_at(t, first, measures); amount && amount->quantity.stated()) {
    looks.amount_alone = amount->next >= t.size() && !looks.numbered;
    looks.amount_first = !looks.amount_alone && !(looks.numbered && looks.verb_first);
    looks.measured = amount->quantity.unit != Unit::kPiece || !amount->quantity.piece.empty();
    // "A crumble for cold days", "One of the first dishes": an article counts only with a measure.
    // "Sprinkle over the apples" is done.
    if (first == 0 && t[first].kind == LineToken::Kind::kWord && amount->next < t.size() &&
        (t[amount->next].is("over") || t[amount->next].is("on") || t[amount->next].is("with")))
      looks.amount_first = false;
    if (t[first].is("a") || t[first].is("an") || t[first].is("one"))
      looks.amount_first = looks.amount_first && amount->quantity.unit != Unit::kToTaste &&
                           !(amount->quantity.unit == Unit::kPiece &&
                             amount->quantity.piece.empty() && looks.words > 5);
  }
  for (std::size_t i = 1; i < t.size() && !looks.amount_first; ++i) {
    // In words an amount stands only behind a mark: "Salt (a pinch)", "Eggs ..... two".
    const bool open = t[i - 1].is("(") || t[i - 1].is("[");
    const bool marked = open || t[i - 1].is("=") || t[i - 1].is(":") ||
                        (t[i - 1].is("-") && t[i - 1].spaced && t[i].spaced);
    if (!t[i].number() && !marked) continue;
    const auto amount = amount_at(t, i, measures);
    if (!amount) continue;
    std::size_t end = amount->next;
    // "Raspberries, 300 g - frozen ones will do": a remark behind the amount.
    constexpr std::size_t kNameAndComma = 5;
    const bool remark = t[i - 1].is(",") && i <= kNameAndComma && end < t.size() &&
                        (t[end].is("-") || t[end].is("(")) && !looks.verb_first &&
                        amount->quantity.unit != Unit::kPiece;
    if (remark) looks.amount_last = true;
    if (looks.words > 10) continue;
    if (open && end < t.size() && (t[end].is(")") || t[end].is("]"))) ++end;
    while (marked && !open && end < t.size() && quality_word(t[end].word)) ++end;
    if (end >= t.size() && (t[i].number() || amount->quantity.stated())) looks.amount_last = true;
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
    if (section != Section::kNone && (section != Section::kOther || tail == " (")) {
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
    // "You need to bring (tick when packed):" is a heading to its end.
    const bool all = line.back() == ':' && folded.find_first_of("0123456789") == std::string::npos;
    found.rest = all ? line.size() : opening.size();
  }
  return found;
}

bool equipment_heading(std::string_view line) {
  const std::string whole = bare(line);
  return whole.starts_with("equipment") || whole.ends_with("equipment") ||
         whole.starts_with("kit") || whole.starts_with("tools") || whole.starts_with("utensils") ||
         whole.starts_with("you will also need");
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
  const bool for_the = folded.starts_with("for the ") || folded.starts_with("making the ") ||
                       folded.starts_with("to make the ") || folded.starts_with("for your ") ||
                       folded.starts_with("to serve with") || folded == "to serve" ||
                       folded == "to finish" || folded == "to decorate" || folded == "to garnish";
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
  const bool plain = line.find(',') == std::string_view::npos &&
                     folded.find(" to ") == std::string::npos && line[0] >= 'A' && line[0] <= 'Z';
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
