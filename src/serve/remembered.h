// Values that took long to make, under a name, for as long as what they were made from stands.
//
// A lesson's line of the week is remembered under the lesson's id with the mark "3/plan:2/room:1";
// once its plan has version 3 the mark is another one and the value is made anew.
#pragma once

#include <cstddef>
#include <list>
#include <memory>
#include <mutex>
#include <string>
#include <unordered_map>
#include <utility>

namespace serve {

/// Safe to use from any thread. The value asked for longest ago goes first.
template <class Value>
class Remembered {
 public:
  explicit Remembered(std::size_t most) : most_(most) {}

  /// Nothing unless a value is there with exactly this mark.
  std::shared_ptr<const Value> get(const std::string& name, const std::string& mark) {
    const std::lock_guard lock(mutex_);
    const auto found = index_.find(name);
    if (found == index_.end() || found->second->mark != mark) return nullptr;
    entries_.splice(entries_.begin(), entries_, found->second);
    return found->second->value;
  }
  std::shared_ptr<const Value> put(const std::string& name, const std::string& mark, Value value) {
    return put(name, mark, std::make_shared<const Value>(std::move(value)));
  }
  std::shared_ptr<const Value> put(const std::string& name, const std::string& mark,
                                   std::shared_ptr<const Value> value) {
    const std::lock_guard lock(mutex_);
    if (const auto found = index_.find(name); found != index_.end()) {
      entries_.erase(found->second);
      index_.erase(found);
    }
    entries_.push_front({name, mark, value});
    index_[name] = entries_.begin();
    if (entries_.size() > most_) {
      index_.erase(entries_.back().name);
      entries_.pop_back();
    }
    return value;
  }

 private:
  struct Entry {
    std::string name, mark;
    std::shared_ptr<const Value> value;
  };
  std::size_t most_;
  std::mutex mutex_;
  std::list<Entry> entries_;  // last asked for first
  std::unordered_map<std::string, typename std::list<Entry>::iterator> index_;
};

}  // namespace serve
