#include "kitchen/foods.h"

#include <algorithm>
#include <array>

#include "base/folding.h"
#include "base/text.h"

namespace kitchen {
namespace {

std::vector<std::string> tokens_of(std::string_view text) {
  std::vector<std::string> out;
  for (const std::string& word : base::words_of(base::folded(text))) {
    std::string one = word;
    if (one.ends_with("'s")) one.resize(one.size() - 2);
    out.push_back(singular(one));
  }
  return out;
}

std::string joined_tokens(const std::vector<std::string>& tokens) {
  std::string out;
  for (const std::string& token : tokens) out += (out.empty() ? "" : " ") + token;
  return out;
}

// Words that say little about which food is meant.
bool weak(const std::string& token) {
  static constexpr std::array<std::string_view, 16> kWeak = {
      "of",  "in",  "the",   "and",   "or",     "a",      "with",  "for",
      "raw", "dry", "fresh", "plain", "canned", "tinned", "about", "type"};
  return std::find(kWeak.begin(), kWeak.end(), token) != kWeak.end();
}

// 1 = the same word; less for a beginning of it or a misspelling; 0 = another word.
double likeness(const std::string& asked, const std::string& known) {
  if (asked == known) return 1;
  const std::size_t shorter = std::min(asked.size(), known.size());
  if (asked.size() >= 3 && known.size() > asked.size() && known.starts_with(asked))
    return 0.7 + 0.2 * static_cast<double>(asked.size()) / static_cast<double>(known.size());
  if (shorter < 4 || asked.size() > known.size() + 3 || known.size() > asked.size() + 3) return 0;
  const std::size_t off = base::edit_distance(asked, known);
  const std::size_t bearable = shorter >= 8 ? 3 : shorter >= 6 ? 2 : 1;
  if (off > bearable) return 0;
  return 0.9 - 0.9 * static_cast<double>(off) / static_cast<double>(shorter);
}

}  // namespace

std::string singular(std::string_view word) {
  const auto ends = [&](std::string_view tail) {
    return word.size() > tail.size() && word.ends_with(tail);
  };
  const auto cut = [&](std::size_t letters, std::string_view more = "") {
    return std::string(word.substr(0, word.size() - letters)) + std::string(more);
  };
  static constexpr std::array<std::string_view, 22> kStay = {
      "couscous", "hummus",   "houmous",  "asparagus",  "swiss", "molasses", "citrus", "watercress",
      "cress",    "octopus",  "brussels", "lemongrass", "brass", "glass",    "press",  "less",
      "boneless", "skinless", "seedless", "gas",        "as",    "this"};
  if (std::find(kStay.begin(), kStay.end(), word) != kStay.end()) return std::string(word);
  if (word == "leaves") return "leaf";
  if (word == "loaves") return "loaf";
  if (word == "halves") return "half";
  if (word == "chillies" || word == "chilies" || word == "chili" || word == "chile")
    return "chilli";
  if (word == "cookies") return "cookie";
  if (word == "brownies") return "brownie";
  if (word == "smoothies") return "smoothie";
  if (ends("ies") && word.size() > 4) return cut(3, "y");
  if (ends("oes")) return cut(2);
  if (ends("ches") || ends("shes") || ends("sses") || ends("xes")) return cut(2);
  if (ends("ss") || ends("us") || ends("is")) return std::string(word);
  if (ends("s") && word.size() > 3) return cut(1);
  return std::string(word);
}

Foods::Foods(std::vector<Food> foods) : foods_(std::move(foods)) { index(); }

void Foods::index() {
  names_.clear();
  by_key_.clear();
  by_name_.clear();
  for (std::size_t i = 0; i < foods_.size(); ++i) {
    const Food& food = foods_[i];
    by_key_.emplace(food.key, i);
    const auto add = [&](const std::string& name) {
      std::vector<std::string> tokens = tokens_of(name);
      if (tokens.empty()) return;
      const std::string key = joined_tokens(tokens);
      const auto [at, fresh] = by_name_.emplace(key, i);
      // The school's own food takes the name from the shipped one.
      if (!fresh && food.schools_own && !foods_[at->second].schools_own) at->second = i;
      names_.push_back({i, name, std::move(tokens)});
    };
    add(food.name);
    for (const std::string& other : food.other_names) add(other);
  }
}

const Food* Foods::find(std::string_view key) const {
  const auto found = by_key_.find(key);
  return found == by_key_.end() ? nullptr : &foods_[found->second];
}

const Food* Foods::named(std::string_view name) const {
  const auto found = by_name_.find(joined_tokens(tokens_of(name)));
  return found == by_name_.end() ? nullptr : &foods_[found->second];
}

std::vector<FoundFood> Foods::search(std::string_view words, std::size_t most) const {
  const std::vector<std::string> asked = tokens_of(words);
  std::vector<FoundFood> best(foods_.size());
  if (asked.empty()) return {};
  double asked_weight = 0;
  for (const std::string& token : asked) asked_weight += weak(token) ? 0.3 : 1;
  for (const Name& name : names_) {
    double met = 0, unmet = 0;
    std::vector<bool> used(name.tokens.size(), false);
    for (const std::string& token : asked) {
      double most_like = 0;
      std::size_t where = 0;
      for (std::size_t i = 0; i < name.tokens.size(); ++i) {
        if (used[i]) continue;
        const double like = likeness(token, name.tokens[i]);
        if (like > most_like) {
          most_like = like;
          where = i;
        }
      }
      if (most_like > 0) used[where] = true;
      met += most_like * (weak(token) ? 0.3 : 1);
    }
    if (met == 0) continue;
    for (std::size_t i = 0; i < used.size(); ++i) {
      if (!used[i]) unmet += weak(name.tokens[i]) ? 0.1 : 0.5;
    }
    const double like = met / (asked_weight + unmet);
    FoundFood& so_far = best[name.food];
    if (like > so_far.likeness) so_far = {&foods_[name.food], like, name.text};
  }
  const auto none = [](const FoundFood& found) { return found.likeness < 0.3; };
  best.erase(std::remove_if(best.begin(), best.end(), none), best.end());
  std::stable_sort(best.begin(), best.end(), [](const FoundFood& a, const FoundFood& b) {
    if (a.likeness != b.likeness) return a.likeness > b.likeness;
    return a.food->schools_own && !b.food->schools_own;
  });
  if (best.size() > most) best.resize(most);
  return best;
}

Foods Foods::with(const Foods& own) const {
  std::vector<Food> all;
  for (const Food& food : foods_) {
    if (own.find(food.key) == nullptr) all.push_back(food);
  }
  for (Food food : own.foods_) {
    food.schools_own = true;
    all.push_back(std::move(food));
  }
  return Foods(std::move(all));
}

}  // namespace kitchen
