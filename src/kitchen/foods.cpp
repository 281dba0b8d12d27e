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

// How many letters of a to z stand more often in one word than in the other, in all.
std::size_t letters_apart(const std::string& a, const std::string& b) {
  std::array<int, 32> count{};
  for (const char c : a) ++count[static_cast<unsigned char>(c) & 31U];
  for (const char c : b) --count[static_cast<unsigned char>(c) & 31U];
  std::size_t apart = 0;
  for (const int n : count) apart += static_cast<std::size_t>(n < 0 ? -n : n);
  return apart;
}

// 1 = the same word; less for a beginning of it or a misspelling; 0 = another word.
double likeness(const std::string& asked, const std::string& known) {
  if (asked == known) return 1;
  const std::size_t shorter = std::min(asked.size(), known.size());
  if (asked.size() >= 3 && known.size() > asked.size() && known.starts_with(asked))
    return 0.7 + 0.2 * static_cast<double>(asked.size()) / static_cast<double>(known.size());
  const std::size_t bearable = shorter >= 8 ? 3 : shorter >= 6 ? 2 : shorter >= 4 ? 1 : 0;
  if (asked.size() > known.size() + bearable || known.size() > asked.size() + bearable) return 0;
  // Letters the one has and the other has not cost a change each: cheap to see, and it spares
  // nearly every comparison.
  if (bearable == 0 || letters_apart(asked, known) > 2 * bearable) return 0;
  const std::size_t off = base::edit_distance(asked, known);
  if (off > bearable) return 0;
  return 0.9 - 0.9 * static_cast<double>(off) / static_cast<double>(shorter);
}

constexpr double kLeastLikeness = 0.3;  ///< below it a name is not worth showing

// The words asked for. Each is compared with each word of the table once, not once a name.
class Asked {
 public:
  Asked(const std::vector<std::string>& words, const std::vector<std::string>& known)
      : like_(words.size(), std::vector<double>(known.size())) {
    for (std::size_t a = 0; a < words.size(); ++a) {
      weight_.push_back(weak(words[a]) ? 0.3 : 1);
      whole_ += weight_.back();
      for (std::size_t k = 0; k < known.size(); ++k) like_[a][k] = likeness(words[a], known[k]);
    }
    for (const std::string& word : known) unmet_weight_.push_back(weak(word) ? 0.1 : 0.5);
  }

  std::size_t words() const { return weight_.size(); }

  // Each asked word takes the likest word of the name that is still free; what is left of the name
  // counts against it.
  double likeness_to(const std::vector<std::size_t>& name) const {
    std::vector<bool> used(name.size(), false);
    double met = 0, unmet = 0;
    for (std::size_t a = 0; a < weight_.size(); ++a) {
      double most_like = 0;
      std::size_t where = 0;
      for (std::size_t i = 0; i < name.size(); ++i) {
        if (used[i] || like_[a][name[i]] <= most_like) continue;
        most_like = like_[a][name[i]];
        where = i;
      }
      if (most_like > 0) used[where] = true;
      met += most_like * weight_[a];
    }
    if (met == 0) return 0;
    for (std::size_t i = 0; i < name.size(); ++i) {
      if (!used[i]) unmet += unmet_weight_[name[i]];
    }
    return met / (whole_ + unmet);
  }

 private:
  std::vector<std::vector<double>> like_;  // [asked word][known word]
  std::vector<double> weight_, unmet_weight_;
  double whole_ = 0;
};

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

std::string singular_words(std::string_view text) {
  std::string out = " ";
  for (const std::string& word : base::words_of(base::folded(text))) out += singular(word) + " ";
  return out;
}

Foods::Foods(std::vector<Food> foods) : foods_(std::move(foods)) { index(); }

void Foods::index() {
  std::vector<std::vector<std::string>> words;
  std::vector<std::pair<std::string, std::size_t>> singulars;
  // The school's own food takes a name from the shipped one.
  const auto call = [&](const std::string& name, std::size_t i) {
    const auto [at, fresh] = by_name_.emplace(name, i);
    if (!fresh && foods_[i].schools_own && !foods_[at->second].schools_own) at->second = i;
  };
  for (std::size_t i = 0; i < foods_.size(); ++i) {
    const Food& food = foods_[i];
    by_key_.emplace(food.key, i);
    const auto add = [&](const std::string& name) {
      std::vector<std::string> tokens = tokens_of(name);
      if (tokens.empty()) return;
      call(base::folded(name), i);
      singulars.emplace_back(joined_tokens(tokens), i);
      tokens_.insert(tokens_.end(), tokens.begin(), tokens.end());
      names_.push_back({i, name, {}});
      words.push_back(std::move(tokens));
    };
    add(food.name);
    for (const std::string& other : food.other_names) add(other);
  }
  // The very words come first: "peppers" are no "pepper".
  for (const auto& [name, i] : singulars) call(name, i);
  std::sort(tokens_.begin(), tokens_.end());
  tokens_.erase(std::unique(tokens_.begin(), tokens_.end()), tokens_.end());
  for (std::size_t n = 0; n < names_.size(); ++n) {
    for (const std::string& word : words[n]) {
      const auto at = std::lower_bound(tokens_.begin(), tokens_.end(), word);
      names_[n].tokens.push_back(static_cast<std::size_t>(at - tokens_.begin()));
    }
  }
}

const Food* Foods::find(std::string_view key) const {
  const auto found = by_key_.find(key);
  return found == by_key_.end() ? nullptr : &foods_[found->second];
}

const Food* Foods::named(std::string_view name) const {
  auto found = by_name_.find(base::folded(name));
  if (found == by_name_.end()) found = by_name_.find(joined_tokens(tokens_of(name)));
  return found == by_name_.end() ? nullptr : &foods_[found->second];
}

std::vector<FoundFood> Foods::search(std::string_view words, std::size_t most) const {
  const Asked asked(tokens_of(words), tokens_);
  if (asked.words() == 0) return {};
  std::vector<FoundFood> best(foods_.size());
  for (const Name& name : names_) {
    const double like = asked.likeness_to(name.tokens);
    FoundFood& so_far = best[name.food];
    if (like > so_far.likeness) so_far = {&foods_[name.food], like, name.text};
  }
  const auto unlike = [](const FoundFood& found) { return found.likeness < kLeastLikeness; };
  best.erase(std::remove_if(best.begin(), best.end(), unlike), best.end());
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
