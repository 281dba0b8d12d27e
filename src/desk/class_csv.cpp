#include "desk/class_csv.h"

#include <algorithm>
#include <optional>
#include <set>

#include "base/csv.h"
#include "base/folding.h"
#include "base/text.h"

namespace desk {
namespace {

using base::quoted;
using base::say;

struct Guess {
  std::string_view heading;  // folded, found anywhere in the folded heading
  std::string_view meaning;
};
// The longest fitting one wins. Headings of school lists: common practice, no source.
constexpr Guess kGuesses[] = {{"first name", "first name"},
                              {"forename", "first name"},
                              {"given name", "first name"},
                              {"preferred", "first name"},
                              {"surname", "surname"},
                              {"last name", "surname"},
                              {"family name", "surname"},
                              {"full name", "name"},
                              {"pupil", "name"},
                              {"student", "name"},
                              {"name", "name"},
                              {"reg group", "leave out"},
                              {"class", "class"},
                              {"group", "class"},
                              {"set", "class"},
                              {"form", "leave out"},
                              {"year", "year"},
                              {"allerg", "allergies"},
                              {"diet", "needs"},
                              {"medical", "allergies"},
                              {"need", "needs"},
                              {"pace", "pace"},
                              {"speed", "pace"},
                              {"note", "notes"},
                              {"limit", "notes"},
                              {"support", "notes"},
                              {"comment", "notes"}};
constexpr std::string_view kMeanings[] = {"name",  "first name", "surname", "class",
                                          "year",  "allergies",  "needs",   "pace",
                                          "notes", "leave out"};

std::string guess(const std::string& heading) {
  const std::string folded = base::folded(heading);
  std::string_view best = "leave out";
  std::size_t length = 0;
  for (const Guess& each : kGuesses) {
    if (each.heading.size() > length && folded.find(each.heading) != std::string::npos) {
      best = each.meaning;
      length = each.heading.size();
    }
  }
  return std::string(best);
}

// Words families and schools write for the fourteen and for diets. Common practice, no source.
struct NeedWord {
  std::string_view word;
  std::string_view means;
};
constexpr NeedWord kNeedWords[] = {{"dairy", "milk"},
                                   {"lactose", "milk"},
                                   {"milk", "milk"},
                                   {"egg", "eggs"},
                                   {"peanut", "peanuts"},
                                   {"nut", "nuts"},
                                   {"almond", "nuts"},
                                   {"cashew", "nuts"},
                                   {"hazelnut", "nuts"},
                                   {"walnut", "nuts"},
                                   {"wheat", "gluten"},
                                   {"gluten", "gluten"},
                                   {"coeliac", "coeliac"},
                                   {"fish", "fish"},
                                   {"shellfish", "crustaceans"},
                                   {"prawn", "crustaceans"},
                                   {"crustacean", "crustaceans"},
                                   {"mollusc", "molluscs"},
                                   {"soya", "soya"},
                                   {"soy", "soya"},
                                   {"sesame", "sesame"},
                                   {"celery", "celery"},
                                   {"mustard", "mustard"},
                                   {"lupin", "lupin"},
                                   {"sulphite", "sulphites"},
                                   {"sulfite", "sulphites"},
                                   {"vegan", "vegan"},
                                   {"vegetarian", "vegetarian"},
                                   {"halal", "halal"},
                                   {"kosher", "kosher-style"},
                                   {"no pork", "no pork"},
                                   {"pork", "no pork"},
                                   {"no beef", "no beef"},
                                   {"beef", "no beef"},
                                   {"gelatine", "no gelatine"}};
constexpr std::string_view kNothing[] = {"", "-", "none", "no", "n/a", "na", "nil", "none known"};

bool says_nothing(const std::string& folded) {
  return std::find(std::begin(kNothing), std::end(kNothing), folded) != std::end(kNothing);
}

void add(Pupil& pupil, std::string_view word) {
  safety::Need need;
  if (const auto allergen = kitchen::value_of(kitchen::kAllergenWords, word))
    need.what = *allergen;
  else if (const auto diet = kitchen::value_of(safety::kDietWords, word))
    need.what = *diet;
  else
    return;
  const bool there = std::any_of(pupil.needs.begin(), pupil.needs.end(),
                                 [&](const safety::Need& n) { return n.what == need.what; });
  if (!there) pupil.needs.push_back(need);
}

class CsvReader {
 public:
  CsvReader(const base::Table& table, const std::map<std::string, std::string>& said)
      : table_(table) {
    for (const std::string& heading : table.columns) {
      const auto told = said.find(heading);
      const bool known = told != said.end() && std::find(std::begin(kMeanings), std::end(kMeanings),
                                                         told->second) != std::end(kMeanings);
      out_.columns.push_back({heading, known ? told->second : guess(heading)});
    }
  }

  base::Result<ClassPreview> read(const std::string& file) {
    if (!column("name") && !column("first name") && !column("surname")) {
      return base::Problem{
          "class.csv.no_name", file, "",
          say("None of the columns looks like pupils' names: ", base::joined(table_.columns), "."),
          "Say which column holds the name, or give the file a heading line."};
    }
    for (const base::Table::Row& row : table_.rows) pupil(row);
    if (out_.group.pupils.empty())
      return base::Problem{"class.csv.no_pupils", file, "", "There is no pupil in this list.",
                           "Check that the file has a line for each pupil under its heading line."};
    if (out_.group.name.empty()) out_.group.name = "New class";
    return std::move(out_);
  }

 private:
  const base::Table& table_;
  ClassPreview out_;

  std::optional<std::size_t> column(std::string_view meaning) const {
    for (std::size_t i = 0; i < out_.columns.size(); ++i) {
      if (out_.columns[i].meaning == meaning) return i;
    }
    return std::nullopt;
  }
  std::string cell(const base::Table::Row& row, std::string_view meaning) const {
    const auto at = column(meaning);
    return at ? row.cells[*at] : std::string();
  }

  void pupil(const base::Table::Row& row) {
    Pupil pupil;
    pupil.name = cell(row, "name");
    // "Khan, Aisha" as registers print it.
    if (const auto comma = pupil.name.find(','); comma != std::string::npos)
      pupil.name = base::trimmed(pupil.name.substr(comma + 1)) + " " +
                   base::trimmed(pupil.name.substr(0, comma));
    if (pupil.name.empty()) {
      const std::string surname = cell(row, "surname");
      pupil.name = base::trimmed(cell(row, "first name") + " " + surname);
    }
    if (pupil.name.empty()) {
      out_.notes.push_back(say("Line ", row.line, " has no name and is left out."));
      return;
    }
    pupil.name = base::first_letters(pupil.name, 60);
    const auto same = [&](const Pupil& other) { return other.name == pupil.name; };
    if (std::any_of(out_.group.pupils.begin(), out_.group.pupils.end(), same)) {
      out_.notes.push_back(say("Line ", row.line, ": ", quoted(pupil.name),
                               " stands there twice; the second is left out."));
      return;
    }
    if (out_.group.pupils.size() >= 60) {
      out_.notes.push_back(say("Line ", row.line, ": a class has 60 pupils at most; ",
                               quoted(pupil.name), " is left out."));
      return;
    }
    needs(pupil, cell(row, "allergies"), row.line);
    needs(pupil, cell(row, "needs"), row.line);
    pace(pupil, cell(row, "pace"), row.line);
    limits(pupil, cell(row, "notes"));
    group(row);
    out_.group.pupils.push_back(std::move(pupil));
  }

  void needs(Pupil& pupil, const std::string& text, int line) {
    for (const std::string& part :
         base::parts(base::replaced(base::replaced(text, ';', ','), '/', ','), ',')) {
      const std::string folded = base::folded(part);
      if (says_nothing(folded)) continue;
      bool found = false;
      std::string rest = folded;
      for (const NeedWord& each : kNeedWords) {
        const auto at = rest.find(each.word);
        // "peanut" is not a tree nut, "shellfish" no fish: what was understood is taken out first.
        if (at == std::string::npos || (at > 0 && rest[at - 1] != ' ')) continue;
        add(pupil, each.means);
        rest.replace(at, each.word.size(), each.word.size(), '#');
        found = true;
      }
      if (!found)
        out_.notes.push_back(say("Line ", line, ", ", pupil.name, ": ", quoted(part),
                                 " is not understood. Put it in yourself if it matters."));
    }
  }

  void pace(Pupil& pupil, const std::string& text, int line) {
    if (text.empty()) return;
    const auto number = base::number_in(text);
    if (number && *number >= 0.5 && *number <= 2)
      pupil.pace = *number;
    else
      out_.notes.push_back(say("Line ", line, ", ", pupil.name, ": the pace ", quoted(text),
                               " is not a number from 0.5 to 2."));
  }

  static void limits(Pupil& pupil, const std::string& text) {
    const std::string folded = base::folded(text);
    const auto has = [&](std::string_view word) { return folded.find(word) != std::string::npos; };
    if (has("low bench") || has("wheelchair")) pupil.limits.push_back(Limit::kLowBench);
    if (has("hob alone")) pupil.limits.push_back(Limit::kNotAtHobAlone);
    if (has("left-handed") || has("left handed") || has("left hand"))
      pupil.limits.push_back(Limit::kLeftHanded);
    if (has("near the teacher") || has("near front")) pupil.limits.push_back(Limit::kNearTeacher);
  }

  void group(const base::Table::Row& row) {
    const std::string name = cell(row, "class");
    if (!name.empty() && out_.group.name.empty()) out_.group.name = base::first_letters(name, 40);
    std::string digits;
    for (const char c : cell(row, "year") + " " + name) {
      if (c >= '0' && c <= '9')
        digits += c;
      else if (!digits.empty())
        break;
    }
    if (const auto year = base::number_in(digits); year && *year >= 1 && *year <= 13)
      out_.group.year = static_cast<int>(*year);
  }
};

}  // namespace

base::Result<ClassPreview> class_from_csv(std::string_view bytes, const std::string& file_name,
                                          const std::map<std::string, std::string>& said) {
  const auto table = base::read_csv(bytes, file_name);
  if (!table) return table.problems();
  return CsvReader(table.value(), said).read(file_name);
}

}  // namespace desk
