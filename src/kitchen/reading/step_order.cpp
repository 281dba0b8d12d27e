#include "kitchen/reading/step_order.h"

#include <algorithm>
#include <map>
#include <set>

#include "base/folding.h"
#include "base/text.h"
#include "kitchen/reading/made_words.h"
#include "kitchen/reading/step_phrases.h"

namespace kitchen {
namespace {

using Words = std::vector<std::string>;

bool joins(const std::string& word) {
  return base::one_of(word,
                      {"and", "in", "for", "with", "on", "until", "into", "to", "over", "from"});
}

class Order {
 public:
  Order(DishDraft& draft, const std::vector<Work>& works, const IngredientWords& words)
      : draft_(draft), works_(works), words_(words), phrases_(draft, works, words) {}

  void run() {
    for (int i = 0; i < count(); ++i) one(i);
    join_loose_ends();
  }

 private:
  DishDraft& draft_;
  const std::vector<Work>& works_;
  const IngredientWords& words_;
  const StepPhrases phrases_;
  std::map<int, int> last_of_;       // ingredient -> step that handled it last
  std::map<std::string, int> made_;  // "dough" -> the step that has it in hand
  int main_ = -1;                    // the step that holds what is being made
  int oven_ = -1, tin_ = -1;         // set and lined in advance
  int clean_ = -1, kettle_ = -1;     // hands and board washed; water boiled
  int water_ = -1;                   // a pan of water on the ring with nothing in it yet

  int count() const { return static_cast<int>(draft_.method.size()); }
  StepDraft& step(int i) { return draft_.method[static_cast<std::size_t>(i)]; }
  const StepDraft& step(int i) const { return draft_.method[static_cast<std::size_t>(i)]; }
  Work work(int i) const { return works_[static_cast<std::size_t>(i)]; }

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
    if (phrases_.lines_tin(i)) {
      tin_ = i;
      return;
    }
    if (phrases_.cleans(i)) {
      wait_for(i, before(i));
      clean_ = i;
      return;
    }
    if (phrases_.boils_water(i)) {
      water_ = i;
      return;
    }
    const bool prepare = prepares(work(i)) && !s.heat && !into_a_pan(s);
    const bool strand = begins_strand(i);
    for (const int used : s.uses) wait_for_last(i, used);
    if (!prepare) wait_for_mentioned(i);
    wait_for_what_was_made(i);
    // After raw meat hands, board and knife are clean before the next thing is touched.
    if (clean_ >= 0 && !strand) wait_for(i, clean_);
    clean_ = -1;
    if (work(i) == Work::kKettle) kettle_ = i;
    const bool of_kettle = phrases_.says_pair(i, "boiling", "water") ||
                           phrases_.says_pair(i, "hot", "water") ||
                           (phrases_.says(i, {"stock"}) &&
                            phrases_.says(i, {"make", "dissolve", "crumble"}));
    if (of_kettle) wait_for(i, kettle_);
    // What goes into the boiling water, by its words or because it is boiled.
    const bool into_water = phrases_.says(i, {"water"}) || work(i) == Work::kBoil ||
                            work(i) == Work::kSimmer || work(i) == Work::kDeepFry ||
                            work(i) == Work::kFry || (s.heat && phrases_.says(i, {"pan"}));
    if (water_ >= 0 && into_water) {
      wait_for(i, water_);
      water_ = -1;
    }
    // What has no ingredient of its own goes on with what is being made; so does what adds to it.
    const bool alone = !s.follows.empty() && stays_with_its_own(work(i)) &&
                       !phrases_.begins(i, {"add"});
    const bool goes_on = !strand && !alone && !(prepare && !s.uses.empty());
    if (goes_on) wait_for(i, main_ >= 0 || !s.uses.empty() ? main_ : before(i));
    if (s.heat && s.heat->value.where == Where::kOven) wait_for(i, oven_);
    if (tin_ >= 0 && phrases_.says(i, {"tin", "tray", "dish", "case", "sheet", "ramekin", "mould",
                                       "cup", "ring", "liner"})) {
      wait_for(i, tin_);
      tin_ = -1;
    }
    std::sort(s.follows.begin(), s.follows.end());
    take_in_hand(i, prepare);
  }

  // Salt, oil and water are there for everybody: nobody waits for who had them last.
  void wait_for_last(int i, int ingredient) {
    const auto last = last_of_.find(ingredient);
    if (last == last_of_.end() || phrases_.staple(ingredient)) return;
    wait_for(i, last->second);
  }

  // What is named at all, in a mixture too: "the soy mixture", "the wet ingredients".
  void wait_for_mentioned(int i) {
    Words words = phrases_.handled(i);
    const auto until = std::find_if(words.begin(), words.end(), [](const std::string& w) {
      return w == "until" || w == "till";
    });
    words.erase(until, words.end());
    for (const int used : words_.named_in(words, step(i).group, {})) wait_for_last(i, used);
    // "The soy mixture": where soy sauce went last.
    for (std::size_t k = 0; k + 1 < words.size(); ++k) {
      if (!base::one_of(words[k + 1], {"mixture", "mix", "paste"}) || made_.count(words[k]) != 0)
        continue;
      for (const auto& [ingredient, last] : last_of_) {
        if (words_.has_word(ingredient, words[k]) && !prepares(work(last))) wait_for(i, last);
      }
    }
  }

  // The step has now what it waited for, and what it says it makes.
  void take_in_hand(int i, bool prepare) {
    const StepDraft& s = step(i);
    if (!prepare) {
      const std::set<int> from(s.follows.begin(), s.follows.end());
      for (auto& [ingredient, last] : last_of_) {
        if (from.count(last) != 0 && (!prepares(work(last)) || s.uses.empty())) last = i;
      }
      for (auto& [thing, last] : made_) {
        if (from.count(last) != 0) last = i;
      }
    }
    for (const int used : s.uses) {
      if (!phrases_.takes_part_of(i, used)) last_of_[used] = i;
    }
    for (const std::string& thing : things_made(phrases_.said(i))) {
      if (!words_.mentions(thing)) made_[thing] = i;
    }
    for (const std::string& thing : things_of_heading(s.group)) made_[thing] = i;
    const bool mixes = work(i) == Work::kMix || work(i) == Work::kWhisk || work(i) == Work::kBlend;
    const bool much = s.uses.size() > 2 || !s.follows.empty();
    if (mixes && !s.heat && !prepare && much) made_["mixture"] = i;
    if (!prepare || s.uses.empty()) main_ = i;
  }

  // "Fold into the batter", "with the guacamole": whoever made it.
  void wait_for_what_was_made(int i) {
    const Words headings = things_of_heading(step(i).group);
    for (const std::string& word : phrases_.handled(i)) {
      const auto made = made_of(word);
      const bool own_heading = std::find(headings.begin(), headings.end(), word) != headings.end();
      if (made != made_.end() && !own_heading) wait_for(i, made->second);
    }
  }

  // Pastry is made as a dough and rolled out as pastry.
  std::map<std::string, int>::const_iterator made_of(const std::string& word) const {
    const auto made = made_.find(word);
    if (made != made_.end() || words_.mentions(word)) return made;
    return word == "pastry" ? made_.find("dough") : word == "dough" ? made_.find("pastry") : made;
  }

  bool begins_strand(int i) const {
    const StepDraft& s = step(i);
    if (phrases_.begins(i, {"meanwhile", "while", "whilst"}) || makes_something(i)) return true;
    if (phrases_.says(i, {"separate", "another", "second"}) ||
        phrases_.says_pair(i, "clean", "pan"))
      return true;
    if (phrases_.new_heading(i) || phrases_.opens_tins(i) || work(i) == Work::kKettle) return true;
    // "Bring a pan of water to the boil": nothing of the dish is in it yet.
    if (s.uses.empty() && phrases_.says_pair(i, "of", "water") && s.heat) return true;
    if (s.uses.empty() && phrases_.says(i, {"kettle"})) return true;
    if (s.uses.empty() || names_product(i)) return false;
    if (handles_only_fresh(s) && (phrases_.own_from_the_start(i) || phrases_.readies_raw(i)))
      return true;
    return phrases_.in_a_vessel(i) ||
           (handles_only_fresh(s) && (phrases_.mixes_on_its_own(i) || phrases_.makes(i)));
  }

  // "Make the dressing:", "Next your white sauce", "Start with the raita", "Now for the filling".
  bool makes_something(int i) const {
    const Words& w = phrases_.said(i);
    constexpr std::size_t kLeast = 5;  // "Now for the filling ...": two words behind "the"
    if (w.size() < kLeast || !base::one_of(w[0], {"make", "next", "now", "start", "begin"}))
      return false;
    std::size_t at = 1;
    if (base::one_of(w[at], {"make", "for", "with"})) ++at;
    if (!base::one_of(w[at], {"the", "your"})) return false;
    const bool known = words_.mentions(w[at + 1]) || words_.mentions(w[at + 2]);
    return !known && w[at + 1] != "rest" && can_be_made(w[at + 1]) && made_.count(w[at + 1]) == 0;
  }

  // "the fishcakes", "the mixture": something made before, so the step cannot stand alone. When in
  // doubt a step waits: a wait too many costs minutes, one too few fries what is not there yet.
  bool names_product(int i) const {
    const Words& words = phrases_.handled(i);
    for (std::size_t k = 0; k + 1 < words.size(); ++k) {
      if (!base::one_of(words[k], {"the", "each", "your"})) continue;
      if (k > 0 && base::one_of(words[k - 1], {"make", "for"})) continue;
      for (std::size_t m = k + 1; m < std::min(k + 3, words.size()); ++m) {
        const std::string& noun = words[m];
        const bool known = made_of(noun) != made_.end() ||
                           !words_.named_in({noun}, step(i).group, {}).empty() ||
                           words_.mentions(noun) || phrases_.is_ware(i, noun) ||
                           base::one_of(noun,
                                        {"vegetable", "veg", "fruit", "spice", "herb", "cheese",
                                         "meat", "fish", "pasta", "ingredient", "juice", "zest"});
        if (known) break;
        if (m == k + 2 || m + 1 == words.size() || joins(words[m + 1])) return can_be_made(noun);
      }
    }
    return false;
  }

  // The step written before, if it makes anything; -1 = none.
  int before(int i) const {
    for (int k = i - 1; k >= 0; --k) {
      if (!step(k).preheat && !phrases_.lines_tin(k)) return k;
    }
    return -1;
  }

  // Only ingredients nobody has touched yet; salt, oil and water are on every bench.
  bool handles_only_fresh(const StepDraft& s) const {
    return !s.uses.empty() && std::none_of(s.uses.begin(), s.uses.end(), [&](int u) {
      return last_of_.count(u) != 0 && !phrases_.staple(u);
    });
  }

  // What nobody waits for must be done before the last step, or it would be left over.
  void join_loose_ends() {
    if (count() < 2) return;
    std::vector<bool> waited(draft_.method.size(), false);
    for (const StepDraft& s : draft_.method) {
      for (const int f : s.follows) waited[static_cast<std::size_t>(f)] = true;
    }
    for (int i = 0; i + 1 < count(); ++i) {
      if (waited[static_cast<std::size_t>(i)] || step(i).preheat || phrases_.cleans(i)) continue;
      wait_for(joining_step(i), i);
    }
    for (StepDraft& s : draft_.method) std::sort(s.follows.begin(), s.follows.end());
  }

  // Where a loose end joins: what is prepared at the next step that builds on more than it
  // prepares, a lined tin in the oven, a strand of its own when it is served.
  int joining_step(int i) const {
    if (phrases_.lines_tin(i)) {
      for (int k = i + 1; k < count(); ++k) {
        if (step(k).heat && step(k).heat->value.where == Where::kOven && !step(k).preheat) return k;
      }
    }
    const bool waits_by_itself = step(i).heat || work(i) == Work::kStand;
    if (prepares(work(i)) || work(i) == Work::kKettle ||
        (step(i).uses.empty() && !waits_by_itself)) {
      for (int k = i + 1; k < count(); ++k) {
        const StepDraft& s = step(k);
        if (!s.preheat && !prepares(work(k)) && !phrases_.lines_tin(k) && !phrases_.cleans(k) &&
            !phrases_.begins(k, {"meanwhile", "while"}) && s.group == step(i).group && k > i + 1)
          return k;
      }
      return count() - 1;
    }
    for (int k = i + 1; k < count(); ++k) {
      if (work(k) == Work::kServe) return k;
    }
    return count() - 1;
  }
};

}  // namespace

void order_steps(DishDraft& draft, const std::vector<Work>& works, const IngredientWords& words) {
  Order(draft, works, words).run();
}

}  // namespace kitchen
