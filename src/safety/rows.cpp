#include "safety/rows.h"

namespace safety {

using base::say;

Rows::Rows(base::Result<base::Table> table, std::string file, std::string kind)
    : file_(std::move(file)), kind_(std::move(kind)) {
  if (table) {
    table_ = std::move(table).value();
  } else {
    problems_ = table.problems();
  }
}

bool Rows::has_columns(const std::vector<std::string>& needed) {
  if (!problems_.empty()) return false;
  for (const std::string& name : needed) {
    if (table_.column(name)) continue;
    problems_.push_back({kind_ + ".column", file_, "line 1",
                         say("The table has no column ", base::in_quotes(name), "."),
                         say("Its first line must name ", base::joined(needed), ".")});
  }
  return problems_.empty();
}

bool Rows::next() {
  if (row_ >= table_.rows.size()) return false;
  ++row_;
  return true;
}

const std::string& Rows::cell(std::string_view column) const {
  static const std::string kNothing;
  const auto at = table_.column(column);
  return at ? table_.rows[row_ - 1].cells[*at] : kNothing;
}

std::string Rows::needed(std::string_view column) {
  if (base::blank(cell(column))) {
    wrong("value", column, say("The cell ", base::in_quotes(column), " is empty."),
          "Fill it in; without it the line says nothing.");
  }
  return cell(column);
}

std::vector<std::string> Rows::list(std::string_view column, char separator) const {
  std::vector<std::string> out;
  std::string part;
  for (const char c : cell(column) + separator) {
    if (c != separator) {
      part += c;
      continue;
    }
    const auto first = part.find_first_not_of(' ');
    if (first != std::string::npos)
      out.push_back(part.substr(first, part.find_last_not_of(' ') - first + 1));
    part.clear();
  }
  return out;
}

kitchen::Allergens Rows::allergens(std::string_view column) {
  kitchen::Allergens out;
  for (const std::string& text : list(column)) {
    if (const auto value = kitchen::value_of(kitchen::kAllergenWords, base::lower(text))) {
      out.insert(*value);
    } else {
      wrong("value", column, say(base::in_quotes(text), " is not one of the fourteen allergens."),
            say("Write ", base::joined(kitchen::spellings(kitchen::kAllergenWords), "or"),
                ", with spaces between."));
    }
  }
  return out;
}

bool Rows::yes(std::string_view column, bool otherwise) {
  const std::string text = base::lower(cell(column));
  if (text.empty()) return otherwise;
  if (text == "yes" || text == "no") return text == "yes";
  unknown_word(column, {"yes", "no"});
  return otherwise;
}

void Rows::check_food(std::string_view column, const std::string& key,
                      const kitchen::Foods& foods) {
  if (foods.find(key) != nullptr) return;
  std::vector<std::string> keys;
  for (const kitchen::Food& food : foods.all()) keys.push_back(food.key);
  const auto near = base::nearest(key, keys);
  wrong("food", column, say("The table of foods has no key ", base::in_quotes(key), "."),
        near ? say("Did you mean ", base::in_quotes(*near), "?")
             : "Use a key of the table, or add the food to the school's own table of foods.");
}

std::vector<std::string> Rows::foods(std::string_view column, const kitchen::Foods& foods) {
  std::vector<std::string> out = list(column);
  for (const std::string& key : out) check_food(column, key, foods);
  return out;
}

void Rows::wrong(const std::string& code, std::string_view column, std::string message,
                 std::string remedy) {
  problems_.push_back({kind_ + "." + code, file_,
                       say("line ", table_.rows[row_ - 1].line, ", ", column), std::move(message),
                       std::move(remedy)});
}

void Rows::unknown_word(std::string_view column, const std::vector<std::string>& known) {
  const auto near = base::nearest(base::lower(cell(column)), known);
  wrong("value", column,
        say(base::in_quotes(cell(column)), " is not known",
            near ? say("; did you mean ", base::in_quotes(*near), "?") : std::string(".")),
        say("Write ", base::joined(known, "or"), "."));
}

}  // namespace safety
