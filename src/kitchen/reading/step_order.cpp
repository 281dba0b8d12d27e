#include "kitchen/reading/step_order.h"

#include <algorithm>
#include <map>
#include <set>

#include "base/folding.h"
#include "base/text.h"
#include "kitchen/reading/made_words.h"
#include "kitchen/reading/ware_words.h"

namespace kitchen {
namespace {

using Words = std::vector<std::string>;

// Peeling, chopping, washing, weighing: done to the ingredient itself, before it joins anything.
bool prepares(Work w) {
  return w == Work::kCut || w == Work::kGrate || w == Work::kWash || w == Work::kWeigh ||
         w == Work::kOpen;
}

class Order {
 public:
  Order(DishDraft& draft, const std::vector<Work>& works, const IngredientWords& words)
      : draft_(draft), works_(works), words_(words) {
    for (const StepDraft& s : draft.method) {
      Words said;
      for (const std::string& w : base::words_of(base::folded(s.says))) said.push_back(singular(w));
      said_.push_back(std::move(said));
    }
  }

  void run() {
    for (int i = 0; i < count(); ++i) one(i);
    join_loose_ends();
  }

 private:
  DishDraft& draft_;
  const std::vector<Work>& works_;
  const IngredientWords& words_;
  std::vector<Words> said_;
  std::map<int, int> last_of_;       // ingredient -> step that handled it last
  std::map<std::string, int> made_;  // "dough" -> the step that has it in hand
  int main_ = -1;                    // the step that holds what is being made
  int oven_ = -1, tin_ = -1;         // set and lined in advance
  int clean_ = -1, kettle_ = -1;     // hands and board washed; water boiled

  int count() const { return static_cast<int>(draft_.method.size()); }
  StepDraft& step(int i) { return draft_.method[static_cast<std::size_t>(i)]; }
  const StepDraft& step(int i) const { return draft_.method[static_cast<std::size_t>(i)]; }
  Work work(int i) const { return works_[static_cast<std::size_t>(i)]; }
  const Words& said(int i) const { return said_[static_cast<std::size_t>(i)]; }

  bool says(int i, std::initializer_list<std::string_view> words) const {
    return std::any_of(said(i).begin(), said(i).end(),
                       [&](const std::string& w) { return base::one_of(w, words); });
  }
  bool says_pair(int i, std::string_view a, std::string_view b) const {
    const Words& w = said(i);
    for (std::size_t k = 0; k + 1 < w.size(); ++k) {
      if (w[k] == a && w[k + 1] == b) return true;
    }
    return false;
  }
  bool begins(int i, std::initializer_list<std::string_view> words) const {
    const Words& w = said(i);
    return std::any_of(w.begin(), w.begin() + std::min<std::ptrdiff_t>(2, std::ssize(w)),
                       [&](const std::string& each) { return base::one_of(each, words); });
  }

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
    if (lines_tin(i)) {
      tin_ = i;
      return;
    }
    if (cleans(i)) {
      wait_for(i, before(i));
      clean_ = i;
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
    const bool of_kettle = says_pair(i, "boiling", "water") || says_pair(i, "hot", "water") ||
                           (says(i, {"stock"}) && says(i, {"make", "dissolve", "crumble"}));
    if (of_kettle) wait_for(i, kettle_);
    // What has no ingredient of its own goes on with what is being made; so does what adds to it.
    const bool alone = !s.follows.empty() && stays_with_its_own(work(i));
    const bool goes_on = !strand && !alone && !(prepare && !s.uses.empty());
    if (goes_on) wait_for(i, main_ >= 0 || !s.uses.empty() ? main_ : before(i));
    if (s.heat && s.heat->value.where == Where::kOven) wait_for(i, oven_);
    if (tin_ >= 0 && says(i, {"tin", "tray", "dish", "case", "sheet", "ramekin", "mould", "cup",
                              "ring", "liner"})) {
      wait_for(i, tin_);
      tin_ = -1;
    }
    std::sort(s.follows.begin(), s.follows.end());
    take_in_hand(i, prepare);
  }

  // "Drain the pasta", "check the chicken": nothing joins what else is being made.
  static bool stays_with_its_own(Work w) {
    return w == Work::kProbe || w == Work::kDrain || w == Work::kTakeOut || w == Work::kMash ||
           w == Work::kGrill || w == Work::kStand || w == Work::kChill || w == Work::kBoil ||
           w == Work::kSimmer || w == Work::kBringToBoil;
  }
  // "Rinse the rice and put it in a pan": it is in the pan now.
  static bool into_a_pan(const StepDraft& s) {
    return std::any_of(s.equipment.begin(), s.equipment.end(), [](const auto& e) {
      const WareKind kind = ware_kind(e.value);
      return e.confidence == 1 && (kind == WareKind::kPan || kind == WareKind::kBaking);
    });
  }

  // Salt, oil and water are there for everybody: nobody waits for who had them last.
  void wait_for_last(int i, int ingredient) {
    const auto last = last_of_.find(ingredient);
    if (last != last_of_.end() && !staple(ingredient)) wait_for(i, last->second);
  }

  // What is named at all, in a mixture too: "the soy mixture", "the wet ingredients".
  void wait_for_mentioned(int i) {
    Words words = said(i);
    const auto until = std::find_if(words.begin(), words.end(), [](const std::string& w) {
      return w == "until" || w == "till";
    });
    words.erase(until, words.end());
    for (const int used : words_.named_in(words, step(i).group, {})) wait_for_last(i, used);
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
    for (const int used : s.uses) last_of_[used] = i;
    for (const std::string& thing : things_made(said(i))) {
      if (!words_.mentions(thing)) made_[thing] = i;
    }
    for (const std::string& thing : things_of_heading(s.group)) made_[thing] = i;
    if (!prepare || s.uses.empty()) main_ = i;
  }

  // "Fold into the batter", "with the guacamole": whoever made it.
  void wait_for_what_was_made(int i) {
    const Words headings = things_of_heading(step(i).group);
    for (const std::string& word : said(i)) {
      const auto made = made_.find(word);
      const bool own_heading = std::find(headings.begin(), headings.end(), word) != headings.end();
      if (made != made_.end() && !own_heading) wait_for(i, made->second);
    }
  }

  bool begins_strand(int i) const {
    const StepDraft& s = step(i);
    if (begins(i, {"meanwhile", "while", "whilst"})) return true;
    if (says(i, {"separate", "another", "second"}) || says_pair(i, "clean", "pan")) return true;
    if (new_heading(i) || opens_tins(i) || work(i) == Work::kKettle) return true;
    // "Bring a pan of water to the boil": nothing of the dish is in it yet.
    if (s.uses.empty() && says_pair(i, "of", "water") && s.heat) return true;
    if (s.uses.empty() && says(i, {"kettle"})) return true;
    if (s.uses.empty() || names_product(i)) return false;
    if (handles_only_fresh(s) && own_from_the_start(i)) return true;
    return in_a_vessel(i) || (handles_only_fresh(s) && (mixes_on_its_own(i) || makes(i)));
  }

  // "Whip the cream", "melt the chocolate", "toast the buns", "unroll the pastry": begun with what
  // nobody has touched.
  bool own_from_the_start(int i) const {
    const Words& words = said(i);
    if (words.empty() || words.size() < 2) return false;
    if (std::any_of(
            words.begin(), words.end(),
            [](const std::string& w) {
              return base::one_of(w, {"in", "into", "over", "through", "add", "top", "onto"});
            }) &&
        !says(i, {"microwave", "bowl"}))
      return false;
    return base::one_of(words[0], {"whip", "melt", "toast", "unroll", "warm", "whisk", "beat",
                                   "boil", "grate", "cream"});
  }

  // "Melt the butter in a saucepan": a vessel that was not there before begins something of its
  // own.
  bool in_a_vessel(int i) const {
    const Words& words = said(i);
    for (std::size_t k = 0; k + 2 < words.size(); ++k) {
      const bool into = base::one_of(words[k], {"in", "into", "on", "onto"});
      if (!into || !base::one_of(words[k + 1], {"a", "another", "your"})) continue;
      for (std::size_t m = k + 2; m < std::min(k + 6, words.size()); ++m) {
        if (base::one_of(words[m],
                         {"pan", "saucepan", "bowl", "basin", "jug", "wok", "processor", "pot",
                          "casserole", "skillet", "dish", "bag", "plate", "board"}))
          return true;
      }
    }
    return false;
  }

  // "Make the guacamole: halve the avocado ...", "For the sauce, warm the berries".
  bool makes(int i) const { return begins(i, {"make"}) || says_first_for(i); }
  bool says_first_for(int i) const {
    return said(i).size() > 2 && said(i)[0] == "for" && said(i)[1] == "the";
  }

  // "Beat the eggs with the milk": two things nobody has touched, and into nothing that is there.
  bool mixes_on_its_own(int i) const {
    const bool mixes = work(i) == Work::kMix || work(i) == Work::kWhisk || work(i) == Work::kShape;
    if (!mixes || step(i).uses.size() < 2) return false;
    const Words& words = said(i);
    for (std::size_t k = 1; k < words.size(); ++k) {
      // "Stir in", "fold into": to what is there.
      if (base::one_of(words[k], {"in", "into", "through", "over"}) &&
          action_named(words[k - 1]) != nullptr && words[k - 1] != "rub")
        return false;
    }
    return true;
  }

  // "the fishcakes", "the mixture": something made before, so the step cannot stand alone. When in
  // doubt a step waits: a wait too many costs minutes, one too few fries what is not there yet.
  bool names_product(int i) const {
    const Words& words = said(i);
    for (std::size_t k = 0; k + 1 < words.size(); ++k) {
      if (!base::one_of(words[k], {"the", "each", "your"})) continue;
      if (k > 0 && base::one_of(words[k - 1], {"make", "for"})) continue;
      for (std::size_t m = k + 1; m < std::min(k + 3, words.size()); ++m) {
        const std::string& noun = words[m];
        const bool known = !words_.named_in({noun}, step(i).group, {}).empty() ||
                           words_.mentions(noun) || is_ware(i, noun) ||
                           base::one_of(noun,
                                        {"vegetable", "veg", "fruit", "spice", "herb", "cheese",
                                         "meat", "fish", "pasta", "ingredient", "juice", "zest"});
        if (known) break;
        if (m == k + 2 || m + 1 == words.size() || joins(words[m + 1])) return can_be_made(noun);
      }
    }
    return false;
  }
  bool is_ware(int i, const std::string& noun) const {
    const auto& all = step(i).equipment;
    return std::any_of(all.begin(), all.end(), [&](const auto& e) {
      return e.value.find(noun) != std::string::npos || e.from.find(noun) != std::string::npos;
    });
  }
  static bool joins(const std::string& word) {
    return base::one_of(word,
                        {"and", "in", "for", "with", "on", "until", "into", "to", "over", "from"});
  }

  bool opens_tins(int i) const { return begins(i, {"open", "drain"}) && says(i, {"tin", "can"}); }

  // Hands, board and knife after raw meat: that step comes before, and what is next comes after.
  bool cleans(int i) const {
    return begins(i, {"wash", "clean", "scrub", "wipe"}) &&
           says(i, {"hand", "board", "surface", "worktop", "bench", "knife"});
  }

  bool lines_tin(int i) const {
    const StepDraft& s = step(i);
    return !s.heat && std::any_of(s.skills.begin(), s.skills.end(), [](const auto& skill) {
      return skill.value == "preparing tins";
    });
  }

  bool new_heading(int i) const {
    if (i == 0) return false;
    const std::string& group = step(i).group;
    return group != step(i - 1).group && !group.empty();
  }

  // The step written before, if it makes anything; -1 = none.
  int before(int i) const {
    for (int k = i - 1; k >= 0; --k) {
      if (!step(k).preheat && !lines_tin(k)) return k;
    }
    return -1;
  }

  // Only ingredients nobody has touched yet; salt, oil and water are on every bench.
  bool handles_only_fresh(const StepDraft& s) const {
    return !s.uses.empty() && std::none_of(s.uses.begin(), s.uses.end(), [&](int u) {
      return last_of_.count(u) != 0 && !staple(u);
    });
  }
  bool staple(int ingredient) const {
    const Food* food = words_.food(ingredient);
    return food != nullptr && (base::one_of(food->key, {"salt", "black_pepper", "water"}) ||
                               food->key.ends_with("_oil"));
  }

  // What nobody waits for must be done before the last step, or it would be left over.
  void join_loose_ends() {
    if (count() < 2) return;
    std::vector<bool> waited(draft_.method.size(), false);
    for (const StepDraft& s : draft_.method) {
      for (const int f : s.follows) waited[static_cast<std::size_t>(f)] = true;
    }
    for (int i = 0; i + 1 < count(); ++i) {
      if (waited[static_cast<std::size_t>(i)] || step(i).preheat || cleans(i)) continue;
      wait_for(joining_step(i), i);
    }
    for (StepDraft& s : draft_.method) std::sort(s.follows.begin(), s.follows.end());
  }

  // Where a loose end joins: what is prepared at the next step that builds on more than it
  // prepares, a lined tin in the oven, a strand of its own when it is served.
  int joining_step(int i) const {
    if (lines_tin(i)) {
      for (int k = i + 1; k < count(); ++k) {
        if (step(k).heat && step(k).heat->value.where == Where::kOven && !step(k).preheat) return k;
      }
    }
    const bool waits_by_itself = step(i).heat || work(i) == Work::kStand;
    if (prepares(work(i)) || work(i) == Work::kKettle ||
        (step(i).uses.empty() && !waits_by_itself)) {
      for (int k = i + 1; k < count(); ++k) {
        const StepDraft& s = step(k);
        if (!s.preheat && !prepares(work(k)) && !lines_tin(k) && !cleans(k) &&
            !begins(k, {"meanwhile", "while"}) && s.group == step(i).group && k > i + 1)
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
