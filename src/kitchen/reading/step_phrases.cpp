#include "kitchen/reading/step_phrases.h"

#include <algorithm>

#include "base/folding.h"
#include "base/text.h"
#include "kitchen/reading/ware_words.h"

namespace kitchen {
namespace {

using Words = std::vector<std::string>;

Words without_when(const std::string& says) {
  const std::string text = base::folded(says);
  const bool when = text.starts_with("while ") || text.starts_with("whilst ");
  const std::size_t comma = when ? text.find(',') : std::string::npos;
  return words_in_singular(comma == std::string::npos ? text : text.substr(comma));
}

}  // namespace

bool prepares(Work w) {
  return w == Work::kCut || w == Work::kGrate || w == Work::kWash || w == Work::kWeigh ||
         w == Work::kOpen;
}

bool into_a_pan(const StepDraft& s) {
  return std::any_of(s.equipment.begin(), s.equipment.end(), [](const auto& e) {
    const WareKind kind = ware_kind(e.value);
    return e.confidence == 1 && (kind == WareKind::kPan || kind == WareKind::kBaking);
  });
}

StepPhrases::StepPhrases(const DishDraft& draft, const std::vector<Work>& works,
                         const IngredientWords& words)
    : draft_(draft), works_(works), words_(words) {
  for (const StepDraft& s : draft.method) {
    said_.push_back(words_in_singular(s.says));
    handled_.push_back(without_when(s.says));
  }
}

bool StepPhrases::says(int i, std::initializer_list<std::string_view> words) const {
  return std::any_of(said(i).begin(), said(i).end(),
                     [&](const std::string& w) { return base::one_of(w, words); });
}

bool StepPhrases::says_pair(int i, std::string_view a, std::string_view b) const {
  const Words& w = said(i);
  for (std::size_t k = 0; k + 1 < w.size(); ++k) {
    if (w[k] == a && w[k + 1] == b) return true;
  }
  return false;
}

bool StepPhrases::begins(int i, std::initializer_list<std::string_view> words) const {
  const Words& w = said(i);
  return std::any_of(w.begin(), w.begin() + std::min<std::ptrdiff_t>(2, std::ssize(w)),
                     [&](const std::string& each) { return base::one_of(each, words); });
}

bool StepPhrases::takes_part_of(int i, int ingredient) const {
  const Words& words = said(i);
  for (std::size_t k = 0; k < words.size(); ++k) {
    if (!base::one_of(words[k], {"half", "third", "quarter", "most", "some", "little", "enough",
                                 "part", "bit", "splash", "few", "spoonful"}))
      continue;
    const auto end = std::min(k + 5, words.size());
    const Words near(words.begin() + static_cast<std::ptrdiff_t>(k + 1),
                     words.begin() + static_cast<std::ptrdiff_t>(end));
    // "Half the cheese and all the chives": the amount speaks of the first thing behind it.
    const auto joint = std::find(near.begin(), near.end(), "and");
    const auto named = words_.named_in(Words(near.begin(), joint), step(i).group, {});
    if (std::find(named.begin(), named.end(), ingredient) != named.end()) return true;
  }
  return false;
}

bool StepPhrases::readies_raw(int i) const {
  const StepDraft& s = step(i);
  const bool raw = std::any_of(s.uses.begin(), s.uses.end(),
                               [&](int used) { return words_.raw_meat(used); });
  return raw && !s.heat && !begins(i, {"add", "stir", "put", "tip", "fold", "lay", "place", "mix"});
}

bool StepPhrases::own_from_the_start(int i) const {
  const Words& words = said(i);
  if (words.empty() || words.size() < 2) return false;
  if (std::any_of(words.begin(), words.end(),
                  [](const std::string& w) {
                    return base::one_of(w, {"in", "into", "over", "through", "add", "top", "onto"});
                  }) &&
      !says(i, {"microwave", "bowl"}))
    return false;
  return base::one_of(words[0], {"whip", "melt", "toast", "unroll", "warm", "whisk", "beat", "boil",
                                 "grate", "cream"});
}

bool StepPhrases::in_a_vessel(int i) const {
  const Words& words = said(i);
  for (std::size_t k = 0; k + 2 < words.size(); ++k) {
    const bool into = base::one_of(words[k], {"in", "into", "on", "onto"});
    if (!into || !base::one_of(words[k + 1], {"a", "another", "your"})) continue;
    for (std::size_t m = k + 2; m < std::min(k + 6, words.size()); ++m) {
      if (base::one_of(words[m], {"pan", "saucepan", "bowl", "basin", "jug", "wok", "processor",
                                  "pot", "casserole", "skillet", "dish", "bag", "plate", "board"}))
        return true;
    }
  }
  return false;
}

bool StepPhrases::makes(int i) const {
  return (begins(i, {"make"}) && !says(i, {"well", "hollow"})) || says_first_for(i);
}

bool StepPhrases::says_first_for(int i) const {
  return said(i).size() > 2 && said(i)[0] == "for" && said(i)[1] == "the";
}

bool StepPhrases::mixes_on_its_own(int i) const {
  const bool mixes = work(i) == Work::kMix || work(i) == Work::kWhisk || work(i) == Work::kShape;
  if (!mixes || step(i).uses.size() < 2 || begins(i, {"add"}) || says_pair(i, "a", "well"))
    return false;
  const Words& words = said(i);
  for (std::size_t k = 1; k < words.size(); ++k) {
    // "Stir in", "fold into": to what is there.
    if (base::one_of(words[k], {"in", "into", "through", "over"}) &&
        action_named(words[k - 1]) != nullptr && words[k - 1] != "rub")
      return false;
  }
  return true;
}

bool StepPhrases::is_ware(int i, const std::string& noun) const {
  const auto& all = step(i).equipment;
  return std::any_of(all.begin(), all.end(), [&](const auto& e) {
    return e.value.find(noun) != std::string::npos || e.from.find(noun) != std::string::npos;
  });
}

bool StepPhrases::opens_tins(int i) const {
  return begins(i, {"open", "drain"}) && says(i, {"tin", "can"});
}

bool StepPhrases::boils_water(int i) const {
  const bool only_that = std::all_of(step(i).uses.begin(), step(i).uses.end(),
                                     [&](int used) { return staple(used); });
  const bool water = says(i, {"water"}) && !says(i, {"kettle"}) && says(i, {"boil"});
  const bool fat = step(i).uses.empty() && says(i, {"deep"}) &&
                   (says_pair(i, "of", "oil") || says_pair(i, "of", "fat"));
  return work(i) != Work::kKettle && only_that && (water || fat) &&
         says(i, {"pan", "saucepan", "pot", "fryer"});
}

bool StepPhrases::cleans(int i) const {
  return begins(i, {"wash", "clean", "scrub", "wipe"}) &&
         says(i, {"hand", "board", "surface", "worktop", "bench", "knife"});
}

bool StepPhrases::lines_tin(int i) const {
  const StepDraft& s = step(i);
  return !s.heat && std::any_of(s.skills.begin(), s.skills.end(),
                                [](const auto& skill) { return skill.value == "preparing tins"; });
}

bool StepPhrases::new_heading(int i) const {
  if (i == 0) return false;
  const std::string& group = step(i).group;
  return group != step(i - 1).group && !group.empty();
}

bool StepPhrases::staple(int ingredient) const {
  const Food* food = words_.food(ingredient);
  return food != nullptr && (base::one_of(food->key, {"salt", "black_pepper", "water"}) ||
                             food->key.ends_with("_oil"));
}

}  // namespace kitchen
