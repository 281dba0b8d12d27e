#include "safety/needs.h"

#include <algorithm>
#include <map>

#include "base/folding.h"
#include "safety/rows.h"

namespace safety {
namespace {

using NeedsOfCook = std::map<int, std::vector<Need>>;

void add(std::vector<Need>& needs, const Need& need) {
  const auto same = std::find_if(needs.begin(), needs.end(),
                                 [&](const Need& n) { return n.what == need.what; });
  if (same == needs.end()) {
    needs.push_back(need);
  } else {
    same->reach = std::max(same->reach, need.reach);
  }
}

NeedsOfCook own_needs(const kitchen::Lesson& lesson) {
  NeedsOfCook out;
  for (std::size_t c = 0; c < lesson.cooks.size(); ++c) {
    for (const kitchen::Allergen a : lesson.cooks[c].avoids)
      add(out[static_cast<int>(c)], {a, Reach::kEat});
  }
  return out;
}

LessonNeeds listed(const NeedsOfCook& needs) {
  LessonNeeds out;
  for (const auto& [cook, all] : needs) out.push_back({cook, all});
  return out;
}

int cook_named(Rows& rows, const kitchen::Lesson& lesson) {
  const std::string asked = base::folded(rows.needed("cook"));
  std::vector<std::string> names;
  for (std::size_t c = 0; c < lesson.cooks.size(); ++c) {
    if (base::folded(lesson.cooks[c].name) == asked) return static_cast<int>(c);
    names.push_back(lesson.cooks[c].name);
  }
  if (asked.empty()) return -1;
  const auto near = base::nearest(rows.cell("cook"), names);
  rows.wrong("cook", "cook",
             base::say("No cook of the lesson is called ", base::in_quotes(rows.cell("cook")), "."),
             near ? base::say("Did you mean ", base::in_quotes(*near), "?")
                  : "Write the name as the lesson does.");
  return -1;
}

Need need_in(Rows& rows) {
  const std::string text = base::lower(rows.cell("need"));
  Need need;
  if (const auto allergen = kitchen::value_of(kitchen::kAllergenWords, text)) {
    need.what = *allergen;
  } else if (const auto diet = kitchen::value_of(kDietWords, text)) {
    need.what = *diet;
  } else {
    std::vector<std::string> known = kitchen::spellings(kitchen::kAllergenWords);
    for (std::string& each : kitchen::spellings(kDietWords)) known.push_back(std::move(each));
    rows.unknown_word("need", known);
  }
  need.reach = rows.word("reach", kReachWords);
  return need;
}

}  // namespace

bool of_health(const Need& need) {
  const Diet* diet = std::get_if<Diet>(&need.what);
  return diet == nullptr || *diet == Diet::kCoeliac;
}

std::string_view word(const Need& need) {
  if (const auto* allergen = std::get_if<kitchen::Allergen>(&need.what))
    return kitchen::word(*allergen);
  return kitchen::word_for(kDietWords, std::get<Diet>(need.what));
}

LessonNeeds needs_in(const kitchen::Lesson& lesson) { return listed(own_needs(lesson)); }

base::Result<LessonNeeds> read_needs(std::string_view csv, const std::string& file_name,
                                     const kitchen::Lesson& lesson) {
  Rows rows(base::read_csv(csv, file_name), file_name, "needs");
  if (!rows.has_columns({"cook", "need", "reach"})) return rows.problems();
  NeedsOfCook out = own_needs(lesson);
  while (rows.next()) {
    const std::string of = base::folded(rows.cell("lesson"));
    if (!of.empty() && of != base::folded(lesson.title)) continue;
    const int cook = cook_named(rows, lesson);
    const Need need = need_in(rows);
    if (cook != -1) add(out[cook], need);
  }
  if (!rows.problems().empty()) return rows.problems();
  return listed(out);
}

}  // namespace safety
