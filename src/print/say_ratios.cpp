#include "print/say_ratios.h"

#include <fmt/format.h>

#include "base/text.h"

namespace print {
namespace {

using kitchen::JudgedRatio;
using kitchen::Outcome;
using kitchen::Standing;

std::string_view standing_words(Standing standing) {
  switch (standing) {
    case Standing::kWithin:
      return "within";
    case Standing::kNearEdge:
      return "near the edge";
    case Standing::kBelow:
      return "BELOW";
    case Standing::kAbove:
      return "ABOVE";
    case Standing::kUnknown:
      return "not known";
  }
  return "";
}

std::string_view outcome_words(Outcome outcome) {
  switch (outcome) {
    case Outcome::kWorks:
      return "works";
    case Outcome::kWorksBut:
      return "works, but";
    case Outcome::kFails:
      return "will fail";
    case Outcome::kCannotTell:
      return "cannot be told yet";
  }
  return "";
}

std::string parts_text(const char* title, const std::vector<kitchen::CountedPart>& parts,
                       const kitchen::Side& side) {
  std::string out;
  for (const kitchen::CountedPart& part : parts) {
    out += fmt::format("        {} {} {}: {}{}\n", title, base::decimal_text(part.amount),
                       kitchen::counted_in_word(side.in), part.how, part.sure ? "" : " (not sure)");
  }
  return out;
}

std::string details_text(const JudgedRatio& ratio) {
  std::string out = parts_text("counted", ratio.numerator, ratio.row.numerator) +
                    parts_text("against", ratio.denominator, ratio.row.denominator);
  out += fmt::format("        {}: usual {} {}; {} ({})\n", ratio.row.id,
                     base::decimal_text(ratio.row.value), ratio.row.unit, ratio.row.source,
                     ratio.row.confidence == "memory" ? "from memory" : ratio.row.confidence);
  if (!ratio.row.note.empty()) out += fmt::format("        {}\n", ratio.row.note);
  return out;
}

std::string ratio_text(const JudgedRatio& ratio, bool details) {
  const std::string band = fmt::format("{} to {}", base::decimal_text(ratio.row.least),
                                       base::decimal_text(ratio.row.most));
  std::string out;
  if (ratio.standing == Standing::kUnknown) {
    out = fmt::format("    {}: not known: {} (band {})\n", ratio.row.quantity, ratio.why_unknown,
                      band);
  } else {
    out = fmt::format("    {}: {}, {} {}", ratio.row.quantity, base::decimal_text(*ratio.value),
                      standing_words(ratio.standing), band);
    out += ratio.goes_wrong.empty() ? "\n" : fmt::format(": {}\n", ratio.goes_wrong);
  }
  return details ? out + details_text(ratio) : out;
}

std::string names(const kitchen::Dish& dish, const std::vector<int>& ingredients) {
  std::vector<std::string> out;
  for (const int i : ingredients) out.push_back(dish.ingredients[static_cast<std::size_t>(i)].name);
  return base::joined(out);
}

std::string note_text(const kitchen::PreparationNote& note) {
  return fmt::format("    {}: {} {} ({} to {}); less: {}; more: {}\n", note.quantity,
                     base::decimal_text(note.value), note.unit, base::decimal_text(note.least),
                     base::decimal_text(note.most), note.below, note.above);
}

}  // namespace

std::string say_ratios(const kitchen::Dish& dish,
                       const std::vector<kitchen::JudgedPreparation>& prepared, bool details) {
  if (prepared.empty()) {
    return fmt::format(
        "{}: no base preparation with working ratios was recognised; its amounts are free.\n",
        dish.name);
  }
  std::string out = fmt::format("{}\n", dish.name);
  for (const kitchen::JudgedPreparation& one : prepared) {
    out += fmt::format("\n  {}: {}\n", one.found.name, names(dish, one.found.ingredients));
    if (details) {
      out += fmt::format("    recognised (about {} in 10 sure): {}\n",
                         static_cast<int>(one.found.confidence * 10 + 0.5),
                         base::joined(one.found.why));
    }
    if (one.ratios.empty()) out += "    no working ratio is known for it\n";
    for (const JudgedRatio& ratio : one.ratios) out += ratio_text(ratio, details);
    if (details) {
      for (const kitchen::PreparationNote& note : one.notes) out += note_text(note);
    }
  }
  return out +
         "\nBands are common practice, not law: a figure just outside may suit your oven and "
         "flour.\n";
}

std::string say_change(const kitchen::ChangeVerdict& verdict, const std::string& words) {
  std::string out = fmt::format("{}: {}\n", words, outcome_words(verdict.outcome));
  for (const kitchen::Reason& reason : verdict.reasons) {
    const std::string where = reason.preparation.empty() ? "" : reason.preparation + ": ";
    out += fmt::format("  {}{}\n", where, reason.says);
  }
  for (const std::string& caution : verdict.cautions)
    out += fmt::format("  Caution: {}\n", caution);
  return out;
}

}  // namespace print
