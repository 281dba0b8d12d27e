#include "kitchen/reading/line_parts.h"

#include <algorithm>
#include <array>

#include "base/folding.h"
#include "base/text.h"
#include "kitchen/reading/line_words.h"

namespace kitchen {
namespace {

using Tokens = std::vector<LineToken>;

bool holds(const std::string& text, std::string_view what) {
  return base::say(" ", base::folded(text), " ").find(base::say(" ", what)) != std::string::npos;
}

void append(std::string& to, const std::string& text, std::string_view between = ", ") {
  if (text.empty()) return;
  if (!to.empty()) to += between;
  to += text;
}

// Tokens outside brackets; what stands in brackets goes to `notes`.
Tokens without_brackets(const Tokens& t, std::vector<std::string>& notes) {
  Tokens out;
  Tokens inside;
  int depth = 0;
  const auto close = [&] {
    const std::string note = as_written(inside, 0, inside.size());
    if (!note.empty()) notes.push_back(note);
    inside.clear();
  };
  for (const LineToken& token : t) {
    if (token.is("(") || token.is("[")) {
      if (depth++ > 0) inside.push_back(token);
    } else if (token.is(")") || token.is("]")) {
      if (depth > 0 && --depth == 0) close();
    } else {
      (depth > 0 ? inside : out).push_back(token);
    }
  }
  close();
  return out;
}

bool divides(const Tokens& t, std::size_t i) {
  if (t[i].is(",") || t[i].is(";")) return true;
  // " - " between words; "self-raising" is one word, "semi -skimmed" a slip.
  return (t[i].is("-") && t[i].spaced && i + 1 < t.size() && t[i + 1].spaced) || t[i].is("|");
}

std::vector<Tokens> segments(const Tokens& t) {
  std::vector<Tokens> out(1);
  for (std::size_t i = 0; i < t.size(); ++i) {
    if (divides(t, i)) {
      if (!out.back().empty()) out.emplace_back();
    } else {
      out.back().push_back(t[i]);
    }
  }
  if (out.back().empty()) out.pop_back();
  return out;
}

bool only_about_food(const LineToken& t) {
  return quality_word(t.word) || preparation_word(t.word) || manner_word(t.word) || t.is("and") ||
         t.is("&") || t.is("or") || t.is("-") || t.is("fresh") || t.is("free") || t.is("range");
}

// "to serve", "for frying", "cut into", "at room temperature", "plus extra".
bool begins_remark(const Tokens& t, std::size_t i) {
  static constexpr std::array<std::string_view, 17> kAfterTo = {
      "serve", "taste", "garnish", "decorate", "finish", "dust", "grease",   "fry",  "coat",
      "bind",  "glaze", "form",    "mix",      "make",   "roll", "sprinkle", "brush"};
  static constexpr std::array<std::string_view, 20> kAlways = {
      "for",  "+",        "from", "with", "without",   "into",    "if",
      "such", "e.g",      "eg",   "like", "about",     "approx",  "at",
      "left", "optional", "as",   "plus", "including", "weighing"};
  static constexpr std::array<std::string_view, 11> kKeptIn = {
      "brine",  "oil",       "water", "juice",   "syrup", "tomato",
      "spring", "sunflower", "olive", "natural", "sauce"};
  if (t[i].number() || i == 0) return false;
  const std::string& w = t[i].word;
  if (base::one_of(w, kAlways)) return true;
  if (w == "to") return i + 1 < t.size() && base::one_of(t[i + 1].word, kAfterTo);
  if (w == "in") return !(i + 1 < t.size() && base::one_of(t[i + 1].word, kKeptIn));
  if (w == "cut") return true;
  if (w == "skin" || w == "skins")
    return at(t, i + 1, "on") || at(t, i + 1, "removed") || at(t, i + 1, "off");
  if (w == "room") return at(t, i + 1, "temperature");
  if (w == "of") return at(t, i + 1, "your") || at(t, i + 1, "choice");
  if (w == "on") return at(t, i + 1, "the");
  if (manner_word(w) && i + 1 < t.size())
    return preparation_word(t[i + 1].word) || manner_word(t[i + 1].word);
  // "Onion chopped", "carrots peeled and diced", but not the "grated" of "dairy-free grated
  // cheese".
  static constexpr std::array<std::string_view, 11> kLinks = {
      "and", "&", "into", "in", "for", "to", "with", "at", "on", "then", "but"};
  return preparation_word(w) && (i + 1 >= t.size() || base::one_of(t[i + 1].word, kLinks));
}

class Sorter {
 public:
  Sorter(const FoodMatcher& foods, bool container, bool counted)
      : foods_(foods), container_(container), counted_(counted) {}

  LineParts sort(const Tokens& rest) {
    Tokens open = without_brackets(rest, parts_.notes);
    std::vector<Tokens> pieces = segments(open);
    if (pieces.empty()) return std::move(parts_);
    // "boneless, skinless chicken thighs": the food has not come yet.
    std::size_t first = 0;
    Tokens head = pieces[0];
    while (first + 1 < pieces.size() && std::all_of(head.begin(), head.end(), only_about_food)) {
      ++first;
      head.insert(head.end(), pieces[first].begin(), pieces[first].end());
    }
    read_head(head);
    for (std::size_t k = first + 1; k < pieces.size(); ++k) remark(pieces[k]);
    for (const std::string& note : parts_.notes) {
      if (holds(note, "optional")) parts_.optional = true;
    }
    const std::string& p = parts_.preparation;
    parts_.drained = holds(p, "drained");
    parts_.cut = parts_.cut || holds(p, "chopped") || holds(p, "torn") || holds(p, "shredded") ||
                 holds(p, "leaves") || holds(p, "grated") || holds(p, "sliced") ||
                 holds(p, "crushed") || holds(p, "snipped") || holds(p, "peeled");
    return std::move(parts_);
  }

 private:
  const FoodMatcher& foods_;
  bool container_, counted_;
  LineParts parts_;

  void remark(const Tokens& t) {
    std::string text = as_written(t, t[0].is("+") ? 1 : 0, t.size());
    if (text.empty()) return;
    const std::string folded = base::folded(text);
    if (folded == "optional" || folded == "if liked" || folded == "if you like" ||
        folded == "if desired" || folded == "if using") {
      parts_.optional = true;
      return;
    }
    if (folded == "to taste" || folded == "or to taste") {
      parts_.to_taste = true;
      return;
    }
    if (t.size() > 1 && t[0].is("or")) {
      std::size_t end = t.size();
      parts_.or_instead.push_back(as_written(t, 1, end));
      return;
    }
    if (holds(text, "optional")) parts_.optional = true;
    const bool extra = holds(text, "extra") || holds(text, "plus") || holds(text, "more");
    static constexpr std::array<std::string_view, 8> kGarnish = {
        "to serve",    "to garnish", "for dusting", "for greasing",
        "to decorate", "to finish",  "for garnish", "for serving"};
    for (const std::string_view each : kGarnish) {
      if (!extra && holds(text, each)) parts_.garnish = true;
    }
    // "2 eggs, large": a quality behind the comma is one all the same.
    if (std::all_of(t.begin(), t.end(), [](const LineToken& w) { return quality_word(w.word); })) {
      append(parts_.quality, text, " ");
      return;
    }
    append(parts_.preparation, text);
  }

  void read_head(Tokens head) {
    while (!head.empty() && (head.front().is("of") || head.front().is(".") ||
                             head.front().is(":") || head.front().is("-") || head.front().is("x")))
      head.erase(head.begin());
    while (!head.empty() && (head.back().is(".") || head.back().is("*") || head.back().is(":")))
      head.pop_back();
    if (head.empty()) return;
    std::size_t from = 0, to = head.size();
    if (foods_.named(as_written(head, 0, to)) == nullptr) to = remark_from(head);
    if (to < head.size())
      remark(Tokens(head.begin() + static_cast<std::ptrdiff_t>(to), head.end()));
    to = alternatives(head, to);
    from = leading(head, to);
    to = trailing_quality(head, from, to);
    parts_.name = as_written(head, from, to);
    if (parts_.match_name.empty()) parts_.match_name = parts_.name;
  }

  std::size_t remark_from(const Tokens& head) const {
    std::size_t i = 0;
    // What stands before the food is not a remark about it.
    while (i < head.size() && only_about_food(head[i])) ++i;
    for (++i; i < head.size(); ++i) {
      if (begins_remark(head, i)) return i;
    }
    return head.size();
  }

  // "butter or margarine", "vegetable or sunflower oil": what is left of the "or".
  std::size_t alternatives(Tokens& head, std::size_t to) {
    std::size_t i = 1;
    while (i < to && !head[i].is("or") && !(head[i].is("/") && i + 1 < to)) ++i;
    if (i + 1 >= to || foods_.named(as_written(head, 0, to)) != nullptr) return to;
    if (std::all_of(head.begin(), head.begin() + static_cast<std::ptrdiff_t>(i), only_about_food))
      return to;
    parts_.or_instead.push_back(as_written(head, i + 1, to));
    const std::string left = as_written(head, 0, i);
    const LineToken noun = head[to - 1];
    const std::string whole = left + " " + noun.text;
    if (foods_.match(left, {}).confidence < 0.9 || foods_.named(whole) != nullptr) {
      if (foods_.match(whole, {}).confidence > 0.85 || foods_.match(left, {}).food == nullptr) {
        head[i] = noun;
        head[i].spaced = true;
        return i + 1;
      }
    }
    return i;
  }

  // Qualities and preparation that stand before the food; where the food begins.
  std::size_t leading(const Tokens& head, std::size_t to) {
    std::size_t from = 0;
    std::string prepared;
    std::size_t run = 0;  // first of a run of preparation words
    const auto whole_food = [&](std::size_t k) { return foods_.named(as_written(head, k, to)); };
    while (from + 1 < to) {
      const LineToken& t = head[from];
      const bool free_range = t.is("free") && at(head, from + 1, "range");
      const bool quality = quality_word(t.word) || free_range || t.is("fresh,");
      // "Ground", "mixed" and the like belong to the food's name when they stand before it.
      const bool named_by = t.is("ground") || t.is("mixed") || t.is("cooked");
      if (t.is("minced") && with_meat(head, from, to)) break;
      // What is chopped in its tin was not chopped by the cook.
      if (container_ && cutting_word(t.word) && from == 0) break;
      if (named_by && (from == 0 || !manner_word(head[from - 1].word))) break;
      const bool prep = preparation_word(t.word) ||
                        (manner_word(t.word) && only_about_food(head[from + 1]));
      const bool linking = (t.is("and") || t.is("&") || t.is("-")) && from > 0;
      if (!quality && !prep && !linking) break;
      const Food* with = whole_food(from);
      const Food* without = foods_.match(as_written(head, from + 1, to), {}).food;
      if (with != nullptr && with != without && (quality || !strips(head, from, *with))) break;
      const bool fresh_ones = with != nullptr && counted_ &&
                              with->key.find("tinned") != std::string::npos;
      if (with != nullptr && with != without && !fresh_ones)
        parts_.match_name = as_written(head, from, to);
      if (quality && !prep) {
        if (from > run) append(prepared, as_written(head, run, from), " ");
        append(parts_.quality, free_range ? t.text + " range" : t.text, " ");
        from += free_range ? 2 : 1;
        run = from;
      } else {
        ++from;
      }
    }
    if (from > run) append(prepared, as_written(head, run, from), " ");
    if (!prepared.empty()) {
      if (parts_.preparation.empty())
        parts_.preparation = prepared;
      else
        parts_.preparation = prepared + ", " + parts_.preparation;
    }
    return from;
  }

  // "Minced beef" is a food of its own, "minced garlic" is garlic.
  bool with_meat(const Tokens& head, std::size_t from, std::size_t to) const {
    const Food* food = foods_.named(as_written(head, from, to));
    return food != nullptr && !food->category.starts_with("veg") &&
           !food->category.starts_with("herb");
  }

  // Whether "grated" of "grated mozzarella" is told apart from the food, which is another with it.
  bool strips(const Tokens& head, std::size_t from, const Food& with) const {
    if (!cutting_word(head[from].word)) return false;
    if (with.key.find("tinned") != std::string::npos) return counted_ && !container_;
    return !container_;
  }

  // "chicken breasts skinless", "eggs large": qualities behind the food.
  std::size_t trailing_quality(const Tokens& head, std::size_t from, std::size_t to) {
    std::size_t end = to;
    while (end > from + 1 && quality_word(head[end - 1].word) && !head[end - 1].is("fat") &&
           foods_.named(as_written(head, from, end)) == nullptr)
      --end;
    append(parts_.quality, as_written(head, end, to), " ");
    return end;
  }
};

}  // namespace

std::string as_written(const std::vector<LineToken>& t, std::size_t from, std::size_t to) {
  std::string out;
  for (std::size_t i = from; i < to && i < t.size(); ++i) {
    if (t[i].spaced && !out.empty()) out += ' ';
    out += t[i].text;
  }
  return trimmed_marks(out);
}

LineParts line_parts(const std::vector<LineToken>& rest, const FoodMatcher& foods, bool container,
                     bool counted) {
  return Sorter(foods, container, counted).sort(rest);
}

}  // namespace kitchen
