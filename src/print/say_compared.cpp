#include "print/say_compared.h"

#include <cmath>

#include <fmt/format.h>

#include "kitchen/words.h"
#include "print/paper.h"
#include "print/say_label.h"
#include "print/words.h"

namespace print {
namespace {

using namespace nutrition;

std::string allergen_names(const kitchen::Allergens& allergens) {
  std::vector<std::string> names;
  for (const kitchen::Allergen each : allergens) names.emplace_back(kitchen::word(each));
  return listed(names);
}

void say_figures(std::string& out, const Comparison& compared) {
  for (const ComparedLine& line : compared.lines) {
    out += fmt::format("  {:<22}", line.name);
    for (const Figure& figure : line.portion)
      out += fmt::format("{:<24}", label_number(figure, line.rounding) + " " + line.unit);
    out.erase(out.find_last_not_of(' ') + 1);
    out += "\n";
  }
}

void say_colours(std::string& out, const Comparison& compared) {
  for (std::size_t i = 0; i < kColoured.size(); ++i) {
    out += fmt::format("  {:<22}", fmt::format("{} is", name_of(kColoured[i])));
    for (const auto& of_version : compared.colours) {
      const auto& colour = of_version[i].colour;
      out += fmt::format(
          "{:<24}",
          colour ? fmt::format("{} ({})", level_of(*colour), word_for(*colour)) : "not sure");
    }
    out.erase(out.find_last_not_of(' ') + 1);
    out += "\n";
  }
}

void say_allergens(std::string& out, const std::vector<Version>& versions,
                   const Comparison& compared) {
  for (std::size_t v = 0; v < versions.size(); ++v) {
    const DishAllergens& allergens = versions[v].allergens;
    out += fmt::format("  {} contains {}", static_cast<char>('A' + v),
                       allergens.contains.empty() ? "none of the fourteen by the table"
                                                  : allergen_names(allergens.contains));
    if (!allergens.check_for.empty())
      out += "; check labels for " + allergen_names(allergens.check_for);
    if (!allergens.not_known.empty()) out += "; not known: " + listed(allergens.not_known);
    if (v > 0 && !compared.gained[v].empty()) out += "; new: " + allergen_names(compared.gained[v]);
    if (v > 0 && !compared.lost[v].empty())
      out += "; no longer: " + allergen_names(compared.lost[v]);
    out += ".\n";
  }
}

}  // namespace

std::string say_compared(const std::vector<Version>& versions, bool drink) {
  const Comparison compared = compare(versions, drink);
  std::string out;
  for (std::size_t v = 0; v < versions.size(); ++v)
    out += fmt::format("{}  {}\n", static_cast<char>('A' + v), tame(versions[v].name));
  out += fmt::format("\n  {:<22}", "A portion holds");
  for (std::size_t v = 0; v < versions.size(); ++v)
    out += fmt::format("{:<24}", static_cast<char>('A' + v));
  out.erase(out.find_last_not_of(' ') + 1);
  out += "\n";
  say_figures(out, compared);
  say_colours(out, compared);
  const auto row = [&](std::string_view name, const auto& text_of) {
    out += fmt::format("  {:<22}", name);
    for (const Version& version : versions) out += fmt::format("{:<24}", text_of(version));
    out.erase(out.find_last_not_of(' ') + 1);
    out += "\n";
  };
  row("weight",
      [](const Version& v) { return fmt::format("{:.0f} g", v.nutrients.portion_grams()); });
  row("five a day", [](const Version& v) {
    return fmt::format("{}{:.1f}", v.five_a_day.unknown.empty() ? "" : "at least ",
                       std::floor(v.five_a_day.portions() * 10 + 1e-9) / 10);
  });
  row("figures known",
      [](const Version& v) { return fmt::format("{:.0f} %", 100 * v.nutrients.coverage); });
  const auto any = [&](auto member) {
    for (const Version& version : versions) {
      if (version.*member) return true;
    }
    return false;
  };
  if (any(&Version::minutes))
    row("minutes", [](const Version& v) {
      return v.minutes ? fmt::format("{:.0f}", *v.minutes) : "not known";
    });
  if (any(&Version::pence))
    row("pence",
        [](const Version& v) { return v.pence ? fmt::format("{:.0f}", *v.pence) : "not known"; });
  out += "\n";
  say_allergens(out, versions, compared);
  return out + "\n" + nutrition_cautions();
}

}  // namespace print
