#include "kitchen/reading/step_order.h"

#include <algorithm>
#include <map>

#include "base/folding.h"

namespace kitchen {
namespace {

bool begins_with(const StepDraft& step, std::initializer_list<std::string_view> words) {
  const auto all = base::words_of(base::folded(step.says));
  for (std::size_t i = 0; i < std::min<std::size_t>(all.size(), 2); ++i) {
    if (std::find(words.begin(), words.end(), all[i]) != words.end()) return true;
  }
  return false;
}

bool says_any(const StepDraft& step, std::initializer_list<std::string_view> words) {
  for (const std::string& w : base::words_of(base::folded(step.says))) {
    if (std::find(words.begin(), words.end(), singular(w)) != words.end()) return true;
  }
  return false;
}

// Peeling, chopping, washing, weighing: done to the ingredient itself, before it joins anything.
bool prepares(const StepDraft& step) {
  if (step.heat || step.preheat) return false;
  const auto skill = [&](std::string_view name) {
    return std::any_of(step.skills.begin(), step.skills.end(),
                       [&](const auto& s) { return s.value == name; });
  };
  const bool tools = std::any_of(step.equipment.begin(), step.equipment.end(), [](const auto& e) {
    return e.value == "knife" || e.value == "grater" || e.value == "colander" ||
           e.value == "scales" || e.value == "sieve";
  });
  return tools && !skill("mixing") && !skill("folding");
}

bool lines_tin(const StepDraft& step) {
  return std::any_of(step.skills.begin(), step.skills.end(),
                     [](const auto& s) { return s.value == "preparing tins"; }) &&
         !step.heat;
}

class Order {
 public:
  Order(DishDraft& draft, const IngredientWords& words) : draft_(draft), words_(words) {}

  void run() {
    for (std::size_t i = 0; i < draft_.method.size(); ++i) one(static_cast<int>(i));
    join_loose_ends();
  }

 private:
  DishDraft& draft_;
  const IngredientWords& words_;
  std::map<int, int> last_of_;  // ingredient -> step that handled it last
  int main_ = -1;               // the step that holds what is being made
  int oven_ = -1, tin_ = -1;    // set and lined in advance

  StepDraft& step(int i) { return draft_.method[static_cast<std::size_t>(i)]; }

  void wait_for(int i, int other) {
    if (other < 0 || other == i) return;
    auto& f = step(i).follows;
    if (std::find(f.begin(), f.end(), other) == f.end()) f.push_back(other);
  }

  void one(int i) {
    StepDraft& s = step(i);
    if (s.preheat) {
      oven_ = i;
      return;
    }
    if (lines_tin(s)) {
      tin_ = i;
      return;
    }
    const bool prepare = prepares(s);
    const bool strand = begins_with(s, {"meanwhile", "while", "whilst"}) ||
                        says_any(s, {"separate", "another", "second"}) || new_heading(i) ||
                        (handles_only_fresh(s) && in_a_vessel(s) && !names_product(s)) ||
                        opens_tins(s);
    if (cleans(s) && i > 0) wait_for(i, i - 1);
    for (const int used : s.uses) {
      const auto last = last_of_.find(used);
      if (last == last_of_.end()) continue;
      wait_for(i, last->second);
    }
    // What has no ingredient of its own goes on with what is being made; so does what adds to it.
    const bool goes_on = !strand && !(prepare && !s.uses.empty() && s.follows.empty());
    if (goes_on && !(prepare && handles_only_fresh(s)))
      wait_for(i, main_ >= 0 || !s.uses.empty() ? main_ : before(i));
    if (s.heat && (s.heat->value.where == Where::kOven)) {
      wait_for(i, oven_);
    }
    if (tin_ >= 0 && says_any(s, {"tin", "tray", "dish", "case", "sheet", "ramekin", "mould"})) {
      wait_for(i, tin_);
      tin_ = -1;
    }
    std::sort(s.follows.begin(), s.follows.end());
    for (const int used : s.uses) last_of_[used] = i;
    if (!prepare || s.uses.empty() || s.uses.size() > 3) {
      // Everything that flowed into what is being made is now here.
      if (!strand || main_ < 0) {
        for (auto& [ingredient, last] : last_of_) {
          if (last == main_ && main_ >= 0) last = i;
        }
      }
      main_ = i;
    }
  }

  // "Melt the butter in a saucepan": a vessel that was not there before begins something of its
  // own.
  static bool in_a_vessel(const StepDraft& s) {
    const auto words = base::words_of(base::folded(s.says));
    for (std::size_t k = 0; k + 2 < words.size(); ++k) {
      if (words[k] != "in" || (words[k + 1] != "a" && words[k + 1] != "another")) continue;
      for (std::size_t m = k + 2; m < std::min(k + 6, words.size()); ++m) {
        for (const char* vessel : {"pan", "saucepan", "bowl", "jug", "wok", "processor", "pot",
                                   "casserole", "skillet"}) {
          if (words[m] == vessel) return true;
        }
      }
    }
    return false;
  }

  // "the fishcakes", "the mixture": something made before, so the step cannot stand alone. When in
  // doubt a step waits: a wait too many costs minutes, one too few fries what is not there yet.
  bool names_product(const StepDraft& s) const {
    const auto words = base::words_of(base::folded(s.says));
    for (std::size_t k = 0; k + 1 < words.size(); ++k) {
      if (words[k] != "the" && words[k] != "each" && words[k] != "your") continue;
      for (std::size_t m = k + 1; m < std::min(k + 3, words.size()); ++m) {
        const std::string noun = singular(words[m]);
        const bool known = words_.mentions(noun) ||
                           std::any_of(s.equipment.begin(), s.equipment.end(), [&](const auto& e) {
                             return e.value.find(noun) != std::string::npos;
                           });
        if (known) break;
        if (m == k + 2 || m + 1 == words.size() || joins(words[m + 1])) return !plain_word(noun);
      }
    }
    return false;
  }
  static bool joins(const std::string& word) {
    for (const char* each :
         {"and", "in", "for", "with", "on", "until", "into", "to", "over", "from"}) {
      if (word == each) return true;
    }
    return false;
  }
  static bool plain_word(const std::string& word) {
    for (const char* each : {"heat", "oven", "ring", "hob", "pan", "boil", "water", "lid", "side",
                             "packet", "middle", "time", "minute", "fridge", "rest", "grill"}) {
      if (word == each) return true;
    }
    return false;
  }

  static bool opens_tins(const StepDraft& s) {
    return s.uses.empty() && begins_with(s, {"open", "drain"}) && says_any(s, {"tin", "can"});
  }

  // Hands, board and knife after raw meat: that step comes before, and what is next comes after.
  static bool cleans(const StepDraft& s) {
    return begins_with(s, {"wash", "clean", "scrub", "wipe"}) &&
           says_any(s, {"hand", "board", "surface", "worktop", "bench"});
  }

  bool new_heading(int i) {
    if (i == 0) return false;
    const std::string& group = step(i).group;
    return group != step(i - 1).group && !group.empty();
  }

  // The step written before, if it makes anything; -1 = none.
  int before(int i) {
    for (int k = i - 1; k >= 0; --k) {
      if (!step(k).preheat && !lines_tin(step(k))) return k;
    }
    return -1;
  }

  // A preparation of ingredients nobody has touched yet.
  bool handles_only_fresh(const StepDraft& s) const {
    return !s.uses.empty() && std::none_of(s.uses.begin(), s.uses.end(),
                                           [&](int u) { return last_of_.count(u) != 0; });
  }

  // What nobody waits for must be done before the last step, or it would be left over.
  void join_loose_ends() {
    const int count = static_cast<int>(draft_.method.size());
    if (count < 2) return;
    std::vector<bool> waited(draft_.method.size(), false);
    for (const StepDraft& s : draft_.method) {
      for (const int f : s.follows) waited[static_cast<std::size_t>(f)] = true;
    }
    for (int i = 0; i + 1 < count; ++i) {
      if (waited[static_cast<std::size_t>(i)] || step(i).preheat) continue;
      wait_for(joining_step(i), i);
    }
    for (StepDraft& s : draft_.method) std::sort(s.follows.begin(), s.follows.end());
  }

  // The next step that builds on more than it prepares; else the last.
  int joining_step(int i) {
    const int count = static_cast<int>(draft_.method.size());
    if (lines_tin(step(i))) {
      for (int k = i + 1; k < count; ++k) {
        if (step(k).heat && step(k).heat->value.where == Where::kOven && !step(k).preheat) return k;
      }
    }
    for (int k = i + 1; k < count; ++k) {
      const StepDraft& s = step(k);
      if (!s.preheat && !prepares(s) && !lines_tin(s) && !begins_with(s, {"meanwhile", "while"}) &&
          s.group == step(i).group && k > i + 1)
        return k;
    }
    return count - 1;
  }
};

}  // namespace

void order_steps(DishDraft& draft, const IngredientWords& words) { Order(draft, words).run(); }

}  // namespace kitchen
