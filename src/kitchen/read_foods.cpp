// The table of foods from CSV: columns by name in any order, missing figures kept missing.
#include <algorithm>
#include <map>
#include <set>

#include "base/csv.h"
#include "base/folding.h"
#include "base/text.h"
#include "kitchen/foods.h"
#include "kitchen/words.h"

namespace kitchen {

using base::in_quotes;
using base::say;

namespace {

constexpr Word<Match> kMatchWords[] = {{"exact", Match::kExact}, {"near", Match::kNear},
                                       {"poor", Match::kPoor},   {"none", Match::kNone},
                                       {"label", Match::kLabel}, {"", Match::kLabel}};
constexpr Word<Known> kKnownWords[] = {{"no", Known::kNo},
                                       {"yes", Known::kYes},
                                       {"check label", Known::kCheckLabel},
                                       {"", Known::kCheckLabel}};
constexpr Word<FiveADay> kFiveADayWords[] = {
    {"no", FiveADay::kNo},       {"fresh", FiveADay::kFresh},   {"dried", FiveADay::kDried},
    {"juice", FiveADay::kJuice}, {"pulses", FiveADay::kPulses}, {"", FiveADay::kNo}};
constexpr Word<Storage> kStorageWords[] = {
    {"ambient", Storage::kAmbient},
    {"ambient; chilled after opening", Storage::kAmbientThenChilled},
    {"chilled", Storage::kChilled},
    {"frozen", Storage::kFrozen},
    {"", Storage::kAmbient}};

class FoodReader {
 public:
  FoodReader(const base::Table& table, std::string file) : table_(table), file_(std::move(file)) {}

  base::Result<Foods> read() {
    for (const std::string_view needed : {"key", "name"}) {
      if (!table_.column(needed)) {
        problems_.push_back({"foods.column", file_, "line 1",
                             say("The table of foods has no column ", in_quotes(needed), "."),
                             "Add it; docs/files.md lists the columns."});
      }
    }
    for (std::size_t i = 0; i < table_.columns.size(); ++i) {
      const std::string name = base::folded(table_.columns[i]);
      if (!name.empty()) columns_.emplace(name, i);
    }
    if (!problems_.empty()) return problems_;
    std::vector<Food> foods;
    for (const base::Table::Row& row : table_.rows) {
      row_ = &row;
      foods.push_back(food());
      if (problems_.size() > kEnough) break;
    }
    if (!problems_.empty()) return problems_;
    return Foods(std::move(foods));
  }

 private:
  static constexpr std::size_t kEnough = 50;

  const std::string& cell(std::string_view column) const {
    static const std::string kNothing;
    const auto at = columns_.find(column);
    return at == columns_.end() ? kNothing : row_->cells[at->second];
  }

  void wrong(std::string code, std::string_view column, std::string message, std::string remedy) {
    problems_.push_back({std::move(code), file_,
                         say("line ", row_->line, column.empty() ? "" : ", ", column),
                         std::move(message), std::move(remedy)});
  }

  std::optional<double> figure(std::string_view column, double least, double most) {
    const std::string& text = cell(column);
    if (text.empty()) return std::nullopt;
    std::optional<double> value = base::number_in(text);
    // A school's spreadsheet may write a decimal comma.
    if (!value && std::count(text.begin(), text.end(), ',') == 1)
      value = base::number_in(base::replaced(text, ',', '.'));
    if (value && *value >= least && *value <= most) return value;
    wrong("foods.value", column,
          say(in_quotes(cell("name")), ": ", column, " is ", in_quotes(text),
              "; it must be a number from ", base::number_text(least), " to ",
              base::number_text(most), "."),
          "Correct it, or leave the cell empty when it is not known.");
    return std::nullopt;
  }

  template <class T, std::size_t N>
  T word_in(std::string_view column, const Word<T> (&words)[N]) {
    const std::string text = base::folded(cell(column));
    if (const auto value = value_of(words, text)) return *value;
    std::vector<std::string> known = spellings(words);
    std::erase(known, "");
    wrong("foods.value", column,
          say(in_quotes(cell("name")), ": ", column, " is ", in_quotes(text),
              ", which is not known."),
          say("Write ", base::joined(known, "or"), "."));
    return T{};
  }

  Allergens allergens_in(std::string_view column) {
    Allergens out;
    for (const std::string& text : base::parts(base::replaced(cell(column), ';', ' '), ' ')) {
      const auto value = value_of(kAllergenWords, base::lower(text));
      if (value) {
        out.insert(*value);
      } else {
        wrong("foods.value", column,
              say(in_quotes(cell("name")), ": ", in_quotes(text),
                  " is not one of the fourteen allergens."),
              say("Write ", base::joined(spellings(kAllergenWords), "or"), "."));
      }
    }
    return out;
  }

  std::vector<PieceWeight> pieces() {
    std::map<std::string, std::string> sources;
    const std::string& all = cell("units_source");
    for (const std::string& part : base::parts(all, ';')) {
      const auto colon = part.find(": ");
      if (colon != std::string::npos) sources[part.substr(0, colon)] = part.substr(colon + 2);
    }
    std::vector<PieceWeight> out;
    for (const std::string& part : base::parts(cell("units"), ';')) {
      const auto equals = part.find('=');
      const auto grams = equals == std::string::npos ? std::nullopt
                                                     : base::number_in(part.substr(equals + 1));
      if (!grams || *grams <= 0 || *grams > 20000) {
        wrong("foods.value", "units",
              say(in_quotes(cell("name")), ": the piece weight ", in_quotes(part),
                  " cannot be read."),
              "Write a word, an equals sign and grams: clove=3.");
        continue;
      }
      const std::string piece = base::folded(part.substr(0, equals));
      const auto source = sources.find(piece);
      out.push_back({piece, *grams, source == sources.end() ? all : source->second});
    }
    return out;
  }

  Food food() {
    Food f;
    f.key = cell("key");
    f.name = cell("name");
    if (f.key.empty() || f.name.empty()) {
      wrong("foods.value", "key", "A food has no key or no name.",
            "Give it both: the key in small letters with underscores, the name as you say it.");
    }
    if (!keys_.insert(f.key).second) {
      wrong("foods.key_twice", "key", say("The key ", in_quotes(f.key), " stands twice."),
            "Give one of the two foods another key.");
    }
    f.other_names = base::parts(cell("other_names"), ';');
    f.category = cell("category");
    f.match = word_in("match", kMatchWords);
    f.source = cell("source");
    if (!cell("source_code").empty())
      f.source += say(" ", cell("source_code"), ": ", cell("source_description"));
    for (const NutrientName& n : kNutrientNames) {
      const double most = n.unit == NutrientUnit::kGrams        ? 105  // rounding of the source
                          : n.unit == NutrientUnit::kKcal       ? 950
                          : n.unit == NutrientUnit::kMilligrams ? 60000
                                                                : 1e6;
      f.nutrients.set(n.nutrient, figure(n.column, 0, most));
    }
    f.nitrogen_factor = figure("nitrogen_factor", 4, 8);
    if (const auto percent = figure("edible_percent", 1, 100)) f.edible = *percent / 100;
    f.edible_source = cell("edible_source");
    f.density = figure("density_g_per_ml", 0.02, 3);
    f.density_source = cell("density_source");
    f.pieces = pieces();
    f.contains = allergens_in("contains");
    f.check_for = allergens_in("check_label_for");
    f.vegetarian = word_in("vegetarian", kKnownWords);
    f.vegan = word_in("vegan", kKnownWords);
    f.pork = word_in("pork", kKnownWords);
    f.beef = word_in("beef", kKnownWords);
    f.alcohol = word_in("alcohol", kKnownWords);
    f.gelatine = word_in("gelatine", kKnownWords);
    f.five_a_day = word_in("five_a_day", kFiveADayWords);
    f.storage = word_in("storage", kStorageWords);
    f.note = cell("note");
    check_names(f);
    return f;
  }

  void check_names(const Food& f) {
    std::set<std::string> own;
    own.insert(base::folded(f.name));
    for (const std::string& other : f.other_names) own.insert(base::folded(other));
    for (const std::string& name : own) {
      const auto [at, fresh] = names_.emplace(name, f.name);
      if (fresh) continue;
      wrong("foods.name_twice", "other_names",
            say("The name ", in_quotes(name), " stands at ", in_quotes(at->second), " and at ",
                in_quotes(f.name), "."),
            "Leave it with one of the two.");
    }
  }

  const base::Table& table_;
  std::string file_;
  std::map<std::string, std::size_t, std::less<>> columns_;
  const base::Table::Row* row_ = nullptr;
  std::set<std::string> keys_;
  std::map<std::string, std::string> names_;
  base::Problems problems_;
};

}  // namespace

base::Result<Foods> read_foods(std::string_view csv, std::string file_name) {
  const auto table = base::read_csv(csv, file_name);
  if (!table) return table.problems();
  return FoodReader(table.value(), std::move(file_name)).read();
}

}  // namespace kitchen
