// What was read of rooms, house rules and dishes that many lessons share.
//
// Reading a lesson takes a third of a millisecond for itself and three for its room and dishes. A
// desk that shows a week of them hands the same PartsRead to each.
#pragma once

#include <memory>
#include <mutex>
#include <string>
#include <type_traits>
#include <unordered_map>
#include <utility>
#include <vector>

#include "kitchen/lesson.h"

namespace kitchen {

/// By file name and whole text, so nothing in it can be out of date. Safe to use from any thread.
class PartsRead {
 public:
  /// Null unless exactly this text was read before.
  template <class Part>
  std::shared_ptr<const Part> get(const std::string& file, const std::string& text) {
    const std::lock_guard lock(mutex_);
    Kept<Part>& kept = of<Part>();
    const auto found = kept.find(file);
    return found != kept.end() && found->second.first == text ? found->second.second : nullptr;
  }
  template <class Part>
  void put(const std::string& file, const std::string& text, const Part& part) {
    const std::lock_guard lock(mutex_);
    Kept<Part>& kept = of<Part>();
    // A school has some hundred dishes; whoever has more reads some of them again.
    if (kept.size() >= 1000 && !kept.contains(file)) kept.erase(kept.begin());
    kept[file] = {text, std::make_shared<const Part>(part)};
  }

 private:
  template <class Part>
  using Kept = std::unordered_map<std::string, std::pair<std::string, std::shared_ptr<const Part>>>;
  std::mutex mutex_;
  Kept<Room> rooms_;
  Kept<HouseRules> rules_;
  Kept<std::vector<Dish>> dishes_;

  template <class Part>
  Kept<Part>& of() {
    if constexpr (std::is_same_v<Part, Room>)
      return rooms_;
    else if constexpr (std::is_same_v<Part, HouseRules>)
      return rules_;
    else
      return dishes_;
  }
};

}  // namespace kitchen
