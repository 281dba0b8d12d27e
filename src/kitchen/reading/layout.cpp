#include "kitchen/reading/layout.h"

#include <algorithm>
#include <array>

#include "base/folding.h"
#include "base/text.h"
#include "kitchen/reading/amounts.h"
#include "kitchen/reading/cut_line.h"
#include "kitchen/reading/layout_lines.h"
#include "kitchen/reading/line_looks.h"
#include "kitchen/reading/line_words.h"

namespace kitchen {
namespace {

class LayingOut {
 public:
  explicit LayingOut(std::string_view text) : lines_(lines_of(text)) {
    for (const Line& line : lines_) {
      ingredients_named_ = ingredients_named_ || line.heading.section == Section::kIngredients;
    }
    out_.american = american_text(text);
  }

  Layout lay_out() {
    find_title();
    for (i_ = 0; i_ < lines_.size(); ++i_) {
      if (title_ && *title_ == i_) {
        title();
      } else {
        line(lines_[i_]);
      }
    }
    return std::move(out_);
  }

 private:
  std::vector<Line> lines_;
  std::size_t i_ = 0;
  std::optional<std::size_t> title_;
  bool ingredients_named_ = false;
  Section section_ = Section::kNone;
  std::string group_;
  bool method_begun_ = false;
  Layout out_;

  const Line* following(std::size_t by = 1) const {
    return i_ + by < lines_.size() ? &lines_[i_ + by] : nullptr;
  }

  void put(int number, std::string text, LineRole role, bool continues = false) {
    if (role == LineRole::kMethod) method_begun_ = true;
    const bool grouped = role == LineRole::kIngredient || role == LineRole::kMethod;
    out_.lines.push_back({number, std::move(text), role, grouped ? group_ : "", continues});
  }
  void put(const Line& line, LineRole role, bool continues = false) {
    put(line.number, line.text, role, continues);
  }

  // The first short line before the ingredients that is no sentence.
  void find_title() {
    for (std::size_t i = 0; i < lines_.size() && i < 60; ++i) {
      const Line& line = lines_[i];
      if (line.heading.section == Section::kIngredients || line.heading.section == Section::kMethod)
        return;
      const bool other = line.heading.section != Section::kNone || portions_in(line.tidy) ||
                         time_line(line.tidy) || line.looks.words == 0 || address(line.tidy);
      const bool short_line = (line.looks.words <= 12 || title_cut(line.tidy)) &&
                              !line.looks.sentence && !line.looks.amount_alone;
      const bool ingredient = (line.looks.amount_first || line.looks.amount_last) &&
                              !portions_within(line.tidy) && !title_cut(line.tidy);
      // "Three bean chilli", "One pan pasta"; above headings also "5 minute bread".
      const bool figure = !line.tidy.empty() && line.tidy[0] >= '0' && line.tidy[0] <= '9';
      const bool named_by_number = line.looks.amount_first && !line.looks.measured &&
                                   (!figure || ingredients_named_);
      const bool titled = line.tidy.starts_with("# ");
      if (titled || (!other && short_line && (!ingredient || named_by_number) && !chatty(line))) {
        title_ = i;
        return;
      }
      // Without headings the ingredients may have begun.
      if (ingredient && !ingredients_named_) return;
    }
  }

  static bool chatty(const Line& line) {
    const char last = line.tidy.empty() ? ' ' : line.tidy.back();
    return line.looks.words > 6 && (last == '!' || last == '?' || last == '.' || last == ',');
  }

  void title() {
    const Line& line = lines_[*title_];
    const auto cut = title_cut(line.tidy);
    if (!out_.portions) out_.portions = portions_within(line.tidy);
    if (!cut) {
      put(line, LineRole::kTitle);
      return;
    }
    put(line.number, base::trimmed(line.tidy.substr(0, *cut)), LineRole::kTitle);
    run_on(line.number, base::trimmed(line.tidy.substr(*cut)), true);
  }

  void line(const Line& line) {
    if (line.heading.section != Section::kNone) {
      heading(line);
      return;
    }
    if (line.looks.words == 0 && !line.looks.amount_alone) {
      put(line, LineRole::kUnread);
      return;
    }
    if (const auto portions = portions_in(line.tidy)) {
      if (!out_.portions) out_.portions = portions;
      put(line, LineRole::kPortions);
      return;
    }
    if (time_line(line.tidy)) {
      put(line, LineRole::kTime);
      return;
    }
    if (address(line.tidy) || (about_text(line.tidy) && !line.looks.amount_alone)) {
      put(line, LineRole::kUnread);
      return;
    }
    if (section_ != Section::kMethod && section_ != Section::kOther && group_with_list(line))
      return;
    switch (section_) {
      case Section::kIngredients:
        return in_ingredients(line);
      case Section::kMethod:
        return in_method(line);
      case Section::kOther:
        return put(line, LineRole::kUnread);
      case Section::kNone:
        return by_looks(line);
    }
  }

  // "For the lemon mayo: 4 tbsp mayonnaise and 1 tsp juice", "To serve: soured cream, salad".
  bool group_with_list(const Line& line) {
    const auto colon = line.tidy.find(": ");
    if (colon == std::string::npos || colon > 40) return false;
    const std::string before = base::folded(line.tidy.substr(0, colon));
    const bool opens = before.starts_with("for ") || before.starts_with("to serve") ||
                       before.starts_with("to finish") || before.starts_with("to decorate") ||
                       before.starts_with("to garnish") || before.starts_with("topping") ||
                       before.starts_with("serve with") ||
                       before.find("to serve") != std::string::npos || lists_behind(line, colon);
    if (!opens || method_begun_) return false;
    group_ = heading_text(line.tidy.substr(0, colon));
    put(line.number, line.tidy.substr(0, colon + 1), LineRole::kHeading);
    run_on(line.number, base::trimmed(line.tidy.substr(colon + 1)), true);
    group_.clear();
    return true;
  }

  // "Decoration: 50 g icing sugar, few drops of water": behind the colon a food is weighed, which
  // "Flour: 200 g, sifted" has before it.
  bool lists_behind(const Line& line, std::size_t colon) const {
    const auto t = line_tokens(std::string_view(line.tidy).substr(colon + 1));
    const auto amount = t.empty() ? std::nullopt : amount_at(t, 0, Measures{});
    const bool plain = line_tokens(std::string_view(line.tidy).substr(0, colon)).size() <= 3;
    const bool begun = !out_.lines.empty() && out_.lines.back().role == LineRole::kIngredient;
    const bool many = list_parts(base::trimmed(line.tidy.substr(colon + 1)), false).size() > 1;
    return plain && (begun || many) && amount && amount->quantity.stated() &&
           (amount->quantity.unit != Unit::kPiece || !amount->quantity.piece.empty()) &&
           amount->next < t.size() && t[amount->next].kind == LineToken::Kind::kWord &&
           !preparation_word(t[amount->next].word);
  }

  // "Wedges" above "1. Scrub the potatoes.": names the steps that follow.
  bool names_steps(const Line& line) const {
    const Line* next = following();
    const LineLooks& looks = line.looks;
    return looks.words > 0 && looks.words <= 3 && !looks.sentence && !looks.amount_first &&
           !looks.amount_last && !looks.amount_alone && !looks.bullet && !small_first(line.tidy) &&
           next != nullptr && next->looks.numbered && next->looks.verb_first;
  }

  // Among lines with bullets one without, short and without an amount, names what follows.
  bool plain_among_bullets(const Line& line) const {
    const Line* next = following();
    const bool short_line = line.looks.words > 0 && line.looks.words <= 4 && !line.looks.sentence;
    const bool amount = line.looks.amount_first || line.looks.amount_last ||
                        line.looks.amount_alone;
    return short_line && !amount && !line.looks.bullet && next != nullptr && next->looks.bullet &&
           next->looks.amount_first;
  }

  void heading(const Line& line) {
    // "Equipment: a grill pan, skewers" is done with at the end of its line.
    const bool aside = line.heading.section == Section::kOther &&
                       line.heading.rest < line.tidy.size();
    if (aside) {
      put(line.number, base::trimmed(line.tidy.substr(0, line.heading.rest)), LineRole::kHeading);
      put(line.number, line.tidy.substr(line.heading.rest), LineRole::kUnread);
      return;
    }
    section_ = line.heading.section;
    group_.clear();
    if (section_ != Section::kOther && !out_.portions) out_.portions = portions_within(line.tidy);
    if (line.heading.rest >= line.tidy.size()) {
      put(line, LineRole::kHeading);
      return;
    }
    put(line.number, base::trimmed(line.tidy.substr(0, line.heading.rest)), LineRole::kHeading);
    const std::string rest = line.tidy.substr(line.heading.rest);
    if (section_ == Section::kIngredients) {
      run_on(line.number, rest, true);
    } else {
      put(line.number, rest, section_ == Section::kMethod ? LineRole::kMethod : LineRole::kUnread);
    }
  }

  // A list of ingredients in one line, perhaps with the method behind it.
  void run_on(int number, const std::string& text, bool every_comma) {
    const auto method = method_cut(text);
    const std::string list = method ? text.substr(0, *method) : text;
    for (std::string& each : list_parts(list, every_comma))
      put(number, std::move(each), LineRole::kIngredient);
    if (!method) return;
    const std::string rest = text.substr(*method);
    const HeadingFound inner = section_heading(rest);
    section_ = Section::kMethod;
    if (inner.section == Section::kMethod && inner.rest < rest.size()) {
      put(number, base::trimmed(rest.substr(0, inner.rest)), LineRole::kHeading);
      put(number, rest.substr(inner.rest), LineRole::kMethod);
    } else {
      put(number, rest, LineRole::kMethod);
    }
  }

  bool method_like(const Line& line) const {
    const LineLooks& looks = line.looks;
    if (looks.amount_first || looks.amount_alone || looks.amount_last) {
      // "2 minutes before the end, stir in ...": a sentence all the same.
      return looks.sentence && looks.words > 14 && list_parts(line.tidy, false).size() < 3;
    }
    if (looks.verb_first && (looks.words >= 5 || looks.sentence || looks.numbered)) return true;
    if (looks.verb_first && method_begun_ && looks.words >= 2 && line.tidy.back() == '.')
      return true;
    return looks.sentence && looks.words >= 7 && (method_begun_ || looks.numbered);
  }

  void ingredient(const Line& line) {
    if (continues_ingredient(line)) {
      put(line, LineRole::kIngredient, true);
      return;
    }
    if (line.looks.amount_first || line.looks.amount_last) {
      const auto parts = list_parts(line.tidy, false);
      if (parts.size() > 1 || method_cut(line.tidy)) return run_on(line.number, line.tidy, false);
    }
    put(line, LineRole::kIngredient);
  }

  bool continues_ingredient(const Line& line) const {
    if (out_.lines.empty() || out_.lines.back().role != LineRole::kIngredient) return false;
    const LaidLine& last = out_.lines.back();
    if (last.group != group_ || last.number + 1 < line.number - 1) return false;
    const std::string before = tidied_line(last.text);
    const LineLooks was = looks_of(before);
    // A table's cells under each other: "Flour", "200 g" or "200 g", "flour".
    if (line.looks.amount_alone)
      return !was.amount_first && !was.amount_last && !was.amount_alone && !last.continues;
    if (was.amount_alone && !last.continues) return !line.looks.amount_first;
    if (line.looks.amount_first || line.looks.bullet || last.number + 1 != line.number)
      return false;
    const bool open = std::count(before.begin(), before.end(), '(') >
                      std::count(before.begin(), before.end(), ')');
    const bool goes_on = before.ends_with(",") || before.ends_with(" and") ||
                         before.ends_with(" or") || open;
    if (!small_first(line.tidy)) return open;
    const auto words = base::words_of(base::folded(line.tidy));
    return goes_on || only_prepares(words) || (was.amount_first && no_food_yet(before));
  }

  void in_ingredients(const Line& line) {
    if (line.looks.amount_alone && continues_ingredient(line))
      return put(line, LineRole::kIngredient, true);
    if (method_like(line)) {
      if (!method_begun_) group_.clear();
      return put(line, LineRole::kMethod);
    }
    if ((group_heading(line.tidy, line.looks) || plain_among_bullets(line) || names_steps(line)) &&
        following() != nullptr) {
      group_ = heading_text(line.tidy);
      return put(line, LineRole::kHeading);
    }
    if (line.looks.words > 25 && !line.looks.amount_first) return put(line, LineRole::kUnread);
    // "Use ripe bananas if you can.", said between the ingredients.
    if (line.looks.sentence && line.looks.words > 6 && !line.looks.amount_first &&
        !line.looks.amount_last)
      return put(line, LineRole::kUnread);
    ingredient(line);
  }

  void in_method(const Line& line) {
    const LineLooks& looks = line.looks;
    // Two columns copied as lines: ingredients between the steps.
    const bool ingredient_like = looks.amount_first && !looks.sentence && !looks.numbered &&
                                 looks.words <= 8 && !small_first(line.tidy) &&
                                 line.tidy.back() != '.' && !goes_on();
    if (ingredient_like) return ingredient(line);
    if (!looks.verb_first && !looks.numbered && !goes_on() && group_heading(line.tidy, looks) &&
        following() != nullptr) {
      group_ = heading_text(line.tidy);
      return put(line, LineRole::kHeading);
    }
    put(line, LineRole::kMethod, wraps(line));
  }

  // Whether the line before was a step that had not ended.
  bool goes_on() const {
    if (out_.lines.empty() || out_.lines.back().role != LineRole::kMethod) return false;
    const std::string& before = out_.lines.back().text;
    const char last = before.back();
    return last != '.' && last != '!' && last != ':' && last != ')' && before.size() > 45;
  }
  bool wraps(const Line& line) const {
    if (out_.lines.empty() || out_.lines.back().role != LineRole::kMethod) return false;
    if (line.looks.numbered || line.looks.bullet) return false;
    return goes_on() && out_.lines.back().number + 1 == line.number &&
           (small_first(line.tidy) || !line.looks.verb_first);
  }

  // Outside of any section: before the headings, or in a text without them.
  void by_looks(const Line& line) {
    const LineLooks& looks = line.looks;
    if (ingredients_named_) {
      const bool oven = looks.verb_first &&
                        base::lower(line.tidy).find("oven") != std::string::npos &&
                        looks.words < 20;
      return put(line, oven ? LineRole::kMethod : LineRole::kUnread);
    }
    if (method_begun_) return after_method_began(line);
    if (method_like(line)) {
      group_.clear();
      return put(line, LineRole::kMethod, false);
    }
    if (names_steps(line)) {
      group_ = heading_text(line.tidy);
      return put(line, LineRole::kHeading);
    }
    if ((group_heading(line.tidy, looks) || plain_among_bullets(line)) && following() != nullptr &&
        (following()->looks.amount_first || following()->looks.amount_last ||
         !out_.lines.empty())) {
      group_ = heading_text(line.tidy);
      return put(line, LineRole::kHeading);
    }
    const bool begun = std::any_of(out_.lines.begin(), out_.lines.end(), [](const LaidLine& l) {
      return l.role == LineRole::kIngredient;
    });
    const bool amount = looks.amount_first || looks.amount_last || looks.amount_alone;
    if (amount && !(looks.sentence && looks.words > 14 && list_parts(line.tidy, false).size() < 2))
      return ingredient(line);
    const bool short_line = looks.words <= 8 && !looks.sentence && !chatty(line);
    const bool beside = begun || next_is_ingredient() || begins_list();
    if (short_line && beside) return ingredient(line);
    put(line, LineRole::kUnread);
  }

  // Three short lines or more, then the method: a list without a single amount.
  bool begins_list() const {
    std::size_t many = 0;
    for (std::size_t i = i_; i < lines_.size(); ++i) {
      const Line& line = lines_[i];
      if (line.heading.section == Section::kMethod || method_like(line)) return many >= 3;
      const bool short_line = line.looks.words > 0 && line.looks.words <= 6 && !line.looks.sentence;
      if (!short_line || line.heading.section != Section::kNone) return false;
      ++many;
    }
    return false;
  }

  bool next_is_ingredient() const {
    const Line* next = following();
    return next != nullptr && (next->looks.amount_first || next->looks.amount_alone) &&
           out_.lines.size() > 1 && lines_[i_].looks.words <= 3;
  }

  void after_method_began(const Line& line) {
    const LineLooks& looks = line.looks;
    const bool amount = (looks.amount_first || looks.amount_last) && !looks.sentence &&
                        !looks.numbered && looks.words <= 9;
    if (amount && !small_first(line.tidy) && line.tidy.back() != '.' && !goes_on())
      return ingredient(line);
    if (group_heading(line.tidy, looks) && !looks.verb_first && following() != nullptr &&
        !goes_on()) {
      group_ = heading_text(line.tidy);
      return put(line, LineRole::kHeading);
    }
    put(line, LineRole::kMethod, wraps(line));
  }
};

}  // namespace

Layout lay_out(std::string_view text) { return LayingOut(text).lay_out(); }

}  // namespace kitchen
