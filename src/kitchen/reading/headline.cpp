#include "kitchen/reading/headline.h"

#include <algorithm>
#include <unordered_set>

#include "base/folding.h"
#include "base/text.h"
#include "kitchen/foods.h"
#include "kitchen/reading/actions.h"
#include "kitchen/reading/amounts.h"
#include "kitchen/reading/ingredient_words.h"
#include "kitchen/reading/line_looks.h"

namespace kitchen {
namespace {

using Tokens = std::vector<LineToken>;

// What dishes are called, in the singular. Common practice, no source.
bool dish_word(const std::string& word) {
  static const std::unordered_set<std::string_view> kWords = {
      "bake",       "bhaji",       "biryani",     "biscuit",    "bolognese",  "bread",
      "broth",      "brownie",     "bun",         "burger",     "burrito",    "cake",
      "calzone",    "carbonara",   "casserole",   "cheesecake", "chilli",     "chowder",
      "chutney",    "cobbler",     "coleslaw",    "compote",    "cookie",     "cotta",
      "couscous",   "crumble",     "cupcake",     "curry",      "custard",    "dal",
      "dhal",       "dumpling",    "eclair",      "enchilada",  "fajita",     "falafel",
      "fishcake",   "flan",        "flapjack",    "flatbread",  "focaccia",   "frittata",
      "fry",        "gingerbread", "goujon",      "goulash",    "granola",    "gratin",
      "hotpot",     "hummus",      "jam",         "jambalaya",  "jelly",      "katsu",
      "kebab",      "kedgeree",    "kofta",       "lasagne",    "loaf",       "log",
      "macaroni",   "meatball",    "meringue",    "minestrone", "moussaka",   "mousse",
      "muffin",     "naan",        "nachos",      "noodle",     "nugget",     "omelette",
      "paella",     "pakora",      "pancake",     "parkin",     "pasta",      "pasty",
      "pavlova",    "pesto",       "pie",         "pierogi",    "pilaf",      "pilau",
      "pizza",      "plait",       "profiterole", "pudding",    "quesadilla", "quiche",
      "ragu",       "ramen",       "rarebit",     "relish",     "risotto",    "roll",
      "roulade",    "salad",       "salsa",       "samosa",     "sandwich",   "scone",
      "shortbread", "slaw",        "smoothie",    "soup",       "spaghetti",  "sponge",
      "stew",       "stir-fry",    "stroganoff",  "swirl",      "taco",       "tagine",
      "tart",       "teriyaki",    "tiffin",      "toad",       "toastie",    "tortilla",
      "traybake",   "trifle",      "turnover",    "wedge",      "wrap"};
  return kWords.contains(word);
}

// Words of schools, clubs, pages and letters, which no dish is called by.
bool other_word(const std::string& word) {
  static const std::unordered_set<std::string_view> kWords = {"am",
                                                              "award",
                                                              "beginner",
                                                              "butcher",
                                                              "camp",
                                                              "candidate",
                                                              "card",
                                                              "certificate",
                                                              "church",
                                                              "class",
                                                              "club",
                                                              "cookery",
                                                              "cooking",
                                                              "corner",
                                                              "council",
                                                              "date",
                                                              "dear",
                                                              "department",
                                                              "exam",
                                                              "examination",
                                                              "fair",
                                                              "family",
                                                              "friday",
                                                              "fridge",
                                                              "group",
                                                              "guide",
                                                              "hall",
                                                              "hello",
                                                              "hi",
                                                              "homework",
                                                              "ingred",
                                                              "ingredient",
                                                              "kitchen",
                                                              "leaflet",
                                                              "lesson",
                                                              "level",
                                                              "local",
                                                              "make-ahead",
                                                              "meal",
                                                              "menu",
                                                              "method",
                                                              "mind",
                                                              "module",
                                                              "monday",
                                                              "name",
                                                              "nea",
                                                              "nea2",
                                                              "night",
                                                              "note",
                                                              "nutrition",
                                                              "order",
                                                              "page",
                                                              "plan",
                                                              "pm",
                                                              "portfolio",
                                                              "practical",
                                                              "prep",
                                                              "pupil",
                                                              "qualification",
                                                              "re",
                                                              "recipe",
                                                              "recipie",
                                                              "recommend",
                                                              "room",
                                                              "saturday",
                                                              "school",
                                                              "section",
                                                              "service",
                                                              "session",
                                                              "sheet",
                                                              "show",
                                                              "skill",
                                                              "sorry",
                                                              "staff",
                                                              "student",
                                                              "subject",
                                                              "sunday",
                                                              "swap",
                                                              "table",
                                                              "task",
                                                              "teacher",
                                                              "tech",
                                                              "technology",
                                                              "thank",
                                                              "thursday",
                                                              "tuesday",
                                                              "unit",
                                                              "village",
                                                              "wednesday",
                                                              "week",
                                                              "weekend",
                                                              "work",
                                                              "worksheet",
                                                              "year",
                                                              "yr"};
  return kWords.contains(word);
}

bool people_word(const LineToken& t) {
  return t.word == "covers" ||
         base::one_of(singular(t.word), {"people", "person", "portion", "serving", "helping",
                                         "mouth", "flatmate", "eater", "guest"});
}

// A number in figures or a word, at most a school's worth.
std::optional<int> how_many(const Tokens& t, std::size_t i, std::size_t& next) {
  constexpr int kMost = 200;
  if (i < t.size() && (t[i].is("about") || t[i].is("around") || t[i].is("roughly"))) ++i;
  if (i >= t.size()) return std::nullopt;
  if (t[i].is("a") && i + 1 < t.size() && t[i + 1].is("dozen")) {
    next = i + 2;
    return 12;
  }
  if (t[i].is("a") || t[i].is("an")) return std::nullopt;
  const auto number = number_at(t, i, next);
  if (!number || !number->whole() || *number < base::Ratio(1) || *number > base::Ratio(kMost))
    return std::nullopt;
  return static_cast<int>(number->round());
}

// "Serves 2", "feeds a dozen", "does six", "enough for 6", "supper for two".
std::optional<PortionsTold> told_by_verb(const Tokens& t, std::size_t i, const std::string& line) {
  const bool eat = base::one_of(t[i].word, {"serves", "feeds", "serving", "does"});
  const bool make = base::one_of(t[i].word, {"makes", "make", "yield", "yields", "cuts"});
  const bool enough = base::one_of(t[i].word,
                                   {"enough", "sufficient", "supper", "lunch", "dinner", "tea"}) &&
                      i + 1 < t.size() && t[i + 1].is("for");
  if (!eat && !make && !enough) return std::nullopt;
  std::size_t at = i + 1;
  if (enough || (at < t.size() && (t[at].is("into") || t[at].is("enough")))) ++at;
  if (at < t.size() && t[at].is("for")) ++at;
  while (at < t.size() && t[at].is(":")) ++at;
  std::size_t next = 0;
  const auto many = how_many(t, at, next);
  if (!many) return std::nullopt;
  const bool measured = next < t.size() &&
                        base::one_of(t[next].word, {"cm", "g", "ml", "inch", "kg", "minutes",
                                                    "mins", "min", "large", "x"});
  // "Does 2 of the burgers need turning?", "makes 1 large pizza".
  if (measured || (t[i].is("does") && next < t.size() && t[next].is("of") &&
                   !(next + 1 < t.size() && base::one_of(t[next + 1].word, {"us", "you", "them"}))))
    return std::nullopt;
  const bool people = eat || enough || (next < t.size() && people_word(t[next]));
  return PortionsTold{{*many, *many, line}, people};
}

// "6 covers", "6 portions", "(4 people)", "20 mouths", "10 slices", "for 2 people", "for 8."
std::optional<PortionsTold> told_by_number(const Tokens& t, std::size_t i,
                                           const std::string& line) {
  std::size_t next = 0;
  const bool whose = t[i].is("for");
  const auto many = how_many(t, whose ? i + 1 : i, next);
  if (!many) return std::nullopt;
  const bool end = next >= t.size() || t[next].is(".") || t[next].is(")") || t[next].is(",");
  if (whose && i == 0 && end) return PortionsTold{{*many, *many, line}, true};
  if (next >= t.size()) return std::nullopt;
  if (people_word(t[next])) return PortionsTold{{*many, *many, line}, true};
  const bool pieces = base::one_of(singular(t[next].word), {"slice", "square", "bar"}) && i > 0 &&
                      (t[i - 1].is(",") || t[i - 1].is("(") || t[i - 1].is("-"));
  if (pieces) return PortionsTold{{*many, *many, line}, false};
  return std::nullopt;
}

}  // namespace

double dish_likeness(std::string_view line, const FoodMatcher& foods) {
  double score = 0;
  const std::vector<std::string> words = words_in_singular(line);
  bool dish = false, food = false;
  for (const std::string& word : words) {
    if (other_word(word)) {
      score -= 2;
    } else if (dish_word(word)) {
      dish = true;
    } else if (word.size() > 3 && foods.named(word) != nullptr) {
      food = true;
    }
  }
  return score + (dish ? 3 : 0) + (food ? 2 : 0);
}

std::string dish_part(const std::string& line, const FoodMatcher& foods) {
  constexpr double kDish = 3;
  double most = dish_likeness(line, foods);
  std::string best = line;
  std::size_t from = 0;
  const auto part = [&](std::size_t to) {
    const std::string one = base::trimmed(line.substr(from, to - from));
    const double likeness = dish_likeness(one, foods);
    if (likeness >= kDish && likeness > most) {
      most = likeness;
      best = one;
    }
  };
  for (std::size_t i = 0; i + 1 < line.size(); ++i) {
    std::size_t mark = 0;
    for (const std::string_view each : {" - ", " | ", ": ", "   "}) {
      if (std::string_view(line).substr(i).starts_with(each)) mark = std::max(mark, each.size());
    }
    if (mark == 0) continue;
    part(i);
    i += mark - 1;
    from = i + 1;
  }
  part(line.size());
  return best;
}

std::optional<PortionsTold> portions_told(std::string_view text) {
  const std::string line(text);
  const Tokens t = line_tokens(line);
  std::optional<PortionsTold> best;
  for (std::size_t i = 0; i < t.size(); ++i) {
    auto found = told_by_verb(t, i, line);
    if (!found) found = told_by_number(t, i, line);
    if (found && (!best || (found->people && !best->people))) best = std::move(found);
    if (best && best->people) break;
  }
  return best;
}

std::string dish_mentioned(std::string_view text, const FoodMatcher& foods) {
  constexpr std::size_t kLongest = 7;  // words
  const std::string line(text);
  const Tokens t = line_tokens(line);
  for (std::size_t end = 0; end < t.size(); ++end) {
    // "Fry the onion and roll" speaks of work.
    if (t[end].kind != LineToken::Kind::kWord || !dish_word(singular(t[end].word)) ||
        action_named(t[end].word) != nullptr || t[end].is("stir-fry"))
      continue;
    // "Spaghetti and meatballs": on to the last such word of the phrase.
    while (end + 2 < t.size() && (t[end + 1].is("and") || t[end + 1].is("&")) &&
           dish_word(singular(t[end + 2].word)))
      end += 2;
    while (end + 1 < t.size() && dish_word(singular(t[end + 1].word))) ++end;
    std::size_t from = end;
    while (from > 0 && end - from < kLongest && t[from - 1].kind == LineToken::Kind::kWord &&
           !base::one_of(t[from - 1].word,
                         {"the",  "a",      "an",   "my",  "our", "your", "that", "this", "is",
                          "made", "making", "make", "of",  "for", "some", "with", "do",   "did",
                          "like", "so",     "is",   "are", "was", "to",   "in",   "on",   "re"}))
      --from;
    const std::string name = words_between(line, t, from, end + 1);
    const bool told = from > 0 &&
                      base::one_of(t[from - 1].word, {"the", "my", "our", "that", "is", "made",
                                                      "making", "make", "a", "some"});
    if (told && end > from && dish_likeness(name, foods) >= 3) return name;
  }
  return "";
}

std::string name_alone(std::string name) {
  const Tokens t = line_tokens(name);
  for (std::size_t i = 1; i < t.size(); ++i) {
    const bool cut = told_by_verb(t, i, name).has_value() ||
                     told_by_number(t, i, name).has_value() ||
                     ((t[i].is("yr") || t[i].is("year")) && i + 1 < t.size() && t[i + 1].number());
    if (!cut) continue;
    std::size_t end = i;
    while (end > 1 && t[end - 1].kind == LineToken::Kind::kSign) --end;
    return name.substr(0, t[end - 1].end);
  }
  return name;
}

}  // namespace kitchen
