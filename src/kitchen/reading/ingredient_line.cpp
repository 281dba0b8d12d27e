#include "kitchen/reading/ingredient_line.h"

#include <algorithm>
#include <array>
#include <optional>

#include "base/folding.h"
#include "base/text.h"
#include "kitchen/reading/cells.h"
#include "kitchen/reading/line_parts.h"
#include "kitchen/reading/line_words.h"
#include "kitchen/reading/two_foods.h"

namespace kitchen {
namespace {

using Tokens = std::vector<LineToken>;

Tokens part(const Tokens& t, std::size_t from, std::size_t to) {
  from = std::min(from, t.size());
  to = std::clamp(to, from, t.size());
  return {t.begin() + static_cast<std::ptrdiff_t>(from),
          t.begin() + static_cast<std::ptrdiff_t>(to)};
}

Tokens joined(Tokens a, const Tokens& b) {
  a.insert(a.end(), b.begin(), b.end());
  return a;
}

bool share(const Tokens& t, std::size_t i) { return at(t, i, "%") || at(t, i, "percent"); }

void append(std::string& to, const std::string& text, std::string_view between = ", ") {
  if (text.empty()) return;
  if (!to.empty()) to += between;
  to += text;
}
void put_first(std::string& to, const std::string& text) {
  std::string out = text;
  append(out, to);
  to = std::move(out);
}

class LineReader {
 public:
  LineReader(std::string_view line, const FoodMatcher& foods, const Measures& measures)
      : line_(line),
        tidy_(without_bullet(line_)),
        t_(line_tokens(tidy_)),
        foods_(foods),
        measures_(measures) {}

  std::vector<IngredientDraft> read() {
    // "3. 500 g flour": the number of the list, not of the food.
    if (t_.size() > 2 && t_[0].number() && t_[0].value.whole() &&
        (t_[1].is(".") || t_[1].is(")")) && !t_[1].spaced && t_[2].spaced)
      t_.erase(t_.begin(), t_.begin() + 2);
    const bool letters = std::any_of(
        t_.begin(), t_.end(), [](const LineToken& t) { return t.kind == LineToken::Kind::kWord; });
    if (!letters) return {};
    part_first();
    Tokens rest = find_amount();
    if (auto drafts = juice_of(rest); !drafts.empty()) return drafts;
    if (auto drafts = several(rest); drafts.size() > 1) return drafts;
    return {draft_of(rest)};
  }

 private:
  const std::string line_;
  const std::string_view tidy_;
  Tokens t_;
  const FoodMatcher& foods_;
  const Measures& measures_;
  std::optional<Amount> amount_;
  std::string from_;  // the words of the amount

  // The amount, before or behind the food; what is left of the line.
  Tokens find_amount() {
    const bool percent = !t_.empty() && t_[0].number() && (share(t_, 1) || t_[0].value == Ratio(0));
    if (!percent) amount_ = amount_at(t_, 0, measures_);
    if (amount_) {
      from_ = as_written(t_, 0, amount_->next);
      if (amount_->quantity.stated() || amount_->about) return part(t_, amount_->next, t_.size());
    }
    return behind();
  }

  // "Flour - 200g", "flour: 200 g, sifted", "Eggs x 2", "Butter (100g)".
  Tokens behind() {
    for (std::size_t k = 1; k < t_.size(); ++k) {
      const bool article = opens_loosely(k) && (t_[k - 1].is("-") || t_[k - 1].is(":") ||
                                                handful_behind(k) || spoon_behind(k));
      const bool told = t_[k - 1].is("(") && t_[k].kind == LineToken::Kind::kWord;
      if (!(t_[k].number() || article || told) || share(t_, k + 1)) continue;
      if (t_[k - 1].kind == LineToken::Kind::kWord && t_[k - 1].is("into")) return t_;
      auto amount = amount_at(t_, k, measures_);
      if (!amount || (told && !amount->quantity.stated())) continue;
      const bool bracket = at(t_, k - 1, "(") || at(t_, k - 1, "[");
      const bool closed = bracket && (at(t_, amount->next, ")") || at(t_, amount->next, "]"));
      if (bracket && !closed) continue;
      if (!ends_well(amount->next) && !closed && !said_behind(k) && !measured_behind(k, *amount))
        continue;
      std::size_t name_end = k;
      while (name_end > 0 && !t_[name_end - 1].number() &&
             (t_[name_end - 1].kind == LineToken::Kind::kSign || t_[name_end - 1].is("x") ||
              t_[name_end - 1].is("about") || t_[name_end - 1].is("approx")))
        --name_end;
      if (name_end == 0) continue;
      amount_ = std::move(amount);
      from_ = as_written(t_, k, amount_->next);
      Tokens tail = part(t_, closed ? amount_->next + 1 : amount_->next, t_.size());
      if (!tail.empty() && !tail.front().is(",") && !tail.front().is("(")) {
        LineToken comma;
        comma.text = comma.word = ",";
        tail.insert(tail.begin(), comma);
      }
      return joined(part(t_, 0, name_end), tail);
    }
    return pinch_behind();
  }

  // "A small bunch", "half a spoon", "good pinch": what an amount without figures begins with.
  bool opens_loosely(std::size_t k) const {
    return t_[k].is("a") || t_[k].is("half") || t_[k].is("one") || measure_quality(t_[k].word);
  }

  // "Seedless grapes, a small bunch"
  bool handful_behind(std::size_t k) const {
    if (!t_[k - 1].is(",") || !opens_loosely(k)) return false;
    const auto amount = amount_at(t_, k, measures_);
    if (!amount || !(amount->next >= t_.size() || ends_well(amount->next))) return false;
    if (t_[k].is("half")) return amount->next >= t_.size();
    return vague_piece(amount->quantity.piece) || amount->quantity.piece == "spoonful";
  }

  // "Cinnamon half a tea spoon", "raisins a handful"
  bool spoon_behind(std::size_t k) const {
    const auto amount = amount_at(t_, k, measures_);
    if (!amount || !amount->quantity.stated() || !before_is_food(k)) return false;
    return dimension(amount->quantity.unit) == Dimension::kVolume ||
           amount->quantity.piece == "handful" || amount->quantity.piece == "pinch" ||
           amount->quantity.piece == "knob";
  }

  // "Oats 250g not the big ones": what is weighed stands before it, and nothing says that the
  // amount is of something else ("in 200 ml water").
  bool measured_behind(std::size_t k, const Amount& amount) const {
    if (dimension(amount.quantity.unit) == Dimension::kCount)
      return k > 0 && t_[k - 1].is(",") && t_[k].number() && amount.quantity.piece.empty() &&
             before_is_food(k - 1);
    return before_is_food(k);
  }

  bool before_is_food(std::size_t k) const {
    for (std::size_t i = 0; i < k; ++i) {
      if (t_[i].is("(") || base::one_of(t_[i].word, {"in", "with", "into", "of", "per", "from",
                                                     "weighing", "each", "to", "for"}))
        return false;
    }
    const FoodGuess guess = foods_.match(as_written(t_, 0, k), {});
    return guess.food != nullptr && guess.confidence >= 0.6;
  }

  // "Lemon, juice of half" is "juice of half lemon".
  void part_first() {
    static constexpr std::array<std::string_view, 3> kParts = {"juice", "zest", "rind"};
    if (t_.size() < 5 || !t_[1].is(",") || t_[0].kind != LineToken::Kind::kWord) return;
    const bool of = std::find(kParts.begin(), kParts.end(), t_[2].word) != kParts.end() &&
                    t_[3].is("of");
    std::size_t next = 0;
    if (!of || !number_at(t_, 4, next) || next < t_.size()) return;
    std::rotate(t_.begin(), t_.begin() + 2, t_.end());
    t_.pop_back();  // the comma
  }

  // "Chilli flakes pinch", "Salt - pinch"
  Tokens pinch_behind() {
    std::size_t end = t_.size();
    for (std::size_t i = 1; i < t_.size(); ++i) {
      if (t_[i].is(",") || t_[i].is("(")) {
        end = i;
        break;
      }
    }
    if (end < 2 || t_[end - 1].kind != LineToken::Kind::kWord) return t_;
    const auto piece = piece_word(t_[end - 1].word);
    static constexpr std::array<std::string_view, 8> kSmall = {
        "pinch", "handful", "knob", "dash", "splash", "drizzle", "glug", "squeeze"};
    if (!piece || std::find(kSmall.begin(), kSmall.end(), *piece) == kSmall.end()) return t_;
    Amount amount;
    amount.quantity = Quantity::pieces(Ratio(1), *piece);
    amount.about = true;
    amount_ = amount;
    from_ = t_[end - 1].text;
    return joined(part(t_, 0, end - 1), part(t_, end, t_.size()));
  }

  bool said_behind(std::size_t k) const {
    return k > 0 && (t_[k - 1].is(":") || t_[k - 1].is("=") || t_[k - 1].is("x") ||
                     (t_[k - 1].is("-") && t_[k - 1].spaced));
  }
  bool ends_well(std::size_t k) const {
    if (k >= t_.size() || t_[k].is(",") || t_[k].is("(") || t_[k].is(".") || t_[k].is(";") ||
        (t_[k].is("-") && t_[k].spaced))
      return true;
    if (base::one_of(t_[k].word,
                     {"plus", "+", "to", "for", "on", "or", "and", "extra", "at", "from"}))
      return true;
    return quality_word(t_[k].word) && (k + 1 >= t_.size() || t_[k + 1].is(","));
  }

  // "juice of half a lemon", "finely grated zest of 1 lime", "zest and juice of 2 lemons".
  std::vector<IngredientDraft> juice_of(const Tokens& rest) {
    static constexpr std::array<std::string_view, 5> kOf = {"juice", "zest", "rind", "peel",
                                                            "leaves"};
    const auto is_part = [&](std::size_t i) {
      return i < rest.size() && std::find(kOf.begin(), kOf.end(), rest[i].word) != kOf.end();
    };
    std::size_t i = 0;
    while (i < rest.size() && (preparation_word(rest[i].word) || manner_word(rest[i].word) ||
                               rest[i].is("the") || rest[i].is("fresh")))
      ++i;
    if (!is_part(i)) return {};
    std::size_t end = i + 1;
    const bool both = (at(rest, end, "and") || at(rest, end, "&") || at(rest, end, "+")) &&
                      (is_part(end + 1) ||
                       (preparation_word(rest[std::min(end + 1, rest.size() - 1)].word) &&
                        is_part(end + 2)));
    if (both) end += is_part(end + 1) ? 2 : 3;
    const bool of = at(rest, end, "of") || at(rest, end, "from");
    std::size_t k = of ? end + 1 : end;
    auto amount = amount_at(rest, k, measures_);
    if (!of && !(amount && rest[k].number())) return {};
    if (!amount && !(of && amount_ && amount_->quantity.piece.empty())) return {};
    if (amount && amount_ && amount_->quantity.stated() &&
        dimension(amount_->quantity.unit) != Dimension::kCount)
      return {};
    if (amount) {
      k = amount->next;
      from_ = as_written(rest, of ? end + 1 : end, k);
      amount_ = std::move(amount);
    }
    const std::string said = as_written(rest, 0, end);
    Tokens tail = part(rest, k, rest.size());
    IngredientDraft draft = draft_of(tail);
    if (both || rest[i].is("leaves")) {
      put_first(draft.preparation, said);
      finish(draft);
      return {draft};
    }
    const std::string fruit = singular(base::folded(draft.name));
    const std::string thing = rest[i].is("juice") ? "juice" : "zest";
    // What is squeezed from the fruit is not what stands in a carton.
    const Food* squeezed = foods_.named(base::say(thing, " of ", fruit));
    const FoodGuess guess = squeezed != nullptr
                                ? FoodGuess{squeezed, 0.95, {}}
                                : foods_.match(base::say(fruit, " ", thing), hints({}));
    // The table has no zest of that fruit: then it is the fruit, and what is taken of it.
    if (guess.food == nullptr || guess.confidence < 0.85 || guess.food->key == draft.food.value) {
      put_first(draft.preparation, said);
      return {draft};
    }
    {
      draft.name = base::say(fruit, " ", thing);
      if (!draft.food.value.empty())
        draft.other_foods.insert(draft.other_foods.begin(), draft.food.value);
      set_food(draft, guess, draft.name);
      std::erase(draft.other_foods, draft.food.value);
    }
    const std::string how = as_written(rest, 0, i);
    if (how != "the") put_first(draft.preparation, how);
    finish(draft);
    return {draft};
  }

  // "Salt and pepper", "1 tsp each cumin and coriander", "salt, pepper".
  std::vector<IngredientDraft> several(const Tokens& rest) {
    const bool stated = amount_ && amount_->quantity.stated();
    const bool vague = stated && vague_piece(amount_->quantity.piece) &&
                       amount_->quantity.piece != "clove" && !amount_->container;
    const bool each = amount_ && amount_->each;
    if (stated && !vague && !each) return {};
    std::vector<Tokens> names(1);
    bool commas = false;  // of what stands between commas more must be known
    std::size_t i = 0;
    for (; i < rest.size(); ++i) {
      const LineToken& t = rest[i];
      if (t.is("(")) break;
      commas = commas || t.is(",");
      const bool divides = t.is("and") || t.is("&") || t.is(",") || t.is("+");
      if (!divides) {
        names.back().push_back(t);
      } else if (!names.back().empty()) {
        const Tokens whole = joined(names.back(), part(rest, i, std::min(i + 2, rest.size())));
        if (!t.is(",") && foods_.named(as_written(whole, 0, whole.size())) != nullptr) {
          names.back().push_back(t);
        } else {
          names.emplace_back();
        }
      }
    }
    if (names.back().empty()) names.pop_back();
    if (names.size() < 2) return {};
    std::string first_word;
    std::vector<IngredientDraft> out;
    std::string remarks;
    for (const Tokens& name : names) {
      IngredientDraft draft = draft_of(name);
      if (draft.food.value.empty() || draft.food.confidence < (commas ? 0.85 : 0.65)) {
        // What is behind the last food is a remark on all of them: "salt and pepper, to taste".
        if (out.size() < 2) return {};
        append(remarks, as_written(name, 0, name.size()));
        continue;
      }
      if (!remarks.empty()) return {};
      out.push_back(std::move(draft));
    }
    if (remarks == "to taste") remarks.clear();
    for (IngredientDraft& draft : out) {
      append(draft.preparation, remarks);
      draft.garnish = draft.garnish || remarks == "to serve" || remarks == "to garnish";
    }
    return out;
  }

  FoodHints hints(const LineParts& parts) const {
    FoodHints h;
    if (amount_) {
      h.quantity = amount_->quantity;
      h.container = amount_->container &&
                    (amount_->quantity.piece == "tin" || amount_->quantity.piece == "can");
    }
    h.drained = parts.drained;
    h.cut = parts.cut;
    return h;
  }

  static void set_food(IngredientDraft& draft, const FoodGuess& guess, const std::string& from) {
    draft.food = {guess.food != nullptr ? guess.food->key : "",
                  guess.food != nullptr ? guess.confidence : 0, from};
    for (const std::string& other : guess.others) {
      if (std::find(draft.other_foods.begin(), draft.other_foods.end(), other) ==
          draft.other_foods.end())
        draft.other_foods.push_back(other);
    }
  }

  IngredientDraft draft_of(const Tokens& rest) {
    IngredientDraft draft;
    draft.line = line_;
    const bool stated = amount_ && amount_->quantity.stated();
    const bool counted = stated && amount_->quantity.unit == Unit::kPiece;
    LineParts parts = line_parts(rest, foods_, amount_ && amount_->container, counted);
    draft.quality = amount_ ? amount_->qualities : "";
    append(draft.quality, parts.quality, " ");
    draft.name = parts.name;
    draft.preparation = parts.preparation;
    draft.or_instead = std::move(parts.or_instead);
    draft.optional = parts.optional;
    draft.garnish = parts.garnish;
    if (amount_) {
      draft.quantity = {amount_->quantity,
                        amount_->contradicts ? 0.4
                        : amount_->about     ? 0.8
                                             : 1,
                        from_};
      draft.also = amount_->also;
    } else {
      draft.quantity = {Quantity{}, parts.to_taste || parts.garnish ? 1 : 0.8,
                        parts.to_taste ? "to taste" : ""};
    }
    read_notes(draft, parts.notes);
    FoodHints h = hints(parts);
    h.quantity = draft.quantity.value;
    std::string asked = parts.match_name;
    for (const std::string& note : parts.notes) {
      if (note.find('%') != std::string::npos) append(asked, note, " ");
    }
    FoodGuess guess = foods_.match(asked, h);
    if (guess.food == nullptr && asked != parts.match_name)
      guess = foods_.match(parts.match_name, h);
    // "sugar (caster)", "apples, cooking", "chicken thighs, skin on"
    std::vector<std::string> told_behind = parts.notes;
    for (const std::string& remark : base::parts(parts.preparation, ','))
      told_behind.push_back(base::trimmed(remark));
    for (const std::string& note : told_behind) {
      if (note.empty() || preparation_word(base::folded(note))) continue;
      const Food* told = foods_.named(base::say(note, " ", draft.name));
      if (told == nullptr) told = foods_.named(base::say(draft.name, " ", note));
      if (told != nullptr) guess = {told, 0.9, guess.others};
    }
    // "2 tatashe (red bell peppers)": the other name in brackets.
    for (const std::string& note : parts.notes) {
      if (guess.food != nullptr || FoodMatcher::shuns(parts.match_name)) break;
      const FoodGuess other = foods_.match(note, h);
      if (other.confidence >= 0.85) guess = other;
    }
    if (counted && amount_->quantity.piece.empty()) {
      peel_piece(draft, parts, guess);
      if (guess.food != nullptr) grams_unsaid(draft, *guess.food);
    }
    if (guess.food != nullptr && counted) sized_piece(draft, *guess.food);
    set_food(draft, guess, parts.match_name);
    finish(draft);
    return draft;
  }

  // Brackets hold a second amount, another name, or a remark.
  void read_notes(IngredientDraft& draft, const std::vector<std::string>& notes) {
    for (const std::string& note : notes) {
      const std::string folded = base::folded(note);
      if (folded == "optional") continue;
      if (note.find('%') != std::string::npos) {
        append(draft.quality, note);
        continue;
      }
      const Tokens t = line_tokens(note);
      const auto second = amount_at(t, 0, measures_);
      if (second && second->next >= t.size() && second->quantity.unit != Unit::kPiece) {
        if (!draft.quantity.value.stated()) {
          draft.quantity = {second->quantity, 1, note};
          draft.also = second->also;
        } else {
          append(draft.also, base::say("(", note, ")"), " ");
        }
        continue;
      }
      const Food* other = foods_.named(note);
      if (other != nullptr && other == foods_.match(draft.name, {}).food) continue;
      // "Lemon juice (half a lemon)"
      if (second && !draft.quantity.value.stated() && second->quantity.stated() &&
          second->next < t.size()) {
        const std::string of = base::folded(as_written(t, second->next, t.size()));
        if (base::folded(draft.name).starts_with(singular(of))) {
          draft.quantity = {second->quantity, 0.9, note};
          continue;
        }
      }
      if (second && !t.empty() && t[0].number()) {
        append(draft.also, base::say("(", note, ")"), " ");
        continue;
      }
      if (folded.starts_with("or ")) {
        draft.or_instead.push_back(note.substr(3));
        continue;
      }
      append(draft.preparation, note);
    }
  }

  // "2 garlic cloves", "3 celery sticks": the last word counts.
  void peel_piece(IngredientDraft& draft, const LineParts& parts, FoodGuess& guess) {
    static constexpr std::array<std::string_view, 11> kPeeled = {
        "clove", "stick", "stalk",  "sprig", "slice", "rasher",
        "leaf",  "bulb",  "floret", "sheet", "rib"};
    const auto space = draft.name.rfind(' ');
    if (space == std::string::npos) return;
    const auto piece = piece_word(base::folded(draft.name.substr(space + 1)));
    if (!piece || std::find(kPeeled.begin(), kPeeled.end(), *piece) == kPeeled.end()) return;
    const std::string rest = trimmed_marks(draft.name.substr(0, space));
    FoodHints h = hints(parts);
    h.quantity.piece = *piece;
    const FoodGuess without = foods_.match(rest, h);
    if (without.food == nullptr || (guess.food != nullptr && without.food != guess.food &&
                                    guess.confidence > without.confidence))
      return;
    // "bay leaves", "lasagne sheets", "cinnamon sticks" are names of the food itself.
    for (const std::string& word : base::words_of(base::folded(without.food->name))) {
      if (singular(word) == *piece && *piece != "rasher") return;
    }
    draft.name = rest;
    draft.quantity.value.piece = *piece;
    guess = without;
  }

  // "225 plain flour", "75 cheddar": who writes no unit on a card means grams. Twenty eggs are
  // eggs.
  static void grams_unsaid(IngredientDraft& draft, const Food& food) {
    constexpr int kFewestGrams = 15;
    Quantity& q = draft.quantity.value;
    const bool one_by_one = std::any_of(food.pieces.begin(), food.pieces.end(),
                                        [](const PieceWeight& p) { return p.piece == "each"; });
    if (!q.piece.empty() || q.least < Ratio(kFewestGrams) || one_by_one) return;
    q.unit = Unit::kGram;
    draft.quantity.confidence = 0.65;
  }

  // "1 small tin": the table may know what a small one weighs.
  void sized_piece(IngredientDraft& draft, const Food& food) const {
    Quantity& q = draft.quantity.value;
    if (!container_word(q.piece) || draft.quality.empty()) return;
    const std::string sized = base::say(base::folded(draft.quality), " ", q.piece);
    for (const PieceWeight& each : food.pieces) {
      if (each.piece != sized) continue;
      q.piece = sized;
      return;
    }
  }

  static void finish(IngredientDraft& draft) {
    // A preparation that began the line: "Zest and juice of 1 lime".
    std::string& p = draft.preparation;
    if (p.size() > 1 && p[0] >= 'A' && p[0] <= 'Z' && ((p[1] >= 'a' && p[1] <= 'z') || p[1] == ' '))
      p[0] = static_cast<char>(p[0] - 'A' + 'a');
    const double food = draft.food.value.empty() ? 0.4 : draft.food.confidence;
    draft.confidence = std::min(food, draft.quantity.confidence);
  }
};

}  // namespace

std::string_view without_bullet(std::string_view line) {
  for (;;) {
    const std::string_view before = line;
    for (const std::string_view mark :
         {"[ ]", "[x]", "[X]", "[]", "- ", "* ", "+ ", "o ", "> ", "~ ", "**", "| ", ". "}) {
      if (line.starts_with(mark)) line.remove_prefix(mark.size());
    }
    if (line.size() > 1 && (line[0] == '-' || line[0] == '*') && line[1] != '-')
      line.remove_prefix(1);
    while (!line.empty() && line[0] == ' ') line.remove_prefix(1);
    while (line.ends_with("**") || line.ends_with(" |")) line.remove_suffix(2);
    if (line == before) return line;
  }
}

std::vector<IngredientDraft> read_ingredient_line(std::string_view line, const FoodMatcher& foods,
                                                  const Measures& measures) {
  const std::string tidy = hyphens_closed(tidied_line(in_reading_order(line)));
  auto drafts = LineReader(tidy, foods, measures).read();
  if (drafts.size() == 1 && !drafts.front().food.value.empty()) {
    if (const auto cut = weighed_second(tidy, foods, measures)) {
      std::string behind = tidy.substr(*cut);
      while (!behind.empty() && (behind.back() == ')' || behind.back() == '.')) behind.pop_back();
      for (IngredientDraft& draft : LineReader(behind, foods, measures).read())
        drafts.push_back(std::move(draft));
    }
  }
  if (drafts.size() == 1) {
    if (const auto cut = second_food(tidy, foods, measures)) {
      auto second = LineReader(tidy.substr(*cut + 5), foods, measures).read();
      drafts = LineReader(tidy.substr(0, *cut), foods, measures).read();
      // "to serve" at the end is said of both.
      const bool garnish = std::any_of(second.begin(), second.end(),
                                       [](const IngredientDraft& d) { return d.garnish; });
      for (IngredientDraft& draft : drafts) draft.garnish = draft.garnish || garnish;
      drafts.insert(drafts.end(), second.begin(), second.end());
    }
  }
  for (IngredientDraft& draft : drafts) draft.line = std::string(line);
  return drafts;
}

}  // namespace kitchen
