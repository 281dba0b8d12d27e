// A lesson's document while it is changed: its parts found by what the lesson calls them.
#pragma once

#include <algorithm>
#include <set>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "base/problem.h"
#include "kitchen/json_tree.h"
#include "kitchen/lesson.h"
#include "kitchen/read.h"

namespace desk {

/// "The lesson has no oven B3; did you mean B2?" `where` points into the change that was asked for.
base::Problem not_in_lesson(const char* code, std::string_view noun, const char* where,
                            const std::string& name, const std::vector<std::string>& known);

/// The lesson's document while it is changed. Keeps file and loader.
class LessonDocument {
 public:
  LessonDocument(kitchen::Node tree, const std::string& file, const kitchen::Loader& loader)
      : tree_(std::move(tree)), file_(file), loader_(loader) {}

  kitchen::Node& tree() { return tree_; }

  /// The cooks one by one; a "class" is written out first.
  base::Result<kitchen::Node*> cook(const std::string& name, const kitchen::Lesson& lesson,
                                    const char* where = "/cook");
  base::Result<kitchen::Node*> window(const std::string& name);
  /// The dish of that key as a part of the lesson, so that it can be changed for it alone.
  base::Result<kitchen::Node*> own_dish(const std::string& key);
  /// The key under which the lesson has the dish, which a plan calls by its name.
  base::Result<std::string> dish_key(const kitchen::Lesson& lesson, const std::string& dish);

  /// A cook who is gone has no window to be in. A window that was theirs alone goes with them: with
  /// nobody named it would be everybody's.
  void leave_windows(const std::string& name);

  /// Takes cooks out of the pins that `which` picks; a pin that was theirs alone goes with them.
  /// Without names every such pin goes.
  template <class Which>
  int leave_pins(Which which, const std::set<std::string>& names) {
    kitchen::Node* pins = tree_.find("pins");
    if (pins == nullptr) return 0;
    int touched = 0;
    std::erase_if(pins->items, [&](kitchen::Node& pin) {
      if (!which(pin)) return false;
      kitchen::Node* cooks = pin.find("cooks");
      if (names.empty()) {
        ++touched;
        return true;
      }
      if (cooks == nullptr || cooks->items.empty()) return false;
      const auto left = std::erase_if(
          cooks->items, [&](const kitchen::Node& each) { return names.count(each.text) > 0; });
      touched += left > 0 ? 1 : 0;
      return left > 0 && cooks->items.empty();
    });
    if (pins->items.empty()) tree_.erase("pins");
    return touched;
  }

  kitchen::Node& list(std::string_view key);
  kitchen::Node& about();

 private:
  kitchen::Node tree_;
  const std::string& file_;
  const kitchen::Loader& loader_;

  void write_cooks(const kitchen::Lesson& lesson);
};

}  // namespace desk
