// Which food of the table a writer means, and how sure that is; or that none of them is meant.
//
// FoodMatcher matcher(foods); matcher.match("vine tomatoes", {}).food->key == "tomato", a little
// less sure than "tomatoes". "Vegan bacon" is no bacon: what would change allergens or diet is
// never dropped to make a name fit. Built once for many texts: it sorts the names of the table by
// their words, which takes 3 ms.
#pragma once

#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "kitchen/foods.h"
#include "kitchen/quantity.h"

namespace kitchen {

/// What else the line says that tells one food from another.
struct FoodHints {
  Quantity quantity;       ///< a spoonful of thyme is dried, a bunch is fresh
  bool container = false;  ///< from a tin or can
  bool drained = false;    ///< "drained": from a tin, or thawed
  bool cut = false;        ///< "chopped", "picked": herbs are then fresh
};

struct FoodGuess {
  const Food* food = nullptr;       ///< null = none is near enough
  double confidence = 0;            ///< 0 to 1
  std::vector<std::string> others;  ///< keys of what else might be meant, nearest first, at most 3
};

class FoodMatcher {
 public:
  /// `foods` must outlive the matcher.
  explicit FoodMatcher(const Foods& foods);

  /// `name` is the food in the writer's words, without amount.
  FoodGuess match(std::string_view name, const FoodHints& hints) const;
  /// The food with exactly this name, as Foods::named().
  const Food* named(std::string_view name) const { return foods_.named(name); }
  /// Whether a name says what must not be in it: "gluten-free", "vegan". Then no other words of the
  /// line may tell the food.
  static bool shuns(std::string_view name);
  const Foods& foods() const { return foods_; }
  /// Whether a name of some food holds this word (folded, singular).
  bool knows_word(const std::string& word) const;

 private:
  struct Name {
    const Food* food;
    std::vector<int> core;  ///< words that must be there, by their numbers in words_
    std::vector<int> rest;  ///< "raw", "dry", what stands behind a comma or in brackets
  };
  struct Found {
    const Food* food;
    double likeness;
  };
  const Foods& foods_;
  std::vector<Name> names_;
  /// A word of some name. Numbered, because a reading compares a hundred thousand of them.
  struct Word {
    bool idle = false, changes_food = false;
    std::vector<std::size_t> names;  ///< those that have it in their core
  };
  /// A word asked for; no name has it if its number is -1.
  struct Asked {
    int number = -1;
    bool idle = false, changes_food = false, mark = false;
  };
  std::map<std::string, int, std::less<>> numbers_;
  std::vector<Word> words_;
  std::map<std::string, std::vector<const Food*>, std::less<>> by_stem_;

  void add_name(const Food& food, std::string_view text);
  std::vector<Found> nearest(const std::vector<std::string>& words) const;
  int number_of(const std::string& word);
  const Word* word_of(const std::string& word) const;  ///< null: in no name's core
  double likeness(const std::vector<Asked>& asked, const Name& name) const;
  const Food* exact(const std::vector<std::string>& words) const;
  const Food* in_form(const Food& food, const std::vector<std::string>& words,
                      const FoodHints& hints) const;
  const Food* sibling(const Food& food, std::initializer_list<std::string_view> forms) const;
  using WordList = std::vector<std::string>;
  WordList similar_words(const std::string& word) const;
  FoodGuess guess_from_core(const std::vector<std::string>& words, const FoodHints& hints) const;
  FoodGuess guess_from_part(const std::vector<std::string>& words, const FoodHints& hints) const;
};

}  // namespace kitchen
