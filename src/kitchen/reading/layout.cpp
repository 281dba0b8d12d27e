// Line by line into roles. In one piece because it is one pass with one state (the section, the
// group, what is laid already): which rule sees a line first is the order of these functions, and
// cut apart that order could no longer be read. What needs no state is in line_evidence.h and
// laid_so_far.h.
#include "kitchen/reading/layout.h"

#include <algorithm>
#include <array>

#include "base/folding.h"
#include "base/text.h"
#include "kitchen/reading/amounts.h"
#include "kitchen/reading/cut_line.h"
#include "kitchen/reading/headline.h"
#include "kitchen/reading/laid_so_far.h"
#include "kitchen/reading/layout_lines.h"
#include "kitchen/reading/line_evidence.h"
#include "kitchen/reading/line_looks.h"
#include "kitchen/reading/line_words.h"
#include "kitchen/reading/page_words.h"
#include "kitchen/reading/senders.h"
#include "kitchen/reading/step_looks.h"

namespace kitchen {
namespace {

class LayingOut {
 public:
  LayingOut(std::string_view text, const FoodMatcher& foods)
      : lines_(lines_of(text)),
        foods_(foods),
        evidence_(lines_, foods),
        title_(evidence_.title()),
        laid_(out_.lines, evidence_.all_small()) {
    out_.american = american_text(text);
  }

  Layout lay_out() {
    for (i_ = 0; i_ < lines_.size(); ++i_) {
      if (title_ && *title_ == i_) {
        title();
      } else if (title_ && i_ < *title_ && above_title(lines_[i_])) {
        put(lines_[i_], LineRole::kUnread);
      } else {
        line(lines_[i_]);
      }
    }
    return std::move(out_);
  }

 private:
  std::vector<Line> lines_;
  const FoodMatcher& foods_;
  const LineEvidence evidence_;
  std::size_t i_ = 0;
  const std::optional<std::size_t> title_;
  bool equipment_ = false;  // under "Equipment": the list ends where something else begins
  Section section_ = Section::kNone;
  std::string group_;
  bool method_begun_ = false;
  Layout out_;
  const LaidSoFar laid_;

  const Line* following() const { return evidence_.following(lines_[i_]); }

  void put(int number, std::string text, LineRole role, bool continues = false) {
    if (role == LineRole::kMethod) method_begun_ = true;
    const bool grouped = role == LineRole::kIngredient || role == LineRole::kMethod;
    out_.lines.push_back({number, std::move(text), role, grouped ? group_ : "", continues});
  }
  void put(const Line& line, LineRole role, bool continues = false) {
    put(line.number, line.text, role, continues);
  }

  // A school, a club, a greeting: what stands above the dish's name is no part of it.
  static bool above_title(const Line& line) {
    return line.heading.section == Section::kNone && line.kind == CellKind::kText &&
           !portions_in(line.tidy) && !time_line(line.tidy) && !line.looks.amount_first &&
           !line.looks.amount_last && !line.looks.sentence && !line.looks.verb_first;
  }

  void title() {
    const Line& line = lines_[*title_];
    const auto cut = title_cut(line.tidy);
    if (!out_.portions) out_.portions = portions_within(line.tidy);
    if (!cut.has_value() || title_label(line.tidy) > 0) {
      put(line, LineRole::kTitle);
      return;
    }
    put(line.number, base::trimmed(line.tidy.substr(0, *cut)), LineRole::kTitle);
    run_on(line.number, base::trimmed(line.tidy.substr(*cut)), true);
  }

  void line(const Line& line) {
    switch (line.kind) {
      case CellKind::kTime:
        return put(line, LineRole::kTime);
      case CellKind::kMark:
        return put(line, LineRole::kHeading);
      case CellKind::kAside:
        return put(line, LineRole::kUnread);
      case CellKind::kHeader:
        if (line.heading.section != Section::kNone) section_ = line.heading.section;
        equipment_ = false;
        return put(line, LineRole::kHeading);
      case CellKind::kRow:
        if (section_ == Section::kOther && !equipment_) return put(line, LineRole::kUnread);
        return put(line, LineRole::kIngredient);
      case CellKind::kText:
        break;
    }
    if (line.heading.section != Section::kNone) {
      heading(line);
      return;
    }
    if (line.looks.words == 0 && !line.looks.amount_alone) {
      put(line, LineRole::kUnread);
      return;
    }
    // "Step 1" above what is to be done.
    if (line.looks.numbered && without_number(line.tidy).empty()) {
      if (section_ == Section::kNone || section_ == Section::kIngredients)
        section_ = Section::kMethod;
      put(line, LineRole::kHeading);
      return;
    }
    if (const auto portions = portions_in(line.tidy)) {
      if (!out_.portions) out_.portions = portions;
      put(line, LineRole::kPortions);
      return;
    }
    // "6 covers", "(Nan's, does six if Grandad behaves)"
    if (section_ == Section::kNone && !line.looks.measured && line.looks.words <= 12) {
      if (const auto told = portions_told(line.tidy); told && told->people) {
        if (!out_.portions) out_.portions = told->portions;
        put(line, LineRole::kPortions);
        return;
      }
    }
    if (time_line(line.tidy)) {
      put(line, LineRole::kTime);
      return;
    }
    if (page_words(line.tidy) && !line.looks.amount_alone) {
      put(line, LineRole::kUnread);
      return;
    }
    if (opens_block(line)) return;
    if (section_ != Section::kMethod && section_ != Section::kOther && group_with_list(line))
      return;
    switch (section_) {
      case Section::kIngredients:
        return in_ingredients(line);
      case Section::kMethod:
        return in_method(line);
      case Section::kOther:
        return in_other(line);
      case Section::kNone:
        return by_looks(line);
    }
  }

  // "Collect from the front:", "You bring", "How it is done": a heading nobody has listed, known
  // by what stands below it.
  bool opens_block(const Line& line) {
    if (!evidence_.heading_form(line)) return false;
    const Section below = evidence_.block_below(line);
    if (below == Section::kNone || below == section_) return false;
    constexpr std::size_t kPart = 4;  // words: "For the lemon topping"
    const bool part = !line.looks.verb_first && line.looks.words <= kPart &&
                      group_heading(line.tidy, line.looks);
    // "For the topping" opens a list, and a part of the dish.
    if (section_ == Section::kNone && part && below == Section::kIngredients) return false;
    if (section_ == Section::kNone && evidence_.ingredients_named() &&
        below == Section::kIngredients)
      return false;
    section_ = below;
    equipment_ = false;
    group_ = part && below == Section::kIngredients ? heading_text(line.tidy) : "";
    put(line, LineRole::kHeading);
    return true;
  }

  // "For the lemon mayo: 4 tbsp mayonnaise and 1 tsp juice", "To serve: soured cream, salad".
  bool group_with_list(const Line& line) {
    auto colon = line.tidy.find(": ");
    // "To garnish - cucumber ribbons".
    if (const auto dash = line.tidy.find(" - ");
        colon == std::string::npos && dash < 14 && base::folded(line.tidy).starts_with("to "))
      colon = dash + 1;
    if (colon == std::string::npos || colon > 40) return label_and_list(line);
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

  // "dressing is 2 tbsp oil, 1 tbsp lemon juice", "Crust = 200 g flour + 100 g butter".
  bool label_and_list(const Line& line) {
    constexpr std::size_t kLongestLabel = 4;  // words
    const auto t = line_tokens(line.tidy);
    for (std::size_t i = 1; i + 1 < t.size() && i <= kLongestLabel; ++i) {
      const bool joint = t[i].is("is") || t[i].is("are") || t[i].is("=") ||
                         (t[i].is("-") && t[i].spaced && t[i + 1].spaced);
      if (t[i].number()) return false;
      if (!joint) continue;
      const std::string rest = line.tidy.substr(t[i + 1].begin);
      const auto parts = list_parts(rest, false);
      const bool amounts = std::all_of(parts.begin(), parts.end(), [](const std::string& part) {
        return looks_of(part).amount_first;
      });
      if (parts.size() < 2 || !amounts) return false;
      put(line.number, base::trimmed(line.tidy.substr(0, t[i + 1].begin)), LineRole::kHeading);
      group_ = words_between(line.tidy, t, 0, i);
      run_on(line.number, rest, false);
      group_.clear();
      return true;
    }
    return false;
  }

  // "Decoration: 50 g icing sugar, few drops of water": behind the colon a food is weighed, which
  // "Flour: 200 g, sifted" has before it.
  bool lists_behind(const Line& line, std::size_t colon) const {
    const std::string behind = base::trimmed(line.tidy.substr(colon + 1));
    const auto t = line_tokens(behind);
    const auto amount = t.empty() ? std::nullopt : amount_at(t, 0, Measures{});
    // "Bakery: 4 pitta breads": a shelf of the shop is no food, what stands behind it is.
    const bool weighed = amount && amount->quantity.stated() && amount->next < t.size();
    if (weighed && !evidence_.food_in(line.tidy.substr(0, colon)) &&
        evidence_.food_in(list_parts(behind, false).front()))
      return true;
    const bool plain = line_tokens(std::string_view(line.tidy).substr(0, colon)).size() <= 3;
    const bool begun = !out_.lines.empty() && out_.lines.back().role == LineRole::kIngredient;
    const bool many = list_parts(base::trimmed(line.tidy.substr(colon + 1)), false).size() > 1;
    const bool whole_list = list_parts(base::trimmed(line.tidy.substr(colon + 1)), false).size() >
                            2;
    return plain && (begun || many) && amount && amount->quantity.stated() &&
           (whole_list || amount->quantity.unit != Unit::kPiece ||
            !amount->quantity.piece.empty()) &&
           amount->next < t.size() && t[amount->next].kind == LineToken::Kind::kWord &&
           !preparation_word(t[amount->next].word);
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
    equipment_ = section_ == Section::kOther && equipment_heading(line.tidy);
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
    for (std::string& each : list_parts(list, every_comma)) {
      // "You will need 500 g mince; an onion; a container with a lid"
      const bool ware = wares_only(tidied_line(each));
      put(number, std::move(each), ware ? LineRole::kUnread : LineRole::kIngredient);
    }
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
    if (laid_.continues_ingredient(line, group_)) {
      put(line, LineRole::kIngredient, true);
      return;
    }
    if (line.looks.amount_first || line.looks.amount_last) {
      const auto parts = list_parts(line.tidy, false);
      if (parts.size() > 1 || method_cut(line.tidy)) return run_on(line.number, line.tidy, false);
    }
    put(line, LineRole::kIngredient);
  }

  // "Grill on", "Grate cheese", "Macaroni in, 10 min": a step in a few words, below a list whose
  // foods all have amounts.
  bool brief_step(const Line& line) const {
    const LineLooks& looks = line.looks;
    if (looks.amount_first || looks.amount_last || looks.amount_alone || looks.words < 2 ||
        group_heading(line.tidy, looks))
      return false;
    // Where a heading for the method is still to come, only a verb makes a step of it.
    if (evidence_.method_named() && !looks.verb_first) return false;
    if (!laid_.counted_list() ||
        !(looks.verb_first || telegraphic(line.tidy) || evidence_.verb_led(line)))
      return false;
    return !foods_.named(heading_text(line.tidy)) &&
           !foods_.named(line.tidy.substr(0, line.tidy.find(',')));
  }
  void in_ingredients(const Line& line) {
    if (line.looks.amount_alone && laid_.continues_ingredient(line, group_))
      return put(line, LineRole::kIngredient, true);
    const bool weighed = line.looks.measured && evidence_.amount_of_food(line);
    if (!weighed && evidence_.equipment(line)) return put(line, LineRole::kUnread);
    if (method_like(line) || brief_step(line)) {
      if (!method_begun_) group_.clear();
      if (!evidence_.method_named()) section_ = Section::kMethod;
      return put(line, LineRole::kMethod);
    }
    if ((group_heading(line.tidy, line.looks) || evidence_.plain_among_bullets(line) ||
         evidence_.names_steps(line)) &&
        following() != nullptr) {
      group_ = heading_text(line.tidy);
      return put(line, LineRole::kHeading);
    }
    // "Do", alone below a list: a heading, whatever it means.
    const bool alone = line.gap && line.looks.words <= 2 && !line.looks.bullet &&
                       !line.looks.amount_first && !line.looks.amount_last &&
                       !line.looks.amount_alone && laid_.counted_list();
    if (alone && following() != nullptr && !evidence_.food_in(line.text))
      return put(line, LineRole::kHeading);
    if (line.looks.words > 25 && !line.looks.amount_first) return put(line, LineRole::kUnread);
    // "Use ripe bananas if you can.", said between the ingredients.
    if (line.looks.sentence && line.looks.words > 6 && !line.looks.amount_first &&
        !line.looks.amount_last)
      return put(line, LineRole::kUnread);
    ingredient(line);
  }

  // "Target: complete steps 6 and 7", "Extension: ...": said to the class, no step.
  static bool said_to_class(const Line& line) {
    const auto colon = line.tidy.find(':');
    if (colon == std::string::npos || colon > 24) return false;
    const std::string label = base::folded(line.tidy.substr(0, colon));
    return base::one_of(label, {"target", "extension", "extension task", "challenge", "question",
                                "questions", "homework", "evaluation", "success criteria",
                                "learning objective", "learning outcome", "key words", "key word",
                                "food safety question", "exit question", "teacher note", "think"});
  }

  void in_method(const Line& line) {
    const LineLooks& looks = line.looks;
    if (said_to_class(line)) return put(line, LineRole::kUnread);
    // Two columns copied as lines: ingredients between the steps.
    const bool beside = !out_.lines.empty() && out_.lines.back().role == LineRole::kIngredient;
    if (beside && !looks.verb_first && !looks.numbered && laid_.continues_ingredient(line, group_))
      return put(line, LineRole::kIngredient, true);
    if (beside && evidence_.plain_food(line)) return ingredient(line);
    const bool amount = looks.amount_first || looks.amount_last;
    const bool ingredient_like = amount && !looks.sentence && !looks.numbered && looks.words <= 8 &&
                                 (!small_first(line.tidy) || beside) && line.tidy.back() != '.' &&
                                 (!laid_.goes_on(line) || line.gap) && !looks.verb_first;
    if (ingredient_like && (looks.measured ? looks.amount_first || evidence_.amount_of_food(line)
                                           : evidence_.amount_of_food(line)))
      return ingredient(line);
    if (evidence_.equipment(line) && beside) return put(line, LineRole::kUnread);
    // "Salsa", alone above numbered steps.
    if (!looks.verb_first && !looks.numbered && looks.words <= 3 && !looks.sentence &&
        following() != nullptr && following()->looks.numbered && !laid_.goes_on(line)) {
      group_ = heading_text(line.tidy);
      return put(line, LineRole::kHeading);
    }
    if (!looks.verb_first && !looks.numbered && !laid_.goes_on(line) &&
        group_heading(line.tidy, looks) && following() != nullptr) {
      group_ = heading_text(line.tidy);
      return put(line, LineRole::kHeading);
    }
    put(line, LineRole::kMethod, laid_.wraps(line));
  }

  // Under "Equipment" the list ends with what is none: steps that are numbered, food that is
  // weighed. Under "Notes" only a heading ends it.
  void in_other(const Line& line) {
    if (equipment_ && !evidence_.equipment(line)) {
      const bool step = evidence_.step_evidence(line) &&
                        (line.looks.sentence || line.looks.numbered || line.gap);
      const bool food = line.looks.measured && evidence_.amount_of_food(line);
      if (step || food) {
        section_ = step ? Section::kMethod : Section::kIngredients;
        equipment_ = false;
        return step ? in_method(line) : in_ingredients(line);
      }
    }
    put(line, LineRole::kUnread);
  }

  // Outside of any section: before the headings, or in a text without them.
  void by_looks(const Line& line) {
    const LineLooks& looks = line.looks;
    if (evidence_.ingredients_named()) {
      const bool oven = looks.verb_first &&
                        base::lower(line.tidy).find("oven") != std::string::npos &&
                        looks.words < 20;
      // The method may stand first, without a heading of its own.
      const bool first = !evidence_.method_named() && looks.verb_first &&
                         (looks.numbered || method_begun_);
      return put(line, oven || first ? LineRole::kMethod : LineRole::kUnread);
    }
    if (evidence_.equipment(line)) return put(line, LineRole::kUnread);
    if (method_begun_) return after_method_began(line);
    if (method_like(line) || (looks.sentence && tells_actions(line.tidy)) || brief_step(line)) {
      group_.clear();
      return put(line, LineRole::kMethod, false);
    }
    if (evidence_.names_steps(line)) {
      group_ = heading_text(line.tidy);
      return put(line, LineRole::kHeading);
    }
    if ((group_heading(line.tidy, looks) || evidence_.plain_among_bullets(line)) &&
        following() != nullptr &&
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
    const bool short_line = looks.words <= 8 && !looks.sentence && !evidence_.chatty(line);
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
    const bool beside = out_.lines.back().role == LineRole::kIngredient;
    if (beside && !looks.verb_first && !looks.numbered && laid_.continues_ingredient(line, group_))
      return put(line, LineRole::kIngredient, true);
    if (beside && evidence_.plain_food(line)) return ingredient(line);
    const bool amount = (looks.amount_first || looks.amount_last) && !looks.sentence &&
                        (!looks.numbered || !looks.verb_first) && looks.words <= 9;
    if (amount && (!small_first(line.tidy) || beside || line.gap) && line.tidy.back() != '.' &&
        (!laid_.goes_on(line) || line.gap) &&
        (evidence_.amount_of_food(line) || (looks.measured && !looks.numbered)))
      return ingredient(line);
    if (group_heading(line.tidy, looks) && !looks.verb_first && following() != nullptr &&
        !laid_.goes_on(line)) {
      group_ = heading_text(line.tidy);
      return put(line, LineRole::kHeading);
    }
    put(line, LineRole::kMethod, laid_.wraps(line));
  }
};

}  // namespace

Layout lay_out(std::string_view text, const FoodMatcher& foods) {
  return LayingOut(without_senders(text), foods).lay_out();
}

}  // namespace kitchen
