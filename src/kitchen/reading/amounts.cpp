#include "kitchen/reading/amounts.h"

#include <algorithm>
#include <array>
#include <string_view>

#include "base/text.h"
#include "kitchen/foods.h"
#include "kitchen/reading/line_words.h"

namespace kitchen {
namespace {

using Tokens = std::vector<LineToken>;

bool number(const Tokens& t, std::size_t i) { return i < t.size() && t[i].number(); }
bool word(const Tokens& t, std::size_t i) {
  return i < t.size() && t[i].kind == LineToken::Kind::kWord;
}

void append_word(std::string& to, const std::string& word) {
  if (word.empty()) return;
  if (!to.empty()) to += ' ';
  to += word;
}

bool same_measure(const Quantity& a, const Quantity& b) {
  if (dimension(a.unit) != dimension(b.unit) || dimension(a.unit) == Dimension::kCount) return true;
  const double one = (a.middle() * in_base_units(a.unit)).value();
  const double two = (b.middle() * in_base_units(b.unit)).value();
  return one <= 1.25 * two && two <= 1.25 * one;
}

std::optional<Unit> larger_part_unit(Unit of, Unit next) {
  const auto pair = [&](Unit a, Unit b) { return of == a && next == b; };
  if (pair(Unit::kPound, Unit::kOunce) || pair(Unit::kKilogram, Unit::kGram) ||
      pair(Unit::kPint, Unit::kFluidOunce) || pair(Unit::kLitre, Unit::kMillilitre))
    return next;
  return std::nullopt;
}

class AmountReader {
 public:
  AmountReader(const Tokens& t, const Measures& measures) : t_(t), measures_(measures) {}

  std::optional<Amount> read(std::size_t i) {
    i_ = start_ = i;
    about();
    if (!range()) return few_or_none(i);
    times_or_size();
    qualities();
    if (!unit_or_piece()) amount_.quantity.unit = Unit::kPiece;
    added();
    second();
    if (at(t_, i_, "of")) ++i_;
    if (at(t_, i_, "each")) {
      amount_.each = true;
      ++i_;
    }
    if (at(t_, i_, "of")) ++i_;
    amount_.next = i_;
    return amount_;
  }

 private:
  const Tokens& t_;
  const Measures& measures_;
  std::size_t i_ = 0, start_ = 0;
  Amount amount_;
  bool spooned_ = false;  // the unit is known already

  void say_quality(const std::string& text) { append_word(amount_.qualities, text); }

  void about() {
    static constexpr std::array<std::string_view, 9> kAbout = {
        "about", "approx", "approximately", "around", "roughly", "circa", "ca", "c", "~"};
    while (i_ < t_.size() && !t_[i_].number() &&
           std::find(kAbout.begin(), kAbout.end(), t_[i_].word) != kAbout.end()) {
      amount_.about = true;
      ++i_;
      if (at(t_, i_, ".")) ++i_;
    }
    while (at(t_, i_, "scant") || at(t_, i_, "generous") || at(t_, i_, "heaped") ||
           at(t_, i_, "level") || at(t_, i_, "just")) {
      say_quality(t_[i_].text);
      ++i_;
      if (at(t_, i_, "under") || at(t_, i_, "over")) ++i_;
    }
    if (at(t_, i_, "the")) {
      std::size_t next = 0;
      if (number_at(t_, i_ + 1, next)) ++i_;
    }
  }

  // "a few sprigs", "a little oil", "pinch of salt", "few".
  std::optional<Amount> few_or_none(std::size_t from) {
    std::size_t k = at(t_, i_, "a") || at(t_, i_, "an") ? i_ + 1 : i_;
    if (at(t_, k, "few") || at(t_, k, "several")) {
      amount_.quantity = {Ratio(2), Ratio(4), Unit::kPiece, ""};
      amount_.about = true;
      i_ = k + 1;
      if (at(t_, i_, "good")) ++i_;
      qualities();
      unit_or_piece();
      if (at(t_, i_, "of")) ++i_;
      amount_.next = i_;
      return amount_;
    }
    if (at(t_, k, "little") || at(t_, k, "bit") || at(t_, k, "touch") || at(t_, k, "some")) {
      amount_.quantity = Quantity{};
      i_ = k + 1;
      if (at(t_, i_, "bit")) ++i_;
      if (at(t_, i_, "of")) ++i_;
      amount_.about = true;
      amount_.next = i_;
      return amount_;
    }
    // A measure without a number: "pinch of salt", "small handful of basil", "juice" is not one.
    std::size_t q = i_;
    std::string said;
    while (word(t_, q) && measure_quality(t_[q].word)) append_word(said, t_[q++].text);
    if (!word(t_, q)) return std::nullopt;
    const auto piece = piece_word(t_[q].word);
    const bool of = at(t_, q + 1, "of");
    const bool sized = said.starts_with("thumb") && q + 1 < t_.size();
    if (!piece || !(of || sized || (vague_piece(*piece) && q + 1 < t_.size()))) return std::nullopt;
    static_cast<void>(from);
    // "Pack of 2 naan breads": two of them.
    std::size_t behind = 0;
    if (of && container_word(*piece)) {
      if (const auto inside = number_at(t_, q + 2, behind);
          inside && number(t_, q + 2) && inside->whole()) {
        std::size_t unit_end = 0;
        if (!unit_at(t_, behind, measures_, unit_end)) {
          amount_.quantity = {*inside, *inside, Unit::kPiece, ""};
          amount_.next = behind;
          return amount_;
        }
      }
    }
    const bool many = t_[q].word != *piece;
    amount_.quantity = {Ratio(many ? 2 : 1), Ratio(many ? 3 : 1), Unit::kPiece, *piece};
    amount_.container = container_word(*piece);
    amount_.about = true;
    say_quality(said);
    amount_.qualities = trimmed_marks(amount_.qualities);
    amount_.next = of ? q + 2 : q + 1;
    return amount_;
  }

  bool range() {
    std::size_t next = i_;
    auto first = number_at(t_, i_, next);
    // "l tsp.": a typewriter's one is a small L.
    std::size_t unit_end = 0;
    if (!first && (at(t_, i_, "l") || at(t_, i_, "i")) &&
        unit_at(t_, i_ + 1, measures_, unit_end)) {
      first = Ratio(1);
      next = i_ + 1;
    }
    if (!first) return false;
    amount_.quantity = {*first, *first, Unit::kPiece, ""};
    i_ = next;
    std::size_t k = i_;
    if (!at(t_, k, "-") && !at(t_, k, "to") && !at(t_, k, "or")) return true;
    std::size_t after = 0;
    const auto second = number_at(t_, k + 1, after);
    if (!second || at(t_, k + 1, "a") || at(t_, k + 1, "an")) return true;
    // "8 - 200 g" is no range, nor is "2-1".
    if (*second <= *first || *second > *first * Ratio(20)) return true;
    amount_.quantity.most = *second;
    i_ = after;
    return true;
  }

  // "2 x 400g tins", "2 400g tins", "1 (14 oz) can", "2 x eggs".
  void times_or_size() {
    std::size_t k = i_;
    bool open = false;
    if (at(t_, k, "x") || at(t_, k, "*")) ++k;
    if (at(t_, k, "(")) {
      open = true;
      ++k;
    }
    const std::size_t size_from = k;
    if (number(t_, k)) {
      std::size_t after = k, unit_after = 0;
      const auto size = number_at(t_, k, after);
      std::size_t most_after = after;
      if (at(t_, after, "-") && number(t_, after + 1)) most_after = after + 2;
      std::size_t u = at(t_, most_after, "-") ? most_after + 1 : most_after;
      if (size && unit_at(t_, u, measures_, unit_after)) {
        std::size_t end = second_size(unit_after);
        if (open) {
          if (!at(t_, end, ")")) return;
          ++end;
        }
        while (word(t_, end) && measure_quality(t_[end].word)) ++end;
        if (at(t_, end, "-")) ++end;
        if (word(t_, end) && piece_word(t_[end].word)) {
          if (spoons(*size, t_[unit_after - 1].word, *piece_word(t_[end].word))) {
            i_ = end + 1;
            return;
          }
          set_piece(*piece_word(t_[end].word));
          amount_.also = as_written(open ? size_from - 1 : size_from,
                                    open ? closing(size_from) + 1 : end);
          i_ = end + 1;
          return;
        }
      }
    }
    if ((at(t_, i_, "x") || at(t_, i_, "*")) && i_ + 1 < t_.size()) {
      ++i_;
      size_of_each();
    }
  }

  // "4 x 150g salmon fillets", "1 x 2cm piece ginger": what each of them is like.
  void size_of_each() {
    std::size_t after = 0, next = 0;
    if (!number(t_, i_) || !number_at(t_, i_, after)) return;
    if (length_at(after, next)) {
      say_quality(as_written(i_, next));
      i_ = at(t_, next, "-") ? next + 1 : next;
    } else if (unit_at(t_, after, measures_, next) && next < t_.size()) {
      amount_.also = as_written(i_, next);
      i_ = next;
      spooned_ = true;
    }
  }

  // "2 x 15ml spoons": the measuring spoons of British food rooms.
  bool spoons(const Ratio& size, const std::string& unit, const std::string& piece) {
    if (piece != "spoon" || unit != "ml") return false;
    if (size == Ratio(5)) amount_.quantity.unit = Unit::kTeaspoon;
    if (size == Ratio(10)) amount_.quantity.unit = Unit::kDessertspoon;
    if (size == Ratio(15)) amount_.quantity.unit = Unit::kTablespoon;
    spooned_ = amount_.quantity.unit != Unit::kPiece;
    return spooned_;
  }

  std::size_t closing(std::size_t k) const {
    while (k < t_.size() && !t_[k].is(")")) ++k;
    return k;
  }

  // "/14 oz" after "400 g" inside a size.
  std::size_t second_size(std::size_t k) const {
    std::size_t after = 0, next = 0;
    if (at(t_, k, "/") && number_at(t_, k + 1, after) && unit_at(t_, after, measures_, next))
      return next;
    return k;
  }

  std::string as_written(std::size_t from, std::size_t to) const {
    std::string out;
    for (std::size_t i = from; i < to && i < t_.size(); ++i) {
      if (t_[i].spaced && !out.empty()) out += ' ';
      out += t_[i].text;
    }
    while (!out.empty() && (out.back() == '-' || out.back() == ' ')) out.pop_back();
    return out;
  }

  void set_piece(const std::string& piece) {
    amount_.quantity.unit = Unit::kPiece;
    amount_.quantity.piece = piece;
    amount_.container = container_word(piece);
  }

  void qualities() {
    // "1 heaped tbsp", "a large handful", "1 (heaped) teaspoon", but not "2 large eggs".
    std::size_t k = i_;
    std::string said;
    while (word(t_, k) && measure_quality(t_[k].word)) append_word(said, t_[k++].text);
    if (k == i_) return;
    std::size_t next = 0;
    const bool measured = unit_at(t_, k, measures_, next) || counts(k);
    if (!measured) return;
    say_quality(said);
    i_ = k;
  }

  // Whether the word at `k` counts something named after it.
  bool counts(std::size_t k) const {
    if (!word(t_, k)) return false;
    const auto piece = piece_word(t_[k].word);
    if (!piece) return false;
    if (at(t_, k + 1, "of") || at(t_, k + 1, "(")) return true;
    // "Garlic - 2 cloves": the food stands before the amount.
    if (start_ > 0 && (k + 1 >= t_.size() || at(t_, k + 1, ",") || at(t_, k + 1, ")"))) return true;
    if (!word(t_, k + 1) || preparation_word(t_[k + 1].word)) return false;
    // "2 bay leaves", "1 stock cube" never come here; "1 ball mozzarella" does, "1 half fat" not.
    return !(names_food_itself(*piece) || t_[k + 1].word == "and" || t_[k + 1].word == "or");
  }

  bool unit_or_piece() {
    if (spooned_ || !amount_.quantity.piece.empty()) return true;
    std::size_t next = 0;
    std::size_t k = i_;
    if (at(t_, k, "-") && word(t_, k + 1)) ++k;
    if (const auto length = length_at(k, next)) {
      static_cast<void>(length);
      return length_of_piece(next);
    }
    if (of_another_unit(k)) return true;
    if (const auto unit = unit_at(t_, k, measures_, next)) {
      amount_.quantity.unit = *unit;
      i_ = next;
      range_with_units();
      mass_of_container();
      return true;
    }
    if (!counts(k)) return false;
    set_piece(*piece_word(t_[k].word));
    i_ = k + 1;
    // "4 spoons of honey": who says no more takes the spoon from the table.
    if (amount_.quantity.piece == "spoon" || amount_.quantity.piece == "spoonful") {
      amount_.quantity.piece.clear();
      amount_.quantity.unit = Unit::kTablespoon;
      amount_.about = spooned_ = true;
    }
    return true;
  }

  // A quart is two pints, American or imperial; a gill five fluid ounces; "dag" ten grams, on cards
  // from the continent.
  bool of_another_unit(std::size_t k) {
    const auto so_many = [&](int many, Unit unit) {
      amount_.quantity = times(amount_.quantity, Ratio(many));
      amount_.quantity.unit = unit;
      i_ = at(t_, k + 1, ".") ? k + 2 : k + 1;
      return true;
    };
    if (k >= t_.size()) return false;
    const std::string& word = t_[k].word;
    if (base::one_of(word, {"quart", "quarts", "qt"}))
      return so_many(2, measures_.american ? Unit::kAmericanPint : Unit::kPint);
    if (base::one_of(word, {"gill", "gills"})) return so_many(5, Unit::kFluidOunce);
    return base::one_of(word, {"dag", "dkg"}) && so_many(10, Unit::kGram);
  }

  std::optional<Ratio> length_at(std::size_t k, std::size_t& next) const {
    static constexpr std::array<std::string_view, 7> kLengths = {"cm", "mm",  "inch", "inches",
                                                                 "in", "cms", "\""};
    if (k >= t_.size() || t_[k].number() ||
        std::find(kLengths.begin(), kLengths.end(), t_[k].word) == kLengths.end())
      return std::nullopt;
    next = k + 1;
    return Ratio(1);
  }

  // "a 5cm piece of ginger", "1 inch ginger": one piece, and how long it is.
  bool length_of_piece(std::size_t k) {
    say_quality(as_written(length_start(), k));
    amount_.quantity = {Ratio(1), Ratio(1), Unit::kPiece, "piece"};
    if (at(t_, k, "-")) ++k;
    if (at(t_, k, "/") && number(t_, k + 1)) {  // "5cm/2in piece"
      std::size_t next = 0;
      if (length_at(k + 2, next)) k = next;
    }
    if (word(t_, k) && measure_quality(t_[k].word)) ++k;
    if (word(t_, k) && piece_word(t_[k].word)) {
      amount_.quantity.piece = *piece_word(t_[k].word);
      ++k;
    }
    i_ = k;
    return true;
  }
  std::size_t length_start() const {
    std::size_t k = i_;
    while (k > 0 && (t_[k - 1].number() || t_[k - 1].is("-"))) --k;
    return k;
  }

  // "200g-250g", "200 g to 250 g".
  void range_with_units() {
    if (amount_.quantity.least != amount_.quantity.most) return;
    if (!at(t_, i_, "-") && !at(t_, i_, "to") && !at(t_, i_, "or")) return;
    std::size_t after = 0, next = 0;
    const auto most = number_at(t_, i_ + 1, after);
    if (!most || *most <= amount_.quantity.most) return;
    const auto unit = unit_at(t_, after, measures_, next);
    if (!unit || *unit != amount_.quantity.unit) return;
    amount_.quantity.most = *most;
    i_ = next;
  }

  // "400g tin", "400 g/14 oz can", "14-ounce can".
  void mass_of_container() {
    const std::size_t end = second_size(i_);
    std::size_t k = at(t_, end, "-") && !t_[end].spaced ? end + 1 : end;
    if (!word(t_, k)) return;
    const auto piece = piece_word(t_[k].word);
    if (piece && amount_.quantity.unit == Unit::kMillilitre) {
      const Ratio size = amount_.quantity.most;
      amount_.quantity = Quantity::pieces(Ratio(1), "");
      if (spoons(size, "ml", *piece)) {
        i_ = k + 1;
        return;
      }
      amount_.quantity = Quantity::of(size, Unit::kMillilitre);
    }
    if (!piece ||
        !(container_word(*piece) || *piece == "block" || *piece == "ball" || *piece == "bar"))
      return;
    if (t_[k].word != *piece && amount_.quantity.least != Ratio(1)) {
      // "400g tins" in the plural without how many: one cannot know.
      amount_.about = true;
    }
    // "100 g block margarine" is the hard kind, not a block.
    static constexpr std::array<std::string_view, 6> kHardFats = {
        "margarine", "margerine", "butter", "fat", "baking", "lard"};
    if (*piece == "block" && word(t_, k + 1) &&
        std::find(kHardFats.begin(), kHardFats.end(), t_[k + 1].word) != kHardFats.end())
      return;
    // "100 g block cheddar": the weight is what counts, nobody knows what a block of it weighs.
    if (*piece == "block") {
      i_ = k + 1;
      return;
    }
    std::size_t from = i_;
    while (from > 0 && (t_[from - 1].number() || t_[from - 1].kind == LineToken::Kind::kWord ||
                        t_[from - 1].is("-") || t_[from - 1].is("/")))
      --from;
    while (from < i_ && !t_[from].number()) ++from;
    amount_.also = as_written(from, k);
    amount_.quantity = Quantity::pieces(Ratio(1), *piece);
    amount_.container = container_word(*piece);
    i_ = k + 1;
  }

  // "1 lb 4 oz", "2 tbsp + 1 tsp", "1 cup plus 2 tbsp".
  void added() {
    const Unit unit = amount_.quantity.unit;
    if (dimension(unit) != Dimension::kMass && dimension(unit) != Dimension::kVolume) return;
    std::size_t k = i_;
    const bool joined = at(t_, k, "+") || at(t_, k, "plus") || at(t_, k, "and") || at(t_, k, "&");
    if (joined) ++k;
    std::size_t after = 0, next = 0;
    const auto more = number_at(t_, k, after);
    if (!more || at(t_, k, "a")) return;
    const auto small = unit_at(t_, after, measures_, next);
    if (!small || dimension(*small) != dimension(unit) ||
        in_base_units(*small) >= in_base_units(unit))
      return;
    if (!joined && !larger_part_unit(unit, *small)) return;
    add(*more, *small);
    i_ = next;
  }

  void add(const Ratio& more, Unit small) {
    Quantity& q = amount_.quantity;
    // By the US definition a cup is sixteen tablespoons of three teaspoons; with 15 ml spoons the
    // sum would be no fraction a cook can measure.
    if (q.unit == Unit::kAmericanCup && (small == Unit::kTablespoon || small == Unit::kTeaspoon)) {
      const Ratio part = more / Ratio(small == Unit::kTablespoon ? 16 : 48);
      q.least += part;
      q.most += part;
      return;
    }
    q = *converted(q, small);
    q.least += more;
    q.most += more;
  }

  // "225g/8oz", "8 oz (225 g)", "2 tins (400g each)", "225g or 8oz".
  void second() {
    std::size_t k = i_;
    const bool open = at(t_, k, "(") || at(t_, k, "[");
    const bool slash = at(t_, k, "/") || at(t_, k, "|") || at(t_, k, "or");
    if (!open && !slash) return;
    const std::size_t from = open ? k : k + 1;
    ++k;
    while (at(t_, k, "about") || at(t_, k, "approx") || at(t_, k, "roughly") || at(t_, k, ".") ||
           at(t_, k, "or"))
      ++k;
    std::size_t after = 0, next = 0;
    const auto least = number_at(t_, k, after);
    if (!least) return;
    std::optional<Ratio> most;
    if (at(t_, after, "-") || at(t_, after, "to")) {
      std::size_t range_end = 0;
      most = number_at(t_, after + 1, range_end);
      if (most) after = range_end;
    }
    const auto unit = unit_at(t_, at(t_, after, "-") ? after + 1 : after, measures_, next);
    if (!unit) return;
    Quantity other{*least, most.value_or(*least), *unit, ""};
    next = rest_of_second(other, next);
    if (open) {
      while (next < t_.size() && !t_[next].is(")") && !t_[next].is("]")) {
        if (!word(t_, next) && !at(t_, next, "/") && !number(t_, next) && !at(t_, next, "."))
          return;
        ++next;
      }
      if (next >= t_.size()) return;
      ++next;
    }
    if (slash && next < t_.size() && at(t_, next, "-")) return;
    amount_.also = as_written(from, next);
    metric_cup(other);
    amount_.contradicts = !same_measure(amount_.quantity, other);
    i_ = next;
  }

  // "1 cup (250 ml)": a metric cup, whatever else the text measures by.
  void metric_cup(const Quantity& other) {
    Quantity& q = amount_.quantity;
    if (q.unit != Unit::kAmericanCup || dimension(other.unit) != Dimension::kVolume) return;
    Quantity metric = q;
    metric.unit = Unit::kCup;
    const double cups = (metric.middle() * in_base_units(Unit::kCup)).value();
    const double told = (other.middle() * in_base_units(other.unit)).value();
    if (told > 0.98 * cups && told < 1.02 * cups) q.unit = Unit::kCup;
  }

  // The smaller unit of a second amount: "1lb 4oz" in "550g/1lb 4oz".
  std::size_t rest_of_second(Quantity& other, std::size_t next) const {
    std::size_t after = 0, end = 0;
    const auto more = number_at(t_, next, after);
    if (!more) return next;
    const auto small = unit_at(t_, after, measures_, end);
    if (!small || !larger_part_unit(other.unit, *small)) return next;
    other = *converted(other, *small);
    other.least += *more;
    other.most += *more;
    return end;
  }
};

}  // namespace

std::optional<Amount> amount_at(const std::vector<LineToken>& t, std::size_t i,
                                const Measures& measures) {
  return AmountReader(t, measures).read(i);
}

std::optional<Unit> unit_at(const std::vector<LineToken>& t, std::size_t i,
                            const Measures& measures, std::size_t& next) {
  if (!word(t, i)) return std::nullopt;
  const auto done = [&](Unit unit, std::size_t end) -> std::optional<Unit> {
    next = at(t, end, ".") && !t[end].spaced ? end + 1 : end;
    if (!measures.american) return unit;
    if (unit == Unit::kCup) return Unit::kAmericanCup;
    if (unit == Unit::kPint) return Unit::kAmericanPint;
    if (unit == Unit::kFluidOunce) return Unit::kAmericanFluidOunce;
    return unit;
  };
  const std::string& w = t[i].word;
  const std::size_t second = at(t, i + 1, ".") ? i + 2 : i + 1;
  if (w == "fl" || w == "fluid") {
    if (word(t, second) && unit_named(t[second].word) == Unit::kOunce) {
      return done(Unit::kFluidOunce, second + 1);
    }
    return std::nullopt;
  }
  if ((w == "table" || w == "tea" || w == "dessert") && word(t, i + 1) &&
      (t[i + 1].word == "spoon" || t[i + 1].word == "spoons"))
    return done(*unit_named(w + "spoon"), i + 2);
  // "tabel spoons", "tabelspoon", "teespoons"
  if (t[i].word.size() >= 4 && word(t, i + 1) && singular(t[i + 1].word) == "spoon" &&
      base::edit_distance(w, "table") <= 2 && w[0] == 't')
    return done(w.size() < 5 ? Unit::kTeaspoon : Unit::kTablespoon, i + 2);
  // As the tables of other countries say it.
  if ((w == "coffee" || w == "soup") && word(t, i + 1) &&
      base::one_of(singular(t[i + 1].word), {"spoon", "spoonful"}))
    return done(w == "soup" ? Unit::kTablespoon : Unit::kTeaspoon, i + 2);
  if ((w == "us" || w == "american") && word(t, i + 1) && unit_named(t[i + 1].word)) {
    const Measures american{true};
    return unit_at(t, i + 1, american, next);
  }
  // A lone "c" after a number is how an American text shortens cup.
  if (w == "c" && (at(t, i + 1, ".") || word(t, i + 1)) && i > 0 && t[i - 1].number() &&
      measures.american)
    return done(Unit::kCup, i + 1);
  if (t[i].text == "T" || t[i].text == "t") {
    if (i == 0) return std::nullopt;
  }
  // "2 cup mushrooms" are mushrooms by the cup; "cup mushrooms" alone never gets here.
  const auto unit = unit_named(t[i].text);
  if (!unit) return std::nullopt;
  return done(*unit, i + 1);
}

}  // namespace kitchen
