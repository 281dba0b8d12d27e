#include "print/say_draft.h"

#include <algorithm>
#include <utility>

#include "base/text.h"
#include "kitchen/words.h"
#include "print/paper.h"

namespace print {
namespace {

using base::say;
using kitchen::DishDraft;
using kitchen::IngredientDraft;
using kitchen::StepDraft;

constexpr int kLead = 9;  // letters of the column that says how sure

void add(std::string& to, const std::string& text, std::string_view between = ", ") {
  if (text.empty()) return;
  if (!to.empty()) to += between;
  to += text;
}

std::string ingredient_words(const IngredientDraft& each, const kitchen::Foods& foods) {
  std::string text = kitchen::quantity_text(each.quantity.value);
  const kitchen::Food* food = foods.find(each.food.value);
  add(text,
      food != nullptr ? food->name
                      : say(base::in_quotes(each.name), " (no such food in the table)"),
      " · ");
  if (!each.preparation.empty()) add(text, each.preparation, " · ");
  if (!each.quality.empty()) add(text, say("(", each.quality, ")"), " ");
  if (!each.also.empty()) add(text, say("also written: ", each.also), "; ");
  for (const std::string& other : each.or_instead) add(text, say("or ", other), "; ");
  if (each.optional) add(text, "may be left out", "; ");
  if (each.garnish) add(text, "to serve or finish with", "; ");
  if (each.confidence < 0.85) {
    std::vector<std::string> names;
    for (const std::string& key : each.other_foods) {
      if (const kitchen::Food* other = foods.find(key))
        names.push_back(base::in_quotes(other->name));
    }
    if (!names.empty()) add(text, say("perhaps ", base::joined(names, "or")), "; ");
    add(text, say("from ", base::in_quotes(each.line)), "; ");
  }
  return text;
}

std::string_view place_word(kitchen::Where where) {
  switch (where) {
    case kitchen::Where::kRing:
      return "ring";
    case kitchen::Where::kOven:
      return "oven";
    case kitchen::Where::kGrill:
      return "grill";
    case kitchen::Where::kMicrowave:
      return "microwave";
    case kitchen::Where::kKettle:
      return "kettle";
    case kitchen::Where::kFridge:
      return "fridge";
    case kitchen::Where::kFreezer:
      return "freezer";
  }
  return "";
}

std::string minutes_words(const StepDraft& step) {
  const std::string_view about = step.least.confidence < 1 ? "about " : "";
  if (step.most.value == step.least.value) return say(about, base::minutes_text(step.least.value));
  return say(about, base::minutes_number(step.least.value), " to ",
             base::minutes_text(step.most.value));
}

std::string facts_of(const StepDraft& step) {
  std::string facts = minutes_words(step);
  add(facts, std::string(kitchen::word_for(kitchen::kAttentionWords, step.attention.value)));
  if (step.heat) {
    const kitchen::HeatDraft& heat = step.heat->value;
    std::string where(place_word(heat.where));
    if (heat.celsius) where += say(" ", *heat.celsius, " °C");
    add(facts, where);
  }
  for (const auto& hazard : step.hazards) add(facts, std::string(kitchen::word(hazard.value)));
  return facts;
}

// Lines under the headings of the text.
template <class Lines, class Words>
void list(Paper& paper, const Lines& lines, Words words) {
  std::string group;
  for (const auto& each : lines) {
    if (each.group != group) {
      group = each.group;
      if (!group.empty()) paper.subheading(tame(group));
    }
    const auto [lead, text] = words(each);
    paper.entry(lead, tame(text), 2, kLead);
  }
}

}  // namespace

std::string_view sureness(double confidence) {
  constexpr double kSure = 0.85, kLikely = 0.6;
  if (confidence >= kSure) return "sure";
  return confidence >= kLikely ? "likely" : "guess";
}

double step_confidence(const StepDraft& step) { return step.attention.confidence; }

std::string step_understood(const DishDraft& draft, std::size_t step) {
  const StepDraft& s = draft.method[step];
  std::vector<std::string> before;
  for (const int f : s.follows) before.push_back(draft.method[static_cast<std::size_t>(f)].brief);
  return say(s.brief, ", ", facts_of(s), before.empty() ? "" : "; after ", base::joined(before));
}

std::string say_draft(const DishDraft& draft, const kitchen::Foods& foods, int width) {
  Paper paper(width, false);
  paper.heading(tame(draft.name.value));
  paper.entry(sureness(draft.portions.confidence),
              base::counted(draft.portions.value, "portion", "portions"), 2, kLead);
  if (!draft.ingredients.empty()) {
    paper.space();
    paper.heading("Ingredients");
    list(paper, draft.ingredients, [&](const IngredientDraft& each) {
      return std::pair{sureness(each.confidence), ingredient_words(each, foods)};
    });
  }
  if (!draft.method.empty()) {
    paper.space();
    paper.heading("Method");
    list(paper, draft.method, [&](const StepDraft& each) {
      return std::pair{sureness(step_confidence(each)), say(each.says, " [", facts_of(each), "]")};
    });
  }
  const auto sentences = [&](std::string_view heading, const std::vector<std::string>& all) {
    if (all.empty()) return;
    paper.space();
    paper.heading(heading);
    for (const std::string& each : all) paper.entry("-", tame(each), 2, 2);
  };
  std::vector<std::string> questions, unread;
  for (const kitchen::Question& each : draft.questions)
    questions.push_back(each.answers.empty()
                            ? each.asks
                            : say(each.asks, " (", base::joined(each.answers, "or"), ")"));
  for (const auto& each : draft.unread)
    unread.push_back(each.line_number > 0 ? say("line ", each.line_number, ": ", each.line)
                                          : each.line);
  sentences("To answer", questions);
  sentences("Assumed", draft.assumed);
  sentences("Not understood, kept", unread);
  paper.space();
  paper.paragraph(
      "Look it over before you use it. Allergens come from the packets' labels and your school's "
      "own records, never from this reading.");
  return paper.text();
}

}  // namespace print
