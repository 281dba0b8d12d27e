#include "kitchen/reading/line_evidence.h"

#include <algorithm>

#include "base/folding.h"
#include "base/text.h"
#include "kitchen/reading/headline.h"
#include "kitchen/reading/ingredient_line.h"
#include "kitchen/reading/layout_lines.h"
#include "kitchen/reading/line_words.h"
#include "kitchen/reading/page_words.h"
#include "kitchen/reading/step_looks.h"

namespace kitchen {

LineEvidence::LineEvidence(const std::vector<Line>& lines, const FoodMatcher& foods)
    : lines_(lines), foods_(foods) {
  std::size_t small = 0, begun = 0;
  for (const Line& line : lines_) {
    ingredients_named_ = ingredients_named_ || line.heading.section == Section::kIngredients;
    method_named_ = method_named_ || line.heading.section == Section::kMethod;
    if (line.looks.words < 4 || line.looks.amount_first) continue;
    ++begun;
    small += small_first(line.tidy) ? 1 : 0;
  }
  all_small_ = small * 5 > begun * 4;
}

const Line* LineEvidence::following(const Line& line, std::size_t by) const {
  const auto next = static_cast<std::size_t>(&line - lines_.data()) + by;
  return next < lines_.size() ? &lines_[next] : nullptr;
}

std::optional<std::size_t> LineEvidence::title() const {
  for (std::size_t i = 0; i < lines_.size() && i < 60; ++i) {
    const Line& line = lines_[i];
    if (title_label(line.tidy) > 0) {
      return i;
    }
    if (line.heading.section == Section::kIngredients || line.heading.section == Section::kMethod)
      break;
  }
  // Of the short lines above the list the one that looks most like a dish; the first of equals.
  std::optional<std::size_t> best;
  double most = 0;
  for (std::size_t i = 0; i < lines_.size() && i < 60; ++i) {
    const Line& line = lines_[i];
    if (line.heading.section == Section::kIngredients || line.heading.section == Section::kMethod)
      break;
    const bool other = line.heading.section != Section::kNone || portions_in(line.tidy) ||
                       time_line(line.tidy) || line.looks.words == 0 ||
                       line.kind != CellKind::kText || page_words(line.tidy);
    const bool short_line = (line.looks.words <= 12 || title_cut(line.tidy)) &&
                            !line.looks.sentence && !line.looks.amount_alone;
    // "Sheet 4" is no amount of anything, nor is "(cuts into 8 slices)".
    const bool ingredient = (line.looks.amount_first || line.looks.amount_last) &&
                            !portions_within(line.tidy) && !title_cut(line.tidy) &&
                            !portions_told(line.tidy);
    // "Three bean chilli", "One pan pasta"; above headings also "5 minute bread".
    const bool figure = !line.tidy.empty() && line.tidy[0] >= '0' && line.tidy[0] <= '9';
    const bool named_by_number = line.looks.amount_first && !line.looks.measured &&
                                 (!figure || ingredients_named_);
    if (equipment_heading(line.tidy)) break;
    if (line.tidy.starts_with("# ")) return i;
    const std::string name = name_alone(dish_part(line.tidy, foods_));
    constexpr std::size_t kLeast = 3;  // letters
    const bool letters = std::count_if(name.begin(), name.end(), [](char c) {
                           return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
                         }) >= static_cast<std::ptrdiff_t>(kLeast);
    if (!other && short_line && (!ingredient || named_by_number) && !chatty(line) && letters) {
      const bool figures = std::any_of(name.begin(), name.end(),
                                       [](char c) { return c >= '0' && c <= '9'; });
      const double likeness = dish_likeness(name, foods_);
      // Below the first such line only a dish by its words, and not what stands in a list.
      const bool capital = all_small_ || !small_first(line.tidy);
      const bool ended = line.tidy.back() != ',' && line.tidy.back() != ';';
      const bool better = !best || (likeness >= 3 && likeness > most && !line.looks.bullet &&
                                    !line.looks.numbered && !line.looks.verb_first && capital &&
                                    ended && !figures && !title_cut(line.tidy));
      if (better) {
        best = i;
        most = likeness;
      }
    }
    // Without headings the ingredients may have begun, or the method.
    if (ingredient && !ingredients_named_ && (line.looks.measured || amount_of_food(line))) break;
    if (line.looks.verb_first && line.looks.sentence && !ingredients_named_) break;
    constexpr std::size_t kTop = 12;  // lines
    if (best && i >= kTop) break;
  }
  return best;
}

bool LineEvidence::chatty(const Line& line) {
  const char last = line.tidy.empty() ? ' ' : line.tidy.back();
  return line.looks.words > 6 && (last == '!' || last == '?' || last == '.' || last == ',');
}

// Whether a line speaks of an amount of a food the table knows.
bool LineEvidence::amount_of_food(const Line& line) const {
  const LineLooks& looks = line.looks;
  if (line.kind == CellKind::kRow) return true;
  if (!(looks.amount_first || looks.amount_last) || looks.words > 12) return false;
  return food_in(line.text);
}

bool LineEvidence::food_in(const std::string& text) const {
  constexpr double kLikely = 0.6;
  const auto read = read_ingredient_line(text, foods_, Measures{});
  return std::any_of(read.begin(), read.end(), [](const IngredientDraft& each) {
    return !each.food.value.empty() && each.food.confidence >= kLikely;
  });
}

// Evidence of a step, whatever stands around it.
bool LineEvidence::step_evidence(const Line& line) const {
  const LineLooks& looks = line.looks;
  if (line.kind != CellKind::kText) return false;
  if (looks.amount_first && !looks.sentence) return false;
  if (looks.verb_first && (looks.words >= 4 || looks.sentence || looks.numbered)) return true;
  if (looks.verb_first && looks.words >= 2) return !foods_.named(heading_text(line.tidy));
  if (looks.words >= 2 && !looks.amount_last && (telegraphic(line.tidy) || verb_led(line)) &&
      !food_in(line.text))
    return true;
  return looks.sentence && tells_actions(line.tidy);
}

// What stands below a line that might be a heading: by the first lines up to a blank one.
Section LineEvidence::block_below(const Line& line) const {
  constexpr std::size_t kEnough = 6;
  std::size_t amounts = 0, steps = 0, all = 0;
  for (std::size_t by = 1; all < kEnough; ++by) {
    const Line* next = following(line, by);
    if (next == nullptr || (all > 0 && next->gap && all > 1)) break;
    if (next->heading.section != Section::kNone && next->kind != CellKind::kHeader) break;
    if (next->kind == CellKind::kHeader) {
      if (next->heading.section == Section::kNone) continue;
      return all == 0 ? next->heading.section : Section::kNone;
    }
    if (next->kind == CellKind::kTime || next->kind == CellKind::kMark || next->looks.words == 0)
      continue;
    ++all;
    if (amount_of_food(*next)) ++amounts;
    if (step_evidence(*next)) ++steps;
  }
  if (amounts >= 2 && amounts * 2 > all) return Section::kIngredients;
  if (steps >= 1 && steps * 2 > all) return Section::kMethod;
  return Section::kNone;
}

// A line that is a heading by its form alone.
bool LineEvidence::heading_form(const Line& line) const {
  const LineLooks& looks = line.looks;
  if (line.kind != CellKind::kText || looks.words == 0 || looks.words > 9 || looks.amount_first ||
      looks.amount_last || looks.amount_alone || looks.numbered || looks.bullet ||
      following(line) == nullptr)
    return false;
  const char last = line.tidy.back();
  if (last == '.' || last == ',' || last == '!' || last == '?' || last == ';' ||
      line.tidy.find(": ") != std::string::npos)
    return false;
  const bool marked = looks.colon_last || line.tidy.starts_with("#") || looks.capitals ||
                      (line.tidy.starts_with("**") && line.tidy.ends_with("**"));
  const std::string low = base::lower(line.tidy);
  if (marked || low.starts_with("making ") || low.starts_with("putting ")) return true;
  if (looks.verb_first && looks.words > 3) return false;
  return line.gap && !small_first(line.tidy) && looks.words <= 7 && !food_in(line.text);
}

// "Toast bread one side", "Grill on": a verb without an article, and no food by that name.
bool LineEvidence::verb_led(const Line& line) const {
  const auto words = base::words_of(base::folded(line.tidy));
  const bool little = !words.empty() && base::one_of(words[0], {"to", "in", "after", "while", "now",
                                                                "if", "with", "as", "when"});
  return words.size() >= 2 && !little && method_verb(words[0]) && !food_in(line.text);
}

// "black pepper", below other ingredients.
bool LineEvidence::plain_food(const Line& line) const {
  const LineLooks& looks = line.looks;
  constexpr std::size_t kShort = 4;  // words
  return line.kind == CellKind::kText && !line.gap && !looks.verb_first && !looks.sentence &&
         !looks.numbered && !looks.colon_last && looks.words > 0 && looks.words <= kShort &&
         line.tidy.back() != '.' && food_in(line.text);
}

// "Mixing bowl", "2 baking trays", "Rolling pin and cutters".
bool LineEvidence::equipment(const Line& line) const {
  return !line.looks.verb_first && !line.looks.sentence && !line.looks.amount_alone &&
         !line.looks.amount_last && wares_only(line.tidy) && !foods_.named(heading_text(line.tidy));
}

// "Wedges" above "1. Scrub the potatoes.": names the steps that follow.
bool LineEvidence::names_steps(const Line& line) const {
  const Line* next = following(line);
  const LineLooks& looks = line.looks;
  return looks.words > 0 && looks.words <= 3 && !looks.sentence && !looks.amount_first &&
         !looks.amount_last && !looks.amount_alone && !looks.bullet && !small_first(line.tidy) &&
         next != nullptr && next->looks.numbered && next->looks.verb_first;
}

// Among lines with bullets one without, short and without an amount, names what follows.
bool LineEvidence::plain_among_bullets(const Line& line) const {
  const Line* next = following(line);
  const bool short_line = line.looks.words > 0 && line.looks.words <= 4 && !line.looks.sentence;
  const bool amount = line.looks.amount_first || line.looks.amount_last || line.looks.amount_alone;
  return short_line && !amount && !line.looks.bullet && next != nullptr && next->looks.bullet &&
         next->looks.amount_first;
}

}  // namespace kitchen
