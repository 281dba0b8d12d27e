// schema.org Recipe in JSON-LD as a draft.
#include <algorithm>
#include <array>
#include <optional>

#include "base/text.h"
#include "kitchen/json_tree.h"
#include "kitchen/reading/cut_line.h"
#include "kitchen/reading/html_text.h"
#include "kitchen/reading/json_ld.h"
#include "kitchen/reading/line_tokens.h"
#include "kitchen/reading/read_dish_text.h"

namespace kitchen {
namespace {

using base::say;

constexpr std::size_t kLargestPage = 16U << 20U;
constexpr int kDeepest = 12;  // of the search for a Recipe

bool is_recipe(const Node& node) {
  const Node* type = node.find("@type");
  if (type == nullptr) return false;
  const auto named = [](const Node& n) {
    return n.kind == Node::Kind::kText &&
           (n.text == "Recipe" || n.text.ends_with("schema.org/Recipe"));
  };
  return named(*type) || std::any_of(type->items.begin(), type->items.end(), named);
}

const Node* find_recipe(const Node& node, int depth = 0) {
  if (depth > kDeepest) return nullptr;
  if (node.kind == Node::Kind::kObject && is_recipe(node)) return &node;
  for (const Node& item : node.items) {
    if (const Node* found = find_recipe(item, depth + 1)) return found;
  }
  return nullptr;
}

// All the words of a value: a text, a number, the name of an object, the list of them.
std::string words_of_value(const Node& node, int depth = 0) {
  switch (node.kind) {
    case Node::Kind::kText:
      return text_of_html(node.text);
    case Node::Kind::kNumber:
      return base::number_text(node.number);
    case Node::Kind::kBool:
      return node.flag ? "yes" : "no";
    case Node::Kind::kNull:
      return "";
    case Node::Kind::kList:
    case Node::Kind::kObject:
      break;
  }
  std::vector<std::string> parts;
  for (std::size_t i = 0; i < node.items.size() && depth < kDeepest; ++i) {
    const bool object = node.kind == Node::Kind::kObject;
    if (object && node.keys[i].starts_with("@")) continue;
    std::string words = words_of_value(node.items[i], depth + 1);
    if (words.empty()) continue;
    const bool label = object && node.keys[i] != "name" && node.keys[i] != "text" &&
                       node.keys[i] != "value";
    parts.push_back(label ? say(node.keys[i], " ", words) : std::move(words));
  }
  return base::joined(parts, "and");
}

std::vector<std::string> lines_in(const std::string& text) {
  std::vector<std::string> out;
  std::string line;
  for (const char c : text + "\n") {
    if (c != '\n') {
      line += c;
      continue;
    }
    line = base::trimmed(line);
    if (!line.empty()) out.push_back(line);
    line.clear();
  }
  return out;
}

class RecipeReader {
 public:
  explicit RecipeReader(const Node& recipe) : recipe_(recipe) {}

  DishParts read() {
    for (std::size_t i = 0; i < recipe_.keys.size(); ++i) field(recipe_.keys[i], recipe_.items[i]);
    return std::move(parts_);
  }

 private:
  const Node& recipe_;
  DishParts parts_;

  void field(const std::string& key, const Node& value) {
    if (key == "@type" || key == "@context") return;
    if (key == "name" && value.kind == Node::Kind::kText) {
      parts_.name = base::trimmed(base::replaced(text_of_html(value.text), '\n', ' '));
    } else if (key == "recipeIngredient" || key == "ingredients") {
      ingredients(value);
    } else if (key == "recipeInstructions") {
      steps(value, "", 0);
    } else if ((key == "recipeYield" || key == "yield") && yields(value)) {
      return;
    } else if (key == "totalTime" || key == "prepTime" || key == "cookTime" ||
               key == "performTime") {
      const auto minutes = value.kind == Node::Kind::kText ? iso_minutes(value.text) : std::nullopt;
      unread(key, minutes ? say(base::number_text(*minutes), " min") : words_of_value(value));
    } else {
      unread(key, words_of_value(value));
    }
  }

  void unread(const std::string& key, const std::string& words) {
    if (!words.empty()) parts_.unread.push_back(say(key, ": ", words));
  }

  void ingredients(const Node& value) {
    if (value.kind == Node::Kind::kList) {
      for (const Node& item : value.items) ingredients(item);
      return;
    }
    for (std::string& line : lines_in(words_of_value(value)))
      parts_.ingredients.push_back({std::move(line), ""});
  }

  bool yields(const Node& value) {
    if (parts_.portions > 0) {
      // A second way of saying it: ["4", "4 servings"].
      return true;
    }
    if (value.kind == Node::Kind::kList) {
      return std::any_of(value.items.begin(), value.items.end(),
                         [this](const Node& each) { return yields(each); });
    }
    const std::string words = words_of_value(value);
    auto said = portions_in(tidied_line(words));
    if (!said) said = portions_in(tidied_line(say("Serves ", words)));
    if (!said) return false;
    parts_.portions = said->least;
    parts_.portions_words = words;
    return true;
  }

  void steps(const Node& value, const std::string& group, int depth) {
    if (depth > kDeepest) return;
    if (value.kind == Node::Kind::kList) {
      for (const Node& item : value.items) steps(item, group, depth + 1);
      return;
    }
    if (value.kind == Node::Kind::kObject) {
      const Node* inner = value.find("itemListElement");
      const Node* type = value.find("@type");
      const Node* text = value.find("text");
      const Node* name = value.find("name");
      const bool section = type != nullptr && type->text == "HowToSection";
      if (section && inner == nullptr) inner = value.find("steps");
      if (inner != nullptr && (section || text == nullptr)) {
        steps(*inner, section && name != nullptr ? words_of_value(*name) : group, depth + 1);
        return;
      }
      if (text != nullptr) {
        add_steps(words_of_value(*text), group);
      } else if (name != nullptr) {
        add_steps(words_of_value(*name), group);
      }
      return;
    }
    add_steps(words_of_value(value), group);
  }

  void add_steps(const std::string& text, const std::string& group) {
    for (std::string& line : lines_in(text)) parts_.method.push_back({std::move(line), group});
  }
};

}  // namespace

bool looks_like_json_ld(std::string_view text) {
  const auto first = text.find_first_not_of(" \t\r\n\xEF\xBB\xBF");
  if (first == std::string_view::npos) return false;
  if (text[first] == '{' || (text[first] == '[' && text.find('"') != std::string_view::npos))
    return true;
  return text[first] == '<' && text.find("</") != std::string_view::npos;
}

base::Result<DishDraft> read_json_ld(std::string_view text, const std::string& file_name,
                                     const Foods& foods, const TaskTimes& times) {
  if (text.size() > kLargestPage) {
    return base::Problem{"json_ld.too_big", file_name, "", "The page is larger than 16 MB.",
                         "Save only the part with the dish, or paste its text."};
  }
  std::vector<std::string_view> scripts;
  const auto first = text.find_first_not_of(" \t\r\n\xEF\xBB\xBF");
  const bool page = first != std::string_view::npos && text[first] == '<';
  if (page) {
    scripts = json_ld_scripts(text);
  } else {
    scripts.push_back(first == std::string_view::npos ? text : text.substr(first));
  }
  base::Problems problems;
  for (const std::string_view script : scripts) {
    const std::optional<Node> tree = parse_json(script, file_name, problems);
    if (!tree) continue;
    const Node* recipe = find_recipe(*tree);
    if (recipe != nullptr) return read_dish_parts(RecipeReader(*recipe).read(), foods, times);
  }
  if (!problems.empty()) return problems;
  return base::Problem{
      "json_ld.none", file_name, "",
      page ? "The page holds no dish in the open form (schema.org Recipe) that programs can read."
           : "The file holds no schema.org Recipe.",
      "Copy the words of the dish from the page and give those instead."};
}

std::optional<double> iso_minutes(std::string_view text) {
  if (text.size() < 3 || text[0] != 'P') return std::nullopt;
  double minutes = 0;
  bool time = false, any = false;
  std::string number;
  for (const char c : text.substr(1)) {
    if ((c >= '0' && c <= '9') || c == '.' || c == ',') {
      number += c == ',' ? '.' : c;
      continue;
    }
    if (c == 'T' && number.empty() && !time) {
      time = true;
      continue;
    }
    const auto value = base::number_in(number);
    number.clear();
    if (!value) return std::nullopt;
    if (!time && c == 'W')
      minutes += *value * 7 * 24 * 60;
    else if (!time && c == 'D')
      minutes += *value * 24 * 60;
    else if (time && c == 'H')
      minutes += *value * 60;
    else if (time && c == 'M')
      minutes += *value;
    else if (time && c == 'S')
      minutes += *value / 60;
    else
      return std::nullopt;
    any = true;
  }
  if (!any || !number.empty()) return std::nullopt;
  return minutes;
}

}  // namespace kitchen
