#include "desk/class_csv.h"

#include <algorithm>
#include <optional>
#include <set>

#include "base/csv.h"
#include "base/folding.h"
#include "base/text.h"

namespace desk {
namespace {

using base::in_quotes;
using base::say;

struct Guess {
  std::string_view heading;  // folded, found anywhere in the folded heading
  std::string_view meaning;
};
// The longest that begins a word wins. Headings of school lists: common practice, no source.
constexpr Guess kGuesses[] = {{"first name", "first name"},
                              {"firstname", "first name"},
                              {"forename", "first name"},
                              {"given name", "first name"},
                              {"preferred", "first name"},
                              {"preferred surname", "surname"},
                              {"preferred last name", "surname"},
                              {"surname", "surname"},
                              {"last name", "surname"},
                              {"lastname", "surname"},
                              {"family name", "surname"},
                              {"full name", "name"},
                              {"fullname", "name"},
                              {"pupil", "name"},
                              {"student", "name"},
                              {"name", "name"},
                              {"reg group", "leave out"},
                              {"class", "class"},
                              {"group", "class"},
                              {"set", "class"},
                              {"form", "leave out"},
                              {"year", "year"},
                              {"year group", "year"},
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

// "Student ID" and "Pupil premium" speak of pupils and hold no name.
constexpr std::string_view kNoNames[] = {"id",    "number", "no",    "upn",  "premium",
                                         "email", "login",  "user",  "code", "count",
                                         "date",  "birth",  "gender"};

/// Where a word of the text begins with `word`, at or after `from`: "fish" in "raw fish", not in
/// "shellfish".
std::size_t word_start(const std::string& text, std::string_view word, std::size_t from = 0) {
  const auto letter = [](char c) {
    return (c >= 'a' && c <= 'z') || static_cast<signed char>(c) < 0;
  };
  for (auto at = text.find(word, from); at != std::string::npos; at = text.find(word, at + 1)) {
    if (at == 0 || !letter(text[at - 1])) return at;
  }
  return std::string::npos;
}

std::string guess(const std::string& heading) {
  const std::string folded = base::replaced(base::replaced(base::folded(heading), '_', ' '), '-',
                                            ' ');
  std::string_view best = "leave out";
  std::size_t length = 0;
  for (const Guess& each : kGuesses) {
    if (each.heading.size() > length && word_start(folded, each.heading) != std::string::npos) {
      best = each.meaning;
      length = each.heading.size();
    }
  }
  if (best == "name") {
    for (const std::string& word : base::words_of(folded)) {
      if (std::find(std::begin(kNoNames), std::end(kNoNames), word) != std::end(kNoNames))
        return "leave out";
    }
  }
  return std::string(best);
}

// Words families and schools write for the fourteen and for diets. Common practice, no source.
struct NeedWord {
  std::string_view word;
  std::string_view means;
  std::string_view also = {};
};
constexpr NeedWord kNeedWords[] = {{"dairy", "milk"},
                                   {"lactose", "milk"},
                                   {"milk", "milk"},
                                   {"egg", "eggs"},
                                   {"peanut", "peanuts"},
                                   {"groundnut", "peanuts"},
                                   {"ground nut", "peanuts"},
                                   {"nut", "nuts"},
                                   {"almond", "nuts"},
                                   {"cashew", "nuts"},
                                   {"hazelnut", "nuts"},
                                   {"walnut", "nuts"},
                                   {"wheat", "gluten"},
                                   {"gluten", "gluten"},
                                   {"coeliac", "coeliac"},
                                   {"shellfish", "crustaceans", "molluscs"},
                                   {"shell fish", "crustaceans", "molluscs"},
                                   {"fish", "fish"},
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

// Said around an allergen without changing what it is.
constexpr std::string_view kAroundNeeds[] = {
    "allergy", "allergies",   "allergic",  "intolerance", "intolerant", "severe", "mild",
    "free",    "sensitivity", "sensitive", "diet",        "products",   "food",   "foods",
    "to",      "the",         "of",        "all",         "tree",       "any",    "no"};

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
      out_.notes.push_back(say("Line ", row.line, ": ", in_quotes(pupil.name),
                               " stands there twice; the second is left out."));
      return;
    }
    if (out_.group.pupils.size() >= 60) {
      out_.notes.push_back(say("Line ", row.line, ": a class has 60 pupils at most; ",
                               in_quotes(pupil.name), " is left out."));
      return;
    }
    needs(pupil, cell(row, "allergies"), row.line);
    needs(pupil, cell(row, "needs"), row.line);
    pace(pupil, cell(row, "pace"), row.line);
    limits(pupil, cell(row, "notes"), row.line);
    group(row);
    out_.group.pupils.push_back(std::move(pupil));
  }

  void needs(Pupil& pupil, const std::string& text, int line) {
    if (says_nothing(base::folded(text))) return;
    std::string list = text;
    for (const char between : {';', '/', '&', '+', '.', '\n'})
      list = base::replaced(list, between, ',');
    for (const std::string& part : base::parts(list, ',')) {
      const std::string folded = base::folded(part);
      if (says_nothing(folded)) continue;
      std::vector<std::string> means;
      const std::string rest = take_needs(pupil, folded, means);
      if (means.empty())
        out_.notes.push_back(say("Line ", line, ", ", pupil.name, ": ", in_quotes(part),
                                 " is not understood. Put it in yourself if it matters."));
      else if (says_more(rest))
        out_.notes.push_back(say("Line ", line, ", ", pupil.name, ": ", in_quotes(part),
                                 " is taken for ", base::joined(means),
                                 ". Look whether it says more."));
    }
  }

  /// What is understood goes to the pupil; gives the text with signs in its place.
  static std::string take_needs(Pupil& pupil, const std::string& folded,
                                std::vector<std::string>& means) {
    std::string rest = folded;
    for (const NeedWord& each : kNeedWords) {
      for (auto at = word_start(rest, each.word); at != std::string::npos;
           at = word_start(rest, each.word, at + 1)) {
        // "coconut" is no nut and "shellfish" no fish: only the beginning of a word counts, and
        // what was understood is taken out.
        for (const std::string_view what : {each.means, each.also}) {
          if (what.empty()) continue;
          add(pupil, what);
          if (std::find(means.begin(), means.end(), what) == means.end()) means.emplace_back(what);
        }
        rest.replace(at, each.word.size(), each.word.size(), '#');
      }
    }
    return rest;
  }

  static bool says_more(const std::string& rest) {
    for (const std::string& word : base::parts(base::replaced(rest, '-', ' '), ' ')) {
      if (word.find('#') != std::string::npos || word == "and" || word == "or") continue;
      const auto letters = base::words_of(word);
      if (letters.empty()) continue;
      if (std::find(std::begin(kAroundNeeds), std::end(kAroundNeeds), letters.front()) ==
          std::end(kAroundNeeds))
        return true;
    }
    return false;
  }

  void pace(Pupil& pupil, const std::string& text, int line) {
    if (text.empty()) return;
    const auto number = base::number_in(text);
    if (number && *number >= 0.5 && *number <= 2)
      pupil.pace = *number;
    else
      out_.notes.push_back(say("Line ", line, ", ", pupil.name, ": the pace ", in_quotes(text),
                               " is not a number from 0.5 to 2."));
  }

  void limits(Pupil& pupil, const std::string& text, int line) {
    const std::string folded = base::folded(text);
    const auto has = [&](std::string_view word) { return folded.find(word) != std::string::npos; };
    if (has("low bench") || has("wheelchair")) pupil.limits.push_back(Limit::kLowBench);
    if (has("hob alone")) pupil.limits.push_back(Limit::kNotAtHobAlone);
    if (has("left-handed") || has("left handed") || has("left hand"))
      pupil.limits.push_back(Limit::kLeftHanded);
    if (has("near the teacher") || has("near front")) pupil.limits.push_back(Limit::kNearTeacher);
    if (pupil.limits.empty() && !says_nothing(folded))
      out_.notes.push_back(say("Line ", line, ", ", pupil.name, ": the note ", in_quotes(text),
                               " is not kept; it names no limit that is known."));
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
